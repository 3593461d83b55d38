"""The text of a line with another amount: the measure that is meant, and those that follow it."""

import pytest

from generator.amend.answer import Refused
from generator.amend.line_amount import rewrite
from generator.amend.line_spots import replaced
from generator.amend.typed import read_typed
from tests.formula.kitchen import formula_of, recipe, shelf

SHELF = shelf()


def corrected(text: str, typed: str, *, beside: str = "- 500 g bread flour") -> str:
    """The line's new text; or why there is none, after an exclamation mark."""
    formula = formula_of(recipe(f"- {text}\n{beside}"))
    line = formula.lines[0]
    read = read_typed(typed, item=line.item, spoons=SHELF.spoons)
    if isinstance(read, Refused):
        return f"! {read.message}"
    written = rewrite(text, line, read, shelf=SHELF)
    if isinstance(written, Refused):
        return f"! {written.message}"
    return replaced(text, written.pieces)


@pytest.mark.parametrize(
    ("text", "typed", "expected"),
    [
        ("240 g water, cool", "250 g", "250 g water, cool"),
        ("240g water", "250 g", "250g water"),
        ("240 grams water", "250 g", "250 grams water"),
        ("240 g water", "250 g of water", "250 g water"),
        ("240 g water", "0.25 kg", "0.25 kg water"),
        ("1 lb 4 oz bread flour", "1 lb 6 oz", "1 lb 6 oz bread flour"),
        ("1 cup water", "2 cups", "2 cups water"),
        ("2 cups water", "1 cup", "1 cup water"),
        ("2 Tablespoons water", "1 tbsp", "1 Tablespoon water"),
        ("1,5 tsp table salt", "1,75 tsp", "1.75 tsp table salt"),
        ("1 1/2 tsp table salt", "1 3/4 tsp", "1 3/4 tsp table salt"),
        ("1 heaped tsp honey", "2 tsp", "2 heaped tsp honey"),
        ("20-25 g honey", "25-30 g", "25-30 g honey"),
        ("20 g honey", "20 to 25 g", "20 to 25 g honey"),
        ("2 large eggs", "3", "3 large eggs"),
        ("2 cloves garlic", "3", "3 cloves garlic"),
        ("half a lemon", "1", "1 lemon"),
        ("240 g water", "1 cup", "1 cup water"),
    ],
)
def test_the_one_measure_is_replaced_in_the_spelling_of_the_line(
    text: str, typed: str, expected: str
) -> None:
    assert corrected(text, typed) == expected


@pytest.mark.parametrize(
    ("text", "typed", "expected"),
    [
        ("430 g (3 1/3 cups) bread flour", "460 g", "460 g (3 2/3 cups) bread flour"),
        ("430 g (3⅓ cups) bread flour", "460 g", "460 g (3⅔ cups) bread flour"),
        ("430 g (3 ⅓ cups) bread flour", "460 g", "460 g (3 ⅔ cups) bread flour"),
        ("250 g (2.0 cups) bread flour", "300 g", "300 g (2.4 cups) bread flour"),
        ("3 1/3 cups (430 g) bread flour", "500 g", "4 cups (500 g) bread flour"),
        ("3 1/3 cups (430 g) bread flour", "3 1/2 cups", "3 1/2 cups (438 g) bread flour"),
        ("bread flour (430 g)", "450 g", "bread flour (450 g)"),
        ("15 oz (425 g) pumpkin puree", "450 g", "15.9 oz (450 g) pumpkin puree"),
        (
            "115 g/8 tbsp/1 stick unsalted butter",
            "230 g",
            "230 g/16¼ tbsp/2 sticks unsalted butter",
        ),
        ("500 ml (2 cups plus 2 tbsp) whole milk", "600 ml", "600 ml (2 1/2 cups) whole milk"),
        ("240 ml water (1 cup)", "300 ml", "300 ml water (1 1/4 cups)"),
        ("7 g (1 packet) instant yeast", "14 g", "14 g (2 packets) instant yeast"),
        ("2 (150 g each) apples", "3", "3 (150 g each) apples"),
        ("1 (14 oz) can coconut milk", "2", "2 (14 oz) can coconut milk"),
        ("3 eggs (150 g)", "200 g", "4 eggs (200 g)"),
        ("3 eggs (150 g)", "4", "4 eggs (200 g)"),
        ("1 onion (150 g)", "180 g", "1 onion (180 g)"),
    ],
)
def test_another_measure_follows_in_its_own_notation(text: str, typed: str, expected: str) -> None:
    assert corrected(text, typed) == expected


@pytest.mark.parametrize(
    ("text", "typed", "expected"),
    [
        ("a pinch of table salt", "2 g", "2 g table salt"),
        ("a pinch of table salt", "two pinches", "two pinches of table salt"),
        ("table salt, to taste", "5 g", "5 g table salt"),
        ("bread flour, for dusting", "30 g", "30 g bread flour, for dusting"),
        ("5 g table salt", "a pinch", "! “a pinch” cannot be weighed, and table salt is 5 g"),
        ("a pinch of table salt", "A Pinch", "! table salt is “A Pinch” already"),
    ],
)
def test_words_give_way_to_a_measure_and_never_a_measure_to_words(
    text: str, typed: str, expected: str
) -> None:
    assert corrected(text, typed) == expected


@pytest.mark.parametrize(
    ("text", "typed", "expected"),
    [
        ("65% water", "63 %", "63% water"),
        ("65% water", "330 g", "66% water"),
        ("65% water (325 g)", "340 g", "68% water (340 g)"),
        ("65% water (325 g)", "66%", "66% water (330 g)"),
        ("65% water", "65 %", "! water is 65 % already"),
        ("240 g water", "60 %", "! water is not given in percent but as “240 g”"),
    ],
)
def test_a_percentage_and_the_weight_beside_it_go_together(text: str, typed: str, expected: str) -> None:
    assert corrected(text, typed) == expected


@pytest.mark.parametrize(
    ("text", "typed", "expected"),
    [
        ("240 g water", "250", "! “250” of what? water stands there as 240 g"),
        ("240 g water", "240 g", "! water is 240 g already"),
        ("240 g water", "0.24 kg", "! water is 240 g already"),
        ("240 g water", "2 eggs", "! “2 eggs” is no amount"),
        ("240 g water", "0 g", "! “0 g” is nothing"),
        ("240 g water", "-5 g", "! “-5 g” is no amount"),
        ("240 g water", "50-40 g", "! “50-40 g” is no amount"),
        ("240 g water", "11/2 cups", "! “11/2 cups” can be read in two ways"),
        ("240 g water", "250 g (1 cup)", "! “250 g (1 cup)” is two measures"),
        ("240 g water", "٣ g", "! “٣ g” is no amount"),
        ("240 g water", "250 g\n- 5 g salt", "! “250 g - 5 g salt” is no amount"),
        ("2 large eggs", "100 g", "! “100 g” is another kind of amount than “2 eggs”"),
        ("2 (150 g each) apples", "200 g", "! “200 g” is another kind of amount than “2, 150 g apples”"),
        ("240 g water", "x" * 5000, f"! “{'x' * 60}” is no amount"),
    ],
)
def test_what_cannot_be_is_refused_in_words(text: str, typed: str, expected: str) -> None:
    assert corrected(text, typed) == expected
