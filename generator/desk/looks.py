"""Looks at the folder that many requests share: whoever asks gets one that began after they asked.

Five hundred requests at once cost two looks, not five hundred, and hold one thread, not all of them; a look that is
under way already may have passed by what was saved a moment ago, so it serves nobody who comes later.
"""

import asyncio
from collections.abc import Callable
from typing import Generic, TypeVar

T = TypeVar("T")


class Looks(Generic[T]):
    """Used from the server's own loop only. `look` is called in a thread of its own, never twice at a time."""

    def __init__(self, look: Callable[[], T]) -> None:
        self._look = look
        self._under_way: asyncio.Task[T] | None = None
        self._next: asyncio.Task[T] | None = None

    async def fresh(self) -> T:
        """What a look finds that begins after this was asked."""
        if self._next is None:
            self._next = asyncio.create_task(self._after(self._under_way))
        # Who leaves does not end the look for the others.
        return await asyncio.shield(self._next)

    async def _after(self, before: "asyncio.Task[T] | None") -> T:
        if before is not None:
            await asyncio.wait([before])
        self._under_way, self._next = self._next, None
        return await asyncio.to_thread(self._look)
