"""Tasks are done once: in the order of the list, in any number of processes, and again only for another key."""

import threading
import time
from collections.abc import Mapping
from concurrent.futures import Executor, ThreadPoolExecutor
from contextlib import AbstractContextManager
from functools import partial
from pathlib import Path
from types import MappingProxyType

import pytest

from generator.build.cache import Cache
from generator.build.task import Kept, OnDisk, Task, kept
from generator.build.works import Gone, Output, Teller, Workshop, finish_tasks, key_of, outputs_in
from generator.render.output import Product
from generator.wording.speech import say, speaking


def make(name: str, seconds: float = 0) -> tuple[Product, ...]:
    time.sleep(seconds)
    return (Product(path=name, content=name.encode()),)


def fail() -> tuple[Product, ...]:
    raise ZeroDivisionError("a bug")


def spell(words: Mapping[str, str]) -> tuple[Product, ...]:
    return tuple(Product(path=key, content=word.encode()) for key, word in words.items())


def read(file: OnDisk) -> tuple[Product, ...]:
    return (Product(path="copy", content=file.read()),)


def speak(name: str) -> tuple[Product, ...]:
    return (Product(path=name, content=say("flour is raw").encode()),)


TASKS = [
    Task(title="slow", work=make, inputs=("one", 0.4)),
    Task(title="quick", work=make, inputs=("two",)),
    Task(title="last", work=make, inputs=("three",)),
]


def keyed(tasks: list[Task], ground: str = "ground") -> list[tuple[str, Task]]:
    told = Teller()
    return [(key_of(each, ground=ground, themes="".join, told=told), each) for each in tasks]


def done(tasks: list[Task], shop: Workshop) -> list[Output]:
    return [each for one in finish_tasks(keyed(tasks), shop) for each in one.outputs]


def shop(*, jobs: int = 1, root: Path | None = None) -> Workshop:
    return Workshop(cache=Cache(root=root), jobs=jobs)


@pytest.mark.parametrize("jobs", [1, 2])
def test_outputs_keep_the_order_of_the_tasks(jobs: int) -> None:
    found = done(TASKS, shop(jobs=jobs))
    assert [(each.path, each.content) for each in found] == [
        ("one", b"one"),
        ("two", b"two"),
        ("three", b"three"),
    ]


@pytest.mark.parametrize("jobs", [1, 2])
def test_the_language_of_a_make_is_spoken_in_every_process(jobs: int) -> None:
    tasks = [Task(title=name, work=speak, inputs=(name,)) for name in "abc"]
    german = Workshop(cache=Cache(root=None), jobs=jobs, around=partial(speaking, "de"))
    assert {each.content for each in done(tasks, german)} == {b"Mehl ist roh"}
    assert {each.content for each in done(tasks, shop(jobs=jobs))} == {b"flour is raw"}


@pytest.mark.parametrize("jobs", [1, 2])
def test_progress_counts_every_task_once(jobs: int) -> None:
    seen: list[tuple[str, int, int]] = []
    finish_tasks(keyed(TASKS), shop(jobs=jobs), progress=lambda *each: seen.append(each))
    assert sorted(title for title, _, _ in seen) == ["last", "quick", "slow"]
    assert [(count, total) for _, count, total in seen] == [(1, 3), (2, 3), (3, 3)]


@pytest.mark.parametrize("jobs", [1, 2])
def test_bug_in_a_task_comes_out(jobs: int) -> None:
    with pytest.raises(ZeroDivisionError, match="a bug"):
        done([*TASKS, Task(title="broken", work=fail)], shop(jobs=jobs))


@pytest.mark.parametrize("jobs", [1, 2])
def test_read_only_mapping_reaches_another_process(jobs: int) -> None:
    words = MappingProxyType({"one": "flour", "two": "water"})
    tasks = [
        Task(title="given", work=spell, inputs=(words,)),
        Task(title="kept", work=spell, inputs=(kept(words),)),
    ]
    found = done(tasks, shop(jobs=jobs))
    assert [each.content for each in found] == [b"flour", b"water", b"flour", b"water"]


def test_no_task_gives_nothing() -> None:
    assert finish_tasks([], shop()) == ()


