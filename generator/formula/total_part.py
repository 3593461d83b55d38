"""A part that is the whole dough (`total: yes`): what its preferments hold is taken off it, thing by thing."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.formula.contents import Content, contents
from generator.formula.flour_count import Book, quiet
from generator.formula.lines import understand_line
from generator.formula.model import Line
from generator.formula.percent_lines import weighing
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenLine, WrittenPart, WrittenRecipe
from generator.measure.number import Range, total


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """What a preferment holds of one ingredient, and the line that brings it."""

    content: Content
    part: WrittenPart
    line: WrittenLine


def final_dough_of(written: WrittenRecipe, *, shelf: Shelf, book: Book) -> tuple[WrittenRecipe, Diagnostics]:
    """The recipe with the final dough in place of the whole. A line of which nothing is left goes away."""
    wholes = [part for part in written.parts if part.total is not None]
    if not wholes:
        return written, ()
    wrong = _cannot_be(wholes)
    if wrong is not None:
        return written, (wrong,)
    whole = wholes[0]
    held = tuple(_held(written, shelf, book))
    lines, found = _without(whole, held, shelf, book)
    told = tuple(_disagreeing(whole, lines, shelf, book))
    parts = tuple(replace(part, lines=lines) if part is whole else part for part in written.parts)
    return (written, found) if found else (replace(written, parts=parts), told)


def _disagreeing(
    whole: WrittenPart, lines: tuple[WrittenLine, ...], shelf: Shelf, book: Book
) -> Iterator[Diagnostic]:
    """Measures that disagree, of lines that have one weight only from now on: nobody else would see it."""
    for line in whole.lines:
        if line not in lines:
            found: list[Diagnostic] = []
            understand_line(line, whole, shelf=shelf, book=book, found=found)
            yield from (each for each in found if each.code == "F030")


def _cannot_be(wholes: list[WrittenPart]) -> Diagnostic | None:
    first = wholes[0]
    if len(wholes) > 1:
        message = "only one part can be the whole dough"
        hint = "Delete `total: yes` here."
        return _fault("F062", message, wholes[1], hint)
    if first.preferment or not first.counts:
        message = f"the part “{first.name}” cannot be the whole dough: it is a preferment, or does not count"
        return _fault(
            "F062", message, first, "Put `total: yes` under the dough that the preferments go into."
        )
    return None


def _fault(code: str, message: str, part: WrittenPart, hint: str) -> Diagnostic:
    return Diagnostic(code=code, message=message, span=part.total or part.span, hint=hint)


def _held(written: WrittenRecipe, shelf: Shelf, book: Book) -> Iterator[Held]:
    known = {name: formula for name, formula in book.items() if formula is not None}
    for part in (each for each in written.parts if each.counts and each.preferment):
        for line in part.lines:
            if not line.optional:
                for content in contents(quiet(line, part, shelf, book), known):
                    yield Held(content=content, part=part, line=line)


def _without(
    whole: WrittenPart, held: tuple[Held, ...], shelf: Shelf, book: Book
) -> tuple[tuple[WrittenLine, ...], Diagnostics]:
    """The lines of the whole less what is held, or why that cannot be."""
    read = {id(line): quiet(line, whole, shelf, book) for line in whole.lines}
    found: list[Diagnostic] = []
    left: dict[int, Range] = {}
    for key in dict.fromkeys(each.content.key for each in held):
        ours = [each for each in held if each.content.key == key]
        line = _line_of(key, whole, read)
        grams = read[id(line)].grams if line is not None else None
        if line is None or grams is None:
            found.append(_lacks(whole, ours[0]))
            continue
        rest = grams.minus(total(each.content.grams for each in ours))
        if rest.low < 0:
            found.append(_more(grams, ours, whole))
        left[id(line)] = rest
    lines = (_left(line, left.get(id(line))) for line in whole.lines if left.get(id(line)) != _NOTHING)
    return tuple(lines), tuple(found)


_NOTHING = Range.exact(0)


def _line_of(key: str, whole: WrittenPart, read: Mapping[int, Line]) -> WrittenLine | None:
    """The largest line of that ingredient."""
    lines = [line for line in whole.lines if not line.optional and _key(read[id(line)]) == key]
    return max(lines, key=lambda line: _mid(read[id(line)]), default=None)


def _key(line: Line) -> str:
    return line.ware.ingredient.name if line.ware is not None and line.hydration is None else ""


def _mid(line: Line) -> Fraction:
    return line.grams.mid if line.grams else Fraction(0)


def _left(line: WrittenLine, rest: Range | None) -> WrittenLine:
    return line if rest is None else replace(line, written=weighing(line.written, rest))


def _lacks(whole: WrittenPart, held: Held) -> Diagnostic:
    name = held.content.item
    message = f"“{held.part.name}” holds {name}, and the whole dough “{whole.name}” has none with a weight"
    hint = f"Add {name} to “{whole.name}”, preferments included, or delete its `total`."
    return Diagnostic(code="F064", message=message, span=held.line.span, hint=hint)


def _more(grams: Range, held: list[Held], whole: WrittenPart) -> Diagnostic:
    amount = total(each.content.grams for each in held)
    names = " and ".join(f"“{name}”" for name in dict.fromkeys(each.part.name for each in held))
    item = held[-1].content.item
    message = f"{names} holds {_plain(amount)} g of {item}, and the whole dough only {_plain(grams)} g"
    hint = f"Make the preferment smaller, or write in “{whole.name}” what goes in beside it and delete its `total`."
    return Diagnostic(code="F063", message=message, span=held[-1].line.span, hint=hint)


def _plain(grams: Range) -> str:
    return f"{float(grams.mid):.1f}".removesuffix(".0")
