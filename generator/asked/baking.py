"""What is recorded of a bake day and what it comes to, from what the pipeline understood."""

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from pathlib import Path

from generator.catalogue.names import fold
from generator.diagnostics.diagnostic import Diagnostics, Severity, has_errors
from generator.formula.bake_day import line_named
from generator.formula.model import Formula
from generator.history.bake_book import (
    Draft,
    fresh_draft,
    opened_draft,
    record_of_day,
    with_entries,
    write_draft,
)
from generator.history.bake_days import BakeDay, bake_day, rebound
from generator.history.bake_entries import Entry, How
from generator.history.bakes import BakeRecord, read_bakes
from generator.history.bench_words import Said, read_said
from generator.history.revisions import revision_of
from generator.measure.unit import nearest_units
from generator.present.bake_comparison import comparison_view
from generator.present.bake_data import comparison_data, day_data
from generator.present.bake_days import bake_day_view
from generator.present.bake_views import BakeDayView, ComparisonView
from generator.present.bake_views import Offered as Offered
from generator.present.recipe import Setting
from generator.publication.checked import CheckResult
from generator.records.rebuild import Refused, rebuild
from generator.source.pending import Change
from generator.source.read import read_mapping

OVERNIGHT = timedelta(days=3)
"""A dough may rest that long between the mixing and the oven: an unfinished record is asked about."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What was typed at the bench: each option's texts, in order. `drop` are additions that are taken back."""

    add: tuple[str, ...] = ()
    drop: tuple[str, ...] = ()
    left: tuple[str, ...] = ()
    packs: tuple[str, ...] = ()
    times: tuple[str, ...] = ()
    photos: tuple[str, ...] = ()
    set: tuple[tuple[str, str], ...] = ()
    more: tuple[tuple[str, str], ...] = ()

    @property
    def anything(self) -> bool:
        return any((self.add, self.drop, self.left, self.packs, self.times, self.photos, self.set, self.more))


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """`path` is the record's, "" where nothing was written; then `refused` says why, a line for each reason.

    `view` is the day as it stands now, None where the recipe has errors.
    """

    path: str = ""
    opened: bool = False
    changed: bool = False
    refused: tuple[str, ...] = ()
    told: tuple[str, ...] = ()
    found: Diagnostics = ()
    text: str = ""
    view: BakeDayView | None = None
    item: str = ""


def record_bake(
    result: CheckResult,
    root: Path,
    name: str,
    *,
    on: date,
    again: bool,
    wanted: Wanted,
    beside: tuple[Change, ...] = (),
) -> Outcome:
    """Opens the record of a day where there is none, and enters what was typed.

    `beside` are changes of other files, written as one with the record or not at all.
    """
    record = record_of_day(result.bakes, name, on)
    overlooked = () if record or again else _overlooked(result, name, on)
    if overlooked:
        return Outcome(
            refused=("nothing was written: there is a record of this day with mistakes in it",),
            found=overlooked,
        )
    finished = record is not None and record.baked is not None and not wanted.anything
    if record is None or again or finished:
        base: Draft | Diagnostics = _fresh(result, name, on)
    else:
        base = opened_draft(root, record.path)
    if not isinstance(base, Draft):
        return Outcome(refused=("the record cannot be read, and so nothing was written",), found=base)
    entries, refused = _entries(result, name, wanted, record if base.before else None)
    if refused:
        return Outcome(refused=refused)
    draft = with_entries(base, entries)
    if draft is None:
        words = f"{base.path} is written in a form that cannot be added to safely: edit it by hand"
        if wanted.drop:
            words = f"{base.path} has no such addition on a line of its own: edit it by hand"
        return Outcome(refused=(words,))
    new = _new_faults(result, base, draft)
    if has_errors(new):
        errors = (each for each in new if each.severity is Severity.ERROR)
        return Outcome(refused=tuple(f"{each.message}. {each.hint}".strip() for each in errors))
    written, found = write_draft(root, draft, beside=beside)
    if not written:
        return Outcome(refused=("nothing was written",), found=found)
    told = _told(result, record, name, on, draft, wanted)
    return _outcome(result, name, draft, (*found, *new), told)


def _overlooked(result: CheckResult, name: str, on: date) -> Diagnostics:
    """What is wrong with a record of the day that could not be told to be one."""
    named = re.compile(rf"bakes/{on.isoformat()}-{re.escape(name)}(-[0-9]+)?\.yaml")
    known = {each.path for each in result.bakes}
    paths = {path for path in result.texts if named.fullmatch(path) and path not in known}
    return tuple(each for each in result.diagnostics if each.span.path in paths)


