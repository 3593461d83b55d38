"""Reads one ingredient line, as a home baker writes it.

    [quantity] [unit] [size] item[, preparation] [(second measure or note)]

Nothing is looked up here: the result says what the words are, not what they weigh.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field

from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.span import Span
from generator.formula.brackets import closing, read_each, read_measures, times
from generator.formula.line_item import Item, split_item
from generator.formula.model import Written
from generator.formula.sizes import SIZE, SIZES, plain_size
from generator.measure.number import Range, looks_garbled, read_number, read_single
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.unit import Kind, Spoons

_PINCHES = re.compile(
    r"(?:an?\s{1,9}|one\s{1,9})?(?:small\s{1,9}|large\s{1,9}|generous\s{1,9})?(pinch|dash)(?:es)?\s{1,9}(?:of\s{1,9})?",
    re.I,
)
_UNWEIGHED = ("pinch", "dash", "drop")
_ITSELF = ("clove",)
"""Count words that are an ingredient where nothing else is named."""
_EACH = re.compile(r"([0-9]{1,3}|an?|one)\s{0,3}\(([^()]{1,60})\)\s{0,9}", re.I)
_SLASH = re.compile("[/\u2044\u2215]")
_OF = re.compile(r"of\s{1,9}", re.I)
_PERCENT = re.compile(r"\s{0,3}(?:%|per\s?cent\b)\s{0,9}", re.I)
Place = Callable[[int, int], Span]


@dataclass(slots=True)
class _Reading:
    """The state while one line is read: what is still to read starts at `at`."""

    text: str
    place: Place
    spoons: Spoons
    at: int = 0
    measures: list[Quantity] = field(default_factory=list)
    words: str = ""
    percent: Range | None = None
    percent_end: int = 0
    sizes: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    found: list[Diagnostic] = field(default_factory=list)

    def say(self, code: str, message: str, start: int, end: int, hint: str) -> None:
        self.found.append(Diagnostic(code=code, message=message, span=self.place(start, end), hint=hint))

    def skip_spaces(self) -> None:
        while self.at < len(self.text) and self.text[self.at].isspace():
            self.at += 1

    @property
    def count(self) -> Quantity | None:
        """A bare count that the line begins with."""
        first = self.measures[0] if self.measures else None
        return first if first is not None and first.unit is None else None


def read_line(text: str, place: Place, *, spoons: Spoons) -> tuple[Written, tuple[Diagnostic, ...]]:
    """What an ingredient line says. `place` gives the span of `text[start:end]` in the maker's file."""
    reading = _Reading(text, place, spoons)
    reading.skip_spaces()
    amount_start = reading.at
    _read_amount(reading)
    amount_end = reading.at
    _read_sizes(reading)
    item = _read_item(reading)
    if not item.name:
        hint = "Write an amount and an ingredient, such as “240 g water”."
        reading.say("F002", "this line names no ingredient", 0, len(text) or 1, hint)
    item_place = place(item.start, max(item.end, item.start + 1))
    name, other = item.name, ""
    if reading.percent is not None:
        # Beside a measure the percent is first held to be of the name: 250 ml of “2% milk”.
        other = f"{text[amount_start : reading.percent_end].strip()} {item.name}"
        name, other = (other, name) if reading.measures or reading.words else (name, other)
    written = Written(
        text=text.strip(),
        measures=tuple(reading.measures),
        words=reading.words,
        size=" ".join(dict.fromkeys(reading.sizes)),
        item=name,
        preparation=item.preparation,
        note="; ".join(reading.notes),
        span=place(0, max(len(text), 1)),
        item_span=item_place,
        amount_span=_amount_place(place, text[:amount_end].rstrip(), amount_start) or item_place,
        percent=reading.percent,
        other_item=other,
    )
    return written, tuple(reading.found)


def _amount_place(place: Place, before_item: str, start: int) -> Span | None:
    """None where no amount stands before the item."""
    return place(start, len(before_item)) if len(before_item) > start else None


