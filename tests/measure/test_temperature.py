"""Temperatures as written, and from one scale to the other."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.measure.number import Range
from generator.measure.temperature import (
    Scale,
    Temperature,
    difference_to_celsius,
    nearest,
    read_temperature,
    to_celsius,
    to_fahrenheit,
)

F = Fraction


@pytest.mark.parametrize(
    ("text", "stated", "low", "high", "fan"),
    [
        ("350 F", "F", 350, 350, False),
        ("350 °F", "F", 350, 350, False),
        ("350F", "F", 350, 350, False),
        ("350°F", "F", 350, 350, False),
        ("350 ℉", "F", 350, 350, False),
        ("350 f", "F", 350, 350, False),
        ("350 degrees F", "F", 350, 350, False),
        ("180 C fan", "C", 180, 180, True),
        ("180 °C (fan)", "C", 180, 180, True),
        ("fan 160 C", "C", 160, 160, True),
        ("gas 4", "gas", 4, 4, False),
        ("Gas mark 4", "gas", 4, 4, False),
        ("gas 1/2", "gas", F(1, 2), F(1, 2), False),
        ("gas ¼", "gas", F(1, 4), F(1, 4), False),
        ("gas 4-5", "gas", 4, 5, False),
        ("350-375 F", "F", 350, 375, False),
        ("350–375 °F", "F", 350, 375, False),
        ("350°-375°F", "F", 350, 375, False),
        ("350 F to 375 F", "F", 350, 375, False),
        ("180 to 190 C", "C", 180, 190, False),
        ("-18 C", "C", -18, -18, False),
        ("−18 °C", "C", -18, -18, False),
        ("-20 to -18 C", "C", -20, -18, False),
        ("  88 C ", "C", 88, 88, False),
        ("97.5 C", "C", F("97.5"), F("97.5"), False),
    ],
)
def test_a_written_temperature(text: str, stated: Scale, low: Fraction, high: Fraction, fan: bool) -> None:
    assert read_temperature(text) == Temperature(stated=stated, low=F(low), high=F(high), fan=fan)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "350",
        "350 K",
        "2 c",
        "hot",
        "375-350 F",
        "350 F-180 C",
        "350 F until brown",
        "about 350 F",
        "gas",
        "gas 10",
        "gas 0",
        "gas -4",
        "gas 4 or so",
        "1/0 F",
        "3²0 F",
        "350 F" + " " * 500 + "x",
    ],
)
def test_anything_else_is_no_temperature(text: str) -> None:
    assert read_temperature(text) is None


def test_a_fan_oven_changes_no_number() -> None:
    with_fan, without = read_temperature("180 C fan"), read_temperature("180 C")
    assert with_fan is not None
    assert without is not None
    assert with_fan.celsius() == without.celsius() == Range.exact(180)


def test_a_range_keeps_both_ends_in_both_scales() -> None:
    found = read_temperature("350-375 F")
    assert found is not None
    assert found.celsius() == Range(F(1590, 9), F(1715, 9))


@pytest.mark.parametrize(
    ("x", "step", "expected"),
    [
        (F(5, 2), 5, 5),
        (F(-5, 2), 5, 0),
        (F(7, 2), 1, 4),
        (F(1767, 10), 5, 175),
        (F(428), 25, 425),
        (F(0), 5, 0),
    ],
)
def test_the_nearest_multiple_goes_up_from_the_middle(x: Fraction, step: int, expected: int) -> None:
    assert nearest(x, step) == expected


@given(st.fractions(max_denominator=1000))
def test_there_and_back_is_exactly_the_same(x: Fraction) -> None:
    assert to_fahrenheit(to_celsius(x)) == x
    assert to_celsius(to_fahrenheit(x)) == x


@given(st.fractions(max_denominator=1000), st.fractions(max_denominator=1000))
def test_a_difference_is_the_difference_of_two_temperatures(one: Fraction, other: Fraction) -> None:
    assert difference_to_celsius(one - other) == to_celsius(one) - to_celsius(other)


@given(st.integers(-400, 999), st.integers(1, 200), st.sampled_from(["F", "C"]))
def test_reading_a_written_range_gives_it_back(low: int, more: int, scale: Scale) -> None:
    assert read_temperature(f"{low} to {low + more} {scale}") == Temperature(
        stated=scale, low=F(low), high=F(low + more), fan=False
    )
