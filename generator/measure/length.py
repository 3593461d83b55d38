"""Lengths, and the tins that they measure. The inch is 25.4 mm exactly (NIST SP 811, Appendix B)."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from generator.measure.number import Range, read_number
from generator.measure.unit import Kind, Unit

LONGEST_TEXT = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Length:
    """`stated` is the unit it was written in: `in`, `cm` or `mm`."""

    millimetres: Range
    stated: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Tin:
    """`shape` is one of `SHAPES`; `sides` are in the order written, none where no size is given; `words` as written."""

    shape: str
    sides: tuple[Length, ...]
    words: str


_INCH = Unit(name="in", kind=Kind.LENGTH, factor=Fraction("25.4"), plural="in")
_CENTIMETRE = Unit(name="cm", kind=Kind.LENGTH, factor=Fraction(10), plural="cm")
_MILLIMETRE = Unit(name="mm", kind=Kind.LENGTH, factor=Fraction(1), plural="mm")
LENGTHS: Mapping[str, Unit] = MappingProxyType(
    dict.fromkeys(("in", "inch", "inches", '"', "″", "”"), _INCH)
    | dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), _CENTIMETRE)
    | dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), _MILLIMETRE)
)
SHAPES: Mapping[str, str] = MappingProxyType(
    {name: name for name in ("round", "square", "rectangle", "loaf", "tube", "ring", "cylinder", "muffin")}
    | {"rectangular": "rectangle", "cylindrical": "cylinder"}
)

_UNIT = re.compile(r"[\s-]?([\"″”]|[A-Za-z]{2,11}\b)\.?")
_BY = re.compile(r"\s{0,3}(?:[xX×*]|by\b)\s{0,3}")
_SHAPE = re.compile(rf"\b(?:{'|'.join(SHAPES)})\b", re.IGNORECASE)
_FILLER = re.compile(r"\b(?:tins?|pans?|mou?lds?|papers?|cases?|cake|trays?|a|an|one|of)\b", re.IGNORECASE)
_COUNT = re.compile(r"[0-9]{1,3}(?:\s?[x×])?", re.IGNORECASE)
_MOST_SIDES = 3


def read_length(text: str) -> Length | None:
    """The whole text as a length: `6.75 in`, `8-9 in`, `9"`, `23 cm`, `5 mm`; else None."""
    text = text.strip()
    found = _side(text, 0) if len(text) <= LONGEST_TEXT else None
    if found is None or found[1] is None or found[2] != len(text):
        return None
    return _length(found[0], found[1])


def read_tin(text: str) -> Tin | None:
    """The whole text as a tin: `loaf 23 x 13 x 7 cm`, `2 round 9 x 2 in`, `9 by 5 in loaf tin`, `muffin`; else None.

    What follows a comma or an opening bracket is a note, and so left alone. A size without a unit is no tin.
    """
    words = text.strip() if len(text) <= LONGEST_TEXT else ""
    plain = re.split(r"[,(;]", words, maxsplit=1)[0]
    shape = _SHAPE.search(plain)
    if shape is None:
        return None
    before, after = (
        _FILLER.sub(" ", each).strip(" -") for each in (plain[: shape.start()], plain[shape.end() :])
    )
    if _COUNT.fullmatch(before):
        before = ""
    sides = () if not before and not after else _sides(before or after)
    if sides is None or (before and after):
        return None
    return Tin(shape=SHAPES[shape.group().casefold()], sides=sides, words=words)


def _length(amount: Range, unit: Unit) -> Length:
    return Length(millimetres=amount.scaled(unit.factor), stated=unit.name)


def _side(text: str, start: int) -> tuple[Range, Unit | None, int] | None:
    """A number, its unit where one stands there, and the index after them."""
    number = read_number(text, start)
    if number is None:
        return None
    found = _UNIT.match(text, number[1])
    unit = LENGTHS.get(found[1].casefold()) if found else None
    return number[0], unit, found.end() if found and unit else number[1]


def _sides(text: str) -> tuple[Length, ...] | None:
    """One to three numbers with x between them. A unit counts for the numbers before it that have none."""
    read: list[tuple[Range, Unit | None]] = []
    end = 0
    while (side := _side(text, end)) is not None and len(read) < _MOST_SIDES:
        read.append(side[:2])
        by = _BY.match(text, side[2])
        if by is None:
            return _with_units(read) if side[2] == len(text) else None
        end = by.end()
    return None


def _with_units(read: list[tuple[Range, Unit | None]]) -> tuple[Length, ...] | None:
    lengths: list[Length] = []
    unit: Unit | None = None
    for amount, own in reversed(read):
        unit = own or unit
        if unit is None:
            return None
        lengths.append(_length(amount, unit))
    return tuple(reversed(lengths))
