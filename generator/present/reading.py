"""What to read after a bake: bakes of its kinds, bakes with a component in common, posts that speak of it."""

from collections.abc import Iterable, Iterator, Mapping

from generator.present.page_link import PageLink
from generator.present.search_views import Related
from generator.present.views import ArticleView, RecipeView
from generator.wording.speech import say

MOST = 5
"""Links under one heading: enough to choose from, few enough to read."""


def related_reading(
    view: RecipeView,
    recipes: tuple[RecipeView, ...],
    journal: tuple[ArticleView, ...],
    links: Mapping[str, tuple[PageLink, ...]],
) -> tuple[Related, ...]:
    """Each heading with at least one link; no bake stands under two of them, nor under “Goes into”.

    `links` are the components of each bake, by its path.
    """
    told = {view.path, *(link.path for link in view.used_in)}
    found = [Related(title=say("In the journal"), links=_links(_posts(view, journal), set()))]
    for component in links[view.path]:
        users = _links((one for one in recipes if component in links[one.path]), told)
        found.append(Related(title=say("Other bakes with {title}", title=component.title), links=users))
        told |= {link.path for link in users}
    if view.kinds:
        found.append(Related(title=say("More of its kind"), links=_links(_of_kind(view, recipes), told)))
    return tuple(each for each in found if each.links)


def component_links(view: RecipeView) -> tuple[PageLink, ...]:
    """The recipes of the site that a bake is made with."""
    lines = (line for part in view.parts for line in part.lines)
    return tuple(dict.fromkeys(line.component for line in lines if line.component))


def _posts(view: RecipeView, journal: tuple[ArticleView, ...]) -> Iterator[ArticleView]:
    yield from (post for post in journal if any(bake.path == view.path for bake in post.bakes))


def _of_kind(view: RecipeView, recipes: tuple[RecipeView, ...]) -> list[RecipeView]:
    """Those with most kinds in common first, then the newest, which is the order they come in."""
    mine = {kind.path for kind in view.kinds}
    shared = {one.path: len(mine & {kind.path for kind in one.kinds}) for one in recipes}
    return sorted((one for one in recipes if shared[one.path]), key=lambda one: -shared[one.path])


def _links(pages: Iterable[RecipeView | ArticleView], told: set[str]) -> tuple[PageLink, ...]:
    found = [PageLink(title=page.title, path=page.path) for page in pages if page.path not in told]
    return tuple(found[:MOST])
