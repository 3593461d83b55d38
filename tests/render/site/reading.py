"""Reads a finished page back: its elements, its links, its text."""

from dataclasses import dataclass, field
from html.parser import HTMLParser

Attributes = dict[str, str]
# A browser begins a new line for these, whatever blanks the file has between them.
_BLOCK_NAMES = (
    "article aside body dd details div dl dt footer form h1 h2 h3 h4 header html li main nav ol p section summary "
    "table td th tr ul"
)
_BLOCKS = frozenset(_BLOCK_NAMES.split())
_SILENT = ("script", "style", "title", "svg")


@dataclass
class PageRead(HTMLParser):
    """Elements as (name, attributes) in order, and the words a reader sees."""

    elements: list[tuple[str, Attributes]] = field(default_factory=list)
    words: list[str] = field(default_factory=list)
    silent: int = 0

    def __post_init__(self) -> None:
        HTMLParser.__init__(self)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, {name: value or "" for name, value in attrs}))
        self._part(tag)
        self.silent += tag in _SILENT

    def _part(self, tag: str) -> None:
        if tag in _BLOCKS:
            self.words.append("\n")

    def handle_endtag(self, tag: str) -> None:
        self._part(tag)
        self.silent -= tag in _SILENT

    def handle_data(self, data: str) -> None:
        if not self.silent:
            self.words.append(data)

    def all(self, *names: str) -> list[Attributes]:
        return [attributes for name, attributes in self.elements if name in names]

    @property
    def text(self) -> str:
        """The words with every run of white space as one space."""
        return " ".join("".join(self.words).split())


def read_page(content: bytes) -> PageRead:
    page = PageRead()
    page.feed(content.decode())
    page.close()
    return page
