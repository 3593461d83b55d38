"""What the desk changes beside bake records: a correction, a file typed anew, a pack that was read, a copy marked.

Each answers with what to tell, and is carried out by the functions that the commands use.
"""

import hashlib
from collections.abc import Sequence
from difflib import unified_diff
from pathlib import Path

from generator.amend.answer import Asked, Refused
from generator.amend.bake import bake_named
from generator.amend.by_hand import plan_as_it_stands
from generator.amend.form import with_fields
from generator.amend.plan import Plan, plan_correction
from generator.amend.plan_pantry import plan_pantry
from generator.amend.retype import retyped_bytes, shown_text
from generator.amend.standing import Standing, read_standing
from generator.asked.baking import Offered, bakes_of, view_of
from generator.desk.state import Desk
from generator.diagnostics.diagnostic import Diagnostics, has_errors
from generator.history.ledger import LEDGER, appended
from generator.records.posting import Wish, mark
from generator.source.write import Change, commit

Answer = dict[str, object]
MOST_TEXT = 1_000_000


def carry_out(desk: Desk, name: str, *, what: str, new: str, why: str, bake: str) -> Answer:
    """A correction that a bake day offers: planned by what `tinleaf correct` plans it by."""
    with desk.lock:
        standing = read_standing(desk.root, day=desk.day)
        if standing.ledger_faults() or name not in standing.result.setting.book:
            return _no("the recipe or the ledger has errors that are to be mended first")
        bakes = bakes_of(standing.result, desk.root, name)
        views = (view_of(standing.result, each) for each in bakes if each.day.record.path == bake)
        wanted = Offered(recipe=name, what=what, new=new, why=why, bake=bake)
        if not any(wanted in view.offered for view in views):
            return _no("this is no correction that was offered")
        named = bake_named(standing.result, name, bake)
        if isinstance(named, Refused):
            return _refused(named)
        day = standing.result.setting.day
        asked = Asked(recipe=name, what=what, new=new, why=why, on=day, bake=named)
        return _planned(desk, plan_correction(standing, asked))


def record_by_hand(desk: Desk, name: str, why: str) -> Answer:
    """Owns up to a change that was typed: a revision of what stands there."""
    if not why.strip():
        return _no("say in a few words what was wrong, for your readers")
    with desk.lock:
        standing = read_standing(desk.root, day=desk.day)
        if standing.ledger_faults() or name not in standing.result.setting.book:
            return _no("the recipe or the ledger has errors that are to be mended first")
        day = standing.result.setting.day
        return _planned(desk, plan_as_it_stands(standing, name, on=day, why=" ".join(why.split())))


def pack_read(desk: Desk, row: str) -> Answer:
    """A pack was read today."""
    with desk.lock:
        standing: Standing = read_standing(desk.root, day=desk.day)
        if standing.ledger_faults():
            return _no("the ledger has errors that are to be mended first")
        day = standing.result.setting.day
        asked = Asked(
            recipe="", what=row, key="checked", new=day.isoformat(), why="The pack was read again.", on=day
        )
        return _planned(desk, plan_pantry(standing, asked))


def _planned(desk: Desk, plan: Plan | Refused) -> Answer:
    if isinstance(plan, Refused):
        return _refused(plan)
    found = commit(desk.root, plan.changes)
    if has_errors(found):
        return _no(*_words(found))
    raised = [f"{each.recipe}: revision {each.number}" for each in plan.revisions]
    return {"ok": True, "told": [plan.what, *raised, *plan.remarks], "difference": plan.difference}


def mark_posted(desk: Desk, name: str, place: str, to: str) -> Answer:
    """A copy went out, or was renewed."""
    with desk.lock:
        file = desk.root / LEDGER
        before = file.read_bytes() if file.is_file() else None
        result = desk.now().result
        if name not in result.setting.book:
            return _no(f"{name} has errors, so what a copy says cannot be told")
        marked = mark(desk.root, result, Wish(recipe=name, place=place, to=to))
        if not marked.events:
            return _no(*marked.told)
        after = appended(before or b"", marked.events)
        found = commit(desk.root, [Change(path=LEDGER, before=before, after=after)])
        return _no(*_words(found)) if has_errors(found) else {"ok": True, "told": list(marked.told)}


def file_bytes(root: Path, path: str) -> bytes | None:
    """A file of the content folder; None where there is none, or where a link leads out of the folder."""
    try:
        target, inside = (root / path).resolve(), root.resolve()
        return target.read_bytes() if inside in target.parents and target.is_file() else None
    except OSError:
        return None


def base_of(data: bytes) -> str:
    """What tells one state of a file from another."""
    return hashlib.sha256(data).hexdigest()


def save_text(desk: Desk, path: str, *, base: str, typed: str) -> Answer:
    """The file as typed, where it still is what the editor began with; else how the two differ."""
    with desk.lock:
        now = file_bytes(desk.root, path)
        if now is None or shown_text(now) is None or len(typed) > MOST_TEXT:
            return _no(f"{path} cannot be read, or the text is too long")
        if base_of(now) != base:
            return _meanwhile(path, shown_text(now) or "", typed, base=base_of(now))
        return _written(desk, path, now, retyped_bytes(now, typed))


def save_fields(desk: Desk, path: str, *, base: str, wanted: dict[str, str]) -> Answer:
    """The usual fields of a recipe, each replaced where it stands."""
    with desk.lock:
        now = file_bytes(desk.root, path)
        if now is None:
            return _no(f"{path} cannot be read")
        if base_of(now) != base:
            return {
                "ok": False,
                "meanwhile": True,
                "told": [f"{path} changed meanwhile: load the page again"],
            }
        after = with_fields(path, now, wanted)
        if after is None:
            return _no("this cannot be changed for certain by a form: type it into the file")
        return _written(desk, path, now, after)


def _written(desk: Desk, path: str, before: bytes, after: bytes) -> Answer:
    found = commit(desk.root, [Change(path=path, before=before, after=after)])
    if has_errors(found):
        return _no(*_words(found))
    return {
        "ok": True,
        "told": [f"{path} is saved" if before != after else f"{path} is as it was"],
        "base": base_of(after),
        "text": shown_text(after),
    }


def _meanwhile(path: str, there: str, typed: str, *, base: str) -> Answer:
    lines = unified_diff(
        there.split("\n"), typed.split("\n"), "in the folder", "as you typed it", n=1, lineterm=""
    )
    signs = "In the difference − is what stands there now, + is yours"
    told = [f"{path} changed meanwhile; nothing was written. {signs}"]
    return {
        "ok": False,
        "meanwhile": True,
        "told": told,
        "difference": "\n".join(lines),
        "there": there,
        "base": base,
    }


def _refused(refused: Refused) -> Answer:
    return _no(refused.message, refused.hint, *_words(refused.found))


def _words(found: Diagnostics) -> Sequence[str]:
    return [f"{each.span.path}: {each.message}. {each.hint}".strip() for each in found]


def _no(*told: str) -> Answer:
    return {"ok": False, "told": [each for each in told if each]}
