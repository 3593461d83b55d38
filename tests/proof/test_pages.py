"""Every page, feed and data file of the sample says what the recipe says; changed by a hand, it is found out.

Each case edits one built file as somebody might, and wants the finding to name the file, what it says now, and what
the recipe says.
"""

import json
import re

import pytest

from tests.proof.building import edited, proved, sample, texts, told
from tests.proof.page_cases import CASES, DATA, PAGE, Case


def test_untouched_output_is_silent() -> None:
    assert told(proved(texts())) == ""


def test_every_page_and_every_file_of_data_is_read() -> None:
    """What is carried along, pictures and fonts and styles, says nothing of a recipe."""
    unread = {path for path in texts() if path not in sample().expected.places}
    assert {path for path in unread if not path.startswith(("site/leaf/", "site/media/"))} == set()


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_an_edited_file_is_found_out(case: Case) -> None:
    found = proved(edited(texts(), case.path, case.old, case.new))
    assert {each.span.path for each in found} == {case.path}
    assert case.code in {each.code for each in found}, told(found)
    assert any(all(words in each.message for words in case.says) for each in found), told(found)


def test_a_finding_names_the_line_of_the_page() -> None:
    case = CASES["a weight of the docket"]
    files = edited(texts(), case.path, case.old, case.new)
    lines = files[PAGE].decode().splitlines()
    (line,) = {each.span.line for each in proved(files) if each.code == "A002"}
    assert "400" in lines[line - 1]


def test_a_finding_names_the_line_of_recipe_json() -> None:
    case = CASES["an allergen in recipe.json"]
    files = edited(texts(), case.path, case.old, case.new)
    (found,) = proved(files)
    assert '"oats"' in files[DATA].decode().splitlines()[found.span.line - 1]


_FIGURE = re.compile(r"(?<=>)[^<>]*?(\d+)(?=[^<>]*<)")


def unseen(every: int) -> list[str]:
    """Of the figures from the times to the label, each by itself one more than it is, those that nobody noticed."""
    text = texts()[PAGE].decode()
    start, end = (next(re.finditer(place, text)).start() for place in ('class="?times', 'id="?leaf-label'))
    places = [each.span(1) for each in _FIGURE.finditer(text, start, end)]
    assert len(places) > 150
    found = []
    for first, last in places[::every]:
        other = f"{text[:first]}{int(text[first:last]) + 1}{text[last:]}"
        if not proved({PAGE: other.encode()}):
            found.append(text[first - 60 : last + 40])
    # Where a step stands is no amount.
    return [each for each in found if "Step </span>" not in each]


def test_no_figure_of_the_page_can_change_unseen() -> None:
    assert unseen(every=15) == []


@pytest.mark.long
def test_no_figure_of_the_page_at_all_can_change_unseen() -> None:
    assert unseen(every=1) == []


def test_a_page_of_a_recipe_that_is_gone_is_an_entry_too_many() -> None:
    feed = json.loads(texts()["site/feed.json"])
    feed["items"].append({**feed["items"][0], "id": "https://kitchen.example/recipes/rye/", "title": "Rye"})
    (found,) = proved({"site/feed.json": json.dumps(feed).encode()})
    assert found.message == "the entry “Rye” is of no bake and no post of the site"


def test_a_bake_that_a_feed_has_lost_is_named() -> None:
    feed = json.loads(texts()["site/feed.json"])
    feed["items"] = []
    (found,) = proved({"site/feed.json": json.dumps(feed).encode()})
    assert found.message == "“Honey oat braid” is not in the feed"


@pytest.mark.parametrize(
    ("path", "content"),
    [
        (PAGE, b"\xff\xfe not text"),
        (DATA, b"{"),
        ("site/feed.xml", b"<feed>"),
        ("site/feed.xml", b'<!DOCTYPE feed [<!ENTITY a "b">]><feed/>'),
        ("site/feed.json", b"[]"),
        ("site/sitemap.xml", b""),
    ],
)
def test_what_cannot_be_read_is_said(path: str, content: bytes) -> None:
    assert "A007" in {each.code for each in proved({path: content})}


def test_an_empty_page_misses_everything() -> None:
    found = proved({PAGE: b"<!doctype html><title>x</title>"})
    assert {"A002", "A003", "A004", "A007"} <= {each.code for each in found}


def test_a_fingerprint_of_a_script_is_no_amount() -> None:
    """The page's policy for the browser names its scripts by letters and digits: “4L8u” is no four litres."""
    path = "site/index.html"
    page = texts()[path].decode()
    policy = "<meta content=\"script-src 'sha256-4L8u443V 5 cups'\" http-equiv=Content-Security-Policy>"
    assert "<title>" in page
    assert proved({path: page.replace("<title>", f"{policy}<title>", 1).encode()}) == ()
    words = '<meta content="5 cups of flour" name=description>'
    assert proved({path: page.replace("<title>", f"{words}<title>", 1).encode()}) != ()
