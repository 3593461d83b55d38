"""The declaration of whole bakes: order, places, precautions, and what a reader is told."""

from generator.declaration.declare import declare, kitchen_sentence
from generator.declaration.model import Declaration
from generator.formula.model import Formula, Line
from tests.declaration.bakes import bake, book, extra, line, marked, pack


def told(formula: Formula, *others: Formula, region: str = "US") -> Declaration:
    return declare(formula, book=book(formula, *others), region=region)


def listed(*lines: Line, region: str = "US", finished: float | None = None) -> str:
    return marked(told(bake(*lines, finished=finished), region=region).ingredients)


def test_order_is_by_weight_and_one_ingredient_stands_once() -> None:
    lines = (line("sugar", 60), line("water", 100), line("sugar", 70), line("eggs", 50))
    assert listed(*lines) == "sugar, water, egg"


def test_equal_weights_keep_the_order_of_the_formula() -> None:
    assert listed(line("water", 50), line("sugar", 50), line("honey", 50)) == "water, sugar, honey"


def test_what_is_kept_decides_the_order_not_what_was_taken() -> None:
    assert listed(line("water", 500, kept=20), line("sugar", 100)) == "sugar, water"


def test_what_has_no_weight_stands_after_the_weighed_and_never_in_the_tail() -> None:
    lines = (line("sugar", 500), line("table salt", 2), line("rice flour", None))
    assert listed(*lines) == "sugar, contains 2% or less of salt; also, not weighed: rice flour"


def test_dusting_with_what_is_in_the_list_already_adds_no_words() -> None:
    assert listed(line("bread flour", 500), line("bread flour", None)) == "wheat flour"


def test_optional_lines_alternatives_and_extras_are_listed_and_declared() -> None:
    formula = bake(
        line("sugar", 100),
        line("butter", 50, alternatives=(line("tahini", 50),)),
        line("walnuts", 30, optional=True),
        uses=(extra("semolina"), extra("sugar")),
    )
    declaration = told(formula)
    assert marked(declaration.ingredients) == (
        "sugar, butter; if added: walnuts; or in place of butter: tahini (sesame); "
        "as needed: durum wheat semolina"
    )
    assert declaration.contains == ("milk", "walnut", "sesame", "wheat")


def test_what_is_discarded_is_declared() -> None:
    declaration = told(bake(line("sugar", 100), line("milk", 200, kept=0)), region="EU")
    assert declaration.contains == ("milk",)
    assert marked(declaration.ingredients) == "sugar; also, not weighed: **milk**"


def test_the_tail_needs_both_weights() -> None:
    # 20 of 1005 g raw is under 2 %, 20 of 900 g finished is not.
    lines = (line("sugar", 985), line("table salt", 20))
    assert listed(*lines) == "sugar, contains 2% or less of salt"
    assert listed(*lines, finished=900) == "sugar, salt"


def test_a_component_brings_its_own_list() -> None:
    inner = bake(line("sugar", 40), line("orange zest", 100), name="candied-zest")
    outer = bake(line("bread flour", 500), line("candied zest", 50, component="candied-zest"))
    found = marked(told(outer, inner).ingredients)
    assert found.startswith("wheat flour, candied zest (orange")
    assert found.endswith(", sugar)")


def test_a_precaution_stays_for_other_nuts() -> None:
    chips = pack("chocolate chips", "Chocolate chips [sugar, cocoa mass; may contain tree nuts, almonds]")
    formula = bake(line("chocolate chips", 100, chips), line("almonds", 50))
    for region, words in (("US", "other tree nuts"), ("EU", "other nuts")):
        declaration = told(formula, region=region)
        assert declaration.may_contain == ("tree nuts",)
        assert marked(declaration.may_line) == f"May contain **{words}**."


def test_a_contained_class_word_leaves_the_label_unfinished_where_the_kind_must_be_named() -> None:
    brittle = pack("nut brittle", "Nut brittle (sugar, nuts)")
    for region in ("US", "EU"):
        declaration = told(bake(line("nut brittle", 50, brittle)), region=region)
        assert declaration.contains == ("tree nuts",)
        assert not declaration.finished
        assert "nut brittle" in declaration.unfinished


def test_fish_is_a_name_in_the_eu_and_none_in_the_us() -> None:
    sauce = pack("umami paste", "Umami paste (fish, salt)")
    formula = bake(line("umami paste", 10, sauce))
    assert not told(formula).finished
    assert told(formula, region="EU").finished


def test_a_region_declares_its_own_list_only() -> None:
    formula = bake(line("rye flour", 300), line("pine nuts", 20), line("mustard powder", 2))
    assert told(formula).contains == ("pine nut",)
    assert told(formula, region="EU").contains == ("rye", "mustard")


def test_the_eu_has_no_second_line_and_the_us_has_one() -> None:
    formula = bake(line("butter", 100))
    assert told(formula, region="EU").contains_line == ()
    assert marked(told(formula).contains_line) == "**Contains: milk**."


def test_sulphites_are_seen_in_a_us_list_and_not_in_its_contains_line() -> None:
    apricots = pack("dried apricots", contains=["sulphites"])
    declaration = told(bake(line("dried apricots", 100, apricots)))
    assert marked(declaration.ingredients) == "dried apricots (sulfites)"
    assert declaration.contains == ()
    assert declaration.contains_line == ()


def test_water_in_the_eu_is_what_stays() -> None:
    lines = (line("bread flour", 100), line("water", 60))
    assert listed(*lines, region="EU") == "**wheat** flour, water"
    assert listed(line("bread flour", 100), line("water", 150), region="EU", finished=150) == (
        "**wheat** flour, water"
    )
    assert listed(*lines, region="EU", finished=105) == "**wheat** flour"
    assert listed(*lines, finished=105) == "wheat flour, water"


def test_the_kitchen_speaks_in_a_sentence_of_its_own() -> None:
    formula = bake(line("butter", 100))
    declaration = declare(
        formula, book=book(formula), region="US", kitchen_handles=("milk", "almonds", "nuts", "pollen")
    )
    assert declaration.may_contain == ()
    assert "Made in a home kitchen that also handles almond, tree nuts and pollen." in declaration.statement
    assert kitchen_sentence(("milk",), contains=("milk",), region="US") == ""


def test_the_statement_is_all_of_it_in_plain_text() -> None:
    chips = pack("chocolate chips", "Chocolate chips [sugar, milkfat; may contain peanuts]")
    formula = bake(line("chocolate chips", 100, chips), line("gelatin", 5))
    assert told(formula).statement == (
        "Ingredients: chocolate chips [sugar, milkfat], gelatin. CONTAINS: MILK. May contain PEANUTS. "
        "This declaration is not finished. Still to be read: gelatin."
    )
    assert told(formula, region="EU").statement == (
        "Ingredients: chocolate chips [sugar, MILKfat], gelatine. May contain PEANUTS. "
        "This declaration is not finished. Still to be read: gelatin."
    )


def test_a_bake_without_a_formula_declares_nothing_and_says_that_it_is_not_finished() -> None:
    declaration = told(bake())
    assert declaration.ingredients == ()
    assert declaration.statement == "This declaration is not finished: the bake has no formula yet."
