"""Drawing text: sizes, widths, lines that fit. All lengths are pixels of the picture."""

import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import groupby

from PIL import ImageDraw, ImageFont, features

from generator.render.far_faces import JOINERS, pieces_in_order
from generator.render.print_fonts import FIGURES, TEXT, face_path, family_of, far_letters
from generator.render.syllables import broken_word

# Drawn at twice the size and reduced, so that hairlines and small letters come out smooth.
OVERSAMPLE = 2
INK = (0x22, 0x30, 0x3C)
BRICK = (0xA8, 0x40, 0x2A)
RULE = (0x7D, 0x87, 0x90)
PAPER = (0xFF, 0xFF, 0xFF)
GROUND = (0xF3, 0xEC, 0xDD)
SLIP = (0xFD, 0xFA, 0xF2)
SOFT = (0x4B, 0x57, 0x62)
# A soft hyphen is seen where a line ends with it (Unicode 16, 23.2), and nowhere else.
BREAK = "\u00ad"
# Kerning is on unasked. Figures are of one height everywhere, and of one width where they stand in columns.
_FEATURES: Mapping[str, list[str]] = {TEXT: ["lnum"], FIGURES: ["lnum", "tnum"]}
# The narrow no-break space is a space to the eye, and only one of our families has it.
_SPACES = str.maketrans({"\u202f": "\u00a0", "\u2009": "\u00a0", "\u00ad": "", "\u200b": ""})


class NoGlyph(ValueError):
    """A character that no face has would be drawn as a gap. `check` has told the maker of those in a recipe."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Pen:
    """How a text is drawn. `weight` is one of the print faces of its family."""

    family: str
    weight: str
    size: float
    colour: tuple[int, int, int] = INK


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """A text with its baseline, from the corner of what it stands in."""

    x: float
    y: float
    text: str
    pen: Pen


@lru_cache(maxsize=50_000)
def width_of(text: str, pen: Pen) -> float:
    """How far the text reaches."""
    return sum(_length(piece, pen) for piece in _pieces(text, pen)) / OVERSAMPLE


def draw_text(canvas: ImageDraw.ImageDraw, at: tuple[float, float], text: str, pen: Pen) -> None:
    """Draws one line with its baseline at `at`."""
    x, y = at[0] * OVERSAMPLE, at[1] * OVERSAMPLE
    for piece in _pieces(text, pen):
        canvas.text(
            (x, y),
            piece.text,
            font=_font(piece.family, pen.weight, pen.size),
            fill=(*pen.colour, 255),
            anchor="ls",
            direction=piece.direction,
            features=_features(piece.family),
        )
        x += _length(piece, pen)


def wrapped(text: str, pen: Pen, width: float, language: str = "en-US") -> tuple[str, ...]:
    """The text in lines no wider than `width`; a word that is wider by itself is broken; BREAK ends its lines."""
    lines: list[str] = []
    for whole in text.split(" "):
        pieces = broken_word(whole, language, lambda piece: width_of(piece, pen) <= width)
        for number, word in enumerate(pieces):
            longer = f"{lines[-1]} {word}" if lines and not number else word
            if lines and not number and width_of(longer, pen) <= width:
                lines[-1] = longer
            else:
                lines.append(word)
    return tuple(lines)


def balanced(text: str, pen: Pen, width: float, language: str = "en-US") -> tuple[str, ...]:
    """As `wrapped`, the lines as even as they can be without one more."""
    best = wrapped(text, pen, width, language)
    low, high = 0.4 * width, width
    while len(best) > 1 and high - low > 4:
        middle = (low + high) / 2
        lines = wrapped(text, pen, middle, language)
        if len(lines) == len(best) and not any(line.endswith(BREAK) for line in lines):
            best, high = lines, middle
        else:
            low = middle
    return best


def cut_short(lines: Iterable[str], most: int, pen: Pen, width: float) -> tuple[str, ...]:
    """At most so many lines; where there are more, the last one says so with three dots."""
    kept = tuple(lines)
    if len(kept) <= most:
        return kept
    last = kept[most - 1].rstrip(BREAK)
    while last and width_of(f"{last} …", pen) > width:
        last = last[:-1].rstrip()
    return (*kept[: most - 1], f"{last} …".strip())


def as_drawn(text: str) -> str:
    """The text with the spaces that are drawn, and without what nobody sees."""
    return text.translate(_SPACES)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Piece:
    """Letters of one family that run one way; `direction` is what the shaper is told, None for none."""

    text: str
    family: str
    direction: str | None = None


def _pieces(text: str, pen: Pen) -> Iterator[_Piece]:
    """The text in stretches with the family that has their glyphs, in the order in which they are drawn."""
    shown = as_drawn(text) + ("-" if text.endswith(BREAK) else "")
    if not far_letters(shown):
        yield from _in_families(shown, pen)
        return
    for piece in pieces_in_order(shown):
        if piece.leftward:
            yield _Piece(text=piece.text, family=_family_of(piece.text[0], pen), direction="rtl")
        else:
            yield from _in_families("".join(each for each in piece.text if each not in JOINERS), pen)


def _in_families(text: str, pen: Pen) -> Iterator[_Piece]:
    for family, letters in groupby(text, key=lambda letter: _family_of(letter, pen)):
        yield _Piece(text="".join(letters), family=family)


def _family_of(letter: str, pen: Pen) -> str:
    family = family_of(letter, pen.family)
    if not family:
        raise NoGlyph(f"no face has U+{ord(letter):04X} {unicodedata.name(letter, 'without a name')}")
    return family


def _length(piece: _Piece, pen: Pen) -> float:
    font = _font(piece.family, pen.weight, pen.size)
    return font.getlength(piece.text, direction=piece.direction, features=_features(piece.family))


def _features(family: str) -> list[str] | None:
    return _FEATURES.get(family) if _shapes() else None


@cache
def _shapes() -> bool:
    """Whether there is a shaper for kerning and figures. It needs FriBiDi, which the PDF engine's Pango brings."""
    return bool(features.check_feature("raqm"))


@cache
def _font(family: str, weight: str, size: float) -> ImageFont.FreeTypeFont:
    engine = ImageFont.Layout.RAQM if _shapes() else ImageFont.Layout.BASIC
    font = ImageFont.truetype(face_path(family, weight), round(size * OVERSAMPLE), layout_engine=engine)
    if family == TEXT:
        font.set_variation_by_axes([float(weight)])
    return font
