"""A book as EPUB 3.3: one page for each bake, contents, allergens, indexes; no scripts, nothing from elsewhere."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any
from urllib.parse import urljoin
from uuid import NAMESPACE_URL, uuid5

from markupsafe import Markup

from generator.present.book import BookPlace, BookView
from generator.present.views import Rich
from generator.render.book.cover import draw_cover
from generator.render.book.package import packed
from generator.render.book.told import ToldBake, Within, places_of, told_bake
from generator.render.paper import fill
from generator.render.rich_text import rich_html
from generator.render.theme import DEFAULT, theme_file

_PAGE, _JPEG = "application/xhtml+xml", "image/jpeg"
# What the Markdown of a maker becomes: pictures stand by their words, and elements without an end are closed.
_PICTURE = re.compile(r'<img [^>]*?alt="([^"]*)"[^>]*>')
_OPEN = re.compile(r"<(br|hr)\s*/?>")
# XML 1.0 has no other signs below the space.
_NOT_XML = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff]")
_FEATURES = ("tableOfContents", "structuralNavigation", "readingOrder", "index", "displayTransformability")
_UNDATED = "1970-01-01"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Item:
    """A part of the book; `read` is whether it stands in the order of reading."""

    name: str
    media: str
    content: bytes
    read: bool = False
    properties: str = ""

    @property
    def id(self) -> str:
        """An XML name: letters, digits, hyphens."""
        return "part-" + re.sub(r"[^A-Za-z0-9-]", "-", self.name)


def render_book_epub(book: BookView, *, pictures: Mapping[str, bytes], theme: str = DEFAULT) -> bytes:
    """The bytes of the EPUB. `pictures` are JPEGs by the anchor of their bake. The book has a bake at least."""
    bakes = tuple(
        told_bake(each, picture=f"{each.anchor}.jpg" if each.anchor in pictures else "")
        for each in book.bakes
    )
    items = tuple(_items(book, bakes, pictures, theme))
    package = fill(
        "package.opf",
        theme=theme,
        kind="book",
        book=book,
        items=items,
        pictures=bool(pictures),
        features=(*_FEATURES, "alternativeText"),
        identifier=uuid5(NAMESPACE_URL, " ".join((book.url, *(each.anchor for each in bakes)))).urn,
        modified=f"{book.modified or _UNDATED}T12:00:00Z",
    )
    return packed((("package.opf", _xml(package)), *((each.name, each.content) for each in items)))


def _items(
    book: BookView, bakes: Sequence[ToldBake], pictures: Mapping[str, bytes], theme: str
) -> Iterator[_Item]:
    at = _within(book)

    def page(name: str, title: str, kind: str = "", file: str = "", **values: Any) -> _Item:
        html = fill(
            f"{name}.xhtml", theme=theme, kind="book", book=book, at=at, title=title, body=kind, **values
        )
        extra = "nav" if name == "nav" else "svg" if "<svg" in html else ""
        return _Item(
            name=file or f"{name}.xhtml", media=_PAGE, content=_xml(html), read=True, properties=extra
        )

    yield page("cover", book.title, "cover")
    yield page("inside", book.title, "frontmatter")
    yield page("nav", book.title, bakes=bakes)
    for told in bakes:
        yield page("bake", told.view.title, "bodymatter", f"{told.anchor}.xhtml", told=told)
    yield page("allergens", book.title, "backmatter")
    yield page("index", book.title, "backmatter")
    for anchor, picture in pictures.items():
        yield _Item(name=f"{anchor}.jpg", media=_JPEG, content=picture)
    cover = draw_cover(book)
    yield _Item(name="cover.png", media="image/png", content=cover, properties="cover-image")
    style = theme_file(theme, "book", "epub.css").read_bytes()
    yield _Item(name="book.css", media="text/css", content=style)


def _within(book: BookView) -> Within:
    return Within(
        url=book.url,
        numbered=False,
        address=_file,
        prose=lambda words: _prose(words, book.url),
        places=places_of(book),
        page=lambda anchor: "",
    )


def _file(place: BookPlace) -> str:
    return f"{place.anchor}.xhtml"


def _prose(words: Rich, home: str) -> Markup:
    html = str(rich_html(words, level=6, place=lambda path: urljoin(home, path)))
    return Markup(_OPEN.sub(r"<\1/>", _PICTURE.sub(r"\1", html)))


def _xml(text: str) -> bytes:
    return _NOT_XML.sub("", text).lstrip().encode()
