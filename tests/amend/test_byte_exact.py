"""Whatever the file looks like: named stretches change, every other byte stays, and an undo gives all back."""

import re
import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from generator.amend.plan import Plan
from generator.amend.undo import plan_undo
from generator.diagnostics.diagnostic import has_errors
from generator.history.ledger import Revision, read_ledger
from tests.amend.folder import DAY, lay, planned, standing, write
from tests.amend.layouts import SECOND, Layout, layouts

PATH = "recipes/plain-loaf.md"
_SECOND = re.compile(r"\(([0-9½¼¾⅓⅔⅛⅜⅝⅞ /.+a-z-]+)\)")
_NEW_LINE = re.compile(r"\r\n|\n")


def is_one_insertion(before: str, after: str) -> bool:
    """Whether `after` is `before` with one stretch put in."""
    pairs = enumerate(zip(before, after, strict=False))
    common = next((n for n, (a, b) in pairs if a != b), min(len(before), len(after)))
    return len(after) >= len(before) and after.endswith(before[common:])


def second_in(layout: Layout, text: str) -> str:
    """What stands in the place of the second measure, if there is one."""
    beside = _SECOND.search(text, text.index(f"{layout.typed} ")) if SECOND in layout.template else None
    return beside[1] if beside else ""


FEW = settings(max_examples=15, deadline=None, suppress_health_check=list(HealthCheck))


@FEW
@given(layouts())
def test_only_the_amount_its_second_measure_and_the_entry_change(layout: Layout) -> None:
    correct_and_take_back(layout)


@pytest.mark.long
@settings(FEW, max_examples=600)
@given(layouts())
def test_the_same_for_many_more_layouts(layout: Layout) -> None:
    correct_and_take_back(layout)


def correct_and_take_back(layout: Layout) -> None:
    with tempfile.TemporaryDirectory() as folder:
        root = lay(Path(folder) / "content", plain_loaf=layout.data)
        made = planned(root, "plain-loaf", layout.item, layout.typed, why="Too dry: “twice”, #1.")
        write(root, made)
        data = (root / PATH).read_bytes()
        text = data.decode("utf-8-sig")
        assert data.startswith(b"\xef\xbb\xbf") == layout.encoded_mark
        expected = layout.text(layout.typed, second_in(layout, text))
        assert is_one_insertion(expected, text)
        assert text.count("Too dry: “twice”, #1.") == 1
        assert _foreign_ends(layout.data.decode("utf-8-sig")) >= _foreign_ends(text)
        now = standing(root)
        assert not has_errors(now.result.diagnostics)
        line = next(each for each in now.result.setting.book["plain-loaf"].lines if each.item == layout.item)
        assert line.written.text.startswith(layout.typed)
        back = plan_undo(now, "plain-loaf", on=DAY)
        assert isinstance(back, Plan), back
        write(root, back)
        assert (root / PATH).read_bytes() == layout.data
        ledger, wrong = read_ledger((root / "ledger.jsonl").read_text("utf-8"))
        assert wrong == ()
        causes = [each.cause for each in ledger.events if isinstance(each, Revision)]
        assert causes == ["first", "correction", "undo"]


def _foreign_ends(text: str) -> set[str]:
    """The kinds of line ends of a file."""
    return set(_NEW_LINE.findall(text))
