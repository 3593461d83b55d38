"""Cards of several bakes, several on a sheet: fronts, and behind each its back, as a sheet turned over shows them.

A card of paper has two sides. A bake of more sides takes several cards, each of which says which it is.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from math import ceil
from typing import Any

from generator.present.views import RecipeView
from generator.render.cards.grid import SHEETS_MM, CardGrid, Mark, Place, card_grid
from generator.render.cards.render import CARD_SIZES, card_code, lay_out_card
from generator.render.imposed import HEAD_LEFT, HEAD_RIGHT, UPRIGHT, Placed, impose
from generator.render.paper import PaperFault, fill, lay_out, pdf_moment, to_pdf
from generator.render.theme import DEFAULT
from generator.settings import Paper

_MM = 25.4 / 96
# The words at the head of a sheet stand this far inside the outer cards, and begin this far above them.
_WORDS_IN_MM, _WORDS_UP_MM = 2, 6.4


@dataclass(frozen=True, slots=True, kw_only=True)
class CardSheets:
    """`cards` are those of paper; `backs` is whether any of them has one, so that every sheet is printed twice."""

    document: Any
    cards: int
    sheets: int
    backs: bool
    has_words: bool

    @property
    def content(self) -> bytes:
        return to_pdf(self.document, turned_over_long_edge=self.backs)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Card:
    """One card of paper: the laid-out pages of its sides, and for each the words which card of its bake it is."""

    front: tuple[Any, ...]
    back: tuple[Any, ...] = ()
    again: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class _Told:
    """What the ground says and shows of one page."""

    number: int
    back: bool
    marks: tuple[Mark, ...]


def lay_out_card_sheets(
    views: Sequence[RecipeView],
    *,
    size: str,
    paper: Paper,
    title: str,
    maker: str,
    language: str,
    copies: int = 1,
    theme: str = DEFAULT,
) -> CardSheets:
    """The cards of these bakes in their order, `copies` of each. There is at least one bake."""
    cards = [card for view in views for card in _cards(view, size, theme=theme)]
    width, height = (_MM * side for side in (cards[0].front[0].width, cards[0].front[0].height))
    grid = card_grid(paper, width=width, height=height)
    lying = [
        _Card(front=card.front, back=card.back, again=number > 0)
        for card in cards
        for number in range(copies)
    ]
    backs = any(card.back for card in lying)
    groups = [lying[at : at + grid.cards] for at in range(0, len(lying), grid.cards)]
    sides = [
        (number, back) for number in range(len(groups)) for back in ((False, True) if backs else (False,))
    ]
    ground = _ground(sides, grid, views, title=title, maker=maker, language=language, theme=theme)
    placed = [tuple(_placed(groups[number], grid, back=back)) for number, back in sides]
    return CardSheets(
        document=impose(ground, placed),
        cards=len(lying),
        sheets=len(groups),
        backs=backs,
        has_words=grid.has_words,
    )


def _cards(view: RecipeView, size: str, *, theme: str) -> Iterator[_Card]:
    """The cards of paper that a bake takes, laid out once."""
    measures = next(each for each in CARD_SIZES if each.name == size)
    pages = lay_out_card(view, measures, code=card_code(view) if view.on_site else None, theme=theme).pages
    cards = ceil(len(pages) / 2)
    labels = _labels(view, len(pages), cards, size, theme=theme)
    sides = [(page, *label) for page, label in zip(pages, labels, strict=True)]
    for at in range(0, len(sides), 2):
        yield _Card(front=sides[at], back=sides[at + 1] if at + 1 < len(sides) else ())


def _labels(view: RecipeView, sides: int, cards: int, size: str, *, theme: str) -> list[tuple[Any, ...]]:
    """For each side a page as large as the card that says which card it is; nothing where there is one alone."""
    if cards == 1:
        return [()] * sides
    numbers = [number // 2 + 1 for number in range(sides)]
    html = fill("card-labels.html", theme=theme, view=view, size=size, numbers=numbers, cards=cards)
    pages = lay_out(html, "card-sheet.css", theme=theme).pages
    if len(pages) != sides:
        raise PaperFault(f"{sides} sides of a card have {len(pages)} labels")
    return [(page,) for page in pages]


def _ground(
    sides: Sequence[tuple[int, bool]],
    grid: CardGrid,
    views: Sequence[RecipeView],
    *,
    title: str,
    maker: str,
    language: str,
    theme: str,
) -> Any:
    """The sheets without the cards: marks, and what to do with them."""
    created, modified = _days(views)
    html = fill(
        "card-sheet.html",
        theme=theme,
        title=title,
        maker=maker,
        language=language,
        created=pdf_moment(created),
        modified=pdf_moment(modified),
        sheet=SHEETS_MM[grid.paper],
        head=Place(left=grid.corner[0] + _WORDS_IN_MM, top=grid.corner[1] - _WORDS_UP_MM),
        width=grid.columns * grid.width - 2 * _WORDS_IN_MM,
        has_words=grid.has_words,
        backs=any(back for _, back in sides),
        sheets=sides[-1][0] + 1,
        pages=[_Told(number=number + 1, back=back, marks=tuple(grid.marks())) for number, back in sides],
    )
    return lay_out(html, "card-sheet.css", theme=theme)


def _days(views: Sequence[RecipeView]) -> tuple[date | None, date | None]:
    """The first and the last day that the cards speak of."""
    first = [view.published for view in views if view.published]
    last = [day for view in views for day in (view.published, view.updated) if day]
    return min(first, default=None), max(last, default=None)


def _placed(cards: Sequence[_Card], grid: CardGrid, *, back: bool) -> Iterator[Placed]:
    """What lies on one page of a sheet. A card without a back leaves its place there empty."""
    lies = (HEAD_LEFT if back else HEAD_RIGHT) if grid.turned else UPRIGHT
    for place, card in zip(grid.places(back=back), cards, strict=False):
        yield from _pages(card.back if back else card.front, place, lies, again=card.again)


def _pages(
    pages: Sequence[Any], place: Place, lies: tuple[float, float, float, float], *, again: bool
) -> Iterator[Placed]:
    for page in pages:
        yield Placed(page=page, left=place.left, top=place.top, lies=lies, again=again)
