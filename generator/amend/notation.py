"""An amount worded as another one was: by the rules of the pages, in the maker's own way of writing."""

import re
from collections.abc import Iterator
from fractions import Fraction
from functools import partial

from generator.measure.density import apart
from generator.measure.number import SPACE, VULGAR, Range, read_number
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.unit import Kind, Spoons, Unit, unit_named
from generator.present.amounts import GLYPHS, grams_on_scale, pointed, volume_words
from generator.wording.speech import NOTATION, speaking

NEAR = Fraction(25, 1000)
"""How far a worded amount may be from the one that is meant, as on the pages."""
_SCOOPED = ("cup", "tbsp", "tsp")
_ASCII = {sign: f"{value.numerator}/{value.denominator}" for value, sign in GLYPHS.items()}
_SIGN = re.compile(f"([0-9]?)([{''.join(GLYPHS.values())}])")
_WORD = re.compile(r"[A-Za-z][A-Za-z. ]*$")
_SIZED = re.compile(rf"^(?:level|scant|heaped|heaping|rounded|generous|packed){SPACE}+", re.I)
_DECIMALS = re.compile(r"[0-9]\.([0-9]{1,3})")
_PLACES = {"kg": 3, "oz": 1, "lb": 2, "l": 2, "dl": 1, "cl": 1, "fl oz": 1}
_SPELLED = 4
"""Letters from which on a unit is a word of a language, with a plural."""


def worded_like(old: Quantity, amount: Range, *, spoons: Spoons, joined: bool = False) -> str | None:
    """`amount`, in grams, millilitres or pieces, as the measure `old` was written; None where that is not near.

    `joined` is for a measure between slashes, where a fraction with a slash and a sum of spoons would mislead.
    """
    with speaking(NOTATION):
        for text in _joined(old, amount, spoons) if joined else _candidates(old, amount, spoons):
            read = read_quantity(text, spoons=spoons)
            if read is not None and read[1] == len(text) and _is_near(_in_base(read[0]), amount):
                return text
    return None


def _in_base(quantity: Quantity) -> Range:
    return quantity.amount.scaled(quantity.unit.factor) if quantity.unit else quantity.amount


def _is_near(one: Range, other: Range) -> bool:
    ends = ((one.low, other.low), (one.high, other.high))
    return all(apart(Range.exact(a), Range.exact(b)) <= NEAR for a, b in ends if a and b)


def _joined(old: Quantity, amount: Range, spoons: Spoons) -> Iterator[str]:
    """In the unit itself, with fraction signs."""
    own = amount.scaled(1 / (old.unit.factor if old.unit else Fraction(1)))
    for style in (_usual, _eighths, _fine):
        low, high = style(own.low, old.unit), style(own.high, old.unit)
        number = low if low == high else f"{low}{_dash(old.text)}{high}"
        yield with_number(old.text, number, own.high, spoons=spoons)


def _candidates(old: Quantity, amount: Range, spoons: Spoons) -> Iterator[str]:
    unit = old.unit
    decimals = _DECIMALS.search(old.text)
    if unit is not None and unit.name in _SCOOPED and not decimals:
        words = volume_words(amount, spoons)
        yield _sized(old.text, _spelled(_in_notation(words, old.text), old, unit, spoons))
    scale = unit.factor if unit else Fraction(1)
    own = amount.scaled(1 / scale)
    places = len(decimals[1]) if decimals else 0
    for style in (*((partial(_decimal, places=places),) if decimals else ()), _usual, _eighths, _fine):
        low, high = style(own.low, unit), style(own.high, unit)
        number = low if low == high else f"{low}{_dash(old.text)}{high}"
        yield with_number(old.text, _in_notation(number, old.text), own.high, spoons=spoons)


def _usual(value: Fraction, unit: Unit | None) -> str:
    if unit is not None and unit.name in ("g", "ml"):
        return grams_on_scale(value)
    if unit is not None and unit.name in _PLACES:
        return pointed(value, places=_PLACES[unit.name] + (value < 1))
    return _eighths(value, unit)


