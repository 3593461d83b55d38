"""A recipe in large print, with room for what really happened on the day."""

from typing import Any

from generator.present.views import RecipeView
from generator.render.output import Product
from generator.render.paper import fill, lay_out, pdf_moment, to_pdf
from generator.render.paper_words import (
    all_ways,
    columns,
    home_of,
    line_words,
    loose_cautions,
    on_paper,
    running_title,
    unsaid_uses,
)
from generator.render.rich_text import tied
from generator.render.theme import DEFAULT
from generator.settings import Paper


def render_bench_sheet(view: RecipeView, *, paper: Paper, theme: str = DEFAULT) -> Product:
    """The bench sheet of a recipe, for the desk."""
    document = lay_out_bench_sheet(view, paper=paper, theme=theme)
    return Product(path=f"desk/{view.name}/bench-sheet.pdf", content=to_pdf(document))


def lay_out_bench_sheet(view: RecipeView, *, paper: Paper, theme: str = DEFAULT) -> Any:
    """The sheet as a laid-out document; a long recipe takes further sides."""
    html = fill(
        "bench-sheet.html",
        theme=theme,
        view=view,
        paper=paper,
        columns=columns(view),
        cautions=loose_cautions(view),
        ways=all_ways(view),
        running=running_title(view.title),
        created=pdf_moment(view.published),
        modified=pdf_moment(view.updated or view.published),
        tied=tied,
        unsaid_uses=unsaid_uses,
        line_words=line_words,
        words=lambda text: on_paper(text, home_of(view)),
    )
    return lay_out(html, "docket.css", "sheet.css", "bench-sheet.css", "loading.css", theme=theme)
