"""How high letters stand in a PDF: from its own text operators and from the outlines of its own embedded fonts."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from io import BytesIO
from typing import Any

from fontTools.pens.boundsPen import BoundsPen
from fontTools.ttLib import TTFont
from pypdf import PdfReader
from pypdf.generic import ContentStream

POINT_MM = 25.4 / 72
Matrix = tuple[float, float, float, float, float, float]
_STILL: Matrix = (1, 0, 0, 1, 0, 0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Glyph:
    """One printed character: the page from 0, the height of its ink in millimetres, its place in points."""

    page: int
    character: str
    high: float
    x: float
    y: float


def glyphs_of(content: bytes) -> list[Glyph]:
    reader = PdfReader(BytesIO(content))
    return [
        glyph
        for number, page in enumerate(reader.pages)
        for glyph in _shown(
            number, ContentStream(page.get_contents(), reader), page["/Resources"], reader, _STILL
        )
    ]


def _times(one: Matrix, other: Matrix) -> Matrix:
    a, b, c, d, e, f = one
    g, h, i, j, k, m = other
    return (
        *(a * g + b * i, a * h + b * j, c * g + d * i),
        *(c * h + d * j, e * g + f * i + k, e * h + f * j + m),
    )


def _shown(
    page: int, stream: ContentStream, resources: Any, reader: PdfReader, matrix: Matrix
) -> Iterator[Glyph]:
    stack: list[Matrix] = []
    text, size, font = _STILL, 0.0, None
    for operands, operator in stream.operations:
        if operator == b"q":
            stack.append(matrix)
        elif operator == b"Q":
            matrix = stack.pop()
        elif operator == b"cm":
            matrix = _times(tuple(map(float, operands)), matrix)  # type: ignore[arg-type]
        elif operator == b"BT":
            text = _STILL
        elif operator == b"Tm":
            text = tuple(map(float, operands))  # type: ignore[assignment]
        elif operator in (b"Td", b"TD"):
            text = _times((1, 0, 0, 1, float(operands[0]), float(operands[1])), text)
        elif operator == b"Tf":
            font, size = (
                _font(resources["/Font"][operands[0]].indirect_reference.idnum, reader),
                float(operands[1]),
            )
        elif operator in (b"Tj", b"TJ"):
            whole = _times(text, matrix)
            pieces = operands[0] if operator == b"TJ" else [operands[0]]
            assert font is not None
            for piece in pieces:
                if isinstance(piece, (bytes, str)):
                    yield from _glyphs(page, piece, font, size, whole)
        elif operator == b"Do":
            form = resources["/XObject"][operands[0]].get_object()
            if form.get("/Subtype") == "/Form":
                inner = form.get("/Resources", resources)
                yield from _shown(page, ContentStream(form, reader), inner, reader, matrix)


@dataclass(frozen=True, slots=True)
class _Font:
    heights: dict[int, float]
    characters: dict[int, str]


_FONTS: dict[tuple[int, int], _Font] = {}


def _font(number: int, reader: PdfReader) -> _Font:
    key = (id(reader), number)
    if key not in _FONTS:
        _FONTS[key] = _read_font(reader.get_object(number))
    return _FONTS[key]


def _read_font(font: Any) -> _Font:
    descriptor = font["/DescendantFonts"][0].get_object()["/FontDescriptor"].get_object()
    program = next(descriptor[key] for key in ("/FontFile2", "/FontFile3") if key in descriptor)
    with TTFont(BytesIO(program.get_object().get_data())) as read:
        glyphs, order = read.getGlyphSet(), read.getGlyphOrder()
        heights = {}
        for index, name in enumerate(order):
            pen = BoundsPen(glyphs)
            glyphs[name].draw(pen)
            if pen.bounds:
                heights[index] = (pen.bounds[3] - pen.bounds[1]) / read["head"].unitsPerEm
    return _Font(heights, _characters(font["/ToUnicode"].get_data().decode("latin-1")))


def _characters(cmap: str) -> dict[int, str]:
    """The `bfchar` and `bfrange` lines of a ToUnicode map."""
    import re

    found: dict[int, str] = {}
    for block in re.findall(r"beginbfchar(.*?)endbfchar", cmap, re.DOTALL):
        for code, target in re.findall(r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]*)>", block):
            found[int(code, 16)] = bytes.fromhex(target).decode("utf-16-be")
    for block in re.findall(r"beginbfrange(.*?)endbfrange", cmap, re.DOTALL):
        for low, high, target in re.findall(r"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]+)>", block):
            for step in range(int(high, 16) - int(low, 16) + 1):
                found[int(low, 16) + step] = chr(int(target, 16) + step)
    return found


def _glyphs(page: int, piece: bytes | str, font: _Font, size: float, matrix: Matrix) -> Iterator[Glyph]:
    raw = piece if isinstance(piece, bytes) else piece.original_bytes  # type: ignore[attr-defined]
    # The length of the upright unit vector, so that a turned or flipped page counts as well.
    scale = (matrix[2] ** 2 + matrix[3] ** 2) ** 0.5
    for at in range(0, len(raw), 2):
        code = int.from_bytes(raw[at : at + 2], "big")
        high = font.heights.get(code, 0.0) * size * scale * POINT_MM
        yield Glyph(page=page, character=font.characters.get(code, ""), high=high, x=matrix[4], y=matrix[5])


@cache
def lowest(content: bytes, characters: str) -> float:
    """The least height at which any of the characters is printed, in millimetres."""
    found = [each.high for each in glyphs_of(content) if each.character and each.character in characters]
    assert found, f"none of {characters} is printed"
    return min(found)
