"""The pages of a publication: one function for each, and all of them in order."""

from collections.abc import Callable, Iterator

from generator.present.views import ArticleView, KindView, RecipeView, SiteView
from generator.render.site.missing import missing_page
from generator.render.site.page import Page
from generator.render.site.sizes import choices_of

Structured = Callable[[object], str]


def home_page(site: SiteView, *, structured: Structured) -> Page:
    return Page(
        template="home.html",
        path="",
        title=site.title,
        description=site.lead,
        picture=next((teaser.photo for teaser in site.teasers if teaser.photo), None),
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
        picture=recipe.photo,
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
        picture=article.photo,
        structured=structured(article),
        published=article.published.isoformat() if article.published else "",
        content={"article": article},
    )


def kind_page(kind: KindView) -> Page:
    return Page(
        template="kind.html",
        path=kind.path,
        title=kind.title,
        description=f"Bakes and notes of the kind: {kind.title}.",
        content={"kind": kind},
    )


def _listing(template: str, path: str, title: str, description: str, site: SiteView) -> Page:
    return Page(template=template, path=path, title=title, description=description, content={"site": site})


def site_pages(site: SiteView, *, structured: Structured) -> Iterator[Page]:
    """Every page of the site: the bakes, then all others."""
    yield from (recipe_page(recipe, structured=structured) for recipe in site.recipes)
    yield from list_pages(site, structured=structured)


def list_pages(site: SiteView, *, structured: Structured) -> Iterator[Page]:
    """Every page that is not one bake's own, the home page first."""
    yield home_page(site, structured=structured)
    yield _listing("recipes.html", "recipes/", "Bakes", f"All bakes of {site.title}, newest first.", site)
    yield _listing("kinds.html", "kinds/", "Kinds", f"The kinds of bakes of {site.title}.", site)
    yield from (kind_page(kind) for kind in site.kinds)
    yield _listing("journal.html", "journal/", "Journal", f"The journal of {site.title}.", site)
    yield from (article_page(article, structured=structured) for article in (*site.journal, *site.standing))
    words = f"Every correction of a bake of {site.title}, newest first."
    yield _listing("corrections.html", "corrections/", "Corrections", words, site)
    if site.allergens is not None:
        words = f"The bakes of {site.title} by allergen, with where each comes from."
        yield _listing("allergens.html", "allergens/", "Bakes by allergen", words, site)
    yield missing_page(site.theme)
