"""What is printed is what was meant, to the precision of a kitchen."""

from fractions import Fraction
from itertools import product
from math import ceil, floor

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.measure.number import Range
from generator.measure.quantity import read_quantity
from generator.measure.unit import SPOONS, Spoons
from generator.present.amounts import count_words, scoops, volume_words, weight_words
from tests.lots import lots

LAW = settings(max_examples=lots(200), deadline=None)
GRAMS = st.fractions(min_value=Fraction(1, 48), max_value=5000, max_denominator=48)
MILLILITRES = st.fractions(min_value=Fraction(1, 2), max_value=2500, max_denominator=48)
COUNTRIES = st.sampled_from(sorted(SPOONS))
CLOSE = Fraction(25, 1000)


def _step(grams: Fraction) -> Fraction:
    """A scale shows whole grams from 10 g on, tenths from 1 g on, hundredths below (common practice)."""
    return Fraction(1) if grams >= 10 else Fraction(1, 10) if grams >= 1 else Fraction(1, 100)


@LAW
@given(GRAMS)
def test_a_printed_weight_reads_back_to_its_last_digit(grams: Fraction) -> None:
    read = read_quantity(weight_words(Range.exact(grams)), spoons=SPOONS["us"])
    assert read is not None
    back = read[0].grams()
    assert back is not None
    # Just below a change of steps the coarser one may be used.
    assert abs(back.mid - grams) <= _step(grams * Fraction(106, 100)) / 2


@LAW
@given(GRAMS, GRAMS)
def test_a_printed_range_reads_back_as_a_range(one: Fraction, other: Fraction) -> None:
    low, high = sorted((one, other))
    words = weight_words(Range(low, high))
    read = read_quantity(words, spoons=SPOONS["us"])
    assert read is not None
    assert read[1] == len(words)
    back = read[0].grams()
    assert back is not None
    assert abs(back.low - low) <= _step(low * Fraction(106, 100)) / 2
    assert abs(back.high - high) <= _step(high * Fraction(106, 100)) / 2


@LAW
@given(MILLILITRES, COUNTRIES)
def test_a_printed_volume_reads_back_as_the_scoops_it_names(millilitres: Fraction, country: str) -> None:
    spoons = SPOONS[country]
    words = volume_words(Range.exact(millilitres), spoons)
    read = read_quantity(words, spoons=spoons)
    assert read is not None
    assert read[1] == len(words)
    back = read[0].millilitres()
    assert back is not None
    assert back.mid == scoops(millilitres, spoons).millilitres(spoons)


@LAW
@given(MILLILITRES, COUNTRIES)
def test_a_printed_volume_is_within_a_fortieth_or_the_nearest_that_spoons_measure(
    millilitres: Fraction, country: str
) -> None:
    spoons = SPOONS[country]
    miss = abs(scoops(millilitres, spoons).millilitres(spoons) - millilitres)
    assert miss <= max(min(CLOSE * millilitres, spoons.cup / 8), spoons.tsp / 16)


@LAW
@given(st.integers(1, 200), COUNTRIES)
def test_whole_cups_stay_whole_however_many(cups: int, country: str) -> None:
    spoons = SPOONS[country]
    words = volume_words(Range.exact(cups * spoons.cup), spoons)
    assert words == (f"{cups} cups" if cups > 1 else "1 cup")


@LAW
@given(st.fractions(min_value=5, max_value=400, max_denominator=48), COUNTRIES)
def test_many_cups_miss_by_half_of_the_smallest_cup_at_most(cups: Fraction, country: str) -> None:
    spoons = SPOONS[country]
    assert abs(scoops(cups * spoons.cup, spoons).millilitres(spoons) - cups * spoons.cup) <= spoons.cup / 8


def _spoon_scoops(eighths: int) -> int:
    """Whole spoons, and of ⅛, ¼, ½, ¾ one more, of ⅜, ⅝, ⅞ two more."""
    whole, rest = divmod(eighths, 8)
    return whole + {0: 0, 1: 1, 2: 1, 3: 2, 4: 1, 5: 2, 6: 1, 7: 2}[rest]


def _fewest(millilitres: Fraction, spoons: Spoons) -> int | None:
    """By trying every cup, tablespoon and teaspoon, written independently of the program."""
    parts = [Fraction(0), *(Fraction(*each) for each in ((1, 4), (1, 3), (1, 2), (2, 3), (3, 4)))]
    reach = CLOSE * millilitres
    found: list[int] = []
    for whole, part, tablespoons in product(range(floor(millilitres / spoons.cup) + 2), parts, range(5)):
        left = millilitres - (whole + part) * spoons.cup - tablespoons * spoons.tbsp
        low, high = ceil((left - reach) * 8 / spoons.tsp), floor((left + reach) * 8 / spoons.tsp)
        most = ceil(spoons.tbsp / spoons.tsp) * 8
        found += [
            whole + (part > 0) + tablespoons + _spoon_scoops(eighths)
            for eighths in range(max(low, 0), min(high + 1, most))
        ]
    return min(found, default=None)


@LAW
@given(st.fractions(min_value=1, max_value=800, max_denominator=8), COUNTRIES)
def test_no_fewer_scoops_would_do(millilitres: Fraction, country: str) -> None:
    spoons = SPOONS[country]
    found = scoops(millilitres, spoons)
    fewest = _fewest(millilitres, spoons)
    if fewest is not None:
        assert found.count == fewest
        assert abs(found.millilitres(spoons) - millilitres) <= CLOSE * millilitres


@LAW
@given(
    st.integers(0, 20), st.sampled_from([*(Fraction(n, 8) for n in range(8)), Fraction(1, 3), Fraction(2, 3)])
)
def test_a_printed_count_reads_back_exactly(whole: int, part: Fraction) -> None:
    value = whole + part
    if value:
        read = read_quantity(count_words(Range.exact(value)) + " eggs", spoons=SPOONS["us"])
        assert read is not None
        assert read[0].amount == Range.exact(value)


def test_nothing_known_is_nothing_printed() -> None:
    assert (weight_words(None), volume_words(None, SPOONS["us"])) == ("", "")
    with pytest.raises(ValueError, match="low to high"):
        Range(Fraction(2), Fraction(1))
