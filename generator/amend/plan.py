"""A correction, worked out whole before a byte is written: the new files, what they mean, what the ledger adds."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date

from generator.amend.answer import Asked, Refused, Worked
from generator.amend.difference import difference
from generator.amend.keys import correct_key, is_key
from generator.amend.lines import correct_line, full_name, named_lines
from generator.amend.mentions import correct_mention, is_mention
from generator.amend.numbering import Reason, events_for, raised
from generator.amend.standing import Standing, path_of
from generator.amend.still_said import still_said
from generator.diagnostics.diagnostic import Diagnostics, Severity
from generator.formula.model import Correction, Formula
from generator.history.ledger import LEDGER, Revision, appended
from generator.pipeline import CheckResult
from generator.source.document import Document
from generator.source.edits import with_entry
from generator.source.lines import Places
from generator.source.pending import Change
from generator.source.read import read_document
from generator.source.write import replace_spans

_ODD = "Write it in the file, and record it: tinleaf correct RECIPE --as-it-stands --why “…”."


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """What to commit and what to tell. `revisions` are the new numbers, the corrected recipe's first."""

    changes: tuple[Change, ...]
    what: str
    difference: str
    revisions: tuple[Revision, ...]
    remarks: tuple[str, ...]
    found: Diagnostics
    texts: Mapping[str, str]


def plan_correction(standing: Standing, asked: Asked, *, prefix: str = "") -> Plan | Refused:
    """The correction of one fact of a recipe. `prefix` stands before the paths in the difference."""
    formula = standing.result.setting.book[asked.recipe]
    wrong = _wrong_day(standing, formula, asked.on)
    if wrong is not None:
        return wrong
    path = path_of(asked.recipe)
    document, _ = read_document(path, standing.files[path], "recipe")
    if document is None or document.text.encode() != standing.files[path]:
        return Refused(message=f"{path} cannot be changed for certain", hint=_ODD)
    worked = _worked(formula, document, asked, standing)
    if isinstance(worked, Refused):
        return worked
    text = _with_correction(document, worked, asked)
    if isinstance(text, Refused):
        return text
    changed = {path: text.encode()}
    after = standing.with_files(changed)
    refused = mistakes_made(standing, after) or _astray(standing, after, asked, worked)
    if refused is not None:
        return refused
    reason = Reason(recipe=asked.recipe, cause="correction", what=worked.change, why=asked.why, on=asked.on)
    remarks = (*worked.remarks, *_film_remarks(after.setting.book[asked.recipe], asked, worked))
    found = (*new_warnings(standing, after), *still_said(after, asked.recipe, worked))
    return planned(standing, after, changed, reason, remarks=remarks, found=found, prefix=prefix)


def planned(
    standing: Standing,
    after: CheckResult,
    changed: Mapping[str, bytes],
    reason: Reason,
    *,
    remarks: Iterable[str] = (),
    found: Diagnostics = (),
    prefix: str,
) -> Plan:
    """The plan of a change that is known to be sound: the ledger's events with it."""
    events = events_for(standing, after, reason)
    ledger = appended(standing.files.get(LEDGER, b""), events)
    kept = tuple(
        f"{each.recipe} had been changed in an editor: that is kept as revision {each.number} of its own"
        for each in events
        if isinstance(each, Revision) and each.cause == "hand" and reason.cause != "hand"
    )
    before = {path: standing.text(path) for path in changed}
    return Plan(
        changes=standing.changes({**changed, LEDGER: ledger}),
        what=reason.what,
        difference=difference(before, {path: data.decode() for path, data in changed.items()}, prefix=prefix),
        revisions=raised(events, reason),
        remarks=(*kept, *remarks),
        found=found,
        texts=after.texts,
    )


def _worked(formula: Formula, document: Document, asked: Asked, standing: Standing) -> Worked | Refused:
    """A line of the formula first, then a word of the method or a key, so that a line may be called “rest”."""
    if not asked.old and named_lines(formula, asked.what):
        return correct_line(formula, document, asked, standing.result.shelf)
    if is_mention(asked.what):
        return correct_mention(formula, document.text, asked)
    if is_key(asked.what):
        return correct_key(document, asked)
    lines = named_lines(formula, asked.what)
    if asked.old and lines:
        return Refused(
            message=f"the amount of {lines[0].item} is named by its line alone",
            hint=f"Type: tinleaf correct {asked.recipe} “{full_name(lines[0])}” “{asked.new}”.",
        )
    return correct_line(formula, document, asked, standing.result.shelf)


