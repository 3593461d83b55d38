"""What a line is made of in the end: a starter and a component of a preferment are opened, all else is itself."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from generator.formula.components import component_share
from generator.formula.model import Formula, Line
from generator.formula.starters import flour_in, water_in
from generator.measure.number import Range, total

WATER = "water"


@dataclass(frozen=True, slots=True, kw_only=True)
class Content:
    """Grams of one ingredient. `key` is the same for the same ingredient, `item` its name as first written."""

    key: str
    item: str
    grams: Range
    flour: bool = False


def itself(line: Line) -> Iterator[Content]:
    """The line as one ingredient, none where its weight is not known."""
    if line.grams is not None:
        key = line.ware.ingredient.name if line.ware else line.component or line.item
        yield Content(key=key, item=line.item, grams=line.grams, flour=line.flour)


def contents(line: Line, book: Mapping[str, Formula]) -> Iterator[Content]:
    """The line opened. A component's rows add up to the line: what its making took away or added is a row too."""
    if line.hydration is not None:
        yield from _starter(line)
    elif line.component is not None:
        yield from _component(line, book)
    else:
        yield from itself(line)


def _starter(line: Line) -> Iterator[Content]:
    if line.inside:
        for each in line.inside:
            yield from itself(each)
        return
    flour, water = flour_in(line.grams, line), water_in(line.grams, line)
    if flour is not None and water is not None:
        yield Content(key=f"flour in {line.item}", item=f"flour in {line.item}", grams=flour, flour=True)
        yield Content(key=WATER, item=WATER, grams=water)


def _component(line: Line, book: Mapping[str, Formula]) -> Iterator[Content]:
    formula, share = book.get(line.component or ""), component_share(line, book)
    if formula is None or share is None or line.grams is None:
        yield from itself(line)
        return
    opened = [each for inner in formula.lines if inner.counts for each in contents(inner, book)]
    rows = [
        Content(key=each.key, item=each.item, grams=each.grams.scaled(share), flour=each.flour)
        for each in opened
    ]
    yield from rows
    changed = line.grams.mid - total(each.grams for each in rows).mid
    if changed:
        said = "lost" if changed < 0 else "gained"
        name = f"{said} in making {line.item}"
        yield Content(key=name, item=name, grams=Range.exact(Fraction(changed)))
