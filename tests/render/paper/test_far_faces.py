"""Names in Hebrew and Arabic, and emoji: what is drawn, in which order it stands, and in which it is read."""

import ctypes
import random
import sys
import unicodedata
from functools import cache
from io import BytesIO
from pathlib import Path

import pypdfium2
import pytest
from fontTools.ttLib import TTFont
from PIL import Image, ImageDraw
from pypdf import PdfReader
from pypdf.generic import DictionaryObject

from generator.proof.leftward import in_reading_order
from generator.render.far_faces import (
    ARABIC,
    FAR_FAMILIES,
    HEBREW,
    SIGNS,
    far_path,
    guided,
    pieces_in_order,
    unguided,
)
from generator.render.images.ink import Pen, draw_text, width_of
from generator.render.paper import PaperFault, lay_out, to_pdf
from generator.render.print_fonts import FIGURES, TEXT, missing_glyphs, no_letters
from tests.render.paper.reading import root_of, structure_of
from tests.render.paper.structure import structure_faults

HEBREW_NAME, ARABIC_NAME, SEQUENCE = (
    "חלה (גדולה) 3% סוף",
    "خبز لا 12.5 سمسم",
    "\U0001f469\U0001f3fd\u200d\U0001f373",
)
LINES = (
    f"Loaf of {HEBREW_NAME} 7 pieces",
    f"125 g {ARABIC_NAME}, sifted 2 times",
    "cake \U0001f9c1 \u2764\ufe0f x",
)
LEFT_TO_RIGHT = 0x110
MOST_BYTES = 1_500_000


@cache
def _printed() -> bytes:
    body = "".join(f'<p class="sans">{line}</p>' for line in LINES)
    style = '<style>@page { font-family: "Docket Sans"; @bottom-left { content: "foot" } }</style>'
    head = f'<html lang="en" style="--text: 11pt"><head><title>{HEBREW_NAME}</title>{style}</head>'
    html = f"{head}<body><h1>{HEBREW_NAME}</h1>{body}"
    return to_pdf(lay_out(html))


@cache
def _fribidi() -> ctypes.CDLL:
    return ctypes.CDLL("libfribidi.so.0" if sys.platform == "linux" else "libfribidi.dylib")


def _visual(text: str) -> str:
    """From left to right, by the library that has the Unicode Bidirectional Algorithm (UAX 9) for most desktops."""
    size = len(text) + 1
    source, out = (ctypes.c_uint32 * size)(*map(ord, text)), (ctypes.c_uint32 * size)()
    base = ctypes.c_uint32(LEFT_TO_RIGHT)
    assert _fribidi().fribidi_log2vis(source, len(text), ctypes.byref(base), out, None, None, None)
    return "".join(unicodedata.normalize("NFKC", chr(code)) for code in out[: len(text)])


@pytest.mark.parametrize(
    "letters", ["אבג  12,.%-(ab", "خبز  12,.)(ab", "אבg () 3 ab", "אבخب 1 )(a-", "אבג 12.,ab:/%+"]
)
def test_letters_stand_in_the_order_of_the_standard(letters: str) -> None:
    dice = random.Random(letters)
    for _ in range(400):
        text = "".join(dice.choice(letters) for _ in range(dice.randint(2, 12)))
        drawn = "".join(each.text[::-1] if each.leftward else each.text for each in pieces_in_order(text))
        assert drawn == unguided(_visual(guided(text))), text


def test_a_number_after_such_a_name_stays_behind_it() -> None:
    """Without the mark it would stand before the name: “7 חלה” for 7 pieces of it."""
    assert _visual("חלה 7") == "7 הלח"
    assert unguided(_visual(guided("חלה 7"))) == "הלח 7"


def test_what_is_printed_is_told_in_the_order_in_which_it_is_read() -> None:
    told = [
        str(each["/ActualText"]).replace("\u00a0", " ")
        for each in structure_of(_printed())
        if "/ActualText" in each
    ]
    assert told == [HEBREW_NAME, *(line.replace("\ufe0f", "") for line in LINES)]
    assert root_of(_printed())["/Lang"] == "en"


def test_what_is_printed_is_read_back_in_that_order_by_the_proof() -> None:
    page = pypdfium2.PdfDocument(_printed())[0].get_textpage()
    read = " ".join(in_reading_order(page).split()).replace(")", "(")
    for line in (HEBREW_NAME, *LINES[:2]):
        assert line.replace(")", "(") in read


