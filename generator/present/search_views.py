"""What the search looks through, and the lists by time, method, tin and occasion, as frozen views."""

from dataclasses import dataclass

from generator.present.page_link import PageLink


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One choice of a filter: `id` for programs and addresses, `title` for the reader."""

    id: str
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SearchTime:
    """The longest times of one way in whole minutes; `method` is the id of the way, "" where there is one alone.

    `hands_on` is None where no work is timed although there must be some: nobody can say then."""

    method: str
    hands_on: int | None
    total: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SearchTin:
    """A tin that the bake fits into; `times` says how much of the recipe fills it, "" for the recipe's own tin."""

    tin: Choice
    times: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SearchBake:
    """One bake. `names` are the normalised words of its title, `words` all others that a reader may look for.

    `contains` and `may_contain` are columns of the table of allergens, each with all that may be meant by it; they
    are the whole truth only where `finished` is true.
    `minutes` is empty where nothing is timed.
    """

    title: str
    path: str
    lead: str
    day: str
    time: str
    kinds: tuple[Choice, ...]
    occasions: tuple[Choice, ...]
    methods: tuple[Choice, ...]
    minutes: tuple[SearchTime, ...]
    tins: tuple[SearchTin, ...]
    contains: tuple[str, ...]
    may_contain: tuple[str, ...]
    finished: bool
    names: tuple[str, ...]
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SearchPage:
    """A journal post or a standing page."""

    title: str
    path: str
    lead: str
    day: str
    names: tuple[str, ...]
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SearchView:
    """Everything that can be found, and the choices of each filter that at least one bake meets."""

    bakes: tuple[SearchBake, ...]
    pages: tuple[SearchPage, ...]
    kinds: tuple[Choice, ...]
    occasions: tuple[Choice, ...]
    methods: tuple[Choice, ...]
    tins: tuple[Choice, ...]
    totals: tuple[Choice, ...]
    hands_on: tuple[Choice, ...]
    allergens: tuple[Choice, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfBake:
    """A bake on a shelf; `words` stand beside it: its time, or how much of the recipe is meant."""

    title: str
    path: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """Bakes that have one thing in common. `anchor` is unique in its page."""

    title: str
    anchor: str
    bakes: tuple[ShelfBake, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ShelfList:
    """All bakes by one quality. `remark` says how far the list can be trusted, or ""."""

    title: str
    path: str
    lead: str
    remark: str
    shelves: tuple[Shelf, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Related:
    """What to read next, under the words that say why."""

    title: str
    links: tuple[PageLink, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MovedView:
    """An old address and the page that stands elsewhere now; `url` is the absolute address of that page."""

    path: str
    to: PageLink
    url: str
