"""Lists with amounts for several sizes, and with a baker's shares: one amount is taken, and what was left is told."""

import pytest

from generator.importer.line.measures import stretches
from generator.importer.model import Brought
from tests.importer.kitchen import stock
from tests.importer.test_shapes import amounts, read

STEPS = "\n\nMethod\n\n1. Mix everything well.\n2. Bake for 1 hour 15 minutes.\n"
SMALL = [("200 g", "flour", ""), ("100 g", "sugar", ""), ("50 g", "butter", "melted"), ("1", "egg", "")]
LARGE = [("400 g", "flour", ""), ("200 g", "sugar", ""), ("100 g", "butter", "melted"), ("2", "egg", "")]

DRESSES = {
    "slashes": ("200 g / 400 g flour", "100 g / 200 g sugar", "50 g / 100 g butter, melted", "1 / 2 egg"),
    "brackets": ("200 g (400 g) flour", "100 g (200 g) sugar", "50 g (100 g) butter, melted", "1 (2) egg"),
    "brackets behind": (
        "200 g flour (400 g)",
        "100 g sugar (200 g)",
        "50 g butter (100 g), melted",
        "1 egg (2)",
    ),
    "columns": (
        "flour     200 g    400 g",
        "sugar     100 g    200 g",
        "butter, melted  50 g   100 g",
        "egg   1   2",
    ),
    "cells": (
        "| flour | 200 g | 400 g |",
        "| sugar | 100 g | 200 g |",
        "| butter, melted | 50 g | 100 g |",
        "| egg | 1 | 2 |",
    ),
    "twice": (
        "200 g flour / 400 g flour",
        "100 g sugar / 200 g sugar",
        "50 g / 100 g butter, melted",
        "1 egg / 2 egg",
    ),
}


def list_of(lines: tuple[str, ...], head: str = "", more: str = "") -> str:
    return "\n".join(("Honey bread", "", "Ingredients", "", head, *lines)) + STEPS + more


def asked(brought: Brought, code: str) -> list[str]:
    return [each.message for each in brought.doubts if each.code == code]


@pytest.mark.parametrize("lines", DRESSES.values(), ids=DRESSES)
def test_one_size_is_taken_for_all_lines_and_asked_about_once(lines: tuple[str, ...]) -> None:
    brought = read(list_of(lines))
    assert amounts(brought) == SMALL
    assert len(asked(brought, "I014")) == 1
    assert ["400 g" in each.note for each in brought.lines] == [True, False, False, False]
    assert all(each.note for each in brought.lines)
    assert brought.text.count("\n# ?") == 1
    assert "1 h 15 min" in brought.text


@pytest.mark.parametrize(
    ("head", "more"),
    [
        ("Ingredient | half | full", ""),
        ("Ingredient | for 6 | for 12", "\n\nMakes 12 slices"),
        ("Ingredient | small tin | large tin", "\n\nThe large tin makes 12 slices."),
    ],
)
def test_the_size_that_words_mark_as_the_recipe_is_taken(head: str, more: str) -> None:
    assert amounts(read(list_of(DRESSES["cells"], head, more))) == LARGE


def test_what_only_one_size_has_is_told() -> None:
    lines = (*DRESSES["cells"], "| walnuts | | 50 g |")
    brought = read(list_of(lines, "| | Single | Double |"))
    assert amounts(brought) == [*SMALL, ("50 g", "walnuts", "")]
    assert len(asked(brought, "I001")) == 1
    assert "walnuts" in asked(brought, "I001")[0]


@pytest.mark.parametrize(
    "lines",
    [
        (
            "4 oz (115 g) butter",
            "8 oz / 225 g flour",
            "1 cup (240 ml) milk",
            "250 g sugar, plus 50 g for dusting",
        ),
        ("1 tbsp (20 ml) oil", "2 tbsp (40 ml) honey", "3 tbsp (60 ml) milk", "1 cup (200 ml) water"),
        ("100 g flour, plus 20 g for dusting", "2 tsp salt", "3 eggs or 150 g egg", "250 g butter"),
    ],
)
def test_the_same_amount_said_twice_is_no_two_sizes(lines: tuple[str, ...]) -> None:
    assert asked(read(list_of(lines)), "I014") == []


SHARES = {
    "cells": (
        "| Ingredient | Weight | Share |",
        "| flour | 500 g | 100 |",
        "| water | 350 g | 70 |",
        "| honey | 20 g | – |",
    ),
    "a unit in the head": (
        "Ingredient | Weight (g) | %",
        "flour | 500 | 100",
        "water | 350 | 70",
        "honey | 20 | -",
    ),
    "behind": ("", "flour 500 g 100%", "water 350 g 70%", "honey 20 g 4 %"),
    "before": ("", "100 % flour 500 g", "70 % water 350 g", "4 % honey 20 g"),
}


@pytest.mark.parametrize("lines", SHARES.values(), ids=SHARES)
def test_shares_are_no_amounts_and_no_words(lines: tuple[str, ...]) -> None:
    brought = read(list_of(lines[1:], lines[0]))
    assert amounts(brought) == [("500 g", "flour", ""), ("350 g", "water", ""), ("20 g", "honey", "")]
    assert brought.lines[1].note.replace(" ", "") == "70%"
    assert brought.doubts == ()


def test_the_measures_of_a_line_stand_where_they_are_said_to() -> None:
    text = "1. dark chocolate 70 %   1 1/2 heaped tsp  3 heaped tsp"
    found = stretches(text, stock())
    assert [text[each.start : each.end] for each in found] == ["1 1/2 heaped tsp", "3 heaped tsp"]
    assert found[1].amount == 2 * found[0].amount
