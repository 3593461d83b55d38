"""The faces that paper and pictures are set in, and the question whether they have a character.

Print uses family names of its own, so that a font of the same name on the machine can never slip in.
"""

import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass, fields, is_dataclass
from functools import cache, partial
from importlib import resources
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Any

from generator.render.far_faces import FAR_FAMILIES, SIGNS, far_family, far_missing, far_path
from generator.render.font_cache import kept_font
from generator.render.fonts import TYPEFACES, Typeface

if TYPE_CHECKING:
    from fontTools.ttLib import TTFont

TEXT = "Docket Text"
FIGURES = "Docket Sans"
_NAMES = {"Vollkorn": TEXT, "Fira Sans Condensed": FIGURES}
_BOLD_PACKAGE, _BOLD_FILE = "fontpkg_fira_sans_condensed", "FiraSansCondensed-Bold.ttf"
# What steers a line and leaves no mark needs no glyph: soft hyphen, zero-width space, line ends, tabs.
_UNSEEN = frozenset("\n\r\t\u00ad\u200b")
# The tables of OpenType that only a variable font needs.
_VARIATIONS = ("fvar", "gvar", "avar", "HVAR", "VVAR", "MVAR", "STAT", "cvar")
_METRICS = ("HVAR", "MVAR", "STAT")
# The tables that shape a line: kerning, ligatures, figures, true fractions.
_LAYOUT = ("GDEF", "GPOS", "GSUB")
# Fields of a view that are addresses or markup, not words that are printed.
_NOT_PRINTED = frozenset({"markdown", "path", "source", "anchor", "name", "language", "iso_times", "photo"})


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintFace:
    """One face for print: `key` names it in `font:` addresses; `weight` is one number, as CSS writes it."""

    key: str
    family: str
    weight: str
    style: str
    path: Path


@dataclass(frozen=True, slots=True, kw_only=True)
class MissingGlyph:
    """A character that no face of ours has; `where` leads to it in the view ("parts[0].lines[2].item")."""

    character: str
    where: str

    @property
    def words(self) -> str:
        """The character as a reader can name it: U+2713 CHECK MARK."""
        name = unicodedata.name(self.character, "a character without a name")
        return f"U+{ord(self.character):04X} {name}"


def _weights(face: Typeface) -> tuple[str, ...]:
    """The weights a face is cut to: a variable face is printed bold only where it stands upright."""
    if " " not in face.weight:
        return (face.weight,)
    return ("400",) if face.style == "italic" else ("400", "700")


@cache
def print_faces() -> tuple[PrintFace, ...]:
    """The faces in a fixed order. A variable face stands once for each weight that is used."""
    found = [
        PrintFace(
            key=f"{face.web.split('.')[0]}-{weight}",
            family=_NAMES[face.family],
            weight=weight,
            style=face.style,
            path=face.path,
        )
        for face in TYPEFACES
        if face.family in _NAMES
        for weight in _weights(face)
    ]
    bold = Path(str(resources.files(_BOLD_PACKAGE))) / "files" / _BOLD_FILE
    found.append(
        PrintFace(key="fira-condensed-bold", family=FIGURES, weight="700", style="normal", path=bold)
    )
    return tuple(found)


@cache
def far_print_faces() -> tuple[PrintFace, ...]:
    """The faces for what those lack. They stand for slanted letters too: the engine would lean them by itself."""
    return tuple(
        PrintFace(
            key=f"{family.lower().replace(' ', '-')}-{weight}-{style}",
            family=family,
            weight=weight,
            style=style,
            path=far_path(family, weight),
        )
        for family in FAR_FAMILIES
        for weight in ("400", "700")
        for style in ("normal", "italic")
    )


@cache
def face_bytes(face: PrintFace) -> bytes:
    """The font file of a face for the layout engine.

    A variable font is given at its weight and without its variations: the engine would otherwise work them
    out again for every document, and write the time of day into the result.
    """
    from fontTools.ttLib import TTFont

    with TTFont(face.path, lazy=True) as font:
        if "fvar" not in font:
            return face.path.read_bytes()
    return kept_font(face.path, f"print face 1: {face.weight}", partial(_at_its_weight, face))


def _at_its_weight(face: PrintFace) -> bytes:
    from fontTools.ttLib import TTFont

    with TTFont(face.path, lazy=True, recalcTimestamp=False, recalcBBoxes=False) as font:
        if float(face.weight) == font["fvar"].axes[0].defaultValue:
            _drop(font, _VARIATIONS)
        else:
            _cut(font, float(face.weight))
        written = BytesIO()
        font.save(written)
    return written.getvalue()


