"""Eggs: whole ones and what is left over, and the classes they are sold in."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import floor
from types import MappingProxyType

from generator.formula.model import Line
from generator.measure.number import Range
from generator.measure.unit import POUND

US_DOZEN_OUNCES: Mapping[str, Fraction] = MappingProxyType(
    {
        "jumbo": Fraction(30),
        "extra large": Fraction(27),
        "large": Fraction(24),
        "medium": Fraction(21),
        "small": Fraction(18),
        "peewee": Fraction(15),
    }
)
"""Least weight of a dozen in the shell, in ounces (US egg sizes, minimum weight a dozen)."""

_EU_CLASSES = (("XL", Fraction(73)), ("L", Fraction(63)), ("M", Fraction(53)))
_SCALE_STEP = Fraction(1)
"""A kitchen scale shows whole grams; less egg than half of that cannot be weighed off (common practice)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pieces:
    """Whole pieces, and the grams of one more, beaten, that make up the rest (0 where none is needed)."""

    whole: int
    beaten: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class WholeEggs:
    """Both ends of a count; equal for an exact one."""

    low: Pieces
    high: Pieces


def whole_eggs(count: Range, each: Fraction) -> WholeEggs | None:
    """`count` pieces of `each` grams as whole ones and beaten rest: 4½ of 50 g are 4 and 25 g.

    A rest that no scale shows goes to the nearer whole number. None for a piece without weight, and below zero.
    """
    if each <= 0 or count.low < 0:
        return None
    return WholeEggs(low=_pieces(count.low, each), high=_pieces(count.high, each))


def eggs_of(line: Line) -> WholeEggs | None:
    """The same for a line counted in eggs, yolks or whites; None for every other line."""
    ingredient = line.ware.ingredient if line.ware else None
    if ingredient is None or ingredient.group != "egg" or line.count is None or line.grams is None:
        return None
    return whole_eggs(line.count, line.grams.mid / line.count.mid) if line.count.mid > 0 else None


def _pieces(count: Fraction, each: Fraction) -> Pieces:
    whole = floor(count)
    rest = (count - whole) * each
    if each - rest < _SCALE_STEP / 2:
        return Pieces(whole=whole + 1, beaten=Fraction(0))
    return Pieces(whole=whole, beaten=rest if rest >= _SCALE_STEP / 2 else Fraction(0))


def us_shell_grams(size: str) -> Fraction | None:
    """Least grams of one US egg in its shell, as an average over the dozen; None for a size that there is not."""
    ounces = US_DOZEN_OUNCES.get(size)
    return None if ounces is None else ounces * POUND / 16 / 12


def eu_class(shell_grams: Fraction) -> str | None:
    """EU weight class of an egg in its shell: XL from 73 g, L from 63, M from 53, S below (Reg. (EU) 2023/2465)."""
    if shell_grams <= 0:
        return None
    return next((name for name, least in _EU_CLASSES if shell_grams >= least), "S")
