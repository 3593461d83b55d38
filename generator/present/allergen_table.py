"""The allergens of everything on the site, bakes by allergen, with where each comes from."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from generator.declaration.model import Declaration, Trace
from generator.declaration.regions import Region, region_named
from generator.present.addresses import slug

PATH = "allergens/"
CONTAINS, MAY, TO_READ, NOT_LISTED = "contains", "may contain", "to be read", "not listed"


@dataclass(frozen=True, slots=True, kw_only=True)
class AllergenHead:
    """`key` names the column in the page, `words` to the reader."""

    key: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AllergenCell:
    """`state` is contains, may contain, to be read or not listed; `sources` say which line brings it."""

    head: AllergenHead
    state: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AllergenRow:
    title: str
    path: str
    unfinished: str
    cells: tuple[AllergenCell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AllergenTable:
    """Columns are what at least one bake lists, in alphabetical order; rows are bakes by title."""

    heads: tuple[AllergenHead, ...]
    rows: tuple[AllergenRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Declared:
    """A bake of the site with its declaration in the site's region."""

    title: str
    path: str
    declaration: Declaration


def allergen_table(bakes: Sequence[Declared], *, region: str) -> AllergenTable:
    rules = region_named(region)
    ids = {each for bake in bakes for each in (*bake.declaration.contains, *bake.declaration.may_contain)}
    words = sorted({rules.word(each) for each in ids}, key=str.casefold)
    heads = tuple(AllergenHead(key=slug(each), words=each) for each in words)
    ordered = sorted(bakes, key=lambda bake: (bake.title.casefold(), bake.path))
    return AllergenTable(heads=heads, rows=tuple(_row(bake, heads, rules) for bake in ordered))


def _row(bake: Declared, heads: tuple[AllergenHead, ...], rules: Region) -> AllergenRow:
    return AllergenRow(
        title=bake.title,
        path=bake.path,
        unfinished=bake.declaration.unfinished,
        cells=tuple(_cell(head, bake.declaration, rules) for head in heads),
    )


def _cell(head: AllergenHead, declaration: Declaration, rules: Region) -> AllergenCell:
    """As long as a pack is to be read, nothing that is not declared can be said not to be listed."""
    contains = {rules.word(each) for each in declaration.contains}
    may = {rules.word(each) for each in declaration.may_contain}
    if head.words in contains:
        state = CONTAINS
    elif head.words in may:
        state = MAY
    else:
        state = NOT_LISTED if declaration.finished else TO_READ
    sources = tuple(_sources(head, state, declaration.traces, rules))
    return AllergenCell(head=head, state=state, sources=declaration.unknown if state == TO_READ else sources)


def _sources(head: AllergenHead, state: str, traces: Iterable[Trace], rules: Region) -> tuple[str, ...]:
    words = (
        f"{each.item}: {_told(each)}"
        for each in traces
        if head.words in {rules.word(one) for one in rules.ids(each.allergen)}
        and (each.state == state or state == CONTAINS)
    )
    return tuple(dict.fromkeys(words))


def _told(trace: Trace) -> str:
    """Where it comes from as a reader may put it; what the maker typed into the pantry is the pack's."""
    made_as, _, source = trace.source.rpartition(": ")
    state = "may contain" if trace.state == MAY else "contains"
    words = f"its pack says “{trace.words}”"
    if source.startswith("pantry entry"):
        words = f"by its pack, {state} {trace.allergen}"
    elif not source.startswith("label"):
        words = f"{state} {trace.allergen} by nature"
    return f"made at home; {words}" if made_as else words
