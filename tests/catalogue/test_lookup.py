"""Ingredients by the name a baker writes."""

import pytest

from generator.catalogue.ingredient import Ingredient
from generator.catalogue.load import built_in
from generator.catalogue.lookup import Catalogue


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("Egg Yolks", "egg yolk"),
        ("All Purpose Flour", "all-purpose flour"),
        ("confectioners’ sugar", "icing sugar"),
        ("creme fraiche", "crème fraîche"),
        ("2% milk", "reduced-fat milk"),
        ("warm water", "water"),
        ("lukewarm milk", "whole milk"),
        ("room-temperature eggs", "egg"),
        ("cold unsalted butter", "unsalted butter"),
        ("melted butter", "butter"),
        ("lightly beaten egg white", "egg white"),
        ("organic rolled oats", "rolled oats"),
        ("ripe bananas", "banana"),
        ("freshly squeezed lemon juice", "lemon juice"),
        ("fresh thyme", "fresh thyme"),
        ("raspberry", "raspberries"),
        ("cornflour", "cornstarch"),
        ("double cream", "double cream"),
    ],
)
def test_found(written: str, name: str) -> None:
    found = built_in().find(written)
    assert found is not None
    assert found.name == name


@pytest.mark.parametrize(
    "written",
    # The salt, the fat, the malt or the drying would be a guess; "hot chocolate" is a drink.
    ["yeast", "cream", "vinegar", "thyme", "nuts", "fresh sage", "hot chocolate", "unbleached", ""],
)
def test_not_guessed(written: str) -> None:
    assert built_in().find(written) is None


def test_the_nearest_are_printed_names() -> None:
    assert built_in().nearest("thyme") == ("fresh thyme", "dried thyme")
    assert built_in().nearest("bred flour")[0] == "bread flour"
    assert built_in().nearest("zzzz") == ()


@pytest.mark.parametrize(
    ("written", "name", "form"),
    [
        ("finely chopped walnuts", "walnuts", "chopped"),
        ("packed light brown sugar", "light brown sugar", "packed"),
        ("sifted icing sugar", "icing sugar", "sifted"),
        ("walnuts", "walnuts", ""),
        ("ground almonds", "ground almonds", ""),
    ],
)
def test_the_form_a_name_is_written_with(written: str, name: str, form: str) -> None:
    found = built_in().find_form(written)
    assert found is not None
    assert (found[0].name, found[1]) == (name, form)


def test_a_form_the_row_does_not_know_is_not_dropped() -> None:
    assert built_in().find_form("candied walnuts") is None


def test_every_printed_name_and_plural_is_found() -> None:
    catalogue = built_in()
    assert [row.name for row in catalogue if catalogue.find(row.name) is not row] == []
    assert [row.name for row in catalogue if catalogue.find(row.plural) is not row] == []


def test_two_rows_never_answer_to_one_name() -> None:
    one, other = (Ingredient(name=each, names=("flour",)) for each in ("a", "b"))
    with pytest.raises(ValueError, match="'flour' names both 'a' and 'b'"):
        Catalogue((one, other))
