"""Parts: what counts, what does not, and what goes in from other recipes."""

import pytest

from tests.formula.kitchen import F, bake, exact, formula_of, recipe

PEEL = recipe("- 150 g lemon peel\n- 200 g granulated sugar\n- 100 g water", more="weighs: 260 g\n")


def _with(component_line: str, *, more: str = "") -> str:
    return recipe(f"- 500 g bread flour\n- 300 g water\n- {{{component_line}, recipe: inner}}", more=more)


def test_a_formula_may_be_one_list_or_parts() -> None:
    assert [part.name for part in formula_of(recipe("- 500 g bread flour")).parts] == [""]
    parts = formula_of(recipe("dough:\n  - 500 g bread flour\nfilling:\n  lines:\n    - 20 g honey")).parts
    assert [(part.name, part.counts, part.preferment) for part in parts] == [
        ("dough", True, None),
        ("filling", True, None),
    ]


def test_a_part_that_does_not_count_is_in_the_weight_and_in_no_percent() -> None:
    formula = formula_of(
        recipe(
            "dough:\n  - 500 g bread flour\n  - 300 g water\n"
            "finish:\n  counts: no\n  lines:\n    - 100 g bread flour\n    - 50 g milk\n    - 20-25 g honey"
        )
    )
    assert formula.totals.flour == 500
    assert formula.totals.hydration == 60
    assert [line.percent for line in formula.parts[1].lines] == [None, None, None]
    assert (formula.totals.grams.low, formula.totals.grams.high) == (970, 975)
    assert formula.totals.dough_grams == exact(800)


def test_without_flour_there_is_no_percent() -> None:
    formula = formula_of(recipe("- 150 g lemon peel\n- 200 g granulated sugar"))
    totals = formula.totals
    assert [line.percent for line in formula.lines] == [None, None]
    assert (totals.hydration, totals.hydration_nominal, totals.salt_percent) == (None, None, None)


@pytest.mark.parametrize(
    "item",
    ["cornstarch", "rolled oats", "ground almonds", "vital wheat gluten", "cocoa powder", "coconut flour"],
)
def test_what_is_no_flour(item: str) -> None:
    formula = formula_of(recipe(f"- 500 g bread flour\n- 50 g {item}"))
    assert formula.totals.flour == 500
    assert formula.lines[1].percent == 10


def test_two_flours_together_are_a_hundred() -> None:
    formula = formula_of(recipe("- 400 g bread flour\n- 100 g whole wheat flour"))
    assert [line.percent for line in formula.lines] == [80, 20]


@pytest.mark.parametrize("item", ["fresh yeast", "raisins", "rolled oats", "brown sugar", "milk powder"])
def test_water_inside_these_is_not_counted(item: str) -> None:
    formula = formula_of(recipe(f"- 500 g bread flour\n- 300 g water\n- 50 g {item}"))
    assert formula.totals.water == 300


def test_water_of_a_soaker_is_listed_apart() -> None:
    text = recipe(
        "soaker:\n  preferment: soaker\n  lines:\n    - 50 g rye flour\n    - 60 g water\n"
        "dough:\n  - 450 g bread flour\n  - 300 g water"
    )
    totals = formula_of(text).totals
    assert (totals.flour, totals.water, totals.hydration) == (500, 300, 60)
    assert totals.prefermented_percent is None


def test_flour_and_water_of_a_preferment_count() -> None:
    text = recipe(
        "poolish:\n  preferment: poolish\n  lines:\n    - 150 g bread flour\n    - 150 g water\n"
        "dough:\n  - 350 g bread flour\n  - 190 g water"
    )
    totals = formula_of(text).totals
    assert (totals.flour, totals.hydration, totals.prefermented_percent) == (500, 68, 30)


@pytest.mark.parametrize(
    ("written", "kind"),
    [("yes", "preferment"), ("no", None), ("Poolish", "poolish"), ("pâte fermentée", "pâte fermentée")],
)
def test_kinds_of_preferment(written: str, kind: str | None) -> None:
    baked = bake(bake=recipe(f"sponge:\n  preferment: {written}\n  lines:\n    - 150 g bread flour"))
    assert baked.only().parts[0].preferment == kind
    assert "F014" not in baked.codes


def test_optional_lines_and_alternatives_never_count() -> None:
    formula = formula_of(
        recipe(
            "- 500 g bread flour\n- {line: 50 g rye flour, optional: yes}\n"
            "- {line: 300 g water, or: [310 g milk, apple juice]}"
        )
    )
    assert formula.totals.grams == exact(800)
    assert formula.totals.flour == 500
    assert formula.totals.hydration == 60
    assert [line.percent for line in formula.lines] == [100, None, 60]
    assert [each.item for each in formula.lines[2].alternatives] == ["milk", "apple juice"]


def test_an_alternative_without_an_amount_is_meant_in_the_amount_of_its_line() -> None:
    assert bake(bake=recipe("- {line: 300 g water, or: [apple juice]}")).codes == ["R001"]


@pytest.mark.parametrize("discard", ["180 g", "90 %", "9/10"])
def test_what_is_discarded_is_neither_in_the_bake_nor_in_the_dough(discard: str) -> None:
    formula = formula_of(
        recipe(f"- 500 g bread flour\n- {{line: 200 g water, discard: {discard}}}", more="bakes_off: 10 %\n")
    )
    assert formula.totals.water == 20
    assert formula.totals.grams == exact(700)
    assert formula.totals.finished_grams == exact(468)


