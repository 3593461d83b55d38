"""From what changed to the whole publication: only what a change can reach is understood again.

A make that finds what the last one remembers compares every file of the content with it. Where only recipes, rows of
the pantry, lines of the ledger or pictures have changed, the recipes that can feel it are understood anew, with
those that they need; of all others their leaves are known. Any other change, and any doubt, makes everything anew
from the content. Either way every list is made from all leaves.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path

from generator.build.cache import Cache
from generator.build.program import program_mark
from generator.build.snapshot import Stamp, content_mark
from generator.build.task import Kept
from generator.build.works import Gone
from generator.catalogue.load import Pack
from generator.declaration.checks import PACK_CODES, footprint_diagnostics
from generator.diagnostics.diagnostic import Diagnostics, in_order
from generator.present.listing import site_view
from generator.present.views import SiteView
from generator.publication.checked import CheckResult
from generator.publication.leafing import leaves_of
from generator.publication.leaves import Leaf, bare, leaf_of, users_of
from generator.publication.noticed import MOVED_CODES, moved_diagnostics
from generator.publication.outputs import Publication
from generator.publication.pieces import Leaves, Piece, Tie, read_kept, tie_of
from generator.publication.sources_apart import ledger_marks, pantry_marks
from generator.render.feeds.entry import Entry
from generator.render.photographs import published_size
from generator.render.site.frame import Frame, frame_of

GLOBAL_CODES = PACK_CODES | MOVED_CODES
"""Findings that depend on which bakes there are beside the one at hand: worked out of all leaves, every time."""

Check = Callable[[frozenset[str] | None], CheckResult]
"""Understands the content: all of it, or as if there were only the named recipes."""

PhotoFacts = tuple[int, int, tuple[int, int]]
"""Width, height and focal point of a photograph."""

Files = tuple[tuple[str, str], ...]
"""Path and fingerprint of what a task gave."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """What the tasks about one thing gave: of each its stage, its key and its files. They give the same as long as
    what they depend on has the mark `stamp`."""

    stamp: str
    rows: tuple[tuple[str, str, Files], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Memory:
    """What the last make knew. `marks` are of every file of the content, "" where the file was not at rest.
    `around` and `ground` are marks of all that every bake depends on: see `plan.py`.

    `young` were changed so shortly before that their times may not show another change.
    """

    program: str
    program_stamp: str
    day: date
    stamps: Mapping[str, Stamp]
    marks: Mapping[str, str]
    young: tuple[str, ...]
    pantry: Mapping[str, str]
    packs: Mapping[str, Pack]
    ledger: Mapping[str, str]
    records: Mapping[str, str]
    photos: Mapping[str, PhotoFacts]
    ties: Mapping[str, Tie]
    pieces: tuple[Piece, ...]
    site: Kept
    frame: Frame
    diagnostics: Diagnostics
    texts: Mapping[str, str]
    around: str
    ground: str
    groups: Mapping[str, Group]
    outputs: Mapping[str, Stamp]
    told: bool = False
    """Whether a table of people is made, for which every recipe must be understood."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Understood:
    """The whole publication as far as it is known: from all recipes, or from some and the leaves of the others.

    `reached` are those that were understood now, where no list but the feeds can show a difference; else None.
    """

    publication: Publication
    leaves: Mapping[str, Leaf]
    ties: Mapping[str, Tie]
    diagnostics: Diagnostics
    texts: Mapping[str, str]
    packs: Mapping[str, Pack]
    records: Mapping[str, str]
    photos: Mapping[str, PhotoFacts]
    day: date
    anew: int
    reached: frozenset[str] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Disk:
    """The content as it stands, and the marks of its files, each read at most once. `since` is when it was looked at,
    in nanoseconds."""

    root: Path
    stamps: Mapping[str, Stamp]
    before: Memory | None
    since: int
    marks: dict[str, str] = field(default_factory=dict)

    def mark(self, path: str) -> str:
        """The mark of a file's content; from memory where its size and times are the same and it was at rest."""
        if path not in self.marks:
            before = self.before
            rests = before is not None and path not in before.young
            same = before is not None and before.stamps.get(path) == self.stamps.get(path)
            known = before.marks.get(path, "") if before is not None and rests and same else ""
            self.marks[path] = known or content_mark(self.root / path)
        return self.marks[path]