def _fresh(result: CheckResult, name: str, on: date) -> Draft:
    formula = result.setting.book.get(name)
    number = revision_of(formula, result.setting.ledger).number if formula else None
    taken = [path for path in result.texts if path.startswith("bakes/")]
    recipes = [Path(path).stem for path in result.texts if path.startswith("recipes/")]
    item = example_item(formula)
    return fresh_draft(name, on, revision=number, item=item, taken=taken, recipes=recipes)


def example_item(formula: Formula | None) -> str:
    """What most likely needs more of it on a damp day: the first flour, else the first line."""
    lines = formula.lines if formula else ()
    return next((line.item for line in lines if line.flour), lines[0].item if lines else "bread flour")


def _entries(
    result: CheckResult, name: str, wanted: Wanted, record: BakeRecord | None
) -> tuple[tuple[Entry, ...], tuple[str, ...]]:
    """The entries, and what cannot be understood of those that were typed."""
    entries: list[Entry] = []
    refused: list[str] = []
    for key, how, texts in _said_texts(wanted):
        for text in texts:
            said = read_said(text, spoons=result.setting.spoons)
            if not isinstance(said, str) and (why := _no_unit(result, name, said)):
                refused.append(f"--{'add' if key == 'added' else 'left'}: {why}")
            elif isinstance(said, str):
                refused.append(f"--{'add' if key == 'added' else 'left'}: {said}")
            else:
                entries.append(Entry(key=key, how=how, fields=_fields(result, name, said, key)))
    known = {fold(each) for each in record.pack_names} if record else set()
    for pack in wanted.packs:
        if fold(pack) not in known:
            entries.append(Entry(key="packs", how="add", text=pack))
            known.add(fold(pack))
    entries += [Entry(key="times", how="add", text=text) for text in wanted.times]
    entries += [Entry(key="photos", how="add", text=path) for path in wanted.photos]
    entries += [Entry(key=key, how="set", text=text) for key, text in wanted.set]
    entries += [Entry(key=key, how="more", text=text) for key, text in wanted.more]
    return tuple(entries), tuple(refused)


def _said_texts(wanted: Wanted) -> tuple[tuple[str, How, tuple[str, ...]], ...]:
    return ("added", "add", wanted.add), ("added", "drop", wanted.drop), ("left", "add", wanted.left)


def _no_unit(result: CheckResult, name: str, said: Said) -> str:
    """Why `2 glugs water` is not understood: a word that is no unit before something known; "" where it is."""
    word, _, rest = said.item.partition(" ")
    bare = not any(map(str.isalpha, said.amount))
    if not bare or not rest or _is_known(result, name, said.item) or not _is_known(result, name, rest):
        return ""
    near = " or ".join(f"“{each}”" for each in nearest_units(word))
    hint = f"Did you mean {near}?" if near else f"Write it as in “10 g {rest}”."
    return f"“{word}” is no unit. {hint}"


def _is_known(result: CheckResult, name: str, item: str) -> bool:
    formula = result.setting.book.get(name)
    line = line_named(formula, item) if formula is not None else None
    return line is not None or result.shelf.ware(item)[0] is not None


def _fields(result: CheckResult, name: str, said: Said, key: str) -> tuple[tuple[str, str], ...]:
    """The item is written as the recipe writes it, where the recipe has it."""
    formula = result.setting.book.get(name)
    line = line_named(formula, said.item) if formula and "/" not in said.item else None
    fields = (("what", line.item if line else said.item), ("amount", said.amount))
    return (*fields, ("when", said.when)) if said.when and key == "added" else fields


def _new_faults(result: CheckResult, base: Draft, draft: Draft) -> Diagnostics:
    """What the entries would bring; a warning that was told before is not told again."""
    old = {(each.code, each.message) for each in _read(result, base)[1]}
    return tuple(each for each in _read(result, draft)[1] if (each.code, each.message) not in old)


def _read(result: CheckResult, draft: Draft) -> tuple[BakeRecord | None, Diagnostics]:
    keys, found = read_mapping(draft.path, draft.after)
    if keys is None:
        return None, found
    names = [Path(path).stem for path in result.texts if path.startswith("recipes/")]
    records, wrong = read_bakes(
        ((draft.path, keys),), names=names, book=result.setting.book, shelf=result.shelf
    )
    return (records[0] if records else None), (*found, *wrong)


