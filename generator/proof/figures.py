"""Where a text states an amount, a temperature or a time: a number with its unit."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

_FRACTIONS = "¼½¾⅐-⅞"
# A line end parts a number from the next line's first word.
_S = r"[^\S\n]"
_NUMBER = rf"[−-]?(?:\d+(?:[.,]\d+)*(?:{_S}?[{_FRACTIONS}])?|\d+/\d+|[{_FRACTIONS}])"
_UNIT = (
    r"(?:kilograms?|grams?|kg|g|mg|millilitres?|milliliters?|ml|cl|dl|litres?|liters?|l|fl\.?\s?oz|ounces?|oz|"
    r"pounds?|lbs?|cups?|tablespoons?|tbsp|teaspoons?|tsp|sticks?|pints?|quarts?|"
    r"minutes?|mins?|hours?|hrs?|h|seconds?|sec|s|days?|weeks?|months?|cm|mm|inches|inch|in|"
    # German; the symbols are the same.
    r"EL|TL|Tassen?|Minuten?|Stunden?|Sekunden?|Tagen?|Wochen?|Monaten?|"
    r"degrees|°\s?[CFcf]|°|[CF](?=\b)|%)"
)
_MEASURED = rf"{_NUMBER}(?:{_S}?(?:–|-|−|to|bis){_S}?{_NUMBER})?{_S}*{_UNIT}(?![^\W\d_])"
_GAS = rf"(?:gas(?:{_S}+mark)?|Gasstufe){_S}+{_NUMBER}(?:{_S}?(?:–|-){_S}?{_NUMBER})?"
FIGURE = re.compile(rf"(?<![\w.:/=])(?:{_MEASURED}|{_GAS})", re.IGNORECASE)
"""A measured figure: "430 g", "12–15 min", "¾ cup", "−18 °C", "45.6 %", "gas 4"."""
_JOINT = re.compile(r"[\s+]*(?:to|bis)?[\s+]*", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A figure with its place in the text."""

    words: str
    start: int
    end: int


def figure_places(text: str) -> Iterator[tuple[int, int]]:
    """Where the measured figures of a text stand, in order."""
    return (found.span() for found in FIGURE.finditer(text))


def figures_in(text: str) -> Iterator[Figure]:
    """Every measured figure of a text, in order."""
    for found in FIGURE.finditer(text):
        yield Figure(words=found.group(), start=found.start(), end=found.end())


def are_joined(text: str, one: Figure, other: Figure) -> bool:
    """Whether two neighbours are one measure: "¾ cup + 1 tbsp", "3 h 5 min", "45 min to 1 h"."""
    return _JOINT.fullmatch(text, one.end, other.start) is not None
