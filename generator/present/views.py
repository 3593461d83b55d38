"""What the reader sees, as frozen views: every number is words already, every address is decided.

Addresses named `path` lead from the root of the site ("recipes/honey-oat-braid/"); the renderers make them
relative. Addresses named `url` are absolute.
"""

from dataclasses import dataclass
from datetime import date

# Part of the views: renderers take it from here.
from generator.declaration.model import Run as Run
from generator.present.allergen_table import AllergenTable
from generator.present.correction_views import CorrectionView as CorrectionView
from generator.present.correction_views import SinceView as SinceView
from generator.present.film_views import ChapterView as ChapterView
from generator.present.film_views import VideoView as VideoView
from generator.present.page_link import PageLink as PageLink
from generator.present.search_views import MovedView, Related, SearchView, ShelfList
from generator.present.sheet_views import MachineView, SheetView
from generator.present.size_views import OvenView, SizesView


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """One amount in both measures. `first` and `second` are the same two in the site's order; either may be ""."""

    weight: str
    volume: str
    first: str
    second: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LineView:
    """One ruled line of the docket. `percent` is worded ("2.1 %") or ""; `choices` are the lines of `or`.

    `beside` tells the volume in the cups of other countries, where the site shows them.
    """

    item: str
    amount: Amount
    preparation: str
    note: str
    optional: bool
    choices: tuple[str, ...]
    percent: str
    component: PageLink | None
    allergens: tuple[str, ...]
    may_contain: tuple[str, ...]
    unknown: tuple[str, ...]
    beside: tuple["Fact", ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PartView:
    """A part of the docket; `title` is "" where the formula is one list, `remark` says that it does not count."""

    name: str
    title: str
    remark: str
    lines: tuple[LineView, ...]
    weight: str


@dataclass(frozen=True, slots=True, kw_only=True)
class MentionView:
    """A reference as worded in a sentence: `lead` ("bread flour"), and `tail` ("215 g, half") or "".

    `kind` is ingredient, part, extra, stage, heat or measure. `minutes` is the longest time of a stage or a
    duration, for timers, else None. A heat has lead and tail also with °F and with °C first.
    """

    kind: str
    lead: str
    tail: str
    minutes: int | None = None
    in_f: tuple[str, str] = ("", "")
    in_c: tuple[str, str] = ("", "")

    @property
    def text(self) -> str:
        return f"{self.lead} ({self.tail})" if self.tail else self.lead


@dataclass(frozen=True, slots=True, kw_only=True)
class Rich:
    """Markdown with mention n standing as U+E000 n U+E001, and the same as plain text with all worded."""

    markdown: str
    mentions: tuple[MentionView, ...]
    plain: str


@dataclass(frozen=True, slots=True, kw_only=True)
class UseView:
    """An amount beside a step. `remark` says which share: "half", "the rest", "as needed, outside the formula"."""

    item: str
    amount: Amount
    remark: str
    extra: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class StageView:
    """A timed stage: kind as written, `stage` hands_on, waiting or baking; the time in words, and for timers."""

    kind: str
    stage: str
    words: str
    seconds: tuple[int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class HeatView:
    kind: str
    words: str
    in_f: str = ""
    in_c: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockView:
    """A step, a caution or plain text of the method. `anchor` is unique in its page."""

    kind: str
    number: int
    anchor: str
    words: Rich
    uses: tuple[UseView, ...]
    stages: tuple[StageView, ...]
    heats: tuple[HeatView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionView:
    title: str
    blocks: tuple[BlockView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SegmentView:
    """One stretch of the time strip: its share of the width in percent (of the longest total), words, remark."""

    stage: str
    kind: str
    words: str
    share: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TimesView:
    """Times of one way in words ("1 h 20 min", "32 to 35 min"), and the strip in the order of work."""

    way: str
    hands_on: str
    waiting: str
    baking: str
    total: str
    segments: tuple[SegmentView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class WayView:
    """A way to do it; the steps common to all have the name ""."""

    name: str
    title: str
    anchor: str
    sections: tuple[SectionView, ...]
    machine: MachineView | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """A label and its words, such as "Hydration" and "62.2 %"."""

    label: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelView:
    """The declaration of the site's region as words to print, in order.

    `heading` is the word before the list ("Ingredients"); the lines may be empty. `statement` is all of it in
    plain text with standing-out words in capitals. `advice` is what a reader is told beside it. `also_in` and
    `also_may` name what the lines leave unsaid here and other regions declare.
    """

    heading: str
    ingredients: tuple[Run, ...]
    contains_line: tuple[Run, ...]
    may_line: tuple[Run, ...]
    kitchen_line: str
    unfinished: str
    advice: str
    statement: str
    also_in: tuple[str, ...] = ()
    also_may: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PhotoView:
    """`path` from the site's root, `source` inside the content folder; size in pixels as published.

    `focus` is where the eye should rest, in percent from the left and from the top.
    """

    path: str
    source: str
    text: str
    width: int
    height: int
    url: str
    focus: tuple[int, int] = (50, 50)


@dataclass(frozen=True, slots=True, kw_only=True)
class LinkView:
    title: str
    url: str
    paid: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CreditView:
    what: str
    who: str
    url: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ProseView:
    title: str
    anchor: str
    markdown: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RecipeView:
    """Everything the outputs of one recipe may say.

    `eater_cautions` are those of `cautions` that whoever eats the bake must know, for tags. `sizes` is there only
    for the pages of the site.
    """

    name: str
    title: str
    lead: str
    path: str
    url: str
    on_site: bool
    language: str
    maker: str
    published: date | None
    published_day: str
    updated: date | None
    updated_day: str
    revision: int
    kinds: tuple[PageLink, ...]
    photo: PhotoView | None
    makes: str
    portions: str
    tin: str
    keeps: str
    facts: tuple[Fact, ...]
    parts: tuple[PartView, ...]
    ways: tuple[WayView, ...]
    common: WayView | None
    times: tuple[TimesView, ...]
    cautions: tuple[str, ...]
    intro: Rich
    prose: tuple[ProseView, ...]
    label: LabelView
    corrections: tuple[CorrectionView, ...]
    videos: tuple[VideoView, ...]
    links: tuple[LinkView, ...]
    paid_words: str
    credits: tuple[CreditView, ...]
    used_in: tuple[PageLink, ...]
    net_weight: str
    statement_of_place: str
    finished_words: str
    cards: tuple[PageLink, ...]
    ingredient_lines: tuple[str, ...]
    iso_times: tuple[str, str, str]
    yield_words: tuple[str, ...]
    scale: str = ""
    notes: tuple[str, ...] = ()
    eater_cautions: tuple[str, ...] = ()
    measured: tuple[Fact, ...] = ()
    ovens: tuple[OvenView, ...] = ()
    sizes: SizesView | None = None
    sheet: SheetView | None = None
    since: tuple[SinceView, ...] = ()
    related: tuple[Related, ...] = ()
    occasions: tuple[str, ...] = ()

    @property
    def films_on_site(self) -> tuple[VideoView, ...]:
        """The films that readers may see: a film with a later day is only on the maker's own desk."""
        return tuple(each for each in self.videos if each.on_site)


@dataclass(frozen=True, slots=True, kw_only=True)
class TeaserView:
    """A bake in a list."""

    title: str
    path: str
    url: str
    lead: str
    day: str
    published: date
    photo: PhotoView | None
    total: str
    kinds: tuple[PageLink, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ArticleView:
    """A journal post or a standing page."""

    name: str
    title: str
    lead: str
    path: str
    url: str
    on_site: bool
    published: date | None
    day: str
    markdown: str
    photo: PhotoView | None
    kinds: tuple[PageLink, ...]
    bakes: tuple[TeaserView, ...]
    year: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class KindView:
    title: str
    path: str
    bakes: tuple[TeaserView, ...]
    articles: tuple[ArticleView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SiteView:
    """The whole publication on its day: only what is on the site stands in the lists, newest first.

    `all_recipes` also holds what is not published yet, for the desk. `updated` is the newest date in the
    content, an RFC 3339 moment for feeds.
    """

    title: str
    lead: str
    maker: str
    url: str
    contact: str
    language: str
    region: str
    paper: str
    theme: str
    updated: str
    day: date
    pages: tuple[PageLink, ...]
    recipes: tuple[RecipeView, ...]
    teasers: tuple[TeaserView, ...]
    journal: tuple[ArticleView, ...]
    standing: tuple[ArticleView, ...]
    kinds: tuple[KindView, ...]
    corrections: tuple[CorrectionView, ...]
    all_recipes: tuple[RecipeView, ...]
    allergens: AllergenTable | None = None
    search: SearchView | None = None
    shelves: tuple[ShelfList, ...] = ()
    moved: tuple[MovedView, ...] = ()
