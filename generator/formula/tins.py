"""Tins by their measures: area, volume, what they are worth against each other, how much dough they take.

Inside, sides are exact centimetres and volumes cubic centimetres, which are millilitres. Pi is a fraction of 35
digits, so that a tin and its inverse cancel exactly.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache
from types import MappingProxyType
from typing import Literal

from generator.formula.note import COMMON_PRACTICE, Note
from generator.measure.number import Range
from generator.measure.same import Same
from generator.measure.unit import POUND

By = Literal["depth", "fill"]
PI = Fraction("3.14159265358979323846264338327950288")
TOLERANCE = Fraction(20, 100)
"""How far a tin's capacity may lie from what its sides give, before one of them is doubted (common practice)."""

PRINTED_SHARE = Range(Fraction(82, 100), Fraction(91, 100))
"""Capacities printed on tins are so much of the box that their sides give: corners, slope (trade tables of tins)."""

CM3_PER_G: Mapping[str, Fraction] = MappingProxyType(
    {
        "wholegrain, home tin": Fraction(167, 100),
        "open home tin": Fraction(306, 100),
        "open bakery tin, no less than": Fraction(439, 100),
        "lidded tin": Fraction(38, 10),
        "paper cylinder": Fraction(27, 10),
    }
)
"""Volume of tin for a gram of dough by style: worked figures to begin from, two and a half times apart, so a
setting of the baker and never a law (common practice; the last two from memory)."""

Sides = tuple[Fraction, ...]


def circle(across: Fraction) -> Fraction:
    """Area of a round of this diameter."""
    return PI * across * across / 4


def plan(sides: Sides) -> Fraction:
    """Area of one side (a round) or of two (a rectangle)."""
    return circle(sides[0]) if len(sides) == 1 else sides[0] * sides[1]


def prismoid(top: Fraction, middle: Fraction, base: Fraction, height: Fraction) -> Fraction:
    """h/6 x (top + 4 x middle + base): exact for boxes, cylinders and for tins that taper evenly."""
    return height / 6 * (top + 4 * middle + base)


@dataclass(frozen=True, slots=True, kw_only=True)
class TinShape:
    """`count` equal tins, or the cups of a muffin tin; every measure is of one of them, inside, in centimetres.

    `top` is the diameter, or length and width; () where no side is known. `base` is the same at the bottom, () for
    straight walls. `hole` is the diameter of the core. `capacity` is what the maker measured, in ml; it overrides
    the sides. `stated` is the unit of the sides (in, cm, mm, or ""). `words` is the text that was read.
    """

    kind: str
    words: str
    stated: str = ""
    count: int = 1
    top: Sides = ()
    base: Sides = ()
    depth: Fraction | None = None
    hole: Fraction | None = None
    capacity: Fraction | None = None

    @property
    def area(self) -> Fraction | None:
        """cm² at half height, of all tins together; None where a side or the hole of a ring is missing."""
        one = self._plan(self._middle) if self._is_drawn else None
        return None if one is None else self.count * one

    @property
    def box(self) -> Fraction | None:
        """ml that the sides give, of all tins together; None where one is missing."""
        if not self._is_drawn or self.depth is None:
            return None
        areas = [self._plan(each) for each in (self.top, self._middle, self.base or self.top)]
        return self.count * prismoid(areas[0], areas[1], areas[2], self.depth)

    @property
    def volume(self) -> Fraction | None:
        """ml of all tins together: the stated capacity, else what the sides give; None where neither is known."""
        return self.box if self.capacity is None else self.count * self.capacity

    @property
    def _middle(self) -> Sides:
        return tuple((a + b) / 2 for a, b in zip(self.top, self.base or self.top, strict=True))

    @property
    def _is_drawn(self) -> bool:
        return bool(self.top) and (self.hole is not None or self.kind not in ("ring", "tube"))

    def _plan(self, sides: Sides) -> Fraction:
        return plan(sides) - (circle(self.hole) if self.hole is not None else 0)


def factor_between(one: TinShape, other: TinShape, *, by: By) -> Fraction | None:
    """How much of the recipe for `one` fills `other`: to the same depth by area, or to the same fill by volume.

    Tins that differ in their number only are worth their number. None where a figure is not known.
    """
    return _factor_between(Same(one), Same(other), by)


@lru_cache(maxsize=1024)
def _factor_between(first: Same[TinShape], second: Same[TinShape], by: By) -> Fraction | None:
    """Many recipes have one tin, and the usual tins are the same for all."""
    one, other = first.thing, second.thing
    if replace(one, count=other.count, words=other.words, stated=other.stated) == other:
        return Fraction(other.count, one.count)
    mine, theirs = (one.area, other.area) if by == "depth" else (one.volume, other.volume)
    return theirs / mine if mine and theirs else None


def depth_ratio(one: TinShape, other: TinShape, factor: Fraction) -> Fraction | None:
    """How deep the batter stands in `other`, of its depth in `one`, when the recipe is scaled by `factor`."""
    if not one.area or not other.area:
        return None
    return factor * one.area / other.area


def dough_for(tin: TinShape, *, cm3_per_g: Fraction) -> Fraction | None:
    """Grams of dough for the tin; None without a volume or a figure above zero."""
    volume = tin.volume
    return volume / cm3_per_g if volume and cm3_per_g > 0 else None


def cm3_per_g_from(cubic_inches_per_ounce: Fraction) -> Fraction:
    """The trade's cubic inches of tin for an ounce of dough, in cm³ per gram."""
    return cubic_inches_per_ounce * Fraction("2.54") ** 3 / (POUND / 16)


def capacity_note(tin: TinShape) -> Note | None:
    """What to know about a volume: that it comes from the sides, or that it does not agree with them."""
    if tin.box is None or not tin.box:
        return None
    if tin.capacity is None:
        says = (
            "The volume is reckoned from the sides. Tins hold less: capacities printed on them are mostly 82 to 91 % "
            "of that, of a tube tin less. Fill the tin with weighed water (1 g is 1 ml) to know."
        )
        return Note(kind="capacity from sides", says=says, source=COMMON_PRACTICE)
    if abs(tin.count * tin.capacity / tin.box - 1) <= TOLERANCE:
        return None
    says = "What the tin is said to hold lies more than 20 % from what its sides give: one of them may be mistyped."
    return Note(kind="capacity far from sides", says=says, source=COMMON_PRACTICE)
