"""The sheet of tags that a make prints: to be filled in by hand, the smallest that holds every word at full size."""

from typing import Any

from generator.present.tag_views import NetWeight, TagView
from generator.present.views import RecipeView
from generator.render.output import Product
from generator.render.paper import to_pdf
from generator.render.tag_sheets.sheets import Arranged, arrange_tags
from generator.render.tag_sheets.sizes import SIZES
from generator.render.theme import DEFAULT
from generator.settings import Paper

USUAL = SIZES[0].name


def render_tags(
    view: RecipeView, *, paper: Paper, theme: str = DEFAULT, tag: TagView | None = None
) -> Product:
    """The tag sheet of a recipe, for the desk; `tag` knows the day and the packs."""
    document = lay_out_tags(view, paper=paper, theme=theme, tag=tag)
    return Product(path=f"desk/{view.name}/tags.pdf", content=to_pdf(document))


def lay_out_tags(view: RecipeView, *, paper: Paper, theme: str = DEFAULT, tag: TagView | None = None) -> Any:
    """The sheet as a laid-out document."""
    return arranged_tags(tag or undated(view), paper=paper, theme=theme).document


def arranged_tags(tag: TagView, *, paper: Paper, theme: str = DEFAULT) -> Arranged:
    return arrange_tags(tag, size=USUAL, paper=paper, theme=theme)


def undated(view: RecipeView) -> TagView:
    """A tag of no day, with the words of the recipe's own view and the letters of the US, the largest."""
    return TagView(recipe=view, letters="american", net=NetWeight(large=view.net_weight))
