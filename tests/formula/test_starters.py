"""Starters of stated make-up: flour, water, label; and what is asked instead of guessed."""

from datetime import date

import pytest

from generator.declaration.checks import pack_diagnostics
from generator.declaration.declare import declare
from generator.formula.scaling import scaled
from generator.formula.starters import is_starter
from tests.formula.kitchen import F, bake, exact, formula_of, recipe, shelf

DOUGH = "- 1000 g bread flour\n- 700 g water\n- 20 g table salt\n- "
PACKS = shelf("bread flour:\n  contains: [wheat]\nrye flour:\n  contains: [rye]\n")


@pytest.mark.parametrize(
    ("name", "starter"),
    [
        ("levain", True),
        ("ripe rye starter", True),
        ("sourdough discard", True),
        ("old dough", True),
        ("starter kit", False),
        ("bread flour", False),
        ("sourdough crumbs", False),
    ],
)
def test_what_goes_by_the_name_of_a_starter(name: str, *, starter: bool) -> None:
    assert is_starter(name) is starter


def test_flour_and_water_of_a_starter_count_in_the_whole() -> None:
    totals = formula_of(
        recipe(f"{DOUGH}{{line: 160 g stiff levain, hydration: 60 %, flour: rye flour}}")
    ).totals
    assert (totals.flour, totals.water, totals.grams) == (1100, 760, exact(1880))
    assert totals.hydration == totals.hydration_nominal == F(76000, 1100)
    assert totals.prefermented_percent == F(100 * 100, 1100)


def test_a_starter_scales_with_what_is_inside() -> None:
    formula = formula_of(recipe(f"{DOUGH}{{line: 160 g levain, hydration: 60 %, flour: rye flour}}"))
    doubled = scaled(formula, F(2)).lines[-1]
    assert [each.grams for each in doubled.inside] == [exact(200), exact(120)]
    assert scaled(scaled(formula, F(3)), F(1, 3)) == formula


@pytest.mark.parametrize(
    ("region", "words"), [("US", "levain (rye flour, water)"), ("EU", "levain (rye flour, water)")]
)
def test_the_label_opens_a_starter_and_declares_its_flour(region: str, words: str) -> None:
    text = recipe(f"{DOUGH}{{line: 200 g levain, hydration: 80 %, flour: rye flour}}")
    declared = declare(formula_of(text, on=PACKS), book={}, region=region)
    assert words in "".join(run.text for run in declared.ingredients)
    assert declared.finished
    assert ("rye" in declared.contains or "gluten" in str(declared.contains)) is (region == "EU")


def test_a_starter_of_unknown_flour_leaves_the_label_unfinished() -> None:
    text = recipe(f"{DOUGH}{{line: 200 g house starter, hydration: 100 %}}")
    declared = declare(formula_of(text, on=PACKS), book={}, region="US")
    assert not declared.finished
    assert any("starter" in each for each in declared.unknown)


def test_a_flour_that_is_to_be_read_leaves_the_label_unfinished() -> None:
    text = recipe("- 500 g rye flour\n- {line: 200 g levain, hydration: 100 %, flour: self-rising flour}")
    with_plain = recipe("- 500 g rye flour\n- 100 g self-rising flour")
    unknown = [
        declare(formula_of(each, on=PACKS), book={}, region="US").unknown for each in (text, with_plain)
    ]
    assert bool(unknown[0]) is bool(unknown[1])


def test_packs_of_the_flour_in_a_starter_are_looked_at() -> None:
    text = recipe(f"{DOUGH}{{line: 200 g levain, hydration: 100 %, flour: rye flour}}")
    old = shelf("rye flour:\n  contains: [rye]\n  checked: 2020-01-01\n")
    book = {"bake": formula_of(text, on=old)}
    found = pack_diagnostics(book, day=date(2026, 10, 1), pack_age=180)
    assert [each.code for each in found if "rye" in each.message] == ["L003"]


def test_a_starter_made_by_a_recipe_is_not_asked() -> None:
    levain = recipe("- 100 g rye flour\n- 100 g water", more="weighs: 200 g\n")
    dough = recipe(f"{DOUGH}{{line: 200 g levain, recipe: levain}}")
    assert "F050" not in bake(levain=levain, dough=dough).codes


def test_a_hydration_is_never_taken_from_a_name() -> None:
    assert "F050" in bake(bake=recipe(f"{DOUGH}200 g levain")).codes
    text = (
        "levain:\n  preferment: levain\n  hydration: 100 %\n  lines:\n    - 200 g levain\n"
        "dough:\n  - 500 g bread flour"
    )
    assert "F050" in bake(bake=recipe(text)).codes
