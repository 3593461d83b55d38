"""What a tag says: the bake as the day's record knows it, or as it is assumed to be."""

from dataclasses import dataclass
from datetime import date

from generator.present.views import RecipeView


@dataclass(frozen=True, slots=True, kw_only=True)
class NetWeight:
    """`lead` "Net wt", then what is set in the required height, then what stands beside it. Any may be ""."""

    lead: str = ""
    large: str = ""
    beside: str = ""
    grams: int = 0

    @property
    def unbroken(self) -> str:
        """`large` on one line."""
        return self.large.replace(" ", "\u00a0")


@dataclass(frozen=True, slots=True, kw_only=True)
class TagView:
    """`recipe` with the declaration and the cautions of the day. Dates are words, "" where they are not known.

    `letters` names the rule of their heights, "american" or "european". `packs` says which packs were used or are
    assumed, `record` is the path of the bake record or "". `statement_on` is the date of the statement of the place.
    `untold` are sentences for the maker on what the tag cannot say.
    """

    recipe: RecipeView
    letters: str
    net: NetWeight
    baked_on: str = ""
    best_before: str = ""
    packs: str = ""
    record: str = ""
    day: date | None = None
    statement_on: str = ""
    untold: tuple[str, ...] = ()

    @property
    def keeps(self) -> str:
        """How the bake keeps, as a sentence; "" where the recipe does not say it."""
        words = self.recipe.keeps
        return words if not words or words[-1] in ".!?" else f"{words}."


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """Whom a tag is for; all "" for a tag to fill in by hand."""

    to: str = ""
    sender: str = ""
    note: str = ""
