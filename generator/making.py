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
from typing import TYPE_CHECKING

from generator.build.cache import Cache, users_cache
from generator.build.packing import digest
from generator.build.program import program_mark, program_stamp
from generator.build.snapshot import Stamp, content_mark, snapshot_of
from generator.build.store import Finished, WriteReport, write_output
from generator.build.task import Task
from generator.build.works import (
    Done,
    Executors,
    Gone,
    Output,
    Progress,
    Teller,
    Workshop,
    finish_tasks,
    key_of,
    outputs_in,
)
from generator.catalogue.load import Pack
from generator.declaration.checks import PACK_CODES, footprint_diagnostics
from generator.diagnostics.diagnostic import Diagnostics, Severity, has_errors, in_order
from generator.leaves import Leaf, leaf_of, users_of
from generator.memory import Last, content_snapshot, recalled, remember
from generator.outputs import Publication, tasks_of
from generator.present.listing import site_view
from generator.render.photographs import published_size
from generator.render.theme import files_behind
from generator.sources_apart import ledger_marks, pantry_marks

if TYPE_CHECKING:
    from generator.pipeline import CheckResult

Check = Callable[[frozenset[str] | None], "CheckResult"]
"""Understands the content: all of it, or as if there were only the named recipes."""

SLOWEST = 10
"""Tasks in the list of the slowest."""

