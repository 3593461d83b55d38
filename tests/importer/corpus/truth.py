"""Invented bakes with everything about them known: what a layout writes down, and what must be read out of it."""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """An ingredient line. `measures` are (low, high, unit) as our units are named; "" is a bare count.

    `text` is the line as it is written where a layout leaves the wording alone. `allergens` is what a person
    knows of the food, not what the program says.
    """

    measures: tuple[tuple[Fraction, Fraction, str], ...]
    item: str
    preparation: str = ""
    size: str = ""
    allergens: tuple[str, ...] = ()
    text: str = ""
    asked: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Bake:
    """`times` are (kind, low, high) in minutes, `heats` (kind, degrees, scale), as the steps say them."""

    title: str
    lead: str
    parts: tuple[tuple[str, tuple[Line, ...]], ...]
    steps: tuple[str, ...]
    times: tuple[tuple[str, int, int], ...]
    heats: tuple[tuple[str, int, str], ...]
    makes: str
    keeps: str

    @property
    def lines(self) -> tuple[Line, ...]:
        return tuple(line for _, lines in self.parts for line in lines)


def line(
    amount: str, item: str, preparation: str = "", *, has: str = "", size: str = "", or_: str = ""
) -> Line:
    """`amount` such as "500 g" or "3.5 cup = 440 g"; ranges have two dots."""
    measures = tuple(_measure(each) for each in amount.split(" = ")) if amount else ()
    return Line(
        measures=measures,
        item=item,
        preparation=preparation,
        size=size,
        allergens=tuple(has.split()),
        text=or_,
    )


def said(
    text: str,
    amount: str,
    item: str,
    preparation: str = "",
    *,
    has: str = "",
    size: str = "",
    asked: bool = False,
) -> Line:
    """A line that is written in one way alone."""
    plain = line(amount, item, preparation, has=has, size=size)
    return Line(
        measures=plain.measures,
        item=item,
        preparation=preparation,
        size=size,
        allergens=plain.allergens,
        text=text,
        asked=asked,
    )


def _measure(text: str) -> tuple[Fraction, Fraction, str]:
    number, _, unit = text.strip().partition(" ")
    low, _, high = number.partition("..")
    return Fraction(low), Fraction(high or low), unit