def test_all_and_half_may_be_discarded() -> None:
    for words, left in (("all", 0), ("half", 100), ("½", 100)):
        formula = formula_of(recipe(f"- 500 g bread flour\n- {{line: 200 g water, discard: {words}}}"))
        assert formula.lines[1].kept == exact(left)


def test_a_component_goes_in_by_what_its_batch_weighs() -> None:
    baked = bake(inner=PEEL, outer=_with("line: 52 g candied lemon peel"))
    assert baked.formulas["outer"].component_shares == {"inner": F(1, 5)}
    assert "F049" not in baked.codes


def test_else_by_its_raw_sum_less_what_bakes_off() -> None:
    inner = recipe("- 500 g sugar\n- 500 g water", more="bakes_off: 20 %\n")
    assert bake(inner=inner, outer=_with("line: 80 g syrup")).formulas["outer"].component_shares == {
        "inner": F(1, 10)
    }


def test_else_by_its_raw_sum_and_that_is_said() -> None:
    inner = recipe("- 500 g sugar\n- 500 g water")
    baked = bake(inner=inner, outer=_with("line: 80 g syrup"))
    assert baked.formulas["outer"].component_shares == {"inner": F(8, 100)}
    assert baked.codes.count("F049") == 1


def test_flour_and_water_of_a_component_count_only_in_a_preferment() -> None:
    inner = recipe("- 100 g bread flour\n- 100 g water\n- 2 g table salt", more="weighs: 202 g\n")
    plain = bake(inner=inner, outer=_with("line: 101 g sponge")).formulas["outer"]
    assert (plain.totals.flour, plain.totals.water) == (500, 300)
    assert plain.totals.salt_percent == 0
    assert plain.totals.salt_with_ingredients_percent is not None
    assert float(plain.totals.salt_with_ingredients_percent) == pytest.approx(0.2, abs=0.01)
    outer = recipe(
        "sponge:\n  preferment: levain\n  lines:\n    - {line: 101 g sponge, recipe: inner}\n"
        "dough:\n  - 450 g bread flour\n  - 250 g water"
    )
    counted = bake(inner=inner, outer=outer).formulas["outer"]
    assert (counted.totals.flour, counted.totals.water, counted.totals.prefermented_percent) == (500, 300, 10)


def test_components_of_components_multiply() -> None:
    first = recipe("- 100 g bread flour\n- 100 g water", more="weighs: 200 g\n")
    second = recipe(
        "a:\n  preferment: levain\n  lines:\n    - {line: 100 g starter, recipe: first}\nb:\n  - 50 g bread flour",
        more="weighs: 150 g\n",
    )
    third = recipe(
        "a:\n  preferment: levain\n  lines:\n    - {line: 75 g levain, recipe: second}\nb:\n  - 450 g bread flour"
    )
    baked = bake(first=first, second=second, third=third)
    assert baked.formulas["third"].totals.flour == 500
    assert baked.formulas["third"].totals.water == 25


def test_a_component_named_like_an_ingredient_is_the_component() -> None:
    line = bake(inner=PEEL, outer=_with("line: 40 g candied lemon peel")).formulas["outer"].lines[2]
    assert (line.ware, line.component, line.flour) == (None, "inner", False)


def test_a_circle_is_an_error_and_names_the_way_round() -> None:
    one = recipe("- {line: 10 g two, recipe: two}")
    two = recipe("- {line: 10 g one, recipe: one}")
    baked = bake(one=one, two=two)
    found = [each for each in baked.diagnostics if each.code == "F046"]
    assert len(found) == 1
    assert found[0].message in (
        "a recipe cannot be made of itself: one → two → one",
        "a recipe cannot be made of itself: two → one → two",
    )
    assert baked.formulas == {}


def test_a_recipe_of_itself_is_a_circle_too() -> None:
    baked = bake(one=recipe("- {line: 10 g one, recipe: one}"))
    assert "F046" in baked.codes


def test_what_is_made_with_a_faulty_recipe_is_left_out_without_a_message_of_its_own() -> None:
    baked = bake(inner=recipe("- 150 g nothing known"), outer=_with("line: 40 g peel"))
    assert sorted(set(baked.codes)) == ["F043", "R001"]
    assert baked.formulas == {}


@pytest.mark.parametrize(
    ("more", "finished"), [("weighs: 700 g\n", (700, 700)), ("bakes_off: 12 %\n", (704, 704)), ("", None)]
)
def test_the_finished_weight_is_stated_or_not_claimed(more: str, finished: tuple[int, int] | None) -> None:
    totals = formula_of(recipe("- 500 g bread flour\n- 300 g water", more=more)).totals
    found = totals.finished_grams
    assert (None if found is None else (found.low, found.high)) == finished


def test_the_pantry_stands_in_by_name_or_by_key() -> None:
    from tests.formula.kitchen import shelf

    stocked = shelf("bought peel:\n  is: candied orange peel\n  contains: [sulphites]\n")
    for line in ("40 g bought peel", "{line: 40 g candied orange peel, pantry: bought peel}"):
        formula = formula_of(recipe(f"- {line}"), on=stocked)
        ware = formula.lines[0].ware
        assert ware is not None
        assert [pack.name for pack in ware.packs] == ["bought peel"]
        assert "sulphites" in ware.ingredient.allergens
