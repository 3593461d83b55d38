"""Two published tables for altitude, each by itself.

W. Gisslen, Professional Cooking, for shortened cakes, in percent; Colorado State University Extension, in spoons.
"""

from fractions import Fraction

import pytest

from generator.formula.altitude import (
    BANDS,
    TEXTBOOK_FEET,
    Kind,
    around,
    bands_at,
    boiling_f,
    by_textbook,
    powder_by_extension,
)
from generator.measure.number import Range

F = Fraction


# W. Gisslen, Professional Cooking: 16 oz of eggs at 7500 ft, 15 % more, are 18.4 oz.
def test_eggs_at_7500_feet() -> None:
    assert 16 * by_textbook("eggs", 7500) == F("18.4")


# The two tables at 5000 ft: 2 tsp of baking powder are 1.2 tsp by the textbook, 1 3/4 tsp by the extension.
def test_baking_powder_at_5000_feet_by_each_table() -> None:
    (band,) = bands_at(F(5000))
    assert 2 * by_textbook("baking powder", 5000) == F("1.2")
    assert powder_by_extension(F(2), band) == F(7, 4)


# W. Gisslen, Professional Cooking, as quoted; the columns of flour and fat are inferred.
@pytest.mark.parametrize(
    ("kind", "percents"),
    [
        ("baking powder", ("-20", "-40", "-60")),
        ("flour", ("0", "4", "9")),
        ("eggs", ("2.5", "9", "15")),
        ("sugar", ("-3", "-6", "-9")),
        ("fat", ("0", "0", "-9")),
        ("liquid", ("9", "15", "22")),
    ],
)
def test_the_textbooks_table(kind: Kind, percents: tuple[str, ...]) -> None:
    found = [100 * (by_textbook(kind, feet) - 1) for feet in TEXTBOOK_FEET]
    assert found == [F(each) for each in percents]


# Colorado State University Extension, as quoted.
@pytest.mark.parametrize(
    ("feet", "powder", "sugar", "liquid"),
    [
        (5000, "1/8", (1, 1), (1, 2)),
        (7000, "1/4", (2, 2), (2, 4)),
        (9000, "1/4", (1, 3), (3, 4)),
    ],
)
def test_the_extensions_table(
    feet: int, powder: str, sugar: tuple[int, int], liquid: tuple[int, int]
) -> None:
    (band,) = bands_at(F(feet))
    assert (band.powder, band.sugar, band.liquid) == (
        F(powder),
        Range(F(sugar[0]), F(sugar[1])),
        Range(F(liquid[0]), F(liquid[1])),
    )


def test_nothing_is_reckoned_between_the_altitudes_or_beyond_them() -> None:
    """Where a table is silent it stays so: the neighbours are shown, and no figure of our own."""
    assert around(F(5000)) == (5000,)
    assert around(F(6000)) == (5000, 7500)
    assert around(F(1000)) == (2500,)
    assert around(F(9000)) == (7500,)
    assert bands_at(F(3000)) == () == bands_at(F(10001))
    assert bands_at(F(6500)) == BANDS[:2]
    with pytest.raises(ValueError, match="not in tuple"):
        by_textbook("eggs", 6000)


# From memory: water boils about 1 °F lower for each 500 ft, so at about 202 °F at 5000 ft: 205 °F cannot be reached.
def test_a_core_of_205_cannot_be_reached_at_5000_feet() -> None:
    assert boiling_f(F(5000)) == 202
    assert boiling_f(F(0)) == 212
