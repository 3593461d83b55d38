"""What the ledger tells: the revisions of recipes and of the pantry, and every copy that went out.

An event is never changed once it is written; a later one says what became of the earlier. Texts are the files as they
stood, so that an earlier revision can be shown exactly; facts are those of `present/facts.py`, plain values only.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from types import MappingProxyType
from typing import Final, Literal, TypeAlias

Facts: TypeAlias = Mapping[str, object]
Cause: TypeAlias = Literal["first", "correction", "undo", "component", "pantry", "hand"]

CAUSES: Final[tuple[Cause, ...]] = ("first", "correction", "undo", "component", "pantry", "hand")


@dataclass(frozen=True, slots=True, kw_only=True)
class Revision:
    """Recipe `recipe` has number `number` from the day `on`.

    `cause` "first" tells how it stood before anything changed; "component" and "pantry" that something it is made
    with was corrected (`what` names it); "hand" that a change was made in an editor and owned up to later.
    `corrections` is how many entries its file had, `text` the whole file, byte-order mark and line ends included.
    """

    recipe: str
    number: int
    on: date
    cause: Cause
    what: str = ""
    why: str = ""
    corrections: int = 0
    facts: Facts = field(default_factory=lambda: MappingProxyType({}))
    text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PantryChange:
    """`text` is pantry.yaml from the day `on`; without `what`, as it stood before anything changed."""

    on: date
    what: str = ""
    why: str = ""
    text: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Posted:
    """A copy went out, or was renewed. `place` as in `history.places`; `to` is whoever got a card or a tag.

    `fingerprint` is that of the exact text, "" where the place has none; `own` is false where the text was worded
    elsewhere and stands so with the maker's consent.
    """

    recipe: str
    place: str
    revision: int
    on: date
    to: str = ""
    fingerprint: str = ""
    own: bool = True
    facts: Facts = field(default_factory=lambda: MappingProxyType({}))


@dataclass(frozen=True, slots=True, kw_only=True)
class Gone:
    """A copy that no longer exists, or that nobody can mend any more."""

    recipe: str
    place: str
    on: date
    why: str
    to: str = ""


Event: TypeAlias = Revision | PantryChange | Posted | Gone


@dataclass(frozen=True, slots=True, kw_only=True)
class Ledger:
    """The events in the order in which they were written.

    `reserved` holds, by recipe, the highest number that a line names which could not be read: it stays taken.
    """

    events: tuple[Event, ...] = ()
    reserved: Mapping[str, int] = field(default_factory=lambda: MappingProxyType({}))

    def revisions(self, recipe: str) -> tuple[Revision, ...]:
        """All revisions of a recipe, oldest first; their numbers rise."""
        return tuple(each for each in self.events if isinstance(each, Revision) and each.recipe == recipe)

    def revision(self, recipe: str) -> Revision | None:
        """The newest revision of a recipe, None where the ledger has never numbered it."""
        return next(reversed(self.revisions(recipe)), None)

    def next_number(self, recipe: str, *, shown: int) -> int:
        """The number for a new revision: above every number that was ever used, and above the one `shown` now."""
        newest = self.revision(recipe)
        return max(shown, newest.number if newest else 0, self.reserved.get(recipe, 0)) + 1

    def pantry(self) -> PantryChange | None:
        """The newest text of the pantry, None where the ledger keeps none."""
        return next((each for each in reversed(self.events) if isinstance(each, PantryChange)), None)

    def posted(self, recipe: str) -> tuple[Posted, ...]:
        """The newest event of each copy of a recipe that still exists, in the order in which they first went out."""
        copies: dict[tuple[str, str], Posted] = {}
        for each in self._of(recipe):
            if isinstance(each, Posted):
                copies[each.place, each.to] = each
            elif isinstance(each, Gone):
                copies.pop((each.place, each.to), None)
        return tuple(copies.values())

    def postings(self, recipe: str) -> tuple[Posted, ...]:
        """Every posting of a recipe, also of copies that were renewed or are gone."""
        return tuple(each for each in self._of(recipe) if isinstance(each, Posted))

    def latest_day(self, recipe: str) -> date | None:
        """The day of the last event that concerns a recipe."""
        return max((each.on for each in self._of(recipe)), default=None)

    def recipes(self) -> tuple[str, ...]:
        """Every recipe that the ledger names, sorted."""
        return tuple(sorted({each.recipe for each in self.events if not isinstance(each, PantryChange)}))

    def _of(self, recipe: str) -> Iterator[Revision | Posted | Gone]:
        for each in self.events:
            if not isinstance(each, PantryChange) and each.recipe == recipe:
                yield each
