"""Runs the server: sockets on loopback (and, asked for, on the kitchen's network), the watching of the folder."""

import asyncio
import contextlib
import secrets
import signal
import socket
import sys
import traceback
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path

import uvicorn
from watchfiles import awatch

from generator.desk.answers import House
from generator.desk.app import app_of
from generator.desk.bells import Bells
from generator.desk.entry_code import Door
from generator.desk.guard import Guard
from generator.desk.looks import Looks
from generator.desk.pages import Paper
from generator.desk.review import Reviews
from generator.desk.state import Desk, Known

LOOPBACK = "127.0.0.1"
USUAL_PORT = 8460
_TRIED = 20
# A documentation address (RFC 5737): connecting a datagram socket sends nothing, and tells which own address is used.
_ELSEWHERE = ("192.0.2.1", 9)


def sockets_for(port: int | None, *, lan: str = "") -> list[socket.socket]:
    """Listening sockets on one port: loopback first, then the address `lan`. Without a port the first free one.

    Raises OSError where a port that was asked for is taken.
    """
    tried = [port] if port is not None else [*range(USUAL_PORT, USUAL_PORT + _TRIED), 0]
    for number in tried:
        try:
            first = _listening(LOOPBACK, number)
            return [first, *([_listening(lan, first.getsockname()[1])] if lan else [])]
        except OSError:
            if number == tried[-1]:
                raise
    raise AssertionError("the last try ends the search")


def _listening(address: str, port: int) -> socket.socket:
    made = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    try:
        made.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        made.bind((address, port))
        made.listen(1024)
    except OSError:
        made.close()
        raise
    return made


def own_address() -> str:
    """This machine's address on its network; "" where it has none."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(_ELSEWHERE)
            address: str = probe.getsockname()[0]
        except OSError:
            return ""
    return "" if address.startswith(("127.", "0.")) else address


def hosts_of(sockets: list[socket.socket]) -> list[str]:
    """The names that the server answers to."""
    port = sockets[0].getsockname()[1]
    return [f"localhost:{port}", *(f"{each.getsockname()[0]}:{port}" for each in sockets)]


class _Server(uvicorn.Server):
    """Ends with exit 0 at SIGINT and SIGTERM, and lets go of the pages that listen."""

    def __init__(self, config: uvicorn.Config, at_end: Callable[[], None]) -> None:
        super().__init__(config)
        self._at_end = at_end

    @contextlib.contextmanager
    def capture_signals(self) -> Iterator[None]:
        loop = asyncio.get_running_loop()
        for each in (signal.SIGINT, signal.SIGTERM):
            with contextlib.suppress(NotImplementedError, RuntimeError, ValueError):
                loop.add_signal_handler(each, self._stop)
        yield

    def _stop(self) -> None:
        self.should_exit = True
        self._at_end()


def house_of(root: Path, *, day: date | None, door: Door, theme: str, token: str) -> House:
    desk = Desk(root, day=day)
    return House(
        desk=desk,
        looks=Looks(desk.now),
        reviews=Reviews(),
        door=door,
        bells=Bells(),
        paper=Paper(token=token, theme=theme),
    )


def guarded(house: House, *, hosts: list[str], token: str) -> Guard:
    """The application with the wall around it."""
    return Guard(app_of(house), hosts=hosts, token=token, sessions=house.door.knows)


def run(house: House, sockets: list[socket.socket], *, token: str, started: Callable[[], None]) -> None:
    """Serves until it is told to end."""
    app = guarded(house, hosts=hosts_of(sockets), token=token)
    config = uvicorn.Config(
        app,
        log_level="error",
        access_log=False,
        server_header=False,
        date_header=False,
        lifespan="off",
        ws="none",
        proxy_headers=False,
        http="h11",
        timeout_keep_alive=5,
        timeout_graceful_shutdown=2,
        limit_concurrency=1200,
    )
    server = _Server(config, house.bells.end)

    async def serve() -> None:
        watching = asyncio.create_task(_watch(house))
        started()
        try:
            await server.serve(sockets=sockets)
        finally:
            house.bells.end()
            watching.cancel()
            with contextlib.suppress(asyncio.CancelledError):
                await watching

    asyncio.run(serve())


async def _watch(house: House) -> None:
    """Reads the folder again soon after a change, and tells the open pages.

    A fault of ours in one reading does not end the watching: the next change is read again.
    """
    await _looked(house)
    async for _ in awatch(house.desk.root, debounce=120, step=30, rust_timeout=250, raise_interrupt=False):
        before = house.desk.last
        known = await _looked(house)
        if known is not None and (before is None or known.number != before.number):
            house.bells.ring()


async def _looked(house: House) -> Known | None:
    try:
        return await house.looks.fresh()
    except Exception:
        print(traceback.format_exc(), file=sys.stderr)
        return None


def new_token() -> str:
    return secrets.token_urlsafe(32)
