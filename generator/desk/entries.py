"""Entries from the bench, into the bake record of the day: each once, however often it is sent.

The ids of what has been entered stand in `.tinleaf-bench` in the content folder, and are written as one with the
record: an entry that was sent again after a dropped connection, or after a power cut, is known to be there.
"""

import json
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from generator.asked.baking import Outcome, Wanted, record_bake
from generator.asked.bench import size_text
from generator.desk.state import Desk
from generator.history.bake_book import record_of_day
from generator.source.write import Change

IDS = ".tinleaf-bench"
MOST_IDS = 4000
MOST_ENTRIES = 200
MOST_LETTERS = 2000
_SET = frozenset({"room", "weather", "dough", "baked"})
_MORE = frozenset({"note", "next"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """`id` is given by the tablet; `kind` is start, add, drop, left, time, pack, photo, or a key of the record.

    The text of a start is the size that is baked.
    """

    id: str
    kind: str
    text: str


def read_entries(values: object) -> tuple[Entry, ...] | None:
    """The entries of a request; None where they are none."""
    if not isinstance(values, list) or len(values) > MOST_ENTRIES:
        return None
    entries = tuple(each for value in values if (each := _entry(value)) is not None)
    return entries if len(entries) == len(values) else None


def _entry(value: Any) -> Entry | None:
    if not isinstance(value, dict):
        return None
    id, kind, text = (value.get(key, "") for key in ("id", "kind", "text"))
    if not all(isinstance(each, str) for each in (id, kind, text)):
        return None
    known = kind in {"start", "add", "drop", "left", "time", "pack", *_SET, *_MORE}
    if not known or not 8 <= len(id) <= 64 or not id.isascii() or len(text) > MOST_LETTERS:
        return None
    return Entry(id=id, kind=kind, text=" ".join(text.split()))


def enter(
    desk: Desk, name: str, on: date, entries: tuple[Entry, ...], *, photo: bytes | None = None
) -> dict[str, object]:
    """Enters what is new. `done` are the ids that are in the record now, `refused` pairs of an id and the reason."""
    with desk.lock:
        before = _bytes(desk, IDS)
        known = _ids(before)
        fresh = tuple(each for each in entries if each.id not in known)
        done = [each.id for each in entries if each.id in known]
        if not fresh:
            return {"done": done, "refused": [], "told": []}
        outcome = _record(desk, name, on, fresh, photo)
        if outcome.path or len(fresh) == 1:
            return _told(outcome, fresh, done)
        # One of several is wrong: each by itself, so that the others are entered and that one is named.
        refused: list[object] = []
        told: list[str] = []
        for each in fresh:
            outcome = _record(desk, name, on, (each,), None)
            done += [each.id] if outcome.path else []
            refused += [] if outcome.path else [[each.id, _why(outcome)]]
            told += outcome.told
        return {"done": done, "refused": refused, "told": told}


def _told(outcome: Outcome, fresh: tuple[Entry, ...], done: list[str]) -> dict[str, object]:
    if outcome.path:
        return {"done": [*done, *(each.id for each in fresh)], "refused": [], "told": list(outcome.told)}
    return {"done": done, "refused": [[fresh[0].id, _why(outcome)]], "told": []}


def _why(outcome: Outcome) -> str:
    found = (f"{each.message}. {each.hint}".strip() for each in outcome.found)
    return " ".join((*outcome.refused, *found))


def _record(desk: Desk, name: str, on: date, entries: tuple[Entry, ...], photo: bytes | None) -> Outcome:
    result = desk.now().result
    record = record_of_day(result.bakes, name, on)
    starts = any(each.kind == "start" for each in entries)
    before = _bytes(desk, IDS)
    ids = {**_ids(before), **{each.id: f"{on.isoformat()} {name}" for each in entries}}
    kept = dict(list(ids.items())[-MOST_IDS:])
    after = (json.dumps(kept, indent=0) + "\n").encode()
    beside: tuple[Change, ...] = (Change(path=IDS, before=before, after=after),)
    wanted = _wanted(entries)
    sized = next((each.text for each in entries if each.kind == "start" and each.text), "")
    if sized and name in result.setting.book:
        size, why = size_text(result, name, sized)
        if why:
            return Outcome(refused=(why,))
        wanted = replace(wanted, set=(("size", size), *wanted.set)) if size else wanted
    if photo is not None:
        path = _photo_path(desk, name, on)
        beside = (Change(path=path, before=None, after=photo), *beside)
        wanted = replace(wanted, photos=(path,))
    again = starts and record is not None and record.baked is not None
    return record_bake(result, desk.root, name, on=on, again=again, wanted=wanted, beside=beside)


def _photo_path(desk: Desk, name: str, on: date) -> str:
    number = 1
    while (desk.root / f"media/bakes/{on.isoformat()}-{name}-{number}.jpg").exists():
        number += 1
    return f"media/bakes/{on.isoformat()}-{name}-{number}.jpg"


def _wanted(entries: tuple[Entry, ...]) -> Wanted:
    def texts(kind: str) -> tuple[str, ...]:
        return tuple(each.text for each in entries if each.kind == kind and each.text)

    return Wanted(
        add=texts("add"),
        drop=texts("drop"),
        left=texts("left"),
        packs=texts("pack"),
        times=texts("time"),
        set=tuple((each.kind, each.text) for each in entries if each.kind in _SET and each.text),
        more=tuple((each.kind, each.text) for each in entries if each.kind in _MORE and each.text),
    )


def _bytes(desk: Desk, path: str) -> bytes | None:
    try:
        return (desk.root / path).read_bytes()
    except FileNotFoundError:
        return None


def _ids(data: bytes | None) -> dict[str, str]:
    try:
        values = json.loads(data or b"{}")
    except ValueError:
        return {}
    return {str(key): str(value) for key, value in values.items()} if isinstance(values, dict) else {}
