"""The booklet, read back from its bytes: numbers that are right, bookmarks, tags, and nothing lost."""

import re
from dataclasses import replace
from io import BytesIO
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from pypdf import PageObject, PdfReader
from pypdf.generic import Destination

from generator.pipeline import check_folder
from generator.present.book import BookView, book_view
from generator.render.book.page_size import PAGE_SIZES, usual_size
from generator.render.book.pdf import Placing, _placed, lay_out_book, render_book_pdf
from generator.render.paper import to_pdf
from tests.render.book.conftest import DAY, lay, long_bake
from tests.render.paper.reading import POINT, overprinted, pages_of, root_of, squeezed, structure_of, texts_of
from tests.render.paper.structure import structure_faults


def bookmarks(content: bytes) -> dict[str, int]:
    """The page of each bookmark, from 1."""
    reader = PdfReader(BytesIO(content))
    found = {}
    for each in reader.outline:
        assert isinstance(each, Destination), "bookmarks stand in one level"
        number = reader.get_destination_page_number(each)
        assert number is not None
        found[str(each.title)] = number + 1
    return found


def starts_of(content: bytes, book: BookView) -> dict[str, int]:
    """The page on which the address of each bake is printed, which stands beside its title and nowhere else."""
    pages = pages_of(content)
    found = {}
    for bake in book.bakes:
        heads = [
            at
            for at, text in enumerate(pages, start=1)
            if squeezed(bake.view.title) in text and "Weighout" in text and bake.view.url in text
        ]
        assert len(heads) == 1, bake.view.name
        found[bake.view.name] = heads[0]
    return found


def test_the_contents_lead_to_the_page_that_each_bake_stands_on(content: bytes, book: BookView) -> None:
    contents = pages_of(content)[2]
    for bake in book.bakes:
        page = starts_of(content, book)[bake.view.name]
        told = re.escape(squeezed(bake.view.title))
        assert re.search(rf"{told}{page}(?!\d)", contents), (bake.view.name, contents)
    marks = bookmarks(content)
    for words in ("Allergens", "Index by ingredient", "Index by tin"):
        assert f"{squeezed(words)}{marks[words]}" in contents


def test_the_printed_number_of_a_page_is_its_place_in_the_file(document: Any) -> None:
    numbers: dict[int, str] = {}
    for text in texts_of(document):
        height = document.pages[text.page].height
        if text.low > height - 50 and text.text.isdigit():
            numbers[text.page + 1] = text.text
    assert len(numbers) >= 8
    assert numbers == {page: str(page) for page in numbers}


def test_the_index_names_the_pages_of_the_bakes_that_use_an_ingredient(
    content: bytes, book: BookView
) -> None:
    starts, marks, pages = starts_of(content, book), bookmarks(content), pages_of(content)
    index = "".join(pages[marks["Index by ingredient"] - 1 : marks["Index by tin"]])
    for entry in book.ingredients:
        numbers = ", ".join(str(starts[place.anchor.removeprefix("bake-")]) for place in entry.places)
        assert squeezed(entry.words + numbers) in index
    assert [entry.words for entry in book.ingredients] == sorted(entry.words for entry in book.ingredients)
    assert squeezed(f"bread flour{starts['plain-loaf']}") in index
    loaf = next(entry for entry in book.tins if entry.words.startswith("loaf"))
    numbers = f"{starts['the-longest']}, {starts['plain-loaf']}"
    assert squeezed(loaf.words + numbers) in index


def test_a_component_in_the_book_is_told_by_its_page(content: bytes, book: BookView) -> None:
    starts = starts_of(content, book)
    text = pages_of(content)[starts["plain-loaf"] - 1]
    assert squeezed(f"see Glaze, p. {starts['glaze']}") in text


def test_a_component_that_is_not_in_the_book_is_told_by_its_address(book: BookView, content: bytes) -> None:
    alone = replace(book, bakes=book.bakes[-1:], paths={})
    alone = replace(alone, declared=(), allergens=(), ingredients=(), tins=())
    text = "".join(pages_of(render_book_pdf(alone, pictures={}, size="a5")))
    assert squeezed("see Glaze at https://shelf.example/recipes/glaze/") in text


def test_bookmarks_lead_to_bakes_and_lists(content: bytes, book: BookView) -> None:
    starts, marks = starts_of(content, book), bookmarks(content)
    titles = [bake.view.title for bake in book.bakes]
    ends = ["Allergens", "Index by ingredient", "Index by tin"]
    assert list(marks) == ["Before you bake", "Contents", *titles, *ends]
    assert {bake.view.name: marks[bake.view.title] for bake in book.bakes} == starts


