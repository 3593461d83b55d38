"""A scaled formula: what grows, what stays, and that the way back is exact."""

from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.formula.eggs import Pieces, WholeEggs, eggs_of, whole_eggs
from generator.formula.model import Formula, Line, Use, WholePart
from generator.formula.scale_factor import (
    Refusal,
    baked_from,
    dough_for_baked,
    earliest_look,
    factor_for,
    look_note,
    portions_of,
    scaling_notes,
)
from generator.formula.scaling import scaled, stays
from generator.formula.tin_text import read_shape
from generator.formula.tins import TinShape
from generator.measure.number import Range
from tests.formula.kitchen import bake, formula_of, recipe
from tests.lots import lots

F = Fraction

FORMULA = """
dough:
  - 430 g bread flour
  - 240-250 g water
  - 2 egg yolks
  - 8 g table salt
  - 2 1/4 tsp instant yeast
  - a pinch of nutmeg
  - 2 pinches of ground ginger
  - 60 g butter
  - {line: 50 g raisins, optional: yes}
  - {line: 40 g walnuts, or: [40 g pecans]}
finish:
  counts: no
  lines:
    - 1 egg
    - 20-25 g honey
    - table salt, to taste
    - {line: 300 g vegetable oil, discard: 90 %}
"""
METHOD = """1. Mix the {water}, {egg yolks}, {bread flour: half}, {dough/table salt}, {instant yeast}, {nutmeg},
   {ground ginger} and {butter}. Add {bread flour: rest}. {knead 12 min}. If it is wet, add {10 g of bread flour}.
   Work in the {raisins} and the {walnuts}. {rise 1 h} at {80 F}.
2. Bake {bake 30 min} at {oven 350 F}. Finish with the {finish}."""


@cache
def bread() -> Formula:
    more = "makes: 1 loaf\nportions: 14 slices\ntin: loaf 23 x 13 x 7 cm\nbakes_off: 12 %\n"
    return formula_of(recipe(FORMULA, METHOD, more=more))


@cache
def filled() -> Formula:
    """A bake with a component inside."""
    jam = recipe(
        "- 300 g strawberries\n- 200 g sugar\n",
        "1. Cook the {strawberries} and {sugar}.",
        more="weighs: 400 g\n",
    )
    tart = recipe(
        "- 200 g all-purpose flour\n- 100 g butter\n- {line: 150 g jam, recipe: jam}\n",
        "1. Mix the {all-purpose flour} and {butter}. Fill with {jam}.",
    )
    baked = bake(jam=jam, tart=tart)
    return baked.formulas["tart"]


def line(formula: Formula, item: str, part: str = "dough") -> Line:
    return next(each for each in formula.lines if each.item == item and each.part == part)


def uses(formula: Formula) -> list[Use]:
    found: list[Use] = []
    for mention in (
        each
        for way in formula.ways
        for section in way.sections
        for block in section.blocks
        for each in block.words.mentions
    ):
        found += [mention] if isinstance(mention, Use) else []
        found += mention.uses if isinstance(mention, WholePart) else ()
    return found


FACTORS = st.fractions(min_value=F(1, 1000), max_value=1000, max_denominator=10_000).filter(lambda k: k > 0)


@given(FACTORS)
@settings(max_examples=lots(300), deadline=None)
def test_scaling_and_back_gives_the_very_same_formula(factor: Fraction) -> None:
    for formula in (bread(), filled()):
        assert scaled(scaled(formula, factor), 1 / factor) == formula


@given(FACTORS, FACTORS)
@settings(max_examples=lots(200), deadline=None)
def test_scaling_twice_is_scaling_by_the_product(one: Fraction, other: Fraction) -> None:
    assert scaled(scaled(bread(), one), other) == scaled(bread(), one * other)


@given(FACTORS)
@settings(max_examples=lots(200), deadline=None)
def test_percents_times_and_temperatures_ignore_the_batch_size(factor: Fraction) -> None:
    before, after = bread(), scaled(bread(), factor)
    assert [each.percent for each in after.lines] == [each.percent for each in before.lines]
    for name in ("hydration", "hydration_nominal", "salt_percent", "salt_with_ingredients_percent"):
        assert getattr(after.totals, name) == getattr(before.totals, name)
    assert after.totals.hydration == 100 * after.totals.water / after.totals.flour
    assert after.times == before.times
    assert after.bakes_off == before.bakes_off


@given(FACTORS)
@settings(max_examples=lots(200), deadline=None)
def test_parts_and_totals_stay_the_sums_of_their_lines(factor: Fraction) -> None:
    after = scaled(bread(), factor)
    for part in after.parts:
        weights = [each.grams for each in part.lines if each.counts and each.grams is not None]
        assert part.grams == Range(sum(w.low for w in weights), sum(w.high for w in weights))  # type: ignore[arg-type]
    assert after.totals.grams.high == sum(part.grams.high for part in after.parts)


