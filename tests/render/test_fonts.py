"""The typefaces hold what amounts are written with, and their web copies never change by themselves."""

from io import BytesIO
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from generator.render.fonts import TYPEFACES, Typeface, face_rules, web_copy

# Every sign that an amount, a temperature or a correction is written with.
SIGNS = "0123456789¼½¾⅓⅔⅛⅜⅝⅞–—−×°→·≈%’“”…éü"


@pytest.mark.parametrize("face", TYPEFACES, ids=lambda face: face.web)
def test_every_face_has_every_sign(face: Typeface) -> None:
    copy = TTFont(BytesIO(web_copy(face)))
    assert [sign for sign in SIGNS if ord(sign) not in copy.getBestCmap()] == []


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
    assert len(web_copy(face)) < 70_000


def test_the_style_sheet_names_every_copy() -> None:
    rules = face_rules("fonts")
    assert [face.web for face in TYPEFACES if f'url("fonts/{face.web}")' not in rules] == []
    assert rules.count("font-display: swap") == len(TYPEFACES)