def understand(
    disk: Disk, check: Check, cache: Cache, day: date | None, *, jobs: int = 1, around: str = ""
) -> Understood:
    """The least that gives the whole publication. Where something else is `around` it than in the last make, every
    file is looked at, and the lists are worked out for it."""
    memory = disk.before
    paths = _changed_paths(disk, day) if memory is not None else None
    if memory is not None and paths is not None:
        known = _partly(paths, memory, disk, check, cache, around)
        if known is not None:
            return known
    return _wholly(disk, check, cache, jobs)


def publication_of(checked: CheckResult, cache: Cache) -> Publication:
    """All that a make of this content renders, whatever was made before."""
    disk = Disk(root=checked.media.root, stamps={}, before=None, since=0)
    leaves = {name: leaf_of(name, checked, cache) for name in checked.setting.book}
    return _understood(
        disk, checked, leaves, checked.diagnostics, checked.texts, ties={}, anew=len(leaves)
    ).publication


def _wholly(disk: Disk, check: Check, cache: Cache, jobs: int) -> Understood:
    checked = check(None)
    leaves, lost = leaves_of(checked.setting.book, checked, cache, jobs=jobs)
    found = (*checked.diagnostics, *lost)
    ties = {name: tie_of(leaf) for name, leaf in leaves.items()}
    return _understood(disk, checked, leaves, found, checked.texts, ties=ties, anew=len(leaves))


def _partly(
    paths: Mapping[str, set[str]],
    memory: Memory,
    disk: Disk,
    check: Check,
    cache: Cache,
    around: str,
) -> Understood | None:
    """None where the change reaches further than leaves can tell."""
    changed = {name for felt in paths.values() for name in felt}
    reached = _reached(changed, memory.ties)
    while True:
        needed = frozenset(_needed(reached, memory.ties))
        checked = check(needed)
        if not needed <= set(checked.setting.book):
            return None
        fresh, lost = leaves_of(sorted(reached), checked, cache)
        more = {each for name in changed for each in fresh[name].components} - reached
        if not more:
            break
        if not more <= set(memory.ties):
            return None
        reached |= more
    if any(memory.photos.get(source, facts) != facts for source, facts in _facts(checked).items()):
        # A focal point that is stated on one page counts for all that show the photograph.
        return None
    leaves = Leaves(memory.pieces, fresh, cache)
    ties = {**memory.ties, **{name: tie_of(leaf) for name, leaf in fresh.items()}}
    own = {checked.setting.book[name].path for name in reached} | {"pantry.yaml", "ledger.jsonl"}
    own |= {each.path for each in checked.bakes if each.recipe in reached}
    found = _merged((*checked.diagnostics, *lost), memory.diagnostics, own)
    texts = {**memory.texts, **checked.texts}
    quiet = memory.around == around and all(path.startswith("recipes/") for path in paths)
    if quiet and all(ties[name].listed == memory.ties[name].listed for name in reached):
        return _as_listed(disk, checked, leaves, ties, found, texts, frozenset(reached), memory, cache)
    return _understood(
        disk,
        checked,
        leaves,
        found,
        texts,
        ties=ties,
        anew=len(reached),
        memory=memory,
        entry_of=leaves.entry,
    )


def _as_listed(
    disk: Disk,
    checked: CheckResult,
    leaves: Leaves,
    ties: Mapping[str, Tie],
    found: Diagnostics,
    texts: Mapping[str, str],
    reached: frozenset[str],
    memory: Memory,
    cache: Cache,
) -> Understood:
    """Every list says what it said, and so do all findings that depend on which bakes there are."""
    site = read_kept(memory.site, cache)
    if not isinstance(site, SiteView):
        raise Gone(memory.site.mark)
    wide = (each for each in memory.diagnostics if each.code in GLOBAL_CODES)
    publication = Publication(
        site=site,
        frame=memory.frame,
        leaves=leaves,
        entry_of=leaves.entry,
        people=None,
        settings=checked.setting.settings,
        root=disk.root,
        mark_of=disk.mark,
    )
    return Understood(
        publication=publication,
        leaves=leaves,
        ties=ties,
        diagnostics=in_order((*found, *wide)),
        texts=texts,
        packs=memory.packs,
        records=memory.records,
        photos=memory.photos,
        day=checked.setting.day,
        anew=len(reached),
        reached=reached,
    )


def shortened_site(site: SiteView) -> SiteView:
    """As much of the publication as is asked for where no list has changed."""
    return replace(bare(site), recipes=site.recipes, journal=site.journal, updated=site.updated)


def _merged(new: Diagnostics, old: Diagnostics, own: set[str]) -> Diagnostics:
    fresh = (each for each in new if each.span.path in own and each.code not in GLOBAL_CODES)
    stay = (each for each in old if each.span.path not in own and each.code not in GLOBAL_CODES)
    return (*fresh, *stay)


