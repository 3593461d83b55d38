"""The text a person reads: whole messages, underline included."""

import re

import pytest

from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.plain import as_objects
from generator.diagnostics.span import Span, whole_file
from generator.diagnostics.text import WIDEST, as_text, summary, window


def _found(
    line: int, column: int, end: int, *, code: str = "S010", end_line: int | None = None
) -> Diagnostic:
    span = Span(path="recipes/a.md", line=line, column=column, end_line=end_line or line, end_column=end)
    return Diagnostic(code=code, message="given twice", span=span, hint="Keep one.")


def _columns(character: str) -> int:
    return 2 if "\u4e00" <= character <= "\u9fff" else 1


def _text(source: str, *found: Diagnostic, prefix: str = "", colour: bool = False) -> str:
    return as_text(found, {"recipes/a.md": source}, prefix=prefix, colour=colour)


def test_place_message_excerpt_underline_hint() -> None:
    assert _text("---\ntitle: A\n", _found(2, 1, 6), prefix="content/") == (
        "content/recipes/a.md:2:1: error[S010] given twice\n"
        "     2 | title: A\n"
        "       | ^^^^^\n"
        "  hint: Keep one.\n"
    )


def test_underline_stays_under_its_characters_past_tabs_and_wide_and_combining_ones() -> None:
    assert _text("\tパン e\u0301 x", _found(1, 8, 9)).splitlines()[1:3] == [
        "     1 |     パン e\u0301 x",
        "       |            ^",
    ]


def test_wide_characters_have_wide_underlines() -> None:
    assert window("パン", 0, 2) == ("パン", "^^^^")


def test_carriage_returns_and_a_byte_order_mark_are_not_shown() -> None:
    assert _text("\ufefftitle: A\r\nlead: B\r\n", _found(1, 8, 9)).splitlines()[1:3] == [
        "     1 | title: A",
        "       |        ^",
    ]


def test_a_place_of_several_lines_is_underlined_in_each() -> None:
    assert _text("Wait {5\n  min} now", _found(1, 6, 7, end_line=2)).splitlines()[1:5] == [
        "     1 | Wait {5",
        "       |      ^^",
        "     2 |   min} now",
        "       |   ^^^^",
    ]


def test_a_place_of_many_lines_shows_three_and_an_ellipsis() -> None:
    lines = _text("a\nb\nc\nd\ne\n", _found(1, 1, 2, end_line=5)).splitlines()
    assert [line.strip() for line in lines[1:-1]] == ["1 | a", "| ^", "2 | b", "| ^", "3 | c", "| ^", "… |"]


@pytest.mark.parametrize("start", [0, 40, 98, 99, 100, 101, 350, 500, 580, 599])
def test_a_long_line_is_cut_around_the_place_and_the_underline_points_at_it(start: int) -> None:
    # Every character once: each seventh is wide, the others are syllables of one column.
    line = "".join(chr((0x1400 if index % 7 else 0x4E00) + index % 600) for index in range(600))
    shown, marks = window(line, start, start + 1)
    before = sum(_columns(each) for each in shown[: shown.index(line[start])])
    assert marks == " " * before + "^" * _columns(line[start])
    assert sum(map(_columns, shown)) <= WIDEST


def test_a_place_past_the_end_of_the_file_has_no_excerpt() -> None:
    assert _text("", _found(7, 1, 2)).splitlines() == [
        "recipes/a.md:7:1: error[S010] given twice",
        "  hint: Keep one.",
    ]


def test_nothing_in_a_file_can_change_the_terminal() -> None:
    text = _text("a\x1b[31m\u202eb", _found(1, 1, 2))
    assert "\x1b" not in text
    assert "\u202e" not in text


def test_colour_changes_no_letter() -> None:
    plain = _text("title: A", _found(1, 1, 6))
    painted = _text("title: A", _found(1, 1, 6), colour=True)
    assert painted != plain
    assert re.sub(r"\x1b\[[0-9;]*m", "", painted) == plain


def test_the_folder_itself_is_named_as_it_was_typed() -> None:
    missing = Diagnostic(code="S050", message="there is no such folder", span=whole_file("."))
    assert as_text((missing,), {}, prefix="content/") == "content:1:1: error[S050] there is no such folder\n"


def test_summary_counts_and_agrees_in_number() -> None:
    assert summary(()) == "nothing to correct"
    assert summary((_found(1, 1, 2),)) == "1 error in 1 file"
    warning = _found(2, 1, 2, code="S026")
    assert summary((_found(1, 1, 2), _found(3, 1, 2), warning)) == "2 errors, 1 warning in 1 file"


def test_objects_have_the_keys_of_the_interface() -> None:
    assert as_objects((_found(2, 1, 6),)) == [
        {
            "path": "recipes/a.md",
            "line": 2,
            "column": 1,
            "end_column": 6,
            "severity": "error",
            "code": "S010",
            "message": "given twice",
            "hint": "Keep one.",
        }
    ]
