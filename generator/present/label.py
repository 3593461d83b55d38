"""The declaration as it is printed beside a recipe."""

from generator.declaration.model import Declaration
from generator.present.views import LabelView
from generator.settings import Settings

ADVICE = (
    "Made in a home kitchen. If you have an allergy, ask the maker before you eat, and take your doctor's "
    "advice; your own packs may differ from the maker's."
)

_NEAREST = {"UK": "EU", "CA": "EU", "ANZ": "EU"}
"""Whose rules the page and the tags follow where the site's own region has none yet: the longest list."""


def label_region(region: str) -> str:
    """The region whose declaration is printed for a site of `region`."""
    return _NEAREST.get(region, region)


def label_view(declaration: Declaration, settings: Settings) -> LabelView:
    """The words of the site's region, in the order in which they are printed."""
    return LabelView(
        heading="Ingredients",
        ingredients=declaration.ingredients,
        contains_line=declaration.contains_line,
        may_line=declaration.may_line,
        kitchen_line=kitchen_line(settings.kitchen_handles),
        unfinished=declaration.unfinished,
        advice=ADVICE,
        statement=declaration.statement,
    )


def kitchen_line(handles: tuple[str, ...]) -> str:
    """What else the maker's kitchen handles; nothing is filled in for a maker who does not say."""
    if not handles:
        return ""
    listed = handles[0] if len(handles) == 1 else f"{', '.join(handles[:-1])} and {handles[-1]}"
    return f"Made in a home kitchen that also handles {listed}."
