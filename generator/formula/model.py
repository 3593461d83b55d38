"""The checked formula: what a recipe means. Frozen, exact, and free of any wording for readers."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from enum import Enum
from fractions import Fraction

from generator.catalogue.ingredient import Ingredient
from generator.catalogue.load import Pack
from generator.diagnostics.span import Span
from generator.formula.machine_kind import Machine
from generator.formula.old_address import OldAddress
from generator.measure.duration import Duration
from generator.measure.length import Length, Tin
from generator.measure.number import Range
from generator.measure.quantity import Quantity
from generator.measure.temperature import Temperature


@dataclass(frozen=True, slots=True, kw_only=True)
class Ware:
    """What a line is made of: a catalogue ingredient with what the maker's pack adds to it.

    `packs` holds every pantry row that speaks for it, the line's own choice first.
    """

    ingredient: Ingredient
    packs: tuple[Pack, ...]

    @property
    def known_as(self) -> str:
        """Its name in the catalogue, also where a row of the pantry gives it one of the maker's own."""
        named = self.packs[0].stands_for if self.packs else None
        return named or self.ingredient.name


@dataclass(frozen=True, slots=True, kw_only=True)
class Written:
    """An ingredient line as understood from its text alone, before anything is looked up.

    `words` is what stands in the place of an amount: "to taste", "for dusting", "a pinch of".
    `agrees` is false where the maker accepts that the measures of the line differ.
    `percent` is a leading percentage, and `other_item` the name under the other reading of it: "2% milk" may be two
    percent of milk. Without a measure `item` is the bare name, beside one it is the whole.
    """

    text: str
    measures: tuple[Quantity, ...]
    words: str
    size: str
    item: str
    preparation: str
    note: str
    span: Span
    item_span: Span
    amount_span: Span
    percent: Range | None = None
    other_item: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One ingredient line of a part.

    `grams` is the whole amount, None where no weight can be known; `millilitres` the volume as a cook
    measures it (stated, or from the weight); `count` the pieces, for lines counted in pieces.
    `kept` is `grams` less what does not stay in the bake. `percent` is on the flour of all dough parts.
    `alternatives` are the lines of `or`; like optional lines they count for allergens only.
    `hydration` is that of a starter, as the maker states it; `inside` its flour and its water, where the maker
    says which flour it is.
    """

    part: str
    key: str
    written: Written
    item: str
    ware: Ware | None
    component: str | None
    optional: bool
    alternatives: tuple["Line", ...]
    note: str
    grams: Range | None
    kept: Range | None
    millilitres: Range | None
    volume_stated: bool
    count: Range | None
    flour: bool
    percent: Fraction | None
    span: Span
    hydration: Fraction | None = None
    inside: tuple["Line", ...] = ()

    @property
    def counts(self) -> bool:
        """Whether the line enters totals at all."""
        return not self.optional


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A named list of lines. `grams` sums the lines that count; `preferment` is its kind, or None.

    `hydration` is as the maker states it, in percent; `build` says seed : flour : water, such as 1 : 2 : 2.
    """

    name: str
    counts: bool
    preferment: str | None
    lines: tuple[Line, ...]
    grams: Range
    span: Span
    hydration: Fraction | None = None
    build: tuple[Fraction, Fraction, Fraction] | None = None


class Stage(Enum):
    """Kinds of timed stages, by what they ask of the baker."""

    HANDS_ON = "hands_on"
    WAITING = "waiting"
    BAKING = "baking"


@dataclass(frozen=True, slots=True, kw_only=True)
class Timed:
    """A timed stage of a step: the kind as written ("rise"), what it counts as, how long."""

    kind: str
    stage: Stage
    duration: Duration
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Heat:
    """A temperature of a step: `kind` is "oven", "core" or "other"."""

    kind: str
    temperature: Temperature
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """An amount that a step needs.

    `share` is how it was written: "all", "part" (everything in a part), "half", "1/3", "20 g", "rest",
    or "extra" for an amount outside the formula. `fraction` is the part of the whole line. `words` is an extra
    that no scale or spoon measures, as it is written: "a pinch", "2 sheets".
    """

    part: str
    item: str
    line: Line | None
    ware: Ware | None
    share: str
    fraction: Fraction | None
    grams: Range | None
    millilitres: Range | None
    count: Range | None
    span: Span
    words: str = ""

    @property
    def extra(self) -> bool:
        return self.share == "extra"


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """A plain measure in a step: a duration or a length that is no stage."""

    duration: Duration | None
    length: Length | None
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class WholePart:
    """A reference to everything in a part: the part's name and one use for each of its lines."""

    part: str
    uses: tuple[Use, ...]
    span: Span


