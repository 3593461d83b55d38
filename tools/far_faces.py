"""Cuts the faces of `generator/render/faces/` out of the fonts they come from, which lie in a folder.

    .venv/bin/python tools/far_faces.py FOLDER

What lies there, from which package, stands in `generator/render/faces/README.md`. The same fonts give the same bytes.
A face keeps its letters, its marks and the joining of its letters; from the emoji go the pictures of whole sequences.
"""

import sys
from pathlib import Path

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont
from fontTools.varLib.instancer import instantiateVariableFont

OUT = Path(__file__).resolve().parent.parent / "generator/render/faces"
# Seconds since 1904 that stand in every face: 1 January 2020.
_MODIFIED = 3660681600
_HEBREW = (0x20, *range(0x0591, 0x05F5), *range(0xFB1D, 0xFB50))
_ARABIC = (0x20, 0x200C, 0x200D, *range(0x0606, 0x061C), *range(0x061D, 0x0700), *range(0x0750, 0x0780))
# Pictures and signs, and the letters of flags. What only joins, tags or encloses others is none by itself.
_EMOJI = (0x20, *range(0x2010, 0x20D0), *range(0x2100, 0x3300), *range(0x1F000, 0x1FB00))
# What is set as it is drawn by these features alone: marks, joined letters, kerning.
_FEATURES = (
    "ccmp",
    "locl",
    "isol",
    "init",
    "medi",
    "fina",
    "rlig",
    "calt",
    "liga",
    "mark",
    "mkmk",
    "kern",
    "curs",
)


def main(folder: Path) -> None:
    hebrew = folder / "NotoSansHebrew-Variable.ttf"
    emoji = folder / "NotoEmoji_500Medium.ttf"
    for name, weight in (("regular", 400), ("bold", 700)):
        _cut(hebrew, OUT / f"hebrew-{name}.ttf", points=_HEBREW, at={"wght": weight, "wdth": 100})
        # As it was designed: its round letters are nearly as high as our o.
        arabic = folder / f"NotoNaskhArabic-{name.title()}.ttf"
        _cut(arabic, OUT / f"arabic-{name}.ttf", points=_ARABIC, at={})
    # Drawn to stand in lines of letters: a picture is as high as a capital with its line.
    _cut(emoji, OUT / "emoji.ttf", points=_EMOJI, at={}, larger=0.86, features=())


def _cut(
    source: Path,
    target: Path,
    *,
    points: tuple[int, ...],
    at: dict[str, float],
    larger: float = 1,
    features: tuple[str, ...] = _FEATURES,
) -> None:
    font = TTFont(source, recalcTimestamp=False)
    axes = {axis.axisTag for axis in font["fvar"].axes} if "fvar" in font else set()
    if axes:
        font = instantiateVariableFont(font, {tag: value for tag, value in at.items() if tag in axes})
    options = Options(
        layout_features=list(features), hinting=False, notdef_outline=True, name_IDs=[0, 1, 2, 5, 13, 14]
    )
    options.drop_tables += [*(() if features else ("GSUB",)), "STAT", "vhea", "vmtx", "gasp", "MVAR"]
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=points)
    subsetter.subset(font)
    if not features:
        # The space of the emoji is as wide as one of them; a quarter of the letters' height is what ours have.
        font["hmtx"][font.getBestCmap()[0x20]] = (font["head"].unitsPerEm // 4, 0)
    font["head"].unitsPerEm = round(font["head"].unitsPerEm / larger)
    font["head"].modified = _MODIFIED
    font.save(target)


if __name__ == "__main__":
    main(Path(sys.argv[1]))
