"""Lets `tinleaf make` fail at moments of our choosing and looks at what is left. Run in a process of its own.

    python -m tests.faults.forked HOW CONTENT OLD NEW WORK WANTED

HOW is `die` (the process ends at its Nth change of the disk), `full` (that change fails: no space left), `locked`
(it fails: a read-only disk) or `kill` (SIGKILL after a random while, counted only between the first and the last
write). OLD is the output before a change in CONTENT, NEW the one after it. Every trial lays OLD into WORK, forks a
child that makes it new, and then makes again undisturbed. `die`, `full` and `locked` go through every change of the
disk there is, or WANTED of them spread over all; `kill` goes on until WANTED were counted. With `changing`,
files of the content are saved again while they are read. Prints one JSON object.
"""

import contextlib
import errno
import io
import json
import os
import random
import shutil
import signal
import sys
import time
from collections.abc import Callable
from dataclasses import asdict, dataclass, field
from pathlib import Path
from typing import Any

from generator.cli.main import main

Tree = dict[str, bytes]
STAGING, DAY, SEED = ".tinleaf-staging", "2026-11-25", 20261125
_CHANGES = {"os.rename", "os.remove", "os.mkdir", "os.rmdir", "os.link", "os.symlink", "os.truncate"}


@dataclass(slots=True)
class Tally:
    """`trials` were begun, `counted` fell where they should; `faults` is what must not be."""

    trials: int = 0
    counted: int = 0
    old: int = 0
    new: int = 0
    mixed: int = 0
    steps: int = 0
    faults: list[str] = field(default_factory=list)


def tree(root: Path) -> Tree:
    return {
        each.relative_to(root).as_posix(): each.read_bytes()
        for each in sorted(root.rglob("*"))
        if each.is_file() and not each.is_symlink()
    }


def site_of(output: Path) -> Tree:
    """What is published; the bookkeeping apart."""
    return {path: data for path, data in tree(output).items() if not path.startswith(".tinleaf")}


def is_change(event: str, arguments: tuple[Any, ...]) -> bool:
    if event == "open":
        flags = arguments[2] if isinstance(arguments[2], int) else 0
        return bool(flags & (os.O_WRONLY | os.O_RDWR | os.O_CREAT)) and isinstance(arguments[0], (str, bytes))
    return event in _CHANGES


def at_change(number: int, do: Callable[[], None]) -> None:
    """From now on, `do` happens just before the `number`th change that this process makes to the disk."""
    seen = 0

    def hook(event: str, arguments: tuple[Any, ...]) -> None:
        nonlocal seen
        if is_change(event, arguments):
            seen += 1
            if seen == number:
                do()

    sys.addaudithook(hook)


def fails(code: int) -> Callable[[], None]:
    def do() -> None:
        raise OSError(code, os.strerror(code))

    return do


def dies() -> None:
    os._exit(137)


HOW = {"die": dies, "full": fails(errno.ENOSPC), "locked": fails(errno.EROFS)}


def child(content: Path, output: Path, before: Callable[[], None], said: Path) -> int:
    """Forks a process that makes `output` new; its number. What it says goes to the file `said`."""
    number = os.fork()
    if number:
        return number
    code = 1
    try:
        words = io.StringIO()
        with contextlib.redirect_stdout(words), contextlib.redirect_stderr(words):
            before()
            code = main(["make", str(content), "--output", str(output), "--day", DAY, "--jobs", "1"])
        with contextlib.suppress(OSError):
            said.write_text(words.getvalue(), "utf-8")
    finally:
        os._exit(code)


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """`old` lies in a folder and is copied; `new` is what must come out in the end."""

    content: Path
    old: Path
    new: Tree
    work: Path
    sources: Tree

    @property
    def output(self) -> Path:
        return self.work / "output"

    @property
    def said(self) -> Path:
        return self.work / "said.txt"

    def lay(self) -> None:
        shutil.rmtree(self.output, ignore_errors=True)
        shutil.copytree(self.old, self.output)
        self.said.unlink(missing_ok=True)

    def made(self, before: Callable[[], None] = lambda: None) -> int:
        _, status = os.waitpid(child(self.content, self.output, before, self.said), 0)
        return os.waitstatus_to_exitcode(status)


def look(place: Place, tally: Tally, what: str) -> None:
    """Every file is whole, old or new; the next make gives exactly the new site; the sources are as they were."""
    old, new, left = site_of(place.old), place.new, site_of(place.output)
    strange = [path for path, data in left.items() if data not in (old.get(path), new.get(path))]
    lost = [path for path in old if path in new and path not in left]
    if strange or lost:
        tally.faults.append(f"{what}: neither old nor new {strange}, lost {lost}")
    tally.old += left == old
    tally.new += left == new
    tally.mixed += left not in (old, new)
    if code := place.made():
        tally.faults.append(f"{what}: the next make ends with {code}: {place.said.read_text('utf-8')[-400:]}")
    elif site_of(place.output) != new or (place.output / STAGING).exists():
        tally.faults.append(f"{what}: the next make does not repair it")
    if tree(place.content) != place.sources:
        tally.faults.append(f"{what}: the sources are not what they were")


