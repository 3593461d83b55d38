"""Takes the last correction back, as a new revision: the file gets the text that it had before, byte for byte."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date

from generator.amend.answer import Asked, Refused
from generator.amend.lines import correct_line
from generator.amend.mentions import correct_mention, is_mention
from generator.amend.merge import merged
from generator.amend.numbering import BY_HAND, Reason
from generator.amend.plan import Plan, lies_ahead, mistakes_made, new_warnings, planned
from generator.amend.standing import PANTRY, Standing, path_of
from generator.formula.model import Correction, Formula
from generator.history.corrections import read_change
from generator.history.ledger import PantryChange, Revision
from generator.source.document import Document
from generator.source.edits import without_entry
from generator.source.lines import Places
from generator.source.read import read_document
from generator.source.write import replace_spans

TAKEN_BACK = "taken back"
_UNDONE = f"{TAKEN_BACK}: "
_NOT_KNOWN = (
    "Only the file tells of this correction, so the amount is the old one, and how the rest of its line was written "
    "before nobody kept: look the line over"
)
_BY_HAND = "Change it in the file as you want it, and record that with --as-it-stands."


def plan_undo(
    standing: Standing, recipe: str, *, on: date, why: str = "", prefix: str = ""
) -> Plan | Refused:
    """The plan that takes the newest correction back which has not been taken back yet."""
    wrong = lies_ahead(standing, on)
    if wrong is not None:
        return wrong
    found = _last(standing.result.setting.ledger.revisions(recipe))
    formula, path = standing.result.setting.book[recipe], path_of(recipe)
    if found is None:
        return _without_ledger(standing, formula, on, why, prefix)
    corrected, before = found
    if on < corrected.on:
        return Refused(
            message=f"{on.isoformat()} is before the correction itself, of {corrected.on.isoformat()}",
            hint="Give that day or a later one with --on.",
        )
    text = merged(corrected.text, standing.text(path), before)
    if text is None:
        return Refused(
            message=f"the lines of {path} that “{corrected.what}” changed were edited since", hint=_BY_HAND
        )
    reason = Reason(recipe=recipe, cause="undo", what=_reversed(corrected.what), why=why or TAKEN_BACK, on=on)
    return _undone(standing, {path: text.encode()}, reason, prefix)


def plan_pantry_undo(standing: Standing, *, on: date, why: str = "", prefix: str = "") -> Plan | Refused:
    """The same for the pantry."""
    wrong = lies_ahead(standing, on)
    if wrong is not None:
        return wrong
    changes = tuple(each for each in standing.result.setting.ledger.events if isinstance(each, PantryChange))
    found = _last_of_pantry(changes)
    if found is None:
        return Refused(message="the ledger knows of no correction of the pantry that could be taken back")
    corrected, before = found
    text = merged(corrected.text, standing.text(PANTRY), before)
    if text is None:
        return Refused(
            message=f"the lines of {PANTRY} that “{corrected.what}” changed were edited since", hint=_BY_HAND
        )
    reason = Reason(
        recipe="", cause="pantry", what=f"{_UNDONE}{corrected.what}", why=why or TAKEN_BACK, on=on
    )
    return _undone(standing, {PANTRY: text.encode()}, reason, prefix)


def _undone(standing: Standing, changed: dict[str, bytes], reason: Reason, prefix: str) -> Plan | Refused:
    after = standing.with_files(changed)
    refused = mistakes_made(standing, after)
    if refused is not None:
        return refused
    return planned(standing, after, changed, reason, found=new_warnings(standing, after), prefix=prefix)


def _last(revisions: Iterable[Revision]) -> tuple[Revision, str] | None:
    """The newest correction that still stands, and the file's text before it."""
    standing: list[tuple[Revision, str]] = []
    text = ""
    for each in revisions:
        if each.cause == "undo" and standing:
            standing.pop()
        elif each.cause in ("correction", "hand") and each.what != BY_HAND and text:
            standing.append((each, text))
        text = each.text
    return standing[-1] if standing else None


def _last_of_pantry(changes: Iterable[PantryChange]) -> tuple[PantryChange, str] | None:
    standing: list[tuple[PantryChange, str]] = []
    text: str | None = None
    for each in changes:
        if each.what.startswith(_UNDONE) and standing:
            standing.pop()
        elif each.what and each.what != BY_HAND and text is not None:
            standing.append((each, text))
        text = each.text
    return standing[-1] if standing else None


def _reversed(what: str) -> str:
    """“dough/bread flour 430 g -> 400 g” for the correction the other way."""
    change = read_change(what)
    return f"{change.what} {change.new} -> {change.old}" if change else f"{_UNDONE}{what}"


def _without_ledger(standing: Standing, formula: Formula, on: date, why: str, prefix: str) -> Plan | Refused:
    """A correction that only the file tells of is taken back by its own words."""
    last = formula.about.corrections[-1] if formula.about.corrections else None
    change = read_change(last.change) if last else None
    if last is None or change is None:
        message = (
            f"“{last.change}” does not say what stood there before" if last else "there is no correction"
        )
        return Refused(message=f"{formula.name}: {message}", hint=_BY_HAND if last else "")
    if standing.result.setting.ledger.revision(formula.name) is not None:
        return Refused(message=f"every correction of {formula.name} in the ledger is taken back already")
    path = path_of(formula.name)
    document, _ = read_document(path, standing.files[path], "recipe")
    text = _rebuilt(standing, formula, document, last, on) if document else None
    if text is None or isinstance(text, Refused):
        return text or Refused(message=f"{path} cannot be changed for certain", hint=_BY_HAND)
    reason = Reason(
        recipe=formula.name, cause="undo", what=_reversed(last.change), why=why or TAKEN_BACK, on=on
    )
    plan = _undone(standing, {path: text.encode()}, reason, prefix)
    if isinstance(plan, Refused):
        return plan
    return replace(plan, remarks=(*plan.remarks, _NOT_KNOWN))


def _rebuilt(
    standing: Standing, formula: Formula, document: Document, last: Correction, on: date
) -> str | Refused | None:
    """The text with the old amount, the other measures worded anew, and without the entry."""
    change = read_change(last.change)
    if change is None:
        return None
    asked = Asked(recipe=formula.name, what=change.what, new=change.old, why=TAKEN_BACK, on=on, old="")
    if is_mention(change.what):
        worked = correct_mention(formula, document.text, asked)
    else:
        worked = correct_line(formula, document, asked, standing.result.shelf)
    if isinstance(worked, Refused):
        return worked
    if worked.old != change.new:
        return Refused(
            message=f"{change.what} is {worked.old} now, and not the {change.new} of the correction",
            hint=_BY_HAND,
        )
    entry = without_entry(document.front, "corrections", Places(document.path, document.text))
    return replace_spans(document.text, (*worked.edits, *entry)) if entry else None
