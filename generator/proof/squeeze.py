"""A text without what differs between formats: spaces, line ends, marks, capitals. Every letter knows its place.

A card breaks a line where a page does not, a PDF hyphenates, a description has no bold: none of that is a
disagreement. Letters, figures and the signs that belong to figures are what is compared.
"""

import re
import unicodedata
from array import array
from dataclasses import dataclass

# A full stop, a dash, a colon or a stroke counts only inside a figure, a minus only before one.
_KEPT = re.compile(r"[^\W_]+|%|×|(?<=[^\W_])[.–\-:/](?=\d)|[−-](?=\d)")
_LIGATURES = str.maketrans({each: unicodedata.normalize("NFKC", each) for each in "ﬀﬁﬂﬃﬄﬅﬆ"})
_INSIDE = frozenset(".,:/–-−")
_MINUS = frozenset("−-")
# What a PDF's text holds where a line was broken inside a word.
_UNSEEN = {0xAD: None, 0x200B: None, 0x2060: None, 0xFEFF: None, 0xFFFE: None, 0x02: None}


@dataclass(frozen=True, slots=True, kw_only=True)
class Squeezed:
    """`letters[n]` is the letter that stands in `words` at `places[n]`."""

    words: str
    letters: str
    places: "array[int]"


def readable(text: str) -> str:
    """The text with its letters in one form, and without marks that nobody sees."""
    if text.isascii() and "\x02" not in text:
        return text
    return unicodedata.normalize("NFC", text.translate(_UNSEEN).translate(_LIGATURES))


def letters_of(text: str) -> str:
    """What of a text is compared."""
    return _folded("".join(_KEPT.findall(readable(text))))


def squeeze(words: str) -> Squeezed:
    """`words` must be `readable` already, so that the places are places in it."""
    kept, places = [], array("l")
    for found in _KEPT.finditer(words):
        kept.append(found.group())
        places.extend(range(*found.span()))
    return Squeezed(words=words, letters=_folded("".join(kept)), places=places)


def _folded(text: str) -> str:
    """In small letters, one for one."""
    low = text.lower()
    if len(low) != len(text):
        low = "".join(each.lower()[0] for each in text)
    # A sigma at the end of a word is small in another way.
    return low.replace("ς", "σ")


def stands(text: Squeezed, start: int, end: int) -> bool:
    """Whether the letters from `start` to `end` are no piece of a longer word, number or range."""
    words, first, last = text.words, text.places[start], text.places[end - 1]
    before, after = words[first - 1 : first], words[last + 1 : last + 2]
    if before.isalnum() or after.isalnum():
        return False
    if words[first].isnumeric() and before in _INSIDE and before:
        return not (words[first - 2 : first - 1].isnumeric() or before in _MINUS)
    if words[last].isnumeric() and after in _INSIDE and after:
        return not words[last + 2 : last + 3].isnumeric()
    return True


def find(text: Squeezed, letters: str, start: int = 0, end: int | None = None) -> int:
    """Where the letters first stand from `start` on, -1 for nowhere."""
    if not letters:
        return -1
    limit = len(text.letters) if end is None else end
    at = text.letters.find(letters, start, limit)
    while at >= 0 and not stands(text, at, at + len(letters)):
        at = text.letters.find(letters, at + 1, limit)
    return at
