"""What stands around every line of a text and is none of it: stamps of a conversation, labels, heads of pages."""

import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import replace

from generator.importer.model import SourceLine

_STAMP = re.compile(
    r"^\s*[\[(]?\d{1,4}[./-]\d{1,2}[./-]\d{2,4},?\s+\d{1,2}[:.]\d{2}(?:[:.]\d{2})?(?:\s?[ap]\.?m\.?)?[\])]?\s*[-–—]?\s*"
    r"(?P<who>[^:\d][^:]{0,40}?):\s+",
    re.I,
)
_PAGE = re.compile(r"\bpage\s+\d{1,3}\b|^\W*\d{1,3}\s*(?:/|of)\s*\d{1,3}\W*$", re.I)
_LABEL = re.compile(r"^\s*ingredient\s+\d{1,2}\s*[:.)–-]\s*", re.I)
_PART = re.compile(r"^\s*part\s*:\s*([^:]+)$", re.I)
_FIELD = re.compile(r";(?!\s)|;\s*$")
_MOST = 0.6


def without_stamps(lines: tuple[SourceLine, ...]) -> tuple[tuple[SourceLine, ...], tuple[str, ...]]:
    """The lines of a conversation without the date and name before each, and what to say of that."""
    filled = [each for each in lines if each.text.strip()]
    found = [match for each in filled if (match := _STAMP.match(each.text))]
    if len(found) < 3 or len(found) < len(filled) * _MOST:
        return lines, ()
    names = ", ".join(dict.fromkeys(each["who"].strip() for each in found))
    bare = tuple(replace(each, text=_STAMP.sub("", each.text, count=1)) for each in lines)
    return bare, (f"the dates and names before {len(found)} lines of a conversation: {names}",)


def without_labels(lines: tuple[SourceLine, ...]) -> tuple[SourceLine, ...]:
    """A form without the labels before its lines (`Ingredient 3: …`, `Part: …`); steps keep theirs."""
    if sum(bool(_LABEL.match(each.text)) for each in lines) < 3:
        return lines
    return tuple(replace(each, text=_PART.sub(r"\1:", _LABEL.sub("", each.text))) for each in lines)


def in_cells(lines: tuple[SourceLine, ...]) -> tuple[SourceLine, ...]:
    """Fields that are parted by semicolons without a blank, as cells of a table."""
    filled = [each for each in lines if each.text.strip()]
    rows = [each for each in filled if len(_FIELD.findall(each.text)) > 1]
    if len(rows) < 3 or len(rows) * 3 < len(filled):
        return lines
    return tuple(replace(each, text=_FIELD.sub("\t", each.text).strip("\t")) for each in lines)


def running_heads(lines: Iterable[SourceLine]) -> frozenset[int]:
    """The numbers of lines that say which page they stand on, the same words on every page."""
    paged = [each for each in lines if _PAGE.search(each.text) and len(each.text.split()) <= 10]
    often = Counter(_worded(each) for each in paged)
    return frozenset(each.number for each in paged if often[_worded(each)] > 1)


def _worded(line: SourceLine) -> str:
    return " ".join(re.sub(r"\d+", "#", line.text).casefold().split())
