"""Lines written in percent become lines in grams, before anything else is understood.

Percents are on all flour of the dough, preferments and starters included; in a part that states its share of all
flour (`flour: 30 %`) they are on the part's own flour. All flour is stated (`flour: 500 g`), follows from the wanted
dough (`dough: 900 g`: flour = dough over the sum of the percents, W. Gisslen, Professional Cooking), or is what the
formula weighs out.
"""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.formula.flour_base import flour_of_all
from generator.formula.flour_count import Book, base_of, quiet
from generator.formula.model import Written
from generator.formula.percent_names import every_line, in_percent, with_names
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenLine, WrittenPart, WrittenRecipe
from generator.measure.density import apart
from generator.measure.number import Range
from generator.measure.quantity import Quantity
from generator.measure.unit import Kind, Unit

MOST_APART = Fraction(5, 100)
"""A weight beside a percent may differ as much as two measures of one line may."""
_GRAM = Unit(name="g", kind=Kind.MASS, factor=Fraction(1), plural="g")


def in_grams(written: WrittenRecipe, *, shelf: Shelf, book: Book) -> tuple[WrittenRecipe, Diagnostics]:
    """The recipe with every percent turned into grams; the texts of the lines stay. Unchanged where the base of the
    percents is not known, which is reported."""
    named = with_names(written, shelf)
    if not (written.flour or written.dough or any(in_percent(each) for each in every_line(named))):
        return named, tuple(_idle_shares(named))
    flour, found = flour_of_all(named, base_of(named, shelf=shelf, book=book))
    if flour is None:
        return named, found
    parts = tuple(_part_in_grams(each, flour, shelf) for each in named.parts)
    apart_ = tuple(_disagreements(named, flour, shelf, book))
    return replace(named, parts=parts), (*found, *apart_)


def grams_of(line: WrittenLine, base: Fraction) -> Range | None:
    """Grams of a line in percent of `base` grams of flour."""
    percent = line.written.percent
    return None if percent is None else percent.scaled(base / 100)


def weighing(written: Written, grams: Range) -> Written:
    """The line with a weight in place of its measures; its text stays."""
    return replace(written, measures=(Quantity(amount=grams, unit=_GRAM, text=written.text),))


def _idle_shares(written: WrittenRecipe) -> Iterator[Diagnostic]:
    """A part's share of all flour, where no line is in percent of anything."""
    for part in written.parts:
        if part.flour is not None:
            message = f"the part “{part.name}” states its share of all flour, but no line is in percent"
            hint = "Write its lines in percent of that flour, such as “100% bread flour”, or delete `flour`."
            yield Diagnostic(code="F057", message=message, span=part.flour.span, hint=hint)


def _part_in_grams(part: WrittenPart, flour: Fraction, shelf: Shelf) -> WrittenPart:
    base = flour * part.flour.value / 100 if part.flour else flour
    return replace(part, lines=tuple(_line_in_grams(line, base) for line in part.lines))


def _line_in_grams(line: WrittenLine, base: Fraction) -> WrittenLine:
    others = tuple(_line_in_grams(each, base) for each in line.alternatives)
    grams = grams_of(line, base) if in_percent(line) else None
    written = line.written if grams is None else weighing(line.written, grams)
    return replace(line, written=written, alternatives=others)


def _disagreements(written: WrittenRecipe, flour: Fraction, shelf: Shelf, book: Book) -> Iterator[Diagnostic]:
    """`65% water (325 g)`: both are the same amount, and the weight wins."""
    for part in written.parts:
        base = flour * part.flour.value / 100 if part.flour else flour
        for line in part.lines:
            by_percent = None if in_percent(line) else grams_of(line, base)
            grams = quiet(line, part, shelf, book).grams if by_percent is not None else None
            if by_percent and grams and line.agree and apart(by_percent, grams) > MOST_APART:
                message = (
                    f"{_plain(by_percent.mid)} g would be the percent of {line.written.item}, and "
                    f"{_plain(grams.mid)} g is its weight"
                )
                hint = "Mend one of them, or accept both with “{line: …, agree: no}”; the weight wins."
                yield Diagnostic(code="F066", message=message, span=line.written.span, hint=hint)


def _plain(grams: Fraction) -> str:
    return f"{float(grams):.1f}".removesuffix(".0")
