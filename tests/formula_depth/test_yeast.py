"""Yeast for yeast, and the gentle notes."""

from fractions import Fraction
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.formula.yeast import (
    NAMES,
    YeastRatios,
    cinnamon_note,
    converted,
    hot_liquid_note,
    hydration_note,
    rehydration_note,
    salt_note,
    sugar_note,
    sugar_on_flour,
    yeast_notes,
)
from generator.measure.number import Range
from generator.measure.temperature import Temperature, read_temperature
from tests.formula.kitchen import formula_of, recipe
from tests.lots import lots

F = Fraction
KINDS = tuple(NAMES.values())


def degrees(text: str) -> Temperature:
    read = read_temperature(text)
    assert read is not None
    return read


@given(
    st.fractions(0, 1000, max_denominator=100),
    st.sampled_from(KINDS),
    st.sampled_from(KINDS),
    st.sampled_from(KINDS),
)
@settings(max_examples=lots(200))
def test_by_way_of_a_third_yeast_and_back_is_the_same(grams: Fraction, a: str, b: str, c: str) -> None:
    def turned(amount: Range, one: str, other: str) -> Range:
        result = converted(amount, one, other)  # type: ignore[arg-type]
        assert result is not None
        return result

    start = Range(grams, 2 * grams)
    assert turned(turned(start, a, b), b, a) == start
    assert turned(turned(start, a, b), b, c) == turned(start, a, c)


def test_ratios_that_make_no_sense_are_none() -> None:
    assert converted(Range.exact(-1), "fresh", "instant") is None
    broken = YeastRatios(instant=F(0))
    assert [converted(Range.exact(7), a, b, broken) is None for a, b in product(KINDS, repeat=2)] == [
        *(False, False, True),
        *(False, False, True),
        *(True, True, True),
    ]


def test_sugar_has_a_threshold_that_can_be_set() -> None:
    note = sugar_note(F(12))
    assert note is not None
    assert note.says.startswith("Sugar is 12 % of the flour, more than 10 %")
    assert "Osmotolerant" in note.says
    assert note.source
    assert sugar_note(F(10)) is None
    assert sugar_note(F(12), threshold=F(12)) is None
    assert sugar_note(F(7), threshold=F(5)) is not None


@pytest.mark.parametrize(
    ("percent", "noted"), [("0.9", True), ("1", False), ("2", False), ("2.5", False), ("2.6", True)]
)
def test_salt_outside_the_usual_range(percent: str, noted: bool) -> None:
    assert (salt_note(F(percent)) is not None) is noted


@pytest.mark.parametrize(("percent", "noted"), [("49", True), ("50", False), ("90", False), ("91", True)])
def test_hydration_outside_the_usual_range(percent: str, noted: bool) -> None:
    assert (hydration_note(F(percent)) is not None) is noted


@pytest.mark.parametrize(
    ("cinnamon", "yeast", "noted"),
    [("2.6", "7", False), ("7", "7", True), ("6", "7", True), ("3", "0", False)],
)
def test_cinnamon_near_the_weight_of_the_yeast(cinnamon: str, yeast: str, noted: bool) -> None:
    assert (cinnamon_note(F(cinnamon), F(yeast)) is not None) is noted


@pytest.mark.parametrize(
    ("text", "noted"),
    [
        ("115 F", False),
        ("129 F", False),
        ("130 F", True),
        ("120-130 F", True),
        ("54 C", False),
        ("55 C", True),
    ],
)
def test_a_liquid_that_kills_yeast(text: str, noted: bool) -> None:
    note = hot_liquid_note(degrees(text))
    assert (note is not None) is noted


def test_both_scales_tell_the_same_of_a_hot_liquid() -> None:
    fahrenheit, celsius = hot_liquid_note(degrees("140 F")), hot_liquid_note(degrees("60 C"))
    assert fahrenheit is not None
    assert fahrenheit == celsius
    assert fahrenheit.says.startswith("140 °F (60 °C) kills yeast")


def test_dry_yeast_in_a_cool_liquid_by_itself() -> None:
    assert [rehydration_note(degrees(each)) for each in ("105-115 F", "100 F")] == [None, None]
    cool, hot = rehydration_note(degrees("90 F")), rehydration_note(degrees("150 F"))
    assert cool is not None
    assert hot is not None
    assert (cool.kind, hot.kind) == ("cool rehydration", "hot liquid")


SWEET = """
- 500 g bread flour
- 250 g milk
- 60 g sugar
- 20 g honey
- 5 g table salt
- 7 g {yeast}
- 7 g ground cinnamon
"""
METHOD = (
    "1. Warm the {{milk}} to {{140 F}}, then mix the {{bread flour}}, {{sugar}}, {{honey}}, {{table salt}}, "
    "{{{yeast}}} and {{ground cinnamon}}."
)


def kinds(formula: str, method: str) -> list[str]:
    return [each.kind for each in yeast_notes(formula_of(recipe(formula, method)))]


def test_notes_on_a_whole_formula() -> None:
    formula = SWEET.format(yeast="instant yeast")
    assert kinds(formula, METHOD.format(yeast="instant yeast")) == [
        *("sweet dough", "hydration", "cinnamon", "hot liquid"),
    ]


def test_a_dough_with_osmotolerant_yeast_is_not_told_of_it() -> None:
    formula = SWEET.format(yeast="osmotolerant yeast")
    assert "sweet dough" not in kinds(formula, METHOD.format(yeast="osmotolerant yeast"))


def test_sugar_on_flour_counts_sugar_and_honey_and_no_milk_sugar() -> None:
    text = recipe(SWEET.format(yeast="instant yeast"), METHOD.format(yeast="instant yeast"))
    found = sugar_on_flour(formula_of(text))
    assert found is not None
    # 60 g of sugar, and 20 g of honey that is some four fifths sugar, on 500 g of flour.
    assert F(75, 5) < found < F(77, 5)


def test_a_sponge_that_others_use_has_its_salt_elsewhere() -> None:
    text = recipe(
        "- 100 g bread flour\n- 120 g water\n- 1 g instant yeast\n",
        "1. Stir the {bread flour}, {water} and {instant yeast}.",
    )
    sponge = formula_of(text)
    assert [each.kind for each in yeast_notes(sponge)] == ["salt", "hydration"]
    assert yeast_notes(sponge, preferment=True) == ()


def test_a_bake_without_yeast_has_no_notes() -> None:
    assert (
        kinds("- 200 g all-purpose flour\n- 300 g sugar\n", "1. Mix {all-purpose flour} and {sugar}.") == []
    )


def test_cinnamon_in_a_filling_is_no_issue() -> None:
    formula = """
dough:
  - 500 g bread flour
  - 300 g water
  - 9 g table salt
  - 5 g instant yeast
swirl:
  counts: no
  lines:
    - 10 g ground cinnamon
"""
    method = "1. Mix the {dough}. Spread the {swirl}."
    assert kinds(formula, method) == []
