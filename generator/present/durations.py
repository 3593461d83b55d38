"""Times and lengths in words."""

import re
from fractions import Fraction
from math import ceil, floor

from generator.measure.length import SHAPES, Length, Tin
from generator.measure.number import Range
from generator.present.amounts import decimal, ends, mixed, number_range
from generator.wording.forms import number
from generator.wording.speech import later, say, say_of, voice
from generator.wording.vocabulary import TIN_WORDS

_DAY = 1440
_INCH = Fraction("25.4")
_MM, _CM, _IN = later("{number} mm"), later("{number} cm"), later("{number} in")
_IN_A_TIN = {"mm": _MM, "cm": _CM, "in": _IN, "inch": _IN, "inches": _IN, "l": later("{number} L")}
_SIDES = re.compile(r"([\d¼½¾⅓⅔⅛⅜⅝⅞][\d¼½¾⅓⅔⅛⅜⅝⅞.,/ x×–-]*?)\s?(mm|cm|in|inch|inches|l)\b", re.IGNORECASE)
_SHAPE = re.compile(rf"\b(?:{'|'.join(SHAPES)})\b", re.IGNORECASE | re.ASCII)
_CUPS = re.compile(r"\b(\d+)[\s-]?cups?\b", re.IGNORECASE)
_TIN_WORD = re.compile(rf"\b(?:{'|'.join(TIN_WORDS)})\b", re.IGNORECASE)


def minutes_words(minutes: Range) -> str:
    """`20 min`, `12–15 min`, `1 h 30 min`, `1 h 10 min to 1 h 30 min`, `2–3 h`, `2 days`, `30 s`."""
    (low, low_unit), (high, high_unit) = _time(minutes.low), _time(minutes.high)
    if low_unit == high_unit and low_unit:
        return say(low_unit, number=ends(low, high))
    low_words, high_words = (
        say(unit, number=number) if unit else number for number, unit in ((low, low_unit), (high, high_unit))
    )
    return high_words if low_words == high_words else say("{low} to {high}", low=low_words, high=high_words)


def _time(minutes: Fraction) -> tuple[str, str]:
    """The number and how its unit is said; all in words, and "", where it takes two units."""
    if 0 < minutes < 1:
        return decimal(minutes * 60, places=0), later("{number} s")
    if minutes >= 2 * _DAY and minutes % _DAY == 0:
        return decimal(minutes / _DAY, places=0), later("{number} days")
    rounded = floor(minutes + Fraction(1, 2))
    hours, rest = divmod(rounded, 60)
    if not hours:
        return decimal(minutes, places=1), later("{number} min")
    if not rest:
        return str(hours), later("{number} h")
    return say("{hours} h {minutes} min", hours=hours, minutes=rest), ""


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


def length_words(length: Length) -> tuple[str, str]:
    """The length as stated, and in the other system: metric in decimals, inches in fractions of a ruler."""
    metric, inches = _metric(length.millimetres), _inches(length.millimetres)
    if length.stated == "in":
        return say(_IN, number=number_range(length.millimetres.scaled(1 / _INCH), mixed)), metric
    scale, unit = (Fraction(1), _MM) if length.stated == "mm" else (Fraction(1, 10), _CM)
    return say(unit, number=number_range(length.millimetres.scaled(scale), _decimal)), inches


def _decimal(value: Fraction) -> str:
    return decimal(value, places=2)


def _metric(millimetres: Range) -> str:
    """Millimetres below 2 cm, half centimetres below 10, whole ones above."""
    if millimetres.high < 20:
        return say(_MM, number=number_range(_rounded(millimetres, Fraction(1)), _decimal))
    step = Fraction(1, 2) if millimetres.high < 100 else Fraction(1)
    return say(_CM, number=number_range(_rounded(millimetres.scaled(Fraction(1, 10)), step), _decimal))


def _inches(millimetres: Range) -> str:
    """Quarters of an inch, eighths below one inch, and never less than an eighth."""
    inches = millimetres.scaled(1 / _INCH)
    step = Fraction(1, 8) if inches.high < 1 else Fraction(1, 4)
    rounded = _rounded(inches, step)
    return say(_IN, number=number_range(Range(max(rounded.low, step), max(rounded.high, step)), mixed))


def _rounded(amount: Range, step: Fraction) -> Range:
    return Range(_near(amount.low, step), _near(amount.high, step))


def _near(value: Fraction, step: Fraction | int) -> Fraction:
    return floor(value / step + Fraction(1, 2)) * Fraction(step)


def tin_words(tin: Tin | None, written: str) -> str:
    """The tin as written with true times signs, its sides in the other system after it."""
    if tin is None or not tin.sides:
        return named_tin(written)
    pairs = [length_words(side) for side in tin.sides]
    other = " × ".join(pair[1].rsplit(" ", 1)[0] for pair in pairs)
    unit = pairs[0][1].rsplit(" ", 1)[1]
    shown = " × ".join(part.strip() for part in written.replace("×", "x").split(" x "))
    return f"{named_tin(shown)} ({other} {unit})"


def named_tin(text: str) -> str:
    """With the words of the notation in the language that is spoken: its kind, its units, "holds", "hole"."""
    if not voice().catalogue:
        return text
    shapes = _SHAPE.sub(lambda found: say_of("tin", found[0].lower()), text, count=1)
    sides = _SIDES.sub(lambda found: say(_IN_A_TIN[found[2].lower()], number=number(found[1])), shapes)
    cups = _CUPS.sub(lambda found: say_of("tin", "{number} cups", number=found[1]), sides)
    return _TIN_WORD.sub(lambda found: say_of("tin", found[0].lower()), cups)
