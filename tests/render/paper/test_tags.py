"""The sheet of tags of a make: ten on a sheet, the list on the back, and never a smaller letter for a longer list."""

from dataclasses import replace
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
import zxingcpp
from pypdf import PdfReader

from generator.declaration.model import Run
from generator.present.views import RecipeView
from generator.render.paper import to_pdf
from generator.render.tag_sheets.render import arranged_tags, render_tags, undated
from generator.render.tag_sheets.sheets import Arranged
from generator.render.tag_sheets.sizes import CROSS_MM, PAPERS_MM, SIZES, Grid, Size, size_named
from generator.settings import Paper
from tests.render.paper.glyphs import lowest
from tests.render.paper.reading import (
    MM,
    label_words,
    overprinted,
    pages_of,
    picture,
    squeezed,
    text_of,
    texts_of,
)
from tests.render.paper.sample import LONG, TINY, TYPICAL

UNFINISHED = "Not finished: the pack of the candied peel is still to be read."
TEN = size_named("ten")


def longer(times: int) -> RecipeView:
    runs = TYPICAL.label.ingredients * times
    statement = "".join(run.text for run in runs)
    return replace(
        TYPICAL,
        label=replace(TYPICAL.label, ingredients=runs, unfinished=UNFINISHED, statement=statement),
    )


@cache
def arranged(view: RecipeView, paper: Paper = "letter") -> Arranged:
    return arranged_tags(undated(view), paper=paper)


@cache
def content_of(view: RecipeView, paper: Paper = "letter") -> bytes:
    return to_pdf(arranged(view, paper).document)


def sides(view: RecipeView, paper: Paper = "letter") -> list[str]:
    return list(pages_of(content_of(view, paper)))


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_the_usual_sheet_has_ten_tags_with_the_list_on_the_back(paper: Paper) -> None:
    """3.5 by 2 in; what is contained stands on the side that is read first, with the word that there is more."""
    usual = longer(2)
    made = arranged(usual, paper)
    assert (made.size, made.tags) == (TEN, 10)
    front, back = sides(usual, paper)
    listed, contains, *_ = (squeezed(each) for each in label_words(usual))
    assert front.count(contains) == back.count(contains) == back.count(listed) == 10
    assert front.count("Ingredientsontheback.") == front.count("ToFrom") == front.count("Bakedon") == 10
    assert listed not in front
    assert made.told[0].startswith("The list of ingredients")
    assert "Print on both sides, turned over the long edge." in made.told


def test_few_words_stand_on_one_side_and_nobody_is_told_to_turn_it() -> None:
    made = arranged(TINY)
    assert (made.size, made.told) == (TEN, ())
    (front,) = sides(TINY)
    for words in filter(None, [*label_words(TINY), TINY.keeps]):
        assert front.count(squeezed(words)) == 10
    assert "ontheback" not in front


def test_where_no_line_names_them_the_front_says_that_allergens_are_bold_on_the_back() -> None:
    """Reg. (EU) 1169/2011, Art. 21, and Notice 2017/C 428/01, 3.5: no line repeats what the list emphasises."""
    label = replace(longer(2).label, contains_line=())
    front, _ = sides(replace(TYPICAL, label=label))
    assert front.count("Ingredients,allergensinbold,ontheback.") == 10


@pytest.mark.parametrize(
    ("times", "size", "tags"),
    [
        (2, "ten", 10),
        (5, "a7", 6),
        pytest.param(12, "folded", 2, marks=pytest.mark.long),
        pytest.param(40, None, 1, marks=pytest.mark.long),
    ],
)
def test_a_longer_declaration_takes_a_larger_tag_and_loses_no_word(
    times: int, size: str | None, tags: int
) -> None:
    view = longer(times)
    made = arranged(view)
    assert (made.size.name if made.size else None, made.tags) == (size, tags)
    text = text_of(content_of(view))
    for words in filter(None, [*label_words(view)[1:], view.keeps, view.net_weight, view.statement_of_place]):
        assert text.count(squeezed(words)) >= tags, words
    assert text.count("maltedbarley") == times * tags
    assert (made.told[0].startswith("The words do not fit on")) is (size != "ten")


@pytest.mark.parametrize(
    "view",
    [
        TINY,
        TYPICAL,
        longer(2),
        longer(5),
        *(pytest.param(each, marks=pytest.mark.long) for each in (LONG, longer(40))),
    ],
)
def test_declarations_stand_a_sixteenth_of_an_inch_high_on_the_lower_case_o(view: RecipeView) -> None:
    """21 CFR 101.2(c): 1/16 in on the lower-case o; more than the 1.2 mm of Reg. (EU) 1169/2011 Art. 13(2)."""
    assert lowest(content_of(view), "o") >= 25.4 / 16


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("view", [TYPICAL, longer(2), longer(5)])
def test_no_letter_leaves_its_tag(view: RecipeView, paper: Paper) -> None:
    made = arranged(view, paper)
    assert made.size is not None
    grid = Grid(size=made.size, paper=paper)
    for text in texts_of(made.document):
        places = grid.places(second=text.page % 2 == 1)
        inside = [
            place
            for place in places
            if (place.left + CROSS_MM) * MM <= text.left
            and text.right <= (place.left + made.size.width - CROSS_MM) * MM
            and (place.top + CROSS_MM) * MM <= text.high
            and text.low <= (place.top + made.size.height - CROSS_MM) * MM
        ]
        assert len(inside) == 1, text


