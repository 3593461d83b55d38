"""The pages of a publication: one function for each, and all of them in order."""

from collections.abc import Callable, Iterator

from generator.present.posters import shared_article, shared_home, shared_view
from generator.present.search_views import SearchView, ShelfList
from generator.present.trails import ListPage
from generator.present.views import ArticleView, KindView, RecipeView, SiteView
from generator.render.search_json import search_text
from generator.render.site.missing import missing_page
from generator.render.site.page import Page, data_block
from generator.render.site.sizes import choices_of
from generator.wording.speech import say

Structured = Callable[[object], str]


def home_page(site: SiteView, *, structured: Structured) -> Page:
    return Page(
        template="home.html",
        path="",
        title=site.title,
        description=site.lead,
        picture=shared_home(site),
        structured=structured(site),
        content={"site": site},
    )


def recipe_page(recipe: RecipeView, *, structured: Structured) -> Page:
    """The page of one bake, from its own view alone."""
    return Page(
        template="recipe.html",
        path=recipe.path,
        title=recipe.title,
        description=recipe.lead,
        kind="article",
        picture=shared_view(recipe),
        structured=structured(recipe),
        published=recipe.published.isoformat() if recipe.published else "",
        updated=recipe.updated.isoformat() if recipe.updated else "",
        choices=choices_of(recipe.sizes),
        content={"recipe": recipe},
    )


def article_page(article: ArticleView, *, structured: Structured) -> Page:
    """A journal post or a standing page."""
    return Page(
        template="article.html",
        path=article.path,
        title=article.title,
        description=article.lead,
        kind="article",
        picture=shared_article(article),
        structured=structured(article),
        published=article.published.isoformat() if article.published else "",
        content={"article": article},
    )


def kind_page(kind: KindView, *, structured: Structured) -> Page:
    words = say("Bakes and notes of the kind: {title}.", title=kind.title)
    return Page(
        template="kind.html",
        path=kind.path,
        title=kind.title,
        description=words,
        structured=structured(ListPage(title=kind.title, path=kind.path, lead=words)),
        content={"kind": kind},
    )


def shelf_page(shelves: ShelfList, *, structured: Structured) -> Page:
    """All bakes by one quality: by time, by method, by tin or by occasion."""
    return Page(
        template="shelves.html",
        path=shelves.path,
        title=shelves.title,
        description=shelves.lead,
        structured=structured(ListPage(title=shelves.title, path=shelves.path, lead=shelves.lead)),
        content={"shelves": shelves},
    )


def search_page(search: SearchView, site: SiteView, *, structured: Structured) -> Page:
    """The search with its data inside, and all bakes by kind for a reader without scripts."""
    words = say("Search the bakes of {title} by name, ingredient, time, method and tin.", title=site.title)
    return Page(
        template="search.html",
        path="search/",
        title=say("Search"),
        description=words,
        structured=structured(ListPage(title=say("Search"), path="search/", lead=words)),
        content={"search": search, "site": site, "found_block": data_block(search_text(search))},
    )


def _lists(site: SiteView) -> Iterator[tuple[str, ListPage]]:
    """The template of each page that lists the whole of something, and what it is."""
    name = site.title
    yield (
        "recipes.html",
        ListPage(
            title=say("Bakes"), path="recipes/", lead=say("All bakes of {name}, newest first.", name=name)
        ),
    )
    yield (
        "kinds.html",
        ListPage(title=say("Kinds"), path="kinds/", lead=say("The kinds of bakes of {name}.", name=name)),
    )
    yield (
        "journal.html",
        ListPage(title=say("Journal"), path="journal/", lead=say("The journal of {name}.", name=name)),
    )
    words = say("Every correction of a bake of {name}, newest first.", name=name)
    yield "corrections.html", ListPage(title=say("Corrections"), path="corrections/", lead=words)
    if site.allergens is not None:
        words = say("The bakes of {name} by allergen, with where each comes from.", name=name)
        yield "allergens.html", ListPage(title=say("Bakes by allergen"), path="allergens/", lead=words)


def _listing(template: str, view: ListPage, site: SiteView, structured: Structured) -> Page:
    return Page(
        template=template,
        path=view.path,
        title=view.title,
        description=view.lead,
        structured=structured(view),
        content={"site": site},
    )


def site_pages(site: SiteView, *, structured: Structured) -> Iterator[Page]:
    """Every page of the site: the bakes, then all others."""
    yield from (recipe_page(recipe, structured=structured) for recipe in site.recipes)
    yield from list_pages(site, structured=structured)


def list_pages(site: SiteView, *, structured: Structured) -> Iterator[Page]:
    """Every page that is not one bake's own, the home page first."""
    yield home_page(site, structured=structured)
    for template, view in _lists(site):
        yield _listing(template, view, site, structured)
    yield from (kind_page(kind, structured=structured) for kind in site.kinds)
    yield from (shelf_page(each, structured=structured) for each in site.shelves)
    if site.search is not None:
        yield search_page(site.search, site, structured=structured)
    yield from (article_page(article, structured=structured) for article in (*site.journal, *site.standing))
    yield missing_page(site.theme)
