"""Reads one ingredient line, as a home baker writes it.

    [quantity] [unit] [size] item[, preparation] [(second measure or note)]

Nothing is looked up here: the result says what the words are, not what they weigh.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, field

from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.span import Span
from generator.formula.model import Written
from generator.measure.number import looks_garbled
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.unit import Spoons

SIZES = (
    "extra large",
    "extra-large",
    "jumbo",
    "large",
    "medium",
    "small",
    "packed",
    "sifted",
    "unsifted",
    "level",
    "heaped",
    "heaping",
    "scant",
)
_PINCHES = re.compile(r"(?:an?\s+|one\s+)?(?:small\s+|large\s+|generous\s+)?(pinch|dash)(?:es)?\s+(?:of\s+)?", re.I)
_UNWEIGHED = ("pinch", "dash")
_WITHOUT_WEIGHT = re.compile(r"(?:,\s*|\s+|^)(to taste|for dusting)\b", re.I)
_SIZE = re.compile(rf"\(?\b({'|'.join(SIZES)})\b\)?(?=\s|$)\s*", re.I)
_ABOUT = re.compile(r"(?:about|around|approx\.?|approximately|ca\.?|or)\s+", re.I)
_BETWEEN = re.compile(r"\s*(?:/|=|,|;|\bor\b)\s*", re.I)
_EACH = re.compile(r"(\d+|an?|one)\s*\(\s*([^()]*?)(?:\s+each)?\s*\)\s*", re.I)
_SLASH = re.compile("[/\u2044\u2215]")
_OF = re.compile(r"of\s+", re.I)


@dataclass(slots=True)
class _Reading:
    """The state while one line is read: what is still to read starts at `at`."""

    text: str
    place: Callable[[int, int], Span]
    spoons: Spoons
    at: int = 0
    measures: list[Quantity] = field(default_factory=list)
    words: str = ""
    sizes: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    found: list[Diagnostic] = field(default_factory=list)

    def say(self, code: str, message: str, start: int, end: int, hint: str) -> None:
        self.found.append(Diagnostic(code=code, message=message, span=self.place(start, end), hint=hint))


def read_line(
    text: str, place: Callable[[int, int], Span], *, spoons: Spoons
) -> tuple[Written, tuple[Diagnostic, ...]]:
    """What an ingredient line says. `place` gives the span of `text[start:end]` in the maker's file."""
    reading = _Reading(text, place, spoons)
    _skip_spaces(reading)
    amount_start = reading.at
    _read_amount(reading)
    amount_end = reading.at
    _read_sizes(reading)
    item, preparation, item_start, item_end = _read_item(reading)
    if not item:
        reading.say(
            "F002",
            "this line names no ingredient",
            0,
            len(text) or 1,
            "Write an amount and an ingredient, such as “240 g water”.",
        )
    written = Written(
        text=text.strip(),
        measures=tuple(reading.measures),
        words=reading.words,
        size=" ".join(reading.sizes),
        item=item,
        preparation=preparation,
        note="; ".join(reading.notes),
        span=place(0, max(len(text), 1)),
        item_span=place(item_start, max(item_end, item_start + 1)),
        amount_span=place(amount_start, max(amount_end, amount_start + 1)),
    )
    return written, tuple(reading.found)


def _skip_spaces(reading: _Reading) -> None:
    while reading.at < len(reading.text) and reading.text[reading.at].isspace():
        reading.at += 1


def _read_amount(reading: _Reading) -> None:
    pinch = _PINCHES.match(reading.text, reading.at)
    if pinch:
        reading.words = f"a {pinch.group(1).lower()} of"
        reading.at = pinch.end()
        return
    _check_garbled(reading)
    if not (_read_each(reading) or _read_first(reading)):
        return
    _read_joined(reading)
    _read_bracketed_measures(reading)
    of = _OF.match(reading.text, reading.at)
    if of:
        reading.at = of.end()


def _check_garbled(reading: _Reading) -> None:
    """`11/2` may be 1 1/2 that lost its space; it is read by the letter, and said aloud."""
    first = reading.text[reading.at :].split(" ", 1)[0]
    slash = _SLASH.search(first)
    if slash and slash.start() > 1 and looks_garbled(first):
        whole, part = first[: slash.start() - 1], first[slash.start() - 1 :]
        hint = f"Write “{whole} {part}” for a mixed number, or divide it out."
        reading.say("F005", f"“{first}” can be read in two ways", reading.at, reading.at + len(first), hint)


