"""The bread machine against the figures of common practice (no published source), and against arithmetic."""

from fractions import Fraction

import pytest

from generator.formula.dough_temperature import water_temperature
from generator.formula.machine import LAYERS, dough_cycle, load_of
from generator.formula.machine_kind import PANS, Order, fitting, next_to, plainest
from tests.formula.kitchen import exact, formula_of

F = Fraction

LEAN = """---
title: Machine loaf
formula:
  - 400 g bread flour
  - 6 g table salt
  - 3 g instant yeast
  - 20 g unsalted butter
  - 260 g water
---
## Method: dough cycle
1. Put in the {water}, {unsalted butter}, {table salt}, {bread flour} and {instant yeast}. {mix 5 min} {knead 20 min}
   {rise 55 min}
"""


def test_dough_cycle_of_5_20_and_55_minutes_is_80() -> None:
    # One typical pattern of machines (common practice): mix 5, knead 20, rise 55.
    (times,) = formula_of(LEAN).times
    assert times.total == exact(80)
    assert times.hands_on == exact(0)


def test_six_cups_in_a_machine_for_three_are_made_by_half() -> None:
    # All by the same factor, 6 cups to 3 is one half (common practice; a cup of 125 g).
    pan = next(pan for pan in PANS if pan.name == "1.5 lb")
    assert pan.cups / 6 == F(1, 2)
    assert plainest(pan.factor(F(6 * 125))) == F(1, 2)


@pytest.mark.parametrize(
    ("name", "cups", "low", "high"),
    # Flour a pan takes, cups of 125 to 130 g (common practice).
    [("1 lb", 2, 250, 325), ("1.5 lb", 3, 375, 455), ("2 lb", 4, 500, 650)],
)
def test_pans_take_so_much_flour(name: str, cups: int, low: int, high: int) -> None:
    pan = next(pan for pan in PANS if pan.name == name)
    assert (pan.cups, pan.dry.low, pan.dry.high) == (cups, low, high)
    assert fitting(F(low)) == fitting(F(high)) == (pan,)
    assert pan not in fitting(F(low) - F(1, 10))
    assert pan not in fitting(F(high) + F(1, 10))


def test_between_two_pans_both_are_offered_and_beyond_all_the_last() -> None:
    assert [pan.name for pan in next_to(F(480))] == ["1.5 lb", "2 lb"]
    assert [pan.name for pan in next_to(F(700))] == ["2 lb"]
    assert [pan.name for pan in next_to(F(100))] == ["1 lb"]


@pytest.mark.parametrize(
    ("order", "items"),
    [
        # Liquids, fat and salt, flour, yeast in a dry hollow on top (common practice).
        ("liquids first", [["water"], ["table salt", "unsalted butter"], ["bread flour"], ["instant yeast"]]),
        # Some machines take the yeast first, and all else turned round (from memory).
        ("yeast first", [["instant yeast"], ["bread flour"], ["table salt", "unsalted butter"], ["water"]]),
        # Not stated: as liquids come first, and nobody says that it is the machine's order.
        (None, [["water"], ["table salt", "unsalted butter"], ["bread flour"], ["instant yeast"]]),
    ],
)
def test_the_pan_is_loaded_in_the_order_of_the_machine(order: Order | None, items: list[list[str]]) -> None:
    formula = formula_of(LEAN)
    way = dough_cycle(formula)
    assert way is not None
    load = load_of(formula, way, order)
    assert [sorted(each.item for each in loaded) for _, loaded in load.layers] == items
    assert {name for name, _ in load.layers} == set(LAYERS)
    assert load.order == order


def test_water_for_a_machine_is_cold() -> None:
    # 80 °F wanted, flour 65, room 75, friction 35: 65 °F (a worked example of a home baking manual).
    assert water_temperature(wanted=F(80), flour=F(65), room=F(75), friction=F(35)) == 65