def test_every_amount_of_a_line_doubles() -> None:
    before, after = bread(), scaled(bread(), F(2))
    assert line(after, "water").grams == Range(F(480), F(500))
    assert line(after, "egg yolks").count == Range.exact(4)
    oil, oil_before = line(after, "vegetable oil", "finish"), line(before, "vegetable oil", "finish")
    assert (oil.grams, oil.kept) == (Range.exact(600), Range.exact(60))
    assert oil.millilitres is not None
    assert oil_before.millilitres is not None
    assert oil.millilitres == oil_before.millilitres.scaled(2)
    assert line(after, "walnuts").alternatives[0].grams == Range.exact(80)
    assert line(after, "raisins").grams == Range.exact(100)
    assert after.totals.finished_grams == (before.totals.finished_grams or Range.exact(0)).scaled(2)


def test_pinches_and_to_taste_stay() -> None:
    before, after = bread(), scaled(bread(), F(4))
    kept = [each.item for each in before.lines if stays(each)]
    assert kept == ["nutmeg", "ground ginger", "table salt"]
    for item in ("nutmeg", "ground ginger"):
        assert line(after, item) == line(before, item)
    assert line(after, "table salt").grams == Range.exact(32)


def test_extras_stay_and_shares_grow() -> None:
    before, after = uses(bread()), uses(scaled(bread(), F(3)))
    extra = next(each for each in after if each.extra)
    assert extra.grams == Range.exact(10)
    assert extra.line is not None
    assert extra.line.grams == Range.exact(1290)
    half = next(each for each in after if each.share == "half")
    assert (half.fraction, half.grams) == (F(1, 2), Range.exact(645))
    assert len(before) == len(after)
    assert all(each.line in scaled(bread(), F(3)).lines for each in after if each.line is not None)


def test_a_component_is_used_as_many_times_over() -> None:
    assert filled().component_shares == {"jam": F(150, 400)}
    assert scaled(filled(), F(2)).component_shares == {"jam": F(300, 400)}
    assert scaled(filled(), F(2)).weighs is None


@pytest.mark.parametrize("factor", [F(0), F(-1)])
def test_no_factor_of_nothing_reaches_it(factor: Fraction) -> None:
    with pytest.raises(ValueError, match="more than nothing"):
        scaled(bread(), factor)


def shape(text: str) -> TinShape:
    tin, faults = read_shape(text)
    assert tin is not None, faults
    return tin


def test_a_factor_for_each_wish() -> None:
    formula = bread()
    assert factor_for(formula, times=F(3, 2)) == F(3, 2)
    assert factor_for(formula, flour=F(860)) == 2
    assert factor_for(formula, dough=formula.totals.dough_grams.mid / 2) == F(1, 2)
    assert factor_for(formula, portions=F(7)) == F(1, 2)
    assert factor_for(formula, tin=shape("2 x loaf 23 x 13 x 7 cm")) == 2
    assert factor_for(formula, tin=shape("loaf 23 x 13 x 14 cm")) == 2
    assert factor_for(formula, tin=shape("loaf 23 x 13 x 14 cm"), by="depth") == 1
    assert factor_for(formula, tin=shape("loaf 23 x 26 cm")) == 2


@pytest.mark.parametrize(
    ("wish", "message"),
    [
        ({}, "a formula is scaled by one wish at a time"),
        ({"times": F(1), "flour": F(1)}, "a formula is scaled by one wish at a time"),
        ({"times": F(0)}, "times must be more than nothing"),
        ({"flour": F(-5)}, "flour must be more than nothing"),
        ({"dough": F(0)}, "dough must be more than nothing"),
        ({"portions": F(0)}, "portions must be more than nothing"),
    ],
)
def test_a_wish_that_makes_no_sense_is_refused(wish: dict[str, Fraction], message: str) -> None:
    refused = factor_for(bread(), **wish)  # type: ignore[arg-type]
    assert isinstance(refused, Refusal)
    assert refused.message == message
    assert refused.hint


def test_what_a_recipe_does_not_know_is_refused() -> None:
    syrup = formula_of(recipe("- 200 g sugar\n- salt, to taste\n", "1. Stir the {sugar} and {salt}."))
    assert factor_for(syrup, flour=F(100)) == Refusal(
        message="the formula has no flour to scale by", hint="Scale it by times, or by dough weight."
    )
    assert factor_for(syrup, portions=F(2)) == Refusal(
        message="the recipe does not count its portions", hint="Scale it by times, or by dough weight."
    )
    refused = factor_for(syrup, tin=shape("round 20 cm"))
    assert isinstance(refused, Refusal)
    assert refused.message == "the recipe does not name its tin"
    refused = factor_for(bread(), tin=shape("ring holds 2 L"), by="depth")
    assert isinstance(refused, Refusal)
    assert refused.message == "“ring holds 2 L” cannot be compared with the recipe's “loaf 23 x 13 x 7 cm”"


