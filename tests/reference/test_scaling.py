"""Eggs, yields, losses and factors against worked figures."""

from fractions import Fraction

import pytest

from generator.formula.eggs import Pieces, eu_class, us_shell_grams, whole_eggs
from generator.formula.scale_factor import baked_from, dough_for_baked, earliest_look, factor_for
from generator.formula.scaling import scaled
from generator.measure.number import Range
from generator.measure.unit import POUND
from tests.formula.kitchen import formula_of, recipe

F = Fraction


# 3 large eggs of 50 g x 1.5 are 225 g: 4 eggs and 25 g beaten. By arithmetic; 50 g is USDA SR28 01123.
def test_three_eggs_one_and_a_half_times() -> None:
    found = whole_eggs(Range.exact(3).scaled(F(3, 2)), F(50))
    assert found is not None
    assert found.low == found.high == Pieces(whole=4, beaten=F(25))


def test_a_third_of_two_eggs() -> None:
    found = whole_eggs(Range.exact(2).scaled(F(1, 3)), F(50))
    assert found is not None
    assert found.low.whole == 0
    assert float(found.low.beaten) == pytest.approx(33, abs=0.5)


# US egg sizes, minimum weight a dozen, in ounces: 30, 27, 24, 21, 18, 15.
@pytest.mark.parametrize(
    ("size", "grams"),
    [
        ("jumbo", 70.9),
        ("extra large", 63.8),
        ("large", 56.7),
        ("medium", 49.6),
        ("small", 42.5),
        ("peewee", 35.4),
    ],
)
def test_us_eggs_in_the_shell(size: str, grams: float) -> None:
    found = us_shell_grams(size)
    assert found is not None
    assert float(found) == pytest.approx(grams, abs=0.05)
    assert us_shell_grams("ostrich") is None


# Reg. (EU) 2023/2465: XL 73 g and more, L 63 to below 73, M 53 to below 63, S below 53.
@pytest.mark.parametrize(
    ("grams", "name"),
    [
        ("73", "XL"),
        ("72.9", "L"),
        ("64", "L"),
        ("63.0", "L"),
        ("62.9", "M"),
        ("53", "M"),
        ("52.9", "S"),
        ("0", None),
    ],
)
def test_eu_egg_classes(grams: str, name: str | None) -> None:
    assert eu_class(F(grams)) == name


# Trade dictionary, "bake-out loss": the loss is of the dough. dough = baked / (1 - loss), by arithmetic.
@pytest.mark.parametrize(
    ("baked", "loss", "dough"),
    [("500", 12, 568.18), ("800", 13, 919.5), ("500", 13, 574.71)],
)
def test_dough_for_a_baked_weight(baked: str, loss: int, dough: float) -> None:
    found = dough_for_baked(F(baked), F(loss))
    assert found is not None
    assert float(found) == pytest.approx(dough, abs=0.05 if dough == 919.5 else 0.01)
    assert found != F(baked) * (1 + F(loss, 100))


# Two losses one after the other, 2 % in making up and 11 % after: 573.3 lb for 500 lb.
def test_two_losses_in_a_row() -> None:
    baked = dough_for_baked(F(500), F(11))
    assert baked is not None
    dough = dough_for_baked(baked, F(2))
    assert dough is not None
    assert float(dough) == pytest.approx(573.3, abs=0.1)


def test_what_a_dough_weighs_when_it_is_baked() -> None:
    assert baked_from(F(750), F(12)) == 660


# A recipe of 6 cups of flour for a machine that takes 3 is halved throughout (common practice).
def test_a_recipe_too_large_for_the_machine() -> None:
    text = recipe(
        "- 6 cups all-purpose flour\n- 2/3 cup water\n- 1 tbsp instant yeast\n",
        "1. Mix {all-purpose flour}, {water} and {instant yeast}.",
    )
    formula = formula_of(text)
    factor = factor_for(formula, flour=formula.totals.flour * F(3, 6))
    assert factor == F(1, 2)
    # A third of it: 1 tbsp of yeast is 1 tsp, 2/3 cup of liquid 2/9 cup. By arithmetic.
    third = {line.item: line.millilitres for line in scaled(formula, F(1, 3)).lines}
    cup = F("236.5882365")
    assert third["water"] == Range.exact(cup * F(2, 9))
    assert third["instant yeast"] == Range.exact(cup / 48)


# W. Gisslen, Professional Cooking: flour = dough / total percent; 377.5 % for 3000 g is 794.7 g.
def test_flour_for_a_wanted_dough() -> None:
    text = recipe(
        "- 1000 g all-purpose flour\n- 2775 g water\n",
        "1. Mix {all-purpose flour} and {water}.",
    )
    formula = formula_of(text)
    factor = factor_for(formula, dough=F(3000))
    assert isinstance(factor, Fraction)
    assert float(scaled(formula, factor).totals.flour) == pytest.approx(794.70, abs=0.01)


# A lean dough of 100 / 65 / 2 / 1 for 1000 g, by arithmetic.
def test_a_lean_dough_for_two_loaves() -> None:
    text = recipe(
        "- 500 g bread flour\n- 325 g water\n- 10 g table salt\n- 5 g instant yeast\n",
        "1. Mix {bread flour}, {water}, {table salt} and {instant yeast}.",
    )
    formula = formula_of(text)
    factor = factor_for(formula, dough=F(1000))
    assert isinstance(factor, Fraction)
    grams = [line.grams.mid for line in scaled(formula, factor).lines if line.grams]
    assert [float(each) for each in grams] == pytest.approx([595.24, 386.90, 11.90, 5.95], abs=0.01)
    assert sum(grams) == 1000


# Rough bound, time by the square of the depth: 40 min from 2 to 1.5 in is 22.5 (common practice).
def test_a_shallower_bake_is_looked_at_earlier() -> None:
    assert earliest_look(Range.exact(40), F("1.5") / 2) == Range.exact(F("22.5"))


# 500 lb at 13 % by pounds is the same ratio as by grams.
def test_a_loss_knows_no_unit() -> None:
    pounds, grams = dough_for_baked(F(500), F(13)), dough_for_baked(500 * POUND, F(13))
    assert pounds is not None
    assert grams == pounds * POUND
