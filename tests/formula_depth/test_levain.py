"""A levain of stated hydration, built and taken apart."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.formula.levain import Build, Inside, build_at, build_by_ratio, inside, prefermented_percent
from tests.lots import lots

F = Fraction
GRAMS = st.fractions(1, 5000, max_denominator=10)
HYDRATION = st.fractions(40, 150, max_denominator=4)
RATIO = st.fractions(F(1, 2), 10, max_denominator=4)


def whole(build: Build, seed_hydration: Fraction) -> Inside:
    seed = inside(build.seed, seed_hydration)
    assert seed is not None
    return seed.plus(Inside(flour=build.flour, water=build.water))


@given(GRAMS, HYDRATION)
@settings(max_examples=lots(200))
def test_flour_and_water_are_the_starter_and_its_hydration(grams: Fraction, hydration: Fraction) -> None:
    found = inside(grams, hydration)
    assert found is not None
    assert found.flour + found.water == grams
    assert found.hydration == hydration


@given(GRAMS, HYDRATION, RATIO, HYDRATION, st.integers(0, 50))
@settings(max_examples=lots(300))
def test_a_build_has_the_weight_and_the_hydration_asked_for(
    wanted: Fraction, hydration: Fraction, per_seed: Fraction, seed_hydration: Fraction, spare: int
) -> None:
    build = build_at(
        wanted, hydration=hydration, flour_per_seed=per_seed, seed_hydration=seed_hydration, spare=F(spare)
    )
    if build is None:
        # Only where the seed is so wet that its own water is too much for the levain.
        assert seed_hydration > hydration
        return
    assert build.grams == wanted * (1 + F(spare, 100))
    assert build.grams - build.spare == wanted
    assert build.flour == build.seed * per_seed
    assert whole(build, seed_hydration).hydration == hydration


@given(GRAMS, RATIO, RATIO, HYDRATION)
@settings(max_examples=lots(200))
def test_a_build_by_ratio_knows_its_own_hydration(
    wanted: Fraction, flour: Fraction, water: Fraction, seed_hydration: Fraction
) -> None:
    build = build_by_ratio(wanted, ratio=(F(1), flour, water), seed_hydration=seed_hydration)
    assert build is not None
    assert build.grams == wanted
    assert whole(build, seed_hydration).hydration == build.hydration
    assert build == build_at(
        wanted, hydration=build.hydration, flour_per_seed=flour, seed_hydration=seed_hydration
    )


def test_what_makes_no_sense_is_none() -> None:
    one = (F(1), F(2), F(2))
    assert build_by_ratio(F(0), ratio=one, seed_hydration=F(100)) is None
    assert build_by_ratio(F(400), ratio=(F(0), F(2), F(2)), seed_hydration=F(100)) is None
    assert build_by_ratio(F(400), ratio=one, seed_hydration=F(-1)) is None
    assert build_by_ratio(F(400), ratio=one, seed_hydration=F(100), spare=F(-10)) is None
    assert build_at(F(-1), hydration=F(100), flour_per_seed=F(2), seed_hydration=F(100)) is None
    assert build_at(F(400), hydration=F(10), flour_per_seed=F(1, 10), seed_hydration=F(150)) is None


@pytest.mark.parametrize(("grams", "hydration"), [("-1", "100"), ("100", "-100"), ("100", "-150")])
def test_no_starter_holds_less_than_nothing(grams: str, hydration: str) -> None:
    assert inside(F(grams), F(hydration)) is None


@pytest.mark.parametrize(("flour", "starter"), [("0", "0"), ("100", "-1"), ("100", "101")])
def test_no_preferment_holds_more_than_all_flour(flour: str, starter: str) -> None:
    assert prefermented_percent(F(flour), F(starter)) is None
