"""Runs the rendering tasks, several at a time where that is wished, and keeps their order."""

from collections.abc import Callable, Mapping, Sequence
from concurrent.futures import Future, ProcessPoolExecutor, as_completed
from multiprocessing import get_context
from multiprocessing.reduction import ForkingPickler
from types import MappingProxyType

from generator.build.task import Task
from generator.render.output import Product

START = "spawn"
"""A fresh process knows nothing of its parent, so the output cannot depend on what ran before."""

Progress = Callable[[str, int, int], None]
"""Called with a title, the number of tasks that are done, and the number of all."""


def _read_only(content: dict[object, object]) -> Mapping[object, object]:
    return MappingProxyType(content)


# The views hold read-only mappings, which Python does not know how to send to another process.
ForkingPickler.register(MappingProxyType, lambda mapping: (_read_only, (dict(mapping),)))


def run_tasks(
    tasks: Sequence[Task], *, workers: int = 1, progress: Progress | None = None
) -> tuple[Product, ...]:
    """All products, in the order of the tasks, whatever order they were finished in.

    An exception in a task is a bug of ours; it ends the run and comes out here.
    """
    if workers <= 1 or len(tasks) <= 1:
        return _run_here(tasks, progress)
    return _run_in_processes(tasks, min(workers, len(tasks)), progress)


def _run_here(tasks: Sequence[Task], progress: Progress | None) -> tuple[Product, ...]:
    products: list[Product] = []
    for done, task in enumerate(tasks, start=1):
        products.extend(task.work())
        if progress:
            progress(task.title, done, len(tasks))
    return tuple(products)


def _run_in_processes(tasks: Sequence[Task], workers: int, progress: Progress | None) -> tuple[Product, ...]:
    with ProcessPoolExecutor(workers, mp_context=get_context(START)) as pool:
        futures = {pool.submit(task.work): place for place, task in enumerate(tasks)}
        try:
            results = _collect(futures, tasks, progress)
        except BaseException:
            pool.shutdown(wait=False, cancel_futures=True)
            raise
    return tuple(product for result in results for product in result)


def _collect(
    futures: dict[Future[tuple[Product, ...]], int], tasks: Sequence[Task], progress: Progress | None
) -> list[tuple[Product, ...]]:
    results: list[tuple[Product, ...]] = [()] * len(tasks)
    for done, future in enumerate(as_completed(futures), start=1):
        place = futures[future]
        results[place] = future.result()
        if progress:
            progress(tasks[place].title, done, len(tasks))
    return results
