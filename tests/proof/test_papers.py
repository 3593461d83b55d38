"""What is printed, drawn and pasted says what the recipe says; what is of an older recipe is found out.

A sheet of an older build is made of a changed content folder and held against the sample as it is.
"""

import struct
import zlib
from functools import cache

import pytest

from generator.pipeline import CheckResult
from generator.proof.jpeg_reader import read_jpeg
from generator.proof.png_reader import read_png
from generator.render.description.render import render_description
from tests.proof.building import (
    BRAID,
    Change,
    edited,
    papers,
    proved,
    sample,
    told,
    understood,
)

RECIPE = f"recipes/{BRAID}.md"
CARD = f"site/recipes/{BRAID}/card-a6.pdf"
TEXT = f"desk/{BRAID}/description.txt"
OVERLAY = f"desk/{BRAID}/overlay.png"


def test_untouched_papers_are_silent() -> None:
    assert told(proved(papers())) == ""


def test_everything_of_the_desk_is_there_to_be_read() -> None:
    assert {path.rpartition("/")[2] for path in papers()} == {
        *("description.txt", "short.txt", "comment.txt", "chapters.vtt"),
        *("tags.txt", "tags.pdf", "bench-sheet.pdf", "formula.pdf", "overlay.png"),
        *("card-a6.pdf", "share.jpg", "tall.jpg", "chapter-1.png", "chapter-2.png", "chapter-3.png"),
    }


OATS = Change(path=RECIPE, old="50 g rolled oats", new="80 g rolled oats")
OVEN = Change(path=RECIPE, old="oven 350 F", new="oven 375 F")
RISE = Change(path=RECIPE, old="{rise 40 min}", new="{rise 55 min}")
NUTS = Change(path=RECIPE, old="rolled oats", new="pecans")
LARD = Change(path=RECIPE, old="salted butter", new="lard")
CAUTION = Change(path=RECIPE, old="Caution: Take", new="Caution: Lift")
AGAIN = Change(
    path=RECIPE,
    old="corrections:\n",
    new="corrections:\n  - on: 2026-09-25\n    change: dough/water 250 g -> 240 g\n    why: Softer.\n",
)
NEWER = {
    "an amount": (OATS, {"card-a6", "bench-sheet", "formula", "overlay", "description"}, ("50 g", "80 g")),
    "an oven": (OVEN, {"card-a6", "bench-sheet", "description"}, ("350 °F", "375 °F")),
    "a time": (RISE, {"card-a6", "bench-sheet", "description"}, ("40 min", "55 min")),
    "an allergen more": (NUTS, {"card-a6", "tags", "description"}, ("what it contains", "pecan")),
    "an allergen less": (LARD, {"card-a6", "tags", "description"}, ("what it contains",)),
    "a caution": (CAUTION, {"card-a6", "bench-sheet", "description"}, ("a caution", "Take", "Lift")),
    "a revision": (AGAIN, {"card-a6", "bench-sheet", "formula"}, ("the revision", "2", "3")),
    "a correction": (AGAIN, {"card-a6", "description"}, ("the correction of September 25, 2026",)),
}
"""What was changed since, the papers that must be told to be of an older build, and what is said of each."""


@cache
def newer(change: Change) -> CheckResult:
    return understood(change)


@pytest.mark.parametrize("name", NEWER)
def test_papers_of_an_older_build_are_found_out(name: str) -> None:
    change, stems, says = NEWER[name]
    found = proved(papers(), newer(change))
    telling = [each for each in found if all(words in each.message.lower() for words in map(str.lower, says))]
    assert {each.span.path.rpartition("/")[2].partition(".")[0] for each in telling} >= stems, told(found)


@pytest.mark.parametrize(
    ("old", "new", "code", "says"),
    [
        ("430 g (3⅓ cups) bread", "400 g (3⅓ cups) bread", "A002", ("bread flour", "“400 g”", "“430 g”")),
        ("bread flour (215 g, half)", "bread flour (225 g, half)", "A002", ("step 1", "“225 g”", "“215 g”")),
        ("CONTAINS: WHEAT, MILK, EGG.", "CONTAINS: WHEAT, EGG.", "A003", ("what it contains", "milk")),
        ("Also in it: barley, oats.", "Also in it: oats.", "A003", ("“also in it”", "barley")),
        ("Caution: Honey is not for babies under 12 months, not even baked.\n", "", "A003", ("Honey",)),
        ("175 °C); oven", "185 °C); oven", "A002", ("the line of temperatures", "185 °C", "175 °C")),
        ("325 °F, 155 °C with", "325 °F, 165 °C with", "A002", ("other ovens", "165 °C", "155 °C")),
        ("3 h 32 min", "2 h 32 min", "A002", ("the time of “dough cycle”", "“2 h”", "“3 h”")),
        ("→ 430 g (3⅓ cups), because", "→ 420 g (3⅓ cups), because", "A002", ("the correction", "420 g")),
        ("1:25 Weighing", "1:35 Weighing", "A002", ("the chapter at 1:25", "1:35")),
        ("1 cup 237 ml", "1 cup 250 ml", "A002", ("how it is measured", "“250 ml”", "“237 ml”")),
        ("Keeps: 3 days", "Keeps: 9 days", "A001", ("“9 days”",)),
    ],
)
def test_an_edited_description_is_found_out(old: str, new: str, code: str, says: tuple[str, ...]) -> None:
    found = proved(edited(papers(), TEXT, old, new))
    assert any(each.code == code and all(words in each.message for words in says) for each in found), told(
        found
    )