def _with_correction(document: Document, worked: Worked, asked: Asked) -> str | Refused:
    places = Places(document.path, document.text)
    pairs = [("on", asked.on.isoformat()), ("change", worked.change), ("why", asked.why)]
    pairs += [(key, words) for key, words in (("film", asked.film), ("bake", asked.bake)) if words]
    entry = with_entry(document.front, "corrections", pairs, places)
    if entry is None:
        return Refused(
            message=f"“corrections:” of {document.path} is no list that an entry can be added to",
            hint="Write it as a list: “- on: …” with “change:” and “why:” below.",
        )
    try:
        return replace_spans(document.text, (*worked.edits, *entry))
    except ValueError:
        return Refused(message=f"{document.path} cannot be changed for certain", hint=_ODD)


def mistakes_made(standing: Standing, after: CheckResult) -> Refused | None:
    """The errors that were not there before, wherever they are."""
    before = {
        (each.code, each.span.path, each.message)
        for each in standing.result.diagnostics
        if each.severity is Severity.ERROR
    }
    made = tuple(
        each
        for each in after.diagnostics
        if each.severity is Severity.ERROR and (each.code, each.span.path, each.message) not in before
    )
    if not made:
        return None
    return Refused(
        message="nothing was changed, because this would be wrong afterwards:", found=made, texts=after.texts
    )


def _astray(standing: Standing, after: CheckResult, asked: Asked, worked: Worked) -> Refused | None:
    """Whether the file reads back as anything else than it did, with the one change and its entry."""
    then = standing.result.setting.book[asked.recipe]
    now = after.setting.book.get(asked.recipe)
    refused = Refused(message=f"{path_of(asked.recipe)} cannot be changed for certain", hint=_ODD)
    if now is None:
        return refused
    before, entries = then.about.corrections, now.about.corrections
    added = Correction(
        on=asked.on,
        change=_plain(worked.change),
        why=_plain(asked.why),
        film=_plain(asked.film),
        bake=_plain(asked.bake),
    )
    if [_unplaced(each) for each in entries] != [_unplaced(each) for each in (*before, added)]:
        return refused
    pairs = zip(then.lines, now.lines, strict=len(then.lines) == len(now.lines))
    others = [one for one, other in pairs if one.written.text != other.written.text]
    if len(then.lines) != len(now.lines) or any(full_name(each) != worked.what for each in others):
        return refused
    return None


def _plain(text: str) -> str:
    return " ".join(text.split())


def _unplaced(each: Correction) -> tuple[date, str, str, str, str]:
    return each.on, _plain(each.change), _plain(each.why), _plain(each.film), _plain(each.bake)


def new_warnings(standing: Standing, after: CheckResult) -> Diagnostics:
    """Warnings that the change brings with it, such as a dough that is unusually wet now."""
    before = {(each.code, each.span.path, each.message) for each in standing.result.diagnostics}
    return tuple(
        each
        for each in after.diagnostics
        if each.severity is Severity.WARNING
        and (each.code, each.span.path, each.message) not in before
        and each.code not in ("H006", "H007")
    )


def _film_remarks(formula: Formula, asked: Asked, worked: Worked) -> tuple[str, ...]:
    if asked.film or not worked.shown or not formula.about.videos:
        return ()
    return (
        f"if the film shows {worked.shown} still, tell its viewers: add “film: {worked.shown} at 1:25” to the new "
        "entry, with the right moment, or give it with --film",
    )


def _wrong_day(standing: Standing, formula: Formula, on: date) -> Refused | None:
    """A correction is not of tomorrow, not before the bake was published, and not before an earlier correction."""
    published = formula.about.published
    last = max((each.on for each in formula.about.corrections), default=None)
    newest = standing.result.setting.ledger.revision(formula.name)
    if published is not None and published <= standing.result.setting.day and on < published:
        return Refused(
            message=f"{on.isoformat()} is before the bake was published, on {published.isoformat()}",
            hint="Give the day of the correction with --on, or leave it out for today.",
        )
    earlier = max((each for each in (last, newest.on if newest else None) if each), default=None)
    if earlier is not None and on < earlier:
        return Refused(
            message=f"{on.isoformat()} is before the last change, of {earlier.isoformat()}",
            hint="Corrections follow one another: give that day or a later one with --on.",
        )
    return lies_ahead(standing, on)


def lies_ahead(standing: Standing, on: date) -> Refused | None:
    today = standing.result.setting.day
    if on <= today:
        return None
    return Refused(
        message=f"{on.isoformat()} lies ahead: today is {today.isoformat()}",
        hint="Give a day that has been with --on, or leave it out for today.",
    )
