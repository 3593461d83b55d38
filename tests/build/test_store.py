"""What the output folder holds after a make, and what a make never touches."""

import json
import os
import shutil
from pathlib import Path

import pytest

from generator.build import manifest, place, store, swap
from generator.build.store import WriteReport, write_output
from generator.render.output import Product


def product(path: str, content: str = "") -> Product:
    return Product(path=path, content=(content or path).encode())


def tree(root: Path) -> dict[str, str]:
    """Every file under `root` but the manifest, with its text."""
    files = (each for each in sorted(root.rglob("*")) if each.is_file() and each.name != manifest.NAME)
    return {each.relative_to(root).as_posix(): each.read_text() for each in files}


def test_first_make_writes_everything_and_leaves_no_staging_behind(tmp_path: Path) -> None:
    root = tmp_path / "deep" / "output"
    report = write_output(root, [product("site/b.html"), product("site/a/index.html"), product("desk/x.txt")])
    assert report == WriteReport(written=("desk/x.txt", "site/a/index.html", "site/b.html"))
    assert tree(root) == {name: name for name in report.written}
    assert sorted(each.name for each in root.iterdir()) == [manifest.NAME, "desk", "site"]


def test_unchanged_file_is_not_written_again(tmp_path: Path) -> None:
    write_output(tmp_path, [product("a"), product("b")])
    before = {each.name: each.stat().st_mtime_ns for each in tmp_path.iterdir()}
    report = write_output(tmp_path, [product("a"), product("b")])
    assert report == WriteReport(unchanged=("a", "b"))
    assert {each.name: each.stat().st_mtime_ns for each in tmp_path.iterdir()} == before


def test_changed_file_alone_is_written(tmp_path: Path) -> None:
    write_output(tmp_path, [product("a"), product("b")])
    report = write_output(tmp_path, [product("a"), product("b", "new")])
    assert report == WriteReport(written=("b",), unchanged=("a",))
    assert tree(tmp_path) == {"a": "a", "b": "new"}


def test_orphan_and_its_empty_folders_go(tmp_path: Path) -> None:
    write_output(tmp_path, [product("site/old/deep/index.html"), product("site/index.html")])
    report = write_output(tmp_path, [product("site/index.html")])
    assert report == WriteReport(unchanged=("site/index.html",), removed=("site/old/deep/index.html",))
    assert not (tmp_path / "site" / "old").exists()


def test_file_of_somebody_else_stays(tmp_path: Path) -> None:
    write_output(tmp_path, [product("site/old/index.html"), product("site/index.html")])
    (tmp_path / "site" / "old" / "notes.txt").write_text("mine")
    write_output(tmp_path, [product("site/index.html")])
    assert tree(tmp_path) == {"site/index.html": "site/index.html", "site/old/notes.txt": "mine"}


def test_orphan_that_was_edited_is_kept_and_named(tmp_path: Path) -> None:
    write_output(tmp_path, [product("a"), product("b")])
    (tmp_path / "b").write_text("edited by hand")
    assert write_output(tmp_path, [product("a")]) == WriteReport(unchanged=("a",), kept=("b",))
    assert (tmp_path / "b").read_text() == "edited by hand"


def test_file_of_somebody_else_is_not_overwritten(tmp_path: Path) -> None:
    write_output(tmp_path, [product("a")])
    (tmp_path / "b").write_text("mine")
    report = write_output(tmp_path, [product("a", "new"), product("b")])
    assert report.refused == (
        f"{tmp_path}/b stands where b belongs, and was not written by this command; move it away",
    )
    assert tree(tmp_path) == {"a": "a", "b": "mine"}


def test_file_may_become_a_folder_and_a_folder_a_file(tmp_path: Path) -> None:
    write_output(tmp_path, [product("a"), product("b/c"), product("b/d/e")])
    report = write_output(tmp_path, [product("a/x"), product("b")])
    assert report == WriteReport(written=("a/x", "b"), removed=("a", "b/c", "b/d/e"))
    assert tree(tmp_path) == {"a/x": "a/x", "b": "b"}


@pytest.mark.parametrize("strange", ["b/mine.txt", "b/empty/"])
def test_folder_with_something_of_somebody_else_does_not_become_a_file(tmp_path: Path, strange: str) -> None:
    write_output(tmp_path, [product("b/c")])
    if strange.endswith("/"):
        (tmp_path / strange).mkdir()
    else:
        (tmp_path / strange).write_text("mine")
    report = write_output(tmp_path, [product("b")])
    assert [reason.split(" stands ")[0] for reason in report.refused] == [str(tmp_path / strange)]
    assert (tmp_path / "b" / "c").exists()


