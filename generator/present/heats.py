"""Temperatures for readers: the stated one as stated, the other scale rounded once."""

from fractions import Fraction

from generator.formula.model import Heat
from generator.measure.number import Range
from generator.measure.temperature import DIAL_CELSIUS, nearest
from generator.present.amounts import decimal, mixed
from generator.present.views import HeatView, MentionView
from generator.settings import OvenC


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


def _degrees(degrees: Range, scale: str) -> str:
    low, high = decimal_signed(degrees.low), decimal_signed(degrees.high)
    return f"{low} °{scale}" if low == high else f"{low}–{high} °{scale}"


def decimal_signed(value: Fraction) -> str:
    return f"−{decimal(-value, places=1)}" if value < 0 else decimal(value, places=1)


def heat_mention(heat: Heat, *, oven_c: OvenC) -> MentionView:
    """`350 °F` with `175 °C` after it; a fan oven says so on both, for neither number is changed for it."""
    in_f, in_c = _degrees(fahrenheit(heat), "F"), _degrees(celsius(heat, oven_c=oven_c), "C")
    fan = " fan" if heat.temperature.fan else ""
    if heat.temperature.stated == "gas":
        mark = mixed(heat.temperature.low)
        if heat.temperature.low != heat.temperature.high:
            mark = f"{mark}–{mixed(heat.temperature.high)}"
        return MentionView(kind="heat", lead=f"gas mark {mark}", tail=f"{in_f}, {in_c}")
    first, second = (in_f, in_c) if heat.temperature.stated == "F" else (in_c, in_f)
    return MentionView(kind="heat", lead=first + fan, tail=second + fan)


def heat_view(heat: Heat, *, oven_c: OvenC) -> HeatView:
    return HeatView(kind=heat.kind, words=heat_mention(heat, oven_c=oven_c).text)
