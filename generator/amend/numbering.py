"""The events that a change adds to the ledger: how it was, what was corrected, and whose revision rises with it."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from generator.amend.standing import PANTRY, Standing, path_of
from generator.formula.bake_day import components_within
from generator.formula.model import Formula
from generator.history.changes import Harm, compare
from generator.history.ledger import Cause, Event, Ledger, PantryChange, Revision
from generator.history.revisions import revision_of
from generator.pipeline import CheckResult
from generator.present.facts import facts_of

BY_HAND = "changed in an editor"


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """Why a number rises. `recipe` is "" where the pantry is what changed."""

    recipe: str
    cause: Cause
    what: str
    why: str
    on: date


def events_for(standing: Standing, after: CheckResult, reason: Reason) -> tuple[Event, ...]:
    """First how everything concerned stood, where the ledger does not know that; then what is new."""
    numberer = _Numberer(standing=standing, after=after, reason=reason, ledger=standing.result.setting.ledger)
    return tuple(numberer.events())


def raised(events: tuple[Event, ...], reason: Reason) -> tuple[Revision, ...]:
    """The new revisions that the change itself makes, the corrected recipe's first."""
    found = [
        each
        for each in events
        if isinstance(each, Revision) and each.cause != "first" and each.what != BY_HAND
    ]
    return tuple(sorted(found, key=lambda each: (each.recipe != reason.recipe, each.recipe)))


@dataclass(slots=True)
class _Numberer:
    """Gives out numbers; `ledger` grows with every event, so that none is given twice."""

    standing: Standing
    after: CheckResult
    reason: Reason
    ledger: Ledger

    def events(self) -> Iterator[Event]:
        touched = self._touched()
        for name in self._concerned(touched):
            yield from self._as_it_stood(name)
        yield from self._pantry()
        for name in touched:
            yield self._add(self._new(name))

    def _touched(self) -> list[str]:
        """The corrected recipe, then all others whose facts are other ones now, components before what holds them."""
        book, name = self.after.setting.book, self.reason.recipe
        changed = [each for each in book if each != name and self._differs(each)]
        depth = {each: len(components_within(book[each], book)) for each in changed}
        own = [name] if name in book else []
        return [*own, *sorted(changed, key=lambda each: (depth[each], each))]

    def _differs(self, name: str) -> bool:
        """Whether the change is one for this recipe too: what is made with a corrected recipe is another bake."""
        if self.reason.recipe and self._depends(name) and self._weighs_otherwise():
            return True
        return self._says_otherwise(name)

    def _weighs_otherwise(self) -> bool:
        """Whether more than words of the corrected recipe changed."""
        name = self.reason.recipe
        before, after = self.standing.result.setting, self.after.setting
        newest = self.ledger.revision(name)
        by_hand = self.reason.cause == "hand"
        then = (newest.facts if newest else {}) if by_hand else facts_of(before.book[name], before)
        return any(each.harm < Harm.WORDS for each in compare(then, facts_of(after.book[name], after)))

    def _says_otherwise(self, name: str) -> bool:
        """Whether its own facts are other ones now; a change by hand is held against the ledger."""
        before, after = self.standing.result.setting, self.after.setting
        now = facts_of(after.book[name], after)
        if self.reason.cause == "hand":
            newest = self.ledger.revision(name)
            return newest is not None and self._depends(name) and newest.facts != now
        return name in before.book and facts_of(before.book[name], before) != now

    def _depends(self, name: str) -> bool:
        """Whether the recipe is made with the corrected one; everything is made with the pantry."""
        book = self.after.setting.book
        inner = (each.name for each in components_within(book[name], book))
        return not self.reason.recipe or self.reason.recipe in inner

    def _concerned(self, touched: list[str]) -> list[str]:
        """What changes, and before it all it is made with: to show it as it was, their texts are needed too."""
        book = self.standing.result.setting.book
        inner = {name: components_within(book[name], book) for name in touched if name in book}
        names = dict.fromkeys((*touched, *(each.name for found in inner.values() for each in found)))
        return sorted(
            (each for each in names if each in book),
            key=lambda each: len(components_within(book[each], book)),
        )

    def _as_it_stood(self, name: str) -> Iterator[Event]:
        """The first event of a recipe; one for what was typed by hand since, so that it can be gone back to."""
        formula = self.standing.result.setting.book.get(name)
        if formula is None:
            return
        newest = self.ledger.revision(name)
        by_hand = self.reason.cause == "hand"
        if newest is None:
            if not (by_hand and name == self.reason.recipe):
                yield self._add(self._first(formula))
        elif newest.text != self.standing.text(path_of(name)) and not by_hand:
            yield self._add(self._revision(formula, self.standing.result, "hand", BY_HAND, ""))

    def _first(self, formula: Formula) -> Revision:
        days = [each.on for each in formula.about.corrections] or [
            each for each in (formula.about.published,) if each
        ]
        revision = self._revision(formula, self.standing.result, "first", "", "")
        number = max(revision_of(formula, self.ledger).number, revision.number)
        return replace(revision, number=number, on=min(max(days, default=self.reason.on), self.reason.on))

    def _pantry(self) -> Iterator[Event]:
        if self.reason.recipe:
            return
        now = self.standing.text(PANTRY)
        newest, on = self.ledger.pantry(), self.reason.on
        by_hand = self.reason.cause == "hand"
        if newest is None and not by_hand:
            yield self._add(PantryChange(on=on, text=now))
        elif newest is not None and newest.text != now and not by_hand:
            yield self._add(PantryChange(on=on, what=BY_HAND, text=now))
        text = self.after.texts.get(PANTRY, "")
        yield self._add(PantryChange(on=on, what=self.reason.what, why=self.reason.why, text=text))

    def _new(self, name: str) -> Revision:
        own = name == self.reason.recipe
        cause: Cause = self.reason.cause if own else "component" if self.reason.recipe else "pantry"
        source = self.reason.recipe or "pantry"
        what = self.reason.what if own else f"{source}: {self.reason.what}"
        return self._revision(self.after.setting.book[name], self.after, cause, what, self.reason.why)

    def _revision(self, formula: Formula, result: CheckResult, cause: Cause, what: str, why: str) -> Revision:
        shown = revision_of(formula, self.ledger).number
        return Revision(
            recipe=formula.name,
            number=self.ledger.next_number(formula.name, shown=shown if cause != "first" else 0),
            on=self.reason.on,
            cause=cause,
            what=what,
            why=why,
            corrections=len(formula.about.corrections),
            facts=facts_of(formula, result.setting),
            text=result.texts[path_of(formula.name)],
        )

    def _add(self, event: Event) -> Event:
        self.ledger = replace(self.ledger, events=(*self.ledger.events, event))
        return event
