"""A formula on paper in the trade's way: total formula, preferments, final dough, and what belongs beside them."""

from collections.abc import Iterator
from typing import Any

from generator.present.views import RecipeView
from generator.render.output import Product
from generator.render.paper import fill, lay_out, pdf_moment, to_pdf
from generator.render.paper_words import running_title
from generator.render.rich_text import tied
from generator.render.theme import DEFAULT
from generator.settings import Paper


def render_formula_sheets(view: RecipeView, *, paper: Paper, theme: str = DEFAULT) -> Iterator[Product]:
    """The sheet for the desk and, of a recipe that is on the site, the same bytes beside its page."""
    if view.sheet is None:
        return
    content = to_pdf(lay_out_formula_sheet(view, paper=paper, theme=theme))
    yield Product(path=f"desk/{view.name}/formula.pdf", content=content)
    if view.on_site:
        yield Product(path=f"site/{view.sheet.path}", content=content)


def lay_out_formula_sheet(view: RecipeView, *, paper: Paper, theme: str = DEFAULT) -> Any:
    """The sheet as a laid-out document; a long formula takes further sides. `view.sheet` must be there."""
    html = fill(
        "formula-sheet.html",
        theme=theme,
        view=view,
        sheet=view.sheet,
        paper=paper,
        running=running_title(view.title),
        created=pdf_moment(view.published),
        modified=pdf_moment(view.updated or view.published),
        tied=tied,
    )
    return lay_out(html, "docket.css", "sheet.css", "formula-sheet.css", theme=theme)
