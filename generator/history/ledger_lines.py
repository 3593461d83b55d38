"""Reads the ledger line by line. A line edited into nonsense is told with its place, and spoils no other."""

import json
import re
from collections.abc import Mapping
from datetime import date
from typing import NoReturn

from generator.diagnostics.diagnostic import Diagnostic, did_you_mean
from generator.diagnostics.span import Span
from generator.history.events import CAUSES, Event, Facts, Gone, PantryChange, Posted, Revision

KINDS = ("revision", "pantry", "posted", "gone")
MOST_REVISIONS = 999_999
_RESTORE = "Take the line as it was from a copy of the folder; delete it only if the tool never wrote it."
_NUMBERED = re.compile(r'"event"\s*:\s*"revision"')
_RECIPE = re.compile(r'"recipe"\s*:\s*"([^"\\]{1,120})"')
_NUMBER = re.compile(r'"revision"\s*:\s*([0-9]{1,6})(?![0-9])')
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")


class _Nonsense(Exception):
    """What is wrong in characters `at` to `end` of a line. It never leaves this module."""

    def __init__(self, code: str, message: str, at: int, end: int, hint: str = _RESTORE) -> None:
        super().__init__(message)
        self.code, self.message, self.at, self.end, self.hint = code, message, at, end, hint


class LedgerReader:
    """Collects events, mistakes, and by recipe the highest number that an unreadable line names."""

    __slots__ = ("_newest", "events", "found", "path", "reserved")

    def __init__(self, *, path: str) -> None:
        self.path = path
        self.events: list[Event] = []
        self.found: list[Diagnostic] = []
        self.reserved: dict[str, int] = {}
        self._newest: dict[str, int] = {}

    def read(self, number: int, line: str) -> None:
        """Line `number`, from 1, without its end. An empty one is passed over."""
        if not line.strip():
            return
        try:
            event = _Line(line, _object(line)).event()
            self._check_number(event, line)
        except _Nonsense as fault:
            self._note(fault, number)
            self._reserve(line)
            return
        self.events.append(event)

    def _check_number(self, event: Event, line: str) -> None:
        if not isinstance(event, Revision):
            return
        newest = self._newest.get(event.recipe, 0)
        if event.number <= newest:
            at, end = _place(line, "revision")
            how = "is there already" if event.number == newest else f"stands after revision {newest}"
            message = f"revision {event.number} of {event.recipe} {how}; this line is left out"
            raise _Nonsense("H004", message, at, end, "Numbers only rise. " + _RESTORE)
        self._newest[event.recipe] = event.number

    def _note(self, fault: _Nonsense, number: int) -> None:
        at, end = fault.at + 1, fault.end + 1
        span = Span(path=self.path, line=number, column=at, end_line=number, end_column=end)
        self.found.append(Diagnostic(code=fault.code, message=fault.message, span=span, hint=fault.hint))

    def _reserve(self, line: str) -> None:
        """Keeps the number that a spoilt line was about, so that it is not given out again."""
        recipe, number = _RECIPE.search(line), _NUMBER.search(line)
        if _NUMBERED.search(line) and recipe and number:
            name = recipe[1]
            self.reserved[name] = max(self.reserved.get(name, 0), int(number[1]))


def _object(line: str) -> Mapping[str, object]:
    try:
        value = json.loads(line, parse_constant=_no_number, object_pairs_hook=_pairs)
        if _has_lone_surrogate(line):
            raise ValueError("an escape that is no character")
    except json.JSONDecodeError as fault:
        at = min(fault.pos, max(len(line) - 1, 0))
        message = f"this line is no JSON ({fault.msg[:1].lower()}{fault.msg[1:]}); it is left out"
        raise _Nonsense("H001", message, at, at + 1) from None
    except (ValueError, RecursionError) as fault:
        why = "it is nested too deep" if isinstance(fault, RecursionError) else str(fault)[:80]
        raise _Nonsense("H001", f"this line cannot be read ({why}); it is left out", 0, 1) from None
    if not isinstance(value, dict):
        raise _Nonsense("H001", "this line is not an event in braces; it is left out", 0, len(line))
    return value


def _pairs(pairs: list[tuple[str, object]]) -> dict[str, object]:
    keys = [key for key, _ in pairs]
    twice = next((key for key in keys if keys.count(key) > 1), None) if len(set(keys)) < len(keys) else None
    if twice is not None:
        raise ValueError(f"“{twice[:40]}” stands in it twice")
    return dict(pairs)