def _read_amount(reading: _Reading) -> None:
    pinch = _PINCHES.match(reading.text, reading.at)
    if pinch:
        reading.words = f"a {pinch.group(1).lower()} of"
        reading.at = pinch.end()
        return
    _check_garbled(reading)
    if _read_percent(reading):
        _read_bracketed_measures(reading)
        _skip_of(reading)
        return
    if not (_read_each(reading) or _read_first(reading)):
        return
    _read_joined(reading)
    _read_bracketed_measures(reading)
    _skip_of(reading)


def _read_percent(reading: _Reading) -> bool:
    """`65% water`: so much of the flour."""
    number = read_number(reading.text, reading.at)
    sign = _PERCENT.match(reading.text, number[1]) if number else None
    if number is None or sign is None:
        return False
    if number[0].low <= 0:
        hint = "Give an amount above 0, or leave the line out."
        end = sign.start() + len(sign.group().rstrip())
        reading.say("F004", "an amount must be more than nothing", reading.at, end, hint)
    reading.percent, reading.percent_end = number[0], sign.end()
    reading.at = sign.end()
    return True


def _skip_of(reading: _Reading) -> None:
    of = _OF.match(reading.text, reading.at)
    if of:
        reading.at = of.end()


def _check_garbled(reading: _Reading) -> None:
    """`11/2` may be 1 1/2 that lost its space; it is read by the letter, and said aloud."""
    first = reading.text[reading.at : reading.at + 40].split(" ", 1)[0]
    slash = _SLASH.search(first)
    if slash and slash.start() > 1 and looks_garbled(first):
        whole, part = first[: slash.start() - 1], first[slash.start() - 1 :]
        hint = f"Write “{whole} {part}” for a mixed number, or divide it out."
        reading.say("F005", f"“{first}” can be read in two ways", reading.at, reading.at + len(first), hint)


def _read_each(reading: _Reading) -> bool:
    """`1 (14 oz) can milk`, `2 (150 g each) apples`: so many of so much each."""
    bracketed = _EACH.match(reading.text, reading.at)
    counted = read_single(bracketed.group(1), words=True) if bracketed else None
    if bracketed is None or counted is None or counted[0] <= 0:
        return False
    start, inner = reading.at, bracketed.group(2).strip()
    pack = read_quantity(f"1 {reading.text[bracketed.end() : bracketed.end() + 40]}", spoons=reading.spoons)
    is_pack = pack is not None and pack[0].unit is not None and pack[0].unit.kind is Kind.COUNT
    unit = pack[0].unit if pack is not None and is_pack else None
    count = Quantity(amount=Range.exact(counted[0]), unit=unit, text=bracketed.group(1))
    sizes = read_each(inner, count, spoons=reading.spoons)
    if not sizes and is_pack:
        sizes = tuple(times(each, count) for each in read_measures(inner, spoons=reading.spoons))
    if not sizes:
        return False
    reading.measures.extend((count, *sizes))
    reading.at = bracketed.end() + (pack[1] - 2 if pack is not None and is_pack else 0)
    reading.skip_spaces()
    return reading.at > start


def _read_first(reading: _Reading) -> bool:
    found = read_quantity(reading.text, spoons=reading.spoons, start=reading.at)
    if found is None:
        return False
    quantity, end = found
    if quantity.amount.low <= 0:
        hint = "Give an amount above 0, or leave the line out."
        reading.say("F004", "an amount must be more than nothing", reading.at, end, hint)
    quantity, end = _item_itself(reading, quantity, end)
    reading.at = end
    reading.skip_spaces()
    reading.sizes.extend(plain_size(each.group(1)) for each in SIZE.finditer(quantity.text))
    if quantity.unit is not None and quantity.unit.name in _UNWEIGHED:
        reading.words = f"{quantity.text.strip()} of"
    else:
        reading.measures.append(quantity)
    return True


def _item_itself(reading: _Reading, quantity: Quantity, end: int) -> tuple[Quantity, int]:
    """`3 cloves`: with nothing else named, the count word is the item."""
    rest = reading.text[end:].lstrip()
    if quantity.unit is None or quantity.unit.name not in _ITSELF or (rest and rest[0] not in ",(;"):
        return quantity, end
    word = quantity.text.split()[-1]
    start = end - len(word)
    return Quantity(amount=quantity.amount, unit=None, text=reading.text[reading.at : start].strip()), start