Mention = Use | WholePart | Timed | Heat | Measure


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """Markdown of a step or an aside, with mention n standing as U+E000 n U+E001."""

    markdown: str
    mentions: tuple[Mention, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A step (`number` from 1), a caution, or plain text between steps (`kind` "step", "caution", "text")."""

    kind: str
    number: int
    words: Words
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """Steps under one heading of a method; the title is "" before the first heading."""

    title: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One way to do it (`## Method: NAME`), or with the name "" the steps common to all."""

    name: str
    sections: tuple[Section, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Times:
    """Minutes of one way, the common steps included."""

    way: str
    hands_on: Range
    waiting: Range
    baking: Range

    @property
    def total(self) -> Range:
        return self.hands_on + self.waiting + self.baking


@dataclass(frozen=True, slots=True, kw_only=True)
class Totals:
    """Sums of the whole formula. Weights in grams; flour, water and percents from the middle of ranges.

    `hydration` counts the water in milk, egg, butter and honey; `hydration_nominal` added water and liquid
    milk only. All percents are None without flour.
    """

    grams: Range
    dough_grams: Range
    flour: Fraction
    water: Fraction
    hydration: Fraction | None
    hydration_nominal: Fraction | None
    salt_percent: Fraction | None
    salt_with_ingredients_percent: Fraction | None
    finished_grams: Range | None
    prefermented_percent: Fraction | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Correction:
    """A correction as the front matter states it. `bake` names the bake record that it comes from, "" for none.

    `span` is the place of `change`, None where no file has it.
    """

    on: date
    change: str
    why: str
    film: str
    bake: str = ""
    span: Span | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SetAside:
    """A caution that the maker sets aside: its name (`caution_names`) and the reason, never empty."""

    caution: str
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChapterMark:
    """A chapter of a video: seconds from its start, and a title."""

    seconds: int
    stamp: str
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Video:
    url: str
    published: datetime | None
    seconds: int | None
    chapters: tuple[ChapterMark, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    title: str
    url: str
    paid: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Credit:
    what: str
    who: str
    url: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Prose:
    """A chapter of the recipe that is no method: Notes, Questions and the like, as Markdown."""

    title: str
    markdown: str


@dataclass(frozen=True, slots=True, kw_only=True)
class About:
    """What the front matter says about the bake beside its formula."""

    title: str
    lead: str
    published: date | None
    kinds: tuple[str, ...]
    photo: str
    photo_text: str
    makes: str
    portions: str
    tin: str
    tin_read: Tin | None
    keeps: str
    videos: tuple[Video, ...]
    links: tuple[Link, ...]
    credits: tuple[Credit, ...]
    corrections: tuple[Correction, ...]
    cautions_off: tuple[SetAside, ...] = ()
    machine: Machine | None = None
    dough_temperature: Temperature | None = None
    occasions: tuple[str, ...] = ()
    was: tuple[OldAddress, ...] = ()
    photo_focus: tuple[int, int] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Formula:
    """One recipe, understood and normalised.

    `component_shares` gives, for each component's name, how much of its one batch this bake uses.
    """

    name: str
    path: str
    about: About
    parts: tuple[Part, ...]
    totals: Totals
    ways: tuple[Way, ...]
    times: tuple[Times, ...]
    intro: Words
    prose: tuple[Prose, ...]
    weighs: Range | None
    bakes_off: Fraction | None
    component_shares: Mapping[str, Fraction]
    spans: Mapping[str, Span]

    @property
    def lines(self) -> tuple[Line, ...]:
        return tuple(line for part in self.parts for line in part.lines)
