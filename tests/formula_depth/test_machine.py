"""What a dough cycle puts into the pan, read from the maker's own method."""

from fractions import Fraction

from generator.formula.machine import Load, dough_cycle, load_of
from generator.formula.machine_kind import plainest
from generator.formula.scaling import scaled
from generator.measure.number import Range
from tests.formula.kitchen import bake, formula_of

F = Fraction

BRAID = """---
title: Machine braid
formula:
  poolish:
    preferment: poolish
    lines:
      - 100 g bread flour
      - 100 g water
      - 0.2 g instant yeast
  dough:
    - 120 g whole milk
    - 1 large egg
    - 250 g bread flour
    - 50 g rolled oats
    - 30 g honey
    - 5 g table salt
    - 3 g instant yeast
    - 40 g raisins
  finish:
    counts: no
    lines:
      - 1 egg white
---
## Method: dough cycle
1. Stir {poolish} together. {mix 2 min} {rest 12 h}
2. Put in {whole milk}, {egg}, {honey}, {dough/bread flour: 200 g}, {rolled oats}, {table salt} and
   {dough/instant yeast}. {mix 5 min} Add {dough/bread flour: rest}. {knead 15 min} Add the {raisins}. {rise 1 h}

## Method
1. Brush with the {egg white}. {bake 30 min} at {oven 350 F}.
"""


def _load(text: str = BRAID) -> Load:
    formula = formula_of(text)
    way = dough_cycle(formula)
    assert way is not None
    return load_of(formula, way, "liquids first")


def test_preferment_goes_in_whole_with_the_liquids() -> None:
    name, loaded = _load().layers[0]
    assert name == "liquids"
    assert [(each.item, each.grams) for each in loaded] == [
        ("poolish", Range.exact(F("200.2"))),
        ("whole milk", Range.exact(F(120))),
        ("egg", Range.exact(F(50))),
    ]


def test_oats_are_dry_and_honey_is_no_liquid() -> None:
    layers = {name: [each.item for each in loaded] for name, loaded in _load().layers}
    assert layers["flour"] == ["bread flour", "rolled oats"]
    assert layers["rest"] == ["honey", "table salt"]
    assert layers["yeast"] == ["instant yeast"]


def test_pan_is_measured_by_all_flour_and_oats() -> None:
    assert _load().dry == 100 + 250 + 50


def test_a_share_is_loaded_and_the_rest_comes_later_with_the_fruit() -> None:
    load = _load()
    flour = next(each for _, loaded in load.layers for each in loaded if each.item == "bread flour")
    assert flour.grams == Range.exact(F(200))
    assert [(each.item, each.grams) for each in load.added] == [
        ("bread flour", Range.exact(F(50))),
        ("raisins", Range.exact(F(40))),
    ]


def test_what_spoils_is_named_and_what_keeps_is_not() -> None:
    assert _load().spoils == ("poolish", "whole milk", "egg")


def test_what_is_used_after_the_cycle_is_not_in_the_pan() -> None:
    load = _load()
    things = [each.item for _, loaded in load.layers for each in loaded] + [each.item for each in load.added]
    assert "egg white" not in things


def test_without_a_mixing_stage_all_before_the_rise_is_loaded() -> None:
    text = BRAID.replace("{mix 5 min} ", "").replace("{knead 15 min} ", "").replace("{mix 2 min} ", "")
    load = _load(text)
    assert load.added == ()
    assert sum(each.grams.mid for _, loaded in load.layers for each in loaded if each.grams) == F("748.2")


def test_the_load_grows_with_the_recipe() -> None:
    formula = scaled(formula_of(BRAID), F(3, 2))
    way = dough_cycle(formula)
    assert way is not None
    load = load_of(formula, way, None)
    assert load.dry == 600
    assert load.added[1].grams == Range.exact(F(60))


def test_other_ways_are_no_dough_cycle() -> None:
    assert dough_cycle(formula_of(BRAID.replace("Method: dough cycle", "Method: by hand"))) is None


def test_plainest_fraction_is_the_one_with_the_smallest_denominator_nearest_to_one() -> None:
    assert plainest(Range(F(5, 7), F(13, 10))) == 1
    assert plainest(Range(F(52, 100), F(64, 100))) == F(3, 5)
    assert plainest(Range(F(375, 480), F(455, 480))) == F(4, 5)
    assert plainest(Range(F(5, 2), F(13, 4))) == 3


def test_a_pan_that_the_flour_does_not_fit_is_told() -> None:
    text = BRAID.replace("title: Machine braid\n", "title: Machine braid\nmachine: {pan: 2 lb}\n")
    found = [each for each in bake(bake=text).diagnostics if each.code == "M012"]
    assert [each.message for each in found] == [
        "400 g of flour and grain is less than a 2 lb pan takes: 500 to 650 g"
    ]
    assert "1.5 times" in found[0].hint
