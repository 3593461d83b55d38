"""From bytes to text: UTF-8, and no character that a reader cannot see or a printer cannot print."""

import re
import unicodedata
from collections.abc import Iterator

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import whole_file
from generator.source.lines import BYTE_ORDER_MARK, Places

MOST_BYTES = 2_000_000
MOST_REPORTS = 10
REPLACEMENT = "\ufffd"

# C0 and C1 controls but tab and line ends; the two Unicode line separators; a byte-order mark that is not
# at the start; non-characters; and the two private-use characters that mark a reference in a passage.
_CONTROL = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ue000\ue001\ufeff\ufdd0-\ufdef\ufffe\uffff]+"
)
# Direction overrides and isolates, and spaces without a width. Joiners stay: emoji and scripts need them.
_HIDDEN = re.compile("[\u061c\u180e\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069]+")


def decode(path: str, data: bytes) -> tuple[str, Diagnostics]:
    """The text of a file, and what is wrong with its bytes and characters.

    Text is always given, so that an excerpt can be shown; a control character becomes U+FFFD, one for one.
    """
    if len(data) > MOST_BYTES:
        return "", (too_large(path),)
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as fault:
        return data.decode("utf-8", "replace"), (not_utf8(path, data, fault.start),)
    return _without_controls(path, text)


def too_large(path: str) -> Diagnostic:
    return Diagnostic(
        code="S003",
        message="this file is larger than 2 MB",
        span=whole_file(path),
        hint="A page holds text only: split it, and put pictures in media/.",
    )


def not_utf8(path: str, data: bytes, start: int) -> Diagnostic:
    places = Places(path, data[:start].decode("utf-8"))
    hint = "Save the file as UTF-8 in your editor (“Save with encoding”)."
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        hint = "The file is UTF-16. Save it as UTF-8 in your editor (“Save with encoding”)."
    return Diagnostic(
        code="S001",
        message=f"this file is not UTF-8: byte 0x{data[start]:02X} is no character",
        span=places.span(start=len(places.text), end=len(places.text) + 1),
        hint=hint,
    )


def _without_controls(path: str, text: str) -> tuple[str, Diagnostics]:
    mark = BYTE_ORDER_MARK if text.startswith(BYTE_ORDER_MARK) else ""
    bare = text.removeprefix(mark)
    found = tuple(_reports(Places(path, text), bare, len(mark)))
    return mark + _CONTROL.sub(lambda match: REPLACEMENT * len(match[0]), bare), found


def _reports(places: Places, bare: str, offset: int) -> Iterator[Diagnostic]:
    for _, match in zip(range(MOST_REPORTS), _CONTROL.finditer(bare), strict=False):
        yield Diagnostic(
            code="S002",
            message=f"this {_name(match[0][0])} does not belong in a text",
            span=places.span(match.start() + offset, match.end() + offset),
            hint="Delete it and type the text afresh; it may not show in your editor.",
        )
    for _, match in zip(range(MOST_REPORTS), _HIDDEN.finditer(bare), strict=False):
        yield Diagnostic(
            code="S025",
            message=f"an invisible character stands here: {_name(match[0][0])}",
            span=places.span(match.start() + offset, match.end() + offset),
            hint="Delete it, unless the text is written from right to left.",
        )


def _name(character: str) -> str:
    number = f"U+{ord(character):04X}"
    name = unicodedata.name(character, "").lower()
    return f"{number} ({name})" if name else f"control character {number}"
