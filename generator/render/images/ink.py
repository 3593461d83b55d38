"""Drawing text: sizes, widths, lines that fit. All lengths are pixels of the picture."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from itertools import groupby

from PIL import ImageDraw, ImageFont

from generator.render.print_fonts import FIGURES, TEXT, face_path, has_glyph

# Drawn at twice the size and reduced, so that hairlines and small letters come out smooth.
OVERSAMPLE = 2
INK = (0x22, 0x30, 0x3C)
BRICK = (0xA8, 0x40, 0x2A)
RULE = (0x7D, 0x87, 0x90)
PAPER = (0xFF, 0xFF, 0xFF)
# The narrow no-break space is a space to the eye, and only one of our families has it.
_SPACES = str.maketrans({"\u202f": "\u00a0", "\u2009": "\u00a0", "\u00ad": "", "\u200b": ""})


@dataclass(frozen=True, slots=True, kw_only=True)
class Pen:
    """How a text is drawn. `weight` is one of the print faces of its family."""

    family: str
    weight: str
    size: float
    colour: tuple[int, int, int] = INK


@cache
def width_of(text: str, pen: Pen) -> float:
    """How far the text reaches."""
    return sum(
        _font(family, pen.weight, pen.size).getlength(piece) for piece, family in _pieces(text, pen)
    ) / (OVERSAMPLE)


def draw_text(canvas: ImageDraw.ImageDraw, at: tuple[float, float], text: str, pen: Pen) -> None:
    """Draws one line with its baseline at `at`."""
    x, y = at[0] * OVERSAMPLE, at[1] * OVERSAMPLE
    for piece, family in _pieces(text, pen):
        font = _font(family, pen.weight, pen.size)
        canvas.text((x, y), piece, font=font, fill=(*pen.colour, 255), anchor="ls")
        x += font.getlength(piece)


def wrapped(text: str, pen: Pen, width: float) -> tuple[str, ...]:
    """The text in lines no wider than `width`; a word that is wider by itself is broken."""
    lines: list[str] = []
    for word in (piece for whole in text.split(" ") for piece in _fitting(whole, pen, width)):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width_of(longer, pen) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)


def _fitting(word: str, pen: Pen, width: float) -> Iterator[str]:
    piece = ""
    for letter in word:
        if piece and width_of(piece + letter, pen) > width:
            yield piece
            piece = ""
        piece += letter
    yield piece


def as_drawn(text: str) -> str:
    """The text with the spaces that are drawn, and without what nobody sees."""
    return text.translate(_SPACES)


def _pieces(text: str, pen: Pen) -> Iterator[tuple[str, str]]:
    """The text in stretches with the family that has their glyphs."""
    other = TEXT if pen.family == FIGURES else FIGURES
    for own, letters in groupby(as_drawn(text), key=lambda letter: has_glyph(pen.family, letter)):
        yield "".join(letters), pen.family if own else other


@cache
def _font(family: str, weight: str, size: float) -> ImageFont.FreeTypeFont:
    # The basic engine is part of every Pillow; the other may not be there, and sets text differently.
    font = ImageFont.truetype(
        face_path(family, weight), round(size * OVERSAMPLE), layout_engine=ImageFont.Layout.BASIC
    )
    if family == TEXT:
        font.set_variation_by_axes([float(weight)])
    return font
