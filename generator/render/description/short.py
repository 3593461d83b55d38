"""The block for a place with less room: the dish, cautions and allergens always, everything else as far as it fits.

What is left out is named in one sentence with the page's address. Sections are left out whole, so that no sentence is
cut. Where even what must stay is longer than the limit it is not shortened: `fits` is false, and `check` warns.
"""

from dataclasses import dataclass

from generator.present.views import RecipeView
from generator.render.description.plain import address, size
from generator.render.description.render import PAID, composed, sections_of
from generator.render.description.section import Section
from generator.wording.speech import later, say

# In the order in which they are left out; what is not named here always stays.
GIVES_WAY = (
    ("credits", later("the credits")),
    ("further films", later("further films")),
    ("unpaid links", later("links")),
    ("other ovens", later("other ovens")),
    ("measures", later("the cups and spoons that are meant")),
    ("keeping", later("how long it keeps")),
    ("method", later("the method")),
    ("temperatures", later("temperatures")),
    (PAID, later("paid links")),
    ("chapters", later("the chapters of the film")),
    ("ingredients", later("the ingredients")),
    ("times", later("the times")),
    ("lead", later("what it is like")),
    ("makes", later("how much it makes")),
    ("corrections", later("the corrections")),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Short:
    """`left_out` names sections in the order in which they gave way."""

    text: str
    left_out: tuple[str, ...]
    fits: bool


def render_short(view: RecipeView, *, limit: int) -> Short:
    """The block in at most `limit` bytes of UTF-8, line end included, or what must stay where that is more."""
    told = sections_of(view)
    there = {section.name for section in told}
    order = [(name, words) for name, words in GIVES_WAY if name in there]
    for count in range(len(order) + 1):
        gone = order[:count]
        pointer = _pointer(view, tuple(words for _, words in gone))
        dropped = [name for name, _ in gone]
        text = composed(told, dropped=dropped, pointer=pointer)
        if size(text) <= limit:
            return Short(text=text, left_out=tuple(dropped), fits=True)
    return Short(text=text, left_out=tuple(dropped), fits=False)


def _pointer(view: RecipeView, names: tuple[str, ...]) -> Section:
    if not names:
        return Section(name="page", text="")
    what = ", ".join(say(each) for each in reversed(names))
    words = say("Left out here, and all of it on the page: {what}. {page}", what=what, page=address(view.url))
    return Section(name="page", text=words)