def test_a_bake_of_several_pages_begins_at_the_left(content: bytes, book: BookView) -> None:
    starts = starts_of(content, book)
    assert starts["the-longest"] % 2 == 0
    following = [*sorted(starts.values()), bookmarks(content)["Allergens"]]
    for start, end in pairwise(following):
        assert start % 2 == 0 or end - start == 1, following


def test_pages_come_in_fours_so_that_sheets_can_be_folded(content: bytes) -> None:
    assert len(pages_of(content)) % 4 == 0


def test_links_lead_to_the_page_that_is_printed(content: bytes, book: BookView) -> None:
    reader = PdfReader(BytesIO(content))
    starts = starts_of(content, book)
    targets = list(dict.fromkeys(_linked(reader, reader.pages[2])))
    assert targets[:4] == [starts[bake.view.name] for bake in book.bakes]


def _linked(reader: PdfReader, page: PageObject) -> list[int]:
    named = reader.named_destinations
    found = []
    for annotation in page.get("/Annots", []):
        link: Any = annotation.get_object()
        if link.get("/Subtype") != "/Link":
            continue
        goal = link.get("/Dest") or link["/A"]["/D"]
        number = reader.get_destination_page_number(named[str(goal)])
        found.append((number or 0) + 1)
    return found


def test_every_bake_says_its_revision_cautions_and_corrections(content: bytes, book: BookView) -> None:
    text = "".join(pages_of(content))
    for bake in book.bakes:
        assert squeezed(f"Revision {bake.view.revision}") in text
        for words in bake.view.cautions:
            assert squeezed(words) in text
        for correction in bake.view.corrections:
            assert squeezed(correction.sentence) in text
    assert book.bakes[-1].view.corrections


def test_allergens_are_told_by_bake_and_an_unread_pack_is_said_aloud(content: bytes, book: BookView) -> None:
    marks = bookmarks(content)
    text = "".join(pages_of(content)[marks["Allergens"] - 1 : marks["Index by ingredient"] - 1])
    starts = starts_of(content, book)
    nuts = next(each for each in book.declared if each.place.title == "Nut squares")
    assert nuts.unfinished
    assert squeezed(nuts.unfinished) in text
    assert any("chocolate" in reason for reason in nuts.to_read), nuts.to_read
    assert "sesame" in nuts.may_contain
    for words in (*nuts.to_read, "not listed, which is no promise", "ask the maker before you eat"):
        assert squeezed(words) in text
    wheat = next(each for each in book.allergens if each.words == "wheat")
    assert [each.title for each in wheat.contains] == ["Plain loaf"]
    assert [each.title for each in wheat.to_read] == ["Nut squares"]
    assert squeezed(f"wheat{starts['plain-loaf']}–{starts['nut-squares']}") in text


def test_the_book_is_tagged_and_says_its_title_and_language(content: bytes) -> None:
    root = root_of(content)
    assert root["/Lang"] == "en-US"
    assert root["/MarkInfo"] == {"/Marked": True}
    assert bool(root["/ViewerPreferences"]["/DisplayDocTitle"])
    assert b'pdfuaid:part="1"' in root["/Metadata"].get_data()
    told: Any = PdfReader(BytesIO(content)).metadata
    assert (told["/Title"], told["/Author"]) == ("A shelf of bakes", "Wynne Alder")
    assert (told["/CreationDate"], told["/ModDate"]) == ("D:20260101120000Z", "D:20260203120000Z")


def test_headings_skip_no_level_and_tables_and_figures_are_told(content: bytes, book: BookView) -> None:
    assert structure_faults(content) == []
    nodes = structure_of(content)
    kinds = [str(node["/S"]) for node in nodes]
    assert kinds.count("/TH") >= sum(len(part.lines) for bake in book.bakes for part in bake.view.parts)
    assert "/LI" in kinds
    assert "/Link" in kinds
    figures = [str(node.get("/Alt", "")) for node in nodes if str(node["/S"]) == "/Figure"]
    assert len([words for words in figures if words.startswith("QR code that leads to")]) == len(book.bakes)
    assert all(figures)


def test_no_text_leaves_its_page_lies_on_another_or_is_too_small(document: Any) -> None:
    texts = texts_of(document)
    assert min(text.size for text in texts) >= 8 * POINT - 0.001
    for text in texts:
        page = document.pages[text.page]
        assert text.left >= 15, text
        assert text.right <= page.width - 15, text
        assert text.high >= 15, text
        assert text.low <= page.height - 15, text
    by_page: dict[int, list[Any]] = {}
    for text in texts:
        by_page.setdefault(text.page, []).append(text)
    assert [pair for lines in by_page.values() for pair in overprinted(lines)] == []


