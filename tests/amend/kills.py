"""Kills commands at random moments and looks at what is left. Run by the tests, in a process of its own.

    python -m tests.amend.kills FOLDER TRIALS SEED COMMAND WORD...

A trial lays a fresh copy of FOLDER, forks a child that runs the command, waits until the command begins to write (or
not that long), and ends it with SIGKILL after a random while. Only a kill that left something unfinished behind fell
between the first and the last write; only those are counted. Prints one JSON object.
"""

import contextlib
import io
import json
import os
import random
import shutil
import signal
import sys
import time
from collections.abc import Iterator
from dataclasses import asdict, dataclass, field
from pathlib import Path

from generator.cli.main import main
from generator.diagnostics.diagnostic import has_errors
from generator.history.ledger import read_ledger
from generator.pipeline import check_folder
from generator.source.write import recover

State = dict[str, bytes]
LEAST_WAIT = 0.0002


@dataclass(slots=True)
class Tally:
    """`within` are kills between the first and the last write; `faults` what must not be."""

    trials: int = 0
    within: int = 0
    old: int = 0
    new: int = 0
    window: float = 0.0
    faults: list[str] = field(default_factory=list)


def state_of(root: Path) -> State:
    return {
        each.relative_to(root).as_posix(): each.read_bytes()
        for each in sorted(root.rglob("*"))
        if each.is_file() and not each.name.startswith(".")
    }


def is_unfinished(root: Path) -> bool:
    return any(True for _ in unfinished(root))


def unfinished(root: Path) -> Iterator[Path]:
    """What a command leaves that did not come to its end."""
    for folder in (root, root / "recipes"):
        with contextlib.suppress(FileNotFoundError):
            yield from (folder / name for name in os.listdir(folder) if name.startswith("."))


def run_child(root: Path, words: list[str]) -> int:
    """Forks a child that runs the command; its number."""
    child = os.fork()
    if child:
        return child
    code = 1
    try:
        with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
            code = main([*words, "--content", str(root)])
    finally:
        os._exit(code)


def measure(root: Path, words: list[str]) -> tuple[State, float, int]:
    """The new state, and how long the writing took, of a run that nobody kills."""
    child = run_child(root, words)
    begun = ended = 0.0
    while True:
        if is_unfinished(root):
            begun, ended = begun or time.monotonic(), time.monotonic()
        done, status = os.waitpid(child, os.WNOHANG)
        if done:
            return state_of(root), max(ended - begun, LEAST_WAIT), os.waitstatus_to_exitcode(status)


def kill_once(root: Path, words: list[str], wait: float) -> None:
    """Ends the command `wait` seconds after it began to write."""
    child = run_child(root, words)
    while not is_unfinished(root):
        if os.waitpid(child, os.WNOHANG)[0]:
            return
    until = time.monotonic() + wait
    while time.monotonic() < until:
        pass
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)


def look(root: Path, old: State, new: State, tally: Tally) -> None:
    """Holds what is left against the two states that may be."""
    if not is_unfinished(root):
        return
    tally.within += 1
    if has_errors(recover(root)):
        tally.faults.append("the folder could not be recovered")
    left = state_of(root)
    if is_unfinished(root):
        tally.faults.append(f"left behind: {[each.name for each in unfinished(root)]}")
    if left not in (old, new):
        tally.faults.append(f"a mixture: {sorted(path for path in left if left[path] != old.get(path))}")
        return
    tally.old += left == old
    tally.new += left == new
    if read_ledger(left.get("ledger.jsonl", b"").decode())[1]:
        tally.faults.append("the ledger cannot be read")
    if has_errors(check_folder(root).diagnostics):
        tally.faults.append("the folder has errors")


def warm_up(folder: Path, words: list[str]) -> None:
    """Runs the command here, so that every child has all of the program and starts writing at once."""
    warm = folder.with_name("warm")
    shutil.copytree(folder, warm)
    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
        main([*words, "--content", str(warm)])


def tally_of(folder: Path, trials: int, seed: int, words: list[str]) -> Tally:
    chance, work = random.Random(seed), folder.with_name("trial")
    tally, old = Tally(), state_of(folder)
    warm_up(folder, words)
    shutil.copytree(folder, work)
    new, tally.window, code = measure(work, words)
    if code or new == old:
        tally.faults.append(f"the command itself ends with {code}")
        return tally
    while tally.within < trials and tally.trials < 4 * trials and not tally.faults:
        shutil.rmtree(work)
        shutil.copytree(folder, work)
        tally.trials += 1
        kill_once(work, words, chance.uniform(0, tally.window))
        look(work, old, new, tally)
    return tally


if __name__ == "__main__":
    print(json.dumps(asdict(tally_of(Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3]), sys.argv[4:]))))
