"""Tags on one sheet, in the smallest form that holds every word at full size."""

from dataclasses import dataclass
from typing import Any

from generator.present.tag_views import NetWeight, Person, TagView
from generator.present.views import RecipeView
from generator.render.output import Product
from generator.render.paper import PaperFault, fill, lay_out, pdf_moment, to_pdf
from generator.render.paper_words import runs_html
from generator.render.qr import QrCode, qr_code
from generator.render.rich_text import tied
from generator.render.tag_sheets.forms import FORMS, PAPERS_MM, TagForm, fields_of, marks_of
from generator.render.tag_sheets.letters import letters_for
from generator.render.theme import DEFAULT
from generator.settings import Paper

_MODULE_MM = 0.38
_STYLE = "tags.css"


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """The form that was chosen, and the code that stands on the tag where there is room for it."""

    form: TagForm
    code: QrCode | None


def render_tags(
    view: RecipeView, *, paper: Paper, theme: str = DEFAULT, tag: TagView | None = None
) -> Product:
    """The tag sheet of a recipe, for the desk; `tag` knows the day and the packs."""
    document = lay_out_tags(view, paper=paper, theme=theme, tag=tag)
    return Product(path=f"desk/{view.name}/tags.pdf", content=to_pdf(document))


def lay_out_tags(view: RecipeView, *, paper: Paper, theme: str = DEFAULT, tag: TagView | None = None) -> Any:
    """The sheet as a laid-out document: one page, but for a declaration longer than a sheet."""
    tag = tag or undated(view)
    choice = choose(view, theme=theme, tag=tag)
    if choice is None:
        return _flowing(tag, paper=paper, theme=theme)
    html = fill(
        "tags.html",
        theme=theme,
        **_words(tag, choice.form, choice.code),
        paper=paper,
        sheet=PAPERS_MM[paper],
        fields=fields_of(choice.form, paper),
        marks=marks_of(choice.form, paper),
    )
    document = lay_out(html, _STYLE, theme=theme)
    if len(document.pages) != 1:
        raise PaperFault(f"the tags of {view.name} spilled to {len(document.pages)} sheets")
    return document


def undated(view: RecipeView) -> TagView:
    """A tag of no day, with the words of the recipe's own view and the letters of the US, the largest."""
    return TagView(recipe=view, region="US", net=NetWeight(large=view.net_weight))


def choose(view: RecipeView, *, theme: str = DEFAULT, tag: TagView | None = None) -> Choice | None:
    """The smallest form that all words fit in, with the code if it fits too; None if no form is enough."""
    tag = tag or undated(view)
    code = qr_code(view.url, title=f"QR code that leads to {view.url}") if view.on_site else None
    letters = len(view.label.statement)
    for form in FORMS:
        if letters < form.most_letters and _fits(tag, form, code=None, theme=theme):
            roomy = code is not None and _fits(tag, form, code=code, theme=theme)
            return Choice(form=form, code=code if roomy else None)
    return None


def _fits(tag: TagView, form: TagForm, *, code: QrCode | None, theme: str) -> bool:
    """Whether a tag, laid out on a page of just its size, takes no second page."""
    html = fill(
        "tag-measure.html",
        theme=theme,
        **_words(tag, form, code),
        width=form.width_mm,
        height=form.height_mm,
    )
    return len(lay_out(html, _STYLE, theme=theme).pages) == 1


def _flowing(tag: TagView, *, paper: Paper, theme: str) -> Any:
    """One tag of a whole sheet and more: it flows to as many sheets as it needs, each numbered."""
    html = fill("tag-flowing.html", theme=theme, **_words(tag, FORMS[-1], None), paper=paper)
    return lay_out(html, _STYLE, theme=theme)


def _words(tag: TagView, form: TagForm, code: QrCode | None) -> dict[str, Any]:
    view = tag.recipe
    area = form.width_mm * form.height_mm / 100
    return {
        "day": tag,
        "nobody": Person(),
        "view": view,
        "form": form,
        "letters": letters_for(tag.region, face_cm2=area, grams=tag.net.grams),
        "code": code,
        "code_side": code.side_mm(_MODULE_MM) if code else 0,
        "created": pdf_moment(view.published),
        "modified": pdf_moment(tag.day or view.updated or view.published),
        "tied": tied,
        "runs_html": runs_html,
    }