def _no_number(name: str) -> NoReturn:
    raise ValueError(f"{name} is no number")


def _has_lone_surrogate(line: str) -> bool:
    if "\\u" not in line:
        return False
    try:
        json.dumps(json.loads(line), ensure_ascii=False).encode()
    except UnicodeEncodeError:
        return True
    return False


def _place(line: str, key: str) -> tuple[int, int]:
    """Where the value of a key stands, as far as the line can tell: its first characters, else the key's."""
    found = re.search(rf'"{re.escape(key)}"\s*:\s*("(?:[^"\\]|\\.)*"|[^\s,}}]+)', line)
    return found.span(1) if found else (0, 1)


class _Line:
    """One object and the line it stands in, for the places of its mistakes."""

    __slots__ = ("_keys", "_line")

    def __init__(self, line: str, keys: Mapping[str, object]) -> None:
        self._line, self._keys = line, keys

    def event(self) -> Event:
        kind = self._keys.get("event")
        if kind not in KINDS:
            named = f"“{str(kind)[:40]}” is no event" if "event" in self._keys else "this line names no event"
            hint = did_you_mean(str(kind)[:40], KINDS) or f"The events are {', '.join(KINDS)}. {_RESTORE}"
            raise _Nonsense("H002", f"{named} of the ledger; it is left out", *self._at("event"), hint)
        read = {"revision": self._revision, "posted": self._posted, "gone": self._gone}
        return read[str(kind)]() if kind != "pantry" else self._pantry()

    def _revision(self) -> Event:
        cause = self._text("cause")
        known = next((each for each in CAUSES if each == cause), None)
        if known is None:
            hint = did_you_mean(cause, CAUSES) or f"The causes are {', '.join(CAUSES)}."
            raise _Nonsense("H003", f"“{cause[:40]}” is no cause of a revision", *self._at("cause"), hint)
        return Revision(
            recipe=self._text("recipe"),
            number=self._whole("revision", least=1),
            on=self._day(),
            cause=known,
            what=self._text("what", needed=False),
            why=self._text("why", needed=False),
            corrections=self._whole("corrections", least=0, needed=False),
            facts=self._facts(),
            text=self._text("text", needed=False),
        )

    def _pantry(self) -> Event:
        what, why = (self._text(key, needed=False) for key in ("what", "why"))
        return PantryChange(on=self._day(), what=what, why=why, text=self._text("text", blank=True))

    def _posted(self) -> Event:
        return Posted(
            recipe=self._text("recipe"),
            place=self._text("place"),
            revision=self._whole("revision", least=1),
            on=self._day(),
            to=self._text("to", needed=False),
            fingerprint=self._text("fingerprint", needed=False),
            own=self._yes("own"),
            facts=self._facts(),
        )

    def _gone(self) -> Event:
        return Gone(
            recipe=self._text("recipe"),
            place=self._text("place"),
            on=self._day(),
            why=self._text("why", needed=False),
            to=self._text("to", needed=False),
        )

    def _at(self, key: str) -> tuple[int, int]:
        return _place(self._line, key)

    def _wrong(self, key: str, what: str) -> NoReturn:
        stands = f"“{key}” is not {what}" if key in self._keys else f"“{key}” is missing"
        raise _Nonsense("H003", f"{stands}; this line is left out", *self._at(key))

    def _text(self, key: str, *, needed: bool = True, blank: bool = False) -> str:
        value = self._keys.get(key, None if needed else "")
        if not isinstance(value, str) or (needed and not blank and not value.strip()):
            self._wrong(key, "a text")
        return value

    def _whole(self, key: str, *, least: int, needed: bool = True) -> int:
        value = self._keys.get(key, None if needed else least)
        if isinstance(value, bool) or not isinstance(value, int) or not least <= value <= MOST_REVISIONS:
            self._wrong(key, f"a whole number from {least} on")
        return value

    def _yes(self, key: str) -> bool:
        value = self._keys.get(key, True)
        if not isinstance(value, bool):
            self._wrong(key, "true or false")
        return value

    def _day(self) -> date:
        value = self._keys.get("on")
        try:
            if isinstance(value, str) and _DAY.fullmatch(value):
                return date.fromisoformat(value)
        except ValueError:
            pass
        self._wrong("on", "a day such as 2026-09-20")

    def _facts(self) -> Facts:
        value = self._keys.get("facts", {})
        if not isinstance(value, dict):
            self._wrong("facts", "a table of facts")
        return value
