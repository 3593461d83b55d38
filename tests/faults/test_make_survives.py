"""Whatever breaks a make: the site is the old one or the new one file by file, the next make repairs it all."""

import json
import os
import random
import resource
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest

from tests.faults.forked import DAY
from tests.faults.trials import Tree, tree

COMMAND = [sys.executable, "-c", "from generator.cli.main import run; run()", "make"]
ROOT = Path(__file__).parents[2]


def lay(files: Tree, folder: Path) -> None:
    for path, data in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(data)


def settled(content: Path) -> dict[str, str]:
    """With a cache beside the content folder, so that paper is printed once for all trials."""
    cache = str(content.with_name("cache"))
    return {**os.environ, "XDG_CACHE_HOME": cache, "TINLEAF_CACHE_BYTES": "100000000"}


def start(content: Path, output: Path, before: Callable[[], None] | None = None) -> subprocess.Popen[bytes]:
    words = [*COMMAND, str(content), "--output", str(output), "--day", DAY, "--jobs", "1"]
    return subprocess.Popen(
        words, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, preexec_fn=before, env=settled(content)
    )


def make(content: Path, output: Path, before: Callable[[], None] | None = None) -> tuple[int, str]:
    process = start(content, output, before)
    said = process.communicate(timeout=300)[0].decode()
    return process.returncode, said


@pytest.fixture(scope="module")
def places(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path, Tree, Tree]:
    """A content folder with a change in it, the output before the change, and both outputs as they should be."""
    return laid(tmp_path_factory.mktemp("make"))


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path, Tree, Tree]:
    """The same of a folder without a recipe, so that no paper is printed."""
    return laid(tmp_path_factory.mktemp("pages"), "recipes", "journal", "media")


def laid(root: Path, *without: str) -> tuple[Path, Path, Tree, Tree]:
    content, output = root / "content", root / "old"
    starter = ROOT / "generator" / "cli" / "starter"
    shutil.copytree(starter, content, ignore=shutil.ignore_patterns(*without))
    code, said = make(content, output)
    assert code == 0, said
    article = content / "standing" / "about.md"
    article.write_text(article.read_text("utf-8") + "\nA line that was added.\n", "utf-8")
    fresh = root / "fresh"
    code, said = make(content, fresh)
    assert code == 0, said
    old, new = tree(output), tree(fresh)
    assert old != new
    return content, output, old, new


def held(output: Path, places: tuple[Path, Path, Tree, Tree], sources: Tree) -> None:
    """Every file is whole, old or new; the sources are as they were; the next make gives exactly the new site."""
    content, _, old, new = places
    left = {path: data for path, data in tree(output).items() if not path.startswith(".tinleaf")}
    strange = [path for path, data in left.items() if data not in (old.get(path), new.get(path))]
    assert not strange
    assert not [path for path in old if path in new and path not in left and not path.startswith(".tinleaf")]
    code, said = make(content, output)
    assert code == 0, said
    assert tree(output) == new
    assert tree(content) == sources


def fresh_copy(places: tuple[Path, Path, Tree, Tree], tmp_path: Path) -> Path:
    output = tmp_path / "output"
    shutil.rmtree(output, ignore_errors=True)
    shutil.copytree(places[1], output)
    return output


def failing(places: tuple[Path, Path, Tree, Tree], tmp_path: Path, how: str, wanted: int) -> dict[str, Any]:
    """The tally of makes that are let fail, in a process that forks them (see `tests/faults/forked.py`)."""
    content, old, _, new = places
    lay(new, tmp_path / "new")
    words = [how, str(content), str(old), str(tmp_path / "new"), str(tmp_path / "work"), str(wanted)]
    command = [sys.executable, "-m", "tests.faults.forked", *words]
    done = subprocess.run(
        command, cwd=ROOT, capture_output=True, text=True, timeout=3000, env=settled(content)
    )
    assert done.returncode == 0, done.stderr[-2000:]
    found: dict[str, Any] = json.loads(done.stdout)
    print(f"{how}: {found}")
    assert found["faults"] == []
    return found


@pytest.mark.parametrize("how", ["die", pytest.param("full", marks=pytest.mark.long)])
def test_a_make_that_fails_at_some_of_its_changes_of_the_disk(
    pages: tuple[Path, Path, Tree, Tree], tmp_path: Path, how: str
) -> None:
    found = failing(pages, tmp_path, how, 3)
    assert found["trials"] == found["counted"] == 3


@pytest.mark.long
@pytest.mark.parametrize("how", ["die", "full", "locked"])
def test_a_make_that_fails_at_each_of_its_changes_of_the_disk(
    places: tuple[Path, Path, Tree, Tree], tmp_path: Path, how: str
) -> None:
    found = failing(places, tmp_path, how, 10_000)
    assert found["trials"] == found["steps"] == found["counted"] > 10
    # Some fell before anything was replaced, some after; where each file is put in its place, it is half and half.
    assert found["old"]
    assert found["new"]


def test_three_kills_between_the_first_and_the_last_write(
    pages: tuple[Path, Path, Tree, Tree], tmp_path: Path
) -> None:
    assert failing(pages, tmp_path, "kill", 3)["counted"] == 3


