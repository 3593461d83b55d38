"""Whatever breaks a make: the site is the old one or the new one file by file, the next make repairs it all."""

import os
import random
import resource
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

COMMAND = [sys.executable, "-c", "from generator.cli.main import run; run()", "make"]
STAGING, DAY = ".tinleaf-staging", "2026-11-25"
Tree = dict[str, bytes]


def tree(root: Path) -> Tree:
    return {
        each.relative_to(root).as_posix(): each.read_bytes()
        for each in sorted(root.rglob("*"))
        if each.is_file() and not each.is_symlink()
    }


def start(content: Path, output: Path, before: Callable[[], None] | None = None) -> subprocess.Popen[bytes]:
    words = [*COMMAND, str(content), "--output", str(output), "--day", DAY, "--jobs", "1"]
    return subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, preexec_fn=before)


def make(content: Path, output: Path, before: Callable[[], None] | None = None) -> tuple[int, str]:
    process = start(content, output, before)
    said = process.communicate(timeout=300)[0].decode()
    return process.returncode, said


@pytest.fixture(scope="module")
def places(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path, Tree, Tree]:
    """A content folder with a change in it, the output before the change, and both outputs as they should be."""
    root = tmp_path_factory.mktemp("make")
    content, output = root / "content", root / "old"
    starter = Path(__file__).parents[2] / "generator" / "cli" / "starter"
    shutil.copytree(starter, content)
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


def killed_while_writing(content: Path, output: Path, wait: float) -> bool:
    """Whether the kill fell after the first write and before the last."""
    process = start(content, output)
    while process.poll() is None and not (output / STAGING).exists():
        time.sleep(0)
    until = time.monotonic() + wait
    while time.monotonic() < until:
        pass
    process.send_signal(signal.SIGKILL)
    process.communicate()
    return (output / STAGING).exists()


def kills(places: tuple[Path, Path, Tree, Tree], tmp_path: Path, wanted: int) -> int:
    chance, within, sources = random.Random(7), 0, tree(places[0])
    for _ in range(wanted * 10):
        output = fresh_copy(places, tmp_path)
        within += killed_while_writing(places[0], output, chance.uniform(0, 0.05))
        held(output, places, sources)
        if within == wanted:
            break
    return within


@pytest.mark.long
def test_five_hundred_kills_between_the_first_and_the_last_write(
    places: tuple[Path, Path, Tree, Tree], tmp_path: Path
) -> None:
    assert kills(places, tmp_path, 500) == 500


@pytest.mark.long
def test_eight_kills(places: tuple[Path, Path, Tree, Tree], tmp_path: Path) -> None:
    assert kills(places, tmp_path, 8) == 8


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
