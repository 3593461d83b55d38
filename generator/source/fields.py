"""Typed readers for single values. Each gives the value, or None and what is wrong.

A key that is absent or left blank gives None and no mistake; `check_keys` tells what is needed.
"""

import re
from collections.abc import Collection, Iterable, Iterator
from datetime import date, datetime
from fractions import Fraction
from urllib.parse import urlsplit

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, did_you_mean
from generator.source.document import Mapping, Node, Sequence, Text

_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_MOMENT = re.compile(
    r"(?P<day>[0-9]{4}-[0-9]{2}-[0-9]{2})[Tt ]"
    r"(?P<time>[0-9]{2}:[0-9]{2})(?P<seconds>:[0-9]{2})?(?:\.[0-9]{1,6})?"
    r"(?P<zone>[Zz]|[+-][0-9]{2}:[0-9]{2})"
)
_WHOLE = re.compile(r"[0-9]{1,9}")
_PERCENT = re.compile(r"([0-9]{1,3}(?:\.[0-9]{1,6})?)\s*%")
_ANSWERS = {"yes": True, "true": True, "no": False, "false": False}
_SCHEME = re.compile(r"[A-Za-z][A-Za-z0-9+.-]*:")
_MAIL = re.compile(r"mailto:[^@\s<>]+@[^@\s<>/]+", re.IGNORECASE)
_NOT_IN_AN_ADDRESS = re.compile(r"[\s<>\"\\^`{|}\x00-\x20\x7f]")


def text_of(node: Node | None) -> tuple[str | None, Diagnostics]:
    """The text of a scalar, without blanks at its ends."""
    if node is None:
        return None, ()
    if not isinstance(node, Text):
        shape = "a list" if isinstance(node, Sequence) else "keys and values"
        hint = "Write one text; text that starts with “[” or “{” needs quotes."
        return None, (_fault("S062", node, f"one text is expected here, not {shape}", hint),)
    return node.value.strip() or None, ()


def texts_of(node: Node | None) -> tuple[tuple[str, ...] | None, Diagnostics]:
    """A list of texts; one text alone is a list of one."""
    if not isinstance(node, Sequence):
        text, found = text_of(node)
        return (None if text is None else (text,)), found
    texts, faults = [], list[Diagnostic]()
    for item in node.items:
        text, found = text_of(item)
        faults += found
        if text is not None:
            texts.append(text)
        elif not found:
            faults.append(_fault("S062", item, "this item of the list is empty", "Delete its dash or comma."))
    return tuple(texts), tuple(faults)


def date_of(node: Node | None) -> tuple[date | None, Diagnostics]:
    """A date as `2026-09-12` (ISO 8601), one that the calendar has."""
    text, found = text_of(node)
    if node is None or text is None:
        return None, found
    if not _DATE.fullmatch(text):
        hint = "Write year, month and day as in 2026-09-12."
        return None, (_fault("S063", node, f"“{_shown(text)}” is not a date", hint),)
    try:
        return date.fromisoformat(text), ()
    except ValueError:
        hint = "Look at the number of the day and the month."
        return None, (_fault("S063", node, f"the calendar has no {text}", hint),)


def moment_of(node: Node | None) -> tuple[datetime | None, Diagnostics]:
    """A date and time with its zone, as in RFC 3339; the seconds may be left out."""
    text, found = text_of(node)
    if node is None or text is None:
        return None, found
    match = _MOMENT.fullmatch(text)
    hint = "Write date, time and zone as in 2026-09-12T15:00-05:00, or Z for UTC."
    if match is None:
        return None, (_fault("S064", node, f"“{_shown(text)}” is not a date and time with a zone", hint),)
    zone = match["zone"].upper().replace("Z", "+00:00")
    try:
        moment = datetime.fromisoformat(f"{match['day']}T{match['time']}{match['seconds'] or ':00'}{zone}")
    except ValueError:
        return None, (_fault("S064", node, f"there is no such moment as {text}", hint),)
    return moment, ()


def yes_no_of(node: Node | None) -> tuple[bool | None, Diagnostics]:
    text, found = text_of(node)
    if node is None or text is None:
        return None, found
    answer = _ANSWERS.get(text.casefold())
    if answer is None:
        return None, (_fault("S065", node, f"“{_shown(text)}” is neither yes nor no", "Write yes or no."),)
    return answer, ()


def whole_of(node: Node | None, *, least: int = 0) -> tuple[int | None, Diagnostics]:
    """A whole number of at most nine digits."""
    text, found = text_of(node)
    if node is None or text is None:
        return None, found
    if not _WHOLE.fullmatch(text) or int(text) < least:
        hint = f"Write digits only, as in {max(least, 1) * 10}."
        what = f"a whole number from {least} on" if least else "a whole number"
        return None, (_fault("S066", node, f"“{_shown(text)}” is not {what}", hint),)
    return int(text), ()


