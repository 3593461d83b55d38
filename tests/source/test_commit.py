"""A change of several files is written whole or not at all, and nobody's edit is written over."""

import os
import threading
from pathlib import Path

import pytest

from generator.diagnostics.diagnostic import Diagnostics, has_errors
from generator.source import pending
from generator.source.lock import locked
from generator.source.write import Change, commit, recover

PAIR = (
    Change(path="recipes/a.md", before=b"old\r\n", after=b"new\r\n"),
    Change(path="ledger.jsonl", before=None, after=b"{}\n"),
)


@pytest.fixture
def root(tmp_path: Path) -> Path:
    (tmp_path / "recipes").mkdir()
    (tmp_path / "recipes/a.md").write_bytes(b"old\r\n")
    return tmp_path


def state(root: Path) -> dict[str, bytes]:
    return {str(each.relative_to(root)): each.read_bytes() for each in root.rglob("*") if each.is_file()}


def messages(found: Diagnostics) -> list[str]:
    return [f"{each.span.path}: {each.code} {each.message}" for each in found]


NEW = {"recipes/a.md": b"new\r\n", "ledger.jsonl": b"{}\n"}
OLD = {"recipes/a.md": b"old\r\n"}


def test_all_files_are_written_and_nothing_else_stays_behind(root: Path) -> None:
    (root / "recipes/a.md").chmod(0o640)
    assert commit(root, PAIR) == ()
    assert state(root) == NEW
    assert (root / "recipes/a.md").stat().st_mode & 0o777 == 0o640


def test_a_new_folder_is_made(root: Path) -> None:
    assert commit(root, [Change(path="bakes/b.yaml", before=None, after=b"x")]) == ()
    assert (root / "bakes/b.yaml").read_bytes() == b"x"


def test_a_file_that_changed_meanwhile_stays_and_nothing_is_written(root: Path) -> None:
    (root / "recipes/a.md").write_bytes(b"edited")
    assert messages(commit(root, PAIR)) == ["recipes/a.md: W001 recipes/a.md changed meanwhile"]
    assert state(root) == {"recipes/a.md": b"edited"}


def test_a_file_that_went_or_came_meanwhile_is_told(root: Path) -> None:
    (root / "recipes/a.md").unlink()
    (root / "ledger.jsonl").write_bytes(b"")
    assert messages(commit(root, PAIR)) == [
        "recipes/a.md: W001 recipes/a.md is no longer there",
        "ledger.jsonl: W001 ledger.jsonl is there already",
    ]


def test_a_read_only_file_is_left_alone(root: Path) -> None:
    (root / "recipes/a.md").chmod(0o444)
    assert messages(commit(root, PAIR)) == ["recipes/a.md: W002 recipes/a.md is read-only"]
    assert state(root) == OLD


@pytest.mark.parametrize("failing", [1, 2, 3])
def test_a_full_disk_leaves_everything_as_it_was(
    root: Path, monkeypatch: pytest.MonkeyPatch, failing: int
) -> None:
    calls = iter(range(1, 100))

    def refuse(handle: int) -> None:
        if next(calls) == failing:
            raise OSError(28, "No space left on device")

    monkeypatch.setattr("generator.source.write.os.fsync", refuse)
    monkeypatch.setattr("generator.source.write._settle", lambda _: None)
    found = commit(root, PAIR)
    assert messages(found) == [".: W002 this cannot be written: No space left on device"]
    assert state(root) == OLD


