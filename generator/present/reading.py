"""What to read after a bake: bakes of its kinds, bakes with a component in common, posts that speak of it."""

from collections.abc import Container, Iterable, Iterator, Mapping
from heapq import merge
from itertools import islice
from operator import itemgetter

from generator.present.page_link import PageLink
from generator.present.search_views import Related
from generator.present.views import ArticleView, RecipeView
from generator.wording.speech import say

MOST = 5
"""Links under one heading: enough to choose from, few enough to read."""


def related_reading(
    recipes: tuple[RecipeView, ...],
    journal: tuple[ArticleView, ...],
    links: Mapping[str, tuple[PageLink, ...]],
) -> Iterator[tuple[Related, ...]]:
    """For each bake its headings with at least one link; no bake stands under two of them, nor under “Goes into”.

    `links` are the components of each bake, by its path.
    """
    posts, users, alike = _posts_by_bake(journal), _users(recipes, links), _by_kinds(recipes)
    for view in recipes:
        told = {view.path, *(link.path for link in view.used_in)}
        found = [Related(title=say("In the journal"), links=_links(posts.get(view.path, ()), set()))]
        for component in links[view.path]:
            others = _links(users[component], told)
            found.append(Related(title=say("Other bakes with {title}", title=component.title), links=others))
            told |= {link.path for link in others}
        if view.kinds:
            found.append(Related(title=say("More of its kind"), links=_links(_of_kind(view, alike), told)))
        yield tuple(each for each in found if each.links)


def component_links(view: RecipeView) -> tuple[PageLink, ...]:
    """The recipes of the site that a bake is made with."""
    lines = (line for part in view.parts for line in part.lines)
    return tuple(dict.fromkeys(line.component for line in lines if line.component))


def _posts_by_bake(journal: Iterable[ArticleView]) -> Mapping[str, list[ArticleView]]:
    found: dict[str, list[ArticleView]] = {}
    for post in journal:
        for path in dict.fromkeys(bake.path for bake in post.bakes):
            found.setdefault(path, []).append(post)
    return found


def _users(
    recipes: Iterable[RecipeView], links: Mapping[str, tuple[PageLink, ...]]
) -> Mapping[PageLink, list[RecipeView]]:
    found: dict[PageLink, list[RecipeView]] = {}
    for view in recipes:
        for component in dict.fromkeys(links[view.path]):
            found.setdefault(component, []).append(view)
    return found


Kinds = frozenset[str]
Placed = tuple[int, RecipeView]
"""A bake and its place among all, the newest first."""


def _by_kinds(recipes: Iterable[RecipeView]) -> Mapping[Kinds, list[Placed]]:
    """The bakes of the same kinds: there are few such groups, however many bakes."""
    found: dict[Kinds, list[Placed]] = {}
    for place, view in enumerate(recipes):
        found.setdefault(_kinds(view), []).append((place, view))
    return found


def _kinds(view: RecipeView) -> Kinds:
    return frozenset(kind.path for kind in view.kinds)


def _of_kind(view: RecipeView, alike: Mapping[Kinds, list[Placed]]) -> Iterator[RecipeView]:
    """Those with most kinds in common first, then the newest, which is the order they come in."""
    mine = _kinds(view)
    for most in range(len(mine), 0, -1):
        groups = (bakes for kinds, bakes in alike.items() if len(kinds & mine) == most)
        yield from (one for _, one in merge(*groups, key=itemgetter(0)))


def _links(pages: Iterable[RecipeView | ArticleView], told: Container[str]) -> tuple[PageLink, ...]:
    fresh = (PageLink(title=page.title, path=page.path) for page in pages if page.path not in told)
    return tuple(islice(fresh, MOST))
