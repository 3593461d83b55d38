"""Temperatures for readers: the stated one as stated, the other scale rounded once."""

from fractions import Fraction
from functools import lru_cache
from typing import Final, Literal

from generator.formula.model import Heat
from generator.measure.number import Range
from generator.measure.same import Same
from generator.measure.temperature import DIAL_CELSIUS, nearest
from generator.present.amounts import decimal, ends, mixed
from generator.present.views import HeatView, MentionView
from generator.settings import OvenC
from generator.wording.speech import say, voice

HeatFirst = Literal["", "F", "C"]
"""Which scale stands first; "" as the maker wrote it."""

_SCALES: Final = ("F", "C")


def fahrenheit(heat: Heat) -> Range:
    """°F: as stated, the chart's value for a gas mark, else rounded to 5 for an oven and to 1 otherwise."""
    exact = heat.temperature.fahrenheit()
    return exact if heat.temperature.stated in ("F", "gas") else _rounded(exact, heat)


def celsius(heat: Heat, *, oven_c: OvenC) -> Range:
    """°C: as stated, else rounded to 5 for an oven (or as British oven dials have it), to 1 otherwise."""
    if heat.temperature.stated == "C":
        return heat.temperature.celsius()
    if heat.kind == "oven" and oven_c == "dial":
        known = heat.temperature.fahrenheit()
        return Range(_dial(known.low), _dial(known.high))
    return _rounded(heat.temperature.celsius(), heat)


def _rounded(exact: Range, heat: Heat) -> Range:
    step = 5 if heat.kind == "oven" else 1
    return Range(Fraction(nearest(exact.low, step)), Fraction(nearest(exact.high, step)))


def _dial(degrees_f: Fraction) -> Fraction:
    printed = DIAL_CELSIUS.get(int(degrees_f)) if degrees_f.denominator == 1 else None
    return Fraction(printed) if printed else Fraction(nearest((degrees_f - 32) * Fraction(5, 9), 5))


def degrees(heat: Range, scale: str) -> str:
    """`350 °F`, `350–375 °F`."""
    number = ends(decimal_signed(heat.low), decimal_signed(heat.high))
    return say("{number} °F", number=number) if scale == "F" else say("{number} °C", number=number)


def decimal_signed(value: Fraction) -> str:
    return f"−{decimal(-value, places=1)}" if value < 0 else decimal(value, places=1)


def heat_words(heat: Heat, *, oven_c: OvenC, first: HeatFirst = "") -> tuple[str, str]:
    """What stands first and what follows in brackets: as stated, or with °F or °C first.

    A fan oven says so on both, for neither number is changed for it.
    """
    return _heat_words(Same(heat), oven_c, first, voice().tag)


@lru_cache(maxsize=1024)
def _heat_words(of: Same[Heat], oven_c: OvenC, first: HeatFirst, language: str) -> tuple[str, str]:
    """A step tells it in its sentence and beside it; `language` keeps the words of one apart."""
    heat = of.thing
    in_f, in_c = degrees(fahrenheit(heat), "F"), degrees(celsius(heat, oven_c=oven_c), "C")
    if heat.temperature.fan:
        in_f, in_c = (say("{degrees} fan", degrees=each) for each in (in_f, in_c))
    gas = _gas(heat) if heat.temperature.stated == "gas" else ""
    if gas and not first:
        return gas, f"{in_f}, {in_c}"
    lead, other = (in_f, in_c) if (first or heat.temperature.stated) == "F" else (in_c, in_f)
    return lead, f"{other}, {gas}" if gas else other


def _gas(heat: Heat) -> str:
    return say("gas mark {number}", number=ends(mixed(heat.temperature.low), mixed(heat.temperature.high)))


def heat_mention(heat: Heat, *, oven_c: OvenC) -> MentionView:
    """`350 °F` with `175 °C` after it, and the same with either scale first."""
    lead, tail = heat_words(heat, oven_c=oven_c)
    in_f, in_c = (heat_words(heat, oven_c=oven_c, first=first) for first in _SCALES)
    return MentionView(kind="heat", lead=lead, tail=tail, in_f=in_f, in_c=in_c)


def heat_view(heat: Heat, *, oven_c: OvenC) -> HeatView:
    written, in_f, in_c = (heat_words(heat, oven_c=oven_c, first=first) for first in ("", *_SCALES))
    return HeatView(kind=heat.kind, words=_told(written), in_f=_told(in_f), in_c=_told(in_c))


def _told(words: tuple[str, str]) -> str:
    return f"{words[0]} ({words[1]})"