Results = Mapping[str, tuple[tuple[str, str], ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Memory:
    """What the last make knew. `marks` are of every file of the content, "" where the file was not at rest.

    `young` were changed so shortly before that their times may not show another change.
    """

    program: str
    day: date
    stamps: Mapping[str, Stamp]
    marks: Mapping[str, str]
    young: tuple[str, ...]
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
    photos: Mapping[str, tuple[int, int]]
    day: date
    anew: int


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


def _partly(changed: set[str], memory: Memory, disk: Disk, check: Check, cache: Cache) -> Understood | None:
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
    packs = {each.name: each for each in checked.shelf.pantry.packs()}
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
        photos={
            **(memory.photos if memory else {}),
            **{source: (photo.width, photo.height) for source, photo in setting.photos.items()},
        },
        day=setting.day,
        anew=anew,
    )


def _changed_recipes(disk: Disk, day: date | None) -> set[str] | None:
    """The recipes whose own sources changed since the last make; None where anything else did."""
    memory = disk.before
    if memory is None or memory.program != program_mark() or memory.told:
        return None
    if set(disk.stamps) != set(memory.stamps) or (day is not None and day != memory.day):
        return None
    changed: set[str] = set()
    for path in disk.stamps:
        if disk.mark(path) == memory.marks.get(path) != "":
            continue
        felt = _felt(path, disk, memory)
        if felt is None or not felt <= set(memory.leaves):
            return None
        changed |= felt
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
        return (
            None if rows is None else {leaf.name for leaf in memory.leaves.values() if rows & set(leaf.packs)}
        )
    if path in memory.photos:
        return set() if _size_of(disk, path) == memory.photos[path] else None
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


def _reached(changed: set[str], leaves: Mapping[str, Leaf]) -> set[str]:
    """The changed recipes, all that are made with them, and what those changed are made with: its page says where
    it is used."""
    parts = {each for name in changed for each in leaves[name].components}
    return changed | users_of(changed, leaves.values()) | (parts & set(leaves))


def _needed(reached: set[str], leaves: Mapping[str, Leaf]) -> set[str]:
    """With those that use them, whose names stand on their pages, and everything that any of these is made with."""
    needed = reached | {leaf.name for leaf in leaves.values() if reached & set(leaf.components)}
    fresh = set(needed)
    while fresh:
        fresh = {each for name in fresh for each in leaves[name].components} - needed
        needed |= fresh
    return needed


@dataclass(frozen=True, slots=True, kw_only=True)
class How:
    """How a make is done. `cache` None is the cache of the person who runs it.

    With `check_only` nothing is written, and the report says what would be. With `keep_going` the bakes that are free
    of errors are written, and what stands of the others stays as it is. `executors` stand in for our processes.
    """

    cache: Cache | None = None
    check_only: bool = False
    keep_going: bool = False
    executors: Executors | None = None
    without: frozenset[str] = frozenset()
    """Stages that are left out: a measurement or a test of the pages need not wait for paper."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """A stage: how many things went in, how many were made anew, and how long that took in all processes."""

    stage: str
    went_in: int
    made: int
    seconds: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """Where the time of a make went, in the order of the work, and its slowest tasks."""

    rows: tuple[Row, ...] = ()
    slowest: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """`report` is None where errors kept everything from being written."""

    diagnostics: Diagnostics
    texts: Mapping[str, str]
    report: WriteReport | None
    day: date
    profile: Profile


def make(
    root: Path,
    output: Path,
    *,
    check: Check,
    day: date | None,
    jobs: int,
    progress: Progress | None,
    how: How,
) -> Made:
    """Makes the output folder hold what the content says. Errors keep everything from being written."""
    cache = how.cache or users_cache()
    memory = recalled(cache, "memory", root, output)
    before = memory if isinstance(memory, Memory) else None
    try:
        return _make(
            root, output, before, check=check, day=day, jobs=jobs, progress=progress, how=how, cache=cache
        )
    except Gone:
        # Somebody emptied the cache: nothing of the last make is relied on.
        return _make(
            root, output, None, check=check, day=day, jobs=jobs, progress=progress, how=how, cache=cache
        )


def _make(
    root: Path,
    output: Path,
    before: Memory | None,
    *,
    check: Check,
    day: date | None,
    jobs: int,
    progress: Progress | None,
    how: How,
    cache: Cache,
) -> Made:
    clock = _Clock()
    since = time.time_ns()
    disk = Disk(root=root, stamps=content_snapshot(root).stamps, before=before, since=since)
    known = understand(disk, check, cache, day)
    clock.note("understood", len(known.leaves), known.anew)
    if has_errors(known.diagnostics) and not how.keep_going:
        return _told(known, None, clock)
    shop = Workshop(cache=cache, jobs=jobs, executors=how.executors, known=before.results if before else {})
    tasks = (each for each in tasks_of(known.publication) if each.stage not in how.without)
    work = _keyed(tasks, known.publication.settings.theme)
    clock.note("listed", len(work), len(work))
    done = finish_tasks(work, shop, progress=progress)
    clock.work(work, done)
    outputs = tuple(each for one in done for each in one.outputs)
    trusted = _trusted(output, before)
    stays = _stays(known) if how.keep_going else ()
    report = write_output(
        output,
        (_file(each, work, shop) for each in outputs),
        content=root,
        trusted=trusted,
        stays=stays,
        dry=how.check_only,
    )
    clock.note("written", len(outputs), len(report.written))
    if not (report.refused or how.check_only or has_errors(known.diagnostics)):
        _remember(root, output, disk, known, done, work, cache)
    cache.trim()
    return _told(known, report, clock)


def _told(known: Understood, report: WriteReport | None, clock: "_Clock") -> Made:
    return Made(
        diagnostics=known.diagnostics,
        texts=known.texts,
        report=report,
        day=known.day,
        profile=clock.profile(),
    )


def _keyed(tasks: Iterable[Task], theme: str) -> list[tuple[str, Task]]:
    marks: dict[tuple[str, ...], str] = {}

    def mark(names: tuple[str, ...]) -> str:
        if names not in marks:
            files = files_behind(theme, names)
            marks[names] = digest(tuple((each.name, content_mark(each)) for each in files))
        return marks[names]

    told = Teller()
    return [(key_of(task, ground=program_mark(), themes=mark, told=told), task) for task in tasks]


def _file(output: Output, work: list[tuple[str, Task]], shop: Workshop) -> Finished:
    """The output with its content where it can be had: kept, or made once more where the cache has lost it."""

    def content() -> bytes:
        if output.content is not None:
            return output.content
        found = outputs_in(shop.cache.get(output.key), output.key)
        if found is None:
            task = next(task for key, task in work if key == output.key)
            again = finish_tasks([(output.key, task)], replace(shop, known={}, jobs=1))[0].outputs
            found = outputs_in(shop.cache.get(output.key), output.key) or again
        return next(each.content or b"" for each in found if each.path == output.path)

    return Finished(path=output.path, mark=output.mark, content=content)


def _trusted(output: Path, before: Memory | None) -> Mapping[str, str]:
    """The marks of files in the output folder that are as the last make left them, by their sizes and times."""
    if before is None or not output.is_dir():
        return {}
    now = snapshot_of(output).stamps
    marks = dict(pair for pairs in before.results.values() for pair in pairs)
    return {
        path: mark for path, mark in marks.items() if path in now and now[path] == before.outputs.get(path)
    }


def _stays(known: Understood) -> tuple[str, ...]:
    """Where the outputs of the bakes with errors stand, which a make that keeps going leaves alone."""
    wrong = {each.span.path for each in known.diagnostics if each.severity is Severity.ERROR}
    names = {Path(path).stem for path in wrong if path.startswith("recipes/")} - set(known.leaves)
    return tuple(f"{place}/{name}/" for name in sorted(names) for place in ("site/recipes", "desk"))


def _remember(
    root: Path,
    output: Path,
    disk: Disk,
    known: Understood,
    done: Iterable[Done],
    work: list[tuple[str, Task]],
    cache: Cache,
) -> None:
    """Writes down what the next make may rely on. What changed while it was read is not relied on."""
    marks = {path: disk.mark(path) for path in disk.stamps}
    after = content_snapshot(root)
    restless = {path for path, stamp in disk.stamps.items() if after.stamps.get(path) != stamp}
    texts = {each.span.path: known.texts.get(each.span.path, "") for each in known.diagnostics}
    results = {
        key: tuple((each.path, each.mark) for each in one.outputs)
        for (key, _), one in zip(work, done, strict=True)
    }
    stood = snapshot_of(output)
    memory = Memory(
        program=program_mark(),
        day=known.day,
        stamps=dict(disk.stamps),
        marks={path: "" if path in restless else mark for path, mark in marks.items()},
        young=after.doubtful(disk.since),
        pantry=dict(pantry_marks(root / "pantry.yaml") or {}),
        packs=dict(known.packs),
        ledger=dict(ledger_marks(root / "ledger.jsonl") or {}),
        records=dict(known.records),
        photos=known.photos,
        leaves=dict(known.leaves),
        diagnostics=known.diagnostics,
        texts=texts,
        results=results,
        outputs=dict(stood.stamps),
        told=known.publication.people is not None,
    )
    remember(cache, "memory", root, output, memory)
    if restless or set(after.stamps) != set(disk.stamps):
        return
    young = after.doubtful(disk.since)
    last = Last(
        program=program_stamp(),
        day=known.day,
        zone=known.publication.settings.zone,
        content=after.mark,
        doubtful={path: marks[path] for path in young},
        output=stood.mark,
        files=len(stood.stamps),
        diagnostics=known.diagnostics,
        texts=texts,
    )
    remember(cache, "last", root, output, last)


@dataclass(slots=True)
class _Clock:
    """Collects the rows of a profile."""

    rows: list[Row] = field(default_factory=list)
    slow: list[tuple[str, float]] = field(default_factory=list)
    since: float = field(default_factory=time.perf_counter)

    def note(self, stage: str, went_in: int, made: int) -> None:
        now = time.perf_counter()
        self.rows.append(Row(stage=stage, went_in=went_in, made=made, seconds=now - self.since))
        self.since = now

    def work(self, work: list[tuple[str, Task]], done: tuple[Done, ...]) -> None:
        stages: dict[str, list[Done]] = {}
        for (_, task), one in zip(work, done, strict=True):
            stages.setdefault(task.stage, []).append(one)
            if one.made:
                self.slow.append((task.title, one.seconds))
        for stage, ones in stages.items():
            seconds = sum(one.seconds for one in ones)
            row = Row(stage=stage, went_in=len(ones), made=sum(one.made for one in ones), seconds=seconds)
            self.rows.append(row)
        self.since = time.perf_counter()

    def profile(self) -> Profile:
        slowest = sorted(self.slow, key=lambda each: -each[1])[:SLOWEST]
        return Profile(rows=tuple(self.rows), slowest=tuple(slowest))
