"""`tinleaf due`, `posted` and `show --revision`, as they are typed: well, in a hurry, and wrong."""

import io
import json
from pathlib import Path

import pytest

from generator.cli.main import main
from generator.history.ledger import LEDGER
from tests.records.folder import lay, swap

Said = tuple[int, str, str]


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return lay(tmp_path / "content")


def run(capsys: pytest.CaptureFixture[str], root: Path, *words: str) -> Said:
    try:
        code = main([*words, "--content", str(root), "--day", "2026-11-25"])
    except SystemExit as ended:
        code = int(ended.code or 0)
    out, err = capsys.readouterr()
    return code, out, err


def test_posted_and_due_tell_one_story(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code, out, _ = run(capsys, root, "posted", "loaf", "Pinned", "Comment")
    assert (code, out) == (0, "pinned comment of loaf carries revision 2, 2026-11-25\n")
    assert run(capsys, root, "due")[:2] == (
        0,
        "2026-11-25: no copy is stale\n\n"
        "Never marked (tinleaf posted RECIPE PLACE, once it is there):\n"
        "  candied-peel: page\n  loaf: page\n  loaf: description\n",
    )
    swap(root, "400 F", "375 F")
    code, out, _ = run(capsys, root, "due")
    assert code == 1
    assert out.startswith(
        "2026-11-25: 1 copy is stale\n\n"
        "AMOUNTS  loaf: pinned comment (revision 2 since 2026-11-25, changed without a number)\n"
        "  oven 400 °F → 375 °F\n"
        "  - put the new text there: tinleaf describe loaf --comment\n"
        "  - tinleaf posted loaf pinned comment\n"
    )
    code, out, _ = run(capsys, root, "due", "--format", "json")
    (due,) = json.loads(out)["due"]
    assert code == 1
    assert (due["place"], due["harm"], due["why"]) == ("pinned comment", "amounts", ["oven 400 °F → 375 °F"])


def test_the_text_is_taken_from_a_file_or_from_standard_input(
    root: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    _, text, _ = run(capsys, root, "describe", "loaf")
    file = tmp_path / "there.txt"
    file.write_text(text.replace("430 g", "400 g"), encoding="utf-8")
    code, out, err = run(capsys, root, "posted", "loaf", "description", "--text", str(file))
    assert (code, out) == (1, "")
    assert "there 400 g, now 430 g" in err
    assert not (root / LEDGER).exists()
    monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(text.encode()), encoding="utf-8"))
    assert run(capsys, root, "posted", "loaf", "description", "--text", "-")[0] == 0


MISTAKES = [
    (("posted", "laof", "page"), 1, "there is no recipe recipes/laof.md. Did you mean “loaf”?"),
    (("posted", "loaf", "desciption"), 1, "Did you mean “description”?"),
    (("posted", "loaf", "page", "--on", "2026-02-30"), 2, "“2026-02-30” is not a day of the calendar"),
    (("posted", "loaf", "page", "--on", "yesterday"), 2, "“yesterday” is not a date such as 2026-09-12"),
    (("posted", "loaf", "page", "--gone"), 2, "--gone needs --why TEXT"),
    (("posted", "loaf", "page", "--why", "x"), 2, "it goes with --gone"),
    (("posted", "loaf", "page", "--gone", "--why", "x", "--text", "y"), 2, "cannot go together with --text"),
    (("posted", "loaf", "tags", "--to", "a\x07b"), 2, "argument --to: write a few plain words"),
    (("posted", "loaf", "tags", "--to", "\udcff"), 2, "argument --to: write a few plain words"),
    (("posted", "loaf", "page", "--text", "nowhere.txt"), 2, "nowhere.txt cannot be read"),
    (("posted", "loaf", "page", "--revision", "0"), 2, "“0” is not a whole number from 1 on"),
    (("posted", "loaf"), 2, "the following arguments are required: PLACE"),
    (("show", "loaf", "--revision", "7"), 1, "there is no revision 7 of loaf: there are 1 and 2"),
    (("show", "loaf", "--revision", "one"), 2, "“one” is not a whole number from 1 on"),
    (
        ("show", "loaf", "--changes", "--revision", "7"),
        1,
        "there is no revision 7 of loaf: there are 1 and 2",
    ),
    (("show", "loaf", "--changes", "--times", "2"), 2, "--changes compares the recipe in its own size"),
]


@pytest.mark.parametrize(("words", "code", "told"), MISTAKES)
def test_a_mistake_is_told_and_nothing_is_written(
    root: Path, capsys: pytest.CaptureFixture[str], words: tuple[str, ...], code: int, told: str
) -> None:
    ended, out, err = run(capsys, root, *words)
    assert (ended, out) == (code, "")
    assert told in err
    assert not (root / LEDGER).exists()


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (b"\xff\xfe", "is not UTF-8"),
        (b" \n", "the text is empty"),
        (b"a\n" * 5000, "more lines than any copy"),
    ],
)
def test_a_file_that_is_no_text_is_refused(
    root: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], data: bytes, told: str
) -> None:
    file = tmp_path / "there.txt"
    file.write_bytes(data)
    code, _, err = run(capsys, root, "posted", "loaf", "newsletter", "--text", str(file))
    assert code in (1, 2)
    assert told in err


def test_a_ledger_with_nonsense_is_told_and_kept_to_the_byte(
    root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = b'\xef\xbb\xbf{"event": "gone", "recipe": 7}\r\n{"event": "revi'
    (root / LEDGER).write_bytes(before)
    code, _, err = run(capsys, root, "posted", "loaf", "page")
    assert code == 0
    assert f"{LEDGER}:1:29: error[H003] “recipe” is not a text" in err
    assert (root / LEDGER).read_bytes().startswith(before + b"\n{")


def test_a_recipe_with_errors_is_not_marked(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run(capsys, root, "posted", "loaf", "page")
    swap(root, "430 g (3", "430 gg (3")
    assert run(capsys, root, "posted", "loaf", "page")[0] == 1
    code, _, err = run(capsys, root, "due")
    assert code == 1
    assert "the copies of loaf cannot be compared: the recipe has errors, or is gone" in err


def test_an_earlier_revision_is_shown_with_what_it_is_rebuilt_from(
    root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    code, out, err = run(capsys, root, "show", "loaf", "--revision", "1")
    assert code == 0
    assert "revision 1, September 12, 2026" in out
    assert "400 g" in out
    assert "taking the newest correction back from the file" in err
    _, out, _ = run(capsys, root, "show", "loaf", "--revision", "1", "--format", "json")
    assert json.loads(out)["revision"] == 1
    assert json.loads(out)["totals"]["flour"] == 400


def test_changes_are_told_in_a_bakers_words(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, root, "show", "loaf", "--changes")[1] == (
        "revision 1 → 2, 2026-09-20\n"
        "  why: Too wet.\n"
        "  bread flour 400 g → 430 g\n"
        "  so: hydration 75 % → 69.8 %; dough 757 g → 787 g\n"
    )
    assert run(capsys, root, "show", "candied-peel", "--changes")[1] == (
        "candied-peel: one revision, and nothing has changed\n"
    )
