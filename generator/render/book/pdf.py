"""A book on paper: laid out once to learn how many pages each bake takes, and once with each in its place."""

from collections.abc import Mapping, Sequence
from typing import Any

from generator.present.book import BookBake, BookPlace, BookView
from generator.present.correction_views import since_anchor
from generator.render.book.page_size import PAGE_SIZES, PageSize
from generator.render.book.told import ToldBake, Within, places_of, told_bake
from generator.render.paper import PICTURE, PaperFault, fill, lay_out, pdf_moment, to_pdf
from generator.render.paper_words import on_paper
from generator.render.qr import qr_code
from generator.render.theme import DEFAULT

# The width of one module of the code, in millimetres; see the sizes of cards.
_MODULE_MM = 0.45
# The sheet of a folded booklet has four pages.
_FOLDED = 4
_LAST = "allergens"
# Printed numbers are put in as words: counters that look ahead would lay the whole book out once for each change.
_NOT_YET = "88"
_TRIES = 4


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

    def laid(left: frozenset[str], notes: int, pages: Mapping[str, int]) -> Any:
        html = _html(book, bakes, page, left=left, notes=notes, pages=pages, bleed=bleed, theme=theme)
        return lay_out(html, "docket.css", "book/book.css", theme=theme, pictures=pictures)

    anchors = [each.anchor for each in bakes]
    told: Mapping[str, int] = {}
    document = laid(frozenset(), 0, told)
    starts = first_pages(document)
    left = _at_the_left(starts, anchors)
    pages = _moved(starts, anchors, left)
    blank = pages[_LAST] - starts[_LAST]
    notes = -(len(document.pages) + blank) % _FOLDED
    for _ in range(_TRIES):
        told, document = pages, laid(left, notes, pages)
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


def _at_the_left(starts: Mapping[str, int], anchors: Sequence[str]) -> frozenset[str]:
    """The bakes that take several pages."""
    ends = [starts[each] for each in (*anchors[1:], _LAST)]
    return frozenset(each for each, end in zip(anchors, ends, strict=True) if end - starts[each] > 1)


def _moved(starts: Mapping[str, int], anchors: Sequence[str], left: frozenset[str]) -> dict[str, int]:
    """The pages as they will be: one stays empty before each bake of `left` that would begin at the right."""
    pages, blank = {}, 0
    for anchor, page in sorted(starts.items(), key=lambda each: each[1]):
        if anchor in left and (page + blank) % 2:
            blank += 1
        pages[anchor] = page + blank
    return pages


def _told(bake: BookBake, pictures: Mapping[str, bytes]) -> ToldBake:
    view = bake.view
    code = None
    if view.on_site:
        title = f"QR code that leads to {view.url} and to what changed since revision {view.revision}"
        code = qr_code(f"{view.url}#{since_anchor(view.revision)}", title=title)
    picture = f"{PICTURE}{bake.anchor}" if bake.anchor in pictures else ""
    return told_bake(bake, picture=picture, code=code, code_side=code.side_mm(_MODULE_MM) if code else 0)


def _html(
    book: BookView,
    bakes: Sequence[ToldBake],
    page: PageSize,
    *,
    left: frozenset[str],
    notes: int,
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
        left=left,
        notes=notes,
        bleed=bleed,
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