def percent_of(node: Node | None) -> tuple[Fraction | None, Diagnostics]:
    """A share of one, 0 to 1: `12 %` is 3/25."""
    text, found = text_of(node)
    if node is None or text is None:
        return None, found
    match = _PERCENT.fullmatch(text)
    share = Fraction(match[1]) / 100 if match else None
    if share is None or share > 1:
        hint = "Write a number from 0 to 100 and a percent sign, as in 12 % or 12.5 %."
        return None, (_fault("S067", node, f"“{_shown(text)}” is not a percentage", hint),)
    return share, ()


def choice_of(node: Node | None, choices: Collection[str]) -> tuple[str | None, Diagnostics]:
    """One of `choices`, in the spelling it has there; capitals and doubled spaces do not matter."""
    text, found = text_of(node)
    if node is None or text is None:
        return None, found
    folded = {_folded(choice): choice for choice in choices}
    choice = folded.get(_folded(text))
    if choice is None:
        near = did_you_mean(_folded(text), folded)
        hint = f"{near} Choose from: {', '.join(choices)}.".strip()
        return None, (_fault("S068", node, f"“{_shown(text)}” is not one of the choices here", hint),)
    return choice, ()


def address_of(node: Node | None) -> tuple[str | None, Diagnostics]:
    """An address: http, https or mailto, or a path relative to the content folder."""
    text, found = text_of(node)
    if node is None or text is None:
        return None, found
    if fault := _fault_of_address(text):
        message, hint = fault
        return None, (_fault("S069", node, message, hint),)
    return text, ()


def check_keys(
    mapping: Mapping, allowed: Iterable[str], *, what: str, needed: Iterable[str] = ()
) -> Diagnostics:
    """An error for each key that `what` (such as “a recipe”) does not know, and each it lacks."""
    known = tuple(allowed)
    return (*_unknown_keys(mapping, known, what), *_missing_keys(mapping, needed, what))


def _unknown_keys(mapping: Mapping, known: tuple[str, ...], what: str) -> Iterator[Diagnostic]:
    for key, _ in mapping.entries:
        if key.value not in known:
            near = did_you_mean(key.value.strip().casefold().replace(" ", "_"), known)
            hint = near or f"Delete it; {what} may have: {', '.join(known)}."
            yield _fault("S060", key, f"{what} has no key “{_shown(key.value)}”", hint)


def _missing_keys(mapping: Mapping, needed: Iterable[str], what: str) -> Iterator[Diagnostic]:
    for name in needed:
        value = mapping.get(name)
        if value is None or (isinstance(value, Text) and not value.value.strip()):
            at = mapping.key(name) or (mapping.entries[0][0] if mapping.entries else mapping)
            yield _fault("S061", at, f"{what} needs the key “{name}”", f"Write a line “{name}: …”.")


def _fault(code: str, node: Node, message: str, hint: str) -> Diagnostic:
    return Diagnostic(code=code, message=message, span=node.span, hint=hint)


def _shown(text: str) -> str:
    """A text as a message quotes it: in one line, and not for ever."""
    line = " ".join(text.split())
    return line if len(line) <= 40 else f"{line[:39]}…"


def _folded(text: str) -> str:
    return " ".join(text.split()).casefold()


def _fault_of_address(text: str) -> tuple[str, str] | None:
    if _NOT_IN_AN_ADDRESS.search(text):
        return (
            "an address has no spaces, quotes or brackets",
            "Copy the address afresh; write %20 for a space.",
        )
    scheme = _SCHEME.match(text)
    if scheme is None:
        return _fault_of_path(text)
    name = scheme[0].casefold()
    if name in ("http:", "https:"):
        return (
            None
            if _has_host(text)
            else ("this address has no site", "Write it as in https://example.org/page.")
        )
    if name == "mailto:" and _MAIL.fullmatch(text):
        return None
    return f"“{_shown(text)}” is not an address that a page may link to", "Use https://, http:// or mailto:."


def _fault_of_path(text: str) -> tuple[str, str] | None:
    if text.startswith("/"):
        hint = "Write https:// before a site, or begin with the folder, as in media/picture.jpg."
        return "an address here does not begin with a slash", hint
    if ".." in text.split("/"):
        return "this path leads out of the content folder", "Name a file inside it, as in media/picture.jpg."
    return None


def _has_host(text: str) -> bool:
    try:
        parts = urlsplit(text)
        return bool(parts.hostname) and (parts.port is None or parts.port > 0) and "@" not in parts.netloc
    except ValueError:
        return False
