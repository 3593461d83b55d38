"""Temperatures, and the difference between two of them, which is another thing.

°F to °C is (F - 32) x 5/9; a difference uses 5/9 alone (NIST SP 811, Appendix B).
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import floor
from types import MappingProxyType
from typing import Literal

from generator.measure.number import TO, Range, read_single

Scale = Literal["F", "C", "gas"]


def to_celsius(fahrenheit: Fraction) -> Fraction:
    return (fahrenheit - 32) * Fraction(5, 9)


def to_fahrenheit(celsius: Fraction) -> Fraction:
    return celsius * Fraction(9, 5) + 32


def difference_to_celsius(fahrenheit_degrees: Fraction) -> Fraction:
    return fahrenheit_degrees * Fraction(5, 9)


# British gas marks to °F as oven charts print them; from mark 1 on it is 250 + 25 x mark (common practice).
GAS_MARKS: Mapping[Fraction, Fraction] = MappingProxyType(
    {Fraction(1, 4): Fraction(225), Fraction(1, 2): Fraction(250)}
    | {Fraction(mark): Fraction(250 + 25 * mark) for mark in range(1, 10)}
)

# °F to the °C that British charts print for an oven dial (common practice). Not the nearest 5: 350 °F is
# 176.7 °C, and dials say 180.
DIAL_CELSIUS: Mapping[int, int] = MappingProxyType(
    {
        225: 110,
        250: 120,
        275: 140,
        300: 150,
        325: 160,
        350: 180,
        375: 190,
        400: 200,
        425: 220,
        450: 230,
        475: 240,
    }
)


def nearest(x: Fraction, step: int) -> int:
    """The multiple of `step` nearest to x, the upper one of two as near."""
    return floor(x / step + Fraction(1, 2)) * step


@dataclass(frozen=True, slots=True, kw_only=True)
class Temperature:
    """`low` and `high` are in the `stated` scale; `fan` says what was written and changes no number."""

    stated: Scale
    low: Fraction
    high: Fraction
    fan: bool

    def fahrenheit(self) -> Range:
        """Exact. A gas mark off the chart raises KeyError: none is ever read, so it is our own mistake."""
        if self.stated == "gas":
            return Range(GAS_MARKS[self.low], GAS_MARKS[self.high])
        if self.stated == "C":
            return Range(to_fahrenheit(self.low), to_fahrenheit(self.high))
        return Range(self.low, self.high)

    def celsius(self) -> Range:
        """Exact, and the stated numbers themselves where they are stated in °C."""
        if self.stated == "C":
            return Range(self.low, self.high)
        fahrenheit = self.fahrenheit()
        return Range(to_celsius(fahrenheit.low), to_celsius(fahrenheit.high))


LONGEST_TEXT = 100
_GAS = re.compile(r"gas\s{0,3}(?:mark\b)?\s{0,3}", re.IGNORECASE)
# A lone small `c` is a cup, so it needs its degree sign here; a small `f` is nothing else.
_SCALE = re.compile(
    r"\s{0,3}(?:(?P<F>℉|(?:°|º|deg(?:rees?)?\b)\s?[Ff](?:ahrenheit)?\b|[Ff]ahrenheit\b|[Ff]\b)"
    r"|(?P<C>℃|(?:°|º|deg(?:rees?)?\b)\s?[Cc](?:elsius)?\b|[Cc]elsius\b|C\b))"
)
_DEGREE = re.compile(r"\s?[°º]")
_MINUS = re.compile(r"[-\u2212\u2013]\s?")
_FAN = re.compile(r"\s{0,3}[,(]?\s{0,3}(?:fan|convection)(?:\s(?:oven|setting))?\)?", re.IGNORECASE)
_FAN_FIRST = re.compile(r"(?:fan|convection)\s{1,3}", re.IGNORECASE)


def read_temperature(text: str) -> Temperature | None:
    """The whole text as a temperature, else None: `350 F`, `350-375 °F`, `180 C fan`, `gas 4`, `-18 C`."""
    text = text.strip()
    if len(text) > LONGEST_TEXT:
        return None
    return _gas(text) if _GAS.match(text) else _degrees(text)


def _gas(text: str) -> Temperature | None:
    found = _GAS.match(text)
    ends = _ends(text, found.end() if found else 0)
    if ends is None or ends[2] != len(text) or not {ends[0], ends[1]} <= GAS_MARKS.keys():
        return None
    return Temperature(stated="gas", low=ends[0], high=ends[1], fan=False)


def _degrees(text: str) -> Temperature | None:
    first = _FAN_FIRST.match(text)
    ends = _ends(text, first.end() if first else 0)
    scale = _SCALE.match(text, ends[2]) if ends else None
    if ends is None or scale is None:
        return None
    last = _FAN.match(text, scale.end())
    if (last.end() if last else scale.end()) != len(text):
        return None
    stated: Scale = "F" if scale["F"] else "C"
    return Temperature(stated=stated, low=ends[0], high=ends[1], fan=bool(first or last))


def _ends(text: str, start: int) -> tuple[Fraction, Fraction, int] | None:
    """Lower end, upper end and the index after them; a range that does not rise is none."""
    first = _signed(text, start)
    if first is None:
        return None
    degree = _SCALE.match(text, first[1]) or _DEGREE.match(text, first[1])
    between = TO.match(text, degree.end() if degree else first[1])
    second = _signed(text, between.end()) if between else None
    if second is None:
        return first[0], first[0], first[1]
    if degree is not None and not _same_scale(degree.group(), text, second[1]):
        return None
    return (first[0], second[0], second[1]) if first[0] < second[0] else None


def _same_scale(first: str, text: str, after: int) -> bool:
    """`350 F-375 F` and `350°-375°F` hold together; `350 F-180 C` is two temperatures, not a range."""
    one, other = _SCALE.fullmatch(first), _SCALE.match(text, after)
    return one is None or (other is not None and bool(one["F"]) == bool(other["F"]))


def _signed(text: str, start: int) -> tuple[Fraction, int] | None:
    minus = _MINUS.match(text, start)
    found = read_single(text, minus.end() if minus else start)
    if found is None or not minus:
        return found
    return -found[0], found[1]
