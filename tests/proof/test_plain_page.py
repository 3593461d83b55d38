"""A page that is read quickly is read as the standard library's parser reads it, or is left to that."""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.proof.page_reader import CarefulPage, read_carefully, read_page
from generator.proof.plain_page import NotPlain, PlainPage, read_plain
from generator.proof.squeeze import readable
from generator.proof.texts import read_json_feed
from tests.lots import lots
from tests.proof.building import texts

Reading = tuple[object, ...]


def told(page: PlainPage | CarefulPage) -> Reading:
    words: tuple[str, ...]
    if isinstance(page, PlainPage):
        words = page.words, page.told_words
    else:
        words = tuple("".join(readable(each.words) for each in some) for some in (page.pieces, page.told))
    return (*words, page.scripts, page.links, page.changing, page.timers, page.options)


def read_in_both_ways(content: str) -> tuple[Reading | None, Reading]:
    careful = told(read_carefully(content, line=3))
    try:
        return told(read_plain(content, line=3)), careful
    except NotPlain:
        return None, careful


def pages() -> list[str]:
    """Every page of the sample, and every entry of its feed."""
    files = texts()
    entries = [each.html for each in read_json_feed(files["site/feed.json"])]
    return [files[path].decode() for path in sorted(files) if path.endswith(".html")] + entries


def test_every_page_of_ours_is_plain_and_read_alike() -> None:
    for content in pages():
        plain, careful = read_in_both_ways(content)
        assert plain == careful


def test_every_cut_and_every_lost_sign_is_read_alike_or_left_to_the_other() -> None:
    """What somebody did to a page by hand: it ends anywhere, or one sign of its tags is gone or another."""
    content = max(pages(), key=len)
    start = content.index("<body>")
    signs = [found.start() for found in re.finditer(r"[<>/=\"'&]", content[start:])]
    read = 0
    for number, at in enumerate(signs[:: max(1, len(signs) // lots(40))]):
        place = start + at
        other = "<>\"'/= &\n"[number % 9]
        for changed in (
            content[:place],
            content[:place] + content[place + 1 :],
            content[:place] + other + content[place + 1 :],
        ):
            plain, careful = read_in_both_ways(changed)
            assert plain is None or plain == careful, content[place - 40 : place + 40]
            read += plain is not None
    assert read > 8


_PIECES = (
    "<p>", "</p>", "<b>", "</b>", "<li>", "</li>", "<br>", "<br/>", "<td>", "</td>", "<span data-n=4>",
    "<dd data-h='1'>", '<span data-n="4 5">', "</span>", "</dd>", '<a href="x y.html">', "</a>",
    "<a href=a.html title='one > two'>", '<img src=a.jpg alt="a &amp; b" srcset="a.jpg 1x, b.jpg 2x">',
    '<path d="M1 2"/>', "<g/>", "</g>", "<option value=2>", "<option>",
    "<button data-seconds='60 90' data-kind=rise>", "<title>", "</title>", "<textarea>", "<script>",
    '<script id=leaf type="a/b">', "</script>", "</script >", "<style>", "</style>", "<!-- a remark -->",
    "<!-->", "-->", "<!--- a -->", "<!doctype html>", "<?php 1 ?>", "<![CDATA[a]]>", "<P>", "</B>",
    "<p class>", "<p =a>", '<p a"b>', "< p>", "</ p>", "<p/ >", "<p\n>", "a < b", "&lt;430 g&gt;", "&amp",
    "&frac12; cup", "½ cup\n", "430 g", "\n ", "e\u0301", "\xad", "</", "<", ">", "&", '"', "'", "<a b=c/>",
    "<iframe>", '<h1\ttitle="x">', "<meta http-equiv=a content='b c'>",
)  # fmt: skip


@settings(max_examples=lots(2000), deadline=None)
@given(st.lists(st.sampled_from(_PIECES), max_size=12).map("".join))
def test_pieces_of_pages_are_read_alike_or_left_to_the_other(content: str) -> None:
    plain, careful = read_in_both_ways(content)
    assert plain is None or plain == careful


@pytest.mark.parametrize("content", ["<p>430 g</p>", "<P>430 g</P>"])
def test_a_place_is_the_same_whoever_read_the_page(content: str) -> None:
    page = read_page("a.html", f"\n  {content}", line=5).text
    at = page.words.index("430")
    assert (page.span(at, at + 3).line, page.span(at, at + 3).column) == (6, 6)
