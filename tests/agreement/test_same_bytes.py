"""The same content on the same day gives the same bytes, wherever, whenever and by however many hands it is made.

The short one, of the folder that `tinleaf start` lays, is in tests/cli/test_whole.py.
"""

import os
import shutil
from datetime import date
from pathlib import Path

import pytest

from generator.pipeline import make_folder

KITCHEN = Path(__file__).resolve().parent.parent / "golden" / "kitchens" / "dial" / "content"
DAY = date(2026, 7, 1)


def made(folder: Path, *, modified: float, jobs: int) -> dict[str, bytes]:
    """Every file of a build by its path, from a copy of the kitchen whose files were written at `modified`."""
    content = folder / "content"
    shutil.copytree(KITCHEN, content)
    for path in sorted(content.rglob("*")):
        os.utime(path, (modified, modified))
    result = make_folder(content, output=folder / "output", day=DAY, jobs=jobs)
    assert result.report is not None
    return {
        path.relative_to(folder / "output").as_posix(): path.read_bytes()
        for path in sorted((folder / "output").rglob("*"))
        if path.is_file()
    }


@pytest.mark.long
def test_two_builds_are_the_same_to_the_byte(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    one = made(tmp_path / "here", modified=1_000_000_000, jobs=1)
    monkeypatch.setenv("TZ", "Pacific/Auckland")
    monkeypatch.setenv("LC_ALL", "C")
    monkeypatch.chdir(tmp_path)
    other = made(tmp_path / "a folder of another name" / "deeper", modified=1_700_000_000, jobs=2)
    kinds = {Path(path).suffix for path in one}
    assert kinds >= {".html", ".json", ".xml", ".txt", ".pdf", ".png"}
    assert sorted(one) == sorted(other)
    assert [path for path in one if one[path] != other[path]] == []
