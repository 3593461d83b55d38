"""The folder that `start` lays."""

import re
from datetime import UTC, datetime
from pathlib import Path

import pytest
from PIL import Image

from generator.cli.main import main
from generator.cli.start import STARTER_DAY

Capture = pytest.CaptureFixture[str]

FILES = [
    ".gitignore",
    "journal/a-first-loaf.md",
    "media/saturday-tin-loaf.jpg",
    "pantry.yaml",
    "recipes/saturday-tin-loaf.md",
    "site.yaml",
    "standing/about.md",
]


def tree(folder: Path) -> list[str]:
    return sorted(each.relative_to(folder).as_posix() for each in folder.rglob("*") if each.is_file())


def test_new_folder_is_laid_and_the_next_steps_are_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Capture
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["start", "bakes/mine"]) == 0
    assert tree(tmp_path / "bakes" / "mine") == FILES
    assert capsys.readouterr() == (
        "bakes/mine/ is laid. Now try:\n\n  tinleaf check bakes/mine\n  tinleaf make bakes/mine\n",
        "",
    )


def test_private_folder_is_kept_out_of_version_control(tmp_path: Path) -> None:
    main(["start", str(tmp_path / "mine")])
    assert "private/\n" in (tmp_path / "mine" / ".gitignore").read_text()


def test_files_carry_the_day_on_which_they_were_laid(tmp_path: Path) -> None:
    main(["start", str(tmp_path / "set"), "--day", "2026-09-12"])
    main(["start", str(tmp_path / "today")])
    today = datetime.now(UTC).date().isoformat()
    for folder, day in (("set", "2026-09-12"), ("today", today)):
        for name in ("recipes/saturday-tin-loaf.md", "journal/a-first-loaf.md", "standing/about.md"):
            text = (tmp_path / folder / name).read_text()
            assert re.findall(r"^published: (.*)$", text, re.MULTILINE) == [day]
            assert STARTER_DAY not in text


def test_empty_folder_is_fine_and_version_control_in_it_too(tmp_path: Path) -> None:
    (tmp_path / ".git").mkdir()
    assert main(["start", str(tmp_path)]) == 0
    assert tree(tmp_path) == FILES


def test_folder_that_holds_something_is_left_alone(tmp_path: Path, capsys: Capture) -> None:
    (tmp_path / "letter.txt").write_text("mine")
    assert main(["start", str(tmp_path)]) == 2
    assert tree(tmp_path) == ["letter.txt"]
    expected = f"tinleaf: {tmp_path} is not empty; nothing was written. Name a new folder\n"
    assert capsys.readouterr() == ("", expected)


def test_file_in_its_place_is_left_alone(tmp_path: Path, capsys: Capture) -> None:
    (tmp_path / "mine").write_text("mine")
    assert main(["start", str(tmp_path / "mine")]) == 2
    assert (tmp_path / "mine").read_text() == "mine"
    assert capsys.readouterr().err == f"tinleaf: {tmp_path}/mine is a file, not a folder\n"


def test_picture_is_a_whole_one(tmp_path: Path) -> None:
    main(["start", str(tmp_path / "mine")])
    with Image.open(tmp_path / "mine" / "media" / "saturday-tin-loaf.jpg") as picture:
        picture.load()
        assert picture.size == (1200, 900)
