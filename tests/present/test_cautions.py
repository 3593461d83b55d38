"""Cautions are raised by the formula and the method, and go only for a recorded reason."""

import pytest

from generator.declaration.claims import claim_spans
from generator.formula.caution_names import CAUTION_NAMES
from generator.present.cautions import CAUTIONS, cautions_of, raised_by
from tests.formula.kitchen import bake, formula_of, recipe, shelf

LOAF = "- 500 g bread flour\n- 300 g water"
BAKED = "1. Mix the {bread flour} and the {water}. {bake 30 min} at {oven 450 F}."


def raised(formula: str, method: str = "", *, more: str = "", pantry: str = "") -> set[str]:
    found = formula_of(recipe(formula, method, more=more), on=shelf(pantry) if pantry else None)
    return set(raised_by(found, book={}))


def words(formula: str, method: str = "", *, more: str = "") -> list[str]:
    return [each.words for each in cautions_of(formula_of(recipe(formula, method, more=more)), book={})]


def test_every_caution_has_a_name_to_set_it_aside_by_a_basis_and_no_promise() -> None:
    assert tuple(each.name for each in CAUTIONS) == CAUTION_NAMES
    assert all(each.basis for each in CAUTIONS)
    assert all(claim_spans(each.words) == [] and "safe" not in each.words for each in CAUTIONS)


def test_baked_dough_is_not_to_be_tasted_raw() -> None:
    assert words(LOAF, BAKED) == ["Do not taste raw dough or batter: flour is raw. Wash hands and surfaces."]
    both = "- 500 g bread flour\n- 2 eggs"
    method = "1. Mix the {bread flour} and the {eggs}. {bake 30 min} at {oven 450 F}."
    assert words(both, method) == [
        "Do not taste raw dough or batter: flour and egg are raw. Wash hands and surfaces."
    ]


def test_without_any_heat_the_caution_is_a_stronger_one() -> None:
    dough = "- 200 g bread flour\n- 2 eggs"
    method = "1. Mix the {bread flour} and the {eggs}. {chill 1 h}."
    assert words(dough, method) == [
        "Contains raw flour: bake it before anyone eats it.",
        "Contains raw egg: use pasteurized egg. Not for young children, in pregnancy, for older or "
        "immune-compromised people.",
    ]
    assert raised(dough) == {"raw flour", "raw egg"}


def test_egg_that_goes_on_after_the_last_heat_is_raw() -> None:
    dough = LOAF + "\n- 2 egg whites"
    before = "1. Mix the {bread flour} and the {water}, brush with the {egg whites}. {bake 30 min} at {oven 450 F}."
    assert raised(dough, before) == {"raw dough"}
    assert raised(dough, BAKED + " Brush with the {egg whites}.") == {"raw dough", "raw egg"}


def test_an_icing_of_its_own_is_raw_wherever_it_stands() -> None:
    parts = (
        "dough:\n  - 500 g bread flour\n  - 300 g water\nicing:\n  - 1 egg white\n  - 200 g powdered sugar"
    )
    method = f"### Ice\n1. Beat the {{icing}}.\n\n### Bake\n{BAKED}"
    assert "raw egg" in raised(parts, method)
    heated = method.replace("Beat the {icing}.", "Beat the {icing} to {160 F}.")
    assert "raw egg" not in raised(parts, heated)


def test_an_oven_that_is_only_named_does_not_tell_when_it_bakes() -> None:
    method = (
        "1. Light the oven to {oven 450 F}.\n2. Mix the {bread flour} and the {water}. Bake it until brown."
    )
    assert raised(LOAF, method) == {"raw dough"}


def test_a_component_brings_what_it_leaves_raw() -> None:
    glaze = recipe("- 1 egg white\n- 200 g powdered sugar", "1. Beat the {egg white} and {powdered sugar}.")
    cream = recipe(
        "- 3 egg yolks\n- 300 g whole milk", "1. Mix the {egg yolks} and {whole milk}. {cook 5 min}."
    )
    loaf = LOAF + "\n- {line: 50 g topping, recipe: NAME}"
    method = BAKED + " Spread the {topping} on it."
    raw = bake(bake=recipe(loaf.replace("NAME", "glaze"), method), glaze=glaze).formulas
    done = bake(bake=recipe(loaf.replace("NAME", "cream"), method), cream=cream).formulas
    assert "raw egg" in raised_by(raw["bake"], book=raw)
    assert "raw egg" not in raised_by(done["bake"], book=done)


@pytest.mark.parametrize(
    ("formula", "pantry"),
    [
        ("- 20 g honey", ""),
        (
            "- 20 g sugar\n- {line: 5 g butter, optional: yes}\n- {line: 10 g maple syrup, or: [10 g honey]}",
            "",
        ),
        (
            "- 100 g crumbs",
            "crumbs:\n  label: Biscuit crumbs (wheat flour, honey, salt)\n  contains: [wheat]\n",
        ),
    ],
)
def test_honey_is_told_of_even_inside_what_is_bought(formula: str, pantry: str) -> None:
    assert "honey" in raised(formula, pantry=pantry)


