"""Who comes in from another machine: nobody without the session that the code was exchanged for."""

import asyncio
from concurrent.futures import ThreadPoolExecutor
from typing import Any

import pytest

from generator.desk.guard import COOKIE, MOST_AT_ONCE, Guard, Message, Receive, Scope, Send

HOST = "192.0.2.1:8460"


async def _inner(scope: Scope, receive: Receive, send: Send) -> None:
    if scope["path"] == "/broken":
        raise RuntimeError("a secret of the inside")
    await send({"type": "http.response.start", "status": 200, "headers": []})
    await send({"type": "http.response.body", "body": b"inside"})


def asked(path: str, *, client: str, method: str = "GET", **headers: str) -> tuple[int, bytes]:
    """Status and body of one request that comes from `client`."""
    guard = Guard(_inner, hosts=[HOST], token="right", sessions=lambda session: session == "mine")
    sent: list[Message] = []

    async def send(message: Message) -> None:
        sent.append(message)

    async def receive() -> Message:
        return {"type": "http.request", "body": b"", "more_body": False}

    given: dict[str, str] = {"host": HOST, **{key.replace("_", "-"): value for key, value in headers.items()}}
    scope: dict[str, Any] = {
        "type": "http",
        "method": method,
        "path": path,
        "client": (client, 1),
        "headers": [(key.encode(), value.encode()) for key, value in given.items()],
    }
    # A loop of its own thread: one of a browser may be running in this one.
    with ThreadPoolExecutor(1) as pool:
        pool.submit(lambda: asyncio.run(guard(scope, receive, send))).result()
    return sent[0]["status"], sent[1]["body"]


@pytest.mark.parametrize("path", ["/", "/desk/", "/desk/state.json", "/recipes/a/", "/desk/out/a/tags.pdf"])
def test_another_machine_sees_nothing_without_a_session(path: str) -> None:
    status, body = asked(path, client="192.0.2.7")
    assert status == 401
    assert b"inside" not in body
    assert asked(path, client="192.0.2.7", cookie=f"{COOKIE}=guessed")[0] == 401
    assert asked(path, client="192.0.2.7", cookie=f"{COOKIE}=mine") == (200, b"inside")
    assert asked(path, client="127.0.0.1") == (200, b"inside")


def test_a_session_alone_changes_nothing() -> None:
    own = {"cookie": f"{COOKIE}=mine"}
    assert asked("/desk/bring", client="192.0.2.7", method="POST", **own)[0] == 403
    assert asked("/desk/bring", client="192.0.2.7", method="POST", x_desk_token="right")[0] == 401
    assert asked("/desk/bring", client="192.0.2.7", method="POST", x_desk_token="right", **own)[0] == 200


def test_the_door_itself_is_open_to_knock_at() -> None:
    assert asked("/desk/enter", client="192.0.2.7")[0] == 200
    assert asked("/desk/enter", client="192.0.2.7", method="POST")[0] == 200
    foreign = asked("/desk/enter", client="192.0.2.7", method="POST", origin="http://evil.example")
    assert foreign[0] == 403


def test_an_error_shows_no_internals(capsys: pytest.CaptureFixture[str]) -> None:
    status, body = asked("/broken", client="127.0.0.1")
    assert status == 500
    assert b"secret" not in body
    assert "a secret of the inside" in capsys.readouterr().err


def test_of_five_hundred_at_once_as_many_are_worked_on_as_can_be_and_the_rest_is_told_to_wait() -> None:
    """Counted, not timed: whoever is let in stays inside until all five hundred have knocked."""
    with ThreadPoolExecutor(1) as pool:
        at_once, inside, later = pool.submit(lambda: asyncio.run(_crowd(500))).result()
    assert (inside, at_once) == ([200] * MOST_AT_ONCE, [503] * (500 - MOST_AT_ONCE))
    assert later == [200] * MOST_AT_ONCE


async def _crowd(many: int) -> tuple[list[int], list[int], list[int]]:
    """Who was answered while the first were inside, who was inside, and how a second crowd fares after them."""
    leave = asyncio.Event()
    answered: list[int] = []

    async def slow(scope: Scope, receive: Receive, send: Send) -> None:
        await leave.wait()
        await _inner(scope, receive, send)

    guard = Guard(slow, hosts=[HOST], token="right", sessions=lambda _: False)

    async def send(message: Message) -> None:
        if message["type"] == "http.response.start":
            answered.append(message["status"])

    async def receive() -> Message:
        return {"type": "http.request", "body": b"", "more_body": False}

    def knock() -> "asyncio.Task[None]":
        headers = [(b"host", HOST.encode())]
        scope = {"type": "http", "method": "GET", "path": "/", "client": ("127.0.0.1", 1), "headers": headers}
        return asyncio.create_task(guard(scope, receive, send))

    crowd = [knock() for _ in range(many)]
    await asyncio.wait(crowd, return_when=asyncio.FIRST_COMPLETED)
    at_once = answered.copy()
    leave.set()
    await asyncio.gather(*crowd)
    inside = answered[len(at_once) :]
    answered.clear()
    await asyncio.gather(*(knock() for _ in range(MOST_AT_ONCE)))
    return at_once, inside, answered.copy()
