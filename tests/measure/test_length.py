"""Lengths and tins as written."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.measure.length import Length, read_length, read_tin
from generator.measure.number import Range

F = Fraction


@pytest.mark.parametrize(
    ("text", "low", "high", "stated"),
    [
        ("6.75 in", "171.45", "171.45", "in"),
        ("9 inches", "228.6", "228.6", "in"),
        ("9-inch", "228.6", "228.6", "in"),
        ('9"', "228.6", "228.6", "in"),
        ("9 in.", "228.6", "228.6", "in"),
        ("1 1/2 in", "38.1", "38.1", "in"),
        ("8-9 in", "203.2", "228.6", "in"),
        ("23 cm", "230", "230", "cm"),
        ("23cm", "230", "230", "cm"),
        ("5 mm", "5", "5", "mm"),
    ],
)
def test_a_written_length_in_millimetres(text: str, low: str, high: str, stated: str) -> None:
    assert read_length(text) == Length(millimetres=Range(F(low), F(high)), stated=stated)


@pytest.mark.parametrize("text", ["", "9", "in", "9 m", "9 inch tin", "1/0 in", "9 in 5 in", "9in9"])
def test_anything_else_is_no_length(text: str) -> None:
    assert read_length(text) is None


@pytest.mark.parametrize(
    ("text", "shape", "sides"),
    [
        ("loaf 23 x 13 x 7 cm", "loaf", "230 130 70"),
        ("round 9 x 2 in", "round", "228.6 50.8"),
        ("2 round 9 x 2 in", "round", "228.6 50.8"),
        ("2 x loaf tins 9x5x3 in", "loaf", "228.6 127 76.2"),
        ("cylinder 17 × 12 cm", "cylinder", "170 120"),
        ("2 paper cylinder moulds 17 by 12 cm", "cylinder", "170 120"),
        ("9 by 5 in loaf tin", "loaf", "228.6 127"),
        ("9-inch round", "round", "228.6"),
        ('square 8" x 8" x 2"', "square", "203.2 203.2 50.8"),
        ("rectangular tin 33 x 23 cm, lined", "rectangle", "330 230"),
        ("Ring 24 cm (deep)", "ring", "240"),
        ("tube 10 x 4 in", "tube", "254 101.6"),
        ("12-cup muffin tin", "muffin", ""),
        ("muffin 12 cups", "muffin", ""),
        ("muffin", "muffin", ""),
    ],
)
def test_a_written_tin(text: str, shape: str, sides: str) -> None:
    tin = read_tin(text)
    assert tin is not None
    assert (tin.shape, tin.words) == (shape, text)
    assert [side.millimetres for side in tin.sides] == [Range.exact(F(each)) for each in sides.split()]


@pytest.mark.parametrize(
    "text",
    [
        "",
        "23 x 13 cm",
        "square 9",
        "loaf 23 x cm",
        "loaf 9 x 5 x 3 x 2 in",
        "8 in round 9 in",
        "loaf ²3 cm",
        "ringed",
    ],
)
def test_anything_else_is_no_tin(text: str) -> None:
    assert read_tin(text) is None


@given(st.lists(st.integers(1, 99), min_size=1, max_size=3), st.sampled_from(["cm", "mm", "in"]))
def test_reading_a_written_tin_gives_it_back(sides: list[int], unit: str) -> None:
    tin = read_tin(f"loaf {' x '.join(map(str, sides))} {unit}")
    assert tin is not None
    assert tin.sides == tuple(read_length(f"{side} {unit}") for side in sides)
