"""What changed from one revision of a recipe to the next, and since one of them until today."""

from dataclasses import dataclass, replace
from datetime import date
from itertools import pairwise
from pathlib import Path

from generator.history.ledger import Facts
from generator.history.taking_back import in_time
from generator.pipeline import CheckResult
from generator.present.changed import Told, effects, told_changes
from generator.present.facts import facts_of
from generator.records.rebuild import Rebuilt, Refused, no_such_revision, rebuild, revision_numbers

UNNUMBERED = "not corrected"
"""The cause of a step from the newest revision to what the file says by now, where that is another thing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """What changed between two revisions; `unrecorded` says why that cannot be told, else it is "".

    `after` is `before` for a change that has no number yet.
    """

    before: int
    after: int
    on: date | None = None
    cause: str = ""
    what: str = ""
    why: str = ""
    told: tuple[Told, ...] = ()
    effects: tuple[str, ...] = ()
    unrecorded: str = ""


def steps(root: Path, result: CheckResult, name: str) -> tuple[Step, ...]:
    """Every step from the first revision to today, oldest first."""
    numbers = revision_numbers(result, name)
    facts = {number: _facts(root, result, name, number) for number in numbers}
    found = [
        _compared(_story(result, name, before, after), facts[before], facts[after])
        for before, after in pairwise(numbers)
    ]
    newest, today = facts[numbers[-1]], facts_of(result.setting.book[name], result.setting)
    last = _compared(Step(before=numbers[-1], after=numbers[-1], cause=UNNUMBERED), newest, today)
    return (*found, last) if last.told else tuple(found)


def since(root: Path, result: CheckResult, name: str, number: int) -> Step | Refused:
    """All that changed from a revision until today, as one step."""
    numbers = revision_numbers(result, name)
    if number not in numbers:
        return no_such_revision(result, name, number)
    today = facts_of(result.setting.book[name], result.setting)
    return _compared(Step(before=number, after=numbers[-1]), _facts(root, result, name, number), today)


def _compared(step: Step, then: Facts | Refused, now: Facts | Refused) -> Step:
    if isinstance(then, Refused):
        return replace(step, unrecorded=then.words)
    if isinstance(now, Refused):
        return replace(step, unrecorded=now.words)
    return replace(step, told=told_changes(then, now), effects=effects(then, now))


def _facts(root: Path, result: CheckResult, name: str, number: int) -> Facts | Refused:
    """The facts that the ledger keeps of a revision, else those of the revision rebuilt."""
    ledger = result.setting.ledger
    kept = next((each for each in ledger.revisions(name) if each.number == number), None)
    if kept is not None and kept.facts:
        return kept.facts
    if kept is None and not ledger.revisions(name) and number == revision_numbers(result, name)[-1]:
        return facts_of(result.setting.book[name], result.setting)
    rebuilt = rebuild(root, result, name, number)
    return rebuilt.facts if isinstance(rebuilt, Rebuilt) else rebuilt


def _story(result: CheckResult, name: str, before: int, after: int) -> Step:
    """Day, cause, words of the change and the reason of a revision, from the ledger or from the file."""
    step = Step(before=before, after=after)
    revisions = result.setting.ledger.revisions(name)
    kept = next((each for each in revisions if each.number == after), None)
    if kept is not None and kept.cause != "first":
        return replace(step, on=kept.on, cause=kept.cause, what=kept.what, why=kept.why)
    corrections = in_time(result.setting.book[name].about.corrections)
    first = revisions[0].number if revisions else 1 + len(corrections)
    count = revisions[0].corrections if revisions else len(corrections)
    place = count - 1 - (first - after)
    if 0 <= place < len(corrections):
        each = corrections[place]
        return replace(step, on=each.on, cause="correction", what=each.change, why=each.why)
    return step
