"""A written recipe becomes a formula: parts, percentages, ways, times, and every check."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, in_order
from generator.formula.checks.listing import ALL
from generator.formula.components import shares
from generator.formula.lines import understand_line
from generator.formula.model import Formula, Part
from generator.formula.percent_lines import in_grams
from generator.formula.percentages import in_dough, totals_of, with_percents
from generator.formula.shelf import Shelf
from generator.formula.timeline import times_of
from generator.formula.total_part import final_dough_of
from generator.formula.ways import understand_intro, understand_ways
from generator.formula.written import WrittenPart, WrittenRecipe
from generator.measure.number import total


def understand(
    written: WrittenRecipe, *, shelf: Shelf, book: Mapping[str, Formula | None]
) -> tuple[Formula, Diagnostics]:
    """The formula of one recipe. `book` holds every recipe of the folder by name, components already understood;
    one that could not be read stands there as None."""
    written, wrong_percents = in_grams(written, shelf=shelf, book=book)
    written, wrong_whole = final_dough_of(written, shelf=shelf, book=book)
    found: list[Diagnostic] = [*wrong_percents, *wrong_whole]
    known = _Understood(book)
    weighed = tuple(_part(part, shelf=shelf, book=book, found=found) for part in written.parts)
    parts = with_percents(weighed, in_dough(weighed, known).flour)
    ways, wrong_ways = understand_ways(written.ways, parts=parts, shelf=shelf)
    intro, wrong_intro = understand_intro(written.intro, parts=parts, shelf=shelf)
    formula = Formula(
        name=written.name,
        path=written.path,
        about=written.about,
        parts=parts,
        totals=totals_of(parts, book=known, weighs=written.weighs, bakes_off=written.bakes_off),
        ways=ways,
        times=times_of(ways),
        intro=intro,
        prose=written.prose,
        weighs=written.weighs,
        bakes_off=written.bakes_off,
        component_shares=MappingProxyType(shares(parts, known)),
        spans=written.spans,
    )
    checked = tuple(each for check in ALL for each in check(formula, written, shelf, known))
    return formula, in_order((*found, *wrong_ways, *wrong_intro, *checked))


def _part(
    part: WrittenPart, *, shelf: Shelf, book: Mapping[str, Formula | None], found: list[Diagnostic]
) -> Part:
    lines = tuple(understand_line(line, part, shelf=shelf, book=book, found=found) for line in part.lines)
    empty = Part(
        name=part.name,
        counts=part.counts,
        preferment=part.preferment,
        lines=lines,
        grams=total(()),
        span=part.span,
        hydration=part.hydration.value if part.hydration else None,
        build=(part.build.seed, part.build.flour, part.build.water) if part.build else None,
    )
    return replace(empty, grams=total(line.grams for line in lines if line.counts and line.grams is not None))


class _Understood(Mapping[str, Formula]):
    """Of a book what could be read, without a copy: each of ten thousand is understood beside all others."""

    def __init__(self, book: Mapping[str, Formula | None]) -> None:
        self._book = book

    def __getitem__(self, name: str) -> Formula:
        formula = self._book[name]
        if formula is None:
            raise KeyError(name)
        return formula

    def __iter__(self) -> Iterator[str]:
        return (name for name, formula in self._book.items() if formula is not None)

    def __len__(self) -> int:
        return sum(1 for _ in self)
