"""A text without what differs between formats: spaces, line ends, marks, capitals. Every letter knows its place.

A card breaks a line where a page does not, a PDF hyphenates, a description has no bold: none of that is a
disagreement. Letters, figures and the signs that belong to figures are what is compared.
"""

import re
import unicodedata
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate

# A full stop, a dash, a colon or a stroke counts only inside a figure, a minus only before one.
_KEPT = re.compile(r"[^\W_]+|%|×|(?<=[^\W_])[.–\-:/](?=\d)|[−-](?=\d)")
_LIGATURES = {ord(each): unicodedata.normalize("NFKC", each) for each in "ﬀﬁﬂﬃﬄﬅﬆ"}
_INSIDE = frozenset(".,:/–-−")
_MINUS = frozenset("−-")
# What a PDF's text holds where a line was broken inside a word.
_UNSEEN = dict.fromkeys((0xAD, 0x200B, 0x2060, 0xFEFF, 0xFFFE, 0x02))
_OTHERWISE: dict[int, str | None] = {**_LIGATURES, **_UNSEEN}
_ODD = re.compile(f"[{''.join(map(chr, _OTHERWISE))}]")
_GAP = "\0"
# The signs above where they do not count.
_IDLE = re.compile(r"[.–\-:/−](?:(?!\d)|(?<=[.–:/])(?<![^\W_].))", re.DOTALL)


class _Gaps(dict[int, str]):
    """A table for `translate`: what may be kept stays, for everything else there is a gap."""

    def __missing__(self, code: int) -> str:
        sign = chr(code)
        self[code] = sign if sign.isalnum() or sign in "%×.–-:/−" else _GAP
        return self[code]


_GAPS = _Gaps()


@dataclass(frozen=True, slots=True, kw_only=True)
class Squeezed:
    """The letters of `words`, which stand there in stretches, some of them empty.

    Each begins in `words` at one of `starts`, and its first letter is the one at the same place of `firsts`.
    """

    words: str
    letters: str
    starts: Sequence[int]
    firsts: Sequence[int]

    def place(self, letter: int) -> int:
        """Where a letter stands in the words; their end for the letter after the last."""
        if letter >= len(self.letters):
            return len(self.words)
        at = bisect_right(self.firsts, letter) - 1
        return self.starts[at] + letter - self.firsts[at]

    def letter(self, place: int) -> int:
        """The first letter at a place of the words or after it."""
        at = bisect_right(self.starts, place) - 1
        if at < 0:
            return 0
        after = self.firsts[at + 1] if at + 1 < len(self.firsts) else len(self.letters)
        return min(self.firsts[at] + place - self.starts[at], after)


def readable(text: str) -> str:
    """The text with its letters in one form, and without marks that nobody sees."""
    if text.isascii() and "\x02" not in text:
        return text
    return unicodedata.normalize("NFC", text.translate(_OTHERWISE) if _ODD.search(text) else text)


@lru_cache(maxsize=1 << 13)
def letters_of(text: str) -> str:
    """What of a text is compared. The same few words stand in all that is made of a recipe."""
    return _folded("".join(_KEPT.findall(readable(text))))


def squeeze(words: str) -> Squeezed:
    """`words` must be `readable` already, so that the places are places in it."""
    stretches = _IDLE.sub(_GAP, words.translate(_GAPS)).split(_GAP)
    firsts = list(accumulate(map(len, stretches), initial=0))
    starts = [first + gaps for gaps, first in enumerate(firsts)]
    return Squeezed(words=words, letters=_folded("".join(stretches)), starts=starts, firsts=firsts)


def _folded(text: str) -> str:
    """In small letters, one for one."""
    low = text.lower()
    if len(low) != len(text):
        low = "".join(each.lower()[0] for each in text)
    # A sigma at the end of a word is small in another way.
    return low if low.isascii() else low.replace("ς", "σ")


def stands(text: Squeezed, start: int, end: int) -> bool:
    """Whether the letters from `start` to `end` are no piece of a longer word, number or range."""
    words, first, last = text.words, text.place(start), text.place(end - 1)
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
