"""The bytes of `ledger.jsonl`: one JSON object (RFC 8259) to a line, the newest last, and never a line changed.

`read_ledger` gives every event that can be read and every mistake with its place; `appended` gives the bytes of the
file with more events at its end. Who writes them to the disk is `source/write.py`.
"""

import json
from collections.abc import Iterable, Mapping

from generator.diagnostics.diagnostic import Diagnostics

# Part of this door: whoever writes an event takes it from here.
from generator.history.events import CAUSES as CAUSES
from generator.history.events import Cause as Cause
from generator.history.events import Event as Event
from generator.history.events import Facts as Facts
from generator.history.events import Gone as Gone
from generator.history.events import Ledger as Ledger
from generator.history.events import PantryChange as PantryChange
from generator.history.events import Posted as Posted
from generator.history.events import Revision as Revision
from generator.history.ledger_lines import LedgerReader

LEDGER = "ledger.jsonl"


def read_ledger(text: str, path: str = LEDGER) -> tuple[Ledger, Diagnostics]:
    """The ledger of a file's text, and what is wrong in it. A line with a mistake is left out, the rest counts."""
    reader = LedgerReader(path=path)
    for number, line in enumerate(text.removeprefix("\ufeff").split("\n"), start=1):
        reader.read(number, line.removesuffix("\r"))
    return Ledger(events=tuple(reader.events), reserved=dict(reader.reserved)), tuple(reader.found)


def appended(before: bytes, events: Iterable[Event]) -> bytes:
    """The bytes of the ledger with `events` after what stands there, which stays byte for byte.

    A last line that was cut off gets its end, so that it spoils no other; line ends are those of the file.
    """
    end = b"\r\n" if before.endswith(b"\r\n") else b"\n"
    cut = bool(before.removeprefix(b"\xef\xbb\xbf")) and not before.endswith(b"\n")
    lines = b"".join(_line(each).encode() + end for each in events)
    return before + (end if cut and lines else b"") + lines


def _line(event: Event) -> str:
    return json.dumps(_plain(event), ensure_ascii=False, separators=(", ", ": "), default=_mapping)


def _mapping(value: object) -> object:
    """A read-only mapping as one that JSON knows."""
    if isinstance(value, Mapping):
        return dict(value)
    raise TypeError(f"facts are plain values, not {type(value).__name__}")


def _plain(event: Event) -> dict[str, object]:
    """The event's keys in the order of the file. What is empty and may be is left out."""
    if isinstance(event, Revision):
        return {
            "event": "revision",
            "recipe": event.recipe,
            "revision": event.number,
            "on": event.on.isoformat(),
            "cause": event.cause,
            "what": event.what,
            "why": event.why,
            "corrections": event.corrections,
            "facts": event.facts,
            "text": event.text,
        }
    if isinstance(event, PantryChange):
        what = {"what": event.what, "why": event.why, "text": event.text}
        return {"event": "pantry", "on": event.on.isoformat(), **what}
    copy = {"recipe": event.recipe, "place": event.place}
    to = {"to": event.to} if event.to else {}
    if isinstance(event, Gone):
        return {"event": "gone", **copy, **to, "on": event.on.isoformat(), "why": event.why}
    return {
        "event": "posted",
        **copy,
        **to,
        "revision": event.revision,
        "on": event.on.isoformat(),
        "fingerprint": event.fingerprint,
        **({} if event.own else {"own": False}),
        "facts": event.facts,
    }
