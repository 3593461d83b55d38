"""A number with its unit, as it begins an ingredient line or stands in braces."""

import re
from dataclasses import dataclass

from generator.measure.number import SPACE, Range, read_number
from generator.measure.unit import LONGEST_WORD, Kind, Spoons, Unit, unit_named


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantity:
    """`amount` of `unit`; no unit is a bare count (2 eggs). `text` is the stretch read, as written."""

    amount: Range
    unit: Unit | None
    text: str

    def grams(self) -> Range | None:
        """Grams, where the unit is one of mass."""
        return self._in(Kind.MASS)

    def millilitres(self) -> Range | None:
        """Millilitres, where the unit is one of volume."""
        return self._in(Kind.VOLUME)

    def _in(self, kind: Kind) -> Range | None:
        if self.unit is None or self.unit.kind is not kind:
            return None
        return self.amount.scaled(self.unit.factor)


_SIZES = "level|scant|heaped|heaping|rounded|generous|packed|large|medium|small"
_SIZE = re.compile(f"(?:{_SIZES}){SPACE}{{1,3}}", re.IGNORECASE)
# A hyphen binds a measure to its number (`8-oz block`); a count word after a hyphen belongs to the item.
_GAP = re.compile(f"{SPACE}{{1,3}}|-|")
_FLUID = f"(?:fl|fluid)\\.?{SPACE}{{0,2}}(?:oz|ozs|ounces?)"
_NAME = re.compile(f"(?:{_FLUID}|[A-Za-z]{{1,{LONGEST_WORD}}})(?![A-Za-z])", re.IGNORECASE)
# After a unit: space, end or punctuation. A hyphen makes another word of it (`clove-studded`), a degree or an
# inch sign another measure, a colon and a digit a time.
_CLOSED = re.compile(r"(?![\w'’\u2010\u2011%°º℃℉\"″-]|:[0-9])")
_DOT = re.compile(r"\.(?![\w'’-])")
_PLUS = re.compile(f"{SPACE}{{0,3}}\\+{SPACE}{{0,3}}|{SPACE}{{1,3}}(?:plus|and|&){SPACE}{{1,3}}")
_SPACES = re.compile(f"{SPACE}{{1,3}}")
_MOST_TERMS = 4
_METRIC = frozenset({"g", "kg", "mg", "ml", "cl", "dl", "l"})

Part = tuple[Range, Unit, int]


def read_quantity(text: str, *, spoons: Spoons, start: int = 0) -> tuple[Quantity, int] | None:
    """The quantity that begins at `start`, and the index after it; None where none begins there.

    Quantities of one kind written side by side are one: `1 lb 4 oz`, `¾ cup + 2 tbsp`, `1 8-oz block` (a
    count of sized packs). A number without a unit is a bare count and ends after the number. Words such
    as level, heaped, scant or large may stand before the number or the unit; they change no amount and
    stay in `text`. `a` is a number only before a unit (`a pinch`). A following `of` is left to the
    caller, and so is a count word with nothing after it, which may be the item itself (`3 cloves`).
    """
    size = _SIZE.match(text, start)
    begin = size.end() if size else start
    part = _measure(text, begin, spoons)
    if part is not None:
        amount, end = _with_more(text, part, spoons)
        return Quantity(amount=amount, unit=part[1], text=text[start:end]), end
    count = read_number(text, begin)
    if count is None or not _CLOSED.match(text, count[1]):
        return None
    return _sized_packs(text, start, count, spoons) or (
        Quantity(amount=count[0], unit=None, text=text[start : count[1]]),
        count[1],
    )


def _measure(text: str, start: int, spoons: Spoons) -> Part | None:
    """A number and its unit."""
    number = read_number(text, start, words=True)
    if number is None:
        return None
    amount, end = number
    gap = _GAP.match(text, end)
    after = gap.end() if gap else end
    size = _SIZE.match(text, after) if after > end else None
    unit = _unit(text, size.end() if size else after, spoons)
    if unit is None or (text[end:after] == "-" and unit[0].kind is Kind.COUNT):
        return None
    return amount, unit[0], unit[1]


def _unit(text: str, start: int, spoons: Spoons) -> tuple[Unit, int] | None:
    found = _NAME.match(text, start)
    unit = unit_named(found.group(), spoons=spoons) if found else None
    if found is None or unit is None:
        return None
    dot = _DOT.match(text, found.end())
    end = dot.end() if dot else found.end()
    return (unit, end) if _CLOSED.match(text, end) else None


def _with_more(text: str, first: Part, spoons: Spoons) -> tuple[Range, int]:
    """The first measure with those of the same kind that follow, in the first one's unit."""
    amount, unit, end = first
    last = unit
    for _ in range(_MOST_TERMS - 1):
        plus = _PLUS.match(text, end)
        gap = plus or _SPACES.match(text, end)
        part = _measure(text, gap.end(), spoons) if gap and unit.kind is not Kind.COUNT else None
        if part is None or part[1].kind is not unit.kind or not (plus or _continues(last, part)):
            break
        last = part[1]
        amount = amount + part[0].scaled(part[1].factor / unit.factor)
        end = part[2]
    return amount, end


def _continues(last: Unit, part: Part) -> bool:
    """Whether the part is the smaller change of the last unit, as 4 oz is in `1 lb 4 oz`.

    In `1 lb 450 g` and `1 cup 240 ml` the second says the same again, and must not be added.
    """
    amount, unit, _ = part
    same_system = (last.name in _METRIC) is (unit.name in _METRIC)
    return same_system and unit.factor < last.factor and amount.high * unit.factor < last.factor


def _sized_packs(
    text: str, start: int, count: tuple[Range, int], spoons: Spoons
) -> tuple[Quantity, int] | None:
    """`1 8-oz block`, `2 14-oz cans`: the count times the size of one. The pack's name is read with it."""
    gap = _SPACES.match(text, count[1])
    number = read_number(text, gap.end()) if gap else None
    if number is None or text[number[1] : number[1] + 1] != "-" or not number[0].is_exact:
        return None
    unit = _unit(text, number[1] + 1, spoons)
    if unit is None or unit[0].kind is Kind.COUNT:
        return None
    space = _SPACES.match(text, unit[1])
    pack = _unit(text, space.end(), spoons) if space else None
    end = pack[1] if pack and pack[0].kind is Kind.COUNT else unit[1]
    return Quantity(amount=count[0].scaled(number[0].low), unit=unit[0], text=text[start:end]), end