def changes_of(place: Place) -> int:
    """How many changes of the disk an undisturbed make asks for."""
    count = place.work / "count.txt"

    def counting() -> None:
        seen = 0

        def hook(event: str, arguments: tuple[Any, ...]) -> None:
            nonlocal seen
            if is_change(event, arguments) and arguments[0] != str(count):
                seen += 1
                os.pwrite(handle, b"%08d" % seen, 0)

        handle = os.open(count, os.O_WRONLY | os.O_CREAT)
        sys.addaudithook(hook)

    place.lay()
    if code := place.made(counting):
        raise SystemExit(f"the make itself ends with {code}: {place.said.read_text('utf-8')}")
    return int(count.read_text())


def through_every_change(place: Place, how: str, wanted: int) -> Tally:
    tally = Tally(steps=changes_of(place))
    numbers = range(1, tally.steps + 1)
    chosen = (
        numbers if wanted >= len(numbers) else [numbers[i * len(numbers) // wanted] for i in range(wanted)]
    )
    for number in chosen:
        place.lay()
        tally.trials += 1
        code = place.made(lambda number=number: at_change(number, HOW[how]))  # type: ignore[misc]
        said = place.said.read_text("utf-8") if place.said.exists() else ""
        tally.counted += code != 0 or how != "die"
        if "Traceback" in said or code not in (0, 1, 2, 137):
            tally.faults.append(f"change {number}: it ends with {code}: {said[-400:]}")
        look(place, tally, f"{how} at change {number} of {tally.steps}")
    return tally


def killed(place: Place, wait: float) -> bool:
    """Whether SIGKILL fell after the first write to the output and before the last."""
    number = child(place.content, place.output, lambda: None, place.said)
    while not (place.output / STAGING).exists():
        if os.waitpid(number, os.WNOHANG)[0]:
            return False
    until = time.monotonic() + wait
    while time.monotonic() < until:
        pass
    os.kill(number, signal.SIGKILL)
    os.waitpid(number, 0)
    return (place.output / STAGING).exists()


def window_of(place: Place) -> float:
    """How long an undisturbed make writes, in seconds."""
    place.lay()
    number = child(place.content, place.output, lambda: None, place.said)
    begun = ended = 0.0
    while not os.waitpid(number, os.WNOHANG)[0]:
        if (place.output / STAGING).exists():
            begun, ended = begun or time.monotonic(), time.monotonic()
    return max(ended - begun, 0.001)


def at_random(place: Place, wanted: int) -> Tally:
    chance, tally, window = random.Random(SEED), Tally(), window_of(place)
    while tally.counted < wanted and tally.trials < 4 * wanted and not tally.faults:
        place.lay()
        tally.trials += 1
        if killed(place, chance.uniform(0, window)):
            tally.counted += 1
            look(place, tally, f"kill {tally.trials}")
    return tally


def rewrites(path: Path) -> Callable[[], None]:
    """From now on, the file is longer each time that it has been opened for reading, five times at most."""

    def before() -> None:
        times = 0

        def hook(event: str, arguments: tuple[Any, ...]) -> None:
            nonlocal times
            if event == "open" and str(arguments[0]) == str(path) and not is_change(event, arguments):
                times += 1
                if times <= 5:
                    with path.open("a", encoding="utf-8") as file:
                        file.write(f"\nSaved once more while it was read, {times}.\n")

        sys.addaudithook(hook)

    return before


def changed_while_read(place: Place) -> Tally:
    """Each file of the content in turn is saved again while a make reads it; the next make has it all."""
    tally = Tally()
    for path in sorted(each for each in place.content.rglob("*.md")):
        place.lay()
        tally.trials += 1
        was = path.read_bytes()
        code = place.made(rewrites(path))
        tally.counted += path.read_bytes() != was
        whole = place.work / "whole"
        shutil.rmtree(whole, ignore_errors=True)
        again = place.made()
        _, status = os.waitpid(child(place.content, whole, lambda: None, place.said), 0)
        if code or again or status or site_of(place.output) != site_of(whole):
            tally.faults.append(f"{path.name}: {code}, {again}, {status}, or the next make is behind")
        path.write_bytes(was)
    return tally


def tally_of(how: str, place: Place, wanted: int) -> Tally:
    place.work.mkdir()
    shutil.copytree(place.old, place.work / "warm")
    # Run here once, so that every child has all of the program and the cache all that it needs.
    with contextlib.redirect_stdout(io.StringIO()), contextlib.redirect_stderr(io.StringIO()):
        main(["make", str(place.content), "--output", str(place.work / "warm"), "--day", DAY, "--jobs", "1"])
    if how == "changing":
        return changed_while_read(place)
    return at_random(place, wanted) if how == "kill" else through_every_change(place, how, wanted)


if __name__ == "__main__":
    _content, _old, _new, _work = (Path(each) for each in sys.argv[2:6])
    _place = Place(content=_content, old=_old, new=site_of(_new), work=_work, sources=tree(_content))
    print(json.dumps(asdict(tally_of(sys.argv[1], _place, int(sys.argv[6])))))
