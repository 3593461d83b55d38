"""The line that a name means, and the correction of its amount in the recipe's file."""

import re
from collections.abc import Iterator

from generator.amend.answer import Asked, Former, Refused, Worked
from generator.amend.line_amount import rewrite
from generator.amend.line_spots import Rewritten
from generator.amend.typed import read_typed
from generator.catalogue.lookup import fold
from generator.diagnostics.diagnostic import did_you_mean
from generator.formula.model import Formula, Line
from generator.formula.names import lines_called, names_near
from generator.formula.shelf import Shelf
from generator.measure.quantity import Quantity
from generator.measure.unit import Kind
from generator.source.document import Document
from generator.source.edits import Edit, Scalar, scalars, stretch
from generator.source.lines import Places


def named_lines(formula: Formula, what: str) -> tuple[Line, ...]:
    """The lines that go by `item` or `part/item`."""
    return lines_called(what, formula.parts)


def correct_line(formula: Formula, document: Document, asked: Asked, shelf: Shelf) -> Worked | Refused:
    """The stretches of the file that change for a line's new amount."""
    lines = named_lines(formula, asked.what)
    if len(lines) != 1:
        return _ambiguous(asked.what, lines) if lines else _unknown(formula, asked.what)
    line = lines[0]
    if line.written.text and len(_twins(formula, line)) > 1:
        return _ambiguous(asked.what, _twins(formula, line))
    typed = read_typed(asked.new, item=line.item, spoons=shelf.spoons)
    if isinstance(typed, Refused):
        return typed
    places = Places(document.path, document.text)
    scalar = _scalar_of(line, document, places)
    if scalar is None:
        return _out_of_reach(line)
    written = rewrite(scalar.text.value, line, typed, shelf=shelf)
    if isinstance(written, Refused):
        return written
    edits = _edits(scalar, written, places)
    if edits is None:
        return _out_of_reach(line)
    return Worked(
        edits=edits,
        what=full_name(line),
        old=written.old,
        new=written.new,
        former=tuple(_former(each) for each in written.former),
        remarks=tuple(_remarks(line, written)),
        shown=_shown(written.old, line),
    )


def _shown(old: str, line: Line) -> str:
    """A bare number is nothing to look for in a film."""
    return old if re.search(r"[A-Za-z%]", old) else f"{old} {line.item}"


def full_name(line: Line) -> str:
    """`part/item`; the part is left out where the formula is one list."""
    return f"{line.part}/{line.item}" if line.part else line.item


def _twins(formula: Formula, line: Line) -> tuple[Line, ...]:
    return tuple(each for each in formula.lines if each.key == line.key)


def _scalar_of(line: Line, document: Document, places: Places) -> Scalar | None:
    found = (each for each in scalars(document.front, places) if each.text.span == line.span)
    return next(found, None)


def _edits(scalar: Scalar, written: Rewritten, places: Places) -> tuple[Edit, ...] | None:
    """The pieces of the line's text where they stand in the file; None where one cannot be found for certain."""
    edits = []
    for start, end, new in written.pieces:
        span = stretch(scalar.text, start, end, places)
        if span is None:
            return None
        edits.append((span, new))
    return tuple(edits)


def _former(quantity: Quantity) -> Former:
    unit = quantity.unit
    if unit is None or unit.kind is Kind.COUNT:
        return Former(words=quantity.text)
    return Former(kind=unit.kind, amount=quantity.amount.scaled(unit.factor))


def _remarks(line: Line, written: Rewritten) -> Iterator[str]:
    """The name stays as it is typed, also where one becomes two."""
    ingredient = line.ware.ingredient if line.ware else None
    if ingredient is None or not any(each.unit is None for each in written.former):
        return
    many = written.new not in (
        "1",
        "a",
        "an",
        "one",
        "1/2",
        "½",
        "1/4",
        "¼",
        "3/4",
        "¾",
        "1/3",
        "⅓",
        "2/3",
        "⅔",
    )
    one, plural = fold(ingredient.name), fold(ingredient.plural)
    other = ingredient.plural if many else ingredient.name
    if one != plural and fold(line.item) == (one if many else plural):
        yield f"the line now says “{written.new} {line.item}”; you may want to write “{other}” there"


def _ambiguous(what: str, lines: tuple[Line, ...]) -> Refused:
    names = tuple(dict.fromkeys(full_name(each) for each in lines))
    if len(names) == 1:
        return Refused(
            message=f"“{names[0]}” stands in the formula {len(lines)} times",
            hint="Join the lines into one, or change the right one in the file and record it with --as-it-stands.",
        )
    return Refused(
        message=f"“{what}” stands in the formula {'twice' if len(names) == 2 else f'{len(names)} times'}",
        hint="Type " + " or ".join(f"“{each}”" for each in names) + ".",
    )


def _unknown(formula: Formula, what: str) -> Refused:
    others = tuple(line for each in formula.lines for line in (*each.alternatives, *each.inside))
    if any(fold(each.item) == fold(what) for each in others):
        return Refused(
            message=f"“{what}” is an alternative of another line",
            hint="Change it in the file, and record it with --as-it-stands.",
        )
    known = {fold(line.item): line.item for line in formula.lines}
    known |= {fold(full_name(line)): full_name(line) for line in formula.lines}
    near = names_near(what, formula.parts)
    hint = "Did you mean " + " or ".join(f"“{each}”" for each in near) + "?" if near else ""
    items = ", ".join(dict.fromkeys(full_name(line) for line in formula.lines))
    return Refused(
        message=f"{formula.name} has no line called “{what}”",
        hint=hint or did_you_mean(fold(what), known) or f"It has: {items}.",
    )


def _out_of_reach(line: Line) -> Refused:
    return Refused(
        message=f"the line of {line.item} is written in a way in which its amount cannot be replaced for certain",
        hint="Write it on one line without escapes, or change it in the file and record it with --as-it-stands.",
    )
