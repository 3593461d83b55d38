"""The order of the products does not depend on who finished first."""

import time
from collections.abc import Mapping
from functools import partial
from types import MappingProxyType

import pytest

from generator.build.schedule import run_tasks
from generator.build.task import Task
from generator.render.output import Product


def make(name: str, seconds: float = 0) -> tuple[Product, ...]:
    time.sleep(seconds)
    return (Product(path=name, content=name.encode()),)


def fail() -> tuple[Product, ...]:
    raise ZeroDivisionError("a bug")


TASKS = [
    Task(title="slow", work=partial(make, "one", 0.4)),
    Task(title="quick", work=partial(make, "two")),
    Task(title="last", work=partial(make, "three")),
]


@pytest.mark.parametrize("workers", [1, 2])
def test_products_keep_the_order_of_the_tasks(workers: int) -> None:
    assert [each.path for each in run_tasks(TASKS, workers=workers)] == ["one", "two", "three"]


@pytest.mark.parametrize("workers", [1, 2])
def test_progress_counts_every_task_once(workers: int) -> None:
    seen: list[tuple[str, int, int]] = []
    run_tasks(TASKS, workers=workers, progress=lambda *each: seen.append(each))
    assert sorted(title for title, _, _ in seen) == ["last", "quick", "slow"]
    assert [(done, total) for _, done, total in seen] == [(1, 3), (2, 3), (3, 3)]


@pytest.mark.parametrize("workers", [1, 2])
def test_bug_in_a_task_comes_out(workers: int) -> None:
    with pytest.raises(ZeroDivisionError, match="a bug"):
        run_tasks([*TASKS, Task(title="broken", work=fail)], workers=workers)


def spell(words: Mapping[str, str]) -> tuple[Product, ...]:
    return tuple(Product(path=key, content=word.encode()) for key, word in words.items())


def test_read_only_mapping_reaches_another_process() -> None:
    words = MappingProxyType({"one": "flour", "two": "water"})
    tasks = [Task(title=title, work=partial(spell, words)) for title in ("first", "second")]
    assert run_tasks(tasks, workers=2) == 2 * spell(words)


def test_no_task_gives_nothing() -> None:
    assert run_tasks([]) == ()
