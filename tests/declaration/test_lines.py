"""What one line carries: the union of everything said, and every doubt as a sentence."""

from dataclasses import replace

import pytest

from generator.declaration.lines import formula_allergens, line_allergens, line_and_choices
from tests.declaration.bakes import bake, book, extra, line, pack


def test_catalogue_pack_and_label_add_up() -> None:
    flour = pack("bread flour", "Bread flour (wheat flour, malted barley flour)", contains=["soy"])
    carried = line_allergens(line("bread flour", 430, flour), book={})
    assert carried.allergens == ("barley", "soy", "wheat")
    assert carried.unknown == ()
    assert {(each.allergen, each.source) for each in carried.traces} == {
        ("wheat", "label of bread flour"),
        ("barley", "label of bread flour"),
        ("wheat", "catalogue"),
        ("soy", "pantry entry of bread flour"),
    }


def test_a_precaution_is_dropped_for_the_same_allergen_only() -> None:
    row = pack(
        "ground almonds", "Ground almonds. May contain tree nuts, almonds, peanuts.", contains=["almond"]
    )
    carried = line_allergens(line("ground almonds", 100, row), book={})
    assert carried.allergens == ("almond",)
    assert carried.may_contain == ("peanut", "tree nuts")


def test_a_class_word_sums_up_the_kind_that_the_same_thing_is_known_to_hold() -> None:
    carried = line_allergens(line("pistachios", 50, pack("pistachios", contains=["tree nuts"])), book={})
    assert carried.allergens == ("pistachio",)


@pytest.mark.parametrize("item", ["gelatin", "margarine", "chocolate chips", "fondant"])
def test_what_the_catalogue_asks_is_unknown_until_the_pack_is_read(item: str) -> None:
    assert line_allergens(line(item), book={}).unknown
    assert not line_allergens(line(item, 10, pack(item, contains=["milk"])), book={}).unknown


def test_a_reason_is_a_sentence() -> None:
    carried = line_allergens(line("gelatin"), book={})
    assert carried.unknown == ("Gelatin may be made of fish: read its pack.",)


def test_a_label_that_only_repeats_the_name_answers_nothing() -> None:
    assert line_allergens(line("margarine", 100, pack("margarine", "Margarine")), book={}).unknown
    told = pack("margarine", "Margarine (rapeseed oil, water, salt)")
    assert line_allergens(line("margarine", 100, told), book={}).unknown == ()


def test_a_word_on_the_label_that_must_be_asked_about_is_a_reason() -> None:
    row = pack("bread flour", "Bread flour (wheat flour, natural flavor)")
    assert line_allergens(line("bread flour", 400, row), book={}).unknown == (
        "Bread flour: “natural flavor” does not say what carries it or what it is made from; read the pack "
        "and say in the pantry what it contains.",
    )
    answered = replace(row, contains=("wheat",), contains_given=True)
    assert line_allergens(line("bread flour", 400, answered), book={}).unknown == ()


def test_a_thing_of_the_makers_own_is_unknown_until_its_pack_is_stated() -> None:
    row = pack("hazelnut crunch from the market")
    carried = line_allergens(line("hazelnut crunch from the market", 50, row), book={})
    assert carried.allergens == ("hazelnut",)  # the name itself says so
    assert carried.unknown == ("Hazelnut crunch from the market: say in the pantry what its pack contains.",)


def test_an_item_that_nobody_knows_is_unknown() -> None:
    assert line_allergens(line("moon dust"), book={}).unknown == (
        "Moon dust is not known, so what it holds is not known.",
    )


def test_a_component_carries_all_that_touches_it() -> None:
    inner = bake(
        line("sugar", 100),
        line("walnuts", 20, optional=True),
        line("milk", 200, kept=0),
        line("butter", 50, alternatives=(line("tahini", 50),)),
        uses=(extra("semolina"),),
        name="filling",
    )
    outer = bake(line("filling", 80, component="filling"))
    carried = line_allergens(outer.lines[0], book=book(inner, outer))
    assert carried.allergens == ("milk", "sesame", "walnut", "wheat")
    assert {each.item for each in carried.traces} == {"filling"}
    assert all(each.source.startswith("recipe filling: ") for each in carried.traces)


def test_components_reach_through_components_and_a_circle_ends() -> None:
    deep = bake(line("eggs", 50), line("top", 10, component="top"), name="deep")
    middle = bake(line("deep", 50, component="deep"), name="middle")
    top = bake(line("middle", 50, component="middle"), line("almonds", 5), name="top")
    everything = book(deep, middle, top)
    assert formula_allergens(top, book=everything).allergens == ("almond", "egg")


def test_a_component_that_is_not_there_is_unknown() -> None:
    carried = line_allergens(line("jam", 50, component="plum-jam"), book={})
    assert carried.unknown[0] == "The recipe “plum-jam” is not there, so what jam holds is not known."


def test_alternatives_are_lines_of_their_own() -> None:
    butter = line("butter", 100, alternatives=(line("peanut butter", 100),))
    assert line_allergens(butter, book={}).allergens == ("milk",)
    assert line_and_choices(butter, book={}).allergens == ("milk", "peanut")


def test_what_every_region_excepts_is_not_carried() -> None:
    oil = pack("frying oil", "Fully refined soybean oil", contains=[])
    assert line_allergens(line("frying oil", 20, oil), book={}).allergens == ()
    rough = pack("frying oil", "Highly refined soybean oil", contains=[])
    assert line_allergens(line("frying oil", 20, rough), book={}).allergens == ("soy",)
