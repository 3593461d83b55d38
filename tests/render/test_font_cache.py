"""Cut fonts are kept: found again, made anew where anything differs, and never in the way of a make."""

from pathlib import Path

import pytest

from generator.render.font_cache import kept_font
from generator.render.kept import cache_folder


@pytest.fixture
def font(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A font file, with an empty cache beside it."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    path = tmp_path / "face.ttf"
    path.write_bytes(b"outlines")
    return path


def _never() -> bytes:
    raise AssertionError("the font was cut again")


def test_what_was_made_once_is_found_again(font: Path) -> None:
    assert kept_font(font, "bold", lambda: b"cut") == b"cut"
    assert kept_font(font, "bold", _never) == b"cut"


def test_another_recipe_and_another_font_are_made_anew(font: Path) -> None:
    kept_font(font, "bold", lambda: b"cut")
    assert kept_font(font, "regular", lambda: b"other") == b"other"
    font.write_bytes(b"new outlines")
    assert kept_font(font, "bold", lambda: b"new") == b"new"


def test_other_tools_make_it_anew(font: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    kept_font(font, "bold", lambda: b"cut")
    monkeypatch.setattr("generator.render.font_cache.version", lambda name: "99")
    assert kept_font(font, "bold", lambda: b"new") == b"new"


@pytest.mark.parametrize("damage", [b"", b"short", b"x" * 32 + b"cut"])
def test_a_damaged_file_is_made_anew_and_mended(font: Path, damage: bytes) -> None:
    kept_font(font, "bold", lambda: b"cut")
    folder = cache_folder("fonts")
    assert folder is not None
    [kept] = folder.iterdir()
    kept.write_bytes(damage)
    assert kept_font(font, "bold", lambda: b"cut") == b"cut"
    assert kept_font(font, "bold", _never) == b"cut"


def test_a_cache_that_cannot_be_written_is_in_nobodys_way(
    font: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_bytes(b"")
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "file"))
    assert kept_font(font, "bold", lambda: b"cut") == b"cut"
    assert kept_font(font, "bold", lambda: b"cut again") == b"cut again"


def test_a_failed_write_leaves_nothing_behind(font: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(source: str, target: Path) -> None:
        raise OSError("no space left")

    monkeypatch.setattr("generator.render.kept.os.replace", full)
    assert kept_font(font, "bold", lambda: b"cut") == b"cut"
    folder = cache_folder("fonts")
    assert folder is not None
    assert list(folder.iterdir()) == []


def test_a_relative_folder_does_not_count(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", "here")
    monkeypatch.setenv("HOME", str(tmp_path))
    assert cache_folder("fonts") == tmp_path / ".cache" / "tinleaf" / "fonts"
