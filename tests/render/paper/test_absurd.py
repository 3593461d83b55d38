"""Three hundred recipes from tiny to absurd on everything that is printed: read back from the finished files.

No letter leaves its card, its tag or its page, none lies on another, none is below 8 points, and every amount, every
sentence and every declaration is found. A character that no face has is told with its name, and never left out.
"""

import re
import unicodedata
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import combinations, groupby
from pathlib import Path

import pytest

from generator.pipeline import CheckResult
from generator.present.book import book_view
from generator.present.tags import tag_view
from generator.render.bench_sheets.render import render_bench_sheet
from generator.render.book.pdf import render_book_pdf
from generator.render.cards.render import CARD_SIZES, card_code, lay_out_card
from generator.render.formula_sheets.render import render_formula_sheets
from generator.render.paper import to_pdf
from generator.render.tag_sheets.sheets import render_tag_sheets
from generator.render.tag_sheets.sizes import SIZE_NAMES, Grid, Size
from generator.settings import Paper
from tests.render.paper.absurd import ALL, FOREIGN, UNKNOWN, Odd, lay, understood
from tests.render.paper.printed import Ink, Printed, read_printed
from tests.render.paper.reading import label_words, squeezed, words_of

LEAST_POINTS = 8
# The least margin of what is cut or bound, less what a slanted letter leans over.
CARD_MM, PAGE_MM, BOOK_MM, TAG_MM = 4.5, 7.5, 8.0, 2.5
# How high the running heads and feet stand, which come between two parts of a sentence: see the style sheets.
HEADS: Mapping[str, tuple[float, float]] = {
    "card 4x6": (12, 9.5),
    "card 5x7": (13, 10),
    "card a6": (12, 9.5),
    "card a5": (14, 11),
    **dict.fromkeys(("bench letter", "bench a4", "formula letter", "formula a4"), (19, 14)),
    **dict.fromkeys(("book half", "book a4"), (17, 15)),
}
CARDS = tuple(f"card {size.name}" for size in CARD_SIZES)
TAGS = tuple(f"tags {name}" for name in SIZE_NAMES)
SHEETS = (*CARDS, *TAGS, "bench letter", "bench a4", "formula letter", "formula a4", "book half", "book a4")
# The longest of all on each kind of sheet, and what is short or strange on a few; the rest are read in the long run.
WORST = {
    "odd-000": ("card 4x6", "bench letter"),
    "odd-002": ("card a6", "tags card", "book half"),
    "odd-004": ("formula a4",),
    "odd-007": ("card 5x7",),
    "odd-017": ("tags ten",),
    "odd-027": ("card a6",),
}
# What joins signs to one, and asks for their colours: the signs are drawn one by one, in one colour.
_JOINERS = str.maketrans(dict.fromkeys("\u200d\ufe0f"))
# The library that reads files mirrors some brackets beside letters that run to the left.
_BRACKETS = str.maketrans(")", "(")
_LEFTWARD = re.compile("[\u0590-\u08ff]+")
_LAST_NUMBER = re.compile(r"(\d{1,2})\.$")


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A finished file, and the boxes that its letters must keep to: one a page, or the faces of the tags on it."""

    printed: Printed
    boxes: tuple[tuple[float, float, float, float], ...]
    words: tuple[str, ...]
    heads: tuple[float, float] = (0, 0)

    @property
    def texts(self) -> tuple[str, ...]:
        """What is printed between heads and feet, as drawn, and without the numbers of steps, which are drawn last:
        a page may also end with a number that is none of them. The first page has no head."""
        top, foot = self.heads
        pages = [""] * len(self.printed.pages)
        for each in in_reading_order(self.printed.ink):
            is_head = each.page > 0 and each.bottom <= top
            if not is_head and each.top < self.printed.pages[each.page][1] - foot:
                pages[each.page] += each.character
        bare = ("".join(_without_numbers(page, digits) for page in pages) for digits in (1, 2))
        return "".join(pages), *bare


def in_reading_order(ink: tuple[Ink, ...]) -> Iterator[Ink]:
    """The letters in the order in which they are read: by their places, line for line, where some run to the left.

    The library that reads the file turns such letters, and the words about them, by rules of its own.
    """
    if not any(_LEFTWARD.match(each.character) for each in ink):
        yield from ink
        return
    line: list[Ink] = []
    for each in ink:
        if line and not (each.page == line[-1].page and _beside(each, line[-1])):
            yield from _read(line)
            line = []
        line.append(each)
    yield from _read(line)


def _read(line: list[Ink]) -> Iterator[Ink]:
    placed = sorted(line, key=lambda one: one.left + one.right)
    for leftward, letters in groupby(placed, key=lambda one: bool(_LEFTWARD.match(one.character))):
        read = list(letters)
        yield from reversed(read) if leftward else read


def _beside(one: Ink, other: Ink) -> bool:
    return min(one.bottom, other.bottom) > max(one.top, other.top)


def _without_numbers(page: str, digits: int) -> str:
    """A page without the numbers of the steps that begin on it: what counts on, one by one, at its end.

    `digits` says how many the last number has; an amount may stand right before the first.
    """
    last = _LAST_NUMBER.search(page)
    number = int(last[1][-digits:]) if last else 0
    while number and page.endswith(f"{number}."):
        page, number = page.removesuffix(f"{number}."), number - 1
    return page


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    odd: Mapping[str, Odd]
    result: CheckResult


def shelf_of(root: Path, numbers: Iterable[int]) -> Shelf:
    made = lay(root, numbers)
    return Shelf(odd=made, result=understood(root))


def made(shelf: Shelf, name: str, sheet: str) -> Sheet:
    """The sheet of that name ("card 4x6") of a recipe, printed and read back."""
    view = shelf.result.views[name]
    kind, _, size = sheet.partition(" ")
    paper: Paper = "a4" if size == "a4" else "letter"
    if kind == "tags":
        return _tags(shelf, name, size)
    if kind == "card":
        measures = next(each for each in CARD_SIZES if each.name == size)
        content = to_pdf(lay_out_card(view, measures, code=card_code(view)))
        return _pages(content, CARD_MM, (*words_of(view), *label_words(view), view.keeps, view.lead), sheet)
    if kind == "bench":
        return _pages(render_bench_sheet(view, paper=paper).content, PAGE_MM, words_of(view), sheet)
    if kind == "formula":
        assert view.sheet is not None
        rows = [row for table in view.sheet.tables for row in table.rows]
        words = [f"{row.item}{row.weight}{row.of_all}" for row in rows]
        content = next(iter(render_formula_sheets(view, paper=paper))).content
        return _pages(content, PAGE_MM, (view.title, *words), sheet)
    book = book_view([view], shelf.result.setting, title="", subject="One bake")
    content = render_book_pdf(book, pictures={}, size=size)
    return _pages(content, BOOK_MM, [each for each in words_of(view) if each != view.maker], sheet)


def _pages(content: bytes, margin: float, words: Iterable[str], sheet: str = "") -> Sheet:
    printed = read_printed(content)
    boxes = tuple(
        (margin, margin, width - margin, height - margin) for width, height in dict.fromkeys(printed.pages)
    )
    assert len(boxes) == 1, "all pages are of one size"
    return Sheet(printed=printed, boxes=boxes, words=tuple(words), heads=HEADS.get(sheet, (0, 0)))


def _tags(shelf: Shelf, name: str, size: str) -> Sheet:
    result = shelf.result
    tag = tag_view(result.setting.book[name], result.setting, None)
    printed = render_tag_sheets(tag, size=size, paper="letter")
    words = (tag.recipe.title, tag.packs, tag.recipe.statement_of_place, *label_words(tag.recipe))
    if printed.size is None:
        return _pages(printed.content, PAGE_MM, words)
    return Sheet(
        printed=read_printed(printed.content),
        boxes=tuple(_faces(printed.size)),
        words=tuple(words),
    )


def _faces(size: Size) -> Iterator[tuple[float, float, float, float]]:
    grid = Grid(size=size, paper="letter")
    for place in grid.places(second=False):
        right, bottom = place.left + size.open_width, place.top + size.height
        yield place.left + TAG_MM, place.top + TAG_MM, right - TAG_MM, bottom - TAG_MM


def faults(sheet: Sheet) -> list[str]:
    """What is amiss on a sheet, in words."""
    ink, texts = sheet.printed.ink, sheet.texts
    assert ink, "nothing is printed"
    found = [f"“{_near(ink, each)}” leaves its box" for each in ink if not _inside(each, sheet.boxes)]
    found += [
        f"“{_near(ink, each)}” is of {each.size:.2f} points"
        for each in ink
        if each.size < LEAST_POINTS - 0.01
    ]
    brackets = _BRACKETS if any(_LEFTWARD.search(text) for text in texts) else {}
    texts = tuple(text.translate(brackets) for text in texts)
    words = {word: squeezed(word.translate(_JOINERS).translate(brackets)) for word in sheet.words}
    found += [
        f"“{word}” is lost" for word, letters in words.items() if not any(letters in text for text in texts)
    ]
    found += [f"“{_near(ink, one)}” lies on “{_near(ink, other)}”" for one, other in overprinted(ink)]
    return found


def _inside(ink: Ink, boxes: Iterable[tuple[float, float, float, float]]) -> bool:
    return any(
        left <= ink.left and top <= ink.top and ink.right <= right and ink.bottom <= bottom
        for left, top, right, bottom in boxes
    )


def _near(ink: tuple[Ink, ...], one: Ink) -> str:
    at = ink.index(one)
    return "".join(each.character for each in ink[max(at - 8, 0) : at + 8])


def overprinted(ink: Iterable[Ink]) -> Iterator[tuple[Ink, Ink]]:
    """Pairs of which one covers more than a third of the other. The letters of a ligature share one box."""
    cells: dict[tuple[int, int, int], list[tuple[int, Ink]]] = defaultdict(list)
    for at, each in enumerate(ink):
        cells[each.page, int(each.left // 4), int(each.top // 4)].append((at, each))
    for near in cells.values():
        for (at, one), (after, other) in combinations(near, 2):
            across = min(one.right, other.right) - max(one.left, other.left)
            down = min(one.bottom, other.bottom) - max(one.top, other.top)
            least = min(_area(one), _area(other))
            if after - at > 2 and across > 0 and down > 0 and across * down > least / 3 > 0:
                yield one, other


def _area(ink: Ink) -> float:
    return (ink.right - ink.left) * (ink.bottom - ink.top)


@pytest.fixture(scope="module")
def worst(tmp_path_factory: pytest.TempPathFactory) -> Shelf:
    numbers = sorted({*(int(name[-3:]) for name in WORST), *UNKNOWN})
    return shelf_of(tmp_path_factory.mktemp("odd"), numbers)


@pytest.mark.parametrize(
    ("name", "sheet"), [(name, each) for name, sheets in WORST.items() for each in sheets]
)
def test_the_worst_of_them_keep_to_their_boxes_and_lose_nothing(worst: Shelf, name: str, sheet: str) -> None:
    assert faults(made(worst, name, sheet)) == []


def test_a_character_without_a_glyph_is_told_by_its_name(worst: Shelf) -> None:
    for number, words in UNKNOWN.items():
        told = [each for each in worst.result.diagnostics if each.span.path == f"recipes/odd-{number}.md"]
        named = {each.message for each in told if each.code == "B001"}
        unknown = set(words) - {"\U0001f3f4"}
        assert len(named) == len([each for each in unknown if not each.isascii()]) > 0
        for character in unknown:
            if not character.isascii():
                called = f"U+{ord(character):04X} {unicodedata.name(character).lower()}"
                assert any(called in message for message in named)
    others = {f"recipes/{name}.md" for name, odd in worst.odd.items() if odd.foreign not in UNKNOWN.values()}
    assert not [each for each in worst.result.diagnostics if each.code == "B001" and each.span.path in others]


def test_the_reader_sees_what_is_amiss(worst: Shelf) -> None:
    """The proof itself: a letter out of its box, one too small, a lost line and two on each other are found."""
    sheet = made(worst, "odd-002", "card a6")
    ink = (
        Ink(page=0, character="A", left=1.0, top=50.0, right=3.0, bottom=53.0, size=9.0),
        Ink(page=0, character="B", left=50.0, top=50.0, right=52.0, bottom=53.0, size=7.9),
        *sheet.printed.ink[1:4],
        Ink(page=0, character="C", left=50.5, top=50.5, right=52.5, bottom=53.5, size=9.0),
    )
    wrong = Sheet(printed=Printed(pages=((105, 148),), ink=ink, text="ABC"), boxes=sheet.boxes, words=("D",))
    told = " ".join(faults(wrong))
    for words in ("leaves its box", "is of 7.90 points", "“D” is lost", "lies on"):
        assert words in told


@pytest.mark.long
def test_all_of_them_keep_to_their_boxes_and_lose_nothing(tmp_path: Path) -> None:
    """Every recipe on every sheet: some hours."""
    shelf = shelf_of(tmp_path, range(ALL))
    assert {odd.foreign for odd in shelf.odd.values()} == {"", *FOREIGN.values()}
    found = {
        (name, sheet): amiss
        for name in shelf.odd
        for sheet in SHEETS
        if (amiss := faults(made(shelf, name, sheet)))
    }
    assert found == {}
