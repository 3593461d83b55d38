"""How much flour the lines of a dough bring, by weight and in percent: what `flour_base` decides on."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from generator.formula.components import batch_grams
from generator.formula.flour_base import Base
from generator.formula.levain import inside
from generator.formula.lines import is_flour, understand_line
from generator.formula.model import Formula, Line, Part
from generator.formula.percent_names import every_line, in_percent
from generator.formula.percentages import in_dough
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenLine, WrittenPart, WrittenRecipe
from generator.measure.number import total

Book = Mapping[str, Formula | None]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Percent:
    """A line in percent, with what it is of all flour, and the flour in a gram of it."""

    line: WrittenLine
    part: WrittenPart
    own: Fraction
    of_all: Fraction
    flour: Fraction
    is_flour: bool


def quiet(line: WrittenLine, part: WrittenPart, shelf: Shelf, book: Book) -> Line:
    """The line understood without a word: it is understood again, and then its mistakes are told."""
    return understand_line(line, part, shelf=shelf, book=book, found=[])


def base_of(written: WrittenRecipe, *, shelf: Shelf, book: Book) -> Base:
    """What the dough's lines say of its flour. Where a part is the whole dough, preferments are inside it."""
    known = {name: formula for name, formula in book.items() if formula is not None}
    whole = any(part.total for part in written.parts)
    dough = [part for part in written.parts if part.counts and not (whole and part.preferment)]
    weighed = [_weighed(part, shelf, book) for part in dough]
    percents = [each for part in written.parts for each in _percents(part, shelf, known)]
    counted = [each for each in percents if each.part in dough]
    plain = [line for part in dough for line in _counted(part, by_percent=False) if _is_flour(line, shelf)]
    return Base(
        weighed_grams=total(part.grams for part in weighed).mid,
        weighed_flour=in_dough(weighed, known).flour,
        plain=tuple(plain),
        percent_grams=_sum(each.of_all for each in counted),
        percent_flour=_sum(each.of_all * each.flour for each in counted),
        flours=tuple(each.line for each in counted if each.is_flour),
        first=next((line for line in every_line(written) if in_percent(line)), None),
        parts=tuple(
            (part, _sum(each.own * each.flour for each in percents if each.part is part))
            for part in written.parts
            if part.flour is not None
        ),
    )


def _sum(numbers: Iterable[Fraction]) -> Fraction:
    return sum(numbers, start=Fraction(0))


def _counted(part: WrittenPart, *, by_percent: bool) -> list[WrittenLine]:
    return [line for line in part.lines if not line.optional and in_percent(line) is by_percent]


def _weighed(part: WrittenPart, shelf: Shelf, book: Book) -> Part:
    """The part with its lines that have a weight."""
    lines = tuple(quiet(line, part, shelf, book) for line in _counted(part, by_percent=False))
    return Part(
        name=part.name,
        counts=part.counts,
        preferment=part.preferment,
        lines=lines,
        grams=total(line.grams for line in lines if line.grams is not None),
        span=part.span,
    )


def _percents(part: WrittenPart, shelf: Shelf, book: Mapping[str, Formula]) -> list[_Percent]:
    share = part.flour.value / 100 if part.flour else Fraction(1)
    found = []
    for line in _counted(part, by_percent=True):
        own = line.written.percent.mid if line.written.percent else Fraction(0)
        found.append(
            _Percent(
                line=line,
                part=part,
                own=own,
                of_all=own * share,
                flour=_flour_in(line, part, shelf, book),
                is_flour=_is_flour(line, shelf),
            )
        )
    return found


def _is_flour(line: WrittenLine, shelf: Shelf) -> bool:
    pantry = line.pantry.text if line.pantry else ""
    return is_flour(line, shelf.ware(line.written.item, pantry=pantry)[0])


def _flour_in(line: WrittenLine, part: WrittenPart, shelf: Shelf, book: Mapping[str, Formula]) -> Fraction:
    """Flour in a gram of the line: a flour's is 1, a starter's by its hydration, a preferment's by its recipe."""
    if line.hydration is not None:
        made_of = inside(Fraction(1), line.hydration.value)
        return made_of.flour if made_of else Fraction(0)
    if line.recipe is not None:
        formula = book.get(line.recipe.text) if part.preferment else None
        batch = batch_grams(formula) if formula else None
        return in_dough(formula.parts, book).flour / batch if formula and batch else Fraction(0)
    return Fraction(1) if _is_flour(line, shelf) else Fraction(0)
