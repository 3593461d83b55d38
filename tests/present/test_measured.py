"""How amounts were measured, the cups of other countries, and ovens of other kinds."""

from dataclasses import replace

import pytest

from generator.formula.model import Heat
from generator.present.heats import heat_mention
from generator.present.measured import cups_beside, measured_facts, oven_views
from generator.present.size_views import OvenView
from generator.settings import Settings
from tests.formula.kitchen import F, formula_of, recipe, shelf

LINES = "\n- 500 g bread flour\n- 1 cup water\n- 1 egg\n- 20 g honey\n"
SHELF = shelf("bread flour:\n  contains: [wheat]\n")
ALL = "{bread flour} {water} {egg} {honey}"


def _ovens(*written: str, settings: Settings | None = None) -> tuple[OvenView, ...]:
    steps = " ".join(f"Bake at {{oven {each}}}." for each in written)
    formula = formula_of(recipe(LINES, f"1. {ALL} {steps}"), on=SHELF)
    return oven_views(formula, settings or Settings())


# A fan oven is set 20 °C or 25 °F lower (common practice); gas marks as oven charts print them.
@pytest.mark.parametrize(
    ("written", "plain", "fan", "gas"),
    [
        ("350 F", "350 °F, 175 °C", "325 °F, 155 °C", "4"),
        ("180 C", "355 °F, 180 °C", "330 °F, 160 °C", "4"),
        ("350-375 F", "350–375 °F, 175–190 °C", "325–350 °F, 155–170 °C", "4–5"),
        ("gas 4", "350 °F, 175 °C", "325 °F, 155 °C", "4"),
        ("gas 1/2", "250 °F, 120 °C", "225 °F, 100 °C", "½"),
        ("550 F", "550 °F, 290 °C", "525 °F, 270 °C", ""),
        ("200 F", "200 °F, 95 °C", "175 °F, 75 °C", ""),
    ],
)
def test_an_oven_without_a_fan_is_lower_with_one(written: str, plain: str, fan: str, gas: str) -> None:
    [oven] = _ovens(written)
    assert (oven.plain, oven.fan, oven.gas) == (plain, fan, gas)


@pytest.mark.parametrize(
    ("written", "plain", "fan", "gas"),
    [
        ("160 C fan", "345 °F, 180 °C", "320 °F, 160 °C", "4"),
        ("325 F fan", "350 °F, 185 °C", "325 °F, 165 °C", "4"),
    ],
)
def test_what_says_fan_is_never_lowered_again(written: str, plain: str, fan: str, gas: str) -> None:
    [oven] = _ovens(written)
    assert (oven.plain, oven.fan, oven.gas) == (plain, fan, gas)


def test_each_oven_is_told_once_as_the_maker_wrote_it() -> None:
    assert [each.written for each in _ovens("400 F", "gas 4", "400 F")] == ["400 °F", "gas mark 4"]


def test_the_dials_of_british_ovens_are_lowered_from_what_they_say() -> None:
    [oven] = _ovens("350 F", settings=Settings(oven_c="dial"))
    assert (oven.plain, oven.fan) == ("350 °F, 180 °C", "325 °F, 160 °C")


@pytest.mark.parametrize(
    ("written", "told"),
    [
        ("350 F", ("350 °F (175 °C)", ("350 °F", "175 °C"), ("175 °C", "350 °F"))),
        (
            "180 C fan",
            ("180 °C fan (355 °F fan)", ("355 °F fan", "180 °C fan"), ("180 °C fan", "355 °F fan")),
        ),
        (
            "gas 4",
            (
                "gas mark 4 (350 °F, 175 °C)",
                ("350 °F", "175 °C, gas mark 4"),
                ("175 °C", "350 °F, gas mark 4"),
            ),
        ),
    ],
)
def test_a_heat_is_told_with_either_scale_first(
    written: str, told: tuple[str, tuple[str, str], tuple[str, str]]
) -> None:
    formula = formula_of(recipe(LINES, f"1. {ALL} Bake at {{oven {written}}}."), on=SHELF)
    heat = formula.ways[0].sections[0].blocks[0].words.mentions[-1]
    assert isinstance(heat, Heat)
    mention = heat_mention(heat, oven_c="nearest 5")
    assert (mention.text, mention.in_f, mention.in_c) == told


def test_the_page_says_which_cup_how_flour_got_in_which_eggs_and_which_degrees() -> None:
    formula = formula_of(recipe(LINES, f"1. {ALL} Bake at {{oven 350 F}}."), on=SHELF)
    told = {
        each.label: each.words for each in measured_facts(formula, Settings(cup="metric", flour_cup="dipped"))
    }
    assert told == {
        "Cup and spoons": "metric: 1 cup 250 ml, 1 tbsp 15 ml, 1 tsp 5 ml",
        # 137 g in the US cup of 236.6 ml (USDA SR28 20129) is 144.8 g in 250 ml.
        "A cup of white flour": "dipped full and leveled, 145 g, where no pack says otherwise",
        "Eggs": "large, where a line names no size",
        "Oven in °C": "rounded to the nearest 5",
    }


def test_what_the_recipe_does_not_have_is_not_explained() -> None:
    formula = formula_of(recipe("\n- 100 g honey\n", "1. {honey} Bake at {oven 180 C}."))
    assert [each.label for each in measured_facts(formula, Settings())] == ["Cup and spoons"]


def test_the_cups_of_other_countries_stand_beside_what_is_measured_in_cups() -> None:
    settings = replace(Settings(), cups_beside=("metric", "australian"))
    lines = {line.item: line for line in formula_of(recipe(LINES, f"1. {ALL}"), on=SHELF).lines}
    water = [(each.label, each.words) for each in cups_beside(lines["water"], settings)]
    # A US cup is 236.6 ml. Of cups of 250 ml: 187.5 + 3 x 15 = 232.5 ml, and with a tablespoon of 20 ml
    # 187.5 + 2 x 20 + 5 = 232.5 ml: both within the 2.5 % that scoops may miss.
    assert water == [("metric", "¾ cup + 3 tbsp"), ("Australian", "¾ cup + 2 tbsp + 1 tsp")]
    assert cups_beside(lines["egg"], settings) == ()
    assert cups_beside(lines["water"], Settings()) == ()
    assert lines["water"].millilitres is not None
    assert abs(lines["water"].millilitres.mid - F("236.588")) < 1