def _read_joined(reading: _Reading) -> None:
    """Further measures of the same amount after a slash: `115 g/8 tbsp/1 stick butter`."""
    while reading.text.startswith("/", reading.at):
        after = reading.at + 1
        while after < len(reading.text) and reading.text[after].isspace():
            after += 1
        found = read_quantity(reading.text, spoons=reading.spoons, start=after)
        if found is None or found[0].unit is None:
            return
        reading.measures.append(found[0])
        reading.at = found[1]
        reading.skip_spaces()


def _read_bracketed_measures(reading: _Reading) -> None:
    """A second measure right after the first: `430 g (3 1/3 cups) bread flour`."""
    if not reading.text.startswith("(", reading.at):
        return
    end = closing(reading.text, reading.at)
    if end is None:
        _read_open_bracket(reading)
        return
    measures = read_measures(reading.text[reading.at + 1 : end].strip(), spoons=reading.spoons)
    if measures:
        reading.measures.extend(measures)
        reading.at = end + 1
        reading.skip_spaces()


def _read_open_bracket(reading: _Reading) -> None:
    """`320 g (1 1/3 cups water`: the measure is plain, the bracket is not."""
    found = read_quantity(reading.text, spoons=reading.spoons, start=reading.at + 1)
    if found is None or found[0].unit is None:
        return
    _say_open(reading, reading.at)
    reading.measures.append(found[0])
    reading.at = found[1]
    reading.skip_spaces()


def _say_open(reading: _Reading, at: int) -> None:
    reading.say("F006", "this bracket is never closed", at, at + 1, "Close the bracket with “)”.")


def _read_sizes(reading: _Reading) -> None:
    while found := SIZE.match(reading.text, reading.at):
        reading.sizes.append(plain_size(found.group(1)))
        reading.at = found.end()
    if reading.measures:
        _skip_of(reading)


def _read_item(reading: _Reading) -> Item:
    """The item with its preparation; brackets are taken out as measures or notes."""
    kept: list[tuple[str, int]] = []
    _take_out_brackets(reading, kept)
    item = split_item(kept, start=reading.at, has_amount=bool(reading.measures or reading.words))
    reading.words = reading.words or item.words
    if item.preparation.lower() in ("packed", "firmly packed", "lightly packed") and reading.measures:
        # Nobody packs after measuring: "1 cup brown sugar, packed" is a packed cup (common practice).
        reading.sizes.append("packed")
    if item.name and not reading.measures and not reading.words:
        trailing = read_measures(item.preparation, spoons=reading.spoons)
        if trailing:
            reading.measures.extend(trailing)
            return item.without_preparation()
    return item


def _take_out_brackets(reading: _Reading, kept: list[tuple[str, int]]) -> None:
    at, text = reading.at, reading.text
    while at < len(text):
        if text[at] != "(":
            kept.append((text[at], at))
            at += 1
            continue
        end = closing(text, at)
        if end is None:
            _say_open(reading, at)
            end = len(text)
        _take_bracket(reading, text[at + 1 : end].strip(), after_comma=any(each == "," for each, _ in kept))
        at = end + 1


def _take_bracket(reading: _Reading, inner: str, *, after_comma: bool) -> None:
    measures = read_each(inner, reading.count, spoons=reading.spoons)
    measures = measures or read_measures(inner, spoons=reading.spoons)
    # "1 lemon, zested then juiced (about 3 tbsp)" says what the preparation gives, not what the lemon is.
    yields = after_comma and reading.count is not None and any(each.millilitres() for each in measures)
    unweighed = any(each.unit is not None and each.unit.name in _UNWEIGHED for each in measures)
    if measures and not yields and not unweighed:
        reading.measures.extend(measures)
    elif inner.lower() in SIZES:
        reading.sizes.append(plain_size(inner))
    elif inner:
        reading.notes.append(inner)
