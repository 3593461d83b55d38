"""A look at the folder serves all who asked before it began, and nobody who asked later."""

import asyncio
from collections.abc import AsyncIterator, Awaitable, Callable
from concurrent.futures import ThreadPoolExecutor
from threading import Event
from types import SimpleNamespace
from typing import TypeVar, cast

import pytest

from generator.desk import serve
from generator.desk.answers import House
from generator.desk.looks import Looks

T = TypeVar("T")


def run(work: Callable[[], Awaitable[T]]) -> T:
    """In a loop of a thread of its own: one of a browser may be running in this one."""

    async def whole() -> T:
        return await work()

    with ThreadPoolExecutor(1) as pool:
        return pool.submit(lambda: asyncio.run(whole())).result()


def test_five_hundred_who_ask_at_once_share_one_look() -> None:
    count = iter(range(1, 1000))

    async def work() -> list[int]:
        looks = Looks(lambda: next(count))
        return await asyncio.gather(*(looks.fresh() for _ in range(500)))

    assert set(run(work)) == {1}


def test_who_asks_while_a_look_is_under_way_gets_the_next_one() -> None:
    """A file that was saved after the look had passed it by is seen by whoever asks after the saving."""
    begun, go_on = Event(), Event()
    saved = ["old"]

    def look() -> str:
        seen = saved[0]
        begun.set()
        go_on.wait()
        return seen

    async def work() -> tuple[str, list[str]]:
        looks = Looks(look)
        first = asyncio.create_task(looks.fresh())
        await asyncio.to_thread(begun.wait)
        saved[0] = "new"
        others = [asyncio.create_task(looks.fresh()) for _ in range(3)]
        await asyncio.sleep(0)
        go_on.set()
        return await first, await asyncio.gather(*others)

    assert run(work) == ("old", ["new", "new", "new"])


def test_who_leaves_does_not_end_the_look_for_the_others() -> None:
    begun, go_on = Event(), Event()

    def look() -> int:
        begun.set()
        go_on.wait()
        return 7

    async def work() -> int:
        looks = Looks(look)
        leaving = asyncio.create_task(looks.fresh())
        staying = asyncio.create_task(looks.fresh())
        await asyncio.to_thread(begun.wait)
        leaving.cancel()
        go_on.set()
        with pytest.raises(asyncio.CancelledError):
            await leaving
        return await staying

    assert run(work) == 7


def test_a_look_that_fails_is_told_and_the_next_one_is_tried() -> None:
    tries = iter([OSError("the disk is away"), None])

    def look() -> str:
        fault = next(tries)
        if fault:
            raise fault
        return "there"

    async def work() -> str:
        looks = Looks(look)
        with pytest.raises(OSError, match="away"):
            await looks.fresh()
        return await looks.fresh()

    assert run(work) == "there"


def test_a_fault_in_one_reading_does_not_end_the_watching(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    readings = iter([ValueError("a fault of ours"), ValueError("and again"), SimpleNamespace(number=1)])

    def look() -> object:
        found = next(readings)
        if isinstance(found, ValueError):
            raise found
        return found

    async def changes(*_: object, **__: object) -> AsyncIterator[None]:
        yield None
        yield None

    async def work() -> int:
        rung: list[int] = []
        house = SimpleNamespace(
            looks=Looks(look),
            desk=SimpleNamespace(root="", last=None),
            bells=SimpleNamespace(ring=lambda: rung.append(1)),
        )
        await serve._watch(cast(House, house))
        return len(rung)

    monkeypatch.setattr(serve, "awatch", changes)
    assert run(work) == 1
    assert "a fault of ours" in capsys.readouterr().err
