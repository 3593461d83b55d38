"""What a maker's file holds, with the place of every piece. Nothing here knows what the words mean.

A scalar stays marked text: `12:30`, `no` and `2026-09-12` are the characters the maker typed. The one
who needs a date or a yes asks `fields` for it.
"""

from bisect import bisect_right
from collections.abc import Mapping as ReadOnlyMapping
from dataclasses import dataclass, field
from pathlib import Path
from types import MappingProxyType
from typing import Literal, TypeAlias

from generator.diagnostics.span import Span

Style: TypeAlias = Literal["plain", "single", "double", "literal", "folded"]

REFERENCE_OPENS = "\ue000"
REFERENCE_CLOSES = "\ue001"


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """A scalar as the maker typed it. `span` takes in the quotes, and every line of a multi-line scalar.

    `inset` is how many characters of `span` stand before `value` (1 for a quote); None where the value
    is not in the file letter for letter (escapes, folded lines).
    """

    value: str
    span: Span
    style: Style = "plain"
    inset: int | None = 0

    @property
    def quoted(self) -> bool:
        return self.style in ("single", "double")

    def at(self, start: int, end: int) -> Span:
        """The place of `value[start:end]`; the whole scalar where that cannot be told exactly."""
        if self.inset is None:
            return self.span
        return self.span.slice(self.inset + start, self.inset + end)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sequence:
    items: "tuple[Node, ...]"
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Mapping:
    """Entries in the order of the file. Keys are unique: a repeated key was reported and left out."""

    entries: "tuple[tuple[Text, Node], ...]"
    span: Span

    def get(self, key: str) -> "Node | None":
        return next((value for text, value in self.entries if text.value == key), None)

    def key(self, key: str) -> Text | None:
        """The key itself, to point at it."""
        return next((text for text, _ in self.entries if text.value == key), None)

    def keys(self) -> tuple[str, ...]:
        return tuple(text.value for text, _ in self.entries)


Node: TypeAlias = Text | Sequence | Mapping


@dataclass(frozen=True, slots=True, kw_only=True)
class Reference:
    """`text` is what stands between the braces, stripped, a line break in it made one space.

    `span` takes in the braces.
    """

    text: str
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """`length` characters of a passage from `start` on, and where they stand.

    They stand there letter for letter where the place is as wide as they are; a reference's mark and an
    escaped brace have another width and are one piece.
    """

    start: int
    length: int
    span: Span

    def at(self, start: int, end: int) -> Span:
        """The place of the passage's characters `start` to `end`, both inside this run."""
        if self.length != self.span.end_column - self.span.column or self.span.line != self.span.end_line:
            return self.span
        return self.span.slice(start - self.start, end - self.start)


@dataclass(frozen=True, slots=True, kw_only=True)
class Passage:
    """A piece of Markdown, dedented. Reference number n (from 0) stands in it as `mark(n)`; `\\{` as `{`."""

    markdown: str
    references: tuple[Reference, ...]
    span: Span
    places: tuple[Run, ...] = ()

    def span_at(self, start: int, end: int) -> Span:
        """Where `markdown[start:end]` stands in the file."""
        if not self.places:
            return self.span
        last = max(end - 1, start)
        first_run, last_run = self._run_at(start), self._run_at(last)
        if first_run is last_run:
            return first_run.at(start, last + 1)
        return first_run.at(start, start + 1).until(last_run.at(last, last + 1))

    def _run_at(self, index: int) -> Run:
        return self.places[max(bisect_right(self.places, index, key=lambda run: run.start) - 1, 0)]


def mark(number: int) -> str:
    """What stands in a passage's Markdown for reference `number`."""
    return f"{REFERENCE_OPENS}{number}{REFERENCE_CLOSES}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """An item of a numbered list. `number` is the one a reader sees; it restarts with each list."""

    number: int
    passage: Passage


@dataclass(frozen=True, slots=True, kw_only=True)
class Aside:
    """Whatever in a method is no step. `Caution:` is taken off a caution."""

    kind: Literal["caution", "text"]
    passage: Passage


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A `###` heading of a method and what follows it; title "" for what stands before the first."""

    title: str
    span: Span
    blocks: tuple[Step | Aside, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Method:
    """A way. `name` is "" for the plain `## Method`, which is common to all ways."""

    name: str
    span: Span
    sections: tuple[Section, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """Any other `##` heading. Deeper headings stay in `markdown`, and braces there are plain text."""

    title: str
    markdown: str
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    intro: Passage
    methods: tuple[Method, ...]
    chapters: tuple[Chapter, ...]


Kind: TypeAlias = Literal["recipe", "journal", "standing"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Document:
    """A Markdown file. `text` is the whole file, byte-order mark and line ends as they are.

    `markdown` is all that follows the front matter. `body` is None for anything but a recipe.
    """

    path: str
    name: str
    kind: Kind
    text: str
    front: Mapping
    body: Body | None
    markdown: str
    body_span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Folder:
    """A content folder, read. `texts` holds every file by path, readable or not, for excerpts.

    `unreadable` are the paths of files with so grave a fault that they are missing from the tuples, `aside` the names
    of recipes that are there and were not asked for. `ledger` is the
    text of ledger.jsonl, "" where there is none; what its lines say is for `history` to read.
    """

    root: Path
    recipes: tuple[Document, ...] = ()
    journal: tuple[Document, ...] = ()
    standing: tuple[Document, ...] = ()
    bakes: tuple[tuple[str, Mapping], ...] = ()
    pantry: Mapping | None = None
    site: Mapping | None = None
    ledger: str = ""
    media: tuple[str, ...] = ()
    texts: ReadOnlyMapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    unreadable: tuple[str, ...] = ()
    aside: tuple[str, ...] = ()
