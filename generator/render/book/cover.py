"""The cover of a book as a picture, for the shelf of a reading device."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from io import BytesIO
from itertools import groupby

from PIL import Image, ImageDraw, ImageFont

from generator.present.book import BookView
from generator.render.far_faces import FAR_FAMILIES, JOINERS, pieces_in_order
from generator.render.print_fonts import FIGURES, TEXT, face_path, family_of, far_letters, has_glyph

Colour = tuple[int, int, int]
# Two to three, which shelves of reading devices show whole.
WIDTH, HEIGHT = 1000, 1500
_PAPER, _INK, _BRICK = (253, 250, 242), (34, 48, 60), (168, 64, 42)
_LEFT, _RIGHT, _BAND = 90, 910, 300
_TITLE_SIZES = (120, 100, 84, 70, 58, 48, 40)
_TITLE_ROOM = 640


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """A face at one size; what it lacks is drawn in the further ones."""

    family: str
    size: int
    weight: str = "400"

    def getlength(self, text: str) -> float:
        return sum(font.getlength(letters, direction=way) for letters, font, way in self._pieces(text))

    def draw(self, draw: ImageDraw.ImageDraw, place: tuple[float, float], text: str, fill: Colour) -> None:
        """Draws a line with its upper left corner at `place`."""
        x, y = place[0], place[1] + _font(self.family, self.size, self.weight).getmetrics()[0]
        for letters, font, way in self._pieces(text):
            draw.text((x, y), letters, font=font, fill=fill, anchor="ls", direction=way)
            x += font.getlength(letters, direction=way)

    def _pieces(self, text: str) -> Iterator[tuple[str, ImageFont.FreeTypeFont, str | None]]:
        own = _font(self.family, self.size, self.weight)
        if not far_letters(text):
            yield text, own, None
            return
        for piece in pieces_in_order(text):
            shown = "".join(letter for letter in piece.text if letter not in JOINERS)
            for family, letters in groupby(shown, key=lambda letter: family_of(letter, self.family)):
                font = _font(family, self.size, self.weight) if family in FAR_FAMILIES else own
                yield "".join(letters), font, "rtl" if piece.leftward else None


def draw_cover(book: BookView) -> bytes:
    """A PNG of WIDTH by HEIGHT pixels; a title that fits in no size loses its last words to a sign."""
    picture = Image.new("RGB", (WIDTH, HEIGHT), _PAPER)
    draw = ImageDraw.Draw(picture)
    draw.rectangle((0, 0, WIDTH, _BAND), fill=_INK)
    maker = Face(family=FIGURES, size=44)
    _lines(draw, wrapped(book.maker, maker, most=3), maker, (_LEFT, 90), fill=_PAPER)
    face, lines = title_lines(book.title)
    below = _lines(draw, lines, face, (_LEFT, _BAND + 110), fill=_INK)
    draw.rectangle((_LEFT, below + 36, _RIGHT, below + 46), fill=_BRICK)
    subject = Face(family=_family(book.subject), size=46)
    _lines(draw, wrapped(book.subject, subject, most=4), subject, (_LEFT, below + 84), fill=_INK)
    written = BytesIO()
    picture.save(written, "PNG")
    return written.getvalue()


def title_lines(title: str) -> tuple[Face, list[str]]:
    """The largest size whose lines fit below the band, and the lines."""
    for size in _TITLE_SIZES:
        face = Face(family=_family(title), size=size, weight="700")
        lines = wrapped(title, face)
        if len(lines) * size * 1.2 <= _TITLE_ROOM:
            return face, lines
    most = int(_TITLE_ROOM / (_TITLE_SIZES[-1] * 1.2))
    return face, wrapped(title, face, most=most)


def wrapped(text: str, face: Face, *, most: int = 0) -> list[str]:
    """Lines that fit between the margins; a word longer than a line is broken; `most` lines where it is given."""
    lines = [""]
    for word in _fitting(text.split(), face):
        longer = f"{lines[-1]} {word}".strip()
        if face.getlength(longer) <= _RIGHT - _LEFT:
            lines[-1] = longer
        else:
            lines.append(word)
    if most and len(lines) > most:
        lines = lines[:most]
        while face.getlength(f"{lines[-1]} …") > _RIGHT - _LEFT:
            lines[-1] = lines[-1][:-1].rstrip()
        lines[-1] = f"{lines[-1]} …"
    return lines


def _fitting(words: list[str], face: Face) -> Iterator[str]:
    for word in words:
        piece = ""
        for letter in word:
            if piece and face.getlength(piece + letter) > _RIGHT - _LEFT:
                yield piece
                piece = ""
            piece += letter
        yield piece


def _lines(
    draw: ImageDraw.ImageDraw,
    lines: list[str],
    face: Face,
    place: tuple[int, int],
    *,
    fill: Colour,
) -> int:
    """Draws the lines below each other and gives where they end."""
    left, top = place
    for line in lines:
        face.draw(draw, (left, top), line, fill)
        top += round(face.size * 1.2)
    return top


@cache
def _font(family: str, size: int, weight: str) -> ImageFont.FreeTypeFont:
    # The basic engine is part of every Pillow, and sets our own letters otherwise than the one that far ones need.
    engine = ImageFont.Layout.RAQM if family in FAR_FAMILIES else ImageFont.Layout.BASIC
    font = ImageFont.truetype(str(face_path(family, weight)), size, layout_engine=engine)
    if family == TEXT:
        font.set_variation_by_axes([float(weight)])
    return font


def _family(text: str) -> str:
    """The face of titles, or the other one where that lacks a letter that it has."""
    far = far_letters(text)
    return TEXT if all(has_glyph(TEXT, letter) for letter in text if letter not in far) else FIGURES
