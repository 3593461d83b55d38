"""Owns up to a change that was made in an editor: a new revision of what stands there, with the reason for it."""

from datetime import date

from generator.amend.answer import Refused
from generator.amend.numbering import Reason
from generator.amend.plan import Plan, lies_ahead, mistakes_made, planned
from generator.amend.standing import PANTRY, Standing, path_of
from generator.history.ledger import PantryChange
from generator.pipeline import CheckResult
from generator.present.changed import told_changes
from generator.present.facts import facts_of
from generator.source.edits import with_entry
from generator.source.lines import Places
from generator.source.read import read_document
from generator.source.write import replace_spans

_MOST_TOLD = 4


def plan_as_it_stands(
    standing: Standing, recipe: str, *, on: date, why: str, change: str = "", prefix: str = ""
) -> Plan | Refused:
    """The plan that numbers the recipe as it stands; with `change`, also an entry under its corrections."""
    wrong = lies_ahead(standing, on)
    newest, path = standing.result.setting.ledger.revision(recipe), path_of(recipe)
    if wrong is not None:
        return wrong
    if newest is not None and newest.text == standing.text(path) and not _differs(standing, recipe):
        return Refused(message=f"{recipe} is as revision {newest.number} has it: there is nothing to record")
    if newest is not None and on < newest.on:
        return Refused(
            message=f"{on.isoformat()} is before revision {newest.number}, of {newest.on.isoformat()}",
            hint="Give that day or a later one with --on.",
        )
    changed = _with_entry(standing, path, on, why, change)
    if isinstance(changed, Refused):
        return changed
    after = standing.with_files(changed) if changed else standing.result
    refused = mistakes_made(standing, after)
    if refused is not None:
        return refused
    what = change or _what(standing, after, recipe)
    return planned(
        standing,
        after,
        changed,
        Reason(recipe=recipe, cause="hand", what=what, why=why, on=on),
        prefix=prefix,
    )


def plan_pantry_as_it_stands(standing: Standing, *, on: date, why: str, prefix: str = "") -> Plan | Refused:
    """The same for the pantry: a revision of every recipe that is no longer what the ledger has."""
    wrong = lies_ahead(standing, on)
    if wrong is not None:
        return wrong
    newest = standing.result.setting.ledger.pantry()
    if newest is not None and newest.text == standing.text(PANTRY):
        return Refused(message=f"{PANTRY} is as the ledger has it: there is nothing to record")
    what = _rows(newest, standing)
    reason = Reason(recipe="", cause="hand", what=what, why=why, on=on)
    return planned(standing, standing.result, {}, reason, prefix=prefix)


def _differs(standing: Standing, recipe: str) -> bool:
    setting = standing.result.setting
    newest = setting.ledger.revision(recipe)
    return newest is not None and newest.facts != facts_of(setting.book[recipe], setting)


def _what(standing: Standing, after: CheckResult, recipe: str) -> str:
    """What a baker would say that changed, as far as the ledger can tell."""
    newest = standing.result.setting.ledger.revision(recipe)
    if newest is None:
        return "as it stands"
    words = [
        each.words for each in told_changes(newest.facts, facts_of(after.setting.book[recipe], after.setting))
    ]
    more = f"; and {len(words) - _MOST_TOLD} more" if len(words) > _MOST_TOLD else ""
    return "; ".join(words[:_MOST_TOLD]) + more if words else "words, or how they are laid out"


def _rows(newest: PantryChange | None, standing: Standing) -> str:
    """The lines of the pantry that are new."""
    if newest is None:
        return "the pantry as it stands"
    old = set(newest.text.splitlines())
    fresh = [line.strip() for line in standing.text(PANTRY).splitlines() if line not in old and line.strip()]
    return "; ".join(fresh[:_MOST_TOLD]) or "lines taken out of the pantry"


def _with_entry(standing: Standing, path: str, on: date, why: str, change: str) -> dict[str, bytes] | Refused:
    if not change:
        return {}
    document, _ = read_document(path, standing.files[path], "recipe")
    places = Places(path, document.text) if document else None
    if document is None or places is None:
        return Refused(message=f"{path} cannot be changed for certain")
    pairs = [("on", on.isoformat()), ("change", change), ("why", why)]
    entry = with_entry(document.front, "corrections", pairs, places)
    if entry is None:
        return Refused(message=f"“corrections:” of {path} is no list that an entry can be added to")
    return {path: replace_spans(document.text, entry).encode()}