def test_a_finding_in_a_description_names_line_and_column() -> None:
    files = edited(papers(), TEXT, "430 g (3⅓ cups) bread", "400 g (3⅓ cups) bread")
    (found,) = proved(files)
    line = files[TEXT].decode().splitlines()[found.span.line - 1]
    assert line[found.span.column - 1 : found.span.end_column - 1] == "400 g"


def test_a_description_may_leave_out_only_what_has_no_room() -> None:
    text = papers()[TEXT].decode()
    start, end = text.index("METHOD"), text.index("CONTAINS")
    assert "step 1" in told(proved({TEXT: (text[:start] + text[end:]).encode()}))


def test_a_description_that_was_shortened_for_its_limit_is_silent() -> None:
    text = render_description(sample().views[BRAID], limit=1500).text
    assert "METHOD" not in text
    result = newer(Change(path="site.yaml", old="maker:", new="description_limit: 1500\nmaker:"))
    assert told(proved({TEXT: text.encode()}, result)) == ""


def test_windows_line_ends_of_a_pasted_description_are_no_difference() -> None:
    text = papers()[TEXT].replace(b"\n", b"\r\n")
    assert told(proved({TEXT: text})) == ""


def test_a_picture_says_what_it_shows() -> None:
    record = read_png(papers()[OVERLAY])
    assert record.is_own
    assert record.drawn is not None
    assert "430\u00a0g bread flour 3⅓\u00a0cups" in record.drawn


def test_a_picture_painted_over_is_not_the_one_that_was_drawn() -> None:
    content = papers()[OVERLAY]
    at = content.index(b"IDAT") - 4
    (length,) = struct.unpack(">I", content[at : at + 4])
    data = zlib.compress(zlib.decompress(content[at + 8 : at + 8 + length]) if _is_whole(content) else b"", 1)
    chunk = struct.pack(">I", len(data)) + b"IDAT" + data + struct.pack(">I", zlib.crc32(b"IDAT" + data))
    other = content[:at] + chunk + content[at + 12 + length :]
    (found,) = proved({OVERLAY: other})
    assert (found.code, "is not the one that was drawn" in found.message) == ("A007", True)


def _is_whole(content: bytes) -> bool:
    """Whether the picture data are one chunk, which a test may take out and put in again."""
    return content.count(b"IDAT") == 1


def test_a_picture_without_a_record_cannot_be_judged() -> None:
    content = papers()[OVERLAY]
    at = content.index(b"iTXt") - 4
    bare = content[:at] + content[-12:]
    (found,) = proved({OVERLAY: bare})
    assert "no record of what it shows" in found.message


SHARE, TALL, CHAPTER = (
    f"site/recipes/{BRAID}/share.jpg",
    f"desk/{BRAID}/tall.jpg",
    f"desk/{BRAID}/chapter-2.png",
)


def test_drawn_pictures_say_what_they_show() -> None:
    share, tall = (read_jpeg(papers()[path]) for path in (SHARE, TALL))
    card = read_png(papers()[CHAPTER])
    assert share.is_own
    assert share.drawn is not None
    assert tall.drawn is not None
    assert card.drawn is not None
    assert "Honey\noat braid" in share.drawn
    assert "Time in all 3\u00a0h\u00a032\u00a0min" in tall.drawn
    assert "1:25 2 of 3" in card.drawn


@pytest.mark.parametrize(
    ("path", "change", "says"),
    [
        (TALL, RISE, "no amount, temperature or time of the recipe"),
        (SHARE, RISE, "no amount, temperature or time of the recipe"),
        (
            SHARE,
            Change(path=RECIPE, old="title: Honey oat braid", new="title: Honey barley braid"),
            "the title",
        ),
        (CHAPTER, Change(path=RECIPE, old="1:25: Weighing", new="1:35: Weighing"), "when the chapter begins"),
        (CHAPTER, Change(path=RECIPE, old="1:25: Weighing", new="1:25: Measuring"), "the chapter"),
    ],
)
def test_a_drawn_picture_of_an_older_build_is_found_out(path: str, change: Change, says: str) -> None:
    assert says in told(proved({path: papers()[path]}, understood(change)))


def test_a_picture_touched_up_by_hand_is_not_the_one_that_was_drawn() -> None:
    content = papers()[SHARE]
    (found,) = proved({SHARE: content[:-40] + bytes([content[-40] ^ 1]) + content[-39:]})
    assert (found.code, "is not the one that was drawn" in found.message) == ("A007", True)
    start = 4 + int.from_bytes(content[4:6], "big")
    (found,) = proved({SHARE: content[:2] + content[start:]})
    assert "no record of what it shows" in found.message


@pytest.mark.parametrize("path", [CARD, OVERLAY, SHARE, CHAPTER, f"desk/{BRAID}/tags.pdf"])
@pytest.mark.parametrize("content", [b"", b"%PDF-1.7 cut", b"\x89PNG\r\n\x1a\n\0\0"])
def test_what_is_no_pdf_and_no_picture_is_said(path: str, content: bytes) -> None:
    assert [each.code for each in proved({path: content})] == ["A007"]


def test_a_sheet_of_another_recipe_is_found_out() -> None:
    content = papers()[CARD]
    other = "desk/candied-lemon-peel/bench-sheet.pdf"
    assert {"A002", "A003", "A004"} <= {each.code for each in proved({other: content})}
