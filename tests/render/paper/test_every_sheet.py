"""What holds for every printed sheet: it can be read by people and by machines, and nothing is lost."""

from collections.abc import Mapping
from dataclasses import replace
from io import BytesIO
from typing import Any

import pytest
from pypdf import PdfReader

from generator.render.bench_sheets.render import render_bench_sheet
from generator.render.cards.render import render_cards
from tests.render.paper.conftest import Sheets
from tests.render.paper.reading import POINT, lost, overprinted, root_of, structure_of, texts_of, words_of
from tests.render.paper.sample import LONG, TINY, TYPICAL
from tests.render.paper.structure import structure_faults

VIEWS = {view.name: view for view in (TYPICAL, TINY, LONG)}


def test_every_sheet_says_its_title_its_language_and_that_it_is_tagged(
    printed: Mapping[tuple[str, str], bytes],
) -> None:
    for (name, sheet), content in printed.items():
        reader = PdfReader(BytesIO(content))
        root = root_of(content)
        assert root["/Lang"] == "en-US", (name, sheet)
        assert root["/MarkInfo"] == {"/Marked": True}
        assert bool(root["/ViewerPreferences"]["/DisplayDocTitle"])
        told: Any = reader.metadata
        assert str(told["/Title"]).startswith(VIEWS[name].title)
        assert told["/Author"] == TYPICAL.maker
        assert b'pdfuaid:part="1"' in root["/Metadata"].get_data()


def test_the_dates_of_a_sheet_are_those_of_its_content(printed: Mapping[tuple[str, str], bytes]) -> None:
    for content in printed.values():
        metadata: Any = PdfReader(BytesIO(content)).metadata
        assert metadata["/CreationDate"] == "D:20260912120000Z"
        assert metadata["/ModDate"] == "D:20260920120000Z"


@pytest.mark.parametrize("sheet", ["card-4x6", "card-a5", "tags-letter", "bench-letter"])
def test_every_sheet_can_be_read_aloud(printed: Mapping[tuple[str, str], bytes], sheet: str) -> None:
    """Lists, tables, figures and headings are tagged by the rules; tags say the title once for each tag."""
    for name in VIEWS:
        titles = 1 if not sheet.startswith("tags") else _titles(printed[name, sheet])
        assert structure_faults(printed[name, sheet], titles=titles) == [], name
    kinds = [str(node["/S"]) for node in structure_of(printed[TYPICAL.name, sheet])]
    if not sheet.startswith("tags"):
        assert kinds.count("/TH") >= sum(len(part.lines) for part in TYPICAL.parts)
        assert kinds.count("/Table") >= len(TYPICAL.parts)


def _titles(content: bytes) -> int:
    return [str(node["/S"]) for node in structure_of(content)].count("/H1")


def test_a_recipe_without_ways_skips_no_level_of_headings() -> None:
    view = replace(TYPICAL, ways=())
    assert structure_faults(next(render_cards(view)).content) == []
    assert structure_faults(render_bench_sheet(view, paper="letter").content) == []


def test_the_check_of_the_tags_finds_what_is_amiss(monkeypatch: pytest.MonkeyPatch) -> None:
    """As the engine alone writes them, head cells have no scope, and terms stand in groups that are no items."""
    monkeypatch.setattr("generator.render.paper.mend_tags", lambda pdf: None)
    told = structure_faults(next(render_cards(TYPICAL)).content)
    assert {
        "a head cell has no scope",
        "/LI stands in /Div",
        "/L holds ['/Div', '/Div', '/Div', '/Div']",
    } <= set(told)


def test_the_code_on_a_card_is_a_figure_with_words(printed: Mapping[tuple[str, str], bytes]) -> None:
    figures = [
        node for node in structure_of(printed[TYPICAL.name, "card-4x6"]) if str(node["/S"]) == "/Figure"
    ]
    assert [figure.get("/Alt") for figure in figures] == [
        f"QR code that leads to {TYPICAL.url} and to what changed since revision {TYPICAL.revision}"
    ]


def _fonts(content: bytes) -> list[Any]:
    pages: Any = PdfReader(BytesIO(content)).pages
    return [font.get_object() for page in pages for font in page["/Resources"]["/Font"].values()]


def test_every_font_is_ours_and_embedded(printed: Mapping[tuple[str, str], bytes]) -> None:
    for key, content in printed.items():
        for font in _fonts(content):
            inner = font["/DescendantFonts"][0].get_object()
            assert "Docket-" in inner["/BaseFont"], (key, inner["/BaseFont"])
            assert "/FontFile2" in inner["/FontDescriptor"].get_object(), key


def test_no_line_lies_on_another_or_leaves_its_page(documents: Sheets) -> None:
    for key, document in documents.items():
        texts = texts_of(document)
        assert list(overprinted(texts)) == [], key
        for text in texts:
            page = document.pages[text.page]
            assert text.left >= 15, (key, text)
            assert text.right <= page.width - 15, (key, text)
            assert text.high >= 15, (key, text)
            assert text.low <= page.height - 15, (key, text)


def test_no_letter_is_smaller_than_eight_points(documents: Sheets) -> None:
    sizes = {key: min(text.size for text in texts_of(document)) for key, document in documents.items()}
    assert {key: size for key, size in sizes.items() if size < 8 * POINT - 0.001} == {}


@pytest.mark.parametrize("name", VIEWS)
def test_cards_and_bench_sheets_lose_no_word(printed: Mapping[tuple[str, str], bytes], name: str) -> None:
    for (recipe, sheet), content in printed.items():
        if recipe == name and not sheet.startswith("tags"):
            assert lost(words_of(VIEWS[name]), content) == [], sheet
