"""Water for a wanted dough temperature."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.formula.dough_temperature import (
    FRICTION_F,
    WANTED_F,
    Chilled,
    celsius_of,
    difference_to_fahrenheit,
    friction_factor,
    water_note,
    water_temperature,
    with_ice,
)
from generator.measure.temperature import difference_to_celsius, to_celsius
from tests.lots import lots

F = Fraction
ROOM = st.fractions(40, 110, max_denominator=10)
FRICTION = st.fractions(0, 45, max_denominator=10)
MAYBE = st.one_of(st.none(), ROOM)


def celsius(value: Fraction | None) -> Fraction | None:
    return None if value is None else to_celsius(value)


@given(ROOM, ROOM, ROOM, FRICTION, MAYBE)
@settings(max_examples=lots(300))
def test_both_scales_give_the_same_water(
    wanted: Fraction, room: Fraction, flour: Fraction, friction: Fraction, preferment: Fraction | None
) -> None:
    water = water_temperature(wanted=wanted, room=room, flour=flour, friction=friction, preferment=preferment)
    in_celsius = water_temperature(
        wanted=to_celsius(wanted),
        room=to_celsius(room),
        flour=to_celsius(flour),
        friction=difference_to_celsius(friction),
        preferment=celsius(preferment),
    )
    assert in_celsius == to_celsius(water)
    assert (water_note(water, degrees="F") is None) == (water_note(in_celsius, degrees="C") is None)
    assert difference_to_fahrenheit(difference_to_celsius(friction)) == friction


@given(ROOM, ROOM, ROOM, FRICTION, MAYBE)
@settings(max_examples=lots(200))
def test_the_friction_of_a_dough_that_came_out_as_wanted_is_the_one_reckoned_with(
    wanted: Fraction, room: Fraction, flour: Fraction, friction: Fraction, preferment: Fraction | None
) -> None:
    water = water_temperature(wanted=wanted, room=room, flour=flour, friction=friction, preferment=preferment)
    found = friction_factor(measured=wanted, room=room, flour=flour, water=water, preferment=preferment)
    assert found == friction


@given(
    st.integers(1, 5000), st.fractions(32, 110, max_denominator=10), st.fractions(32, 110, max_denominator=10)
)
@settings(max_examples=lots(200))
def test_ice_and_water_are_the_whole_water_in_both_scales(
    grams: int, tap: Fraction, wanted: Fraction
) -> None:
    one = with_ice(F(grams), tap=tap, wanted=wanted, degrees="F")
    other = with_ice(F(grams), tap=to_celsius(tap), wanted=to_celsius(wanted), degrees="C")
    assert one is not None
    assert one == other
    assert one.ice + one.water == grams
    assert 0 <= one.ice < grams


@pytest.mark.parametrize(
    ("grams", "tap", "wanted"),
    [("0", "68", "41"), ("-5", "68", "41"), ("1000", "31", "31"), ("1000", "68", "20")],
)
def test_ice_that_makes_no_sense_is_none(grams: str, tap: str, wanted: str) -> None:
    assert with_ice(F(grams), tap=F(tap), wanted=F(wanted), degrees="F") is None


def test_a_tap_that_is_cold_enough_needs_no_ice() -> None:
    assert with_ice(F(500), tap=F(10), wanted=F(15), degrees="C") == Chilled(ice=F(0), water=F(500))


@pytest.mark.parametrize(
    ("water", "degrees", "kind"),
    [
        ("-1", "C", "below freezing"),
        ("31", "F", "below freezing"),
        ("0", "C", None),
        ("50", "C", None),
        ("51", "C", "too warm"),
        ("123", "F", "too warm"),
    ],
)
def test_water_that_no_tap_gives_or_no_yeast_bears(water: str, degrees: str, kind: str | None) -> None:
    note = water_note(F(water), degrees=degrees)  # type: ignore[arg-type]
    assert (note.kind if note else None) == kind


def test_a_temperature_is_no_difference() -> None:
    assert celsius_of(F(212), "F") == 100
    assert celsius_of(F(24), "C") == 24


def test_every_figure_to_begin_with_runs_upwards_and_stays_in_a_kitchen() -> None:
    assert all(0 <= each.low < each.high <= 45 for each in FRICTION_F.values())
    assert all(60 < each.low < each.high < 90 and source for each, source in WANTED_F.values())