def test_heads_and_feet_are_no_part_of_what_is_read() -> None:
    """ISO 14289-1, 7.8: they are artifacts. No element of the tags hangs outside of the tree."""
    pdf = _printed()
    assert structure_faults(pdf) == []
    reader = PdfReader(BytesIO(pdf))
    numbers = {*reader.xref_objStm, *(number for table in reader.xref.values() for number in table)}
    objects = [reader.get_object(number) for number in sorted(numbers) if number]
    elements = [
        each for each in objects if isinstance(each, DictionaryObject) and each.get("/Type") == "/StructElem"
    ]
    assert len(elements) == len(structure_of(pdf)) > 8
    drawn = reader.pages[0].get_contents()
    assert drawn is not None
    assert b"/Pagination" in drawn.get_data()


def test_a_document_without_such_letters_opens_none_of_their_faces(monkeypatch: pytest.MonkeyPatch) -> None:
    def never(*_: object) -> Path:
        raise AssertionError("a face was opened")

    monkeypatch.setattr("generator.render.far_faces.far_path", never)
    assert to_pdf(lay_out('<html lang="en" style="--text: 11pt"><title>x</title><p>Crème ⅓ 5 °C Ωмука</p>'))
    assert width_of("Crème ⅓", Pen(family=TEXT, weight="700", size=31)) > 0


@pytest.mark.parametrize("family", FAR_FAMILIES)
def test_no_character_of_a_face_is_an_empty_box(family: str) -> None:
    with TTFont(far_path(family, "400")) as font:
        drawn = font["glyf"]
        empty = [point for point, name in font.getBestCmap().items() if not drawn[name].numberOfContours]
        assert set(empty) <= {0x20, 0x200C, 0x200D}
        assert len(font.getBestCmap()) > 100


def test_the_faces_are_small_and_their_licences_lie_beside_them() -> None:
    folder = far_path(SIGNS, "400").parent
    assert sum(each.stat().st_size for each in folder.iterdir()) < MOST_BYTES
    assert "SIL OPEN FONT LICENSE" in (folder / "OFL.txt").read_text("utf-8")
    assert "Apache License" in (folder / "APACHE.txt").read_text("utf-8")


def test_a_sequence_is_drawn_as_its_parts_or_named() -> None:
    assert missing_glyphs(f"{SEQUENCE} \u2764\ufe0f \U0001f1f3\U0001f1ff می\u200cخواهم") == ()
    assert missing_glyphs("1\u20e3") == ("\u20e3",)
    assert missing_glyphs("\U0001f3f4\U000e0067\U000e007f") == ("\U000e0067", "\U000e007f")
    assert no_letters("חלה \u2b50 面") == ("\u2b50", "面")
    pen = Pen(family=FIGURES, weight="400", size=40)
    parts = sum(width_of(part, pen) for part in "\U0001f469\U0001f3fd\U0001f373")
    assert width_of(SEQUENCE, pen) == pytest.approx(parts)
    assert width_of("חخ", pen) == pytest.approx(width_of("ח", pen) + width_of("خ", pen))


@pytest.mark.parametrize(("text", "family"), [("לחם", HEBREW), ("خبز", ARABIC), ("\U0001f9c1", SIGNS)])
def test_what_is_measured_on_a_picture_is_what_is_drawn(text: str, family: str) -> None:
    assert not missing_glyphs(text)
    pen = Pen(family=TEXT, weight="700", size=50)
    canvas = Image.new("RGBA", (700, 300), (255, 255, 255, 255))
    draw_text(ImageDraw.Draw(canvas), (50, 100), f"a {text} 12", pen)
    seen = canvas.convert("L").point(lambda light: 255 if light < 128 else 0).getbbox()
    assert seen is not None
    assert seen[2] == pytest.approx(100 + 2 * width_of(f"a {text} 12", pen), abs=8)
    with TTFont(far_path(family, "700")) as font:
        assert set(map(ord, text)) <= set(font.getBestCmap())


def test_paper_takes_no_face_of_the_machine() -> None:
    with pytest.raises(PaperFault, match="a face of the machine"):
        to_pdf(
            lay_out(
                '<html lang="en" style="--text: 11pt"><title>x</title><p style="font-family: monospace">text</p>'
            )
        )
