"""What stands around every line of a text and is none of it: stamps of a conversation, running heads of pages."""

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


def running_heads(lines: Iterable[SourceLine]) -> frozenset[int]:
    """The numbers of lines that say which page they stand on, the same words on every page."""
    paged = [each for each in lines if _PAGE.search(each.text) and len(each.text.split()) <= 10]
    often = Counter(_worded(each) for each in paged)
    return frozenset(each.number for each in paged if often[_worded(each)] > 1)


def _worded(line: SourceLine) -> str:
    return " ".join(re.sub(r"\d+", "#", line.text).casefold().split())
