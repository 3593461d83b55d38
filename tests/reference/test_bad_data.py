"""Published figures that do not agree with themselves are found, and so are lines that can be read in two ways."""

from fractions import Fraction

import pytest

from generator.measure.quantity import read_quantity
from generator.measure.unit import SPOONS
from tests.formula.kitchen import bake, formula_of, recipe, shelf, weigh

F = Fraction

# A trade magazine's sponge roll, as quoted: 192.875 % in all, flour 70 + 30, water 18 % printed as 8.45 g where the
# other lines have 0.5229 g a percent. What else it holds was not quoted; it stands here as sugar.
SPONGE_ROLL = "- 70% bread flour\n- 30% cake flour\n- {water} water\n- 74.875% granulated sugar"


def test_the_percents_of_a_published_sponge_roll() -> None:
    formula = formula_of(recipe(SPONGE_ROLL.format(water="18%"), more="flour: 52.29 g\n"))
    assert sum(line.percent or 0 for line in formula.lines) == F("192.875")
    grams = {line.item: line.grams.mid for line in formula.lines if line.grams}
    assert float(grams["water"]) == pytest.approx(9.41, abs=0.005)


def test_its_printed_water_disagrees_with_its_percent() -> None:
    baked = bake(shelf(), bake=recipe(SPONGE_ROLL.format(water="18% (8.45 g)"), more="flour: 52.29 g\n"))
    assert "F066" in baked.codes


# Common practice: 1-1/2 is a mixed number, 1–1½ a range, and 11/2 is asked about.
def test_eleven_halves_are_asked_about_in_a_line() -> None:
    assert [each.code for each in weigh("1-1/2 cups lukewarm milk")[1]] == []
    assert [each.code for each in weigh("11/2 cups milk")[1]] == ["F005"]


# "1 8-oz block": one block of 8 oz, neither 18 oz nor 1 1/8 (arithmetic: 226.796 g).
def test_a_block_of_eight_ounces() -> None:
    read = read_quantity("1 8-oz block", spoons=SPOONS["us"])
    assert read is not None
    grams = read[0].grams()
    assert grams is not None
    assert float(grams.mid) == pytest.approx(226.796, abs=0.001)
    line, _ = weigh("1 8-oz block cream cheese, softened")
    assert line.grams is not None
    assert float(line.grams.mid) == pytest.approx(226.796, abs=0.001)
