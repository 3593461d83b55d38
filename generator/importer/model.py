"""What was brought in: where each line of the source went, what became of it, and what is doubtful.

A page that shows source and result side by side needs no more than a `Brought`.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import Enum

from generator.diagnostics.diagnostic import Diagnostics
from generator.formula.model import Formula, Written
from generator.formula.shelf import Shelf


class Confidence(Enum):
    """How sure the reader is of a line."""

    SURE = "sure"
    LIKELY = "likely"
    DOUBTFUL = "doubtful"


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """A question to the maker. `code` is a key of `codes.CODES`; `line` is of the source, from 1."""

    code: str
    message: str
    hint: str
    line: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceLine:
    """A line of the source. `hint` is what the form of the source says of it ("heading", "ingredient"), or ""."""

    number: int
    text: str
    hint: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """Where a line of the source went. `role` is a word of `ROLES`; `value` the part of it that counts."""

    line: SourceLine
    role: str
    value: str = ""
    confidence: Confidence = Confidence.SURE


ROLES = frozenset(
    {"blank", "rule", "title", "lead", "intro", "heading", "part", "ingredient", "way", "section", "step"}
    | {"caution", "makes", "portions", "tin", "keeps", "link", "video", "chapter", "credit", "tags", "note"}
    | {"kinds", "left out"}
)
"""What a line can be. "rule" is a line of dashes; "heading" a word such as Ingredients that has no own place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadLine:
    """One ingredient line as it will be written.

    `text` is what `formula/line.py` reads and `written` what it makes of it. `known` is false where neither the
    catalogue nor the pantry has the item: the line is then set aside in the file. `recipe` names a
    recipe of the maker's own that makes it, or is "".
    """

    line: int
    part: str
    text: str
    written: Written
    optional: bool
    alternatives: tuple[str, ...]
    note: str
    agree: bool
    known: bool
    allergens: tuple[str, ...]
    confidence: Confidence
    unweighed: bool = False
    recipe: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PantryRow:
    """A row that the maker may add to pantry.yaml; `stands_for` is a guess to confirm, or ""."""

    name: str
    stands_for: str
    near: tuple[str, ...]
    line: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultLine:
    """A line of the recipe file with the lines of the source that it comes from."""

    text: str
    sources: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Brought:
    """One recipe out of a source.

    `name` is the name of the file that `text` belongs in; `source` and `result` stand side by side, tied by the
    numbers of the source's lines. `like` tells which recipe of the maker's own this resembles, or is "".
    `left_out` says what did not go into the file, and why. `wrong` are the errors that a proofreading of the
    file finds, none where it is accepted.
    """

    name: str
    title: str
    source_name: str
    source: tuple[Placed, ...]
    result: tuple[ResultLine, ...]
    lines: tuple[ReadLine, ...]
    steps: tuple[str, ...]
    doubts: tuple[Doubt, ...]
    rows: tuple[PantryRow, ...]
    left_out: tuple[str, ...]
    like: str
    wrong: Diagnostics

    @property
    def text(self) -> str:
        return "".join(f"{each.text}\n" for each in self.result)


Proof = Callable[[str, str], Diagnostics]
"""What is wrong with a recipe file, by its name and its text."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Kitchen:
    """What the maker has: the shelf, the recipes that are there, the kinds in use, the letters that can be printed.

    `proof` reads a finished text back as `check` does; `unprintable` gives the characters that no font has.
    """

    shelf: Shelf
    book: Mapping[str, Formula]
    kinds: frozenset[str]
    proof: Proof
    unprintable: Callable[[str], tuple[str, ...]]
