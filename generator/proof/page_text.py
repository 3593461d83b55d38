"""What is read of an HTML page: its words as a reader meets them, its links, and the data in it for programs."""

from collections.abc import Mapping
from dataclasses import dataclass

from generator.proof.built_text import BuiltText

_BLOCK_NAMES = (
    "address article aside blockquote body br caption dd details div dl dt fieldset figcaption figure footer form "
    "h1 h2 h3 h4 h5 h6 head header hr html label legend li link main meta nav ol optgroup option p pre section "
    "select summary table tbody td tfoot th thead title tr ul"
)
_EMPTY_NAMES = "area base br col embed hr img input link meta source track wbr rect path circle"
_BLOCKS = frozenset(_BLOCK_NAMES.split())
# These make no new line, for they stand beside each other; they part words all the same.
_CELLS = frozenset({"td", "th", "dt", "dd"})
UNREAD = frozenset({"script", "style"})
EMPTY = frozenset(_EMPTY_NAMES.split())
# Attributes that are read aloud, shown, or quoted elsewhere.
_TOLD = ("content", "alt", "title", "aria-label", "placeholder", "data-way", "datetime")
_LINKS = ("href", "src", "srcset", "poster", "data-script", "data-style")
CHANGING = ("data-n", "data-h")


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


def part_of(tag: str) -> str:
    """A line end where the browser begins a new line; cells of a row and words beside each other are parted."""
    if tag not in _BLOCKS:
        return ""
    return " " if tag in _CELLS else "\n"


def told_by(attributes: Mapping[str, str]) -> list[str]:
    """The words of an element's attributes."""
    # What a page tells the browser of its security holds fingerprints, in which anything may stand.
    safety = "http-equiv" in attributes
    return [attributes[name] for name in _TOLD if attributes.get(name) and not (safety and name == "content")]


def links_of(attributes: Mapping[str, str]) -> list[str]:
    """The addresses that an element leads to or is made of."""
    return [each for name in _LINKS for each in _addresses(name, attributes.get(name, ""))]


def _addresses(name: str, value: str) -> list[str]:
    if not value:
        return []
    if name != "srcset":
        return [value]
    return [each.split()[0] for each in value.split(",") if each.strip()]
