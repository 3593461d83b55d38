"""What the maker is told about labels: packs still to be read, packs read too long ago, claims of absence."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from generator.catalogue.allergens import ALLERGENS, allergens_named, allergens_near
from generator.catalogue.load import Pack, built_in
from generator.declaration.claims import claim_spans
from generator.declaration.declare import declare
from generator.declaration.lines import answered, every_line, extra_allergens, extras, line_allergens
from generator.declaration.pack import read_pack
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, in_order
from generator.diagnostics.span import Span
from generator.formula.model import Formula, Line, Ware

__all__ = ["claim_diagnostics", "claim_spans", "kitchen_diagnostics", "label_diagnostics", "pack_diagnostics"]

PACK_CODES = frozenset({"L002", "L003", "L004", "L008"})
"""What `pack_diagnostics` finds: the only findings that depend on which bakes there are besides the one at hand."""

_SAY_IT = "In pantry.yaml give the pack's text as “label:” and what it declares as “contains: […]”."


def label_diagnostics(formula: Formula, *, book: Mapping[str, Formula], region: str = "") -> Diagnostics:
    """L001 at the item of each line whose allergens are not known yet.

    What a component leaves open is reported in the component's own file. With a `region` that has rules,
    kinds that it wants named ("which tree nuts") are reported too.
    """
    found = [each for line in formula.lines for each in _line_and_choices(line, book)]
    for use in extras(formula):
        if use.line is None:
            found += _to_read(use.item, extra_allergens(use, book=book).unknown, use.span)
    if region:
        found += _kinds(formula, book, region, {each.message for each in found})
    return in_order(found)


def pack_diagnostics(book: Mapping[str, Formula], *, day: date, pack_age: int) -> Diagnostics:
    """Findings about packs, once for the whole content: L002 never read, L003 read long ago, L004 often adds, L008
    a word that looks like an allergen which nothing about the pack declares.

    `day` is the day of publication, `pack_age` the days for which a reading is trusted.
    """
    packs = {
        pack.name: pack for formula in book.values() for ware, _ in _wares(formula) for pack in ware.packs
    }
    prints = (footprint(book[name], book) for name in sorted(book))
    return footprint_diagnostics(prints, packs, day=day, pack_age=pack_age)


@dataclass(frozen=True, slots=True, kw_only=True)
class Footprint:
    """What a bake adds to the findings about packs: the names of the packs in it, those of its components too, and a
    nudge (L004) for each ingredient of its own whose packs often hold more."""

    title: str
    packs: tuple[str, ...]
    nudges: tuple[tuple[str, Diagnostic], ...]


def footprint(formula: Formula, book: Mapping[str, Formula]) -> Footprint:
    packs = (
        pack.name
        for each in _with_components(formula, book)
        for ware, _ in _wares(each)
        for pack in ware.packs
    )
    return Footprint(
        title=formula.about.title or formula.name,
        packs=tuple(dict.fromkeys(packs)),
        nudges=tuple(_nudges(formula)),
    )


def footprint_diagnostics(
    prints: Iterable[Footprint], packs: Mapping[str, Pack], *, day: date, pack_age: int
) -> Diagnostics:
    """The findings about packs from the footprints of all bakes, sorted by the bakes' names."""
    users: dict[str, dict[str, None]] = {}
    nudges: dict[str, Diagnostic] = {}
    for each in prints:
        for pack in each.packs:
            users.setdefault(pack, {})[each.title] = None
        for ingredient, nudge in each.nudges:
            nudges.setdefault(ingredient, nudge)
    found: list[Diagnostic] = []
    for name, bakes in users.items():
        found += _age(packs[name], tuple(bakes), day=day, pack_age=pack_age)
        found += _misprints(packs[name])
    return in_order((*found, *nudges.values()))


def claim_diagnostics(text: str, span: Span) -> Diagnostics:
    """L005 for each claim of absence in a text that stands on one line at `span`."""
    return tuple(
        Diagnostic(
            code="L005",
            message=f"“{words}” is a claim that a home kitchen cannot show to be true.",
            span=span.slice(start, end),
            hint="It takes testing. Say what is in the bake instead.",
        )
        for start, end, words in claim_spans(text)
    )


def kitchen_diagnostics(handled: Iterable[tuple[str, Span]]) -> Diagnostics:
    """L006 for each word of `kitchen_handles`, with its place, that names no allergen of the vocabulary."""
    return tuple(
        Diagnostic(
            code="L006",
            message=f"“{word.strip()}” is not an allergen known here.",
            span=span,
            hint=_near(word),
        )
        for word, span in handled
        if not allergens_named(word)
    )


