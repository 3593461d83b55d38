"""A recipe as written: the maker's words sorted into places, before anything is looked up or computed."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from generator.diagnostics.span import Span
from generator.formula.model import About, Prose, Written
from generator.measure.number import Range

FERMENTED = (
    "poolish",
    "sponge",
    "biga",
    "levain",
    "sourdough",
    "starter",
    "rye sour",
    "pate fermentee",
    "old dough",
)
SOAKED = ("soaker",)
PREFERMENTS = (*FERMENTED, *SOAKED, "scald", "water roux", "preferment")
"""Kinds of preferments, folded; a plain `yes` is the kind "preferment". Their hydration is never inferred."""
UNFERMENTED = (*SOAKED, "scald", "water roux")


@dataclass(frozen=True, slots=True, kw_only=True)
class Name:
    """A name in the file, such as a component's or a pantry row's, with its place."""

    text: str
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Stated:
    """A number that the maker states under a key, with its place: percent, or grams."""

    value: Fraction
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Ratio:
    """How a levain is built: seed, flour and water, such as 1 : 2 : 2."""

    seed: Fraction
    flour: Fraction
    water: Fraction
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Accepted:
    """A gentle note that the maker has read and accepts, with the reason, never empty."""

    note: str
    why: str
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenLine:
    """An ingredient line with what its mapping form says beside it.

    `hydration` and `flour` tell what a starter is made of.
    """

    written: Written
    recipe: Name | None
    pantry: Name | None
    optional: bool
    alternatives: tuple["WrittenLine", ...]
    note: str
    agree: bool
    discard: Name | None
    span: Span
    hydration: Stated | None = None
    flour: Name | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenPart:
    """`flour` is the part's share of all flour, in percent: its own percents are on that flour then.

    `total` is the place of a `total: yes`: the part's lines are the whole dough, preferments included.
    """

    name: str
    span: Span
    counts: bool
    preferment: str | None
    lines: tuple[WrittenLine, ...]
    hydration: Stated | None = None
    flour: Stated | None = None
    build: Ratio | None = None
    total: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenReference:
    """What stands between braces, and where."""

    text: str
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenWords:
    """Markdown with reference n as U+E000 n U+E001; `place` finds a stretch of it in the file."""

    markdown: str
    references: tuple[WrittenReference, ...]
    place: Callable[[int, int], Span]


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenBlock:
    kind: str
    number: int
    words: WrittenWords
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenSection:
    title: str
    blocks: tuple[WrittenBlock, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenWay:
    name: str
    span: Span
    sections: tuple[WrittenSection, ...]

    @property
    def blocks(self) -> tuple[WrittenBlock, ...]:
        return tuple(block for section in self.sections for block in section.blocks)


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenRecipe:
    """The whole file. `spans` gives the place of front-matter keys, for checks that speak of them.

    `flour` is all flour of the dough, `dough` the wanted weight of it, in grams; `accepts` notes set aside.
    """

    name: str
    path: str
    about: About
    parts: tuple[WrittenPart, ...]
    ways: tuple[WrittenWay, ...]
    intro: WrittenWords
    prose: tuple[Prose, ...]
    weighs: Range | None
    bakes_off: Fraction | None
    spans: Mapping[str, Span]
    flour: Stated | None = None
    dough: Stated | None = None
    accepts: tuple[Accepted, ...] = ()
