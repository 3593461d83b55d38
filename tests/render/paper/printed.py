"""Reads every printed character of a PDF with its place and its size, by a reader that knows no layout."""

import ctypes
from collections.abc import Iterator
from dataclasses import dataclass

import pypdfium2 as pdfium
from pypdfium2 import raw

_MM = 25.4 / 72


@dataclass(frozen=True, slots=True, kw_only=True)
class Ink:
    """One character; `page` from 0, its box in millimetres from the page's left upper corner; `size` in points."""

    page: int
    character: str
    left: float
    top: float
    right: float
    bottom: float
    size: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Printed:
    """What stands on the pages. `text` is without spaces, in the order of printing; measures are in millimetres."""

    pages: tuple[tuple[float, float], ...]
    ink: tuple[Ink, ...]
    text: str


def read_printed(content: bytes) -> Printed:
    document = pdfium.PdfDocument(content)
    pages = [document[number] for number in range(len(document))]
    ink = tuple(each for number, page in enumerate(pages) for each in _ink(number, page))
    return Printed(
        pages=tuple((page.get_width() * _MM, page.get_height() * _MM) for page in pages),
        ink=ink,
        text="".join(each.character for each in ink),
    )


def _ink(number: int, page: pdfium.PdfPage) -> Iterator[Ink]:
    text = page.get_textpage()
    left, low, right, high = (ctypes.c_double() for _ in range(4))
    matrix = raw.FS_MATRIX()
    for at in range(text.count_chars()):
        code = raw.FPDFText_GetUnicode(text, at)
        if 0xDC00 <= code < 0xE000:
            continue
        if 0xD800 <= code < 0xDC00:
            # The reader counts the two halves of a far character as two.
            code = 0x10000 + ((code - 0xD800) << 10) + raw.FPDFText_GetUnicode(text, at + 1) - 0xDC00
        character = chr(code)
        # A hyphen at the end of a line is given so.
        character = "-" if character in "\x02\ufffe" else character
        if character.isspace() or character == "\x00" or raw.FPDFText_IsGenerated(text, at) == 1:
            continue
        raw.FPDFText_GetCharBox(text, at, left, right, low, high)
        raw.FPDFText_GetMatrix(text, at, matrix)
        scale = (matrix.c**2 + matrix.d**2) ** 0.5
        yield Ink(
            page=number,
            character=character,
            left=left.value * _MM,
            top=(page.get_height() - high.value) * _MM,
            right=right.value * _MM,
            bottom=(page.get_height() - low.value) * _MM,
            size=raw.FPDFText_GetFontSize(text, at) * scale,
        )
