"""Pieces of HTML for the texts of a feed. Plain elements only: feed readers have no style of ours."""

from collections.abc import Iterable

from markupsafe import Markup

from generator.present.views import PhotoView, Rich
from generator.render.feeds.places import absolute, uri
from generator.render.rich_text import prose_html, rich_html, tied

# The title of the entry stands above its text, so headings begin below it.
_HEADING = 2


def link(words: str, url: str) -> Markup:
    return Markup('<a href="{}">{}</a>').format(uri(url), words)


def items(lines: Iterable[Markup], *, kind: str = "ul") -> Markup:
    """A list, or nothing where there is no line."""
    told = Markup().join(Markup("<li>{}</li>\n").format(line) for line in lines)
    return Markup("<{0}>\n{1}</{0}>\n").format(Markup(kind), told) if told else Markup()


def headed(heading: str, content: Markup, *, level: int = _HEADING) -> Markup:
    """The content below a heading, or nothing where there is no content."""
    return Markup("<h{0}>{1}</h{0}>\n{2}").format(level, heading, content) if content else Markup()


def paragraph(words: str) -> Markup:
    return Markup("<p>{}</p>\n").format(tied(words)) if words else Markup()


def photograph(photo: PhotoView | None) -> Markup:
    if photo is None:
        return Markup()
    return Markup('<p><img src="{}" alt="{}" width="{}" height="{}"></p>\n').format(
        uri(photo.url), photo.text, photo.width, photo.height
    )


def prose(markdown: str, *, page: str, site: str, level: int = _HEADING) -> Markup:
    """Markdown of a page at the address `page` as HTML."""
    html = prose_html(markdown, level=level, place=lambda place: absolute(place, site))
    return _anchored(html, page)


def rich(words: Rich, *, page: str, site: str, level: int = _HEADING) -> Markup:
    """A passage with its references worded, as HTML."""
    return _anchored(rich_html(words, level=level, place=lambda place: absolute(place, site)), page)


def _anchored(html: Markup, page: str) -> Markup:
    """A link inside the page leads to the page: a reader's own page has no such place.

    Text cannot be mistaken for the attribute, since a quotation mark in text is escaped.
    """
    return Markup(str(html).replace('href="#', f'href="{uri(page)}#'))
