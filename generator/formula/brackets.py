"""What a bracket of an ingredient line holds: further measures of the same amount, or a note."""

import re

from generator.measure.quantity import Quantity, read_quantity
from generator.measure.unit import Spoons

_ABOUT = re.compile(r"(?:about|around|approx\.?|approximately|ca\.?|or)\s{1,9}", re.I)
_BETWEEN = re.compile(r"\s{0,9}(?:/|=|,|;|\bor\b)\s{0,9}", re.I)
_EACH = re.compile(r"\s{1,9}each\s{0,9}$", re.I)
_MOST = 6
"""More measures than this nobody writes of one amount."""


def read_measures(text: str, *, spoons: Spoons) -> tuple[Quantity, ...]:
    """The measures that a text holds, such as `1 packet / 7 g`; none unless the whole of it is measures."""
    found: list[Quantity] = []
    at = 0
    while at < len(text) and len(found) < _MOST:
        about = _ABOUT.match(text, at)
        at = about.end() if about else at
        read = read_quantity(text, spoons=spoons, start=at)
        if read is None or read[0].unit is None:
            return ()
        found.append(read[0])
        between = _BETWEEN.match(text, read[1])
        if between is None or between.end() == read[1]:
            return tuple(found) if not text[read[1] :].strip() else ()
        at = between.end()
    return tuple(found) if at >= len(text) else ()


def read_each(text: str, count: Quantity | None, *, spoons: Spoons) -> tuple[Quantity, ...]:
    """`150 g each` behind a count: so many times the measure. Empty where the text says no such thing."""
    each = _EACH.search(text)
    if each is None or count is None or not count.amount.is_exact:
        return ()
    measures = read_measures(text[: each.start()].strip(), spoons=spoons)
    return tuple(times(measure, count) for measure in measures)


def times(measure: Quantity, count: Quantity) -> Quantity:
    return Quantity(amount=measure.amount.scaled(count.amount.low), unit=measure.unit, text=measure.text)


def closing(text: str, opening: int) -> int | None:
    """Where the bracket that opens at `opening` is closed, or None."""
    depth = 0
    for index in range(opening, len(text)):
        depth += (text[index] == "(") - (text[index] == ")")
        if depth == 0:
            return index
    return None
