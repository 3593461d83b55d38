"""What the templates of a book ask beside its view."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from markupsafe import Markup

from generator.present.book import BookBake, BookPlace, BookView
from generator.present.views import RecipeView, Rich, WayView
from generator.render.paper_words import (
    Columns,
    all_ways,
    columns,
    loose_cautions,
    running_title,
    runs_html,
    runs_of,
    unsaid_uses,
)
from generator.render.qr import QrCode
from generator.render.rich_text import tied


@dataclass(frozen=True, slots=True, kw_only=True)
class ToldBake:
    """A bake as its template needs it. `picture` is the address of its photograph in this book, or "".

    `running` is its title as the head of its pages has room for it.
    """

    anchor: str
    running: str
    view: RecipeView
    columns: Columns
    cautions: tuple[str, ...]
    ways: tuple[WayView, ...]
    picture: str
    code: QrCode | None = None
    code_side: float = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Within:
    """Where the words stand. `numbered` is whether a place is told by its page; `places` are those in this book,
    `page` is the number of the page that an anchor stands on."""

    url: str
    numbered: bool
    address: Callable[[BookPlace], str]
    prose: Callable[[Rich], Markup]
    places: Mapping[str, BookPlace]
    page: Callable[[str], str]
    tied: Callable[[str], str] = field(default=tied)
    runs_of: Callable[..., Any] = field(default=runs_of)
    runs_html: Callable[..., Markup] = field(default=runs_html)
    unsaid_uses: Callable[..., Any] = field(default=unsaid_uses)


def told_bake(
    bake: BookBake, *, picture: str = "", code: QrCode | None = None, code_side: float = 0
) -> ToldBake:
    view = bake.view
    return ToldBake(
        anchor=bake.anchor,
        running=running_title(view.title),
        view=view,
        columns=columns(view),
        cautions=loose_cautions(view),
        ways=all_ways(view),
        picture=picture,
        code=code,
        code_side=code_side,
    )


def places_of(book: BookView) -> dict[str, BookPlace]:
    """The bakes of the book by the path of their page."""
    return {each.view.path: BookPlace(title=each.view.title, anchor=each.anchor) for each in book.bakes}
