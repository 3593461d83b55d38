"""Tags: ten on a sheet, and never a smaller letter for a longer list."""

from dataclasses import replace
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
import zxingcpp
from fontTools.ttLib import TTFont
from pypdf import PdfReader

from generator.declaration.model import Run
from generator.present.views import RecipeView
from generator.render.paper import to_pdf
from generator.render.print_fonts import FIGURES, face_path
from generator.render.tag_sheets.forms import FORMS, PAPERS_MM, TagForm, fields_of, marks_of
from generator.render.tag_sheets.render import choose, lay_out_tags, render_tags
from generator.settings import Paper
from tests.render.paper.conftest import Sheets
from tests.render.paper.reading import (
    MM,
    label_words,
    lost,
    overprinted,
    picture,
    squeezed,
    text_of,
    texts_of,
)
from tests.render.paper.sample import LONG, TINY, TYPICAL

UNFINISHED = "Not finished: the pack of the candied peel is still to be read."


def longer(times: int) -> RecipeView:
    runs = TYPICAL.label.ingredients * times
    statement = "".join(run.text for run in runs)
    return replace(
        TYPICAL,
        label=replace(TYPICAL.label, ingredients=runs, unfinished=UNFINISHED, statement=statement),
    )


@cache
def laid_out(view: RecipeView) -> Any:
    return lay_out_tags(view, paper="letter")


@cache
def content_of(view: RecipeView) -> bytes:
    return to_pdf(laid_out(view))


@pytest.mark.parametrize(
    ("view", "form", "tags"),
    [
        (TINY, "ten", 10),
        (replace(TYPICAL, keeps="", statement_of_place=""), "ten-close", 10),
        (TYPICAL, "eight", 8),
        (longer(2), "six", 6),
        (longer(5), "four", 4),
        (longer(8), "two", 2),
        (longer(20), "one", 1),
    ],
)
def test_a_longer_declaration_takes_a_larger_tag(view: RecipeView, form: str, tags: int) -> None:
    choice = choose(view)
    assert choice is not None
    assert (choice.form.name, choice.form.tags) == (form, tags)
    content = content_of(view)
    assert len(PdfReader(BytesIO(content)).pages) == 1
    text = text_of(content)
    for words in filter(None, [*label_words(view), view.keeps, view.net_weight, view.statement_of_place]):
        assert text.count(squeezed(words)) == tags, words
    assert text.count("Bakedon") == text.count("Bestbefore") == text.count("ToFrom") == tags


def test_a_declaration_longer_than_a_sheet_flows_and_loses_nothing() -> None:
    view = longer(40)
    assert choose(view) is None
    content = content_of(view)
    pages = PdfReader(BytesIO(content)).pages
    assert len(pages) > 1
    for number, page in enumerate(pages, start=1):
        assert squeezed(f"sheet {number} of {len(pages)}") in squeezed(page.extract_text())
    without_foot = [line for line in label_words(view)[1:] if line]
    assert lost([*without_foot, view.keeps, view.net_weight], content) == []
    assert text_of(content).count("maltedbarley") == 40


@pytest.mark.parametrize("view", [TINY, TYPICAL, longer(2), longer(5), LONG, longer(40)])
def test_declarations_stand_a_sixteenth_of_an_inch_high_on_the_lower_case_o(view: RecipeView) -> None:
    """21 CFR 101.2(c): 1/16 in on the lower-case o; more than the 1.2 mm of Reg. (EU) 1169/2011 Art. 13(2)."""
    with TTFont(face_path(FIGURES, "400")) as font:
        box = font["glyf"][font.getBestCmap()[ord("o")]]
        high = (box.yMax - box.yMin) / font["head"].unitsPerEm
        tall_x = font["OS/2"].sxHeight / font["head"].unitsPerEm
    texts = texts_of(laid_out(view))
    assert min(text.size for text in texts) / MM * min(high, tall_x) >= 25.4 / 16


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_no_letter_leaves_its_tag(documents: Sheets, paper: Paper) -> None:
    choice = choose(TYPICAL)
    assert choice is not None
    fields = fields_of(choice.form, paper)
    for text in texts_of(documents[TYPICAL.name, f"tags-{paper}"]):
        inside = [
            field
            for field in fields
            if (field.left + 2) * MM <= text.left
            and text.right <= (field.left + choice.form.width_mm - 2) * MM
            and (field.top + 2) * MM <= text.high
            and text.low <= (field.top + choice.form.height_mm - 2) * MM
        ]
        assert len(inside) == 1, text


