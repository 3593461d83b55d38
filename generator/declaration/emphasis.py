"""The text of one ingredient as runs, with the allergens in it made visible as its region asks.

Where the region emphasises, the Annex name stands out inside the words that hold it ("**wheat** flour",
"butter**milk**"), and is added in brackets after words that do not say it ("whey (**milk**)"), at any depth
of brackets (Commission Notice 2017/C 428/01, sections 3.1 and 3.2).
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import TypeAlias

from generator.declaration.brackets import depth_at, item_at, name_end
from generator.declaration.model import Run
from generator.declaration.regions import Region
from generator.declaration.words import Match, matches, plain

_Found: TypeAlias = tuple[tuple[Match, tuple[str, ...]], ...]


@dataclass(slots=True)
class _Marks:
    """What is to stand out (start -> end), what is added where, and what is shown at which place."""

    strong: dict[int, int] = field(default_factory=dict)
    added: dict[int, list[str]] = field(default_factory=dict)
    shown: list[tuple[int, str]] = field(default_factory=list)


def in_list(text: str, needed: Iterable[str], region: Region) -> tuple[Run, ...]:
    """The text as runs; `needed` are region-free ids that the whole ingredient carries.

    Every one of them that the region wants seen in the list is seen in the result.
    """
    marks, wanted = _Marks(), _wanted(needed, region)
    if region.emphasis:
        found = tuple((each, _declared(each, region, wanted)) for each in matches(text))
        _show_what_stands(text, found, region, marks)
        _add_where_missing(text, found, marks)
    seen = {each for _, each in marks.shown}
    for each in wanted:
        if each not in seen and not _said(text, each, region):
            marks.added.setdefault(len(text), []).append(each)
    return tuple(_runs(text, marks, region))


def plain_text(runs: Iterable[Run]) -> str:
    """All of it, standing-out words in capitals."""
    return "".join(each.text.upper() if each.strong else each.text for each in runs)


def joined(pieces: Iterable[tuple[Run, ...]], separator: str) -> tuple[Run, ...]:
    """Lists of runs in a row, the separator between them, neighbours of one weight made one."""
    runs: list[Run] = []
    for index, piece in enumerate(pieces):
        runs += ([Run(text=separator)] if index else []) + list(piece)
    return merged(runs)


def merged(runs: Iterable[Run]) -> tuple[Run, ...]:
    """The same text in the fewest runs."""
    result: list[Run] = []
    for run in runs:
        if result and result[-1].strong == run.strong:
            result[-1] = Run(text=result[-1].text + run.text, strong=run.strong)
        elif run.text:
            result.append(run)
    return tuple(result)


def _wanted(needed: Iterable[str], region: Region) -> tuple[str, ...]:
    """What the list must show: where there is a Contains line, only what that line does not name."""
    ids = [shown for each in needed for shown in region.shown_ids(each)]
    if not region.emphasis:
        ids = [each for each in ids if each in region.list_only]
    return tuple(dict.fromkeys(ids))


def _said(text: str, wanted: str, region: Region) -> bool:
    """Without emphasis the word alone is enough, wherever it stands."""
    low = plain(text)
    return not region.emphasis and any(plain(word) in low for word in region.seen(wanted))


def _declared(match: Match, region: Region, wanted: tuple[str, ...]) -> tuple[str, ...]:
    """What the words declare here; a class word whose kind is named beside it is not wanted any more."""
    if region.id in match.meaning.excepted:
        return ()
    ids = dict.fromkeys(each for one in match.meaning.allergens for each in region.shown_ids(one))
    return tuple(each for each in ids if each in wanted)


def _show_what_stands(text: str, found: _Found, region: Region, marks: _Marks) -> None:
    low = plain(text)
    for match, allergens in found:
        for allergen in allergens:
            words = [(low.find(plain(word), match.start, match.end), word) for word in region.seen(allergen)]
            start = next((at for at, _ in words if at >= 0), None)
            if start is not None:
                # Of two names in one place the longer: all of "sesame", where German says "Sesam".
                long = max(len(word) for at, word in words if at == start)
                marks.strong[start] = max(marks.strong.get(start, 0), start + long)
                marks.shown.append((start, allergen))


def _add_where_missing(text: str, found: _Found, marks: _Marks) -> None:
    """Inner items first: what a sub-ingredient shows, the name before its brackets need not say again."""
    for match, allergens in sorted(found, key=lambda each: (-depth_at(text, each[0].start), each[0].start)):
        start, end = item_at(text, match.start)
        for allergen in allergens:
            if not any(start <= at < end and each == allergen for at, each in marks.shown):
                marks.added.setdefault(name_end(text, match.end), []).append(allergen)
                marks.shown.append((match.start, allergen))


def _runs(text: str, marks: _Marks, region: Region) -> Iterator[Run]:
    at = 0
    for index in sorted({*marks.strong, *marks.added}):
        if index > at:
            yield Run(text=text[at:index])
            at = index
        if index in marks.added:
            yield from _brackets(marks.added[index], region)
        if index in marks.strong and marks.strong[index] > at:
            yield Run(text=text[at : marks.strong[index]], strong=True)
            at = marks.strong[index]
    if at < len(text):
        yield Run(text=text[at:])


def _brackets(allergens: list[str], region: Region) -> Iterator[Run]:
    yield Run(text=" (")
    for index, each in enumerate(dict.fromkeys(allergens)):
        if index:
            yield Run(text=", ")
        yield Run(text=region.word(each), strong=region.emphasis)
    yield Run(text=")")
