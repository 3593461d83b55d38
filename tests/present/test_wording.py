"""References as a reader meets them in a sentence, and the amounts that stand beside a step."""

import pytest

from generator.formula.model import Formula
from generator.measure.unit import SPOONS
from generator.present.measures import line_amount
from generator.present.mentions import rich
from generator.present.steps import way_views
from generator.present.times import iso_times, times_views
from generator.settings import Settings
from tests.formula.kitchen import formula_of, recipe, shelf

US = SPOONS["us"]
LINES = """
dough:
  - 500 g bread flour
  - 300 g water
  - 4 large eggs
  - 1 cup packed brown sugar
  - 3 cloves garlic
  - salt, to taste
finish:
  counts: no
  lines:
    - 20 g honey
    - {line: 30 g walnuts, optional: yes}
"""
ALL = "{bread flour} {water} {eggs} {brown sugar} {garlic} {salt} {finish}"
SHELF = shelf("bread flour:\n  cup: 125 g\n  contains: [wheat]\n")


def _plain(sentence: str, used: str = ALL) -> str:
    formula = formula_of(recipe(LINES, f"1. {sentence}\n2. Rest: {used}"), on=SHELF)
    words = formula.ways[0].sections[0].blocks[0].words
    return rich(words, settings=Settings(), spoons=US).plain.replace("\u00a0", " ")


def _amount(item: str, settings: Settings) -> tuple[str, str, str, str]:
    line = next(each for each in formula_of(recipe(LINES), on=SHELF).lines if each.item == item)
    amount = line_amount(line, settings=settings, spoons=US)
    return amount.weight, amount.volume, amount.first, amount.second


@pytest.mark.parametrize(
    ("sentence", "taken", "plain"),
    [
        ("Mix the {bread flour}.", "{bread flour}", "Mix the bread flour (500 g)."),
        ("Beat the {eggs}.", "{eggs}", "Beat the eggs (4 large, 200 g)."),
        ("Add the {salt}.", "{salt}", "Add the salt (to taste)."),
        (
            "Brush with the {finish}.",
            "{finish}",
            "Brush with the finish (20 g honey and 30 g walnuts, optional).",
        ),
        ("Add {10 g of bread flour} at a time.", "", "Add 10 g of bread flour (1 tbsp + ¾ tsp) at a time."),
        ("Add {a pinch of salt}.", "", "Add a pinch of salt."),
        ("Add {2 pinches of salt}.", "", "Add 2 pinches of salt."),
        ("{knead 12 min}.", "", "Knead 12 min."),
        ("Then {knead 12 min}.", "", "Then knead 12 min."),
        ("Bake {bake 20 min} more.", "", "Bake 20 min more."),
        ("Let it prove for {rise 1 h}.", "", "Let it prove for 1 h."),
        ("After {5 min} look.", "", "After 5 min look."),
        ("At {oven 350 F}.", "", "At 350 °F (175 °C)."),
        ("To {core 88 C}.", "", "To 88 °C (190 °F)."),
        ("Cook to {240 F}.", "", "Cook to 240 °F (116 °C)."),
        ("In a {23 cm} tin.", "", "In a 23 cm (9 in) tin."),
    ],
)
def test_a_reference_reads_in_its_sentence(sentence: str, taken: str, plain: str) -> None:
    assert _plain(sentence, ALL.replace(taken, "") if taken else ALL) == plain


def test_shares_say_so() -> None:
    used = ALL.replace("{bread flour} ", "")
    assert _plain("Mix {bread flour: half}, then {bread flour: rest}.", used) == (
        "Mix bread flour (250 g, half), then bread flour (250 g, the rest)."
    )
    assert _plain("Mix {bread flour: 100 g}, then {bread flour: rest}.", used) == (
        "Mix bread flour (100 g), then bread flour (400 g, the rest)."
    )


@pytest.mark.parametrize(
    ("item", "weight", "volume"),
    [
        ("bread flour", "500 g", "4 cups"),
        ("water", "300 g", "1¼ cups"),
        ("eggs", "200 g", "4 large"),
        ("brown sugar", "220 g", "1 cup, packed"),
        ("garlic", "9 g", "3 cloves"),
        ("salt", "", "to taste"),
    ],
)
def test_both_measures_of_a_line(item: str, weight: str, volume: str) -> None:
    found = _amount(item, Settings(first="weight"))
    assert found == (weight, volume, weight or volume, volume if weight else "")
    assert _amount(item, Settings(first="volume")) == (weight, volume, volume, weight)


def _formula(body: str) -> Formula:
    return formula_of(recipe("- 500 g bread flour", body=body), on=SHELF)


def test_ways_stand_before_what_is_common_to_all() -> None:
    by_hand = "\n## Method: by hand\n1. {bread flour} {knead 12 min}\n"
    formula = _formula(f"{by_hand}\n## Method\n### Bake\n1. {{bake 20 min}}\n")
    ways, common = way_views(formula, settings=Settings(), spoons=US)
    assert [(way.name, way.title) for way in ways] == [("by hand", "By hand")]
    assert common is not None
    assert [section.title for section in common.sections] == ["Bake"]
    anchors = [
        block.anchor for way in (*ways, common) for section in way.sections for block in section.blocks
    ]
    assert len(set(anchors)) == len(anchors)


def test_the_strip_of_time_is_in_the_order_of_work() -> None:
    formula = _formula("\n## Method\n1. {bread flour} {knead 10 min} {rise 1 h} {bake 25-30 min}\n")
    (times,) = times_views(formula)
    assert [(each.stage, each.kind, each.words) for each in times.segments] == [
        ("hands_on", "knead", "10 min"),
        ("waiting", "rise", "1 h"),
        ("baking", "bake", "25–30 min"),
    ]
    assert (times.hands_on, times.waiting, times.baking) == ("10 min", "1 h", "25–30 min")
    assert sum(float(each.share) for each in times.segments) == pytest.approx(100, abs=0.05)
    assert iso_times(formula) == ("PT1H10M", "PT30M", "PT1H40M")


def test_where_nothing_is_timed_there_is_no_strip() -> None:
    formula = _formula("\n## Method\n1. {bread flour}\n")
    assert (times_views(formula), iso_times(formula)) == ((), ("", "", ""))
