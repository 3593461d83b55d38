"""Each form of an ingredient line, read from its text alone."""

from fractions import Fraction

import pytest

from generator.formula.line import read_line
from generator.measure.unit import SPOONS
from tests.formula.kitchen import place, written

F = Fraction
Measure = tuple[float, float, str]


def _measures(text: str) -> list[Measure]:
    return [
        (float(each.amount.low), float(each.amount.high), each.unit.name if each.unit else "")
        for each in written(text).measures
    ]


@pytest.mark.parametrize(
    ("amount", "low", "high"),
    [
        ("2", 2, 2),
        ("1/2", 0.5, 0.5),
        ("1 1/2", 1.5, 1.5),
        ("1-1/2", 1.5, 1.5),
        ("½", 0.5, 0.5),
        ("1½", 1.5, 1.5),
        ("1 ½", 1.5, 1.5),
        ("1⁄2", 0.5, 0.5),
        ("1.5", 1.5, 1.5),
        ("20-25", 20, 25),
        ("1–1½", 1, 1.5),
        ("20 to 25", 20, 25),
        ("half a", 0.5, 0.5),
    ],
)
def test_a_quantity_is_read_as_a_home_baker_writes_it(amount: str, low: float, high: float) -> None:
    assert _measures(f"{amount} cup water") == [(low, high, "cup")]
    assert written(f"{amount} cup water").item == "water"


@pytest.mark.parametrize(
    ("text", "measures", "item", "preparation", "note"),
    [
        ("240 g water, cool", [(240, 240, "g")], "water", "cool", ""),
        ("2 egg yolks", [(2, 2, "")], "egg yolks", "", ""),
        ("430 g (3 1/3 cups) bread flour", [(430, 430, "g"), (10 / 3, 10 / 3, "cup")], "bread flour", "", ""),
        ("430 g bread flour (3 1/3 cups)", [(430, 430, "g"), (10 / 3, 10 / 3, "cup")], "bread flour", "", ""),
        (
            "3¾ cups (450 g) all-purpose flour",
            [(3.75, 3.75, "cup"), (450, 450, "g")],
            "all-purpose flour",
            "",
            "",
        ),
        ("1-1/2 cups lukewarm milk", [(1.5, 1.5, "cup")], "lukewarm milk", "", ""),
        ("1–1½ cups warm water, as needed", [(1, 1.5, "cup")], "warm water", "as needed", ""),
        (
            "2¼ tsp (1 packet / 7 g) instant yeast",
            [(2.25, 2.25, "tsp"), (1, 1, "packet"), (7, 7, "g")],
            "instant yeast",
            "",
            "",
        ),
        ("115g/8 tbsp/1 stick butter", [(115, 115, "g"), (8, 8, "tbsp"), (1, 1, "stick")], "butter", "", ""),
        ("115 g / 8 tbsp butter", [(115, 115, "g"), (8, 8, "tbsp")], "butter", "", ""),
        (
            "½ stick (55 g) unsalted butter, melted and cooled",
            [(0.5, 0.5, "stick"), (55, 55, "g")],
            "unsalted butter",
            "melted and cooled",
            "",
        ),
        (
            "100 g/3½ oz dark chocolate (70%), chopped",
            [(100, 100, "g"), (3.5, 3.5, "oz")],
            "dark chocolate",
            "chopped",
            "70%",
        ),
        ("1 cup pecans, chopped", [(1, 1, "cup")], "pecans", "chopped", ""),
        ("1 cup chopped pecans", [(1, 1, "cup")], "chopped pecans", "", ""),
        (
            "4 large eggs, 3 separated, at room temperature",
            [(4, 4, "")],
            "eggs",
            "3 separated, at room temperature",
            "",
        ),
        ("¾ cup + 2 tbsp water (207 g)", [(0.875, 0.875, "cup"), (207, 207, "g")], "water", "", ""),
        ("2 cups flour, divided", [(2, 2, "cup")], "flour", "divided", ""),
        ("1 cup water at 105–115°F", [(1, 1, "cup")], "water", "at 105–115°F", ""),
        ("4 eggs at room temperature", [(4, 4, "")], "eggs", "at room temperature", ""),
        ("1 cup (packed) light brown sugar", [(1, 1, "cup")], "light brown sugar", "", ""),
        ("1 lb. 4 oz. bread flour (567 g)", [(1.25, 1.25, "lb"), (567, 567, "g")], "bread flour", "", ""),
        ("500 g 00 flour", [(500, 500, "g")], "00 flour", "", ""),
        ("1 cup 2% milk", [(1, 1, "cup")], "2% milk", "", ""),
        ("2% milk, 1 cup", [(1, 1, "cup")], "2% milk", "", ""),
        (
            "3 ripe bananas (about 1 1/3 cups mashed)",
            [(3, 3, "")],
            "ripe bananas",
            "",
            "about 1 1/3 cups mashed",
        ),
        ("1,000 g flour", [(1000, 1000, "g")], "flour", "", ""),
        ("1 T sugar", [(1, 1, "tbsp")], "sugar", "", ""),
        ("1 t salt", [(1, 1, "tsp")], "salt", "", ""),
        ("1 large (or 2 small) apples, diced", [(1, 1, "")], "apples", "diced", "or 2 small"),
        ("half a nutmeg, grated", [(0.5, 0.5, "")], "nutmeg", "grated", ""),
        ("1 tbsp oil, plus 1 tsp for the tin", [(1, 1, "tbsp")], "oil", "plus 1 tsp for the tin", ""),
        ("0.5g saffron", [(0.5, 0.5, "g")], "saffron", "", ""),
        ("4 cups (1 L) water, boiling", [(4, 4, "cup"), (1, 1, "l")], "water", "boiling", ""),
        ("3 cloves", [(3, 3, "")], "cloves", "", ""),
        ("3 cloves, crushed", [(3, 3, "")], "cloves", "crushed", ""),
        ("3 cloves garlic", [(3, 3, "clove")], "garlic", "", ""),
        ("2 bananas", [(2, 2, "")], "bananas", "", ""),
        ("1 cup of water", [(1, 1, "cup")], "water", "", ""),
        ("8 oz milk", [(8, 8, "oz")], "milk", "", ""),
    ],
)
def test_the_forms_of_a_line(
    text: str, measures: list[Measure], item: str, preparation: str, note: str
) -> None:
    line = written(text)
    found = [(pytest.approx(low), pytest.approx(high), unit) for low, high, unit in measures]
    assert _measures(text) == found
    assert (line.item, line.preparation, line.note) == (item, preparation, note)
    assert line.words == ""


