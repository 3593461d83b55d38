"""Kills commands at random moments and looks at what is left. Run by the tests, in a process of its own.

    python -m tests.amend.kills FOLDER TRIALS SEED COMMAND WORD...

A trial lays a fresh copy of FOLDER, forks a child that runs the command, waits until the command begins to write (or
not that long), and ends it with SIGKILL after a random while. Only a kill that left something unfinished behind fell
between the first and the last write; only those are counted. Prints one JSON object.
"""

import contextlib
import json
import os
import shutil
import sys
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path

from generator.cli.main import main
from generator.diagnostics.diagnostic import has_errors
from generator.history.ledger import read_ledger
from generator.pipeline import check_folder
from generator.source.write import recover
from tests.faults.trials import Tally, Tree, at_random, child, quietly, tree, window_of


def state_of(root: Path) -> Tree:
    return tree(root, hidden=False)


def is_unfinished(root: Path) -> bool:
    return any(True for _ in unfinished(root))


def unfinished(root: Path) -> Iterator[Path]:
    """What a command leaves that did not come to its end."""
    for folder in (root, root / "recipes"):
        with contextlib.suppress(FileNotFoundError):
            yield from (folder / name for name in os.listdir(folder) if name.startswith("."))


def look(root: Path, old: Tree, new: Tree, tally: Tally) -> None:
    """Holds what is left against the two states that may be."""
    if has_errors(recover(root)):
        tally.faults.append("the folder could not be recovered")
    left = state_of(root)
    if is_unfinished(root):
        tally.faults.append(f"left behind: {[each.name for each in unfinished(root)]}")
    tally.look(left, old, new)
    if left not in (old, new):
        tally.faults.append(f"a mixture: {sorted(path for path in left if left[path] != old.get(path))}")
        return
    if read_ledger(left.get("ledger.jsonl", b"").decode())[1]:
        tally.faults.append("the ledger cannot be read")
    if has_errors(check_folder(root).diagnostics):
        tally.faults.append("the folder has errors")


def tally_of(folder: Path, trials: int, seed: int, words: list[str]) -> Tally:
    work, warm = folder.with_name("trial"), folder.with_name("warm")
    tally, old = Tally(), state_of(folder)
    shutil.copytree(folder, warm)
    quietly(lambda: main([*words, "--content", str(warm)]))

    def start() -> int:
        shutil.rmtree(work, ignore_errors=True)
        shutil.copytree(folder, work)
        return child(lambda: main([*words, "--content", str(work)]))

    def writes() -> bool:
        return is_unfinished(work)

    tally.window, code = window_of(start, writes)
    new = state_of(work)
    if code or new == old:
        tally.faults.append(f"the command itself ends with {code}")
        return tally
    return at_random(
        tally, trials, seed, start=start, writes=writes, look=lambda _: look(work, old, new, tally)
    )


if __name__ == "__main__":
    print(json.dumps(asdict(tally_of(Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3]), sys.argv[4:]))))