def test_no_line_of_any_form_lies_on_another() -> None:
    for view in (longer(2), longer(5), longer(12), longer(20), longer(40)):
        assert list(overprinted(texts_of(laid_out(view)))) == []


@pytest.mark.parametrize("form", FORMS, ids=lambda form: form.name)
@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_cut_marks_lie_outside_the_tags_and_on_the_sheet(form: TagForm, paper: Paper) -> None:
    fields = fields_of(form, paper)
    width, height = PAPERS_MM[paper]
    left, top = min(field.left for field in fields), min(field.top for field in fields)
    right = max(field.left for field in fields) + form.width_mm
    bottom = max(field.top for field in fields) + form.height_mm
    assert (right - left, bottom - top) == pytest.approx((177.8, 254))
    marks = marks_of(form, paper)
    assert len(marks) == 2 * (form.columns + 1) + 2 * (form.rows + 1)
    for mark in marks:
        assert 4 <= mark.left <= width - 4 - mark.width
        assert 4 <= mark.top <= height - 4 - mark.height
        beside = mark.left + mark.width < left or mark.left > right
        above = mark.top + mark.height < top or mark.top > bottom
        assert beside != above


def test_ten_tags_on_us_letter_are_business_cards() -> None:
    first = fields_of(FORMS[0], "letter")[0]
    assert (first.left, first.top) == pytest.approx((0.75 * 25.4, 0.5 * 25.4))
    assert (FORMS[0].width_mm, FORMS[0].height_mm) == pytest.approx((88.9, 50.8))


@pytest.mark.parametrize(("paper", "size"), [("letter", (612, 792)), ("a4", (595.28, 841.89))])
def test_the_sheet_has_the_size_of_the_paper(
    printed: dict[tuple[str, str], bytes], paper: str, size: tuple[float, float]
) -> None:
    (page,) = PdfReader(BytesIO(printed[TYPICAL.name, f"tags-{paper}"])).pages
    assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(size, abs=0.01)


def test_what_stands_out_is_bold_on_the_tag(documents: Sheets) -> None:
    document = documents[TYPICAL.name, "tags-letter"]
    bold = {
        box.text
        for page in document.pages
        for box in page._page_box.descendants(placeholders=True)
        if type(box).__name__ == "TextBox" and box.style["font_weight"] == 700
    }
    assert {"wheat", "milk", "egg"} <= bold


def test_the_codes_on_a_sheet_can_be_read(printed: dict[tuple[str, str], bytes], tmp_path: Path) -> None:
    codes = zxingcpp.read_barcodes(picture(printed[TYPICAL.name, "tags-letter"], tmp_path))
    assert [code.text for code in codes] == [TYPICAL.url] * 8


def test_a_code_is_left_out_before_a_tag_grows() -> None:
    """As the words grow, a tag first gives up its code, then its size."""
    seen = []
    for times in (2, 3, 4):
        choice = choose(longer(times))
        assert choice is not None
        seen.append((choice.form.tags, choice.code is not None))
    assert seen == [(6, True), (6, False), (4, True)]


def test_a_statement_of_the_place_is_printed_word_for_word() -> None:
    words = "THIS FOOD is made in a Home Kitchen; see (our) “notes”."
    content = render_tags(replace(TINY, statement_of_place=words), paper="letter").content
    assert text_of(content).count(squeezed(words)) == 10


def test_what_the_eater_must_know_stands_on_every_tag() -> None:
    words = "Honey is not for babies under 12 months, not even baked."
    content = render_tags(replace(TYPICAL, eater_cautions=(words,)), paper="letter").content
    text = text_of(content)
    assert text.count(squeezed(f"Caution: {words}")) == text.count("Bakedon") >= 6


def test_a_tag_without_a_finished_weight_claims_none() -> None:
    assert "NetWt" not in text_of(render_tags(TINY, paper="letter").content)


def test_marks_that_html_would_take_for_its_own_are_printed() -> None:
    label = replace(TINY.label, ingredients=(Run(text="Sugar <fine> & "), Run(text='"nuts"', strong=True)))
    content = render_tags(replace(TINY, label=label), paper="letter").content
    assert text_of(content).count('Sugar<fine>&"nuts"') == 10
