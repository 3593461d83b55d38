"""Lets `tinleaf make` fail at moments of our choosing and looks at what is left. Run in a process of its own.

    python -m tests.faults.forked HOW CONTENT OLD NEW WORK WANTED

HOW is `die` (the process ends at its Nth change of the disk), `full` (that change fails: no space left), `locked`
(it fails: a read-only disk) or `kill` (SIGKILL after a random while, counted only between the first and the last
write). OLD is the output before a change in CONTENT, NEW the one after it. Every trial lays OLD into WORK, forks a
child that makes it new, and then makes again undisturbed. `die`, `full` and `locked` go through every change of the
disk there is, or WANTED of them spread over all; `kill` goes on until WANTED were counted. With `changing`,
files of the content are saved again while they are read. Prints one JSON object.
"""

import errno
import json
import os
import shutil
import sys
from collections.abc import Callable
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from generator.cli.main import main
from tests.faults import trials
from tests.faults.trials import Tally, Tree, ended, quietly, tree, window_of

STAGING, DAY, SEED = ".tinleaf-staging", "2026-11-25", 20261125
_CHANGES = {"os.rename", "os.remove", "os.mkdir", "os.rmdir", "os.link", "os.symlink", "os.truncate"}


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


def make(content: Path, output: Path) -> int:
    return main(["make", str(content), "--output", str(output), "--day", DAY, "--jobs", "1"])


def child(content: Path, output: Path, before: Callable[[], None], said: Path) -> int:
    """Forks a process that makes `output` new; its number. What it says goes to the file `said`."""

    def run() -> int:
        before()
        return make(content, output)

    return trials.child(run, said)


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
        return ended(child(self.content, self.output, before, self.said))

    def start(self) -> int:
        """The number of a process that makes it new."""
        self.lay()
        return child(self.content, self.output, lambda: None, self.said)

    def writes(self) -> bool:
        return (self.output / STAGING).exists()


def look(place: Place, tally: Tally, what: str) -> None:
    """Every file is whole, old or new; the next make gives exactly the new site; the sources are as they were."""
    old, new, left = site_of(place.old), place.new, site_of(place.output)
    strange = [path for path, data in left.items() if data not in (old.get(path), new.get(path))]
    lost = [path for path in old if path in new and path not in left]
    if strange or lost:
        tally.faults.append(f"{what}: neither old nor new {strange}, lost {lost}")
    tally.look(left, old, new)
    if code := place.made():
        tally.faults.append(f"{what}: the next make ends with {code}: {place.said.read_text('utf-8')[-400:]}")
    elif site_of(place.output) != new or (place.output / STAGING).exists():
        tally.faults.append(f"{what}: the next make does not repair it")
    if tree(place.content) != place.sources:
        tally.faults.append(f"{what}: the sources are not what they were")


def changes_of(place: Place) -> int:
    """How many changes of the disk an undisturbed make asks for, once what is kept for all makes is there."""
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
    place.made()
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


def at_random(place: Place, wanted: int) -> Tally:
    tally = Tally(window=window_of(place.start, place.writes)[0])

    def looked(what: str) -> None:
        look(place, tally, what)

    return trials.at_random(tally, wanted, SEED, start=place.start, writes=place.writes, look=looked)


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
        clean = ended(child(place.content, whole, lambda: None, place.said))
        if code or again or clean or site_of(place.output) != site_of(whole):
            tally.faults.append(f"{path.name}: {code}, {again}, {clean}, or the next make is behind")
        path.write_bytes(was)
    return tally


def tally_of(how: str, place: Place, wanted: int) -> Tally:
    place.work.mkdir()
    shutil.copytree(place.old, place.work / "warm")
    # Run here once, so that every child has all of the program and the cache all that it needs.
    quietly(lambda: make(place.content, place.work / "warm"))
    if how == "changing":
        return changed_while_read(place)
    return at_random(place, wanted) if how == "kill" else through_every_change(place, how, wanted)


if __name__ == "__main__":
    _content, _old, _new, _work = (Path(each) for each in sys.argv[2:6])
    _place = Place(content=_content, old=_old, new=site_of(_new), work=_work, sources=tree(_content))
    print(json.dumps(asdict(tally_of(sys.argv[1], _place, int(sys.argv[6])))))
