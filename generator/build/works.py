"""Makes what is not made yet: each task is known by a key, and what a key gave once is taken from the cache."""

import os
import threading
import time
from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import Executor, Future, ProcessPoolExecutor, as_completed
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass, field, replace
from functools import partial
from importlib import import_module
from multiprocessing import get_all_start_methods, get_context
from types import MappingProxyType

from generator.build.cache import Cache
from generator.build.compressed import with_copies
from generator.build.fingerprint import fingerprint
from generator.build.packing import digest, mark_of, packed, pressed, unpressed
from generator.build.task import Kept, OnDisk, Task
from generator.diagnostics.diagnostic import Diagnostics
from generator.render.output import Product

Progress = Callable[[str, int, int], None]
"""Called with a title, the number of tasks that are done, and the number of all."""

FEWEST, MOST = 1, 100
"""Tasks in one parcel for a worker: large enough that the sending does not count, small enough to share evenly."""

Executors = Callable[[int], AbstractContextManager[Executor]]
"""Gives an executor with so many workers. Any `concurrent.futures.Executor` will do."""


Around = Callable[[], AbstractContextManager[None]]
"""Entered around each task, in whatever process it is done: what all of them need to be set."""


ProveOwn = Callable[[Mapping[str, bytes], object, Callable[[Kept], object]], Diagnostics]
"""Reads the products of a task back, by path, and holds them against its `proof`. The last reads what is kept."""

