"""The formula of one bake day: with the packs that were used, and with what was put in on top.

Nothing is taken away that cannot be told to have stayed out: what was left over still counts, and a component,
which may have been made on another day, keeps its own packs beside those of the day.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from generator.catalogue.names import fold, same_name
from generator.diagnostics.span import Span
from generator.formula.model import Formula, Line, Part, Ware, Written
from generator.formula.names import lines_called
from generator.measure.number import Range

PACKS_PART = "packs of the day"
ADDED_PART = "added on the day"


@dataclass(frozen=True, slots=True, kw_only=True)
class Added:
    """What was put in beside the formula. `line` is the line of the formula that has it, or None."""

    item: str
    ware: Ware | None
    line: Line | None
    grams: Range | None
    span: Span


def stands_for(ware: Ware) -> str:
    """The catalogue's name, folded, of what a ware is or stands in for."""
    named = ware.packs[0].stands_for if ware.packs else None
    return fold(named or ware.ingredient.name)


def lines_within(lines: Iterable[Line]) -> Iterator[Line]:
    """The lines with their alternatives and with what is inside a starter."""
    for line in lines:
        yield line
        yield from lines_within(line.alternatives)
        yield from lines_within(line.inside)


def line_named(formula: Formula, item: str) -> Line | None:
    """The line of the formula, alternatives included, that goes by this name or by `part/item`."""
    named = next((line for line in lines_within(formula.lines) if same_name(line.item, item)), None)
    called = lines_called(item, formula.parts) if named is None else ()
    return called[0] if called else named


def wares_within(formula: Formula, book: Mapping[str, Formula]) -> tuple[Ware, ...]:
    """The wares of every line, those of components after the bake's own; each once."""
    found: dict[Ware, None] = {}
    for each in components_within(formula, book):
        for line in lines_within(each.lines):
            if line.ware is not None and line.component is None:
                found[line.ware] = None
    return tuple(found)


def components_within(formula: Formula, book: Mapping[str, Formula]) -> tuple[Formula, ...]:
    """The formula, and every recipe that goes into it at any depth, each once."""
    found = {formula.name: formula}
    waiting = [formula]
    while waiting:
        for line in lines_within(waiting.pop().lines):
            inner = book.get(line.component or "")
            if inner is not None and inner.name not in found:
                found[inner.name] = inner
                waiting.append(inner)
    return tuple(found.values())


def speaks_for(pack: Ware, formula: Formula, book: Mapping[str, Formula]) -> bool:
    """Whether anything in the bake is made of what the pack holds, a home-made component by its name."""
    name = stands_for(pack)
    inner = components_within(formula, book)
    return any(stands_for(ware) == name for ware in wares_within(formula, book)) or any(
        fold(line.item) == name for each in inner for line in lines_within(each.lines) if line.component
    )


def as_baked(
    formula: Formula, *, book: Mapping[str, Formula], packs: tuple[Ware, ...], added: tuple[Added, ...]
) -> Mapping[str, Formula]:
    """The book as it was on the day: the bake's own lines with the packs named, all else with both.

    A pack that no line of the bake itself is made of is declared all the same, in a part of its own.
    """
    own = replace(formula, parts=tuple(_with_packs(part, packs, instead=True) for part in formula.parts))
    own = _with_added(_with_loose(own, formula, packs), added)
    inner = {each.name for each in components_within(formula, book)} - {formula.name}
    others = {
        name: replace(
            book[name], parts=tuple(_with_packs(part, packs, instead=False) for part in book[name].parts)
        )
        for name in inner
    }
    return {**book, **others, formula.name: own}


def _with_packs(part: Part, packs: tuple[Ware, ...], *, instead: bool) -> Part:
    return replace(part, lines=tuple(_line(line, packs, instead=instead) for line in part.lines))


def _line(line: Line, packs: tuple[Ware, ...], *, instead: bool) -> Line:
    """The line of the first pack named for it, the others beside it; without any the line as it was."""
    chosen = packs_for(line, packs)
    line = replace(
        line,
        alternatives=tuple(_line(each, packs, instead=instead) for each in line.alternatives),
        inside=tuple(_line(each, packs, instead=instead) for each in line.inside),
    )
    if not chosen:
        return line
    beside = chosen if line.component is not None or not instead else chosen[1:]
    first = line if beside is chosen else replace(line, ware=chosen[0])
    extra = (
        replace(line, ware=each, component=None, alternatives=(), inside=())
        for each in beside
        if each != first.ware
    )
    return replace(first, alternatives=(*first.alternatives, *extra))


def packs_for(line: Line, packs: tuple[Ware, ...]) -> tuple[Ware, ...]:
    """The packs of the day that hold what the line is made of."""
    if line.component is None and line.ware is None:
        return ()
    name = fold(line.item) if line.component is not None or line.ware is None else stands_for(line.ware)
    return tuple(each for each in packs if stands_for(each) == name)


def _with_loose(own: Formula, formula: Formula, packs: tuple[Ware, ...]) -> Formula:
    placed = {each for line in lines_within(formula.lines) for each in packs_for(line, packs)}
    loose = tuple(each for each in packs if each not in placed)
    if not loose:
        return own
    span = formula.spans["title"]
    lines = tuple(_bare(each, each.ingredient.name, PACKS_PART, None, span, optional=True) for each in loose)
    return replace(own, parts=(*own.parts, _part(PACKS_PART, lines, span)))


def _with_added(formula: Formula, added: tuple[Added, ...]) -> Formula:
    """More of a line stands beside it, in its part and under its key; anything else in a part of its own."""
    parts = list(formula.parts)
    strange = []
    for each in added:
        at = _place(parts, each)
        if at is None:
            strange.append(added_line(each))
            continue
        number, line = at
        more = replace(line, grams=each.grams, kept=each.grams, optional=False, percent=None)
        parts[number] = replace(parts[number], lines=(*parts[number].lines, more))
    if strange:
        parts.append(_part(ADDED_PART, tuple(strange), strange[0].span))
    return replace(formula, parts=tuple(parts))


def _place(parts: list[Part], added: Added) -> tuple[int, Line] | None:
    if added.line is None:
        return None
    for number, part in enumerate(parts):
        for line in lines_within(part.lines):
            if line.key == added.line.key and line.item == added.line.item:
                return number, line
    return None


def _part(name: str, lines: tuple[Line, ...], span: Span) -> Part:
    return Part(name=name, counts=False, preferment=None, lines=lines, grams=Range.exact(0), span=span)


def added_line(added: Added) -> Line:
    """What was added as a line of its own, for what the formula has not."""
    line = _bare(added.ware, added.item, ADDED_PART, added.grams, added.span, optional=False)
    return replace(line, flour=bool(added.ware and added.ware.ingredient.flour))


def _bare(
    ware: Ware | None, item: str, part: str, grams: Range | None, span: Span, *, optional: bool
) -> Line:
    """A line that no recipe wrote."""
    written = Written(
        text=item,
        measures=(),
        words="",
        size="",
        item=item,
        preparation="",
        note="",
        span=span,
        item_span=span,
        amount_span=span,
    )
    return Line(
        part=part,
        key=f"{part}/{item}",
        written=written,
        item=item,
        ware=ware,
        component=None,
        optional=optional,
        alternatives=(),
        note="",
        grams=grams,
        kept=grams,
        millilitres=None,
        volume_stated=False,
        count=None,
        flour=False,
        percent=None,
        span=span,
    )
