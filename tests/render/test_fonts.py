"""The typefaces hold what amounts are written with, and their web copies never change by themselves."""

import re
from io import BytesIO
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from generator.render.fonts import (
    TYPEFACES,
    Typeface,
    characters,
    face_rules,
    usual_characters,
    web_copies,
    web_copy,
)

# Every sign that an amount, a temperature or a correction is written with.
SIGNS = "0123456789¼½¾⅓⅔⅛⅜⅝⅞–—−×°→·≈%’“”…é"


@pytest.mark.parametrize("face", TYPEFACES, ids=lambda face: face.web)
def test_every_face_has_every_sign(face: Typeface) -> None:
    copy = TTFont(BytesIO(web_copy(face)))
    assert [sign for sign in SIGNS if ord(sign) not in copy.getBestCmap()] == []


@pytest.mark.parametrize("face", TYPEFACES, ids=lambda face: face.web)
def test_both_copies_hold_all_that_the_font_has(face: Typeface) -> None:
    held = [set(TTFont(BytesIO(copy)).getBestCmap()) for _, copy in web_copies(face)]
    wanted = characters() & set(TTFont(face.path).getBestCmap())
    assert held[0] & characters() == usual_characters() & wanted
    assert held[1] & characters() == wanted - usual_characters()


@pytest.mark.parametrize("face", TYPEFACES, ids=lambda face: face.web)
def test_a_web_copy_keeps_tabular_figures(face: Typeface) -> None:
    copy = TTFont(BytesIO(web_copy(face)))
    assert "tnum" in {record.FeatureTag for record in copy["GSUB"].table.FeatureList.FeatureRecord}


def test_a_web_copy_is_the_same_every_time(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    face, copies = TYPEFACES[2], []
    for cache in ("one", "two"):
        monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / cache))
        copies.append(web_copy.__wrapped__(face))
    assert copies[0] == copies[1]


@pytest.mark.parametrize("face", TYPEFACES, ids=lambda face: face.web)
def test_a_web_copy_is_light(face: Typeface) -> None:
    assert len(web_copy(face)) < 30_000


def test_the_style_sheet_names_every_copy() -> None:
    rules = face_rules("fonts")
    files = [file for face in TYPEFACES for file in (face.rest, face.web)]
    assert [file for file in files if rules.count(f'url("fonts/{file}")') != 1] == []
    assert rules.count("font-display: optional") == len(files)
    # Of two rules for a character the later holds: the copy with the rarer ones, and it must have no usual one.
    assert all(rules.index(face.web) < rules.index(face.rest) for face in TYPEFACES)
    reaches = re.findall(r"unicode-range: (.*);", rules)
    assert len(reaches) == len(TYPEFACES)
    assert {point for reach in reaches for point in _points(reach)} & usual_characters() == set()
    assert all(_points(reach) >= characters() - usual_characters() for reach in reaches)


def _points(reach: str) -> set[int]:
    ends = [each.removeprefix("U+").partition("-") for each in reach.split(", ")]
    return {point for low, _, high in ends for point in range(int(low, 16), int(high or low, 16) + 1)}
