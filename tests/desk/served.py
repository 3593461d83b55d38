"""`tinleaf view` as a process of its own on a free port, and a plain client for it."""

import json
import re
import signal
import subprocess
import sys
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from http.client import HTTPConnection
from pathlib import Path
from typing import Any

DAY = "2026-11-25"
PATIENCE = 300
ROOT = Path(__file__).resolve().parents[2]


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    status: int
    body: bytes
    headers: Mapping[str, str]

    @property
    def text(self) -> str:
        return self.body.decode()

    @property
    def values(self) -> Any:
        return json.loads(self.body)


@dataclass(frozen=True, slots=True, kw_only=True)
class Served:
    """The running desk: its folder, its port, and the token that its pages carry."""

    root: Path
    port: int
    token: str
    process: subprocess.Popen[str]

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    def ask(
        self, path: str, *, method: str = "GET", body: bytes | None = None, headers: Mapping[str, str] = {}
    ) -> Answer:
        return ask(self.port, path, method=method, body=body, headers=headers)

    def send(self, path: str, values: object, **headers: str) -> Answer:
        own = {"X-Desk-Token": self.token, "Content-Type": "application/json"}
        given = {key.replace("_", "-"): value for key, value in headers.items()}
        return self.ask(path, method="POST", body=json.dumps(values).encode(), headers={**own, **given})


def ask(
    port: int, path: str, *, method: str = "GET", body: bytes | None = None, headers: Mapping[str, str] = {}
) -> Answer:
    """One request, its path sent letter for letter.

    The patience is for a server that gets no turn on a machine with other work, not for a slow answer.
    """
    connection = HTTPConnection("127.0.0.1", port, timeout=PATIENCE)
    try:
        connection.putrequest(method, path, skip_host="Host" in headers, skip_accept_encoding=True)
        for name, value in headers.items():
            connection.putheader(name, value)
        if body is not None and "Content-Length" not in headers:
            connection.putheader("Content-Length", str(len(body)))
        connection.endheaders(body)
        answer = connection.getresponse()
        found = {name.casefold(): value for name, value in answer.getheaders()}
        return Answer(status=answer.status, body=answer.read(), headers=found)
    finally:
        connection.close()


@contextmanager
def viewing(
    root: Path, *, command: tuple[str, ...] = ("view",), stop: signal.Signals = signal.SIGTERM
) -> Iterator[Served]:
    """The desk of a folder. At the end it is asked to stop, and must do so with exit 0."""
    words = [*command, str(root), "--port", "0", "--day", DAY]
    process = subprocess.Popen(
        [sys.executable, "-m", "tests.desk.run_view", *words],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        cwd=ROOT,
    )
    try:
        assert process.stdout is not None
        first = process.stdout.readline()
        found = re.search(r"http://127\.0\.0\.1:(\d+)/", first)
        assert found, first
        port = int(found[1])
        page = ask(port, "/desk/").text
        token = re.search(r'name="desk-token" content="([^"]+)"', page)
        assert token, page
        yield Served(root=root, port=port, token=token[1], process=process)
        process.send_signal(stop)
        assert process.wait(timeout=PATIENCE) == 0
    finally:
        process.kill()
        process.communicate()
