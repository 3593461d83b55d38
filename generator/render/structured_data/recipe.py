"""A bake as a Recipe of schema.org."""

from generator.present.views import CorrectionView, PageLink, RecipeView, SiteView
from generator.render.structured_data.film import films
from generator.render.structured_data.instructions import instructions
from generator.render.structured_data.publication import author, breadcrumbs, part_of, publisher
from generator.render.structured_data.script import Node, known, script


def recipe_data(view: RecipeView, site: SiteView) -> str:
    """The recipe and its way from the home page."""
    return script(_recipe(view, site), breadcrumbs(site, path=view.path, title=view.title))


def _recipe(view: RecipeView, site: SiteView) -> Node:
    prep, cook, total = view.iso_times
    return known(
        {
            "@type": "Recipe",
            "@id": f"{view.url}#recipe",
            "name": view.title,
            "url": view.url,
            "mainEntityOfPage": view.url,
            "isPartOf": part_of(site),
            "inLanguage": view.language,
            "description": view.lead,
            "image": [view.photo.url] if view.photo else [],
            "author": author(site),
            "publisher": publisher(site),
            "datePublished": view.published.isoformat() if view.published else "",
            "dateModified": view.updated.isoformat() if view.updated else "",
            "version": view.revision,
            "correction": [_correction(each) for each in view.corrections],
            "keywords": ", ".join(view.occasions),
            "recipeCategory": [kind.title for kind in view.kinds],
            "recipeYield": _one_or_all(list(dict.fromkeys(view.yield_words))),
            "prepTime": prep,
            "cookTime": cook,
            "totalTime": total,
            "recipeIngredient": list(view.ingredient_lines),
            "recipeInstructions": instructions(view),
            "video": _one_or_all(films(view)),
            "encoding": [_card(card, site) for card in view.cards],
        }
    )


def _correction(each: CorrectionView) -> Node:
    """A CorrectionComment of schema.org: what changed and why, and the day on which it was said."""
    return {
        "@type": "CorrectionComment",
        "text": each.sentence,
        "datePublished": each.on.isoformat(),
    }


def _one_or_all(values: list[Node] | list[str]) -> object:
    return values[0] if len(values) == 1 else values


def _card(card: PageLink, site: SiteView) -> Node:
    """A card to print: the same recipe in another file."""
    return {
        "@type": "MediaObject",
        "name": card.title,
        "contentUrl": site.url + card.path,
        "encodingFormat": "application/pdf",
    }