@pytest.mark.long
def test_five_hundred_kills_between_the_first_and_the_last_write(
    places: tuple[Path, Path, Tree, Tree], tmp_path: Path
) -> None:
    found = failing(places, tmp_path, "kill", 500)
    assert found["counted"] == 500
    assert found["old"]
    assert found["new"]


@pytest.mark.long
@pytest.mark.parametrize("limit", [0, 100, 4_096, 20_000])
def test_a_file_that_the_disk_will_not_hold(
    places: tuple[Path, Path, Tree, Tree], tmp_path: Path, limit: int
) -> None:
    output, sources = fresh_copy(places, tmp_path), tree(places[0])

    def limited() -> None:
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))

    code, said = make(places[0], output, limited)
    assert "Traceback" not in said
    assert code in (0, 1, 2), said
    held(output, places, sources)


@contextmanager
def small_disk(folder: Path, kilobytes: int) -> Iterator[None]:
    folder.mkdir()
    words = ["mount", "-t", "tmpfs", "-o", f"size={kilobytes}k", "tmpfs", str(folder)]
    if shutil.which("mount") is None or subprocess.run(words, capture_output=True).returncode:
        pytest.skip("a small disk can only be mounted by the administrator")
    try:
        yield
    finally:
        subprocess.run(["umount", str(folder)], check=True)


@pytest.mark.long
@pytest.mark.parametrize("spare", [0, 4, 8, 12, 16, 24, 32, 48, 64])
def test_a_full_disk(places: tuple[Path, Path, Tree, Tree], tmp_path: Path, spare: int) -> None:
    sources, disk = tree(places[0]), tmp_path / "disk"
    with small_disk(disk, 65_536):
        output = disk / "output"
        shutil.copytree(places[1], output)
        free = os.statvfs(disk).f_bavail * os.statvfs(disk).f_frsize
        (disk / "ballast").write_bytes(bytes(max(free - spare * 1024, 0)))
        code, said = make(places[0], output)
        assert "Traceback" not in said
        assert code in (0, 1, 2), said
        (disk / "ballast").unlink()
        held(output, places, sources)


@pytest.mark.long
def test_two_makes_at_once(places: tuple[Path, Path, Tree, Tree], tmp_path: Path) -> None:
    output, sources = fresh_copy(places, tmp_path), tree(places[0])
    both = [start(places[0], output) for _ in range(2)]
    said = [each.communicate(timeout=300)[0] for each in both]
    assert [each.returncode for each in both] == [0, 0], said
    assert tree(output) == places[3]
    held(output, places, sources)


@pytest.mark.long
@pytest.mark.parametrize("year", [1971, 2090])
def test_a_clock_that_is_wrong(places: tuple[Path, Path, Tree, Tree], tmp_path: Path, year: int) -> None:
    """The times of the files say nothing that is relied on: the content alone counts."""
    output, sources, moment = fresh_copy(places, tmp_path), tree(places[0]), (year - 1970) * 31_557_600
    for each in output.rglob("*"):
        os.utime(each, (moment, moment))
    held(output, places, sources)


@pytest.mark.long
def test_bookkeeping_with_flipped_bits(places: tuple[Path, Path, Tree, Tree], tmp_path: Path) -> None:
    chance, sources = random.Random(3), tree(places[0])
    for _ in range(5):
        output = fresh_copy(places, tmp_path)
        for each in (
            path for path in output.iterdir() if path.is_file() and path.name.startswith(".tinleaf")
        ):
            data = bytearray(each.read_bytes())
            data[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
            each.write_bytes(data)
        code, said = make(places[0], output)
        assert "Traceback" not in said
        assert code in (0, 1, 2), said
        assert tree(places[0]) == sources


@pytest.mark.long
def test_files_that_change_while_they_are_read(places: tuple[Path, Path, Tree, Tree], tmp_path: Path) -> None:
    found = failing(places, tmp_path, "changing", 0)
    assert found["trials"] == found["counted"] == 3


@pytest.mark.long
@pytest.mark.parametrize("damage", ["flipped", "cut", "empty", "foreign"])
def test_a_cache_that_is_damaged_or_of_another_version(
    places: tuple[Path, Path, Tree, Tree], tmp_path: Path, damage: str
) -> None:
    """Whatever stands in the cache, the output is the same to the byte; nothing unreadable stops a make."""
    chance, sources, cache = random.Random(11), tree(places[0]), places[0].with_name("cache")
    held(fresh_copy(places, tmp_path), places, sources)
    files = [each for each in sorted(cache.rglob("*")) if each.is_file()]
    assert len(files) > 10
    for each in files:
        data = bytearray(each.read_bytes())
        if damage == "flipped" and data:
            data[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
        each.write_bytes(
            {"flipped": bytes(data), "cut": bytes(data[: len(data) // 2]), "empty": b""}.get(
                damage, b"\x80\x05of another version"
            )
        )
    output = fresh_copy(places, tmp_path)
    code, said = make(places[0], output)
    assert code == 0, said
    assert "Traceback" not in said
    assert tree(output) == places[3]
    assert tree(places[0]) == sources
