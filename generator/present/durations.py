"""Times, lengths and dates in words."""

from collections.abc import Callable
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
    """The length as stated, and in the other system: metric in decimals, inches in fractions of a ruler."""
    metric, inches = _metric(length.millimetres), _inches(length.millimetres)
    if length.stated == "in":
        return f"{_ends(length.millimetres.scaled(1 / _INCH), mixed)} in", metric
    scale, unit = (Fraction(1), "mm") if length.stated == "mm" else (Fraction(1, 10), "cm")
    return f"{_ends(length.millimetres.scaled(scale), _decimal)} {unit}", inches


def _ends(amount: Range, words: Callable[[Fraction], str]) -> str:
    low, high = words(amount.low), words(amount.high)
    return low if low == high else f"{low}–{high}"


def _decimal(value: Fraction) -> str:
    return decimal(value, places=2)


def _metric(millimetres: Range) -> str:
    """Millimetres below 2 cm, half centimetres below 10, whole ones above."""
    if millimetres.high < 20:
        return f"{_ends(_rounded(millimetres, Fraction(1)), _decimal)} mm"
    step = Fraction(1, 2) if millimetres.high < 100 else Fraction(1)
    return f"{_ends(_rounded(millimetres.scaled(Fraction(1, 10)), step), _decimal)} cm"


def _inches(millimetres: Range) -> str:
    """Quarters of an inch, eighths below one inch, and never less than an eighth."""
    inches = millimetres.scaled(1 / _INCH)
    step = Fraction(1, 8) if inches.high < 1 else Fraction(1, 4)
    rounded = _rounded(inches, step)
    return f"{_ends(Range(max(rounded.low, step), max(rounded.high, step)), mixed)} in"


def _rounded(amount: Range, step: Fraction) -> Range:
    return Range(_near(amount.low, step), _near(amount.high, step))


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
