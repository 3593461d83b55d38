"""`recipe.json`: exact numbers, keys in their order."""

import json
from fractions import Fraction
from types import MappingProxyType

import pytest

from generator.render.recipe_json import render_recipe_json


def test_whole_numbers_stay_whole_and_fractions_become_doubles() -> None:
    data = {
        "name": "x",
        "grams": (Fraction(1, 3), Fraction(430)),
        "parts": [MappingProxyType({"b": 2, "a": None})],
    }
    product = render_recipe_json("plum-braid", data)
    assert product.path == "site/recipes/plum-braid/recipe.json"
    assert product.content.decode("utf-8") == (
        '{\n "name": "x",\n "grams": [\n  0.3333333333333333,\n  430.0\n ],\n "parts": [\n'
        '  {\n   "b": 2,\n   "a": null\n  }\n ]\n}\n'
    )


@pytest.mark.parametrize("value", [Fraction(45359237, 1000), Fraction(1, 7), Fraction(2, 3) * 1000])
def test_a_number_read_back_is_the_nearest_double(value: Fraction) -> None:
    read = json.loads(render_recipe_json("x", {"v": value}).content)["v"]
    assert read == float(value)


def test_letters_and_truth_values_stay_what_they_are() -> None:
    content = render_recipe_json("x", {"volume": "3⅓ cups", "counts": True, "revision": 2}).content
    assert json.loads(content) == {"volume": "3⅓ cups", "counts": True, "revision": 2}
    assert "3⅓".encode() in content


def test_what_is_no_number_is_refused() -> None:
    with pytest.raises(ValueError, match="JSON compliant"):
        render_recipe_json("x", {"v": float("nan")})
    with pytest.raises(TypeError):
        render_recipe_json("x", {"v": {1, 2}})