def test_what_was_made_is_not_made_again(tmp_path: Path) -> None:
    first = finish_tasks(keyed(TASKS), shop(root=tmp_path))
    again = finish_tasks(keyed(TASKS), shop(root=tmp_path))
    assert [one.made for one in first] == [True] * 3
    assert [one.made for one in again] == [False] * 3
    assert [one.outputs for one in again] == [one.outputs for one in first]
    assert all(one.outputs[0].content is None for one in first)


@pytest.mark.parametrize(
    "other",
    [
        Task(title="slow", work=make, inputs=("one", 0.3)),
        Task(title="slow", work=spell, inputs=("one", 0.4)),
        Task(title="slow", work=make, inputs=("one", 0.4), themes=("site/a.html",)),
    ],
)
def test_another_input_work_or_theme_is_another_key(other: Task) -> None:
    assert keyed([other])[0][0] != keyed(TASKS)[0][0]


def test_another_program_is_another_key_and_another_title_is_not() -> None:
    assert keyed(TASKS, "program 2")[0][0] != keyed(TASKS)[0][0]
    assert keyed([Task(title="told otherwise", work=make, inputs=("two",))])[0][0] == keyed(TASKS)[1][0]


def test_file_counts_by_its_content_wherever_the_folder_lies(tmp_path: Path) -> None:
    def task(root: Path, mark: str) -> Task:
        return Task(title="", work=read, inputs=(OnDisk(root=root, path="media/a", mark=mark),))

    here, there = keyed([task(tmp_path, "1"), task(tmp_path / "moved", "1")])
    changed = keyed([task(tmp_path, "2")])[0]
    assert here[0] == there[0] != changed[0]


def test_flipped_bit_in_a_kept_result_is_made_anew(tmp_path: Path) -> None:
    finish_tasks(keyed(TASKS), shop(root=tmp_path))
    key = keyed(TASKS)[1][0]
    file = tmp_path / key[:2] / key[2:]
    data = bytearray(file.read_bytes())
    data[-3] ^= 4
    file.write_bytes(data)
    again = finish_tasks(keyed(TASKS), shop(root=tmp_path))
    assert [one.made for one in again] == [False, True, False]
    kept_now = outputs_in(Cache(root=tmp_path).get(key), key)
    assert kept_now is not None
    assert kept_now[0].content == b"two"


def test_lost_input_is_told_apart_from_a_bug(tmp_path: Path) -> None:
    task = Task(title="", work=spell, inputs=(Kept(mark="00" * 32),))
    with pytest.raises(Gone):
        done([task], shop(root=tmp_path))


def test_any_executor_can_stand_in(tmp_path: Path) -> None:
    asked: list[int] = []

    def threads(workers: int) -> AbstractContextManager[Executor]:
        asked.append(workers)
        return ThreadPoolExecutor(workers)

    theirs = Workshop(cache=Cache(root=tmp_path), jobs=2, executors=threads)
    assert [each.path for each in done(TASKS, theirs)] == ["one", "two", "three"]
    assert asked == [2]


def test_second_thread_does_not_stop_the_processes() -> None:
    """With it they are not forked."""
    stop = threading.Event()
    other = threading.Thread(target=stop.wait)
    other.start()
    try:
        assert [each.path for each in done(TASKS, shop(jobs=2))] == ["one", "two", "three"]
    finally:
        stop.set()
        other.join()


@pytest.mark.long
@pytest.mark.filterwarnings("default")
def test_an_executor_of_many_machines_can_stand_in(tmp_path: Path) -> None:
    """dask.distributed on loopback, where it is installed."""
    distributed = pytest.importorskip("distributed")

    class Cluster:
        def __init__(self, workers: int) -> None:
            self.client = distributed.Client(
                n_workers=workers,
                threads_per_worker=1,
                processes=True,
                dashboard_address=None,
                host="127.0.0.1",
            )

        def __enter__(self) -> Executor:
            executor: Executor = self.client.get_executor(pure=False)
            return executor

        def __exit__(self, *_: object) -> None:
            self.client.close()

    theirs = Workshop(cache=Cache(root=tmp_path), jobs=2, executors=Cluster)
    assert [each.path for each in done(TASKS, theirs)] == ["one", "two", "three"]
