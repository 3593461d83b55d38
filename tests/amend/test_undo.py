"""What was taken back, what was changed in an editor, and what two people do at once."""

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.amend.answer import Refused
from generator.amend.by_hand import plan_as_it_stands
from generator.amend.merge import merged
from generator.amend.numbering import BY_HAND
from generator.amend.plan import Plan
from generator.amend.undo import plan_undo
from generator.history.ledger import Revision
from generator.source.write import commit
from tests.amend.folder import DAY, RECIPE, lay, plan, planned, standing, write

PATH = "recipes/plain-loaf.md"


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return lay(tmp_path / "content", plain_loaf=RECIPE)


def correct(root: Path, what: str, new: str) -> None:
    write(root, planned(root, "plain-loaf", what, new))


def undo(root: Path) -> Plan | Refused:
    return plan_undo(standing(root), "plain-loaf", on=DAY)


def undone(root: Path) -> None:
    made = undo(root)
    assert isinstance(made, Plan), made
    write(root, made)


def edit(root: Path, change: Callable[[str], str]) -> None:
    path = root / PATH
    path.write_bytes(change(path.read_bytes().decode()).encode())


def history(root: Path) -> list[tuple[int, str, str]]:
    events = standing(root).result.setting.ledger.events
    return [(each.number, each.cause, each.what) for each in events if isinstance(each, Revision)]


def test_corrections_are_taken_back_one_after_another_and_no_number_is_used_twice(root: Path) -> None:
    correct(root, "water", "310 g")
    correct(root, "water", "320 g")
    undone(root)
    undone(root)
    assert (root / PATH).read_text("utf-8") == RECIPE
    assert history(root) == [
        (1, "first", ""),
        (2, "correction", "water 300 g -> 310 g"),
        (3, "correction", "water 310 g -> 320 g"),
        (4, "undo", "water 320 g -> 310 g"),
        (5, "undo", "water 310 g -> 300 g"),
    ]
    again = undo(root)
    assert isinstance(again, Refused)


def test_an_edit_elsewhere_stays_when_a_correction_is_taken_back(root: Path) -> None:
    correct(root, "water", "310 g")
    edit(root, lambda text: text.replace("title: Plain loaf", "title: My loaf") + "\n## Notes\nGood.\n")
    undone(root)
    expected = RECIPE.replace("title: Plain loaf", "title: My loaf") + "\n## Notes\nGood.\n"
    assert (root / PATH).read_text("utf-8") == expected


def test_an_edit_of_the_same_line_is_never_undone(root: Path) -> None:
    correct(root, "water", "310 g")
    edit(root, lambda text: text.replace("- 310 g (1 1/3 cups) water", "- 315 g water"))
    refused = undo(root)
    assert isinstance(refused, Refused)
    assert refused.message == f"the lines of {PATH} that “water 300 g -> 310 g” changed were edited since"


def test_an_edit_before_a_correction_is_numbered_and_stays_when_it_is_taken_back(root: Path) -> None:
    correct(root, "water", "310 g")
    edit(root, lambda text: text.replace("- 10 g table salt", "- 11 g table salt"))
    edited = (root / PATH).read_bytes()
    made = planned(root, "plain-loaf", "water", "320 g")
    assert made.remarks == (
        "plain-loaf had been changed in an editor: that is kept as revision 3 of its own",
    )
    write(root, made)
    assert history(root)[2:] == [(3, "hand", BY_HAND), (4, "correction", "water 310 g -> 320 g")]
    undone(root)
    assert (root / PATH).read_bytes() == edited


def test_a_correction_that_only_the_file_tells_of_is_taken_back_by_its_words(tmp_path: Path) -> None:
    entry = "corrections:\n  - on: 2026-09-20\n    change: water 280 g -> 300 g\n    why: Dry.\n"
    root = lay(tmp_path / "content", plain_loaf=RECIPE.replace("---\n## M", f"{entry}---\n## M"))
    made = undo(root)
    assert isinstance(made, Plan)
    assert "look the line over" in made.remarks[-1]
    undone(root)
    assert (root / PATH).read_text("utf-8") == RECIPE.replace("300 g (1 1/4 cups)", "280 g (1 cup + 3 tbsp)")
    assert [each[:2] for each in history(root)] == [(2, "first"), (3, "undo")]


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ("water 280 g -> 290 g", "water is 300 g now, and not the 290 g of the correction"),
        ("a little more water", "plain-loaf: “a little more water” does not say what stood there before"),
    ],
)
def test_words_that_do_not_fit_are_not_guessed_at(tmp_path: Path, change: str, said: str) -> None:
    entry = f"corrections:\n  - {{on: 2026-09-20, change: {change}, why: Dry.}}\n"
    root = lay(tmp_path / "content", plain_loaf=RECIPE.replace("---\n## M", f"{entry}---\n## M"))
    refused = undo(root)
    assert isinstance(refused, Refused)
    assert refused.message == said