def _outcome(
    result: CheckResult, name: str, draft: Draft, found: Diagnostics, told: tuple[str, ...]
) -> Outcome:
    record, wrong = _read(result, draft)
    errors = tuple(each for each in wrong if each.severity is Severity.ERROR)
    formula = result.setting.book.get(name)
    view = None
    if record is not None and formula is not None:
        day = bake_day(record, formula, result.setting.book)
        view = bake_day_view(day, formula, result.setting, current=_current(result, name))
    return Outcome(
        path=draft.path,
        opened=draft.before is None,
        changed=draft.before != draft.after,
        told=told,
        found=(*found, *errors),
        text=draft.after.decode("utf-8"),
        view=view,
        item=example_item(formula),
    )


def _told(
    result: CheckResult, record: BakeRecord | None, name: str, on: date, draft: Draft, wanted: Wanted
) -> tuple[str, ...]:
    told = []
    if draft.before is None:
        told += list(_unfinished(result, name, on))
        if on > result.setting.day:
            told.append(
                f"{on.isoformat()} is after {result.setting.day.isoformat()}: is that the day you mean?"
            )
    elif record is not None:
        before = (("room", record.room), ("weather", record.weather))
        new = dict(wanted.set)
        told += [
            f"{key}: “{old}” became “{new[key]}”" for key, old in before if old and new.get(key, old) != old
        ]
    if not result.setting.book.get(name):
        told.append(
            f"{name} has errors, so what was entered could not be compared with the recipe: tinleaf check"
        )
    return tuple(told)


def _unfinished(result: CheckResult, name: str, on: date) -> Iterable[str]:
    for each in result.bakes:
        if each.recipe == name and each.baked is None and on - OVERNIGHT <= each.day < on:
            yield (
                f"{each.path} has no weight after baking yet. If this is the same dough, write into that one: "
                f"add --on {each.day.isoformat()}"
            )


def _current(result: CheckResult, name: str) -> int:
    return revision_of(result.setting.book[name], result.setting.ledger).number


@dataclass(frozen=True, slots=True, kw_only=True)
class Baked:
    """A bake with the recipe that it was baked by; `doubt` says why that is today's, where it may be another one."""

    day: BakeDay
    formula: Formula
    setting: Setting
    doubt: str = ""


def bakes_of(result: CheckResult, root: Path, name: str) -> tuple[Baked, ...]:
    """Every bake of a recipe up to the publication day, oldest first, each by the revision that it records."""
    own = [each for each in result.bakes if each.recipe == name and each.day <= result.setting.day]
    current = _current(result, name)
    recipes = {
        number: _by_revision(result, root, name, number, current)
        for number in dict.fromkeys(each.revision for each in own)
    }
    return tuple(
        _baked(record, *recipes[record.revision])
        for record in sorted(own, key=lambda each: (each.day, each.number, each.path))
    )


def _by_revision(
    result: CheckResult, root: Path, name: str, number: int | None, current: int
) -> tuple[Formula, Setting, str]:
    today = result.setting.book[name], result.setting
    if number is None:
        return *today, "the record does not say which revision was baked: the sums are by the recipe of today"
    if number == current:
        return *today, ""
    then = rebuild(root, result, name, number)
    if isinstance(then, Refused):
        return *today, f"{then.words}: the sums are by the recipe of today"
    return then.formula, then.setting, ""


def _baked(record: BakeRecord, formula: Formula, setting: Setting, doubt: str) -> Baked:
    day = bake_day(rebound(record, formula), formula, setting.book)
    return Baked(day=day, formula=formula, setting=setting, doubt=doubt)


def view_of(result: CheckResult, baked: Baked) -> BakeDayView:
    current = _current(result, baked.day.record.recipe)
    view = bake_day_view(baked.day, baked.formula, baked.setting, current=current)
    return replace(view, remarks=(*view.remarks, baked.doubt)) if baked.doubt else view


def compared(result: CheckResult, name: str, bakes: Iterable[Baked]) -> ComparisonView:
    title = result.setting.book[name].about.title
    days = (each.day for each in bakes)
    return comparison_view(days, title=title)


def comparison_values(result: CheckResult, name: str, bakes: tuple[Baked, ...]) -> object:
    views = {each.day.record.path: view_of(result, each) for each in bakes}
    return {"recipe": name, "groups": comparison_data([each.day for each in bakes], views)}


def day_values(result: CheckResult, baked: Baked) -> object:
    return day_data(baked.day, view_of(result, baked))
