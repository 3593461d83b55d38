"""A book on paper: laid out once to learn how many pages each bake takes, and once with each in its place."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from generator.present.book import BookBake, BookPlace, BookView
from generator.present.correction_views import since_anchor
from generator.render.book.page_size import BLEED_AND_MARKS, PAGE_SIZES, PageSize
from generator.render.book.told import ToldBake, Within, places_of, told_bake
from generator.render.paper import PICTURE, PaperFault, fill, lay_out, pdf_moment, to_pdf
from generator.render.paper_words import on_paper
from generator.render.qr import qr_code
from generator.render.theme import DEFAULT
from generator.wording.speech import say

# The width of one module of the code, in millimetres; see the sizes of cards.
_MODULE_MM = 0.45
# The sheet of a folded booklet has four pages; what lies open has two.
_FOLDED, _SPREAD = 4, 2
_LAST = "allergens"
# Printed numbers are put in as words: counters that look ahead would lay the whole book out once for each change.
_NOT_YET = "88"
_TRIES = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Placing:
    """How the bakes lie, by their anchors: which begin at the left, which follow a ruled page, which have a low
    picture; and how many ruled pages stand at the end."""

    left: frozenset[str] = frozenset()
    after_notes: frozenset[str] = frozenset()
    tight: frozenset[str] = frozenset()
    notes: int = 0


def render_book_pdf(
    book: BookView,
    *,
    pictures: Mapping[str, bytes],
    size: str,
    bleed: bool = False,
    theme: str = DEFAULT,
) -> bytes:
    """The bytes of the booklet. `pictures` are JPEGs by the anchor of their bake."""
    return to_pdf(lay_out_book(book, pictures=pictures, size=size, bleed=bleed, theme=theme))


def lay_out_book(
    book: BookView,
    *,
    pictures: Mapping[str, bytes],
    size: str,
    bleed: bool = False,
    theme: str = DEFAULT,
) -> Any:
    """The booklet as a laid-out document: bakes of several pages begin at the left, pages come in fours."""
    page = PAGE_SIZES[size]
    bakes = tuple(_told(each, pictures) for each in book.bakes)

    def laid(some: Sequence[ToldBake], placing: Placing, pages: Mapping[str, int]) -> Any:
        html = _html(book, some, page, placing=placing, pages=pages, bleed=bleed, theme=theme)
        return lay_out(html, "docket.css", "book/book.css", theme=theme, pictures=pictures)

    document = laid(bakes, Placing(), {})
    starts = first_pages(document)
    lengths = _lengths(starts, bakes)
    tight = _tight(lengths, bakes, laid)
    lengths |= tight
    last = len(document.pages) - starts[_LAST]
    pages, placing = _placed(starts, lengths, last, frozenset(tight))
    for _ in range(_TRIES):
        told, document = pages, laid(bakes, placing, pages)
        pages = first_pages(document)
        if pages == told:
            return document
    raise PaperFault("the pages of a book do not settle")


def first_pages(document: Any) -> dict[str, int]:
    """The page that each anchor stands on, counted from 1."""
    found: dict[str, int] = {}
    for number, page in enumerate(document.pages, start=1):
        for anchor in page.anchors:
            found.setdefault(anchor, number)
    return found


def _lengths(starts: Mapping[str, int], bakes: Sequence[ToldBake]) -> dict[str, int]:
    """How many pages each bake takes."""
    anchors = [each.anchor for each in bakes]
    ends = [starts[each] for each in (*anchors[1:], _LAST)]
    return {each: end - starts[each] for each, end in zip(anchors, ends, strict=True)}


def _tight(lengths: Mapping[str, int], bakes: Sequence[ToldBake], laid: Callable[..., Any]) -> dict[str, int]:
    """The bakes that a lower picture brings back to two pages, with that length."""
    long = [each for each in bakes if each.picture and lengths[each.anchor] == _SPREAD + 1]
    if not long:
        return {}
    starts = first_pages(laid(long, Placing(tight=frozenset(each.anchor for each in long)), {}))
    return {anchor: pages for anchor, pages in _lengths(starts, long).items() if pages <= _SPREAD}


def _placed(
    starts: Mapping[str, int], lengths: Mapping[str, int], last: int, tight: frozenset[str]
) -> tuple[dict[str, int], Placing]:
    """The page of each anchor, where bakes of several pages begin at the left; `last` pages follow `_LAST`."""
    pages = {anchor: page for anchor, page in starts.items() if page < min(starts[each] for each in lengths)}
    page, after_notes = min(starts[each] for each in lengths), set()
    for anchor, length in lengths.items():
        if length > 1 and page % 2:
            after_notes.add(anchor)
            page += 1
        pages[anchor] = page
        page += length
    pages |= {anchor: page + at - starts[_LAST] for anchor, at in starts.items() if at >= starts[_LAST]}
    placing = Placing(
        left=frozenset(anchor for anchor, length in lengths.items() if length > 1),
        after_notes=frozenset(after_notes),
        tight=tight,
        notes=-(page + last) % _FOLDED,
    )
    return pages, placing


def _told(bake: BookBake, pictures: Mapping[str, bytes]) -> ToldBake:
    view = bake.view
    code = None
    if view.on_site:
        title = say(
            "QR code that leads to {address} and to what changed since revision {revision}",
            address=view.url,
            revision=view.revision,
        )
        code = qr_code(f"{view.url}#{since_anchor(view.revision)}", title=title)
    picture = f"{PICTURE}{bake.anchor}" if bake.anchor in pictures else ""
    return told_bake(bake, picture=picture, code=code, code_side=code.side_mm(_MODULE_MM) if code else 0)


def _html(
    book: BookView,
    bakes: Sequence[ToldBake],
    page: PageSize,
    *,
    placing: Placing,
    pages: Mapping[str, int],
    bleed: bool,
    theme: str,
) -> str:
    return fill(
        "book.html",
        theme=theme,
        kind="book",
        book=book,
        bakes=bakes,
        page=page,
        placing=placing,
        bleed=BLEED_AND_MARKS if bleed else "",
        created=pdf_moment(book.created),
        modified=pdf_moment(book.modified),
        at=Within(
            url=book.url,
            numbered=True,
            address=_anchor,
            prose=lambda words: on_paper(words, book.url),
            places=places_of(book),
            page=lambda anchor: str(pages.get(anchor, _NOT_YET)),
        ),
    )


def _anchor(place: BookPlace) -> str:
    return f"#{place.anchor}"
