"""Who may come in: the wall around every answer of the server.

Requests must name this server as their host; those that come from another page, or from another site, are turned
away; a change needs the token that only our own pages carry. From another machine (with --lan) a request needs the
session that the one-time code was exchanged for. At most `MOST_AT_ONCE` are worked on, the rest is told to wait.
"""

import secrets
import sys
import traceback
from collections.abc import Awaitable, Callable, Iterable, MutableMapping
from http.cookies import CookieError, SimpleCookie
from ipaddress import ip_address
from typing import Any

Scope = MutableMapping[str, Any]
Message = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[Message]]
Send = Callable[[Message], Awaitable[None]]
App = Callable[[Scope, Receive, Send], Awaitable[None]]

COOKIE = "tinleaf_desk"
TOKEN_HEADER = b"x-desk-token"
MOST_AT_ONCE = 64
MOST_BODY = 20_000_000
ENTER = "/desk/enter"
_OPEN_TO_ALL = (ENTER, "/desk/files/", "/leaf/")
_READING = ("GET", "HEAD")

_DESK_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob: data:; font-src 'self'; "
    "connect-src 'self'; frame-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'self'"
)
HEADERS = (
    (b"content-security-policy", _DESK_POLICY.encode()),
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"cross-origin-resource-policy", b"same-origin"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"permissions-policy", b"camera=(self), microphone=(), geolocation=()"),
)


class Guard:
    """The wall, as ASGI middleware. `hosts` are the names, with the port, that this server answers to."""

    def __init__(
        self, app: App, *, hosts: Iterable[str], token: str, sessions: Callable[[str], bool]
    ) -> None:
        self._app = app
        self._hosts = frozenset(hosts)
        self._token = token.encode()
        self._sessions = sessions
        self._working = 0

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            if scope["type"] == "lifespan":
                await self._app(scope, receive, send)
            return
        refused = self._refused(scope)
        if refused is None and self._working >= MOST_AT_ONCE:
            refused = (503, "The desk is busy; try again in a moment.")
        if refused is not None:
            await _answer(send, *refused)
            return
        self._working += 1
        try:
            await self._guarded(scope, receive, send)
        finally:
            self._working -= 1

    def _refused(self, scope: Scope) -> tuple[int, str] | None:
        headers = _headers(scope)
        host = headers.get(b"host", b"").decode("latin-1").casefold()
        if host not in self._hosts:
            return 421, "This desk does not answer to that name."
        origin = headers.get(b"origin")
        if origin is not None and origin.decode("latin-1").casefold() != f"http://{host}":
            return 403, "Another site asked for this."
        if headers.get(b"sec-fetch-site", b"none") not in (b"none", b"same-origin"):
            return 403, "Another site asked for this."
        if int(headers.get(b"content-length", b"0") or b"0") > MOST_BODY:
            return 413, "That is too large."
        return self._unknown(scope, headers)

    def _unknown(self, scope: Scope, headers: dict[bytes, bytes]) -> tuple[int, str] | None:
        path: str = scope["path"]
        may_enter = is_own_machine(scope) or self._sessions(session_of(headers))
        if not may_enter and not path.startswith(_OPEN_TO_ALL):
            return 401, f"Open {ENTER} and type the code that stands in the terminal."
        if scope["method"] in _READING:
            return None
        given = headers.get(TOKEN_HEADER, b"")
        if scope["method"] != "POST":
            return 405, "The desk does not do that."
        if not secrets.compare_digest(given, self._token) and path != ENTER:
            return 403, "This page is from an earlier start of the desk: load it again."
        return None

    async def _guarded(self, scope: Scope, receive: Receive, send: Send) -> None:
        begun = False

        async def sending(message: Message) -> None:
            nonlocal begun
            if message["type"] == "http.response.start":
                begun = True
                message["headers"] = [*message.get("headers", []), *HEADERS]
            await send(message)

        try:
            await self._app(scope, receive, sending)
        except Exception:
            print(traceback.format_exc(), file=sys.stderr)
            if not begun:
                words = "This is a fault of the program, not of your files; the terminal says more."
                await _answer(send, 500, words)


def is_own_machine(scope: Scope) -> bool:
    client = scope.get("client")
    try:
        return client is not None and ip_address(client[0]).is_loopback
    except ValueError:
        return False


def session_of(headers: dict[bytes, bytes]) -> str:
    try:
        found = SimpleCookie(headers.get(b"cookie", b"").decode("latin-1")).get(COOKIE)
    except CookieError:
        return ""
    return found.value if found else ""


def _headers(scope: Scope) -> dict[bytes, bytes]:
    """The headers by name. One that is given twice, or a length that is no number, is none that we accept."""
    found: dict[bytes, bytes] = {}
    for name, value in scope["headers"]:
        if name in found and name in (b"host", b"origin", b"content-length"):
            found[name] = b"0" if name == b"content-length" else b"twice"
        else:
            found[name] = value
    if not found.get(b"content-length", b"0").isdigit():
        found[b"content-length"] = str(MOST_BODY + 1).encode()
    return found


async def _answer(send: Send, status: int, words: str) -> None:
    body = words.encode()
    headers = [
        (b"content-type", b"text/plain; charset=utf-8"),
        (b"content-length", str(len(body)).encode()),
        (b"cache-control", b"no-store"),
        *([(b"retry-after", b"1")] if status == 503 else []),
        *HEADERS,
    ]
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": body})
