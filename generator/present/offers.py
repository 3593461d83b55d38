"""The sizes that a page offers by itself, worded by the functions that word the recipe.

A fixed set of factors, and the usual tins for a recipe that names its own: few enough to stay small. Any other
size is what `tinleaf show` is for.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from generator.formula.model import Formula
from generator.formula.tin_text import read_shape
from generator.formula.usual_tins import offers
from generator.formula.wish import Granted, Wish, grant
from generator.present.recipe import Setting, recipe_view
from generator.present.resized import Both, both_orders, resized_words
from generator.present.scaled import told_as_scaled
from generator.present.size_views import OfferView, SizesView
from generator.present.spots import heat_spots, sized_spots
from generator.present.tins import factor_words, tin_title
from generator.present.views import RecipeView
from generator.wording.speech import later, say

FACTORS = (Fraction(1, 2), Fraction(1), Fraction(3, 2), Fraction(2), Fraction(3))
"""From half to double, which is scaled without a word, and three times, which comes with its notes."""


_AS_DEEP = later("{times} × the recipe, for {tin}, filled as deep as the recipe's own tin")
_AS_FULL = later("{times} × the recipe, for {tin}, filled as full as the recipe's own tin")


def sizes_view(formula: Formula, setting: Setting, plain: RecipeView | None = None) -> SizesView:
    """All that the page of a recipe may change; `plain` is its view, where that was made before."""
    plain = plain or recipe_view(formula, setting)
    heats = dict(heat_spots(plain))
    return SizesView(
        first=setting.settings.first,
        places=tuple(place for place, _ in sized_spots(plain)),
        offers=offer_views(formula, setting, plain),
        heat_places=tuple(heats),
        heats=tuple(heats.values()),
    )


def offer_views(formula: Formula, setting: Setting, plain: RecipeView | None = None) -> tuple[OfferView, ...]:
    """The recipe as written, the factors, then the usual tins for the recipe's own."""
    plain = plain or recipe_view(formula, setting)
    sizes = (*_factors(formula, setting), *_tins(formula, setting))
    orders = both_orders(setting)
    return tuple(_offer(size, plain, orders) for size in sizes)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Size:
    """What was granted, and what a reader knows it by; `tin` is "" for a factor."""

    granted: Granted
    id: str
    kind: str
    title: str
    scale: str
    tin: str = ""


def _factors(formula: Formula, setting: Setting) -> Iterator[_Size]:
    for factor in sorted(FACTORS, key=lambda factor: factor != 1):
        granted = _granted(formula, setting, Wish(times=factor))
        title = f"{factor_words(factor)} ×"
        kind, scale = ("written", "") if factor == 1 else ("times", say("{title} the recipe", title=title))
        yield _Size(granted=granted, id=str(factor), kind=kind, title=title, scale=scale)


def _tins(formula: Formula, setting: Setting) -> Iterator[_Size]:
    own = read_shape(formula.about.tin)[0] if formula.about.tin else None
    for tin in () if own is None else offers(own):
        # A muffin tin is named without the size of its cups, which does not matter: only their number differs.
        granted = _granted(formula, setting, Wish(tin=tin.name), Wish(times=tin.factor))
        title, times = tin_title(tin), factor_words(granted.factor)
        scale = say(_AS_DEEP if tin.by == "depth" else _AS_FULL, times=times, tin=title)
        yield _Size(
            granted=granted, id=tin.name, kind="tin", title=f"{title}: {times} ×", scale=scale, tin=title
        )


def _granted(formula: Formula, setting: Setting, *wishes: Wish) -> Granted:
    """The first of the wishes that can be granted."""
    tried = (grant(formula, wish, spoons=setting.spoons) for wish in wishes)
    found = next((each for each in tried if isinstance(each, Granted)), None)
    if found is None:
        raise ValueError(f"none of {wishes} is granted, and a factor above nothing always is")
    return found


def _offer(size: _Size, plain: RecipeView, orders: Both) -> OfferView:
    told = told_as_scaled(plain, size.granted)
    front = (told.makes, told.portions, size.tin or told.tin)
    words = tuple(resized_words(size.granted.formula, orders))
    return OfferView(
        id=size.id,
        kind=size.kind,
        title=size.title,
        scale=size.scale,
        notes=tuple(say(note.says) for note in size.granted.notes),
        by_weight=(*front, *(by_weight for by_weight, _ in words)),
        by_volume=(*front, *(by_volume for _, by_volume in words)),
    )
