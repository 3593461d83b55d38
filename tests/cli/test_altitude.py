"""`tinleaf show --altitude`: a height with its unit, and nothing without one."""

import argparse
from fractions import Fraction

import pytest

from generator.cli.height import height
from generator.cli.main import main

Capture = pytest.CaptureFixture[str]


@pytest.mark.parametrize(
    ("text", "feet"),
    [("5000 ft", 5000), ("5,000 feet", 5000), ("1524 m", 5000), ("1524m", 5000), ("15000 ft", 15000)],
)
def test_feet_and_metres(text: str, feet: int) -> None:
    assert height(text) == Fraction(feet)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("5000", "“5000” is not a height with its unit, such as 5000 ft or 1600 m"),
        ("high", "“high” is not a height with its unit, such as 5000 ft or 1600 m"),
        ("-500 ft", "“-500 ft” is not a height with its unit, such as 5000 ft or 1600 m"),
        ("0 m", "“0 m” is no height of a kitchen: write from 1 to 15000 ft, or to 4572 m"),
        ("9000 m", "“9000 m” is no height of a kitchen: write from 1 to 15000 ft, or to 4572 m"),
    ],
)
def test_what_is_no_height(text: str, said: str) -> None:
    with pytest.raises(argparse.ArgumentTypeError) as mistake:
        height(text)
    assert str(mistake.value) == said


@pytest.mark.usefixtures("content", "pipeline")
@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--altitude", "5000"], "argument --altitude: “5000” is not a height with its unit"),
        (["--altitude", "5000", "ft", "--format", "json"], "--altitude goes with the recipe as text"),
    ],
)
def test_a_mistake_ends_with_two(capsys: Capture, words: list[str], said: str) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["show", "oat-braid", *words])
    assert ended.value.code == 2
    assert said in capsys.readouterr().err