def _cut(font: "TTFont", weight: float) -> None:
    """Takes the outlines of one weight. Kerning and features stay those of the regular weight: to work them out
    again takes seconds, and the difference is below a hundredth of an em."""
    # Half a second to load, and needed once: what it cuts is kept.
    from fontTools.ttLib.tables.DefaultTable import DefaultTable
    from fontTools.varLib.instancer import instantiateVariableFont

    kept = {tag: font.getTableData(tag) for tag in _LAYOUT if tag in font}
    _drop(font, (*kept, *_METRICS))
    instantiateVariableFont(font, {"wght": weight}, inplace=True)
    for tag, data in kept.items():
        font[tag] = DefaultTable(tag)
        font[tag].data = data


def _drop(font: "TTFont", tags: tuple[str, ...]) -> None:
    for tag in tags:
        if tag in font:
            del font[tag]


def face_path(family: str, weight: str) -> Path:
    """The file of an upright face, for drawing. Raises KeyError for a face that we do not have."""
    if family in FAR_FAMILIES:
        return far_path(family, weight)
    for face in print_faces():
        if (face.family, face.weight, face.style) == (family, weight, "normal"):
            return face.path
    raise KeyError(f"{family} {weight}")


@cache
def has_glyph(family: str, character: str) -> bool:
    return ord(character) in _covered(family)


def family_of(character: str, first: str) -> str:
    """The family that a character is drawn in where `first` is wanted, or "" where none has it."""
    for family in (first, TEXT if first == FIGURES else FIGURES):
        if has_glyph(family, character):
            return family
    return far_family(character)


def missing_glyphs(text: str) -> tuple[str, ...]:
    """The characters of `text` that no face has, each once, sorted. Print would leave them out."""
    far = far_letters(text)
    return tuple(sorted(far_missing(far))) if far else ()


def no_letters(text: str) -> tuple[str, ...]:
    """Those and the signs that stand for no letter: an old text has them as ornament, among its amounts too."""
    far = far_letters(text)
    if not far:
        return ()
    return tuple(sorted({*far_missing(far), *(each for each in far if far_family(each) == SIGNS)}))


def far_letters(text: str) -> frozenset[str]:
    """The characters that our own two families lack."""
    return frozenset(set(text) - _known())


@cache
def _known() -> frozenset[str]:
    return _UNSEEN | frozenset(map(chr, _covered(TEXT) | _covered(FIGURES)))


def unprintable(view: object) -> tuple[MissingGlyph, ...]:
    """Every character of a view's words that cannot be printed, with the place it stands at."""
    # Nearly always there is none, and then no place is asked for.
    if not missing_glyphs("".join(_texts(view))):
        return ()
    return tuple(
        MissingGlyph(character=character, where=where)
        for where, text in _words(view, "")
        for character in missing_glyphs(text)
    )


def _texts(value: object) -> list[str]:
    """The same texts as `_words`, without their places."""
    found: list[str] = []
    waiting = [value]
    while waiting:
        each = waiting.pop()
        if isinstance(each, str):
            found.append(each)
        elif isinstance(each, tuple):
            waiting += each
        elif is_dataclass(each):
            waiting += [getattr(each, name) for name in _printed(each)]
    return found


def _printed(view: Any) -> tuple[str, ...]:
    """The fields of a view that are printed."""
    kind: Any = type(view)
    return _fields_of(kind)


@cache
def _fields_of(kind: Any) -> tuple[str, ...]:
    return tuple(field.name for field in fields(kind) if field.name not in _NOT_PRINTED)


def _words(value: object, where: str) -> Iterator[tuple[str, str]]:
    if isinstance(value, str):
        yield where, value
    elif isinstance(value, tuple):
        for number, inner in enumerate(value):
            yield from _words(inner, f"{where}[{number}]")
    elif is_dataclass(value):
        for name in _printed(value):
            yield from _words(getattr(value, name), f"{where}.{name}" if where else name)


@cache
def _covered(family: str) -> frozenset[int]:
    """The code points that every face of a family has."""
    maps = [_characters(face.path) for face in print_faces() if face.family == family]
    return frozenset.intersection(*maps)


@cache
def _characters(path: Path) -> frozenset[int]:
    """Kept as plain numbers, for which what reads fonts need not be loaded."""
    return frozenset(map(int, kept_font(path, "its characters", partial(_cmap, path)).split()))


def _cmap(path: Path) -> bytes:
    from fontTools.ttLib import TTFont

    with TTFont(path, lazy=True) as font:
        return " ".join(map(str, sorted(font.getBestCmap()))).encode()
