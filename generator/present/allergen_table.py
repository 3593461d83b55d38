"""The allergens of everything on the site, bakes by allergen, with where each comes from.

A column holds all that its word means: pecan stands under "tree nuts" too, and a warning of "tree nuts" under every
nut, since it may mean that one. So nobody who hides the bakes that list a thing is shown one that may hold it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from generator.declaration.model import Declaration, Trace
from generator.declaration.people import is_meant, may_be_meant
from generator.declaration.regions import Region, allergen_word, region_named
from generator.present.addresses import slug
from generator.present.reasons import reasons
from generator.wording.forms import place_of
from generator.wording.speech import later, say

PATH = "allergens/"
CONTAINS, MAY, TO_READ, NOT_LISTED = "contains", "may contain", "to be read", "not listed"


@dataclass(frozen=True, slots=True, kw_only=True)
class AllergenHead:
    """`key` names the column in the page, `words` to the reader; `ids` are the allergens that go by these words."""

    key: str
    words: str
    ids: tuple[str, ...] = ()


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
    """A bake of the site with its declaration in the site's region; `traces` are all that it carries, in any."""

    title: str
    path: str
    declaration: Declaration
    traces: tuple[Trace, ...]


def allergen_table(bakes: Sequence[Declared], *, region: str) -> AllergenTable:
    rules = region_named(region)
    ids = {each for bake in bakes for each in (*bake.declaration.contains, *bake.declaration.may_contain)}
    heads = tuple(
        _head(each, rules) for each in sorted(map(rules.word, ids), key=lambda each: (place_of(each), each))
    )
    heads = tuple(dict.fromkeys(heads))
    ordered = sorted(bakes, key=lambda bake: (place_of(bake.title), bake.path))
    return AllergenTable(heads=heads, rows=tuple(_row(bake, heads, rules) for bake in ordered))


def _head(words: str, rules: Region) -> AllergenHead:
    ids = tuple(each for each in rules.words if rules.word(each) == words)
    return AllergenHead(key=slug(words), words=words, ids=ids)


def _row(bake: Declared, heads: tuple[AllergenHead, ...], rules: Region) -> AllergenRow:
    return AllergenRow(
        title=bake.title,
        path=bake.path,
        unfinished=bake.declaration.unfinished,
        cells=tuple(_cell(head, bake, rules) for head in heads),
    )


def _cell(head: AllergenHead, bake: Declared, rules: Region) -> AllergenCell:
    """As long as a pack is to be read, nothing that is not declared can be said not to be listed."""
    declared = [each for each in bake.traces if rules.id not in each.excepted]
    certain = [each for each in declared if each.state == CONTAINS and _is_meant(each, head, rules)]
    perhaps = [each for each in declared if each not in certain and _may_be_meant(each, head, rules)]
    if certain or perhaps:
        state = CONTAINS if certain else MAY
        return AllergenCell(head=head, state=state, sources=_sources((*certain, *perhaps)))
    if bake.declaration.finished:
        return AllergenCell(head=head, state=NOT_LISTED, sources=())
    return AllergenCell(head=head, state=TO_READ, sources=reasons(bake.declaration.unknown))


def _is_meant(trace: Trace, head: AllergenHead, rules: Region) -> bool:
    return is_meant(trace, head.ids) or bool(set(rules.ids(trace.allergen)) & set(head.ids))


def _may_be_meant(trace: Trace, head: AllergenHead, rules: Region) -> bool:
    return may_be_meant(trace, head.ids) or (trace.state == MAY and _is_meant(trace, head, rules))


def _sources(traces: Iterable[Trace]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(f"{each.item}: {_told(each)}" for each in traces))


def _told(trace: Trace) -> str:
    """Where it comes from as a reader may put it; what the maker typed into the pantry is the pack's."""
    made_as, _, source = trace.source.rpartition(": ")
    may, named = trace.state == MAY, allergen_word(trace.allergen)
    words = say("its pack says “{words}”", words=trace.words)
    if source.startswith("pantry entry"):
        words = say(_MAY_BY_PACK if may else _BY_PACK, allergen=named)
    elif not source.startswith("label"):
        words = say(_MAY_BY_NATURE if may else _BY_NATURE, allergen=named)
    return say("made at home; {words}", words=words) if made_as else words


_BY_PACK, _MAY_BY_PACK = (
    later("by its pack, contains {allergen}"),
    later("by its pack, may contain {allergen}"),
)
_BY_NATURE, _MAY_BY_NATURE = later("contains {allergen} by nature"), later("may contain {allergen} by nature")
