"""Cards on sheets, measured in the printed file: they lie where they are cut, and a back lies behind its front."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from io import BytesIO
from typing import Any

import pypdfium2 as pdfium
import pytest
from pypdf import PdfReader

from generator.render.cards.grid import ARM_MM, GAP_MM, SHEETS_MM, card_grid
from generator.render.cards.sheets import CardSheets, lay_out_card_sheets
from generator.render.imposed import impose
from generator.render.paper import PaperFault
from tests.render.paper.conftest import Sheets
from tests.render.paper.reading import squeezed, structure_of, words_of
from tests.render.paper.sample import TINY, TYPICAL
from tests.render.paper.structure import structure_faults

MM = 25.4 / 72
# Millimetres: 4 × 6 in, 5 × 7 in, and ISO 216.
SIZES = {"4x6": (101.6, 152.4), "5x7": (127.0, 177.8), "a6": (105.0, 148.0), "a5": (148.0, 210.0)}


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """Where words stand on a page, in millimetres from its left upper corner, and the way that they run."""

    x: float
    y: float
    runs: tuple[int, int]

    @property
    def up(self) -> tuple[int, int]:
        return self.runs[1], -self.runs[0]


def found(content: bytes, words: str) -> Iterator[tuple[int, Found]]:
    """Every place at which the words are printed, with its page."""
    document = pdfium.PdfDocument(content)
    for number in range(len(document)):
        page = document[number]
        search = page.get_textpage().search(words, match_case=True)
        while (hit := search.get_next()) is not None:
            at, count = hit
            boxes = [search.textpage.get_charbox(each) for each in (at, at + count - 1)]
            centres = [
                ((left + right) / 2 * MM, (page.get_height() - (low + high) / 2) * MM)
                for left, low, right, high in boxes
            ]
            (x, y), (right, low) = centres
            level = abs(right - x) > abs(low - y)
            runs = (1 if right > x else -1, 0) if level else (0, 1 if low > y else -1)
            yield number, Found(x=x, y=y, runs=runs)


def on(content: bytes, page: int, words: str) -> Found:
    (place,) = [place for number, place in found(content, words) if number == page]
    return place


def corner(alone: Found, lying: Found, size: str) -> tuple[float, float]:
    """Where the room of a card begins on its sheet, from words on the card alone and on the sheet."""
    width, height = SIZES[size]
    if lying.up == (0, -1):
        return lying.x - alone.x, lying.y - alone.y
    if lying.up == (1, 0):
        return lying.x - (height - alone.y), lying.y - alone.x
    assert lying.up == (-1, 0)
    return lying.x - alone.y, lying.y - (width - alone.x)


def laid(*views: Any, size: str, paper: Any, copies: int = 1) -> CardSheets:
    return lay_out_card_sheets(
        views, size=size, paper=paper, title="Two bakes", maker="M", language="en-US", copies=copies
    )


@pytest.fixture(scope="module", params=["4x6 letter", "5x7 a4", "a6 a4"])
def sheets(request: pytest.FixtureRequest) -> tuple[str, Any, CardSheets, bytes]:
    """A bake of three sides and one of one, on sheets that take turned cards and on such that take upright ones."""
    size, paper = request.param.split()
    made = laid(TYPICAL, TINY, size=size, paper=paper)
    return size, paper, made, made.content


def test_a_back_lies_behind_its_front(
    sheets: tuple[str, Any, CardSheets, bytes], printed: Mapping[tuple[str, str], bytes]
) -> None:
    size, paper, _, content = sheets
    alone = printed[TYPICAL.name, f"card-{size}"]
    words = [f"side {side} of 3" for side in (1, 2)]
    front, back = (on(content, page, each) for page, each in enumerate(words))
    ends = [
        corner(on(alone, page, each), lying, size)
        for page, (each, lying) in enumerate(zip(words, (front, back), strict=True))
    ]
    room = SIZES[size][0 if front.up == (0, -1) else 1]
    behind = (SHEETS_MM[paper][0] - ends[1][0] - room, ends[1][1])
    assert behind == pytest.approx(ends[0], abs=0.1)
    # Turned over the long edge left and right change places; the head of the card is the same on both sides.
    assert (-back.up[0], back.up[1]) == front.up


def test_every_card_lies_in_its_place_on_the_sheet(
    sheets: tuple[str, Any, CardSheets, bytes], printed: Mapping[tuple[str, str], bytes]
) -> None:
    size, paper, made, content = sheets
    grid = card_grid(paper, width=SIZES[size][0], height=SIZES[size][1])
    wanted = ((TYPICAL, "side 1 of 3", 0), (TYPICAL, "side 3 of 3", 1), (TINY, "side 1 of 1", 2))
    for view, words, number in wanted:
        alone = printed[view.name, f"card-{size}"]
        page = (number // grid.cards) * 2
        place = grid.places(back=False)[number % grid.cards]
        where = corner(next(place for _, place in found(alone, words)), on(content, page, words), size)
        assert where == pytest.approx((place.left, place.top), abs=0.1)
    assert (made.cards, made.sheets, made.backs) == (3, 1 if size == "a6" else 2, True)


def test_a_bake_of_more_than_two_sides_says_which_card_each_is(
    sheets: tuple[str, Any, CardSheets, bytes],
) -> None:
    content = sheets[3]
    assert [page for page, _ in found(content, "card 1 of 2")] == [0, 1]
    assert len(list(found(content, "card 2 of 2"))) == 1
    assert list(found(content, "of 1,")) == []


def test_no_word_is_lost_and_none_is_told_twice(sheets: tuple[str, Any, CardSheets, bytes]) -> None:
    content = sheets[3]
    # Turned lines are read in their order by this reader alone.
    text = squeezed("".join(page.extract_text() for page in PdfReader(BytesIO(content)).pages))
    words = [squeezed(each) for view in (TYPICAL, TINY) for each in words_of(view)]
    assert [each for each in words if each not in text] == []
    kinds = [str(node["/S"]) for node in structure_of(content)]
    assert structure_faults(content, titles=2) == []
    assert kinds.count("/TH") >= sum(len(part.lines) for view in (TYPICAL, TINY) for part in view.parts)


def test_a_sheet_tells_its_title_its_language_and_how_it_is_printed(
    sheets: tuple[str, Any, CardSheets, bytes],
) -> None:
    size, paper, made, content = sheets
    reader = PdfReader(BytesIO(content))
    root: Any = reader.root_object
    told: Any = reader.metadata
    assert (told["/Title"], told["/Author"], root["/Lang"]) == ("Two bakes", "M", "en-US")
    assert root["/MarkInfo"] == {"/Marked": True}
    wishes = root["/ViewerPreferences"]
    assert (wishes["/Duplex"], wishes["/PrintScaling"]) == ("/DuplexFlipLongEdge", "/None")
    assert bool(wishes["/DisplayDocTitle"])
    marks: Any = reader.outline
    assert [str(each["/Title"]) for each in marks] == [TYPICAL.title, TINY.title]
    text = squeezed("".join(page.extract_text() for page in reader.pages))
    words = squeezed("Printed on both sides, turned over the long edge. Cut at the marks.")
    assert (text.count(words) == len(reader.pages)) == made.has_words == (size != "a6")
    for page in reader.pages:
        assert (float(page.mediabox.width) * MM, float(page.mediabox.height) * MM) == pytest.approx(
            SHEETS_MM[paper], abs=0.05
        )


def test_a_card_of_one_side_has_an_empty_back() -> None:
    content = laid(replace(TYPICAL, ways=()), TINY, size="a5", paper="a4").content
    assert {page for page, _ in found(content, TINY.title)} == {0}
    alone = laid(TINY, size="4x6", paper="letter")
    assert (alone.backs, len(alone.document.pages)) == (False, 1)
    root: Any = PdfReader(BytesIO(alone.content)).root_object
    assert "/Duplex" not in root["/ViewerPreferences"]


def test_copies_fill_the_sheet_and_are_read_once() -> None:
    made = laid(TINY, size="a6", paper="a4", copies=5)
    content = made.content
    assert (made.cards, made.sheets) == (5, 2)
    assert [page for page, _ in found(content, "Vanilla sugar") if page == 0] == [0] * 4
    assert [str(node["/S"]) for node in structure_of(content)].count("/H1") == 1


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("size", SIZES)
def test_cards_keep_apart_and_marks_stay_outside(size: str, paper: Any) -> None:
    grid = card_grid(paper, width=SIZES[size][0], height=SIZES[size][1])
    width, height = SHEETS_MM[paper]
    fronts, backs = grid.places(back=False), grid.places(back=True)
    assert len(set(fronts)) == grid.cards >= 1
    for front, back in zip(fronts, backs, strict=True):
        assert (width - back.left - grid.width, back.top) == pytest.approx((front.left, front.top))
        assert 0 <= front.left <= width - grid.width + 0.001
        assert 0 <= front.top <= height - grid.height + 0.001
    low, high = grid.corner[0], grid.corner[0] + grid.columns * grid.width
    if grid.corner[0] > GAP_MM + ARM_MM:
        assert all(each.left + each.long <= low or each.left >= high for each in grid.marks() if each.level)
    assert all(0 <= each.left <= width and 0 <= each.top <= height for each in grid.marks())


def test_the_way_that_holds_most_cards_is_taken() -> None:
    held = {
        (size, paper): card_grid(paper, width=SIZES[size][0], height=SIZES[size][1]).cards
        for size in SIZES
        for paper in SHEETS_MM
    }
    assert {key: held[key] for key in held if key[1] == "a4"} == {
        ("4x6", "a4"): 2,
        ("5x7", "a4"): 2,
        ("a6", "a4"): 4,
        ("a5", "a4"): 2,
    }
    assert [held[size, "letter"] for size in SIZES] == [2, 2, 2, 1]


def test_sheets_and_what_lies_on_them_must_agree(documents: Sheets) -> None:
    with pytest.raises(PaperFault, match="2 sheets took 1 pages"):
        impose(documents[TINY.name, "card-4x6"], [(), ()])
