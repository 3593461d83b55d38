"""From the content to what is written: what was made before and is still true is taken from there.

`understanding.py` says what a publication is and what of it is new; here its tasks are done, read back, and written.
"""

import time
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from functools import partial
from pathlib import Path

from generator.build.cache import Cache, users_cache
from generator.build.packing import digest
from generator.build.program import program_mark, program_stamp
from generator.build.snapshot import content_mark, snapshot_of
from generator.build.store import Finished, WriteReport, write_output
from generator.build.task import Kept, Task
from generator.build.works import (
    Done,
    Executors,
    Gone,
    Output,
    Progress,
    ProveOwn,
    Teller,
    Workshop,
    finish_tasks,
    key_of,
    outputs_in,
    value_of,
)
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, Severity, has_errors
from generator.publication.memory import Last, content_snapshot, recalled, remember
from generator.publication.outputs import ENTRIES, Publication, tasks_of
from generator.publication.sources_apart import ledger_marks, pantry_marks
from generator.publication.understanding import Check, Disk, Memory, Understood, understand
from generator.render.template_fault import TemplateFault
from generator.render.theme import is_own
from generator.render.theme_files import files_behind
from generator.settings import Settings
from generator.wording.speech import speaking

SLOWEST = 10
"""Tasks in the list of the slowest."""

Prove = Callable[[Mapping[str, bytes], Publication, Callable[[Kept], object], frozenset[str]], Diagnostics]
"""Reads new files back, by path: where they do not say what the publication says. The third reads what is kept, the
last names the bakes whose entries in the feeds were proved by themselves."""

PROVED_AT_ONCE = 64
"""Tasks whose files wait in memory together to be read back."""


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
    """`report` is None where errors kept everything from being written.

    `unproven` says where new files do not say what the recipes say: a fault of ours, or of a theme of the maker's own
    where `own_theme`; nothing is written.
    """

    diagnostics: Diagnostics
    texts: Mapping[str, str]
    report: WriteReport | None
    day: date
    profile: Profile
    unproven: Diagnostics = ()
    own_theme: bool = False


def make(
    root: Path,
    output: Path,
    *,
    check: Check,
    day: date | None,
    jobs: int,
    progress: Progress | None,
    how: How,
    prove: Prove | None = None,
    prove_own: ProveOwn | None = None,
) -> Made:
    """Makes the output folder hold what the content says. Errors keep everything from being written.

    Files of one bake are proved by `prove_own` where they are made, all others by `prove`.
    """
    cache = how.cache or users_cache()
    memory = recalled(cache, "memory", root, output)
    once = partial(
        _make,
        root,
        output,
        check=check,
        day=day,
        jobs=jobs,
        progress=progress,
        how=how,
        cache=cache,
        prove=prove,
        prove_own=prove_own,
    )
    try:
        return once(memory if isinstance(memory, Memory) else None)
    except Gone:
        # Somebody emptied the cache: nothing of the last make is relied on.
        return once(None)


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
    prove: Prove | None,
    prove_own: ProveOwn | None,
) -> Made:
    clock = _Clock()
    since = time.time_ns()
    disk = Disk(root=root, stamps=content_snapshot(root).stamps, before=before, since=since)
    known = understand(disk, check, cache, day, jobs=jobs)
    clock.note("understood", len(known.leaves), known.anew)
    if has_errors(known.diagnostics) and not how.keep_going:
        return _told(known, None, clock)
    settings = known.publication.settings
    shop = Workshop(
        cache=cache,
        jobs=jobs,
        executors=how.executors,
        around=partial(speaking, settings.language),
        prove=prove_own,
        known=before.results if before else {},
    )
    without = how.without if prove_own else how.without | {ENTRIES}
    tasks = (each for each in tasks_of(known.publication) if each.stage not in without)
    work = _keyed(tasks, settings)
    clock.note("listed", len(work), len(work))
    try:
        done = finish_tasks(work, shop, progress=progress)
    except TemplateFault as fault:
        return _broken(known, fault, clock)
    clock.work(work, done)
    if prove is not None:
        unproven = _unproven(work, done, prove, known.publication, shop)
        made = sum(one.made for one in done)
        clock.note("read back", len(work), made, elsewhere=sum(one.reading for one in done))
        if unproven:
            return replace(_told(known, None, clock), unproven=unproven)
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


def _unproven(
    work: list[tuple[str, Task]],
    done: tuple[Done, ...],
    prove: Prove,
    publication: Publication,
    shop: Workshop,
) -> Diagnostics:
    """What new files say that the recipes do not. A result that is not proved does not stay in the cache."""
    pairs = zip(work, done, strict=True)
    fresh = [
        (key, one)
        for (key, task), one in pairs
        if one.made and one.outputs and (task.proof is None or shop.prove is None)
    ]
    entries = frozenset(task.about for _, task in work if task.stage == ENTRIES)
    found: list[Diagnostic] = [each for one in done for each in one.unproven]
    if found:
        # What the lists say of these bakes would be wrong in the same places.
        return tuple(found)
    for start in range(0, len(fresh), PROVED_AT_ONCE):
        some = fresh[start : start + PROVED_AT_ONCE]
        files = {each.path: _file(each, work, shop).content() for _, one in some for each in one.outputs}
        wrong = prove(files, publication, partial(value_of, cache=shop.cache), entries)
        if wrong:
            paths = {each.span.path for each in wrong}
            for key, one in some:
                if paths & {each.path for each in one.outputs}:
                    shop.cache.drop(key)
        found += wrong
    return tuple(found)


def _broken(known: Understood, fault: TemplateFault, clock: "_Clock") -> Made:
    """A template that cannot be filled is a mistake like any other: it is told with those of the content."""
    told = _told(known, None, clock)
    texts = {**told.texts, fault.finding.span.path: fault.text}
    return replace(told, diagnostics=(*told.diagnostics, fault.finding), texts=texts)


def _told(known: Understood, report: WriteReport | None, clock: "_Clock") -> Made:
    return Made(
        diagnostics=known.diagnostics,
        texts=known.texts,
        report=report,
        day=known.day,
        profile=clock.profile(),
        own_theme=is_own(known.publication.settings.theme),
    )


def _keyed(tasks: Iterable[Task], settings: Settings) -> list[tuple[str, Task]]:
    marks: dict[tuple[str, ...], str] = {}

    def mark(names: tuple[str, ...]) -> str:
        if names not in marks:
            files = files_behind(settings.theme, names)
            marks[names] = digest(tuple((each.name, content_mark(each)) for each in files))
        return marks[names]

    told = Teller()
    # Whatever a task reads, its words are those of the language.
    ground = f"{program_mark()} {settings.language}"
    return [(key_of(task, ground=ground, themes=mark, told=told), task) for task in tasks]


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

    def note(self, stage: str, went_in: int, made: int, *, elsewhere: float = 0) -> None:
        """A row with the time since the last, and what was done of it in the course of other work."""
        now = time.perf_counter()
        seconds = now - self.since + elsewhere
        self.rows.append(Row(stage=stage, went_in=went_in, made=made, seconds=seconds))
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