def test_honey_of_a_component_is_told_of() -> None:
    inner = recipe("- 100 g honey\n- 10 g water", "1. Warm the {honey} and {water}. {cook 5 min}.")
    outer = recipe("- 500 g bread flour\n- {line: 20 g sirup, recipe: inner}")
    book = bake(outer=outer, inner=inner).formulas
    assert "honey" in raised_by(book["outer"], book=book)


def test_alcohol_remains_and_more_so_without_heat() -> None:
    dough = LOAF + "\n- 30 g rum"
    baked = "1. Mix the {bread flour}, the {water} and the {rum}. {bake 30 min} at {oven 450 F}."
    assert "Made with alcohol; some of it remains after baking." in words(dough, baked)
    soaked = BAKED + " Drench it with the {rum}."
    assert "Made with alcohol that no heat takes away." in words(dough, soaked)


def test_cream_baked_in_keeps_and_cream_put_in_afterwards_is_chilled() -> None:
    dough = LOAF + "\n- 100 g heavy cream"
    inside = "1. Mix the {bread flour}, the {water} and the {heavy cream}. {bake 30 min} at {oven 450 F}."
    assert "chilled" not in raised(dough, inside)
    assert "chilled" in raised(dough, BAKED + " Fill it with the {heavy cream}.")


def test_custard_and_cream_cheese_fillings_are_chilled() -> None:
    custard = "dough:\n  - 200 g bread flour\nfilling:\n  - 3 egg yolks\n  - 300 g whole milk"
    method = "1. Pour the {filling} over the {bread flour}. {bake 30 min} at {oven 350 F}."
    assert raised(custard, method) == {"raw dough", "chilled", "egg filling"}
    cheese = "dough:\n  - 200 g bread flour\nfrosting:\n  - 200 g cream cheese"
    assert "chilled" in raised(cheese, "1. Mix {bread flour}, {bake 9 min}, spread the {frosting}.")
    fruit = "dough:\n  - 200 g bread flour\nfilling:\n  - 300 g apples"
    assert "chilled" not in raised(fruit, method)


def test_the_name_of_a_bake_can_say_that_it_is_chilled() -> None:
    text = recipe(LOAF, BAKED).replace("A test bake", "Baked cheesecake")
    assert "chilled" in raised_by(formula_of(text), book={})


def test_whole_nuts_can_choke_and_ground_ones_do_not_count() -> None:
    assert "choking" in raised("- 50 g walnuts")
    assert "choking" in raised("- 50 g walnuts, chopped")
    assert "choking" not in raised("- 50 g walnuts, finely ground")


def test_hot_sugar_and_hot_fat_are_told_apart() -> None:
    assert "hot sugar" in raised("- 200 g sugar\n- 50 g water", "1. Boil {sugar} and {water} to {245 F}.")
    fried = "1. Mix the {bread flour} and the {water}. Fry in oil at {350 F}, {cook 3 min}."
    assert raised(LOAF, fried) == {"raw dough", "hot oil"}
    assert raised("- 200 g sugar\n- 50 g water", "1. Warm {sugar} and {water} to {180 F}.") == set()


def test_lye_and_xylitol_are_known_by_their_names() -> None:
    lye = "food-grade lye:\n  label: Sodium hydroxide\n  contains: []\n"
    assert "lye" in raised(LOAF + "\n- 40 g food-grade lye", pantry=lye)
    assert "lye" in raised(LOAF, BAKED + " Dip it in a lye bath.")
    assert "lye" not in raised("- 50 g barley flour")
    sweet = "table sweet:\n  label: Xylitol\n  contains: []\n"
    assert "xylitol" in raised("- 40 g table sweet", pantry=sweet)


def titled(title: str, formula: str, method: str = "") -> set[str]:
    text = recipe(formula, method).replace("A test bake", title)
    return set(raised_by(formula_of(text), book={}))


def test_candied_peel_that_is_made_here_is_kept_dry_and_bought_peel_raises_nothing() -> None:
    assert raised("- 40 g candied orange peel") == set()
    assert "candied peel" in titled("Candied orange peel", "- 200 g orange zest\n- 200 g sugar")
    assert "candied peel" not in titled("Candied pecans", "- 200 g pecans\n- 200 g sugar")


def test_garlic_and_herbs_in_oil_are_told_of_heated_or_not() -> None:
    oil = "- 100 g olive oil\n- 20 g garlic"
    cooked = "1. Warm the {olive oil} and the {garlic} to {180 F}. {cook 20 min}."
    assert "garlic in oil" in titled("Garlic oil", oil, cooked)
    assert "garlic in oil" in titled("Soft garlic confit", oil, cooked)
    assert "garlic in oil" in raised(oil, "1. Mix the {olive oil} and the {garlic}. {rest 1 h}.")
    parts = "dough:\n  - 500 g bread flour\nherb oil:\n  - 30 g olive oil\n  - 5 g fresh rosemary"
    method = "1. Bake the {bread flour}, {bake 20 min}, with the {herb oil}."
    assert "garlic in oil" in raised(parts, method)


