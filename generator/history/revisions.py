"""The revision of a recipe: a number that is never reused, and the day it dates from."""

from dataclasses import dataclass
from datetime import date

from generator.formula.model import Formula


@dataclass(frozen=True, slots=True, kw_only=True)
class Revision:
    """`updated` is the day of the last correction, else the day of publication, else None."""

    number: int
    updated: date | None


def revision_of(formula: Formula) -> Revision:
    """1 and one more for each correction, where no ledger has numbered the recipe."""
    days = [each.on for each in formula.about.corrections]
    updated = max(days) if days else formula.about.published
    return Revision(number=1 + len(days), updated=updated)
