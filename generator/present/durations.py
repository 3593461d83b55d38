"""Times, lengths and dates in words."""

from datetime import date
from fractions import Fraction
from math import ceil, floor

from generator.measure.length import Length, Tin
from generator.measure.number import Range
from generator.present.amounts import decimal, mixed

_DAY = 1440
_INCH = Fraction("25.4")
_MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)


def minutes_words(minutes: Range) -> str:
    """`20 min`, `12–15 min`, `1 h 30 min`, `1 h 10 min to 1 h 30 min`, `2–3 h`, `2 days`, `30 s`."""
    low, high = _time(minutes.low), _time(minutes.high)
    if low == high:
        return high
    low_number, _, low_unit = low.partition(" ")
    high_number, _, high_unit = high.partition(" ")
    if low_unit.rstrip("s") == high_unit.rstrip("s") and " " not in low_unit + high_unit:
        return f"{low_number}–{high_number} {high_unit}"
    return f"{low} to {high}"


def _time(minutes: Fraction) -> str:
    if 0 < minutes < 1:
        return f"{decimal(minutes * 60, places=0)} s"
    if minutes >= 2 * _DAY and minutes % _DAY == 0:
        return f"{decimal(minutes / _DAY, places=0)} days"
    rounded = floor(minutes + Fraction(1, 2))
    hours, rest = divmod(rounded, 60)
    if not hours:
        return f"{decimal(minutes, places=1)} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def iso_duration(minutes: Fraction) -> str:
    """ISO 8601, such as PT1H30M; "" for nothing. The longest time is meant, rounded up to a minute."""
    whole = ceil(minutes)
    hours, rest = divmod(whole, 60)
    if not whole:
        return ""
    return "PT" + (f"{hours}H" if hours else "") + (f"{rest}M" if rest else "")


def iso_seconds(seconds: int) -> str:
    """ISO 8601 of the length of a film."""
    hours, rest = divmod(seconds, 3600)
    minutes, left = divmod(rest, 60)
    parts = ((hours, "H"), (minutes, "M"), (left, "S"))
    return "PT" + ("".join(f"{number}{unit}" for number, unit in parts if number) or "0S")


def day_words(day: date | None, language: str) -> str:
    """`September 20, 2026` for American readers, `20 September 2026` for others."""
    if day is None:
        return ""
    month = _MONTHS[day.month - 1]
    if language.casefold() in ("en-us", "en"):
        return f"{month} {day.day}, {day.year}"
    return f"{day.day} {month} {day.year}"


def length_words(length: Length) -> tuple[str, str]:
    """The length as stated, and in the other system."""
    metric, inches = _metric(length.millimetres), _inches(length.millimetres)
    if length.stated == "in":
        return f"{_ends(length.millimetres.scaled(1 / _INCH))} in", metric
    return (
        metric if length.stated == "mm" else f"{_ends(length.millimetres.scaled(Fraction(1, 10)))} cm",
        inches,
    )


def _ends(amount: Range) -> str:
    low, high = mixed_or_decimal(amount.low), mixed_or_decimal(amount.high)
    return low if low == high else f"{low}–{high}"


def mixed_or_decimal(value: Fraction) -> str:
    return (
        decimal(value, places=2)
        if value % 1 not in (Fraction(1, 4), Fraction(1, 2), Fraction(3, 4))
        else mixed(value)
    )


def _metric(millimetres: Range) -> str:
    if millimetres.high < 20:
        return f"{_ends(Range(_near(millimetres.low, 1), _near(millimetres.high, 1)))} mm"
    step = Fraction(1, 2) if millimetres.high < 100 else Fraction(1)
    ends = Range(_near(millimetres.low / 10, step), _near(millimetres.high / 10, step))
    return f"{_ends(ends)} cm"


def _inches(millimetres: Range) -> str:
    quarter = Fraction(1, 4)
    return f"{_ends(Range(_near(millimetres.low / _INCH, quarter), _near(millimetres.high / _INCH, quarter)))} in"


def _near(value: Fraction, step: Fraction | int) -> Fraction:
    return floor(value / step + Fraction(1, 2)) * Fraction(step)


def tin_words(tin: Tin | None, written: str) -> str:
    """The tin as written with true times signs, its sides in the other system after it."""
    if tin is None or not tin.sides:
        return written
    pairs = [length_words(side) for side in tin.sides]
    other = " × ".join(pair[1].rsplit(" ", 1)[0] for pair in pairs)
    unit = pairs[0][1].rsplit(" ", 1)[1]
    shown = " × ".join(part.strip() for part in written.replace("×", "x").split(" x "))
    return f"{shown} ({other} {unit})"
