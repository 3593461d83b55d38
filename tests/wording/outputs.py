"""Every word that a reader of a made folder can see, hear or share, read from the files as they were written."""

import html
import io
import json
import re
import zipfile
from collections.abc import Iterator, Mapping
from html.parser import HTMLParser

import pypdfium2

from generator.proof.jpeg_reader import read_jpeg
from generator.proof.png_reader import read_png

TOLD = ("aria-label", "title", "alt", "placeholder", "data-way", "label", "value", "aria-roledescription")
"""Attributes that are shown or read aloud."""
KEYS = frozenset(())
"""Attributes with the names of things, for scripts; every other `data-` attribute holds words to show."""
METAS = ("description", "og:title", "og:description", "og:site_name", "og:image:alt", "twitter:title")
UNTOLD_KEYS = frozenset(
    {
        "@context",
        "@type",
        "@id",
        "url",
        "inLanguage",
        "encodingFormat",
        "contentUrl",
        "embedUrl",
        "thumbnailUrl",
    }
)
"""Keys of JSON whose values are terms of a standard or addresses."""
_PERIOD = re.compile(r"P(?:\d+D)?(?:T[\dHMS]+)?|\d{4}-\d\d-\d\dT.*")
_SELECTOR = re.compile(r"(?:^|\s)[.#][a-z-]+|\[[a-z-]+")
_LITERAL = re.compile(r'"((?:[^"\\\n]|\\.)*)"|`((?:[^`\\]|\\.)*)`')
_ADDRESS = re.compile(
    r"(?:https?://|mailto:)\S+|\S+@\S+|\b[\w./-]+\.(?:html|json|xml|pdf|jpg|png|css|js|example)\b"
)


def told_in(path: str, content: bytes) -> Iterator[str]:
    """The texts of a file, without addresses. A kind of file that is not known here is a fault of the test."""
    for text in _READERS[path.rpartition(".")[2]](content):
        yield _ADDRESS.sub(" ", text)


class _Page(HTMLParser):
    """Text, told attributes, and the data and code that stand in a page."""

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []
        self.inside = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        have = dict(attrs)
        kind = have.get("type") or ""
        self.inside = (
            "json" if tag == "script" and "json" in kind else tag if tag in ("script", "style") else ""
        )
        if tag == "meta":
            if (have.get("name") or have.get("property")) in METAS:
                self.texts.append(have.get("content") or "")
            return
        hidden = tag in ("input", "option", "button", "data", "li", "meter") and "value" in have
        self.texts += [have.get(each) or "" for each in TOLD if not (each == "value" and hidden)]
        self.texts += [text or "" for name, text in attrs if name.startswith("data-") and name not in KEYS]

    handle_startendtag = handle_starttag

    def handle_endtag(self, tag: str) -> None:
        self.inside = ""

    def handle_data(self, data: str) -> None:
        if self.inside == "json":
            self.texts += _texts(data)
        elif self.inside == "script":
            self.texts += _literals(data.encode())
        elif self.inside == "":
            self.texts.append(data)


def _page(content: bytes) -> Iterator[str]:
    page = _Page()
    page.feed(content.decode("utf-8"))
    page.close()
    # One piece: a sentence of ours may go on behind a tag.
    yield "\n".join(page.texts)


def _texts(data: str) -> Iterator[str]:
    """The values of JSON that are for people."""

    def under(value: object, key: str) -> Iterator[str]:
        if isinstance(value, Mapping):
            for name, inner in value.items():
                yield from under(inner, name)
        elif isinstance(value, list):
            for inner in value:
                yield from under(inner, key)
        elif isinstance(value, str) and not (key in UNTOLD_KEYS or _PERIOD.fullmatch(value)):
            yield re.sub(r"<[^>]+>", " ", value)

    yield from under(json.loads(data), "")


def _json(content: bytes) -> Iterator[str]:
    return _texts(content.decode("utf-8"))


def _literals(content: bytes) -> Iterator[str]:
    """Literals of a script that read like words: with a capital at the beginning, or with a blank between letters."""
    code = re.sub(r"^\s*//[^\n]*$|/\*.*?\*/", "", content.decode("utf-8"), flags=re.M | re.S)
    for one, other in _LITERAL.findall(code):
        text = re.sub(r"\$\{[^}]*\}", " ", json.loads(f'"{one}"') if one else other)
        if "<" in text:
            yield from _page(text.encode())
        elif _SELECTOR.search(text) or text == "use strict":
            continue
        elif re.match(r"[A-Z][a-z]+ ", text) or re.search(r"[A-Za-z]{2,} [A-Za-z]{2,}", text):
            yield text


def _marked(content: bytes) -> Iterator[str]:
    """The text of XML; in feeds a page stands inside, its marks written as text."""
    text = re.sub(r"<[^>]+>", " ", content.decode("utf-8"))
    yield from _page(html.unescape(text).encode())


def _style(content: bytes) -> Iterator[str]:
    """What a style puts before or after an element."""
    for text in re.findall(r"content:\s*\"((?:[^\"\\]|\\.)*)\"", content.decode("utf-8")):
        yield re.sub(r"\\[0-9a-fA-F]{1,6} ?", " ", text)


def _plain(content: bytes) -> Iterator[str]:
    yield content.decode("utf-8")


def _paper(content: bytes) -> Iterator[str]:
    document = pypdfium2.PdfDocument(content)
    yield from document.get_metadata_dict().values()
    yield from (each.get_title() for each in document.get_toc())
    for page in document:
        # A word that is parted at the end of a line is one word.
        yield re.sub("[\u00ad\u2010\ufffe\x02]\\s*|-\\s*\\n", "", str(page.get_textpage().get_text_range()))
    yield from re.findall(r"/Alt \(([^)]*)\)", content.decode("latin-1"))


def _drawn(content: bytes) -> Iterator[str]:
    record = read_png(content) if content[:1] == b"\x89" else read_jpeg(content)
    yield record.drawn or ""


def _nothing(content: bytes) -> Iterator[str]:
    return iter(())


def _book(content: bytes) -> Iterator[str]:
    with zipfile.ZipFile(io.BytesIO(content)) as packed:
        for name in packed.namelist():
            if name.endswith((".xhtml", ".opf", ".css")):
                reader = _style if name.endswith(".css") else _page if name.endswith(".xhtml") else _marked
                yield from reader(packed.read(name))


_READERS = {
    "html": _page,
    "json": _json,
    "js": _literals,
    "css": _style,
    "xml": _marked,
    "svg": _marked,
    "txt": _plain,
    "vtt": _plain,
    "pdf": _paper,
    "png": _drawn,
    "jpg": _drawn,
    "epub": _book,
    "avif": _nothing,
    "webp": _nothing,
    "woff2": _nothing,
}
