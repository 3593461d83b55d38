"""The typefaces of the publication, and their web copies.

Both families come from font packages under the SIL Open Font License, never from the machine, so that every
output looks the same everywhere. A web copy holds only the characters below and carries a fixed date, so that
the same font package gives the same bytes on any day.
"""

from dataclasses import dataclass
from functools import cache, partial
from importlib import resources
from io import BytesIO
from pathlib import Path

from fontTools.ttLib import TTFont

from generator.render.font_cache import kept_font

# Latin with its accents, punctuation, true fractions, degree, arrows, and the signs amounts are written with.
_RANGES = (
    (0x0020, 0x007E),
    (0x00A0, 0x017F),
    (0x0218, 0x021B),
    (0x02C6, 0x02DD),
    (0x0300, 0x0304),
    (0x1E9E, 0x1E9E),
    (0x2010, 0x2027),
    (0x202F, 0x203A),
    (0x2044, 0x2044),
    (0x20AC, 0x20AC),
    (0x2116, 0x2122),
    (0x2150, 0x215E),
    (0x2190, 0x2193),
    (0x2212, 0x2215),
    (0x2248, 0x2265),
)
_FEATURES = ("kern", "liga", "lnum", "onum", "tnum", "pnum", "frac", "case", "locl", "ccmp", "mark", "calt")
# Seconds since 1904 that stand in every web copy: 1 January 2020.
_MODIFIED = 3660681600


@dataclass(frozen=True, slots=True, kw_only=True)
class Typeface:
    """One font file: `weight` as CSS writes it ("400", or "400 900" for a range), `file` in its package."""

    family: str
    package: str
    file: str
    weight: str
    style: str
    web: str

    @property
    def path(self) -> Path:
        return Path(str(resources.files(self.package))) / "files" / self.file


TYPEFACES = (
    Typeface(
        family="Vollkorn",
        package="fontpkg_vollkorn",
        file="Vollkorn[wght].ttf",
        weight="400 900",
        style="normal",
        web="vollkorn.woff2",
    ),
    Typeface(
        family="Vollkorn",
        package="fontpkg_vollkorn",
        file="Vollkorn-Italic[wght].ttf",
        weight="400 900",
        style="italic",
        web="vollkorn-italic.woff2",
    ),
    Typeface(
        family="Fira Sans Condensed",
        package="fontpkg_fira_sans_condensed",
        file="FiraSansCondensed-Regular.ttf",
        weight="400",
        style="normal",
        web="fira-condensed.woff2",
    ),
    Typeface(
        family="Fira Sans Condensed",
        package="fontpkg_fira_sans_condensed",
        file="FiraSansCondensed-SemiBold.ttf",
        weight="600",
        style="normal",
        web="fira-condensed-semibold.woff2",
    ),
)


def characters() -> frozenset[int]:
    """The code points that the web copies cover where the font has them."""
    return frozenset(point for low, high in _RANGES for point in range(low, high + 1))


@cache
def web_copy(face: Typeface) -> bytes:
    """The face as WOFF2 with the characters of `characters()`."""
    recipe = f"web copy 1: {_RANGES} {_FEATURES} {_MODIFIED}"
    return kept_font(face.path, recipe, partial(_web_copy, face))


def _web_copy(face: Typeface) -> bytes:
    # Loaded only where a face must be cut: what is cut is kept.
    from fontTools.subset import Options, Subsetter

    options = Options(layout_features=list(_FEATURES), flavor="woff2", notdef_outline=True, hinting=False)
    font = TTFont(face.path, recalcTimestamp=False)
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=characters())
    subsetter.subset(font)
    font["head"].modified = _MODIFIED
    font.flavor = "woff2"
    written = BytesIO()
    font.save(written)
    return written.getvalue()


def face_rules(folder: str) -> str:
    """The `@font-face` rules for the web copies in `folder`, relative to the style sheet."""
    return "".join(_face_rule(face, folder) for face in TYPEFACES)


def _face_rule(face: Typeface, folder: str) -> str:
    return (
        "@font-face {\n"
        f'  font-family: "{face.family}";\n'
        f"  font-style: {face.style};\n"
        f"  font-weight: {face.weight};\n"
        "  font-display: swap;\n"
        f'  src: url("{folder}/{face.web}") format("woff2");\n'
        "}\n"
    )