def _understood(
    disk: Disk,
    checked: CheckResult,
    leaves: Mapping[str, Leaf],
    found: Diagnostics,
    texts: Mapping[str, str],
    *,
    ties: Mapping[str, Tie],
    anew: int,
    memory: Memory | None = None,
    entry_of: Callable[[str], Entry | None] | None = None,
) -> Understood:
    setting = checked.setting
    packs = {each.name: each for each in checked.shelf.pantry.packs()}
    if memory is not None:
        prints = (leaf.footprint for leaf in leaves.values())
        age = setting.settings.pack_age
        standing = {name: leaf.standing for name, leaf in leaves.items()}
        found = (
            *found,
            *footprint_diagnostics(prints, packs, day=setting.day, pack_age=age),
            *moved_diagnostics(standing, checked.articles),
        )
    site = site_view(
        checked.articles,
        setting,
        {name: leaf.short for name, leaf in leaves.items()},
        known={name: leaf.listed for name, leaf in leaves.items()},
    )
    publication = Publication(
        site=site,
        frame=frame_of(site),
        leaves=leaves,
        entry_of=entry_of or (lambda name: leaves[name].entry),
        people=checked.who_can_eat,
        settings=setting.settings,
        root=disk.root,
        mark_of=disk.mark,
    )
    records = {each.path: each.recipe for each in checked.bakes}
    return Understood(
        publication=publication,
        leaves=leaves,
        ties=ties,
        diagnostics=in_order(found),
        texts=texts,
        packs=packs,
        records={**(memory.records if memory else {}), **records},
        photos={
            **(memory.photos if memory else {}),
            **_facts(checked),
        },
        day=setting.day,
        anew=anew,
    )


def _facts(checked: CheckResult) -> dict[str, PhotoFacts]:
    photos = checked.setting.photos
    return {source: (photo.width, photo.height, photo.focus) for source, photo in photos.items()}


def _changed_paths(disk: Disk, day: date | None) -> Mapping[str, set[str]] | None:
    """The files that changed since the last make, and of each the recipes that feel it; None where others do."""
    memory = disk.before
    if memory is None or memory.program != program_mark() or memory.told:
        return None
    if set(disk.stamps) != set(memory.stamps) or (day is not None and day != memory.day):
        return None
    changed: dict[str, set[str]] = {}
    for path in disk.stamps:
        if disk.mark(path) == memory.marks.get(path) != "":
            continue
        felt = _felt(path, disk, memory)
        if felt is None or not felt <= memory.ties.keys():
            return None
        changed[path] = felt
    return changed


def _felt(path: str, disk: Disk, memory: Memory) -> set[str] | None:
    """The recipes that feel a change of this file; None where it is not only recipes that do."""
    folder, _, name = path.partition("/")
    if folder == "recipes" and name.endswith(".md"):
        return {name.removesuffix(".md")}
    if path == "ledger.jsonl":
        return changed_keys(memory.ledger, ledger_marks(disk.root / path))
    if path == "pantry.yaml":
        rows = changed_keys(memory.pantry, pantry_marks(disk.root / path))
        return None if rows is None else {tie.name for tie in memory.ties.values() if rows & set(tie.packs)}
    if path in memory.photos:
        return set() if _size_of(disk, path) == memory.photos[path][:2] else None
    return None


def _size_of(disk: Disk, path: str) -> tuple[int, int] | None:
    try:
        return published_size((disk.root / path).read_bytes())
    except OSError:
        return None


def changed_keys(before: Mapping[str, str], now: Mapping[str, str] | None) -> set[str] | None:
    """What has another mark than before; None where there is more, or less, or what cannot be told apart."""
    if now is None or set(before) != set(now):
        return None
    changed = {key for key, mark in now.items() if before[key] != mark}
    return None if "" in changed else changed


def _reached(changed: set[str], ties: Mapping[str, Tie]) -> set[str]:
    """The changed recipes, all that are made with them, and what those changed are made with: its page says where
    it is used."""
    parts = {each for name in changed for each in ties[name].components}
    return changed | users_of(changed, ties.values()) | (parts & set(ties))


def _needed(reached: set[str], ties: Mapping[str, Tie]) -> set[str]:
    """With those that use them, whose names stand on their pages, and everything that any of these is made with."""
    needed = reached | {tie.name for tie in ties.values() if reached & set(tie.components)}
    fresh = set(needed)
    while fresh:
        fresh = {each for name in fresh for each in ties[name].components} - needed
        needed |= fresh
    return needed