def test_folder_that_already_holds_files_is_refused(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("mine")
    report = write_output(tmp_path, [product("a")])
    assert report == WriteReport(
        refused=(f"{tmp_path} holds files that this command did not write; choose an empty folder",)
    )
    assert tree(tmp_path) == {"letter.txt": "mine"}


def test_unreadable_manifest_is_refused(tmp_path: Path) -> None:
    write_output(tmp_path, [product("a")])
    (tmp_path / manifest.NAME).write_text("{")
    assert write_output(tmp_path, [product("b")]).refused == (
        f"{tmp_path}/{manifest.NAME} cannot be read, so it is not known which files may be replaced",
    )
    assert tree(tmp_path) == {"a": "a"}


def test_output_that_overlaps_the_content_is_refused(tmp_path: Path) -> None:
    content = tmp_path / "content"
    (content / "recipes").mkdir(parents=True)
    for root in (content, tmp_path, content / "recipes", content / "recipes" / "out"):
        report = write_output(root, [product("a")], content=content)
        assert report.refused[0].endswith("the output needs a folder of its own")
    assert place.why_unusable(tmp_path / "output", content=content) == ""


def test_link_as_output_folder_is_refused(tmp_path: Path) -> None:
    (tmp_path / "real").mkdir()
    (tmp_path / "output").symlink_to(tmp_path / "real")
    report = write_output(tmp_path / "output", [product("a")])
    assert report.refused == (f"{tmp_path}/output is a link to another place; name the folder itself",)
    assert tree(tmp_path / "real") == {}


def test_nothing_is_written_through_a_link_in_the_output(tmp_path: Path) -> None:
    root = tmp_path / "output"
    write_output(root, [product("index.html")])
    (tmp_path / "elsewhere").mkdir()
    (root / "site").symlink_to(tmp_path / "elsewhere")
    report = write_output(root, [product("index.html"), product("site/a")])
    assert report.refused == (
        f"{root}/site/a is reached through a link, and would be written outside the output folder",
    )
    assert tree(tmp_path / "elsewhere") == {}


def test_manifest_cannot_make_us_remove_a_file_outside(tmp_path: Path) -> None:
    root = tmp_path / "output"
    write_output(root, [product("a")])
    (tmp_path / "precious").write_text("precious")
    listed = json.loads((root / manifest.NAME).read_text())
    listed["files"]["../precious"] = manifest.manifest_of([product("precious")])["precious"]
    (root / manifest.NAME).write_text(json.dumps(listed))
    write_output(root, [product("a")])
    assert (tmp_path / "precious").read_text() == "precious"


@pytest.mark.parametrize(
    "path", ["../a", "/a", "a//b", "a/../b", "./a", "", "a\\b", ".tinleaf-manifest.json"]
)
def test_product_that_leaves_the_folder_is_our_bug(tmp_path: Path, path: str) -> None:
    with pytest.raises(ValueError, match="cannot be written"):
        write_output(tmp_path, [Product(path=path, content=b"")])
    assert tree(tmp_path) == {}


def test_two_products_with_one_path_are_our_bug(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match=r"one path: \['a'\]"):
        write_output(tmp_path, [product("a", "1"), product("a", "2")])


def test_same_products_give_the_same_bytes_in_any_order(tmp_path: Path) -> None:
    products = [product("b"), product("a"), product("c/d")]
    write_output(tmp_path / "one", products)
    write_output(tmp_path / "two", reversed(products))
    one, two = (
        {each.relative_to(root): each.read_bytes() for each in root.rglob("*") if each.is_file()}
        for root in (tmp_path / "one", tmp_path / "two")
    )
    assert one == two


OLD = [product("a", "old"), product("b", "old"), product("gone", "old")]
NEW = [product("a", "new"), product("b", "new"), product("more/c", "new")]


class CutOff(BaseException):
    """Stands for a power cut: nothing of ours may catch it and tidy up."""


@pytest.mark.parametrize("after", range(16))
def test_make_cut_off_at_any_step_leaves_whole_files_and_the_next_one_finishes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, after: int
) -> None:
    write_output(tmp_path, OLD)
    cut_after(after, monkeypatch)
    try:
        write_output(tmp_path, NEW)
    except CutOff:
        found = {name: text for name, text in tree(tmp_path).items() if not name.startswith(swap.STAGING)}
        assert set(found.values()) <= {"old", "new"}
        assert {"a", "b"} <= set(found)
    monkeypatch.undo()
    write_output(tmp_path, NEW)
    assert tree(tmp_path) == {"a": "new", "b": "new", "more/c": "new"}
    assert set(manifest.read_manifest(tmp_path / manifest.NAME) or ()) == {"a", "b", "more/c"}


def cut_after(steps: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """Lets the n-th change of a name on the disk be the last, and no tidying up after it."""
    left = steps

    def counted(real: object) -> object:
        def step(*arguments: object, **names: object) -> object:
            nonlocal left
            left -= 1
            if left < 0:
                raise CutOff
            return real(*arguments, **names)  # type: ignore[operator]

        return step

    monkeypatch.setattr(os, "replace", counted(os.replace))
    monkeypatch.setattr(os, "fsync", counted(os.fsync))
    monkeypatch.setattr(shutil, "rmtree", counted(shutil.rmtree))
    monkeypatch.setattr(Path, "unlink", counted(Path.unlink))


def test_cut_off_while_staging_changes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write_output(tmp_path, OLD)
    cut_after(2, monkeypatch)
    with pytest.raises(CutOff):
        write_output(tmp_path, NEW)
    visible = {name: text for name, text in tree(tmp_path).items() if not name.startswith(swap.STAGING)}
    assert visible == {"a": "old", "b": "old", "gone": "old"}


def test_full_disk_while_staging_changes_nothing_and_leaves_no_trace(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_output(tmp_path, OLD)

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space"):
        write_output(tmp_path, NEW)
    assert tree(tmp_path) == {"a": "old", "b": "old", "gone": "old"}


def test_first_make_cut_off_is_finished_by_the_next(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for steps in range(14):
        root = tmp_path / str(steps)
        cut_after(steps, monkeypatch)
        try:
            store.write_output(root, NEW)
        except CutOff:
            monkeypatch.undo()
            assert write_output(root, NEW).refused == ()
        monkeypatch.undo()
        assert tree(root) == {"a": "new", "b": "new", "more/c": "new"}