@pytest.mark.parametrize(
    ("text", "measures"),
    [
        ("1 (14 oz) can sweetened condensed milk", [(1, 1, "can"), (14, 14, "oz")]),
        ("2 (14-ounce) cans sweetened condensed milk", [(2, 2, "can"), (28, 28, "oz")]),
        ("1 8-oz block cream cheese, softened", [(8, 8, "oz")]),
        ("2 14-oz cans sweetened condensed milk", [(28, 28, "oz")]),
        ("2 (150 g each) apples", [(2, 2, ""), (300, 300, "g")]),
        ("2 apples (150 g each)", [(2, 2, ""), (300, 300, "g")]),
        ("2 apples (300 g)", [(2, 2, ""), (300, 300, "g")]),
    ],
)
def test_a_size_of_one_is_told_from_the_weight_of_all(text: str, measures: list[Measure]) -> None:
    assert _measures(text) == measures


@pytest.mark.parametrize(
    ("text", "words", "item", "preparation"),
    [
        ("a pinch of saffron", "a pinch of", "saffron", ""),
        ("A pinch of saffron", "a pinch of", "saffron", ""),
        ("pinch of salt", "a pinch of", "salt", ""),
        ("2 pinches of salt", "2 pinches of", "salt", ""),
        ("3 drops almond extract", "3 drops of", "almond extract", ""),
        ("Salt, to taste", "to taste", "Salt", ""),
        ("salt to taste", "to taste", "salt", ""),
        ("bread flour, for dusting", "for dusting", "bread flour", ""),
        ("bread flour for dusting", "for dusting", "bread flour", ""),
        ("butter, for the tin", "for the tin", "butter", ""),
    ],
)
def test_words_stand_in_the_place_of_an_amount(text: str, words: str, item: str, preparation: str) -> None:
    line = written(text)
    assert (line.words, line.item, line.preparation, line.measures) == (words, item, preparation, ())


def test_a_pinch_that_was_weighed_has_its_weight() -> None:
    assert _measures("a pinch of saffron (0.3 g)") == [(0.3, 0.3, "g")]


@pytest.mark.parametrize(
    ("text", "item", "preparation"),
    [
        ("500 g bread flour, plus extra for dusting", "bread flour", "plus extra for dusting"),
        ("10 g salt, or to taste", "salt", "or to taste"),
        ("20 g bread flour, for dusting", "bread flour", "for dusting"),
        ("20 g bread flour for dusting", "bread flour", "for dusting"),
    ],
)
def test_beside_an_amount_such_words_are_its_preparation(text: str, item: str, preparation: str) -> None:
    line = written(text)
    assert (line.words, line.item, line.preparation) == ("", item, preparation)


@pytest.mark.parametrize(
    ("text", "size", "item"),
    [
        ("2 large eggs", "large", "eggs"),
        ("2 extra-large eggs", "extra large", "eggs"),
        ("1 cup packed brown sugar", "packed", "brown sugar"),
        ("1 cup firmly packed brown sugar", "packed", "brown sugar"),
        ("1 cup brown sugar (packed)", "packed", "brown sugar"),
        ("1 cup brown sugar, packed", "packed", "brown sugar"),
        ("1 cup sifted cake flour", "sifted", "cake flour"),
        ("1 level tbsp cocoa powder", "level", "cocoa powder"),
        ("1 heaping tablespoon cocoa powder", "heaping", "cocoa powder"),
        ("1 heaped tbsp cocoa powder", "heaped", "cocoa powder"),
        ("scant ½ cup buttermilk", "scant", "buttermilk"),
    ],
)
def test_size_words_are_no_part_of_the_item(text: str, size: str, item: str) -> None:
    assert (written(text).size, written(text).item) == (size, item)


def test_what_gives_a_volume_when_prepared_is_a_note() -> None:
    line = written("1 lemon, zested then juiced (about 3 tbsp)")
    assert (len(line.measures), line.note) == (1, "about 3 tbsp")


def test_places_of_item_and_amount_are_those_in_the_line() -> None:
    line = written("  430 g (3 1/3 cups) bread flour, sifted")
    assert (line.amount_span.column, line.amount_span.end_column) == (3, 21)
    assert (line.item_span.column, line.item_span.end_column) == (22, 33)


@pytest.mark.parametrize(
    ("text", "code", "column", "end"),
    [
        ("240 g", "F002", 1, 6),
        ("", "F002", 1, 2),
        ("2 sticks", "F002", 1, 9),
        ("0 g water", "F004", 1, 4),
        ("11/2 cups water", "F005", 1, 5),
        ("240 g water (cool", "F006", 13, 14),
    ],
)
def test_a_mistake_in_a_line_has_its_place(text: str, code: str, column: int, end: int) -> None:
    _, found = read_line(text, place, spoons=SPOONS["us"])
    assert [(each.code, each.span.column, each.span.end_column) for each in found] == [(code, column, end)]
    assert all(each.hint for each in found)
