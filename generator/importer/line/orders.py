"""An ingredient line put into the usual order: by the signs that it has, and where that fails by its fields."""

import re
from dataclasses import dataclass

from generator.formula.model import Written
from generator.formula.shelf import Shelf
from generator.importer.line.amount_words import plain_amount
from generator.importer.line.fields import by_fields
from generator.importer.line.known import known
from generator.importer.line.preparations import is_preparation, preparation_after_comma
from generator.importer.line.settle import settled
from generator.importer.line.surface import smooth
from generator.importer.line.tidy import in_order, starts_with_amount
from generator.importer.line.work import written_of

_DASH_NOTE = re.compile(r"\s+[–—-]\s+([^\d\s].*)$")


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """`text` begins with the amount; `note` is what was said besides; `moved` where words were moved for it."""

    text: str
    note: str = ""
    moved: bool = False


def in_usual_order(plain: str, shelf: Shelf) -> Order:
    """The line with its amount first; read by its fields only where it is not whole without that."""
    usual = _by_signs(plain, shelf)
    if is_whole(usual.text, shelf) or not any(map(str.isalpha, plain)):
        return usual
    for text in dict.fromkeys((plain, usual.text)):
        fielded = by_fields(text, shelf)
        if fielded and is_whole(fielded, shelf):
            return Order(text=fielded, note=usual.note if text == usual.text else "", moved=True)
    fielded = by_fields(plain, shelf)
    return Order(text=fielded, moved=True) if fielded else usual


def is_whole(text: str, shelf: Shelf) -> bool:
    """Whether the line reads with an amount and a food that is known."""
    return _is_whole(_written(text, shelf), shelf)


def _written(text: str, shelf: Shelf) -> Written:
    return written_of(settled(plain_amount(text, shelf=shelf).text, shelf), shelf)


def _is_whole(written: Written, shelf: Shelf) -> bool:
    return (
        bool(written.measures or written.words or written.percent) and known(written.item, shelf) is not None
    )


def left_over(plain: str, shelf: Shelf) -> str | None:
    """What a whole line says besides its amount, its food and how that is made ready; None where it is not whole."""
    order = in_usual_order(plain, shelf)
    written = _written(order.text, shelf)
    if not _is_whole(written, shelf):
        return None
    units = [each.unit for each in written.measures]
    number = "number" if units and units[0] is None and any(units[1:]) else ""
    words = (written.preparation, written.note, order.note, number)
    return "; ".join(each for each in words if each and not is_preparation(each))


def _by_signs(plain: str, shelf: Shelf) -> Order:
    smoothed, rough = smooth(plain, spoons=shelf.spoons)
    smoothed, note = _note_behind(preparation_after_comma(smoothed), shelf)
    ordered, moved = in_order(smoothed, spoons=shelf.spoons)
    ordered, more = smooth(ordered, spoons=shelf.spoons) if moved else (ordered, "")
    return Order(
        text=ordered,
        note="; ".join(each for each in (rough, more, note) if each),
        moved=moved or bool(rough),
    )


def _note_behind(text: str, shelf: Shelf) -> tuple[str, str]:
    """`33 g egg white – the one left over`: words behind a dash are a note, or say how it is made ready."""
    found = _DASH_NOTE.search(text)
    if found is None or not starts_with_amount(text, spoons=shelf.spoons):
        return text, ""
    head, words = text[: found.start()], found[1].strip()
    return (f"{head}, {words}", "") if is_preparation(words) else (head, words)
