"""Which folder a command works on."""

from pathlib import Path

import pytest

from generator.cli.folder import content_folder, output_folder, prefix_of


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_folder_with_settings_is_the_content_folder(here: Path) -> None:
    (here / "site.yaml").touch()
    (here / "content").mkdir()
    assert content_folder(None, here=here) == Path()


def test_content_beside_is_next(here: Path) -> None:
    (here / "content").mkdir()
    assert content_folder(None, here=here) == Path("content")


def test_given_folder_wins(here: Path) -> None:
    (here / "site.yaml").touch()
    (here / "other").mkdir()
    assert content_folder(Path("other"), here=here) == Path("other")


def test_no_folder_is_told_in_a_sentence(here: Path) -> None:
    assert content_folder(Path("nowhere"), here=here) == "there is no folder nowhere"
    assert content_folder(None, here=here) == (
        "this folder has no site.yaml and no content/ in it; go to your content folder, name it with "
        "--content DIR, or lay a new one with `tinleaf start DIR`"
    )


def test_output_lies_beside_the_content_folder(here: Path) -> None:
    (here / "content").mkdir()
    assert output_folder(Path("content"), None) == Path("output")
    assert output_folder(here / "content", None) == here / "output"
    assert output_folder(Path("content"), Path("www")) == Path("www")


def test_output_lies_beside_the_content_folder_one_is_in(here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (here / "content").mkdir()
    monkeypatch.chdir(here / "content")
    assert output_folder(Path(), None) == Path("../output")


def test_paths_are_named_as_they_can_be_opened_from_here() -> None:
    assert prefix_of(Path()) == ""
    assert prefix_of(Path("my-baking")) == "my-baking/"