def _read_each(reading: _Reading) -> bool:
    """`1 (14 oz) can milk`: so many packs of so much each."""
    bracketed = _EACH.match(reading.text, reading.at)
    if bracketed:
        inner = read_quantity(bracketed.group(2), spoons=reading.spoons)
        following = read_quantity(f"1 {reading.text[bracketed.end() :]}", spoons=reading.spoons)
        if inner and inner[1] == len(bracketed.group(2)) and inner[0].unit and following and following[0].unit:
            return _take_each(reading, bracketed.group(1), inner[0], bracketed.end(), following[1] - 2)
    return False


def _take_each(reading: _Reading, count: str, each: Quantity, end: int, unit_length: int) -> bool:
    times = int(count) if count.isdigit() else 1
    if not 0 < times < 1000:
        return False
    amount = each.amount.scaled(times)
    reading.measures.append(Quantity(amount=amount, unit=each.unit, text=reading.text[reading.at : end].strip()))
    reading.at = end + max(unit_length, 0)
    _skip_spaces(reading)
    return True


def _read_first(reading: _Reading) -> bool:
    found = read_quantity(reading.text, spoons=reading.spoons, start=reading.at)
    if found is None:
        return False
    quantity, end = found
    if quantity.amount.low <= 0:
        hint = "Give an amount above 0, or leave the line out."
        reading.say("F004", "an amount must be more than nothing", reading.at, end, hint)
    reading.at = end
    _skip_spaces(reading)
    reading.sizes.extend(each.group(1).lower() for each in _SIZE.finditer(quantity.text))
    if quantity.unit is not None and quantity.unit.name in _UNWEIGHED:
        reading.words = f"{quantity.text.strip()} of"
    else:
        reading.measures.append(quantity)
    return True


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
        _skip_spaces(reading)


def _read_bracketed_measures(reading: _Reading) -> None:
    """A second measure right after the first: `430 g (3 1/3 cups) bread flour`."""
    if not reading.text.startswith("(", reading.at):
        return
    end = _closing(reading.text, reading.at)
    if end is None:
        return
    measures = read_measures(reading.text[reading.at + 1 : end], spoons=reading.spoons)
    if measures:
        reading.measures.extend(measures)
        reading.at = end + 1
        _skip_spaces(reading)


def read_measures(text: str, *, spoons: Spoons) -> tuple[Quantity, ...]:
    """The measures that a bracket holds, such as `1 packet / 7 g`; none unless the whole of it is measures."""
    found: list[Quantity] = []
    at = 0
    while at < len(text):
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
    return tuple(found)


def _closing(text: str, opening: int) -> int | None:
    depth = 0
    for index in range(opening, len(text)):
        depth += (text[index] == "(") - (text[index] == ")")
        if depth == 0:
            return index
    return None


def _read_sizes(reading: _Reading) -> None:
    while found := _SIZE.match(reading.text, reading.at):
        reading.sizes.append(found.group(1).lower().replace("-", " "))
        reading.at = found.end()
    of = _OF.match(reading.text, reading.at)
    if of and reading.measures:
        reading.at = of.end()


def _read_item(reading: _Reading) -> tuple[str, str, int, int]:
    """Item and preparation, with the item's place; brackets are taken out as measures or notes."""
    start = reading.at
    kept: list[tuple[str, int]] = []
    _take_out_brackets(reading, kept)
    plain = "".join(character for character, _ in kept)
    without = _WITHOUT_WEIGHT.search(plain)
    if without:
        reading.words = reading.words or without.group(1).lower()
        kept = kept[: without.start()] + kept[without.end() :]
        plain = "".join(character for character, _ in kept)
    comma = plain.find(",")
    head = plain if comma < 0 else plain[:comma]
    preparation = "" if comma < 0 else _tidy(plain[comma + 1 :])
    item = _tidy(head)
    first = next((index for index, character in enumerate(head) if not character.isspace()), 0)
    item_start = kept[first][1] if kept and first < len(kept) else start
    last = len(head.rstrip()) - 1
    item_end = kept[last][1] + 1 if 0 <= last < len(kept) else item_start + 1
    return item, preparation, item_start, item_end


def _take_out_brackets(reading: _Reading, kept: list[tuple[str, int]]) -> None:
    at = reading.at
    while at < len(reading.text):
        if reading.text[at] != "(":
            kept.append((reading.text[at], at))
            at += 1
            continue
        end = _closing(reading.text, at)
        if end is None:
            hint = "Close the bracket with “)”."
            reading.say("F006", "this bracket is never closed", at, at + 1, hint)
            end = len(reading.text)
        inner = reading.text[at + 1 : end].strip()
        measures = read_measures(inner, spoons=reading.spoons) if reading.measures or not reading.words else ()
        if measures:
            reading.measures.extend(measures)
        elif inner.lower() in SIZES:
            reading.sizes.append(inner.lower())
        elif inner:
            reading.notes.append(inner)
        at = end + 1


def _tidy(text: str) -> str:
    return " ".join(text.split()).strip(" ,;")

