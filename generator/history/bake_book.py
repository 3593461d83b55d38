"""Opens bake records and adds to them: the one place that writes into `bakes/`."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from generator.diagnostics.diagnostic import Diagnostics, has_errors
from generator.history.bake_entries import Entry, entered
from generator.history.bake_opening import record_path, record_text
from generator.history.bakes import BakeRecord
from generator.source.read import read_mapping
from generator.source.write import Change, commit


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A record as it would be. `before` is None for a new one; `after` may be the same bytes."""

    path: str
    before: bytes | None
    after: bytes


def fresh_draft(
    recipe: str,
    day: date,
    *,
    revision: int | None,
    item: str,
    taken: Collection[str],
    recipes: Collection[str],
) -> Draft:
    """A new record of its own name. `item` stands in its examples."""
    path = record_path(recipe, day, taken=taken, recipes=recipes)
    return Draft(
        path=path, before=None, after=record_text(recipe, day, revision=revision, item=item).encode()
    )


def opened_draft(root: Path, path: str) -> Draft | Diagnostics:
    """A record that is there; what is wrong with it where it cannot be read. Raises OSError as reading does."""
    data = (root / path).read_bytes()
    keys, found = read_mapping(path, data)
    return found if keys is None or not _is_utf8(data) else Draft(path=path, before=data, after=data)


def _is_utf8(data: bytes) -> bool:
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return False
    return True


def with_entries(draft: Draft, entries: Iterable[Entry]) -> Draft | None:
    """The draft with the entries in it; None where the record's form does not allow it."""
    text = entered(draft.after.decode("utf-8"), entries)
    return None if text is None else Draft(path=draft.path, before=draft.before, after=text.encode("utf-8"))


def write_draft(root: Path, draft: Draft, *, beside: Iterable[Change] = ()) -> tuple[bool, Diagnostics]:
    """Whether the record is now as the draft says, and what is to be told. `beside` is written as one with it."""
    own = Change(path=draft.path, before=draft.before, after=draft.after)
    found = commit(root, (own, *beside))
    return not has_errors(found), found


def record_of_day(records: Iterable[BakeRecord], recipe: str, day: date) -> BakeRecord | None:
    """The newest record of a recipe on one day."""
    own = (each for each in records if each.recipe == recipe and each.day == day)
    return max(own, key=lambda each: (each.number, each.path), default=None)
