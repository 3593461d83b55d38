"""The words of a page on which some letters run to the left, in the order in which they are read.

The library that reads PDFs turns such letters, and words of others about them, by rules of its own. So the letters of
each line are taken by their places, from left to right, and what runs to the left is turned here.
"""

import ctypes
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pypdfium2 import PdfTextPage

_LETTERS = "\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff"
_ANY = re.compile(f"[{_LETTERS}]")
# From the first such letter to the last before one that runs to the right; figures in between run to the right.
_RUN = re.compile(rf"[{_LETTERS}](?:(?:[\d\W_])*[{_LETTERS}])*")
_FIGURES = re.compile(r"%?\d+(?:\W\d+)*")
# Two letters of Arabic that are drawn as one: the first of them as it is read.
_LAM = "\u0644"
# Of the size of the letters: what is wider than this between two of them is a space.
_SPACE = 0.12


# In points: letters of one line stand on one height, whatever their face. The library begins a line at an emoji.
_ONE_LINE = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class _Letter:
    """`base` is the height of the line that it stands on."""

    character: str
    left: float
    right: float
    base: float
    size: float


def has_leftward(text: str) -> bool:
    return _ANY.search(text) is not None


def in_reading_order(page: "PdfTextPage") -> str:
    """The lines of the page, each with its letters as they are read."""
    return "\n".join(_RUN.sub(_turned, "".join(_spaced(line))) for line in _lines(page))


def _turned(found: re.Match[str]) -> str:
    return _FIGURES.sub(lambda figures: figures[0][::-1], found[0][::-1])


def _lines(page: "PdfTextPage") -> Iterator[list[_Letter]]:
    """The letters of each line, and the spaces that are printed among them."""
    from pypdfium2 import raw

    line: list[_Letter] = []
    x, base = ctypes.c_double(), ctypes.c_double()
    for at in range(page.count_chars()):
        character = _character(raw.FPDFText_GetUnicode, page, at)
        if character in ("", "\r", "\n") or raw.FPDFText_IsGenerated(page, at) == 1:
            continue
        left, low, right, high = page.get_charbox(at, loose=True)
        raw.FPDFText_GetCharOrigin(page, at, x, base)
        letter = _Letter(character=character, left=left, right=right, base=base.value, size=high - low)
        if line and abs(letter.base - line[-1].base) > _ONE_LINE:
            yield line
            line = []
        line.append(letter)
    yield line


def _character(code_at: Callable[["PdfTextPage", int], int], page: "PdfTextPage", at: int) -> str:
    """The library counts a far character as two, and turns them too: it is given at the upper of them."""
    code = code_at(page, at)
    if 0xD800 <= code < 0xDC00:
        around = (code_at(page, at + 1), code_at(page, max(at - 1, 0)))
        lower = next((each for each in around if 0xDC00 <= each < 0xE000), 0xDC00)
        code = 0x10000 + ((code - 0xD800) << 10) + lower - 0xDC00
    return "" if 0xDC00 <= code < 0xE000 else chr(code)


def _spaced(line: list[_Letter]) -> Iterator[str]:
    """The letters from left to right, with the spaces between them."""
    end = float("inf")
    # Of two in one place the second as it is read comes first, since both are turned.
    for each in sorted(line, key=lambda one: (one.left + one.right, one.character == _LAM)):
        if each.left - end > _SPACE * each.size:
            yield " "
        yield each.character
        end = each.right