def test_no_line_of_any_sheet_lies_on_another() -> None:
    for view in (TYPICAL, longer(2), longer(5)):
        assert list(overprinted(texts_of(arranged(view).document))) == []


@pytest.mark.parametrize("size", SIZES, ids=lambda size: size.name)
@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_cut_marks_lie_on_the_sheet_where_the_cuts_meet(size: Size, paper: Paper) -> None:
    grid = Grid(size=size, paper=paper)
    width, height = PAPERS_MM[paper]
    corners = {(place.left, place.top) for place in grid.places(second=False)}
    crossings = {(each.left, each.top) for each in grid.crossings()}
    assert corners <= crossings
    assert all(0 <= left <= width and 0 <= top <= height for left, top in crossings)


def test_ten_tags_on_us_letter_are_business_cards() -> None:
    first = Grid(size=TEN, paper="letter").places(second=False)[0]
    assert (first.left, first.top) == pytest.approx((0.75 * 25.4, 0.5 * 25.4))
    assert (TEN.width, TEN.height) == pytest.approx((88.9, 50.8))


@pytest.mark.parametrize(("paper", "size"), [("letter", (612, 792)), ("a4", (595.28, 841.89))])
def test_the_sheet_has_the_size_of_the_paper(paper: Paper, size: tuple[float, float]) -> None:
    for page in PdfReader(BytesIO(content_of(TYPICAL, paper))).pages:
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(size, abs=0.01)


def boxes(document: Any, kind: str) -> list[Any]:
    return [
        box
        for page in document.pages
        for box in page._page_box.descendants(placeholders=True)
        if type(box).__name__ == kind
    ]


def test_what_stands_out_is_bold_on_the_tag() -> None:
    texts = boxes(arranged(TYPICAL).document, "TextBox")
    bold = {box.text for box in texts if box.style["font_weight"] == 700}
    assert {"wheat", "milk", "egg"} <= bold


def test_the_codes_on_a_sheet_can_be_read_and_lie_on_no_line(tmp_path: Path) -> None:
    made = arranged(TINY)
    codes = zxingcpp.read_barcodes(picture(content_of(TINY), tmp_path))
    assert [code.text for code in codes] == [TINY.url] * 10
    figures = [box for box in boxes(made.document, "BlockBox") if box.element_tag == "figure"]
    rules = [box for box in boxes(made.document, "InlineBlockBox") if box.element_tag == "i"]
    assert len(figures) == 10
    assert len(rules) == 40
    for rule in rules:
        right, low = rule.position_x + rule.margin_width(), rule.position_y + rule.margin_height()
        for code in figures:
            across = rule.position_x < code.position_x + code.margin_width() and code.position_x < right
            down = rule.position_y < code.position_y + code.margin_height() and code.position_y < low
            assert not (across and down)


@pytest.mark.long
def test_a_code_is_left_out_before_words_move_or_a_tag_grows() -> None:
    seen = []
    for more in (0, 50, 100, 400):
        runs = (*longer(3).label.ingredients, Run(text=" and more" * (more // 9)))
        made = arranged(replace(TYPICAL, label=replace(longer(3).label, ingredients=runs)))
        left_out = any(words.startswith("The code is left out") for words in made.told)
        seen.append((made.size.name if made.size else "", left_out))
    assert list(dict.fromkeys(seen))[:3] == [("ten", False), ("ten", True), ("a7", False)]


def test_a_statement_of_the_place_is_printed_word_for_word() -> None:
    words = "THIS FOOD is made in a Home Kitchen; see (our) “notes”."
    content = render_tags(replace(TINY, statement_of_place=words), paper="letter").content
    assert text_of(content).count(squeezed(words)) == 10


def test_what_the_eater_must_know_stands_on_every_tag() -> None:
    words = "Honey is not for babies under 12 months, not even baked."
    content = render_tags(replace(TYPICAL, eater_cautions=(words,)), paper="letter").content
    text = text_of(content)
    assert text.count(squeezed(f"Caution: {words}")) == text.count("Bakedon") == 10


def test_a_tag_without_a_finished_weight_claims_none() -> None:
    assert "NetWt" not in text_of(content_of(TINY))


def test_marks_that_html_would_take_for_its_own_are_printed() -> None:
    label = replace(TINY.label, ingredients=(Run(text="Sugar <fine> & "), Run(text='"nuts"', strong=True)))
    content = render_tags(replace(TINY, label=label), paper="letter").content
    assert text_of(content).count('Sugar<fine>&"nuts"') == 10
