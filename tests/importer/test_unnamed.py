"""Whatever is not found as an ingredient is still looked at for the allergens that its words name."""

import pytest

from generator.asked.incoming import arrive
from generator.importer.model import Brought
from tests.importer.kitchen import kitchen

LIST = "Oat bars\n\nIngredients\n200 g rolled oats\n100 g honey\n\nMethod\n1. Mix the oats and honey.\n"


def brought(text: str) -> Brought:
    (recipe,) = arrive("old.txt", text.encode(), kitchen()).recipes
    return recipe


def asked(text: str) -> list[str]:
    return [each.message for each in brought(text).doubts if each.code == "I013"]


@pytest.mark.parametrize(
    ("more", "name", "allergen"),
    [
        ("2. Brush the bars with melted butter and bake them.\n", "melted butter", "milk"),
        ("2. Bake.\n\nNotes\nA spoon of tahini makes them chewy.\n", "tahini", "sesame"),
        ("2. Bake.\n\nNotes\nwalnuts @@ fifty grams @@ whole\n", "walnuts", "walnut"),
    ],
)
def test_a_food_that_no_line_has_is_asked_about(more: str, name: str, allergen: str) -> None:
    message = f"the text names “{name}”, and no ingredient that was read has {allergen}"
    assert asked(LIST + more) == [message]
    assert f"# ? {message}." in brought(LIST + more).text


def test_what_a_line_has_is_not_asked_about() -> None:
    assert asked(LIST + "2. Press the rolled oats flat and bake.\n") == []
    assert asked(LIST.replace("100 g honey", "100 g honey\n50 g butter") + "2. Melt the butter.\n") == []
    assert asked(LIST.replace("100 g honey", "100 g honey or 60 g tahini") + "2. Stir in tahini.\n") == []


def test_a_food_that_the_title_names_is_asked_about() -> None:
    message = "the text names “Walnut”, and no ingredient that was read has walnut"
    assert asked(LIST.replace("Oat bars", "Walnut bars")) == [message]


def test_tags_and_links_say_nothing_of_what_is_in_it() -> None:
    more = "2. Bake.\n\n#walnuts #butter\n\nLinks\nhttps://shop.example/butter Butter dish\n"
    assert asked(LIST + more) == []
