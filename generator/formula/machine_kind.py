"""A bread machine as a recipe tells of it, and the pans there are."""

from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor
from typing import Literal

from generator.measure.number import Range

Order = Literal["liquids first", "yeast first"]
PanName = Literal["1 lb", "1.5 lb", "2 lb"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Machine:
    """What a maker states of the machine; None or "" where nothing is stated, and nothing is guessed then.

    `rest` is minutes that it stands still to warm its load before it mixes.
    """

    order: Order | None = None
    rest: Range | None = None
    add_ins: str = ""
    pan: PanName | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Pan:
    """A pan by the loaf it is named after; `dry` is the flour, oats and bran it takes, in grams."""

    name: PanName
    cups: Fraction
    dry: Range

    def factor(self, grams: Fraction) -> Range:
        """By how much a recipe with so much dry weight is scaled to fit: at least and at most. `grams` above 0."""
        return Range(self.dry.low / grams, self.dry.high / grams)


def _pan(name: PanName, cups: int, low: int, high: int) -> Pan:
    return Pan(name=name, cups=Fraction(cups), dry=Range(Fraction(low), Fraction(high)))


PANS = (_pan("1 lb", 2, 250, 325), _pan("1.5 lb", 3, 375, 455), _pan("2 lb", 4, 500, 650))
"""Flour for a baked loaf: 2 to 2 1/2, 3 to 3 1/2 and 4 to 5 US cups of 125 to 130 g (common practice; makers' books
differ, and for a dough that is baked elsewhere a pan takes a little more)."""


def fitting(grams: Fraction) -> tuple[Pan, ...]:
    """The pans that so much flour, oats and bran fit."""
    return tuple(pan for pan in PANS if pan.dry.low <= grams <= pan.dry.high)


def next_to(grams: Fraction) -> tuple[Pan, ...]:
    """Where nothing fits: the pan below and the pan above, as far as there are."""
    below = [pan for pan in PANS if pan.dry.high < grams]
    above = [pan for pan in PANS if pan.dry.low > grams]
    return (*below[-1:], *above[:1])


def plainest(span: Range) -> Fraction:
    """The fraction with the smallest denominator inside a span of positive numbers: a half before seven twelfths.

    Of several, the one nearest to 1, so that the recipe stays as near as it can to what was tried.
    """
    denominator = 1
    while True:
        low, high = ceil(span.low * denominator), floor(span.high * denominator)
        if low <= high:
            found = (Fraction(each, denominator) for each in range(low, high + 1))
            return min(found, key=lambda each: abs(each - 1))
        denominator += 1
