"""The data of any page, chosen by its view."""

from generator.present.trails import ListPage
from generator.present.views import ArticleView, RecipeView, SiteView
from generator.render.structured_data.publication import author, breadcrumbs, part_of, publisher, website
from generator.render.structured_data.recipe import recipe_data
from generator.render.structured_data.script import Node, known, script


def structured_data(view: object, site: SiteView) -> str:
    """A recipe, a post, a standing page, a list or the home page (the whole publication); "" for anything else."""
    if isinstance(view, RecipeView):
        return recipe_data(view, site)
    if isinstance(view, ArticleView):
        return article_data(view, site)
    if isinstance(view, ListPage):
        return list_data(view, site)
    return home_data(view) if isinstance(view, SiteView) else ""


def home_data(site: SiteView) -> str:
    return script(website(site))


def article_data(view: ArticleView, site: SiteView) -> str:
    """A post of the journal as BlogPosting, a page that stands as WebPage."""
    in_journal = any(post.path == view.path for post in site.journal)
    node = _article(view, site, in_journal=in_journal)
    return script(node, breadcrumbs(site, path=view.path, title=view.title))


def list_data(view: ListPage, site: SiteView) -> str:
    """A page that lists others is a CollectionPage."""
    node = known(
        {
            "@type": "CollectionPage",
            "@id": f"{site.url}{view.path}#page",
            "name": view.title,
            "url": site.url + view.path,
            "description": view.lead,
            "isPartOf": part_of(site),
            "inLanguage": site.language,
            "publisher": publisher(site),
        }
    )
    return script(node, breadcrumbs(site, path=view.path, title=view.title))


def _article(view: ArticleView, site: SiteView, *, in_journal: bool) -> Node:
    return known(
        {
            "@type": "BlogPosting" if in_journal else "WebPage",
            "@id": f"{view.url}#{'post' if in_journal else 'page'}",
            "headline": view.title,
            "name": view.title,
            "url": view.url,
            "mainEntityOfPage": view.url if in_journal else "",
            "isPartOf": part_of(site),
            "inLanguage": site.language,
            "description": view.lead,
            "image": [view.photo.url] if view.photo else [],
            "author": author(site),
            "publisher": publisher(site),
            "datePublished": view.published.isoformat() if view.published else "",
            "keywords": ", ".join(kind.title for kind in view.kinds),
        }
    )
