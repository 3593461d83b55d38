"""Water temperature, friction and ice against worked examples."""

from fractions import Fraction

import pytest

from generator.formula.dough_temperature import Chilled, friction_factor, water_temperature, with_ice
from generator.measure.temperature import difference_to_celsius, to_celsius

F = Fraction


@pytest.mark.parametrize(
    ("wanted", "flour", "room", "friction", "water"),
    [
        (75, 65, 65, 8, 87),  # San Francisco Baking Institute class notes
        (80, 65, 75, 35, 65),  # a worked example with a machine's friction; common practice, no source kept
        (78, 60, 70, 16, 88),  # a worked example; common practice, no source kept
        (24, 20, 21, 13, 18),  # °C throughout, by arithmetic
    ],
)
def test_water_for_a_straight_dough(wanted: int, flour: int, room: int, friction: int, water: int) -> None:
    found = water_temperature(wanted=F(wanted), flour=F(flour), room=F(room), friction=F(friction))
    assert found == water


# 76 x 4 - 72 - 70 - 70 - 24, by arithmetic.
def test_water_for_a_dough_with_a_preferment() -> None:
    found = water_temperature(wanted=F(76), room=F(72), flour=F(70), preferment=F(70), friction=F(24))
    assert found == 68


# The first example wholly in °C; 8 °F degrees of friction are 8 x 5/9 °C degrees (NIST SP 811, Appendix B).
def test_the_class_notes_in_celsius() -> None:
    found = water_temperature(
        wanted=to_celsius(F(75)),
        flour=to_celsius(F(65)),
        room=to_celsius(F(65)),
        friction=difference_to_celsius(F(8)),
    )
    assert float(found) == pytest.approx(30.56, abs=0.01)
    assert found == to_celsius(F(87))


# A difference of 24 °F degrees is 13.33 °C degrees, and never -4.4 (NIST SP 811, Appendix B).
def test_a_difference_takes_five_ninths_alone() -> None:
    assert float(difference_to_celsius(F(24))) == pytest.approx(13.33, abs=0.01)


# 3 x 79 - (72 + 70 + 70), by arithmetic.
def test_friction_from_a_measured_dough() -> None:
    assert friction_factor(measured=F(79), room=F(72), flour=F(70), water=F(70)) == 25


# W. Gisslen, from memory: ice = water x (tap - wanted) / (tap + 112 °F), or / (tap + 80 °C).
@pytest.mark.parametrize(("tap", "wanted", "degrees"), [(68, 41, "F"), (20, 5, "C")])
def test_a_kilogram_of_water_cooled_with_ice(tap: int, wanted: int, degrees: str) -> None:
    found = with_ice(F(1000), tap=F(tap), wanted=F(wanted), degrees=degrees)  # type: ignore[arg-type]
    assert found == Chilled(ice=F(150), water=F(850))
