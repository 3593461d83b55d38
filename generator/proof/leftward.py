"""The words of a page on which some letters run to the left, in the order in which they are read.

The library that reads PDFs turns such letters, and words of others about them, by rules of its own. So the letters of
each line are taken by their places, from left to right, and what runs to the left is turned here.
"""

import re
from collections.abc import Callable, Iterator
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
_Letter = tuple[str, float, float, float]


def has_leftward(text: str) -> bool:
    return _ANY.search(text) is not None


def in_reading_order(page: "PdfTextPage") -> str:
    """The lines of the page, each with its letters as they are read."""
    return "\n".join(_RUN.sub(_turned, "".join(_spaced(line))) for line in _lines(page))


def _turned(found: re.Match[str]) -> str:
    return _FIGURES.sub(lambda figures: figures[0][::-1], found[0][::-1])


def _lines(page: "PdfTextPage") -> Iterator[list[_Letter]]:
    """Each letter with its left, its right and its size; the spaces that are printed among them."""
    from pypdfium2 import raw

    line: list[_Letter] = []
    for at in range(page.count_chars()):
        character = _character(raw.FPDFText_GetUnicode, page, at)
        if character in "\r\n":
            if line:
                yield line
            line = []
        elif character and raw.FPDFText_IsGenerated(page, at) != 1:
            left, low, right, high = page.get_charbox(at, loose=True)
            line.append((character, left, right, high - low))
    yield line


def _character(code_at: Callable[["PdfTextPage", int], int], page: "PdfTextPage", at: int) -> str:
    """The library counts a far character as two: it is given at the first of them."""
    code = code_at(page, at)
    if 0xD800 <= code < 0xDC00:
        code = 0x10000 + ((code - 0xD800) << 10) + code_at(page, at + 1) - 0xDC00
    return "" if 0xDC00 <= code < 0xE000 else chr(code)


def _spaced(line: list[_Letter]) -> Iterator[str]:
    """The letters from left to right, with the spaces between them."""
    end = float("inf")
    # Of two in one place the second as it is read comes first, since both are turned.
    for character, left, right, size in sorted(line, key=lambda each: (each[1] + each[2], each[0] == _LAM)):
        if left - end > _SPACE * size:
            yield " "
        yield character
        end = right
