"""Gentle notes on finished formulas: what a baker may want to know, and who says so. Each can be accepted."""

from collections.abc import Iterator, Mapping
from fractions import Fraction

from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.span import Span, whole_file
from generator.formula.components import Batch, batches
from generator.formula.model import Formula, Line
from generator.formula.note import Note
from generator.formula.note_names import NOTE_CODES
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenRecipe
from generator.formula.yeast import (
    CINNAMON,
    SUGARY,
    heats_beside_yeast,
    hot_liquid_note,
    yeast_kind,
    yeast_notes,
)

_NAMES = {"sweet dough": "sugar"}
"""Kinds of notes whose name for the maker is another."""

Noted = tuple[str, Diagnostic]


def check_notes(
    formulas: Mapping[str, Formula], written: Mapping[str, WrittenRecipe], shelf: Shelf
) -> Iterator[Diagnostic]:
    """Notes on every formula, those that its file accepts left out; N011 for one accepted that does not arise.

    It is known only when all recipes are: one that others use as a preferment has its salt and its water in their
    dough. A bake without yeast and without a preferment has no notes on yeast.
    """
    fermenting = {
        line.component
        for each in formulas.values()
        for part in each.parts
        if part.preferment
        for line in part.lines
    }
    for name, formula in formulas.items():
        noted = (
            *_yeast(formula, shelf.yeast_sugar, preferment=name in fermenting),
            *_batches(formula, formulas),
        )
        yield from _unaccepted(noted, written[name])


def _unaccepted(noted: tuple[Noted, ...], written: WrittenRecipe) -> Iterator[Diagnostic]:
    accepted = {each.note for each in written.accepts}
    yield from (diagnostic for name, diagnostic in noted if name not in accepted)
    arisen = {name for name, _ in noted}
    for each in written.accepts:
        if each.note not in arisen:
            message = f"the note “{each.note}” does not arise, so there is nothing to accept"
            hint = "Delete the entry."
            yield Diagnostic(code="N011", message=message, span=each.span, hint=hint)


def _yeast(formula: Formula, threshold: Fraction, *, preferment: bool) -> Iterator[Noted]:
    for note in yeast_notes(formula, threshold=threshold, preferment=preferment):
        if note.kind != "hot liquid":
            name = _NAMES.get(note.kind, note.kind)
            yield name, _diagnostic(name, note, _place(formula, name))
    for heat in heats_beside_yeast(formula):
        hot = hot_liquid_note(heat.temperature)
        if hot is not None:
            yield hot.kind, _diagnostic(hot.kind, hot, heat.span)


def _diagnostic(name: str, note: Note, span: Span) -> Diagnostic:
    """The first sentence is the message, the rest of it the hint, with the source and how to accept it."""
    first, _, rest = note.says.partition(". ")
    message = first[:1].lower() + first[1:].removesuffix(".")
    hint = " ".join(each for each in (rest, f"Source: {note.source}.", _how(name)) if each)
    return Diagnostic(code=NOTE_CODES[name], message=message, span=span, hint=hint)


def _how(name: str) -> str:
    return f"To accept it, add “accepts: [{{note: {name}, why: …}}]”."


def _place(formula: Formula, name: str) -> Span:
    """The heaviest line that the note is about, else the title."""
    lines = [line for part in formula.parts if part.counts for line in part.lines if _is_about(line, name)]
    heaviest = max(lines, key=lambda line: line.grams.mid if line.grams else Fraction(0), default=None)
    if heaviest is not None:
        return heaviest.written.item_span
    return formula.spans.get("title", whole_file(formula.path))


def _is_about(line: Line, name: str) -> bool:
    ingredient = line.ware.ingredient if line.ware and line.counts else None
    if ingredient is None:
        return False
    return {
        "sugar": ingredient.group in SUGARY and bool(ingredient.sugar),
        "salt": ingredient.salt_added,
        "hydration": ingredient.nominal_liquid,
        "cinnamon": line.ware is not None and line.ware.known_as in CINNAMON,
    }.get(name, False) and yeast_kind(line) is None


def _batches(formula: Formula, book: Mapping[str, Formula]) -> Iterator[Noted]:
    for batch in batches(formula, book):
        if batch.batches > 1:
            yield "batches", _more_than_one(formula, batch)


def _more_than_one(formula: Formula, batch: Batch) -> Diagnostic:
    line = next(each for each in formula.lines if each.component == batch.name)
    used, one = _plain(batch.used_grams), _plain(batch.batch_grams)
    message = f"this takes {batch.batches} batches of “{batch.name}”: {used} g, and one gives {one} g"
    left = f"{_plain(batch.left_grams)} g are left over." if batch.left_grams else "Nothing is left over."
    hint = f"{left} Is the amount right? {_how('batches')}"
    return Diagnostic(code="N006", message=message, span=line.written.amount_span, hint=hint)


def _plain(grams: Fraction) -> str:
    return f"{float(grams):.1f}".removesuffix(".0")
