"""Pages that moved: what stands where, and which old address leads to which page."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from generator.formula.article import Article
from generator.formula.old_address import OldAddress
from generator.present.addresses import absolute, journal_path, kind_path, recipe_path, standing_path
from generator.present.page_link import PageLink
from generator.present.recipe import Setting
from generator.present.search_views import MovedView
from generator.present.views import ArticleView, RecipeView

KEPT = ("leaf/", "media/", "assets/", "search/", "by/")
"""Folders of the site that hold its own files alone."""
_FIXED = {
    "404.html": "the page for addresses that lead nowhere",
    "recipes/": "the list of bakes",
    "kinds/": "the list of kinds",
    "journal/": "the journal",
    "corrections/": "the list of corrections",
    "allergens/": "the table of allergens",
}


def standing_where(
    recipes: Mapping[str, tuple[str, tuple[str, ...]]], articles: Iterable[Article]
) -> dict[str, str]:
    """What stands at each address, published or not, by its path, folded.

    `recipes` are the file and the kinds of each bake, by its name.
    """
    found = dict(_FIXED)
    pages = tuple(articles)
    kinds = (*(kinds for _, kinds in recipes.values()), *(each.kinds for each in pages))
    found |= {kind_path(kind): f"the list of the kind “{kind}”" for some in kinds for kind in some}
    found |= {recipe_path(name): f"the bake {path}" for name, (path, _) in recipes.items()}
    found |= {_path(each): f"the page {each.path}" for each in pages}
    return {path.casefold(): owner for path, owner in found.items()}


def moved_views(
    recipes: tuple[RecipeView, ...],
    pages: tuple[ArticleView, ...],
    articles: Iterable[Article],
    bakes: Mapping[str, tuple[OldAddress, ...]],
    setting: Setting,
) -> tuple[MovedView, ...]:
    """A view for each old address of a page that is on the site, by address; `bakes` are those of bakes, by name."""
    old = {_path(each): each.was for each in articles}
    old |= {recipe_path(name): was for name, was in bakes.items()}
    found = (
        MovedView(path=was.path, to=PageLink(title=page.title, path=page.path), url=_url(page.path, setting))
        for page in _both(recipes, pages)
        for was in old.get(page.path, ())
    )
    return tuple(sorted(found, key=lambda each: each.path))


def _both(
    recipes: tuple[RecipeView, ...], pages: tuple[ArticleView, ...]
) -> Iterator[RecipeView | ArticleView]:
    yield from recipes
    yield from pages


def _path(article: Article) -> str:
    return journal_path(article.name) if article.kind == "journal" else standing_path(article.name)


def _url(path: str, setting: Setting) -> str:
    return absolute(setting.settings.url, path)


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """A bake, published or not, as far as addresses go: its file, its kinds, and where it was."""

    path: str
    kinds: tuple[str, ...]
    was: tuple[OldAddress, ...]
