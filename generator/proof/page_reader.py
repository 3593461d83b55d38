"""The words of an HTML page as a reader meets them, its links, and the data in it for programs."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from html.parser import HTMLParser

from generator.proof.built_text import BuiltText, Piece

_BLOCK_NAMES = (
    "address article aside blockquote body br caption dd details div dl dt fieldset figcaption figure footer form "
    "h1 h2 h3 h4 h5 h6 head header hr html label legend li link main meta nav ol optgroup option p pre section "
    "select summary table tbody td tfoot th thead title tr ul"
)
_EMPTY_NAMES = "area base br col embed hr img input link meta source track wbr rect path circle"
_BLOCKS = frozenset(_BLOCK_NAMES.split())
# These make no new line, for they stand beside each other; they part words all the same.
_CELLS = frozenset({"td", "th", "dt", "dd"})
_UNREAD = frozenset({"script", "style"})
_EMPTY = frozenset(_EMPTY_NAMES.split())
# Attributes that are read aloud, shown, or quoted elsewhere.
_TOLD = ("content", "alt", "title", "aria-label", "placeholder", "data-way", "datetime")
_LINKS = ("href", "src", "srcset", "poster", "data-script", "data-style")


@dataclass(frozen=True, slots=True, kw_only=True)
class Changing:
    """An element that the page's script may reword: its attribute, and its words as written in the page."""

    name: str
    value: str
    words: str
    line: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Timer:
    """A time that the page's script counts down: the kind of stage, and its shortest and longest in seconds."""

    kind: str
    seconds: str
    line: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PageText:
    """`text` is what the page shows, `told` what its attributes say, `scripts` data by the script's type or id.

    `options` are the values of what can be chosen from a list.
    """

    text: BuiltText
    told: BuiltText
    scripts: Mapping[str, str]
    links: tuple[tuple[str, int], ...]
    changing: tuple[Changing, ...]
    timers: tuple[Timer, ...] = ()
    options: tuple[str, ...] = ()


@dataclass(slots=True)
class _Open:
    tag: str
    attributes: Mapping[str, str]
    line: int
    words: list[str] = field(default_factory=list)

    @property
    def changes(self) -> bool:
        return "data-n" in self.attributes or "data-h" in self.attributes


class _Reader(HTMLParser):
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
        for name in _TOLD:
            # What a page tells the browser of its security holds fingerprints, in which anything may stand.
            if attributes.get(name) and not (name == "content" and "http-equiv" in attributes):
                self.told.append(Piece(words=f"{attributes[name]}\n", line=line, column=column + 1))
        for name in _LINKS:
            self.links.extend((each, line) for each in _addresses(name, attributes.get(name, "")))
        if tag == "option":
            self.options.append(attributes.get("value", ""))
        if "data-seconds" in attributes:
            kind = attributes.get("data-kind", "")
            self.timers.append(Timer(kind=kind, seconds=attributes["data-seconds"], line=line))
        self._part(tag)
        if tag not in _EMPTY:
            self.open.append(_Open(tag, attributes, line))

    def handle_endtag(self, tag: str) -> None:
        if any(each.tag == tag for each in self.open):
            while (last := self.open.pop()).tag != tag:
                self._close(last)
            self._close(last)
        self._part(tag)

    def handle_data(self, data: str) -> None:
        line, column = self._at()
        if self.open and self.open[-1].tag in _UNREAD:
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
        for name in ("data-n", "data-h"):
            if name in element.attributes:
                value = element.attributes[name]
                self.changing.append(Changing(name=name, value=value, words=words, line=element.line))

    def _part(self, tag: str) -> None:
        """A line end where the browser begins a new line; cells of a row and words beside each other are parted."""
        if tag in _BLOCKS:
            line, column = self._at()
            self.pieces.append(Piece(words=" " if tag in _CELLS else "\n", line=line, column=column + 1))

    def _at(self) -> tuple[int, int]:
        line, column = self.getpos()
        return line + self.first_line - 1, column


def read_page(path: str, content: str, *, inside: str = "", line: int = 1) -> PageText:
    """A page, or a piece of one; `line` is where it begins in its file."""
    reader = _Reader(line=line)
    reader.feed(content)
    reader.close()
    return PageText(
        text=BuiltText(path=path, pieces=tuple(reader.pieces), inside=inside),
        told=BuiltText(path=path, pieces=tuple(reader.told), inside=inside),
        scripts=reader.scripts,
        links=tuple(reader.links),
        changing=tuple(reader.changing),
        timers=tuple(reader.timers),
        options=tuple(reader.options),
    )


def _addresses(name: str, value: str) -> list[str]:
    if not value:
        return []
    if name != "srcset":
        return [value]
    return [each.split()[0] for each in value.split(",") if each.strip()]
