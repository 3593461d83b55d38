"""What the proof holds the output against, and which files there ought to be."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from types import MappingProxyType

from generator.present.people import PeopleView
from generator.present.posters import chapter_cards, page_posters, share_path
from generator.present.search_views import ShelfList
from generator.present.tag_views import TagView
from generator.present.views import ArticleView, KindView, RecipeView, SiteView
from generator.proof.claim import Claim
from generator.proof.context import Sayings
from generator.proof.feed_entry import FeedEntry

# The files of a recipe on the desk, and what each is.
_DESK = ("tags.pdf", "tags.txt", "bench-sheet.pdf", "formula.pdf", "overlay.png", "tall.jpg")
MADE_BY_COMMAND = "tags-for.pdf"


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A file that belongs into the output. `kind` chooses how it is read; `of` is the view that it shows."""

    kind: str
    of: RecipeView | ArticleView | KindView | ShelfList | None = None


@dataclass(frozen=True, kw_only=True)
class Expected:
    """The publication as it was understood. The limits are bytes of a description; `remedy` is what to type."""

    site: SiteView
    data: Mapping[str, Mapping[str, object]]
    tags: Mapping[str, TagView]
    people: PeopleView | None = None
    limit: int = 5000
    short_limit: int = 2000
    remedy: str = ""
    proved: Mapping[str, FeedEntry] = field(default_factory=lambda: MappingProxyType({}))
    """Entries of feeds that were read back and held against their bakes already, by address."""
    worded: Callable[[RecipeView], RecipeView] = lambda view: view
    """Gives a view with all its words, where `site` has it without."""

    @cached_property
    def places(self) -> Mapping[str, Place]:
        """Every file but those that others lead to (pictures, fonts, styles), by its path in the output."""
        return MappingProxyType(dict(self._places()))

    @cached_property
    def lists(self) -> Sayings:
        """What any list of the site may say: titles, leads, days, corrections."""
        site = self.site
        heads = [(view.title, view.lead, view.published_day, view.corrections) for view in site.recipes]
        posts = [(post.title, post.lead, post.day) for post in (*site.journal, *site.standing)]
        pictures = [each.photo for each in site.recipes]
        pictures += [each.photo for each in (*site.journal, *site.standing)]
        kinds = tuple(each.title for each in site.kinds)
        about = (
            site.title,
            site.lead,
            site.maker,
            site.contact,
            site.pages,
            site.corrections,
            kinds,
            site.shelves,
            site.search,
        )
        return Sayings(views=(*heads, *posts, *pictures, about))

    @cached_property
    def _sayings(self) -> dict[int, Sayings]:
        return {}

    def sayings(self, view: object) -> Sayings:
        """What the strings of a view explain, worked out once for all the files that show it."""
        known = self._sayings.get(id(view))
        if known is None:
            known = self._sayings[id(view)] = Sayings(views=(view, self.site.title, self.site.maker))
        return known

    @cached_property
    def _claims(self) -> dict[tuple[str, int], tuple[Claim, ...]]:
        return {}

    def claims(
        self, kind: str, view: RecipeView, made: Callable[[RecipeView], Iterable[Claim]]
    ) -> tuple[Claim, ...]:
        """What a kind of file must say of a view, worked out once for all files of the kind."""
        key = kind, id(view)
        if key not in self._claims:
            self._claims[key] = tuple(made(view))
        return self._claims[key]

    @cached_property
    def _agreed(self) -> set[tuple[int, bytes]]:
        return set()

    def note(self, view: RecipeView, content: bytes) -> None:
        """That a text says all of a view and nothing else."""
        self._agreed.add((id(view), content))

    def is_noted(self, view: RecipeView, content: bytes) -> bool:
        return (id(view), content) in self._agreed

    def _places(self) -> Iterator[tuple[str, Place]]:
        site = self.site
        yield from ((path, Place(kind=kind)) for path, kind in _FIXED.items())
        for view in site.recipes:
            yield f"site/{view.path}index.html", Place(kind="bake", of=view)
            yield f"site/{view.path}recipe.json", Place(kind="data", of=view)
            yield f"site/{share_path(view)}", Place(kind="poster", of=view)
            yield from ((f"site/{card.path}", Place(kind="card", of=view)) for card in view.cards)
            if view.sheet:
                yield f"site/{view.sheet.path}", Place(kind="formula sheet", of=view)
        for post in site.journal:
            yield f"site/{post.path}index.html", Place(kind="article", of=post)
        for page in site.standing:
            yield f"site/{page.path}index.html", Place(kind="article", of=page)
        for path, _ in page_posters(site):
            yield f"site/{path}", Place(kind="poster")
        for shelf in site.kinds:
            yield f"site/{shelf.path}index.html", Place(kind="kind", of=shelf)
        for each in site.shelves:
            yield f"site/{each.path}index.html", Place(kind="shelves", of=each)
        for old in site.moved:
            ending = "" if old.path.endswith((".html", ".htm")) else "index.html"
            yield f"site/{old.path}{ending}", Place(kind="moved")
        if site.search is not None:
            yield "site/search/index.html", Place(kind="search")
            yield "site/search.json", Place(kind="search")
        if site.allergens is not None:
            yield "site/allergens/index.html", Place(kind="allergens")
        if self.people is not None:
            yield "desk/people/index.html", Place(kind="people")
        for view in site.all_recipes:
            yield from _film_texts(view)
            for card in chapter_cards(view):
                yield f"desk/{view.name}/{card.file}", Place(kind="poster", of=view)
            for name in _DESK:
                stem = name.partition(".")[0]
                kind = {"formula": "formula sheet", "tall": "poster"}.get(stem, stem)
                yield f"desk/{view.name}/{name}", Place(kind=kind, of=view)


def _film_texts(view: RecipeView) -> Iterator[tuple[str, Place]]:
    """The texts under each film, the chapters of those that have some up to their end, and one comment for all."""
    yield f"desk/{view.name}/comment.txt", Place(kind="comment", of=view)
    for number in range(1, max(len(view.videos), 1) + 1):
        after = "" if number == 1 else f"-{number}"
        film = view.videos[number - 1 : number]
        others = tuple(each for each in view.videos if each not in film)
        told = view if number == 1 else replace(view, videos=(*film, *others))
        yield f"desk/{view.name}/description{after}.txt", Place(kind="description", of=told)
        yield f"desk/{view.name}/short{after}.txt", Place(kind="short", of=told)
        chapters = film[0].chapters if film else ()
        if chapters and all(
            each.end_seconds is not None and each.end_seconds > each.seconds for each in chapters
        ):
            yield f"desk/{view.name}/chapters{after}.vtt", Place(kind="chapters", of=told)


_FIXED = {
    "site/index.html": "home",
    "site/404.html": "list",
    "site/recipes/index.html": "bakes",
    "site/journal/index.html": "list",
    "site/kinds/index.html": "list",
    "site/corrections/index.html": "corrections",
    "site/feed.xml": "atom",
    "site/feed.json": "json feed",
    "site/sitemap.xml": "sitemap",
    "site/robots.txt": "robots",
}