def test_no_line_of_a_long_bake_is_lost(content: bytes, book: BookView) -> None:
    _is_whole(content, book, lines=28)


@pytest.mark.long
def test_no_line_of_a_bake_with_eighty_ingredients_is_lost(tmp_path: Path) -> None:
    result = check_folder(lay(tmp_path, {"the-longest": long_bake(40)}), day=DAY)
    book = book_view([result.views["the-longest"]], result.setting, title="", subject="One bake")
    for size in PAGE_SIZES:
        document = lay_out_book(book, pictures={}, size=size)
        _is_whole(to_pdf(document), book, lines=80)
        for text in texts_of(document):
            page = document.pages[text.page]
            assert 15 <= text.left <= text.right <= page.width - 15, text
            assert 15 <= text.high <= text.low <= page.height - 15, text


def _is_whole(content: bytes, book: BookView, *, lines: int) -> None:
    text = "".join(pages_of(content))
    longest = next(bake.view for bake in book.bakes if bake.view.name == "the-longest")
    told = [line for part in longest.parts for line in part.lines]
    assert len(told) == lines
    for line in told:
        assert squeezed(line.amount.weight + line.amount.volume + line.item) in text
    assert text.count("very" * 15) == lines // 2


@pytest.mark.long
def test_the_same_book_is_the_same_bytes(book: BookView) -> None:
    small = replace(book, bakes=book.bakes[:1])
    small = replace(small, declared=(), allergens=(), ingredients=(), tins=())
    first, second = (to_pdf(lay_out_book(small, pictures={}, size="a5")) for _ in range(2))
    assert first == second


@pytest.mark.long
def test_crop_marks_and_bleed_stand_outside_the_cut(book: BookView) -> None:
    small = replace(book, bakes=book.bakes[:1], declared=(), allergens=(), ingredients=(), tins=())
    page: Any = PdfReader(BytesIO(render_book_pdf(small, pictures={}, size="a5", bleed=True))).pages[0]
    cut = (float(page.trimbox.width), float(page.trimbox.height))
    assert cut == pytest.approx((419.53, 595.28), abs=0.1)
    bleed = (float(page.bleedbox.width) - cut[0]) / 2
    assert 3 * 72 / 25.4 <= bleed <= 4 * 72 / 25.4
    assert float(page.bleedbox.height) == pytest.approx(cut[1] + 2 * bleed, abs=0.1)
    # The engine draws marks in the outer half of what is beyond the cut: that half lies outside of the bleed.
    assert (float(page.mediabox.width) - cut[0]) / 4 >= bleed - 0.01
    plain: Any = PdfReader(BytesIO(render_book_pdf(small, pictures={}, size="a5"))).pages[0]
    assert float(plain.mediabox.width) == pytest.approx(cut[0], abs=0.1)


def test_a_ruled_page_keeps_its_lines_even_and_inside_the_margins(document: Any) -> None:
    pages = [page for page in document.pages if _rules(page)]
    assert pages, "this booklet has a page for notes"
    for page in pages:
        rules = _rules(page)
        assert len(rules) == PAGE_SIZES["half"].ruled - 1
        gaps = [low.position_y - high.position_y for high, low in pairwise(rules)]
        assert gaps == pytest.approx([8 * 96 / 25.4] * len(gaps), abs=0.01)
        assert all(
            each.position_x >= 40 and each.position_x + each.width <= page.width - 40 for each in rules
        )
        assert rules[-1].position_y + rules[-1].border_height() <= page.height - 15 * 96 / 25.4


def _rules(page: Any) -> list[Any]:
    return [
        box
        for box in page._page_box.descendants()
        if box.element is not None and box.element.get("class") == "rule" and box.element_tag == "div"
    ]


def test_bakes_are_placed_by_their_lengths_and_pages_come_in_fours() -> None:
    starts = {"cover": 1, "a": 4, "b": 7, "c": 10, "allergens": 11, "index": 12}
    pages, placing = _placed(starts, {"a": 2, "b": 3, "c": 1}, 1, frozenset({"a"}))
    assert pages == {"cover": 1, "a": 4, "b": 6, "c": 9, "allergens": 10, "index": 11}
    assert placing == Placing(left=frozenset("ab"), after_notes=frozenset(), tight=frozenset("a"), notes=1)
    pages, placing = _placed(starts, {"a": 3, "b": 2, "c": 1}, 1, frozenset())
    assert pages["b"] == 8
    assert (placing.after_notes, placing.notes) == (frozenset("b"), 0)


def test_the_usual_page_is_half_of_the_sites_paper() -> None:
    assert (usual_size("letter"), usual_size("a4")) == ("half", "a5")
    assert set(PAGE_SIZES) == {"half", "a5", "letter", "a4"}
