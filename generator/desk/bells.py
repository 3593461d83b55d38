"""Tells every open page that something in the folder has changed."""

import asyncio

MOST_PAGES = 40


class Bells:
    """The pages that listen. Used from the server's own loop only."""

    def __init__(self) -> None:
        self._ears: set[asyncio.Queue[None]] = set()
        self.ended = False

    def listen(self) -> "asyncio.Queue[None] | None":
        """A queue that gets one entry for each change; None where too many listen already."""
        if len(self._ears) >= MOST_PAGES:
            return None
        ear: asyncio.Queue[None] = asyncio.Queue(maxsize=2)
        self._ears.add(ear)
        return ear

    def leave(self, ear: "asyncio.Queue[None]") -> None:
        self._ears.discard(ear)

    def ring(self) -> None:
        for ear in self._ears:
            if not ear.full():
                ear.put_nowait(None)

    def end(self) -> None:
        """The server goes: every page is let go."""
        self.ended = True
        self.ring()
