"""Levains against worked examples; all by arithmetic from the definition of hydration."""

from fractions import Fraction

import pytest

from generator.formula.levain import Inside, build_at, build_by_ratio, inside, prefermented_percent

F = Fraction


def test_a_levain_of_400_g_by_one_two_two() -> None:
    build = build_by_ratio(F(400), ratio=(F(1), F(2), F(2)), seed_hydration=F(100))
    assert build is not None
    assert (build.seed, build.flour, build.water, build.hydration) == (80, 160, 160, 100)
    assert build == build_at(F(400), hydration=F(100), flour_per_seed=F(2), seed_hydration=F(100))


def test_a_tenth_to_spare() -> None:
    build = build_by_ratio(F(400), ratio=(F(1), F(2), F(2)), seed_hydration=F(100), spare=F(10))
    assert build is not None
    assert (build.seed, build.flour, build.water, build.spare) == (88, 176, 176, 40)


def test_a_stiff_starter() -> None:
    assert inside(F(160), F(60)) == Inside(flour=F(100), water=F(60))


# The trap of "20 % starter": nominal 70 %, truly 800 / 1100.
def test_flour_and_water_in_a_starter_count() -> None:
    starter = inside(F(200), F(100))
    assert starter is not None
    dough = Inside(flour=F(1000), water=F(700)).plus(starter)
    assert dough.hydration is not None
    assert float(dough.hydration) == pytest.approx(72.73, abs=0.01)
    share = prefermented_percent(dough.flour, starter.flour)
    assert share is not None
    assert float(share) == pytest.approx(9.09, abs=0.01)