def test_a_folder_that_cannot_be_written_to_is_told(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(path: Path, *_: object) -> None:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr("generator.source.write._lay", refuse)
    assert messages(commit(root, PAIR)) == [".: W002 this cannot be written: Permission denied"]


@pytest.mark.parametrize("path", ["../a.md", "/etc/a.md", "recipes/out.md", "a\0.md"])
def test_nothing_is_written_outside_the_folder(
    root: Path, path: str, tmp_path_factory: pytest.TempPathFactory
) -> None:
    outside = tmp_path_factory.mktemp("outside") / "b.md"
    outside.write_bytes(b"theirs")
    os.symlink(outside, root / "recipes/out.md")
    found = commit(root, [Change(path=path, before=b"theirs", after=b"ours")])
    assert [each.code for each in found] == ["W004"]
    assert outside.read_bytes() == b"theirs"


def test_a_link_inside_the_folder_stays_a_link(root: Path) -> None:
    os.symlink("a.md", root / "recipes/b.md")
    assert commit(root, [Change(path="recipes/b.md", before=b"old\r\n", after=b"new")]) == ()
    assert (root / "recipes/b.md").is_symlink()
    assert (root / "recipes/a.md").read_bytes() == b"new"


def test_two_changes_of_one_file_are_our_own_mistake(root: Path) -> None:
    with pytest.raises(ValueError, match="two changes"):
        commit(root, [PAIR[0], Change(path="recipes/a.md", before=b"old\r\n", after=b"other")])


class _Cut(BaseException):
    """Stands for a program that ends at once: nothing of ours runs after it."""


def cut_off_at(root: Path, monkeypatch: pytest.MonkeyPatch, moment: int) -> bool:
    """Runs `commit` and ends it before its disk operation number `moment`; whether it came so far."""
    calls = iter(range(10_000))

    def counted(real: object) -> object:
        def step(*args: object, **named: object) -> object:
            if next(calls) == moment:
                raise _Cut
            return real(*args, **named)  # type: ignore[operator]

        return step

    with monkeypatch.context() as patch:
        patch.setattr(os, "replace", counted(os.replace))
        patch.setattr(os, "fsync", counted(os.fsync))
        patch.setattr(os, "chmod", counted(os.chmod))
        patch.setattr(Path, "unlink", counted(Path.unlink))
        patch.setattr(Path, "open", counted(Path.open))
        try:
            commit(root, PAIR)
        except _Cut:
            return True
    return False


def test_cut_off_before_any_step_the_old_or_the_new_state_comes_back_whole(
    root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen, moment = set(), 0
    while cut_off_at(root, monkeypatch, moment):
        found = recover(root)
        assert not has_errors(found)
        assert state(root) in (OLD, NEW)
        seen.add(state(root) == NEW)
        assert recover(root) == ()
        (root / "ledger.jsonl").unlink(missing_ok=True)
        (root / "recipes/a.md").write_bytes(b"old\r\n")
        moment += 1
    assert state(root) == NEW
    assert seen == {True, False}
    assert moment > 15


def leave_pending(root: Path) -> None:
    (root / pending.NAME).write_bytes(pending.as_bytes(PAIR))


def test_the_next_commit_finishes_first(root: Path) -> None:
    leave_pending(root)
    found = commit(root, [Change(path="recipes/a.md", before=b"new\r\n", after=b"newer")])
    assert messages(found) == [
        "recipes/a.md: W008 a command that had been cut off is finished now: recipes/a.md, ledger.jsonl"
    ]
    assert state(root) == {"recipes/a.md": b"newer", "ledger.jsonl": b"{}\n"}


def test_an_edit_before_anything_was_in_place_drops_the_change(root: Path) -> None:
    leave_pending(root)
    (root / "recipes/a.md").write_bytes(b"edited")
    assert messages(recover(root)) == [
        "recipes/a.md: W007 recipes/a.md was edited after a command that was changing it had been cut off"
    ]
    assert state(root) == {"recipes/a.md": b"edited"}


def test_an_edit_after_a_part_was_in_place_is_kept_and_the_rest_follows(root: Path) -> None:
    third = Change(path="recipes/c.md", before=None, after=b"c")
    (root / pending.NAME).write_bytes(pending.as_bytes((third, *PAIR)))
    (root / "recipes/c.md").write_bytes(b"c")
    (root / "recipes/a.md").write_bytes(b"edited")
    assert [each.code for each in recover(root)] == ["W007"]
    assert state(root) == {"recipes/a.md": b"edited", "ledger.jsonl": b"{}\n", "recipes/c.md": b"c"}


@pytest.mark.parametrize(
    "text",
    [
        b"",
        b"[]",
        b"{",
        b"\xff",
        b'{"files": [{"path": 3}]}',
        b'{"files": [{"path": "../x", "before": "", "after": ""}]}',
    ],
)
def test_a_damaged_pending_file_is_named_and_stops_every_write(root: Path, text: bytes) -> None:
    (root / pending.NAME).write_bytes(text)
    before = state(root)
    assert [each.code for each in recover(root)] == ["W006"]
    assert [each.code for each in commit(root, PAIR)] == ["W006"]
    assert state(root) == before


def test_a_folder_that_another_command_holds_is_told(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("generator.source.lock.PATIENCE", 0.05)
    with locked(root) as held:
        assert held
        assert [each.code for each in commit(root, PAIR)] == ["W003"]
    assert state(root) == OLD


def test_of_many_writers_at_once_each_lands_or_is_told(root: Path) -> None:
    results: list[Diagnostics] = []

    def write(number: int) -> None:
        change = Change(path="recipes/a.md", before=b"old\r\n", after=f"{number}".encode())
        results.append(commit(root, [change]))

    threads = [threading.Thread(target=write, args=(number,)) for number in range(8)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert sorted([each.code for each in found] for found in results) == [[], *[["W001"]] * 7]
