"""From what changed to what is written: only what a change can reach is understood and rendered again.

A make that finds what the last one remembers compares every file of the content with it. Where only recipes, rows of
the pantry, lines of the ledger or pictures have changed, the recipes that can feel it are understood anew, with
those that they need; of all others their leaves are known. Any other change, and any doubt, makes everything anew
from the content, with the results of unchanged tasks from the cache. Either way every list is made from all leaves.
"""

import time
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

from generator.build.cache import Cache
from generator.build.fingerprint import fingerprint
from generator.build.packing import digest
from generator.build.program import program_mark, program_stamp
from generator.build.snapshot import Stamp, content_mark, snapshot_of
from generator.build.works import Done, Gone, Output, Progress, Workshop, finish_tasks, key_of, outputs_in
from generator.build.task import Task
from generator.catalogue.load import Pack
from generator.declaration.checks import PACK_CODES, footprint_diagnostics
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, in_order
from generator.leaves import Leaf, leaf_of, users_of
from generator.memory import Last, content_snapshot, recalled, remember
from generator.outputs import Publication, tasks_of
from generator.present.listing import site_view
from generator.render.photographs import published_size
from generator.render.theme import files_behind

if TYPE_CHECKING:
    from generator.pipeline import CheckResult

Check = Callable[[frozenset[str] | None], "CheckResult"]
"""Understands the content: all of it, or as if there were only the named recipes."""

Results = Mapping[str, tuple[tuple[str, str], ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Memory:
    """What the last make knew. `marks` are of every file of the content, "" where the file was not at rest."""

    program: str
    day: date
    stamps: Mapping[str, Stamp]
    marks: Mapping[str, str]
    pantry: Mapping[str, str]
    packs: Mapping[str, Pack]
    ledger: Mapping[str, str]
    records: Mapping[str, str]
    photos: Mapping[str, tuple[int, int]]
    leaves: Mapping[str, Leaf]
    diagnostics: Diagnostics
    texts: Mapping[str, str]
    results: Results
    outputs: Mapping[str, Stamp]
    told: bool = False
    """Whether a table of people is made, for which every recipe must be understood."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Understood:
    """The whole publication as far as it is known: from all recipes, or from some and the leaves of the others."""

    publication: Publication
    leaves: Mapping[str, Leaf]
    diagnostics: Diagnostics
    texts: Mapping[str, str]
    packs: Mapping[str, Pack]
    records: Mapping[str, str]
    day: date
    anew: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Disk:
    """The content as it stands, and the marks of its files, each read at most once."""

    root: Path
    stamps: Mapping[str, Stamp]
    before: Memory | None
    marks: dict[str, str] = field(default_factory=dict)

    def mark(self, path: str) -> str:
        """The mark of a file's content; from memory where its size and times are the same and it was at rest."""
        if path not in self.marks:
            known = self.before.marks.get(path, "") if self.before else ""
            same = self.before is not None and self.before.stamps.get(path) == self.stamps.get(path)
            self.marks[path] = known if known and same else content_mark(self.root / path)
        return self.marks[path]


def understand(disk: Disk, check: Check, cache: Cache, day: date | None) -> Understood:
    """The least that gives the whole publication."""
    memory = disk.before
    changed = _changed_recipes(disk, day) if memory is not None else None
    if memory is not None and changed is not None:
        known = _partly(changed, memory, disk, check, cache)
        if known is not None:
            return known
    return _wholly(disk, check, cache)


def _wholly(disk: Disk, check: Check, cache: Cache) -> Understood:
    checked = check(None)
    leaves = {name: leaf_of(name, checked, cache) for name in checked.setting.book}
    return _understood(disk, checked, leaves, checked.diagnostics, checked.texts, anew=len(leaves))


def _partly(
    changed: set[str], memory: Memory, disk: Disk, check: Check, cache: Cache
) -> Understood | None:
    """None where the change reaches further than leaves can tell."""
    reached = _reached(changed, memory.leaves)
    while True:
        needed = frozenset(_needed(reached, memory.leaves))
        checked = check(needed)
        if not needed <= set(checked.setting.book):
            return None
        fresh = {name: leaf_of(name, checked, cache) for name in sorted(reached)}
        more = {each for name in changed for each in fresh[name].components} - reached
        if not more:
            break
        if not more <= set(memory.leaves):
            return None
        reached |= more
    leaves = {name: fresh.get(name, memory.leaves[name]) for name in sorted(memory.leaves)}
    own = {checked.setting.book[name].path for name in reached} | {"pantry.yaml", "ledger.jsonl"}
    own |= {each.path for each in checked.bakes if each.recipe in reached}
    found = _merged(checked.diagnostics, memory.diagnostics, own)
    texts = {**memory.texts, **checked.texts}
    return _understood(disk, checked, leaves, found, texts, anew=len(reached), memory=memory)


def _merged(new: Diagnostics, old: Diagnostics, own: set[str]) -> Diagnostics:
    fresh = (each for each in new if each.span.path in own and each.code not in PACK_CODES)
    stay = (each for each in old if each.span.path not in own and each.code not in PACK_CODES)
    return (*fresh, *stay)


def _understood(
    disk: Disk,
    checked: "CheckResult",
    leaves: Mapping[str, Leaf],
    found: Diagnostics,
    texts: Mapping[str, str],
    *,
    anew: int,
    memory: Memory | None = None,
) -> Understood:
    setting = checked.setting
    packs = {each.name: each for each in checked.shelf.pantry}
    if memory is not None:
        prints = (leaf.footprint for leaf in leaves.values())
        age = setting.settings.pack_age
        found = (*found, *footprint_diagnostics(prints, packs, day=setting.day, pack_age=age))
    site = site_view(
        checked.articles,
        setting,
        {name: leaf.short for name, leaf in leaves.items()},
        declared={name: leaf.declaration for name, leaf in leaves.items()},
    )
    publication = Publication(
        site=site,
        leaves=leaves,
        people=checked.who_can_eat,
        settings=setting.settings,
        root=disk.root,
        mark_of=disk.mark,
    )
    records = {each.path: each.recipe for each in checked.bakes}
    return Understood(
        publication=publication,
        leaves=leaves,
        diagnostics=in_order(found),
        texts=texts,
        packs=packs,
        records={**(memory.records if memory else {}), **records},
        day=setting.day,
        anew=anew,
    )
