"""An old text brought in, to be looked over line by line before anything is written."""

import secrets
from collections import OrderedDict
from dataclasses import replace

from generator.asked.incoming import arrive, kitchen_of, proof, stocked, write_brought
from generator.desk.state import Desk
from generator.diagnostics.diagnostic import Severity, has_errors
from generator.importer.model import Brought, ResultLine

MOST_WAITING = 40
MOST_BYTES = 1_000_000


class Reviews:
    """What waits to be looked over, by an id of its own; the oldest is forgotten first."""

    def __init__(self) -> None:
        self._waiting: OrderedDict[str, Brought] = OrderedDict()

    def add(self, brought: Brought) -> str:
        id = secrets.token_urlsafe(9)
        self._waiting[id] = brought
        while len(self._waiting) > MOST_WAITING:
            self._waiting.popitem(last=False)
        return id

    def get(self, id: str) -> Brought | None:
        return self._waiting.get(id)

    def drop(self, id: str) -> None:
        self._waiting.pop(id, None)

    def waiting(self) -> tuple[tuple[str, Brought], ...]:
        return tuple(self._waiting.items())


def take_in(desk: Desk, reviews: Reviews, name: str, data: bytes) -> tuple[list[str], list[str]]:
    """The ids of what was found in a text, and what is to be told."""
    arrival = arrive(name, data, kitchen_of(desk.now().result))
    if arrival.refused is not None:
        return [], [f"{arrival.refused.message}. {arrival.refused.hint}".strip()]
    told = [f"{each}: no line with an ingredient and its amount was found" for each in arrival.empty]
    return [reviews.add(each) for each in arrival.recipes], told


def write(desk: Desk, brought: Brought, *, name: str, lines: list[str], with_rows: bool) -> dict[str, object]:
    """Writes the accepted lines as a new file; what `check` would refuse is told, and nothing is written."""
    numbered = zip(lines, (*brought.result, *[_NONE] * len(lines)), strict=False)
    accepted = replace(
        brought,
        name=name,
        result=tuple(ResultLine(text=text, sources=old.sources) for text, old in numbered),
    )
    with desk.lock:
        result = desk.now().result
        kitchen, pantry = (
            stocked(result, brought.rows) if with_rows and brought.rows else (kitchen_of(result), None)
        )
        wrong = proof(name, accepted.text, shelf=kitchen.shelf, book=kitchen.book)
        errors = [each for each in wrong if each.severity is Severity.ERROR]
        if errors:
            told = [f"line {each.span.line}: {each.message}. {each.hint}".strip() for each in errors]
            return {"ok": False, "told": told, "lines": [each.span.line for each in errors]}
        found = write_brought(desk.root, accepted, pantry=pantry)
    if has_errors(found):
        return {"ok": False, "told": [f"{each.message}. {each.hint}".strip() for each in found]}
    return {"ok": True, "told": [f"recipes/{name}.md is written; it is a draft until it has a day"]}


_NONE = ResultLine(text="", sources=())
