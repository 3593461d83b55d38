"""Every word that a reader of a made folder can see, hear or share, read from the files as they were written."""

import html
import io
import json
import re
import zipfile
from collections.abc import Callable, Iterator, Mapping
from html.parser import HTMLParser
from pathlib import Path

import pypdfium2

from generator.proof.jpeg_reader import read_jpeg
from generator.proof.png_reader import read_png

TOLD = ("aria-label", "title", "alt", "placeholder", "label", "aria-roledescription")
"""Attributes that are shown or read aloud; every `data-` attribute counts as one, for scripts show them."""
METAS = ("description", "og:title", "og:description", "og:site_name", "og:image:alt", "twitter:title")
KEYS = frozenset(
    {
        *("@context", "@type", "@id", "url", "inLanguage", "encodingFormat", "contentUrl", "embedUrl"),
        *("thumbnailUrl", "id", "path", "language", "first", "unit", "method", "version", "home_page_url"),
        *("data-allergen", "data-lists", "data-ways"),
    }
)
"""Keys of JSON, and attributes, whose values are addresses, names of things for scripts, or terms of a standard."""
_WORDS = re.compile(r"^[A-Z][a-z]+(?![A-Za-z])|[A-Za-z]{2,} [A-Za-z]{2,}")
_PERIOD = re.compile(r"P(?:\d+D)?(?:T[\dHMS]+)?|\d{4}-\d\d-\d\d(?:T.*)?")
_SELECTOR = re.compile(r"(?:^|\s)[.#][a-z-]+|\[[a-z-]+")
_LITERAL = re.compile(r'"((?:[^"\\\n]|\\.)*)"|`((?:[^`\\]|\\.)*)`')
_ADDRESS = re.compile(
    r"(?:https?://|mailto:)\S+|\d{4}-\d\d-\d\dT\S+|\S+@\S+|[\w./-]+\.(?:html|json|xml|pdf|jpg|png|css|js|yaml|example)\b"
)


def told_in(name: str, content: bytes) -> Iterator[str]:
    """The texts of a file, without addresses. A kind of file that is not known here is a fault of the test."""
    for text in READERS[name.rpartition(".")[2]](content):
        yield _ADDRESS.sub(" ", re.sub(r"\{[a-z]+\}", " ", text))


def told_under(root: Path) -> Iterator[tuple[str, str]]:
    """Every file of a made folder and each of its texts. Data for programs speak no language."""
    for path in sorted(root.rglob("*")):
        if path.is_file() and path.name not in ("recipe.json", "robots.txt", ".tinleaf-manifest.json"):
            name = path.relative_to(root).as_posix()
            yield from ((name, text) for text in told_in(path.name, path.read_bytes()))


class _Page(HTMLParser):
    """Text, told attributes, and the data and code that stand in a page."""

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []
        self.inside = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        have = dict(attrs)
        json_inside = tag == "script" and "json" in (have.get("type") or "")
        self.inside = "json" if json_inside else tag if tag in ("script", "style") else ""
        if tag == "meta" and (have.get("name") or have.get("property")) not in METAS:
            return
        shown = (*TOLD, "content") if tag == "meta" else TOLD
        self.texts += [
            text or ""
            for name, text in attrs
            if name in shown or (name.startswith("data-") and name not in KEYS)
        ]

    handle_startendtag = handle_starttag

    def handle_endtag(self, tag: str) -> None:
        self.inside = ""

    def handle_data(self, data: str) -> None:
        if self.inside == "json":
            self.texts += _json(data.encode())
        elif self.inside == "script":
            self.texts += _script(data.encode())
        elif self.inside == "":
            self.texts.append(data)


def _page(content: bytes) -> Iterator[str]:
    page = _Page()
    page.feed(content.decode("utf-8"))
    page.close()
    yield from page.texts


