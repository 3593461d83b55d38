"""From the content to what is written: what was made before and is still true is taken from there.

`understanding.py` says what a publication is and what of it is new; here its tasks are done, read back, and written.
"""

import time
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import partial
from pathlib import Path

from generator.build.cache import Cache, users_cache
from generator.build.packing import digest
from generator.build.program import known_mark, program_mark, program_stamp
from generator.build.snapshot import content_mark
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
from generator.publication.clock import Clock, Profile
from generator.publication.keeping import Shelf, keep
from generator.publication.memory import content_snapshot, recalled
from generator.publication.outputs import ENTRIES, Publication
from generator.publication.plan import around_of, plan_of, results_in
from generator.publication.understanding import Check, Disk, Memory, Understood, understand
from generator.render.template_fault import TemplateFault
from generator.render.theme import is_own
from generator.render.theme_files import files_behind
from generator.settings import Settings
from generator.wording.speech import speaking

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


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """A make as it is asked for: the content becomes the output. Errors keep everything from being written.

    Files of one bake are proved by `prove_own` where they are made, all others by `prove`.
    """

    root: Path
    output: Path
    check: Check
    day: date | None = None
    jobs: int = 1
    progress: Progress | None = None
    how: How = How()
    prove: Prove | None = None
    prove_own: ProveOwn | None = None

    @property
    def without(self) -> frozenset[str]:
        return self.how.without if self.prove_own else self.how.without | {ENTRIES}


def make(order: Order) -> Made:
    """Makes the output folder hold what the content says."""
    cache = order.how.cache or users_cache()
    memory = recalled(cache, "memory", order.root, order.output)
    before = memory if isinstance(memory, Memory) else None
    if before is not None and before.program_stamp == program_stamp():
        known_mark(before.program)
    try:
        return _make(order, cache, before)
    except Gone:
        # Somebody emptied the cache: nothing of the last make is relied on.
        return _make(order, cache, None)


def _make(order: Order, cache: Cache, before: Memory | None) -> Made:
    root, output, how = order.root, order.output, order.how
    clock = Clock()
    since = time.time_ns()
    disk = Disk(root=root, stamps=content_snapshot(root).stamps, before=before, since=since)
    around = around_of(order.without, _theme_marks(disk))
    known = understand(disk, order.check, cache, order.day, jobs=order.jobs, around=around)
    clock.note("understood", len(known.leaves), known.anew)
    if has_errors(known.diagnostics) and not how.keep_going:
        return _told(known, None, clock)
    settings = known.publication.settings
    shop = Workshop(
        cache=cache,
        jobs=order.jobs,
        executors=how.executors,
        around=partial(speaking, settings.language),
        prove=order.prove_own,
        known=results_in(before.groups) if before else {},
    )
    plan = plan_of(known, before, without=order.without, around=around)
    work = _keyed(plan.tasks, settings)
    clock.note("listed", len(work), len(work))
    try:
        done = finish_tasks(work, shop, progress=order.progress)
    except TemplateFault as fault:
        return _broken(known, fault, clock)
    clock.work(work, done, plan.counts())
    if order.prove is not None:
        unproven = _unproven(work, done, order.prove, known.publication, shop)
        made = sum(one.made for one in done)
        clock.note("read back", len(work), made, elsewhere=sum(one.reading for one in done))
        if unproven:
            return replace(_told(known, None, clock), unproven=unproven)
    groups = plan.groups(work, done)
    fresh = tuple(each for one in done for each in one.outputs)
    outputs = (*fresh, *plan.outputs())
    stays = _stays(known) if how.keep_going else ()
    shelf = Shelf(output, before)
    report = write_output(
        output,
        (_file(each, work, shop) for each in outputs),
        content=root,
        trusted=shelf.trusted,
        after=shelf.after,
        stays=stays,
        dry=how.check_only,
    )
    clock.note("written", len(outputs), len(report.written))
    if not (report.refused or how.check_only or has_errors(known.diagnostics)):
        keep(root, output, disk, known, around, plan.ground, groups, shelf.stood, cache)
    cache.trim()
    return _told(known, report, clock)


def _theme_marks(disk: Disk) -> tuple[tuple[str, str], ...]:
    """The marks of the maker's own themes."""
    return tuple((path, disk.mark(path)) for path in disk.stamps if path.startswith("themes/"))


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
    # Each entry was proved when it was made, in this make or an earlier one.
    entries = frozenset(each.name for each in publication.site.recipes) if shop.prove else frozenset()
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


def _broken(known: Understood, fault: TemplateFault, clock: Clock) -> Made:
    """A template that cannot be filled is a mistake like any other: it is told with those of the content."""
    told = _told(known, None, clock)
    texts = {**told.texts, fault.finding.span.path: fault.text}
    return replace(told, diagnostics=(*told.diagnostics, fault.finding), texts=texts)


def _told(known: Understood, report: WriteReport | None, clock: Clock) -> Made:
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
            task = next((task for key, task in work if key == output.key), None)
            if task is None:
                raise Gone(output.key)
            again = finish_tasks([(output.key, task)], replace(shop, known={}, jobs=1))[0].outputs
            found = outputs_in(shop.cache.get(output.key), output.key) or again
        return next(each.content or b"" for each in found if each.path == output.path)

    return Finished(path=output.path, mark=output.mark, content=content)


def _stays(known: Understood) -> tuple[str, ...]:
    """Where the outputs of the bakes with errors stand, which a make that keeps going leaves alone."""
    wrong = {each.span.path for each in known.diagnostics if each.severity is Severity.ERROR}
    names = {Path(path).stem for path in wrong if path.startswith("recipes/")} - set(known.leaves)
    return tuple(f"{place}/{name}/" for name in sorted(names) for place in ("site/recipes", "desk"))
