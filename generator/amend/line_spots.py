"""Where the measures of an ingredient line stand in its text, and what is put in their places."""

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from generator.amend.answer import Refused
from generator.formula.line import read_line
from generator.formula.model import Line, Written
from generator.formula.shelf import Shelf
from generator.measure.number import Range
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.unit import Kind
from generator.present.amounts import pointed

BY_HAND = "Change the line in the file, then record it: tinleaf correct RECIPE --as-it-stands --why “…”."
Piece = tuple[int, int, str]
"""From index to index of the line's text, and what goes there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A measure where it stands in the line's text."""

    start: int
    end: int
    quantity: Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class Rewritten:
    """`pieces` replace stretches of the text; `old` and `new` are the amount that was meant."""

    pieces: tuple[Piece, ...]
    old: str
    new: str
    former: tuple[Quantity, ...] = ()
    percent: str = ""


def is_in_place(text: str, pieces: tuple[Piece, ...], line: Line, shelf: Shelf) -> bool:
    """Whether the new text still reads as the same item."""
    new = replaced(text, pieces)
    written, found = read_line(new, lambda start, end: line.span, spoons=shelf.spoons)
    known = {written.item, written.other_item}
    return line.written.item in known and not any(each.code in ("F002", "F004", "F006") for each in found)


def replaced(text: str, pieces: tuple[Piece, ...]) -> str:
    for start, end, new in sorted(pieces, reverse=True):
        text = text[:start] + new + text[end:]
    return text


def spots_of(text: str, measures: tuple[Quantity, ...], shelf: Shelf) -> tuple[Spot | None, ...]:
    """Each measure's place, in order; None for one that is worked out and stands nowhere (“2 (150 g each)”)."""
    found: list[Spot | None] = []
    at = 0
    each = _says_each(text, measures)
    for number, measure in enumerate(measures):
        words = measure.text.strip()
        start = text.find(words, at) if words else -1
        read = read_quantity(text, spoons=shelf.spoons, start=start) if start >= 0 else None
        same = read is not None and read[0].amount == measure.amount
        bare = measure.unit is None and words in ("a", "an", "one")
        if start < 0 or not (same or bare) or (each and number):
            found.append(None)
            continue
        at = start + len(words)
        found.append(Spot(start=start, end=at, quantity=replace(measure, text=words)))
    return tuple(found)


def _says_each(text: str, measures: tuple[Quantity, ...]) -> bool:
    """`1 (14 oz) can milk`, `2 (150 g each) apples`: what stands in the bracket is the size of one."""
    first = measures[0] if measures else None
    pack = first is not None and first.unit is not None and not re.search(r"[A-Za-z]{2}", first.text)
    return re.match(r"\s*\w+\s*\(", text) is not None and (pack or re.search(r"\beach\b", text) is not None)


def kind_of(quantity: Quantity) -> Kind:
    return Kind.COUNT if quantity.unit is None else quantity.unit.kind


def in_base(quantity: Quantity) -> tuple[Kind, Range]:
    factor = quantity.unit.factor if quantity.unit else Fraction(1)
    return kind_of(quantity), quantity.amount.scaled(factor)


def checked(
    text: str,
    line: Line,
    pieces: tuple[Piece, ...],
    old: str,
    new: str,
    shelf: Shelf,
    former: tuple[Quantity, ...] = (),
) -> Rewritten | Refused:
    changed = tuple(each for each in pieces if text[each[0] : each[1]] != each[2])
    if not is_in_place(text, changed, line, shelf):
        return Refused(
            message=f"the line would read “{replaced(text, changed)}”, which is not understood", hint=BY_HAND
        )
    return Rewritten(pieces=changed, old=old, new=new, former=former)


def stated(line: Line) -> str:
    return _amount_words(line.written) or "no amount"


def _amount_words(written: Written) -> str:
    if written.measures and written.measures[0].text != written.text:
        return ", ".join(each.text.strip() for each in written.measures)
    if written.percent is not None:
        return f"{pointed(written.percent.mid, places=2)} %"
    return written.words.removesuffix(" of")