def _eighths(value: Fraction, _: Unit | None) -> str:
    """The nearest fraction that a kitchen knows, thirds included."""
    whole = int(value)
    parts = (Fraction(0), *GLYPHS, Fraction(1))
    near = min(parts, key=lambda part: abs(value - whole - part))
    total = whole + near
    return f"{int(total) or ''}{GLYPHS.get(total % 1, '')}" or "0"


def _fine(value: Fraction, _: Unit | None) -> str:
    return pointed(value, places=2)


def _decimal(value: Fraction, _: Unit | None, *, places: int) -> str:
    """With as many decimals as there were."""
    return pointed(value, places=places)


def _in_notation(words: str, like: str) -> str:
    """Fractions as signs, with a slash or as decimals, and ranges with the dash that was there."""
    words = words.replace("–", _dash(like))
    if any(sign in like for sign in VULGAR):
        apart_ = re.search(rf"[0-9]{SPACE}[{''.join(VULGAR)}]", like) is not None
        return _SIGN.sub(lambda found: f"{found[1]}{' ' if apart_ and found[1] else ''}{found[2]}", words)
    if re.search(r"[0-9]\.[0-9]", like):
        return re.sub(f"[0-9]*[{''.join(GLYPHS.values())}]", _as_decimal, words)
    return _SIGN.sub(lambda found: f"{found[1]}{' ' if found[1] else ''}{_ASCII[found[2]]}", words)


def _as_decimal(found: "re.Match[str]") -> str:
    read = read_number(found[0])
    return pointed(read[0].low, places=2) if read else found[0]


def _dash(like: str) -> str:
    found = re.search(r"[0-9½¼¾⅓⅔⅛⅜⅝⅞]\s?(–|—| to )\s?[0-9½¼¾⅓⅔⅛⅜⅝⅞]", like)
    return found[1] if found else "-"


def _spelled(words: str, old: Quantity, unit: Unit, spoons: Spoons) -> str:
    """Cups as the maker spells them; a kind of spoon that was not there keeps its usual word."""
    own = _WORD.search(old.text)
    if own is None or unit_named(own[0], spoons=spoons) != unit:
        return words

    def word(found: "re.Match[str]") -> str:
        named = unit_named(found[0], spoons=spoons)
        return _numbered(own[0], found[0] == unit.plural, spoons) if named == unit else found[0]

    return re.sub(r"[A-Za-z]+", word, words)


def _sized(old: str, words: str) -> str:
    sized = _SIZED.match(old)
    return f"{sized[0]}{words}" if sized else words


def number_of(old: str) -> Range | None:
    """The number of a measure, behind a word such as “heaped”."""
    sized = _SIZED.match(old)
    read = read_number(old, sized.end() if sized else 0, words=True)
    return read[0] if read else None


def with_number(old: str, number: str, value: Fraction, *, spoons: Spoons) -> str:
    """The measure `old` with another number before its unit, and the unit's word in the number that this asks for."""
    sized = _SIZED.match(old)
    start = sized.end() if sized else 0
    read = read_number(old, start, words=True)
    if read is None:
        return number
    rest = old[read[1] :]
    gap = rest[: len(rest) - len(rest.lstrip(" \u00a0\u2009\u202f-"))]
    word = rest[len(gap) :]
    return f"{old[:start]}{number}{gap}{_numbered(word, value > 1, spoons)}"


def _numbered(word: str, many: bool, spoons: Spoons) -> str:
    """A unit's word for one or for many: “cup” and “cups”; what is no word, such as “g” and “tbsp”, stays."""
    unit = unit_named(word, spoons=spoons)
    if unit is None:
        return word
    if word in (unit.name, unit.plural):
        return unit.plural if many else unit.name
    if len(word) < _SPELLED or unit.kind is Kind.COUNT:
        return word
    one = word.removesuffix("s")
    other = f"{one}s" if many else one
    return other if unit_named(other, spoons=spoons) == unit else word
