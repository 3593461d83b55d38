"""Cards of a selection of bakes, several on a sheet, from what the pipeline understood."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.present.views import RecipeView
from generator.publication.checked import CheckResult
from generator.render.cards.sheets import lay_out_card_sheets
from generator.render.print_fonts import missing_glyphs
from generator.settings import Paper

# What fits a sheet best, and is at hand, where the paper is sold.
_USUAL: dict[Paper, str] = {"letter": "4x6", "a4": "a6"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Imposed:
    """The sheets. `size` is that of the cards, `paper` that of the sheets; `told` is for the maker."""

    content: bytes
    size: str
    paper: Paper
    cards: int
    sheets: int
    told: tuple[str, ...]


def usual_card(paper: Paper) -> str:
    return _USUAL[paper]


def lay_cards(
    result: CheckResult,
    names: Sequence[str],
    *,
    size: str = "",
    paper: Paper | None = None,
    copies: int = 1,
    subject: str,
) -> Imposed:
    """The cards of these recipes, which are free of errors, in their order; `size` "" is what fits the paper."""
    settings = result.setting.settings
    sheet: Paper = paper or settings.paper
    card = size or usual_card(sheet)
    views = [result.views[name] for name in names]
    # Of the title of the file nothing is printed: where it could not be, the selection alone stands in it.
    title = f"{settings.title} – {subject}"
    title = title if not missing_glyphs(title) else subject
    made = lay_out_card_sheets(
        views,
        size=card,
        paper=sheet,
        title=title,
        maker=settings.maker,
        language=settings.language,
        copies=copies,
        theme=settings.theme,
    )
    told = list(_unpublished(views))
    if made.backs:
        told.append("Print in full size on both sides, turned over the long edge.")
    if not made.has_words:
        told.append(
            "The cards take the whole sheet: cut it in equal parts, there is no room for marks beside them."
        )
    return Imposed(
        content=made.content, size=card, paper=sheet, cards=made.cards, sheets=made.sheets, told=tuple(told)
    )


def _unpublished(views: Sequence[RecipeView]) -> Iterator[str]:
    for view in views:
        if not view.on_site:
            yield f"{view.name} is not published: its card has no code to look up what changed"
        if view.label.unfinished:
            yield f"{view.name}: {view.label.unfinished}"
