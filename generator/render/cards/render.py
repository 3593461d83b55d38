"""A recipe on cards of four sizes."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from generator.present.correction_views import since_anchor
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
    runs_html,
    runs_of,
    unsaid_uses,
)
from generator.render.qr import QrCode, qr_code
from generator.render.rich_text import tied
from generator.render.theme import DEFAULT
from generator.wording.speech import say


@dataclass(frozen=True, slots=True, kw_only=True)
class CardSize:
    """A size of card: `name` in the file's name and in the style sheet, which holds the measures."""

    name: str
    module_mm: float


# The two index cards are 4 × 6 and 5 × 7 inches; A6 and A5 are sizes of ISO 216. `module_mm` is the width of
# one module of the QR code.
CARD_SIZES = (
    CardSize(name="4x6", module_mm=0.45),
    CardSize(name="5x7", module_mm=0.5),
    CardSize(name="a6", module_mm=0.45),
    CardSize(name="a5", module_mm=0.55),
)


def render_cards(view: RecipeView, *, theme: str = DEFAULT) -> Iterator[Product]:
    """The four cards of a recipe, for the folder of its page."""
    code = card_code(view) if view.on_site else None
    for size in CARD_SIZES:
        yield Product(
            path=f"site/recipes/{view.name}/card-{size.name}.pdf",
            content=to_pdf(lay_out_card(view, size, code=code, theme=theme)),
        )


def card_code(view: RecipeView) -> QrCode:
    """A code that leads to what changed since this very card was printed: paper cannot change."""
    title = say(
        "QR code that leads to {address} and to what changed since revision {revision}",
        address=view.url,
        revision=view.revision,
    )
    return qr_code(f"{view.url}#{since_anchor(view.revision)}", title=title)


def lay_out_card(view: RecipeView, size: CardSize, *, code: QrCode | None, theme: str = DEFAULT) -> Any:
    """One card as a laid-out document; each of its pages is a side."""
    html = fill(
        "card.html",
        theme=theme,
        view=view,
        size=size.name,
        code=code,
        code_side=code.side_mm(size.module_mm) if code else 0,
        columns=columns(view),
        cautions=loose_cautions(view),
        ways=all_ways(view),
        running=running_title(view.title),
        created=pdf_moment(view.published),
        modified=pdf_moment(view.updated or view.published),
        tied=tied,
        runs_of=runs_of,
        runs_html=runs_html,
        unsaid_uses=unsaid_uses,
        line_words=line_words,
        paper=lambda words: on_paper(words, home_of(view)),
    )
    return lay_out(html, "docket.css", "card.css", theme=theme)
