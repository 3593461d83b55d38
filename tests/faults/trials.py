"""Lets a command run in a child that is forked, kills it while it writes, and keeps the tally of what was left."""

import contextlib
import io
import os
import random
import signal
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

Tree = dict[str, bytes]
LEAST_WAIT = 0.0002


@dataclass(slots=True)
class Tally:
    """`trials` were begun, `counted` fell where they should; `window` is how long a run writes that nobody kills;
    `faults` is what must not be."""

    trials: int = 0
    counted: int = 0
    old: int = 0
    new: int = 0
    mixed: int = 0
    steps: int = 0
    window: float = 0.0
    faults: list[str] = field(default_factory=list)

    def look(self, left: Tree, old: Tree, new: Tree) -> None:
        self.old += left == old
        self.new += left == new
        self.mixed += left not in (old, new)


def tree(root: Path, *, hidden: bool = True) -> Tree:
    """Every file of a folder, by its path; those whose names begin with a dot too where they are asked for."""
    return {
        each.relative_to(root).as_posix(): each.read_bytes()
        for each in sorted(root.rglob("*"))
        if each.is_file() and not each.is_symlink() and (hidden or not each.name.startswith("."))
    }


def quietly(run: Callable[[], int]) -> str:
    """What a command says that is run here: once, so that every child has all of the program."""
    words = io.StringIO()
    with contextlib.redirect_stdout(words), contextlib.redirect_stderr(words):
        run()
    return words.getvalue()


def child(run: Callable[[], int], said: Path | None = None) -> int:
    """Forks a process that does `run`; its number. What it says goes to the file `said`."""
    number = os.fork()
    if number:
        return number
    code = 1
    try:
        words = io.StringIO()
        with contextlib.redirect_stdout(words), contextlib.redirect_stderr(words):
            code = run()
        if said is not None:
            with contextlib.suppress(OSError):
                said.write_text(words.getvalue(), "utf-8")
    finally:
        os._exit(code)


def ended(number: int) -> int:
    """Waits for a child; its exit code."""
    return os.waitstatus_to_exitcode(os.waitpid(number, 0)[1])


def window_of(start: Callable[[], int], writes: Callable[[], bool]) -> tuple[float, int]:
    """How long a run writes that nobody kills, in seconds, and its exit code."""
    number, begun, until = start(), 0.0, 0.0
    while True:
        if writes():
            begun, until = begun or time.monotonic(), time.monotonic()
        done, status = os.waitpid(number, os.WNOHANG)
        if done:
            return max(until - begun, LEAST_WAIT), os.waitstatus_to_exitcode(status)


def killed(start: Callable[[], int], writes: Callable[[], bool], wait: float) -> bool:
    """Whether SIGKILL fell between the first write and the last: `wait` seconds after the first, and something that
    is unfinished was left."""
    number = start()
    while not writes():
        if os.waitpid(number, os.WNOHANG)[0]:
            return False
    until = time.monotonic() + wait
    while time.monotonic() < until:
        pass
    os.kill(number, signal.SIGKILL)
    os.waitpid(number, 0)
    return writes()


def at_random(
    tally: Tally,
    wanted: int,
    seed: int,
    *,
    start: Callable[[], int],
    writes: Callable[[], bool],
    look: Callable[[str], None],
) -> Tally:
    """Kills at random moments until `wanted` were counted or something is wrong; `start` lays its own ground, `look`
    holds what is left against what may be."""
    chance = random.Random(seed)
    while tally.counted < wanted and tally.trials < 4 * wanted and not tally.faults:
        tally.trials += 1
        if killed(start, writes, chance.uniform(0, tally.window)):
            tally.counted += 1
            look(f"kill {tally.trials}")
    return tally
