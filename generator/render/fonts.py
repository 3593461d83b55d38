"""The typefaces of the publication, and their web copies.

Both families come from font packages under the SIL Open Font License, never from the machine, so that every
output looks the same everywhere. Each has two web copies: one with what nearly every page is written with, and one
with the rest, which a browser asks for only where a page has such a character (`unicode-range`). A copy carries a
fixed date, so that the same font package gives the same bytes on any day.
"""

from dataclasses import dataclass
from functools import cache, partial
from importlib import resources
from io import BytesIO
from pathlib import Path

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
# English words, and the signs of amounts, times, temperatures and quotations.
_USUAL = (
    (0x0020, 0x007E),
    (0x00A0, 0x00A0),
    (0x00B0, 0x00B0),
    (0x00B7, 0x00B7),
    (0x00BC, 0x00BE),
    (0x00D7, 0x00D7),
    (0x00E9, 0x00E9),
    (0x2010, 0x2027),
    (0x2044, 0x2044),
    (0x2153, 0x215E),
    (0x2192, 0x2192),
    (0x2212, 0x2212),
    (0x2248, 0x2248),
)
_FEATURES = ("kern", "lnum", "tnum", "locl", "ccmp", "mark")
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
    axis: tuple[int, int] | None = None
    """The weights that are kept of a variable face; one twice makes it a plain face."""

    @property
    def rest(self) -> str:
        """The file of the copy with the rarer characters."""
        return self.web.replace(".woff2", "-more.woff2")

    @property
    def path(self) -> Path:
        return Path(str(resources.files(self.package))) / "files" / self.file


TYPEFACES = (
    Typeface(
        family="Vollkorn",
        package="fontpkg_vollkorn",
        file="Vollkorn[wght].ttf",
        weight="400 800",
        style="normal",
        web="vollkorn.woff2",
        axis=(400, 800),
    ),
    Typeface(
        family="Vollkorn",
        package="fontpkg_vollkorn",
        file="Vollkorn-Italic[wght].ttf",
        weight="400",
        style="italic",
        web="vollkorn-italic.woff2",
        axis=(400, 400),
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
    return _points(_RANGES)


def usual_characters() -> frozenset[int]:
    """Those of them that the first copy of each face holds."""
    return _points(_USUAL)


def _points(ranges: tuple[tuple[int, int], ...]) -> frozenset[int]:
    return frozenset(point for low, high in ranges for point in range(low, high + 1))


def web_copies(face: Typeface) -> tuple[tuple[str, bytes], ...]:
    """The names and bytes of both copies of a face."""
    return (face.web, web_copy(face)), (face.rest, rest_copy(face))


@cache
def web_copy(face: Typeface) -> bytes:
    """The face as WOFF2 with the characters of `usual_characters()`."""
    return _kept(face, usual_characters())


@cache
def rest_copy(face: Typeface) -> bytes:
    """The face as WOFF2 with all other characters of `characters()`."""
    return _kept(face, characters() - usual_characters())


def _kept(face: Typeface, points: frozenset[int]) -> bytes:
    recipe = f"web copy 2: {sorted(points)} {_FEATURES} {face.axis} {_MODIFIED}"
    return kept_font(face.path, recipe, partial(_web_copy, face, points))


def _web_copy(face: Typeface, points: frozenset[int]) -> bytes:
    # Only here: a copy is cut once and kept, and a check or a correction need not load what cuts it.
    from fontTools.subset import Options, Subsetter
    from fontTools.ttLib import TTFont
    from fontTools.varLib.instancer import AxisTriple, instantiateVariableFont

    options = Options(layout_features=list(_FEATURES), notdef_outline=True, hinting=False)
    font = TTFont(face.path, recalcTimestamp=False)
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=points)
    subsetter.subset(font)
    if face.axis:
        font = instantiateVariableFont(font, {"wght": AxisTriple(face.axis[0], None, face.axis[1])})
    font["head"].modified = _MODIFIED
    font.flavor = "woff2"
    written = BytesIO()
    font.save(written)
    return written.getvalue()


def face_rules(folder: str) -> str:
    """The `@font-face` rules for the web copies in `folder`, relative to the style sheet.

    Of two rules for a character the later holds, so the rarer copy stands second, with a reach that has none of
    the usual characters: a browser that still waits for the first copy, or has given it up, would fetch the second
    for them.
    """
    rest, usual = characters() - usual_characters(), usual_characters()
    reach = _unicode_range(frozenset(range(min(rest), max(rest) + 1)) - usual)
    return "".join(
        _face_rule(face, f"{folder}/{file}", lines)
        for face in TYPEFACES
        for file, lines in ((face.web, ""), (face.rest, f"  unicode-range: {reach};\n"))
    )


def _face_rule(face: Typeface, address: str, lines: str) -> str:
    # A face that comes late waits for the next page: a line that moves while it is read loses its reader.
    return (
        "@font-face {\n"
        f'  font-family: "{face.family}";\n'
        f"  font-style: {face.style};\n"
        f"  font-weight: {face.weight};\n"
        "  font-display: optional;\n"
        f'  src: url("{address}");\n'
        f"{lines}"
        "}\n"
    )


def _unicode_range(points: frozenset[int]) -> str:
    """Runs of code points as CSS writes them: "U+20-7E, U+A0"."""
    starts = sorted(point for point in points if point - 1 not in points)
    ends = sorted(point for point in points if point + 1 not in points)
    runs = zip(starts, ends, strict=True)
    return ", ".join(f"U+{low:X}" if low == high else f"U+{low:X}-{high:X}" for low, high in runs)
