"""Checks of method prose and temperatures: useful, and quiet about a baker's ordinary words."""

import pytest

from tests.formula.kitchen import bake, recipe

LINES = """
dough:
  - 500 g bread flour
  - 300 g water
  - 60 g unsalted butter
  - 3 eggs
  - 1 lemon
  - 10 g table salt
"""
ALL = "{bread flour} {water} {unsalted butter} {eggs} {lemon} {table salt}"


def _found(sentence: str, lines: str = LINES, used: str = ALL) -> list[tuple[str, str]]:
    return [
        (each.code, each.message) for each in bake(bake=recipe(lines, f"1. {used}. {sentence}")).diagnostics
    ]


@pytest.mark.parametrize(
    ("sentence", "name"),
    [
        ("Sprinkle with cinnamon.", "cinnamon"),
        ("Stir in the honey.", "honey"),
        ("Fold in walnuts and raisins.", "walnuts"),
        ("Brush with heavy cream.", "heavy cream"),
        ("Add milk if it is stiff.", "milk"),
        ("Dust with icing sugar.", "icing sugar"),
        ("A little baking powder helps.", "baking powder"),
        ("Roll in the sprinkles.", "sprinkles"),
        ("Scatter the dates over it.", "dates"),
        ("Dust with granulated sugar and cocoa.", "granulated sugar"),
        ("Oil the bowl with olive oil.", "olive oil"),
    ],
)
def test_an_ingredient_that_only_the_prose_knows_is_a_warning(sentence: str, name: str) -> None:
    found = _found(sentence)
    assert ("R032", f"{name} is neither in the formula nor in braces") in found
    assert {code for code, _ in found} == {"R032"}


@pytest.mark.parametrize(
    "sentence",
    [
        "Mix the flour, the butter and the salt.",
        "Whisk the egg whites, then the yolks.",
        "Add the lemon juice and the zest.",
        "Butter the tin and flour it.",
        "Grease and sugar the dish.",
        "Oil your hands.",
        "Lightly oil the board.",
        "Cream the butter until pale.",
        "Season to your liking, sprinkle over the top, dust the loaf.",
        "Peel and zest it, then ice the cake.",
        "Cover with a tea towel.",
        "Clip a sugar thermometer to the pan.",
        "Bake it on a cookie sheet, beside a bread knife.",
        "Bake until chestnut brown and honey coloured.",
        "Take pieces the size of a walnut.",
        "This works without milk, with no sugar.",
        "The bread is done.",
        "Cook it to a deep caramel.",
        "Write the date on the bag.",
        "Set it in a water bath.",
        "Watch the port of your oven.",
        "Give it a turn, and rest it.",
        "{10 g of honey} may be added; the honey browns it.",
    ],
)
def test_verbs_tools_and_what_is_left_out_are_no_ingredients(sentence: str) -> None:
    assert _found(sentence) == []


def test_a_caution_may_name_what_it_warns_of() -> None:
    text = recipe(LINES, f"1. {ALL}\n\nCaution: Never give honey to an infant.")
    assert bake(bake=text).codes == []


def test_what_is_written_in_either_number_or_in_the_title_is_known() -> None:
    assert _found("Shell the pecan halves.", lines="- 50 g pecans", used="{pecans}") == []
    text = recipe("- 500 g bread flour", "1. {bread flour}. Cut the honey cake.").replace(
        "A test bake", "Honey cake"
    )
    assert bake(bake=text).codes == []


@pytest.mark.parametrize(
    ("sentence", "code", "message"),
    [
        ("Add 20 g more.", "R030", "“20 g” stands outside braces and would not follow a correction"),
        (
            "Add 1 1/2 tsp more.",
            "R030",
            "“1 1/2 tsp” stands outside braces and would not follow a correction",
        ),
        ("Add ½ cup more.", "R030", "“½ cup” stands outside braces and would not follow a correction"),
        ("Bake at 350 F.", "R031", "the temperature “350 F” stands outside braces"),
        ("Bake at 350°F.", "R031", "the temperature “350°F” stands outside braces"),
        ("Bake at 180 degrees.", "R031", "the temperature “180 degrees” stands outside braces"),
        ("Bake at gas mark 4.", "R031", "the temperature “gas mark 4” stands outside braces"),
    ],
)
def test_bare_amounts_and_temperatures_are_warnings(sentence: str, code: str, message: str) -> None:
    assert (code, message) in _found(sentence)


@pytest.mark.parametrize(
    "sentence",
    [
        "Make 3 cuts, 2 in each side.",
        "Slash it at 45 degrees.",
        "Turn it after 5 minutes.",
        "Divide it into 12 pieces, in 2 batches.",
        "Roll it out to a 30 cm round.",
    ],
)
def test_counts_angles_and_lengths_are_no_amounts(sentence: str) -> None:
    assert _found(sentence) == []


def test_ounces_of_a_liquid_are_asked_about() -> None:
    assert bake(bake=recipe("- 8 oz milk")).codes.count("F035") == 1
    assert "F035" not in bake(bake=recipe("- 8 fl oz milk")).codes
    assert "F035" not in bake(bake=recipe("- 8 oz (227 g) milk")).codes
    assert "F035" not in bake(bake=recipe("- 8 oz bread flour")).codes


def test_places_in_prose_are_exact() -> None:
    found = bake(bake=recipe("- 500 g bread flour", "1. Mix {bread flour} with *cinnamon* well.")).diagnostics
    (only,) = found
    assert (only.span.line, only.span.column, only.span.end_column) == (8, 28, 36)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("oven 350 F", []),
        ("oven 90 C", []),
        ("oven gas 4", []),
        ("oven 350 C", ["no home oven is set to 350 °C"]),
        ("oven 30 C", ["no home oven is set to 30 °C"]),
        ("core 88 C", []),
        ("core 190 F", []),
        ("core 190 C", ["no finished bake is 190 °C inside"]),
        ("core 93 F", ["no finished bake is 93 °F inside"]),
        ("240 F", []),
        ("-18 C", []),
    ],
)
def test_temperatures_out_of_reach(text: str, found: list[str]) -> None:
    diagnostics = bake(bake=recipe("- 500 g bread flour", f"1. {{bread flour}} {{{text}}}")).diagnostics
    assert [each.message for each in diagnostics if each.code == "T003"] == found
