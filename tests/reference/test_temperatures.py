"""Temperatures against published figures and a general unit library."""

from fractions import Fraction

import pint
import pytest

from generator.measure.temperature import (
    DIAL_CELSIUS,
    GAS_MARKS,
    difference_to_celsius,
    nearest,
    read_temperature,
    to_celsius,
    to_fahrenheit,
)

F = Fraction


@pytest.fixture(scope="module")
def library() -> pint.UnitRegistry[float]:
    return pint.UnitRegistry()


@pytest.mark.parametrize(
    ("mark", "fahrenheit", "celsius"),
    [
        # British oven charts (common practice); °C worked out from °F by the definition, to a tenth.
        ("1/4", 225, "107.2"),
        ("1/2", 250, "121.1"),
        ("1", 275, "135.0"),
        ("2", 300, "148.9"),
        ("3", 325, "162.8"),
        ("4", 350, "176.7"),
        ("5", 375, "190.6"),
        ("6", 400, "204.4"),
        ("7", 425, "218.3"),
        ("8", 450, "232.2"),
        ("9", 475, "246.1"),
    ],
)
def test_a_gas_mark(mark: str, fahrenheit: int, celsius: str) -> None:
    assert GAS_MARKS[F(mark)] == fahrenheit
    read = read_temperature(f"gas {mark}")
    assert read is not None
    assert read.fahrenheit().low == fahrenheit
    assert abs(read.celsius().low - F(celsius)) <= F("0.05")


def test_the_chart_has_eleven_marks() -> None:
    assert len(GAS_MARKS) == 11


@pytest.mark.parametrize(
    ("fahrenheit", "dial"),
    # What British charts print beside the gas marks (common practice). Where they print a range (½: 120-130,
    # 3: 160-170) the lower end is taken.
    [
        (225, 110),
        (250, 120),
        (275, 140),
        (300, 150),
        (325, 160),
        (350, 180),
        (375, 190),
        (400, 200),
        (425, 220),
        (450, 230),
        (475, 240),
    ],
)
def test_the_dial_of_a_british_oven(fahrenheit: int, dial: int) -> None:
    assert DIAL_CELSIUS[fahrenheit] == dial
    # A dial is marked in tens, so it stands less than ten degrees from the truth.
    assert abs(to_celsius(F(fahrenheit)) - dial) < 10


def test_the_dial_has_a_figure_for_every_gas_mark() -> None:
    assert set(DIAL_CELSIUS) == set(GAS_MARKS.values())


@pytest.mark.parametrize(
    ("fahrenheit", "celsius"),
    [
        # By the definition (NIST SP 811, Appendix B), to a hundredth.
        (350, "176.67"),
        (425, "218.33"),
        (428, "220"),
        (32, "0"),
        (212, "100"),
        (-40, "-40"),
        # A blog's core temperature for cheesecake, which is about texture and not about safety.
        (150, "65.56"),
        # Syrup at the soft ball, common practice.
        (240, "115.56"),
    ],
)
def test_fahrenheit_and_celsius(fahrenheit: int, celsius: str) -> None:
    assert abs(to_celsius(F(fahrenheit)) - F(celsius)) <= F("0.005")
    assert abs(to_fahrenheit(F(celsius)) - fahrenheit) <= F("0.01")


@pytest.mark.parametrize("fahrenheit", range(-40, 501, 5))
def test_a_general_library_agrees(library: pint.UnitRegistry[float], fahrenheit: int) -> None:
    theirs = library.Quantity(float(fahrenheit), "degF").m_as("degC")
    assert float(to_celsius(F(fahrenheit))) == pytest.approx(theirs, abs=1e-9)


def test_a_difference_is_no_temperature() -> None:
    """By the definition (NIST SP 811, Appendix B): 24 °F more is 13.33 °C more, never -4.4 °C."""
    assert abs(difference_to_celsius(F(24)) - F("13.33")) <= F("0.01")
    # Common practice in the US, 25 °F less in a fan oven.
    assert abs(difference_to_celsius(F(25)) - F("13.9")) <= F("0.05")


@pytest.mark.parametrize(
    ("exact", "step", "printed"),
    [
        # Both rules for an oven are in use (common practice): to 5 it prints 175 and 205, a dial 180 and 200.
        (to_celsius(F(350)), 5, 175),
        (to_celsius(F(400)), 5, 205),
        (to_celsius(F(325)), 5, 165),
        (to_celsius(F(425)), 5, 220),
        (to_fahrenheit(F(220)), 25, 425),
        # Everything but an oven to 1: syrup at 240 °F, dough, core.
        (to_celsius(F(240)), 1, 116),
        (to_celsius(F(190)), 1, 88),
        (to_fahrenheit(F(88)), 1, 190),
    ],
)
def test_rounding_once(exact: Fraction, step: int, printed: int) -> None:
    assert nearest(exact, step) == printed


def test_a_printed_temperature_must_not_be_converted_back() -> None:
    """Worked out: 350 °F by the dial is 180 °C, and that is 356 °F. So the number that was stated is kept."""
    assert to_fahrenheit(F(DIAL_CELSIUS[350])) == 356
    stated = read_temperature("350 F")
    assert stated is not None
    assert to_fahrenheit(stated.celsius().low) == stated.fahrenheit().low == 350


def test_a_fan_temperature_is_not_lowered_again() -> None:
    """Common practice: 180 °C is 160 °C in a fan oven. Where the maker wrote fan, it is lowered already."""
    written = read_temperature("160 C fan")
    assert written is not None
    assert written.fan
    assert written.celsius().low == 160


def test_yeast_dies_at_55_to_60_celsius() -> None:
    """A. Gardiner and S. Wilson, The Inquisitive Cook (1998): 130 to 140 °F, given as 55 to 60 °C."""
    found = read_temperature("130-140 F")
    assert found is not None
    assert (nearest(found.celsius().low, 5), nearest(found.celsius().high, 5)) == (55, 60)