def _json(content: bytes) -> Iterator[str]:
    """The values that are for people, and the titles that stand as values of ids."""

    def under(value: object, key: str) -> Iterator[str]:
        if isinstance(value, Mapping):
            for name, inner in value.items():
                yield from under(inner, name)
        elif isinstance(value, list):
            for inner in value:
                yield from under(inner, key)
        elif isinstance(value, str) and not (key in KEYS or _PERIOD.fullmatch(value)):
            yield re.sub(r"<[^>]+>", " ", value)

    return under(json.loads(content), "")


def _script(content: bytes) -> Iterator[str]:
    """Literals that read like words: with a capital at the beginning, or with a blank between letters."""
    code = re.sub(r"^\s*//[^\n]*$|/\*.*?\*/", "", content.decode("utf-8"), flags=re.M | re.S)
    for one, other in _LITERAL.findall(code):
        text = re.sub(r"\$\{[^}]*\}", " ", json.loads(f'"{one}"') if one else other)
        if "<" in text:
            yield from _page(text.encode())
        elif _WORDS.search(text) and not _SELECTOR.search(text) and text != "use strict":
            yield text


def _marked(content: bytes) -> Iterator[str]:
    """The text of XML. In a feed a page stands inside, its marks written as text."""
    return _page(html.unescape(re.sub(r"<[^>]+>", " ", content.decode("utf-8"))).encode())


def _style(content: bytes) -> Iterator[str]:
    """What a style puts before or after an element."""
    for text in re.findall(r"content:\s*\"((?:[^\"\\]|\\.)*)\"", content.decode("utf-8")):
        yield re.sub(r"\\[0-9a-fA-F]{1,6} ?", " ", text)


def _plain(content: bytes) -> Iterator[str]:
    yield content.decode("utf-8").removeprefix("WEBVTT")


def _paper(content: bytes) -> Iterator[str]:
    document = pypdfium2.PdfDocument(content)
    known = document.get_metadata_dict()
    yield from (known[each] for each in ("Title", "Subject", "Keywords"))
    yield from (each.get_title() for each in document.get_toc())
    for page in document:
        # A word that is parted at the end of a line is one word.
        yield re.sub("[\u00ad\u2010\ufffe\x02]\\s*|-\\s*\\n", "", str(page.get_textpage().get_text_range()))
    document.close()


def _drawn(content: bytes) -> Iterator[str]:
    record = read_png(content) if content[:1] == b"\x89" else read_jpeg(content)
    yield record.drawn or ""


def _nothing(content: bytes) -> Iterator[str]:
    return iter(())


def _book(content: bytes) -> Iterator[str]:
    with zipfile.ZipFile(io.BytesIO(content)) as packed:
        for name in packed.namelist():
            reader = _INSIDE.get(name.rpartition(".")[2], _nothing)
            yield from reader(packed.read(name))


def _package(content: bytes) -> Iterator[str]:
    """Title, subject, and what the book says of itself to those who listen."""
    words = re.findall(
        r"<dc:(?:title|subject|description)[^>]*>([^<]*)|accessibilitySummary\"?>([^<]*)",
        content.decode("utf-8"),
    )
    yield from (each for pair in words for each in pair)


_INSIDE: Mapping[str, Callable[[bytes], Iterator[str]]] = {"xhtml": _page, "css": _style, "opf": _package}
READERS: Mapping[str, Callable[[bytes], Iterator[str]]] = {
    **dict.fromkeys(("html",), _page),
    **dict.fromkeys(("json",), _json),
    **dict.fromkeys(("js",), _script),
    **dict.fromkeys(("css",), _style),
    **dict.fromkeys(("xml", "svg"), _marked),
    **dict.fromkeys(("txt", "vtt"), _plain),
    **dict.fromkeys(("pdf",), _paper),
    **dict.fromkeys(("png", "jpg"), _drawn),
    **dict.fromkeys(("epub",), _book),
    **dict.fromkeys(("avif", "webp", "woff2"), _nothing),
}
