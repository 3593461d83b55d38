"""The revision of a recipe: a number that is never reused, and the day it dates from."""

from dataclasses import dataclass
from datetime import date

from generator.formula.model import Formula
from generator.history.events import Ledger


@dataclass(frozen=True, slots=True, kw_only=True)
class CurrentRevision:
    """`updated` is the day of the last change, else the day of publication, else None."""

    number: int
    updated: date | None


def revision_of(formula: Formula, ledger: Ledger) -> CurrentRevision:
    """The ledger's newest number for the recipe; where it has none, 1 and one more for each correction."""
    numbered = ledger.revision(formula.name)
    days = [each.on for each in formula.about.corrections]
    if numbered is not None and numbered.cause != "first":
        days.append(numbered.on)
    updated = max(days) if days else formula.about.published
    return CurrentRevision(
        number=numbered.number if numbered else 1 + len(formula.about.corrections), updated=updated
    )
