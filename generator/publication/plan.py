"""Which tasks of a publication are to be looked at: what they gave the last time is known of all the others."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from generator.build.packing import digest
from generator.build.program import program_stamp
from generator.build.task import Task
from generator.build.works import Done, Output
from generator.publication.outputs import (
    FEEDS,
    feeds_task,
    ground_of,
    list_tasks,
    stamps_of,
    tasks_about,
    tasks_of,
)
from generator.publication.understanding import Files, Group, Memory, Understood

LISTS = ""
"""The name of the group of what is about no bake."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """`tasks` are to be done or looked up; `kept` is what all others gave. `stamps` are those of the bakes."""

    tasks: tuple[Task, ...]
    kept: Mapping[str, Group]
    ground: str
    stamps: Mapping[str, str]

    def outputs(self) -> Iterator[Output]:
        """The files that the others gave."""
        for group in self.kept.values():
            for _, key, files in group.rows:
                for path, mark in files:
                    yield Output(path=path, mark=mark, key=key)

    def counts(self) -> Mapping[str, int]:
        """How many others there are of each stage."""
        return Counter(stage for group in self.kept.values() for stage, _, _ in group.rows)

    def groups(self, work: Iterable[tuple[str, Task]], done: Iterable[Done]) -> Mapping[str, Group]:
        """What all of them give."""
        rows: dict[str, list[tuple[str, str, Files]]] = {}
        for (key, task), one in zip(work, done, strict=True):
            name = task.about or LISTS
            files = tuple((each.path, each.mark) for each in one.outputs)
            rows.setdefault(name, []).append((task.stage, key, files))
        new = {name: Group(stamp=self.stamps.get(name, ""), rows=tuple(some)) for name, some in rows.items()}
        return {**self.kept, **new}


def around_of(without: frozenset[str], theme_marks: object) -> str:
    """The mark of the program as it stands, with its themes, of the maker's own, and of what is left out."""
    return digest(program_stamp(), theme_marks, sorted(without))


def plan_of(known: Understood, before: Memory | None, *, without: frozenset[str], around: str) -> Plan:
    """What must be looked at. Without a last make, or where the program or a theme may have changed, it is all."""
    if known.reached is not None and before is not None:
        return _as_listed(known, known.reached, before, without)
    publication = known.publication
    ground = digest(ground_of(publication), around)
    stamps = stamps_of(publication, {name: tie.whole for name, tie in known.ties.items()})
    groups = before.groups if before is not None and before.ground == ground else {}
    same = {name: group for name, group in groups.items() if group.stamp and stamps.get(name) == group.stamp}
    if not same:
        return Plan(tasks=_wanted(tasks_of(publication), without), kept={}, ground=ground, stamps=stamps)
    rest = (name for name in publication.leaves if name not in same)
    tasks = (*tasks_about(publication, rest), *list_tasks(publication))
    return Plan(tasks=_wanted(tasks, without), kept=same, ground=ground, stamps=stamps)


def _as_listed(known: Understood, reached: frozenset[str], before: Memory, without: frozenset[str]) -> Plan:
    """The files of the bakes that were reached, and the feeds if they say something else of one of them."""
    publication, ties = known.publication, known.ties
    told = any(ties[name].entry != before.ties[name].entry for name in reached)
    tasks = tasks_about(publication, sorted(reached)) + ((feeds_task(publication),) if told else ())
    gone = {*reached, FEEDS} if told else reached
    return Plan(
        tasks=_wanted(tasks, without),
        kept={name: group for name, group in before.groups.items() if name not in gone},
        ground=before.ground,
        stamps={
            **{name: group.stamp for name, group in before.groups.items()},
            **stamps_of(publication, {name: ties[name].whole for name in reached}),
        },
    )


def _wanted(tasks: Iterable[Task], without: frozenset[str]) -> tuple[Task, ...]:
    return tuple(each for each in tasks if each.stage not in without)


def results_in(groups: Mapping[str, Group]) -> Mapping[str, Files]:
    """Key -> path and fingerprint of what it gave."""
    return {key: files for group in groups.values() for _, key, files in group.rows}
