"""Formulas written in percent: what the percents are on, and what comes of them in grams."""

import pytest

from generator.formula.model import Formula
from tests.formula.kitchen import F, bake, exact, formula_of, recipe, written

LEAN = "- 100% bread flour\n- 65 % water\n- 2% table salt\n- 1% instant yeast"


def _grams(formula: Formula) -> dict[str, F]:
    return {f"{each.part}/{each.item}".lstrip("/"): each.grams.mid for each in formula.lines if each.grams}


@pytest.mark.parametrize(
    ("text", "low", "high", "item"),
    [
        ("65% water", 65, 65, "water"),
        ("2 % table salt", 2, 2, "table salt"),
        ("1,5% salt", F("1.5"), F("1.5"), "salt"),
        ("½ % instant yeast", F(1, 2), F(1, 2), "instant yeast"),
        ("60-65% water, cool", 60, 65, "water"),
        ("12 per cent sugar", 12, 12, "sugar"),
        ("10% large eggs", 10, 10, "eggs"),
    ],
)
def test_a_line_may_begin_with_a_percent(text: str, low: F, high: F, item: str) -> None:
    line = written(text)
    assert line.percent is not None
    assert (line.percent.low, line.percent.high, line.item, line.measures) == (low, high, item, ())
    assert line.text == text


def test_percents_on_a_stated_flour_are_exact_grams() -> None:
    formula = formula_of(recipe(LEAN, more="flour: 500 g\n"))
    assert _grams(formula) == {"bread flour": 500, "water": 325, "table salt": 10, "instant yeast": 5}
    assert [line.written.text for line in formula.lines][:2] == ["100% bread flour", "65 % water"]
    assert [line.percent for line in formula.lines] == [100, 65, 2, 1]
    assert formula.totals.hydration == 65


def test_percents_for_a_wanted_dough_add_up_to_it() -> None:
    formula = formula_of(recipe(LEAN, more="dough: 1 kg\n"))
    assert formula.totals.dough_grams == exact(1000)
    assert formula.totals.flour == F(100_000, 168)


def test_weighed_lines_are_taken_off_a_wanted_dough_first() -> None:
    formula = formula_of(recipe(f"{LEAN}\n- 160 g raisins", more="dough: 1000 g\n"))
    assert formula.totals.flour == F(84_000, 168)


def test_percents_are_on_the_flour_that_is_weighed_out() -> None:
    formula = formula_of(recipe("- 400 g bread flour\n- 100 g rye flour\n- 70% water\n- 1-2% table salt"))
    assert _grams(formula)["water"] == 350
    salt = formula.lines[3].grams
    assert salt is not None
    assert (salt.low, salt.high) == (5, 10)


def test_a_percent_in_a_name_stays_a_name() -> None:
    formula = formula_of(
        recipe("- 500 g bread flour\n- 250 g 2% milk\n- 70% dark chocolate, 50 g\n- 2% table salt")
    )
    assert [line.item for line in formula.lines] == [
        "bread flour",
        "2% milk",
        "70% dark chocolate",
        "table salt",
    ]
    assert _grams(formula)["table salt"] == 10


def test_a_lone_name_with_a_percent_is_no_percent_of_flour() -> None:
    baked = bake(bake=recipe("- 500 g bread flour\n- 2% milk", "1. Mix {bread flour} and {2% milk}."))
    assert baked.codes == ["F033"]


def test_a_weight_beside_a_percent_wins() -> None:
    formula = formula_of(recipe("- 500 g bread flour\n- 65% water (330 g)\n- 2% table salt"))
    assert (formula.lines[1].item, _grams(formula)["water"]) == ("water", 330)


def test_percents_of_what_does_not_count_are_on_the_flour_of_the_dough() -> None:
    text = f"dough:\n{LEAN}\nfinish:\n  counts: no\n  lines:\n    - 4% honey".replace("- ", "  - ").replace(
        "      - ", "    - "
    )
    formula = formula_of(recipe(text, more="dough: 840 g\n"))
    assert _grams(formula)["finish/honey"] == 20
    assert formula.totals.dough_grams == exact(840)
    assert formula.lines[-1].percent is None


def test_optional_lines_and_alternatives_have_grams_and_count_for_nothing() -> None:
    text = f"{LEAN}\n- {{line: 10% raisins, optional: yes}}\n- {{line: 4% honey, or: [5% molasses]}}"
    formula = formula_of(recipe(text, more="flour: 500 g\n"))
    raisins, honey = formula.lines[-2:]
    assert (raisins.grams, honey.alternatives[0].grams) == (exact(50), exact(25))
    assert formula.totals.dough_grams == exact(860)


POOLISH = """
poolish:
  preferment: poolish
  flour: 30 %
  hydration: 100 %
  lines:
    - 100% bread flour
    - 100% water
    - 0.1% instant yeast
dough:
  total: yes
  lines:
    - 100% bread flour
    - 68% water
    - 2% table salt
    - 0.6% instant yeast
"""


def test_a_part_with_a_share_of_all_flour_is_on_its_own_flour() -> None:
    text = POOLISH.replace("total: yes", "counts: yes").replace(
        "    - 100% bread flour\n    - 68%", "    - 70% bread flour\n    - 68%"
    )
    formula = formula_of(recipe(text, more="flour: 1000 g\n"))
    grams = _grams(formula)
    assert (grams["poolish/bread flour"], grams["poolish/water"]) == (300, 300)
    assert (grams["poolish/instant yeast"], grams["dough/bread flour"]) == (F("0.3"), 700)
    assert formula.totals.prefermented_percent == 30


def test_the_whole_dough_less_its_preferment_is_the_final_dough() -> None:
    grams = _grams(formula_of(recipe(POOLISH, more="flour: 1000 g\n")))
    assert (grams["dough/bread flour"], grams["dough/water"], grams["dough/table salt"]) == (700, 380, 20)
    assert grams["dough/instant yeast"] == F("5.7")


def test_a_dough_all_of_whose_water_is_in_the_preferment_has_no_line_of_water_left() -> None:
    text = (
        "poolish:\n  preferment: poolish\n  lines:\n    - 300 g bread flour\n    - 300 g water\n"
        "dough:\n  total: yes\n  lines:\n    - 500 g bread flour\n    - 300 g water\n    - 10 g table salt"
    )
    formula = formula_of(recipe(text))
    assert [line.item for line in formula.parts[1].lines] == ["bread flour", "table salt"]
    assert (formula.totals.flour, formula.totals.water) == (500, 300)


def test_measures_that_disagree_are_told_in_the_whole_dough_too() -> None:
    text = (
        "poolish:\n  preferment: poolish\n  lines:\n    - 100 g bread flour\n    - 100 g water\n"
        "dough:\n  total: yes\n  lines:\n    - 500 g (8 cups) bread flour\n    - 300 g water\n    - 10 g table salt"
    )
    assert "F030" in bake(bake=recipe(text)).codes


def test_a_dough_in_percent_scales_like_any_other() -> None:
    one, two = (formula_of(recipe(LEAN, more=f"flour: {grams} g\n")) for grams in (500, 1000))
    assert [line.percent for line in one.lines] == [line.percent for line in two.lines]
    assert two.totals.grams == one.totals.grams.scaled(2)