def test_a_dough_that_is_baked_with_oil_and_garlic_is_no_garlic_oil() -> None:
    dough = LOAF + "\n- 30 g olive oil\n- 10 g garlic\n- 4 g fresh rosemary"
    method = (
        "1. Mix {bread flour}, {water}, {olive oil}, {garlic} and {fresh rosemary}. "
        "{bake 30 min} at {oven 450 F}."
    )
    assert raised(dough, method) == {"raw dough"}
    assert "garlic in oil" not in titled("Olive oil cake", LOAF + "\n- 100 g olive oil")
    dried = "- 100 g olive oil\n- 5 g dried rosemary"
    assert "garlic in oil" not in raised(dried)


def test_a_filling_that_was_cooked_is_cooled_fast() -> None:
    """FDA Food Code 3-501.14; a filling of fruit is none (USDA: fruit pies stand out)."""
    custard = "dough:\n  - 200 g bread flour\nfilling:\n  - 3 egg yolks\n  - 300 g whole milk"
    cooked = "1. Stir the {filling}. {cook 8 min}. Fill {bread flour}. {bake 9 min} at {oven 350 F}."
    assert {"cooling", "chilled", "egg filling"} <= raised(custard, cooked)
    only_baked = "1. Pour the {filling} over the {bread flour}. {bake 30 min} at {oven 350 F}."
    assert "cooling" not in raised(custard, only_baked)
    fruit = "dough:\n  - 200 g bread flour\nfilling:\n  - 300 g apples"
    assert not {"cooling", "chilled"} & raised(fruit, cooked.replace("{bread flour}", "the {bread flour}"))


def test_a_curd_or_a_pastry_cream_by_itself_is_a_filling() -> None:
    curd = "- 3 eggs\n- 100 g lemon juice\n- 100 g unsalted butter"
    method = "1. Stir the {eggs}, the {lemon juice} and the {unsalted butter}. {cook 8 min} to {180 F}."
    assert {"cooling", "chilled", "egg filling"} <= titled("Lemon curd", curd, method)
    cream = "- 3 egg yolks\n- 300 g whole milk"
    method = "1. Stir the {egg yolks} and the {whole milk}. {cook 8 min}."
    assert {"cooling", "chilled", "egg filling"} <= titled("Pastry cream", cream, method)
    assert "chilled" not in titled("Egg bread", "- 500 g bread flour\n- 2 eggs")


def test_starter_that_is_taken_off_is_raw_flour() -> None:
    assert "starter discard" in titled("Discard crackers", LOAF, BAKED)
    assert "starter discard" in raised(LOAF, BAKED + " Discard what is left of the starter.")
    assert "starter discard" not in raised(LOAF, BAKED + " Discard the paper.")


def test_lupin_royal_jelly_and_sugar_alcohols_are_told_to_whoever_eats_them() -> None:
    assert "lupin" in raised("- 50 g lupin flour")
    bees = "bee glaze:\n  label: Glaze (honey, royal jelly)\n  contains: []\n"
    assert {"royal jelly", "honey"} <= raised("- 40 g bee glaze", pantry=bees)
    sweet = "isomalt pearls:\n  label: Isomalt\n  contains: []\n"
    assert "sugar alcohols" in raised("- 40 g isomalt pearls", pantry=sweet)
    gum = "soft icing:\n  label: Icing (sugar, humectant sorbitol)\n  contains: []\n"
    assert "sugar alcohols" not in raised("- 40 g soft icing", pantry=gum)


def test_a_caution_goes_for_a_recorded_reason_only() -> None:
    off = "cautions_off:\n  - {what: honey, why: The honey is served beside it.}\n"
    assert words("- 20 g honey", more=off) == []
    no_reason = bake(bake=recipe("- 20 g honey", more="cautions_off:\n  - {what: honey}\n"))
    assert "S061" in no_reason.codes
    unheard = bake(bake=recipe("- 20 g honey", more="cautions_off:\n  - {what: hony, why: None.}\n"))
    (found,) = [each for each in unheard.diagnostics if each.code == "L007"]
    assert (found.message, found.hint) == ("there is no caution “hony”", "Did you mean “honey”?")
    assert (found.span.line, found.span.column) == (4, 12)


def test_what_an_eater_must_know_is_marked() -> None:
    marked = {each.name for each in CAUTIONS if each.eater}
    assert marked == {
        *("raw flour", "raw egg", "honey", "chilled", "garlic in oil", "alcohol", "choking", "lupin"),
        *("royal jelly", "xylitol", "sugar alcohols"),
    }