def test_nothing_to_take_back(root: Path) -> None:
    refused = undo(root)
    assert isinstance(refused, Refused)
    assert refused.message == "plain-loaf: there is no correction"


def test_a_change_by_hand_is_owned_up_to_with_an_entry_for_readers(root: Path) -> None:
    correct(root, "water", "310 g")
    edit(root, lambda text: text.replace("- 10 g table salt", "- 11 g table salt"))
    change = "table salt 10 g -> 11 g"
    made = plan_as_it_stands(standing(root), "plain-loaf", on=DAY, why="Bland.", change=change)
    assert isinstance(made, Plan)
    write(root, made)
    assert history(root)[-1] == (3, "hand", change)
    text = (root / PATH).read_text("utf-8")
    assert f"  - on: 2026-11-25\n    change: {change}\n    why: Bland.\n---\n" in text
    refused = plan_as_it_stands(standing(root), "plain-loaf", on=DAY, why="Again.")
    assert isinstance(refused, Refused)
    assert refused.message == "plain-loaf is as revision 3 has it: there is nothing to record"


def test_a_change_by_hand_is_told_in_a_bakers_words(root: Path) -> None:
    correct(root, "water", "310 g")
    edit(root, lambda text: text.replace("- 10 g table salt", "- 11 g table salt"))
    made = plan_as_it_stands(standing(root), "plain-loaf", on=DAY, why="Bland.")
    assert isinstance(made, Plan)
    assert made.what == "table salt 10 g → 11 g"
    assert [each.path for each in made.changes] == ["ledger.jsonl"]


def test_a_file_that_changes_between_reading_and_writing_is_not_written_over(root: Path) -> None:
    made = plan(root, "plain-loaf", "water", "310 g")
    assert isinstance(made, Plan)
    edit(root, lambda text: text + "\n## Notes\n")
    found = commit(root, made.changes)
    assert [each.code for each in found] == ["W001"]
    assert (root / PATH).read_text("utf-8") == RECIPE + "\n## Notes\n"
    assert not (root / "ledger.jsonl").exists()


def test_two_corrections_at_once_both_land(root: Path) -> None:
    """Each as a command of its own; the one that comes second starts again from what the first left."""
    program = "from generator.cli.main import run; run()"
    options = ["--why", "Better.", "--day", DAY.isoformat(), "--content", str(root)]
    both = [
        subprocess.Popen(
            [sys.executable, "-c", program, "correct", "plain-loaf", what, new, *options],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )
        for what, new in (("water", "310 g"), ("table salt", "11 g"))
    ]
    told = [each.communicate(timeout=240) for each in both]
    assert [each.returncode for each in both] == [0, 0], told
    text = (root / PATH).read_text("utf-8")
    assert "- 310 g (1 1/3 cups) water\n" in text
    assert "- 11 g table salt\n" in text
    assert [each[:2] for each in history(root)] == [(1, "first"), (2, "correction"), (3, "correction")]


@pytest.mark.parametrize(
    ("base", "mine", "theirs", "expected"),
    [
        ("a\nb\nc\n", "a\nb\nc\n", "a\nB\nc\n", "a\nB\nc\n"),
        ("a\nb\nc\n", "x\na\nb\nc\ny\n", "a\nB\nc\n", "x\na\nB\nc\ny\n"),
        ("a\nb\nc\n", "a\nx\nc\n", "a\nB\nc\n", None),
        ("a\nb\nc\n", "a\nb\nc\nd\n", "a\nc\n", "a\nc\nd\n"),
        ("a\r\nb\r\n", "a\r\nb\r\nc", "a\r\n", "a\r\nc"),
    ],
)
def test_one_change_is_taken_over_into_an_edited_text(
    base: str, mine: str, theirs: str, expected: str | None
) -> None:
    assert merged(base, mine, theirs) == expected
