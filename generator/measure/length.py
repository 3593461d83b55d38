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
    """`shape` is a value of `SHAPES`; `sides` as ordered in the text, maybe none; `words` as written."""

    shape: str
    sides: tuple[Length, ...]
    words: str


def _length_unit(name: str, millimetres: str) -> Unit:
    return Unit(name=name, kind=Kind.LENGTH, factor=Fraction(millimetres), plural=name)


_INCH, _CENTIMETRE, _MILLIMETRE = (
    _length_unit("in", "25.4"),
    _length_unit("cm", "10"),
    _length_unit("mm", "1"),
)
LENGTHS: Mapping[str, Unit] = MappingProxyType(
    dict.fromkeys(("in", "inch", "inches", '"', "″", "”"), _INCH)
    | dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), _CENTIMETRE)
    | dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), _MILLIMETRE)
)
SHAPES: Mapping[str, str] = MappingProxyType(
    {name: name for name in ("round", "square", "rectangle", "loaf", "tube", "ring", "cylinder", "muffin")}
    | {"rectangular": "rectangle", "cylindrical": "cylinder"}
)

_UNIT = re.compile(r"[\s-]{0,2}([\"″”]|[A-Za-z]{2,11}(?![A-Za-z]))\.?")
_BY = re.compile(r"\s{0,3}(?:[xX×*]|by\b)\s{0,3}")
# ASCII, or else folding would let a dotted or a dotless i of other alphabets stand for an i.
_SHAPE = re.compile(rf"\b(?:{'|'.join(SHAPES)})\b", re.IGNORECASE | re.ASCII)
_FILLER = re.compile(r"\b(?:tins?|pans?|mou?lds?|papers?|cases?|cake|trays?|a|an|one|of)\b", re.IGNORECASE)
# `2 round`, `2 x loaf`, `12-cup muffin`, `muffin 12 cups`: how many, which is no size.
_COUNT_BEFORE = re.compile(r"[0-9]{1,3}(?:\s?[xX×]|[\s-]?(?:cups?|holes?))?")
_COUNT_AFTER = re.compile(r"[0-9]{1,3}[\s-]?(?:cups?|holes?)")
_MOST_SIDES = 3


def read_length(text: str) -> Length | None:
    """The whole text as a length: `6.75 in`, `8-9 in`, `9"`, `23 cm`, `5 mm`; else None."""
    text = text.strip()
    found = _side(text, 0) if len(text) <= LONGEST_TEXT else None
    if found is None or found[1] is None or found[2] != len(text):
        return None
    return _length(found[0], found[1])


def read_tin(text: str) -> Tin | None:
    """The whole text as a tin: `loaf 23 x 13 x 7 cm`, `2 round 9 x 2 in`, `9 by 5 in loaf tin`, `muffin`.

    None without a shape, and for a size without a unit. What follows a comma or an opening bracket is a note
    and says nothing here; nor do a count before the shape and words without a digit.
    """
    words = text.strip() if len(text) <= LONGEST_TEXT else ""
    plain = re.split(r"[,(;]", words, maxsplit=1)[0]
    shape = _SHAPE.search(plain)
    if shape is None:
        return None
    before, after = _bare(plain[: shape.start()]), _bare(plain[shape.end() :])
    counts = (_COUNT_BEFORE.fullmatch(before), _COUNT_AFTER.fullmatch(after))
    sizes = [
        text for text, count in zip((before, after), counts, strict=True) if _has_digit(text) and not count
    ]
    sides = _sides(sizes[0]) if sizes else ()
    if sides is None or len(sizes) > 1:
        return None
    return Tin(shape=SHAPES[shape.group().casefold()], sides=sides, words=words)


def _bare(text: str) -> str:
    return _FILLER.sub(" ", text).strip(" -")


def _has_digit(text: str) -> bool:
    return any(each.isnumeric() for each in text)


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