RECENT = 8
"""Inputs that stay in memory: the tasks about one thing share most of theirs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Output:
    """A file as it shall stand in the output folder. `content` is None where the cache has it under `key`."""

    path: str
    mark: str
    key: str
    content: bytes | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """What a task gave, whether anything was made for it, and how long that took.

    `unproven` says where its files are wrong; `reading` is how long they took to be read back.
    """

    outputs: tuple[Output, ...]
    made: bool
    seconds: float
    unproven: Diagnostics = ()
    reading: float = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Workshop:
    """Where tasks are done: the cache, how many at a time, and by whom."""

    cache: Cache
    jobs: int = 1
    executors: Executors | None = None
    around: Around = nullcontext
    prove: ProveOwn | None = None
    known: Mapping[str, tuple[tuple[str, str], ...]] = field(default_factory=lambda: MappingProxyType({}))
    """Key -> path and fingerprint of what it gave, from the last make: spares reading the cache."""


class Gone(Exception):
    """An input that the cache had is no longer there: everything is made anew from the content."""


def key_of(task: Task, *, ground: str, themes: Callable[[tuple[str, ...]], str], told: "Teller") -> str:
    """The fingerprint of all that the result depends on. `ground` is that of the program itself."""
    inputs = tuple(told(each) for each in task.inputs)
    work = task.work
    made = (f"{work.__module__}.{work.__qualname__}", *(("compressed",) if task.compressed else ()))
    return digest(ground, made, themes(task.themes), inputs)


class Teller:
    """Inputs told apart by short texts; what many tasks share is looked at once."""

    def __init__(self) -> None:
        self._known: dict[int, tuple[object, str]] = {}

    def __call__(self, value: object) -> str:
        if isinstance(value, Kept):
            return f"kept {value.mark}"
        if isinstance(value, OnDisk):
            return f"file {value.path} {value.mark}"
        if id(value) not in self._known:
            self._known[id(value)] = value, mark_of(packed(value))
        return self._known[id(value)][1]


def finish_tasks(
    tasks: Sequence[tuple[str, Task]], shop: Workshop, *, progress: Progress | None = None
) -> tuple[Done, ...]:
    """What every task gives, in their order, whatever order they were finished in.

    An exception in a task is a bug of ours; it ends the run and comes out here. Gone: a kept input is lost.
    """
    results: dict[int, Done] = {}
    waiting = []
    for place, (key, _) in enumerate(tasks):
        found = _from_before(key, shop)
        if found is None:
            waiting.append(place)
        else:
            results[place] = Done(outputs=found, made=False, seconds=0)
    # Workers do not need to know what the last make gave.
    make = partial(_make, replace(shop, known={}, executors=None))
    if waiting:
        waiting = _together(waiting, tasks)
        told = _Counter(progress, done=len(results), total=len(tasks))
        for place, done in _do([(place, *tasks[place]) for place in waiting], shop, make):
            results[place] = done
            told(tasks[place][1].title)
    return tuple(results[place] for place in range(len(tasks)))


def _together(waiting: list[int], tasks: Sequence[tuple[str, Task]]) -> list[int]:
    """The tasks about one thing one after the other."""
    first: dict[str, int] = {}
    for place in waiting:
        first.setdefault(tasks[place][1].about or f" {place}", place)
    return sorted(waiting, key=lambda place: first[tasks[place][1].about or f" {place}"])


@dataclass(slots=True)
class _Counter:
    progress: Progress | None
    done: int
    total: int

    def __call__(self, title: str) -> None:
        self.done += 1
        if self.progress:
            self.progress(title, self.done, self.total)


def _from_before(key: str, shop: Workshop) -> tuple[Output, ...] | None:
    """What the key gave in the last make, or what the cache has under it."""
    if key in shop.known:
        return tuple(Output(path=path, mark=mark, key=key) for path, mark in shop.known[key])
    found = outputs_in(shop.cache.get(key), key)
    return tuple(replace(each, content=None) for each in found) if found is not None else None


def outputs_in(kept: bytes | None, key: str) -> tuple[Output, ...] | None:
    """The files of one kept result, with their content."""
    if kept is None:
        return None
    try:
        files: list[tuple[str, bytes]] = unpressed(kept)  # type: ignore[assignment]
        return tuple(
            Output(path=path, mark=fingerprint(content), key=key, content=content) for path, content in files
        )
    except Exception:
        # Kept by an older version under a key of ours, or nonsense: it is made anew.
        return None


Waiting = tuple[int, str, Task]
Make = Callable[[str, Task], Done]


def _do(waiting: Sequence[Waiting], shop: Workshop, make: Make) -> Iterator[tuple[int, Done]]:
    workers = min(shop.jobs, len(waiting))
    if workers <= 1:
        yield from ((place, make(key, task)) for place, key, task in waiting)
        return
    for module in sorted({each for _, _, task in waiting for each in task.libraries}):
        import_module(module)
    with (shop.executors or processes)(workers) as pool:
        parcels = _parcels(waiting, workers)
        futures: list[Future[list[tuple[int, Done]]]] = [pool.submit(_all, make, each) for each in parcels]
        try:
            for future in as_completed(futures):
                yield from future.result()
        except BaseException:
            for each in futures:
                each.cancel()
            raise


def _all(make: Make, parcel: Sequence[Waiting]) -> list[tuple[int, Done]]:
    return [(place, make(key, task)) for place, key, task in parcel]


def _parcels(waiting: Sequence[Waiting], workers: int) -> list[Sequence[Waiting]]:
    size = min(max(len(waiting) // (workers * 16), FEWEST), MOST)
    return [waiting[start : start + size] for start in range(0, len(waiting), size)]


def processes(workers: int) -> ProcessPoolExecutor:
    """Processes of this machine: forked where that is safe, since a forked one has all libraries loaded already.

    With a second thread at work a fork could copy a lock that nobody will ever open again.
    """
    return ProcessPoolExecutor(workers, mp_context=get_context("fork" if can_fork() else "spawn"))


def can_fork() -> bool:
    return "fork" in get_all_start_methods() and threading.active_count() == 1 and os.name == "posix"


def _make(shop: Workshop, key: str, task: Task) -> Done:
    """Does the work of a task, reads it back, and keeps what it gave where that is right."""
    start = time.perf_counter()
    with shop.around():
        products = task.work(*(value_of(each, shop.cache) for each in task.inputs))
        made = time.perf_counter()
        unproven = _unproven(products, task, shop)
    if task.compressed:
        products = tuple(with_copies(products))
    read = time.perf_counter()
    content = pressed(packed([(each.path, each.content) for each in products]))
    held = not unproven and shop.cache.put(key, content)
    outputs = tuple(_output(each, key, held=held) for each in products)
    seconds = made - start + time.perf_counter() - read
    return Done(outputs=outputs, made=True, seconds=seconds, unproven=unproven, reading=read - made)


def _unproven(products: tuple[Product, ...], task: Task, shop: Workshop) -> Diagnostics:
    if shop.prove is None or task.proof is None:
        return ()
    files = {each.path: each.content for each in products}
    return shop.prove(files, task.proof, partial(value_of, cache=shop.cache))


def _output(product: Product, key: str, *, held: bool) -> Output:
    mark = fingerprint(product.content)
    # What the cache holds need not travel between processes, nor wait in memory for all the others.
    content = None if held else product.content
    return Output(path=product.path, mark=mark, key=key, content=content)


_RECENT: dict[str, object] = {}


def value_of(given: object, cache: Cache) -> object:
    """An input as the work gets it. Gone: the cache had it, and has it no more."""
    if not isinstance(given, Kept):
        return given
    if given.mark not in _RECENT:
        content = given.content if given.content is not None else cache.get(given.mark)
        if content is None:
            raise Gone(given.mark)
        _RECENT[given.mark] = unpressed(content)
        while len(_RECENT) > RECENT:
            del _RECENT[next(iter(_RECENT))]
    return _RECENT[given.mark]
