"""How long something takes, and where on a film something is shown."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from generator.measure.number import TO, Range, read_number, total
from generator.measure.unit import Kind, Unit

LONGEST_TEXT = 100


@dataclass(frozen=True, slots=True, kw_only=True)
class Duration:
    """A length of time in minutes."""

    minutes: Range


def _time(name: str, minutes: Fraction, plural: str) -> Unit:
    return Unit(name=name, kind=Kind.TIME, factor=minutes, plural=plural)


_WEEK = _time("week", Fraction(7 * 24 * 60), "weeks")
_DAY = _time("day", Fraction(24 * 60), "days")
_HOUR = _time("h", Fraction(60), "h")
_MINUTE = _time("min", Fraction(1), "min")
_SECOND = _time("s", Fraction(1, 60), "s")
TIMES: Mapping[str, Unit] = MappingProxyType(
    dict.fromkeys(("week", "weeks"), _WEEK)
    | dict.fromkeys(("d", "day", "days"), _DAY)
    | dict.fromkeys(("h", "hr", "hrs", "hour", "hours"), _HOUR)
    | dict.fromkeys(("min", "mins", "minute", "minutes"), _MINUTE)
    | dict.fromkeys(("s", "sec", "secs", "second", "seconds"), _SECOND)
)

_UNIT = re.compile(r"\s{0,3}([A-Za-z]{1,7})(?![A-Za-z])\.?")
_AND = re.compile(r"\s{0,3}(?:and\s{1,3})?", re.IGNORECASE)
_CLOCK = re.compile(r"(?:([0-9]{1,3}):(?=[0-9]{2}:))?([0-9]{1,2}):([0-9]{2})")


def read_duration(text: str) -> Duration | None:
    """The whole text as a time: `5 min`, `1 h 30 min`, `12-15 min`, `1 1/2 hours`, `45 min to 1 h`.

    None for anything else: a number without its unit (`1 h 30`), a word without a number (`overnight`).
    """
    text = text.strip()
    if len(text) > LONGEST_TEXT:
        return None
    first = _sum(text, 0)
    if first is None or first[1] == len(text):
        return Duration(minutes=first[0]) if first else None
    to = TO.match(text, first[1])
    second = _sum(text, to.end()) if to else None
    if second is None or second[1] != len(text):
        return None
    rises = first[0].is_exact and second[0].is_exact and first[0].low < second[0].low
    return Duration(minutes=Range(first[0].low, second[0].low)) if rises else None


def _sum(text: str, start: int) -> tuple[Range, int] | None:
    """Parts in falling units, each unit once: weeks, days, h, min, s."""
    parts: list[tuple[Range, Unit]] = []
    end = start
    while (part := _part(text, _after_and(text, end) if parts else end)) is not None:
        if parts and part[1].factor >= parts[-1][1].factor:
            break
        parts.append(part[:2])
        end = part[2]
    return (total(amount.scaled(unit.factor) for amount, unit in parts), end) if parts else None


def _after_and(text: str, end: int) -> int:
    found = _AND.match(text, end)
    return found.end() if found else end


def _part(text: str, start: int) -> tuple[Range, Unit, int] | None:
    number = read_number(text, start, words=True)
    found = _UNIT.match(text, number[1]) if number else None
    unit = TIMES.get(found[1].casefold()) if found else None
    if number is None or found is None or unit is None:
        return None
    return number[0], unit, found.end()


def read_clock(text: str) -> int | None:
    """Seconds from `0:00`, `18:40`, `1:02:03`; None for anything else. Minutes and seconds end at 59."""
    found = _CLOCK.fullmatch(text.strip()) if len(text) <= LONGEST_TEXT else None
    if found is None:
        return None
    hours, minutes, seconds = int(found[1] or 0), int(found[2]), int(found[3])
    return None if minutes > 59 or seconds > 59 else 3600 * hours + 60 * minutes + seconds
