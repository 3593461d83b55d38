"""The other texts under a film: short, to pin, chapters; and what never gives way in them."""

import re
from dataclasses import replace

import pytest

from generator.present.views import ChapterView, RecipeView
from generator.render.description.chapters import render_chapters, why_none
from generator.render.description.comment import render_comment
from generator.render.description.plain import size
from generator.render.description.safety import advice, allergens, cautions, kitchen
from generator.render.description.short import GIVES_WAY, render_short
from generator.render.description.variants import names_of, of_film, variants
from tests.render.text.sample import BRAID, SUGAR, many

# W3C, WebVTT: The Web Video Text Tracks Format, section 4.1: signature, blocks, timings with hours of two figures.
CUE = re.compile(r"(\d\d):[0-5]\d:[0-5]\d\.\d{3} --> (\d\d):[0-5]\d:[0-5]\d\.\d{3}\n[^\n]+\n")
VIEWS = (BRAID, SUGAR, many())


def stays(view: RecipeView) -> list[str]:
    texts = (cautions(view), allergens(view), kitchen(view), advice(view))
    return [line for text in texts for line in text.split("\n") if line]


@pytest.mark.parametrize("view", VIEWS, ids=lambda view: view.name)
@pytest.mark.parametrize("limit", [20_000, 2000, 1200, 600, 1])
def test_cautions_allergens_and_the_page_stay_in_a_short_text_whatever_its_limit(
    view: RecipeView, limit: int
) -> None:
    short = render_short(view, limit=limit)
    assert view.url in short.text
    assert [line for line in stays(view) if line not in short.text] == []
    assert short.fits == (size(short.text) <= limit)


def test_what_a_short_text_leaves_out_is_named_and_gone_whole() -> None:
    whole, short = render_short(BRAID, limit=20_000), render_short(BRAID, limit=700)
    assert whole.left_out == ()
    assert "Left out" not in whole.text
    told = next(line for line in short.text.split("\n") if line.startswith("Left out here"))
    assert [words for name, words in GIVES_WAY if name in short.left_out and words not in told] == []
    assert told.endswith(BRAID.url)
    # No sentence is cut: every line but that one stands in the whole text too.
    assert [line for line in short.text.split("\n") if line not in whole.text and line != told] == []


def test_before_a_correction_the_comment_says_the_page_cautions_and_allergens() -> None:
    plain = replace(BRAID, corrections=(), since=())
    told = render_comment(plain)
    assert told.startswith(f"{BRAID.title}: {BRAID.url}\n")
    assert [line for line in stays(plain) if line not in told] == []


def test_after_a_correction_the_comment_is_about_that() -> None:
    assert render_comment(BRAID).startswith("Corrected ")


def test_chapters_are_webvtt_from_one_to_the_next_and_to_the_end() -> None:
    film = BRAID.videos[0]
    text = render_chapters(film)
    head, _, cues = text.partition("\n\n")
    assert head == "WEBVTT"
    assert len(CUE.findall(cues)) == len(film.chapters)
    assert "".join(found[0] for found in re.finditer(CUE, cues)).count("-->") == text.count("-->")
    starts, ends = zip(*re.findall(r"([\d:.]+) --> ([\d:.]+)", text), strict=True)
    assert starts[0] == "00:00:00.000"
    assert starts[1:] == ends[:-1]


def test_a_title_cannot_break_a_cue() -> None:
    odd = ChapterView(stamp="0:00", seconds=0, end_seconds=20, title="a --> b & <c>\nd", url="")
    text = render_chapters(replace(BRAID.videos[0], chapters=(odd,)))
    assert text.split("\n")[2:4] == ["00:00:00.000 --> 00:00:20.000", "a → b &amp; ‹c› d"]


def test_no_end_and_no_order_is_made_up() -> None:
    film = BRAID.videos[0]
    last = replace(film.chapters[-1], end_seconds=None)
    assert "length" in why_none(replace(film, chapters=(*film.chapters[:-1], last)))
    assert "order" in why_none(
        replace(film, chapters=(replace(film.chapters[0], end_seconds=0), *film.chapters))
    )
    assert why_none(replace(film, chapters=())) == "the film has no chapters"


def test_each_film_has_its_own_texts_and_stands_first_in_them() -> None:
    second = replace(BRAID.videos[0], url="https://video.example/w/second", chapters=())
    view = replace(BRAID, videos=(BRAID.videos[0], second))
    names = [file for file, _, _ in names_of(view)]
    told = {each.file: each.text for each in variants(view, limit=20_000, short_limit=20_000)}
    assert list(told) == names
    assert {"description.txt", "description-2.txt", "short-2.txt", "chapters.vtt"} <= set(names)
    assert "chapters-2.vtt" not in names
    assert f"CHAPTERS of {BRAID.videos[0].url}" in told["description.txt"]
    assert "CHAPTERS" not in told["description-2.txt"]
    assert of_film(view, second).videos[0] is second
