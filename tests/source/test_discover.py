"""What stands in a folder is found or told of; nothing in it can make the reader wait or leave the folder."""

import os
from pathlib import Path

import pytest

from generator.source.read import read_folder

RECIPE = b"---\ntitle: A\n---\n"


def _codes(root: Path) -> list[tuple[str, str]]:
    _, found = read_folder(root)
    return [(each.code, each.span.path) for each in found]


@pytest.fixture
def root(tmp_path: Path) -> Path:
    root = tmp_path / "content"
    (root / "recipes").mkdir(parents=True)
    (root / "recipes" / "loaf.md").write_bytes(RECIPE)
    return root


def test_a_folder_is_read_whole_and_hidden_and_foreign_files_are_left_alone(root: Path) -> None:
    for path in ("media/deep/a.jpg", "media/.hidden", "recipes/.swap.md", "recipes/loaf.md~", "private/x.md"):
        (root / path).parent.mkdir(parents=True, exist_ok=True)
        (root / path).write_bytes(b"x")
    (root / "site.yaml").write_bytes(b"title: A\n")
    (root / "bakes").mkdir()
    (root / "bakes" / "2026-09-12-loaf.yaml").write_bytes(b"recipe: loaf\n")
    folder, found = read_folder(root)
    assert found == ()
    assert [each.name for each in folder.recipes] == ["loaf"]
    assert folder.media == ("media/deep/a.jpg",)
    assert [path for path, _ in folder.bakes] == ["bakes/2026-09-12-loaf.yaml"]
    assert sorted(folder.texts) == ["bakes/2026-09-12-loaf.yaml", "recipes/loaf.md", "site.yaml"]
    assert (folder.pantry, folder.unreadable) == (None, ())


def test_a_folder_that_is_missing_or_a_file_is_told(tmp_path: Path) -> None:
    assert _codes(tmp_path / "none") == [("S050", ".")]
    (tmp_path / "file").write_bytes(b"")
    assert _codes(tmp_path / "file") == [("S050", ".")]


def test_links_may_not_leave_the_folder_nor_lead_nowhere(root: Path, tmp_path: Path) -> None:
    (tmp_path / "secret.md").write_bytes(RECIPE)
    (root / "recipes" / "out.md").symlink_to(tmp_path / "secret.md")
    (root / "recipes" / "gone.md").symlink_to("nothing.md")
    (root / "recipes" / "round.md").symlink_to("round.md")
    (root / "recipes" / "also.md").symlink_to("loaf.md")
    (root / "standing").symlink_to(tmp_path)
    folder, found = read_folder(root)
    assert sorted((each.code, each.span.path) for each in found) == [
        ("S054", "recipes/gone.md"),
        ("S054", "recipes/out.md"),
        ("S054", "recipes/round.md"),
        ("S054", "standing"),
    ]
    assert [each.name for each in folder.recipes] == ["also", "loaf"]
    assert "recipes/out.md" in folder.unreadable


def test_a_linked_folder_that_holds_itself_ends(root: Path) -> None:
    (root / "media").mkdir()
    (root / "media" / "again").symlink_to(root / "media")
    folder, _ = read_folder(root)
    assert folder.media == ()


def test_a_pipe_is_not_waited_for(root: Path) -> None:
    os.mkfifo(root / "recipes" / "pipe.md")
    folder, _ = read_folder(root)
    assert [each.name for each in folder.recipes] == ["loaf"]


def test_a_name_that_is_no_text_is_told_and_can_be_printed(root: Path) -> None:
    with open(os.fsencode(root) + b"/recipes/\xff\x1b.md", "wb") as file:
        file.write(RECIPE)
    _, found = read_folder(root)
    assert [each.message for each in found] == ["“\\xff\\x1b” cannot be an address"]
    assert all(each.span.path.isprintable() for each in found)


def test_one_broken_file_hides_no_mistake_of_another(root: Path) -> None:
    (root / "recipes" / "broken.md").write_bytes(b"---\ntitle: [\n---\n## Method:\n")
    (root / "pantry.yaml").write_bytes(b"a: 1\na: 2\n")
    assert _codes(root) == [
        ("S010", "pantry.yaml"),
        ("S020", "recipes/broken.md"),
        ("S040", "recipes/broken.md"),
    ]
    folder, _ = read_folder(root)
    assert folder.unreadable == ("recipes/broken.md",)
