"""How the layouts of another hand write amounts and lines, and how they leave out what they have no room for."""

import textwrap
from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction

from tests.importer.corpus.layouts import Layout
from tests.importer.corpus.truth import Bake, Line

_GLYPHS = {
    Fraction(1, 8): "⅛",
    Fraction(1, 4): "¼",
    Fraction(1, 3): "⅓",
    Fraction(3, 8): "⅜",
    Fraction(1, 2): "½",
    Fraction(2, 3): "⅔",
    Fraction(3, 4): "¾",
}
_METRIC = ("g", "kg", "ml")
_PLURAL = ("cup", "stick", "teaspoon", "tablespoon", "gram")


@dataclass(frozen=True, slots=True, kw_only=True)
class Style:
    """`fraction` is "glyph", "slash" or "comma"; `units` renames; `gap` stands before a metric unit."""

    fraction: str = "slash"
    units: tuple[tuple[str, str], ...] = ()
    gap: str = " "
    to: str = "-"

    def unit(self, unit: str, high: Fraction) -> str:
        name = dict(self.units).get(unit, unit)
        return name + "s" if name in _PLURAL and high > 1 else name

    def number(self, value: Fraction) -> str:
        whole, rest = divmod(value, 1)
        if not rest:
            return str(whole)
        if self.fraction == "comma" and (value * 20).denominator == 1:
            return f"{float(value):.3f}".rstrip("0").replace(".", ",")
        if (value * 1000).denominator == 1 and (value * 8).denominator != 1:
            return f"{float(value):.3f}".rstrip("0")
        if self.fraction == "glyph":
            return (str(whole) if whole else "") + _GLYPHS[rest]
        return (f"{whole} " if whole else "") + f"{rest.numerator}/{rest.denominator}"

    def measure(self, one: tuple[Fraction, Fraction, str]) -> str:
        low, high, unit = one
        number = self.number(low) if low == high else f"{self.number(low)}{self.to}{self.number(high)}"
        if unit in _METRIC:
            if not any(mark in number for mark in "/⅛¼⅓⅜½⅔¾") and Fraction(low).denominator > 1:
                number = number if self.fraction == "comma" else f"{float(low):g}"
            return f"{number}{self.gap}{self.unit(unit, high)}"
        return f"{number} {self.unit(unit, high)}".strip()


@dataclass(frozen=True, slots=True, kw_only=True)
class Other:
    """A layout, and what becomes of a bake before it: None where nobody would have written it so."""

    write: Layout
    adapt: Callable[[Bake], Bake | None] = lambda bake: bake


def amount(line: Line, style: Style) -> str:
    """All that a line measures, the first before the others; a count carries its size."""
    if not line.measures:
        return ""
    first, *more = _sized(line, style)
    return f"{first} ({' / '.join(more)})" if more else first


def written(line: Line, style: Style, *, own: bool = True) -> str:
    """A line in one piece: in its own words where it has some and `own` lets it."""
    if line.text and (own or not line.measures):
        return line.text
    first, *more = _sized(line, style)
    also = f" ({' / '.join(more)})" if more else ""
    bare = line.measures[0][2] == ""
    head = f"{first} {line.item}{also}" if bare else f"{first}{also} {line.item}"
    return " ".join(head.split()) + (f", {line.preparation}" if line.preparation else "")


def _sized(line: Line, style: Style) -> list[str]:
    """Every measure as it is written, the first with its size: 2 medium, 1 cup packed, but 1 heaped tsp."""
    first, *more = (style.measure(each) for each in line.measures)
    if line.size == "heaped":
        number, _, unit = first.partition(" ")
        return [f"{number} {line.size} {unit}", *more]
    return [f"{first} {line.size}".strip(), *more]


def called(line: Line) -> str:
    """What stands beside the amount where both have a place of their own."""
    if not line.measures:
        return line.text
    return f"{line.item}, {line.preparation}" if line.preparation else line.item


def one_measure(bake: Bake, *, metric: bool) -> Bake:
    """A bake whose lines state one measure alone: grams or millilitres where there are some, or the first."""
    return replace(
        bake,
        parts=tuple((name, tuple(_one(each, metric=metric) for each in lines)) for name, lines in bake.parts),
    )


def _one(line: Line, *, metric: bool) -> Line:
    if not line.measures or all(unit == "pinch" for _, _, unit in line.measures):
        return line
    scaled = [each for each in line.measures if each[2] in _METRIC] if metric else []
    kept = scaled[0] if scaled else line.measures[0]
    return replace(line, measures=(kept,), text="", size="" if kept[2] in _METRIC else line.size)


def wrapped(text: str, width: int, *, first: str = "", then: str = "") -> str:
    """As an old program wraps it: at spaces, to a width."""
    return textwrap.fill(
        text,
        width,
        initial_indent=first,
        subsequent_indent=then,
        break_long_words=False,
        break_on_hyphens=False,
    )


def slug(bake: Bake) -> str:
    return "-".join(bake.title.lower().split())
