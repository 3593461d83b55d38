"""The block as a whole, and what gives way when it does not fit.

Sections are left out whole, in the order of `GIVES_WAY`: first what the film can do without and the page has
anyway (credits, further films, unpaid links), then the method as one whole, then the lines around the
ingredients, the chapters, and the paid links with their disclosure. Only after that, in a limit that is too
small for them, do the ingredients give way, then corrections, cautions, advice, what the kitchen handles, and
the allergens last of all. What a reader needs in order to bake or to eat is then named in one sentence that
leads to the page. The dish and its link stay to the end.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from itertools import pairwise
from types import MappingProxyType

from generator.present.views import RecipeView
from generator.render.description import links, measures, method, opening, safety
from generator.render.description.ingredients import ingredients
from generator.render.description.plain import address, size
from generator.render.description.section import Section
from generator.wording.forms import all_of
from generator.wording.speech import later, say

DISH, DISCLOSURE, PAID = "the dish and its link", "disclosure", "paid links"
# Before the sentence that leads to the page.
_LEADING = (DISH, DISCLOSURE, "corrections")

# In the order in which they are read.
SECTIONS: tuple[tuple[str, Callable[[RecipeView], str]], ...] = (
    (DISH, opening.dish),
    (DISCLOSURE, links.disclosure),
    ("corrections", opening.corrections),
    ("lead", opening.lead),
    ("makes", opening.makes),
    ("times", opening.times),
    ("ingredients", ingredients),
    ("measures", measures.measures),
    ("cautions", safety.cautions),
    ("method", method.method),
    ("temperatures", method.temperatures),
    ("other ovens", measures.ovens),
    ("allergens", safety.allergens),
    ("kitchen", safety.kitchen),
    ("advice", safety.advice),
    ("keeping", opening.keeping),
    ("chapters", links.chapters),
    (PAID, links.paid_links),
    ("unpaid links", links.unpaid_links),
    ("further films", links.further_films),
    ("credits", links.credits_given),
)
GIVES_WAY = (
    "credits",
    "further films",
    "unpaid links",
    "other ovens",
    "measures",
    "method",
    "lead",
    "times",
    "makes",
    "keeping",
    "temperatures",
    "chapters",
    PAID,
    "ingredients",
    "corrections",
    "cautions",
    "advice",
    "kitchen",
    "allergens",
)
# What the sentence that leads to the page says of a section that it stands for.
_ON_THE_PAGE: Mapping[str, str] = MappingProxyType(
    {
        "method": later("the method"),
        "ingredients": later("the whole recipe"),
        "corrections": later("the corrections"),
        "cautions": later("the cautions"),
        "kitchen": later("what else the kitchen handles"),
        "allergens": later("the allergens"),
    }
)
# A section whose words another one's words cover.
_COVERED_BY: Mapping[str, str] = MappingProxyType({"method": "ingredients", "kitchen": "allergens"})
# Sections that stand close together, as lines of one paragraph.
_TOGETHER = frozenset(
    {("makes", "times"), ("temperatures", "other ovens")}
    | {("allergens", "kitchen"), ("kitchen", "advice"), ("allergens", "advice")}
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Description:
    """`text` ends with a line end, and is "" only where not even the link fits.

    `dropped` names what was left out, in the order of dropping.
    Where it has `allergens`, the limit is too small.
    """

    text: str
    dropped: tuple[str, ...]


def render_description(view: RecipeView, *, limit: int) -> Description:
    """The block in at most `limit` bytes of UTF-8, line end included."""
    told = sections_of(view)
    order = [name for name in GIVES_WAY if any(section.name == name for section in told)]
    for count in range(len(order) + 1):
        dropped = order[:count]
        text = composed(told, dropped=dropped, pointer=_pointer(view, dropped))
        if size(text) <= limit:
            return Description(text=text, dropped=tuple(dropped))
    link = f"{address(view.url)}\n"
    return Description(text=link if size(link) <= limit else "", dropped=(*order, DISH))


def sections_of(view: RecipeView) -> list[Section]:
    """All sections that have anything to say, in the order in which they are read."""
    sections = (Section(name=name, text=tell(view)) for name, tell in SECTIONS)
    return [section for section in sections if section.text]


def composed(sections: list[Section], *, dropped: list[str], pointer: Section) -> str:
    """The text of the sections that are kept, with the sentence that leads to the page after the first ones."""
    # Without a paid link there is nothing to disclose.
    gone = {*dropped, *((DISCLOSURE,) if PAID in dropped else ())}
    kept = [section for section in sections if section.name not in gone]
    leading = [section for section in kept if section.name in _LEADING]
    shown = [*leading, *([pointer] if pointer.text else []), *kept[len(leading) :]]
    text = shown[0].text
    for before, section in pairwise(shown):
        text += ("\n" if (before.name, section.name) in _TOGETHER else "\n\n") + section.text
    return f"{text}\n"


def _pointer(view: RecipeView, dropped: list[str]) -> Section:
    """One sentence with the link, for all that a reader needs and does not find here."""
    named = [
        words
        for name, words in _ON_THE_PAGE.items()
        if name in dropped and _COVERED_BY.get(name) not in dropped
    ]
    if not named:
        return Section(name="page", text="")
    text = say(
        _BEFORE if "allergens" in dropped else _SEE,
        things=all_of(say(each) for each in named),
        page=address(view.url),
    )
    return Section(name="page", text=text)


_BEFORE = later("Before you bake, give or eat this, see its page for {things}: {page}")
_SEE = later("See its page for {things}: {page}")
