"""Where the time of a make goes."""

import time
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from generator.build.task import Task
from generator.build.works import Done

SLOWEST = 10
"""Tasks in the list of the slowest."""


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


class Clock:
    """Collects the rows of a profile."""

    __slots__ = ("rows", "since", "slow")

    def __init__(self) -> None:
        self.rows: list[Row] = []
        self.slow: list[tuple[str, float]] = []
        self.since = time.perf_counter()

    def note(self, stage: str, went_in: int, made: int, *, elsewhere: float = 0) -> None:
        """A row with the time since the last, and what was done of it in the course of other work."""
        now = time.perf_counter()
        seconds = now - self.since + elsewhere
        self.rows.append(Row(stage=stage, went_in=went_in, made=made, seconds=seconds))
        self.since = now

    def work(
        self, work: Iterable[tuple[str, Task]], done: tuple[Done, ...], known: Mapping[str, int] | None = None
    ) -> None:
        """A row for each stage. `known` says how many of each there are for which nothing had to be looked up."""
        stages: dict[str, list[Done]] = {}
        others = known or {}
        for (_, task), one in zip(work, done, strict=True):
            stages.setdefault(task.stage, []).append(one)
            if one.made:
                self.slow.append((task.title, one.seconds))
        for stage in dict.fromkeys((*others, *stages)):
            ones = stages.get(stage, [])
            seconds = sum(one.seconds for one in ones)
            row = Row(
                stage=stage,
                went_in=len(ones) + others.get(stage, 0),
                made=sum(one.made for one in ones),
                seconds=seconds,
            )
            self.rows.append(row)
        self.since = time.perf_counter()

    def profile(self) -> Profile:
        slowest = sorted(self.slow, key=lambda each: -each[1])[:SLOWEST]
        return Profile(rows=tuple(self.rows), slowest=tuple(slowest))
