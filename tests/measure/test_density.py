"""Volume to weight and back."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.measure.density import apart, grams_of, millilitres_of
from generator.measure.number import Range

F = Fraction
positive = st.fractions(min_value=F(1, 100), max_value=10, max_denominator=100)


@given(positive, positive, positive)
def test_to_grams_and_back_is_identity(low: Fraction, more: Fraction, density: Fraction) -> None:
    volume = Range(low, low + more)
    assert millilitres_of(grams_of(volume, density), density) == volume


@pytest.mark.parametrize("density", [F(0), F(-1)])
def test_a_density_is_above_zero(density: Fraction) -> None:
    with pytest.raises(ValueError, match="above zero"):
        millilitres_of(Range.exact(1), density)


@pytest.mark.parametrize(
    ("a", "b", "expected"),
    [
        (Range.exact(100), Range.exact(105), F(1, 20)),
        (Range.exact(100), Range.exact(95), F(1, 20)),
        (Range(F(20), F(30)), Range.exact(25), F(0)),
        (Range.exact(0), Range.exact(0), F(0)),
        (Range.exact(0), Range.exact(1), F(1)),
        (Range.exact(1), Range.exact(0), F(1)),
    ],
)
def test_how_far_apart_two_measures_are(a: Range, b: Range, expected: Fraction) -> None:
    assert apart(a, b) == expected