@pytest.mark.parametrize(
    ("portions", "makes", "count"),
    [
        ("14 slices", "1 loaf", "14"),
        ("about 12-14 slices", "", "13"),
        ("serves 8", "", "8"),
        ("", "a dozen rolls", "12"),
        ("", "one 9-inch cake", "1"),
        ("", "9-inch cake", None),
        ("", "500 g jar", None),
        ("enough for everyone", "a loaf", "1"),
        ("", "", None),
    ],
)
def test_portions_are_the_count_that_begins_the_words(portions: str, makes: str, count: str | None) -> None:
    about = replace(bread().about, portions=portions, makes=makes)
    assert portions_of(replace(bread(), about=about)) == (None if count is None else F(count))


def test_notes_from_half_to_double_are_few() -> None:
    assert scaling_notes(bread(), F(1)) == ()
    for factor, look in ((F(2), "look later"), (F(1, 2), "look earlier")):
        assert [each.kind for each in scaling_notes(bread(), factor)] == ["pinch", look]


def test_notes_on_a_large_jump_name_leavening_and_salt() -> None:
    notes = {each.kind: each for each in scaling_notes(bread(), F(3))}
    assert list(notes) == ["far", "leavening", "salt", "pinch", "look later"]
    assert notes["leavening"].items == ("instant yeast",)
    assert notes["salt"].items == ("table salt",)
    assert notes["pinch"].items == ("nutmeg", "ground ginger", "table salt")
    assert notes["far"].says.startswith("This is more than double")
    assert "less than half" in scaling_notes(bread(), F(1, 3))[0].says
    assert all(each.source == "common practice, no published source" for each in notes.values())


def test_times_do_not_scale_and_the_note_says_so() -> None:
    assert look_note(F(3, 2)).says == (
        "Times and temperatures are those of the recipe as written: one larger piece is done later, so start looking "
        "later; more or fewer pieces of the same size take as long as before."
    )
    assert earliest_look(Range.exact(40), F(0)) is None
    assert earliest_look(Range(F(30), F(40)), F(2)) == Range(F(30), F(40))


@pytest.mark.parametrize(
    ("count", "each", "whole", "beaten"),
    [
        ("4.5", "50", 4, "25"),
        ("2", "50", 2, "0"),
        ("2/3", "50", 0, "100/3"),
        ("0", "50", 0, "0"),
        # Less than a scale shows goes to the nearer whole egg.
        ("3.005", "50", 3, "0"),
        ("2.995", "50", 3, "0"),
    ],
)
def test_eggs_stay_whole_where_they_can(count: str, each: str, whole: int, beaten: str) -> None:
    pieces = Pieces(whole=whole, beaten=F(beaten))
    assert whole_eggs(Range.exact(F(count)), F(each)) == WholeEggs(low=pieces, high=pieces)


@pytest.mark.parametrize(("count", "each"), [("1", "0"), ("1", "-50"), ("-1", "50")])
def test_eggs_that_make_no_sense_are_none(count: str, each: str) -> None:
    assert whole_eggs(Range.exact(F(count)), F(each)) is None


@given(st.fractions(0, 200, max_denominator=360), st.integers(10, 90))
@settings(max_examples=lots(300))
def test_whole_eggs_and_beaten_rest_are_the_weight_within_half_a_gram(count: Fraction, each: int) -> None:
    found = whole_eggs(Range.exact(count), F(each))
    assert found is not None
    assert abs(found.low.whole * each + found.low.beaten - count * each) < F(1, 2)
    assert 0 <= found.low.beaten < each


def test_eggs_of_a_line() -> None:
    assert eggs_of(line(bread(), "bread flour")) is None
    yolks = eggs_of(line(scaled(bread(), F(3, 4)), "egg yolks"))
    assert yolks is not None
    assert (yolks.low.whole, yolks.low.beaten) == (1, F(17, 2))


@pytest.mark.parametrize(
    ("weight", "loss"), [(F(0), F(12)), (F(500), F(100)), (F(500), F(-1)), (F(-1), F(0))]
)
def test_a_loss_that_makes_no_sense_is_none(weight: Fraction, loss: Fraction) -> None:
    assert dough_for_baked(weight, loss) is None
    assert baked_from(weight, loss) is None


@given(st.integers(1, 10**6), st.fractions(0, 99, max_denominator=100))
@settings(max_examples=lots(200))
def test_dough_for_a_baked_weight_bakes_to_that_weight(baked: int, loss: Fraction) -> None:
    dough = dough_for_baked(F(baked), loss)
    assert dough is not None
    assert baked_from(dough, loss) == baked
