"""The demo publication on its day, understood once for all the tests of a process, and the sizes its pages offer."""

import json
from collections.abc import Iterator
from datetime import date
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any

from generator.formula.wish import Wish
from generator.pipeline import CheckResult, check_folder, show_json
from generator.present.size_views import OfferView
from generator.present.views import RecipeView

DAY = date(2026, 11, 25)
ROOT = Path(__file__).resolve().parents[1]


@cache
def checked() -> CheckResult:
    return check_folder(ROOT / "content", day=DAY)


def offers_of(recipe: RecipeView) -> tuple[OfferView, ...]:
    assert recipe.sizes is not None
    return recipe.sizes.offers


def offered() -> Iterator[tuple[RecipeView, OfferView]]:
    """Every bake of the demo in every size that its page offers."""
    for recipe in checked().site.recipes:
        yield from ((recipe, offer) for offer in offers_of(recipe))


def shown(recipe: str, offer: OfferView) -> dict[str, Any]:
    """What `tinleaf show --format json` prints for the size of an offer."""
    wish = Wish(tin=offer.id) if offer.kind == "tin" else Wish(times=Fraction(offer.id))
    told = show_json(checked(), recipe, wish=wish)
    assert told.refused == ""
    data: dict[str, Any] = json.loads(told.text)
    return data
