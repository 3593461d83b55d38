"""Reads an HTML page, or a piece of one, back."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cache
from html.parser import HTMLParser

from generator.proof.built_text import BuiltText, Piece
from generator.proof.page_text import (
    CHANGING,
    EMPTY,
    UNREAD,
    Changing,
    PageText,
    Timer,
    links_of,
    part_of,
    told_by,
)
from generator.proof.plain_page import NotPlain, PlainPage, read_plain


@dataclass(slots=True)
class _Open:
    tag: str
    attributes: Mapping[str, str]
    line: int
    words: list[str] = field(default_factory=list)

    @property
    def changes(self) -> bool:
        return any(name in self.attributes for name in CHANGING)


class CarefulPage(HTMLParser):
    """Reads any page, with the place of every word."""

    def __init__(self, *, line: int) -> None:
        super().__init__(convert_charrefs=True)
        self.first_line = line
        self.pieces: list[Piece] = []
        self.told: list[Piece] = []
        self.scripts: dict[str, str] = {}
        self.links: list[tuple[str, int]] = []
        self.changing: list[Changing] = []
        self.timers: list[Timer] = []
        self.options: list[str] = []
        self.open: list[_Open] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        line, column = self._at()
        attributes = {name: value or "" for name, value in attrs}
        self.told.extend(
            Piece(words=f"{words}\n", line=line, column=column + 1) for words in told_by(attributes)
        )
        self.links.extend((each, line) for each in links_of(attributes))
        if tag == "option":
            self.options.append(attributes.get("value", ""))
        if "data-seconds" in attributes:
            kind = attributes.get("data-kind", "")
            self.timers.append(Timer(kind=kind, seconds=attributes["data-seconds"], line=line))
        self._part(tag)
        if tag not in EMPTY:
            self.open.append(_Open(tag, attributes, line))

    def handle_endtag(self, tag: str) -> None:
        if any(each.tag == tag for each in self.open):
            while (last := self.open.pop()).tag != tag:
                self._close(last)
            self._close(last)
        self._part(tag)

    def handle_data(self, data: str) -> None:
        line, column = self._at()
        if self.open and self.open[-1].tag in UNREAD:
            self.open[-1].words.append(data)
            return
        first, *others = data.split("\n")
        self.pieces.append(Piece(words=first, line=line, column=column + 1))
        self.pieces.extend(
            Piece(words=f" {words}", line=line + number) for number, words in enumerate(others, start=1)
        )
        for each in self.open:
            if each.changes:
                each.words.append(data)

    def close(self) -> None:
        super().close()
        while self.open:
            self._close(self.open.pop())

    def _close(self, element: _Open) -> None:
        words = "".join(element.words)
        if element.tag == "script" and words:
            kind = element.attributes.get("id") or element.attributes.get("type", "")
            self.scripts[kind] = self.scripts.get(kind, "") + words
        for name in CHANGING:
            if name in element.attributes:
                value = element.attributes[name]
                self.changing.append(Changing(name=name, value=value, words=words, line=element.line))

    def _part(self, tag: str) -> None:
        words = part_of(tag)
        if words:
            line, column = self._at()
            self.pieces.append(Piece(words=words, line=line, column=column + 1))

    def _at(self) -> tuple[int, int]:
        line, column = self.getpos()
        return line + self.first_line - 1, column


def read_carefully(content: str, *, line: int) -> CarefulPage:
    """The page by the standard library's parser, which takes whatever is written."""
    page = CarefulPage(line=line)
    page.feed(content)
    page.close()
    return page


def read_page(path: str, content: str, *, inside: str = "", line: int = 1) -> PageText:
    """A page, or a piece of one; `line` is where it begins in its file.

    Only where it is not plainly written, or a place in it is asked for, is it read with care.
    """

    @cache
    def careful() -> CarefulPage:
        return read_carefully(content, line=line)

    def text(said: str | None, pieces: Callable[[], list[Piece]]) -> BuiltText:
        return BuiltText(path=path, lay=lambda: tuple(pieces()), inside=inside, said=said)

    read: PlainPage | CarefulPage
    try:
        read = plain = read_plain(content, line=line)
        text_said, told_said = plain.words, plain.told_words
    except NotPlain:
        read, text_said, told_said = careful(), None, None
    return PageText(
        text=text(text_said, lambda: careful().pieces),
        told=text(told_said, lambda: careful().told),
        scripts=read.scripts,
        links=tuple(read.links),
        changing=tuple(read.changing),
        timers=tuple(read.timers),
        options=tuple(read.options),
    )