def _near(word: str) -> str:
    near = " or ".join(f"“{each}”" for each in allergens_near(word))
    return f"Did you mean {near}?" if near else f"Choose from: {', '.join(ALLERGENS)}."


def _line_and_choices(line: Line, book: Mapping[str, Formula]) -> Iterator[Diagnostic]:
    if line.component is None or line.component not in book:
        unknown = line_allergens(line, book=book).unknown
        yield from _to_read(line.item, unknown, line.written.item_span)
    for choice in line.alternatives:
        yield from _line_and_choices(choice, book)


def _to_read(item: str, unknown: Iterable[str], span: Span) -> Iterator[Diagnostic]:
    for reason in unknown:
        yield Diagnostic(
            code="L001",
            message=f"the label is not finished: {reason[:1].lower()}{reason[1:]}",
            span=span,
            hint=_SAY_IT if item else "",
        )


def _kinds(
    formula: Formula, book: Mapping[str, Formula], region: str, said: set[str]
) -> Iterator[Diagnostic]:
    """The reasons that only the region gives, at the first line whose item begins the sentence."""
    own = set(declare(formula, book=book, region=region).unknown)
    plain = {reason for line in formula.lines for reason in line_allergens(line, book=book).unknown}
    for reason in own - plain:
        head = reason.partition(":")[0].casefold()
        line = next((each for each in formula.lines if each.item.casefold() == head), None)
        if line is not None and line.component is None:
            yield from (
                each
                for each in _to_read(line.item, (reason,), line.written.item_span)
                if each.message not in said
            )


def _wares(formula: Formula) -> Iterator[tuple[Ware, Span]]:
    for line in every_line(formula.lines):
        if line.ware is not None and line.component is None:
            yield line.ware, line.written.item_span
    for use in extras(formula):
        if use.ware is not None:
            yield use.ware, use.span


def _with_components(formula: Formula, book: Mapping[str, Formula]) -> tuple[Formula, ...]:
    found, waiting = {formula.name: formula}, [formula]
    while waiting:
        for line in every_line(waiting.pop().lines):
            inner = book.get(line.component or "")
            if inner is not None and inner.name not in found:
                found[inner.name] = inner
                waiting.append(inner)
    return tuple(found.values())


def _age(pack: Pack, bakes: tuple[str, ...], *, day: date, pack_age: int) -> Iterator[Diagnostic]:
    if not (pack.label or pack.contains_given or pack.may_contain):
        return
    names = ", ".join(bakes)
    if pack.checked is None:
        yield Diagnostic(
            code="L002",
            message=f"it is not said when the pack of {pack.name} was last read. Depending on it: {names}.",
            span=pack.span,
            hint=f"Read the pack and add “checked: {day.isoformat()}”.",
        )
    elif (day - pack.checked).days > pack_age:
        days = (day - pack.checked).days
        yield Diagnostic(
            code="L003",
            message=f"the pack of {pack.name} was last read {days} days ago. Depending on it: {names}.",
            span=pack.span,
            hint=f"Makers change what is in a pack. Read it again and set “checked: {day.isoformat()}”.",
        )


def _misprints(pack: Pack) -> Iterator[Diagnostic]:
    """Of a pack whose contents the maker has stated; of any other the word leaves the label unfinished."""
    reading = read_pack(pack.label)
    known = built_in().find(pack.stands_for) if pack.stands_for else None
    told = {*pack.contains, *pack.may_contain, *(known.allergens if known else ())}
    told |= {each.allergen for each in (*reading.contains, *reading.may_contain)}
    like: dict[str, list[str]] = {}
    for said in reading.near if pack.read else ():
        like.setdefault(said.words, []).append(said.allergen)
    for words, allergens in like.items():
        if not told & set(allergens):
            named = " or ".join(allergens)
            yield Diagnostic(
                code="L008",
                message=f"“{words}” on the label of {pack.name} looks like {named}, which its row does not declare.",
                span=pack.label_span or pack.span,
                hint=f"If it is, add it: “contains: [{allergens[0]}]”. If not, leave the row as it is.",
            )


def _nudges(formula: Formula) -> Iterator[tuple[str, Diagnostic]]:
    """One for each ingredient of a bake, at its first use; of several bakes the first one keeps it."""
    nudged: set[str] = set()
    for ware, span in _wares(formula):
        ingredient = ware.ingredient
        if ingredient.often and ingredient.name not in nudged and not any(map(answered, ware.packs)):
            nudged.add(ingredient.name)
            diagnostic = Diagnostic(
                code="L004",
                message=f"packs of {ingredient.name} often hold {' and '.join(ingredient.often)} too.",
                span=span,
                hint=_SAY_IT,
            )
            yield ingredient.name, diagnostic
