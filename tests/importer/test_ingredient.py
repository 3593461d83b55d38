"""Ingredient lines of old texts, and what each is read as."""

from fractions import Fraction

import pytest

from generator.importer.line.ingredient import read_ingredient
from generator.importer.model import Confidence, Doubt, ReadLine
from tests.importer.kitchen import stock

Read = tuple[tuple[ReadLine, ...], tuple[Doubt, ...]]


def read(text: str) -> Read:
    return read_ingredient(text, shelf=stock(), number=1, part="")


def one(text: str) -> ReadLine:
    lines, _ = read(text)
    (line,) = lines
    return line


def amounts(line: ReadLine) -> str:
    """`3.75 cup = 450 g`, or the words in the place of an amount."""
    told = []
    for each in line.written.measures:
        ends = dict.fromkeys(f"{float(end):g}" for end in (each.amount.low, each.amount.high))
        told.append(f"{'-'.join(ends)} {each.unit.name if each.unit else ''}".strip())
    return " = ".join(told) or line.written.words


SURE = [
    (
        "500 g strong white bread flour, plus extra for dusting",
        "500 g",
        "strong white bread flour",
        "plus extra for dusting",
    ),
    ("3¾ cups (450 g) all-purpose flour", "3.75 cup = 450 g", "all-purpose flour", ""),
    ("1-1/2 cups lukewarm milk", "1.5 cup", "lukewarm milk", ""),
    ("1–1½ cups warm water, as needed", "1-1.5 cup", "warm water", "as needed"),
    ("2¼ tsp (1 packet / 7 g) instant yeast", "2.25 tsp = 1 packet = 7 g", "instant yeast", ""),
    ("1 (14 oz) can sweetened condensed milk", "1 can = 14 oz", "sweetened condensed milk", ""),
    ("1 8-oz block cream cheese, softened", "8 oz", "cream cheese", "softened"),
    ("4 large eggs, 3 separated, at room temperature", "4", "eggs", "3 separated, at room temperature"),
    (
        "½ stick (55 g) unsalted butter, melted and cooled",
        "0.5 stick = 55 g",
        "unsalted butter",
        "melted and cooled",
    ),
    ("115g/8 tbsp/1 stick butter", "115 g = 8 tbsp = 1 stick", "butter", ""),
    ("100 g/3½ oz dark chocolate (70%), chopped", "100 g = 3.5 oz", "dark chocolate", "chopped"),
    ("Salt, to taste", "to taste", "Salt", ""),
    ("A pinch of saffron", "a pinch of", "saffron", ""),
    ("1 heaping tablespoon cocoa powder", "1 tbsp", "cocoa powder", ""),
    ("¾ cup + 2 tbsp water (207 g)", "0.875 cup = 207 g", "water", ""),
    ("2 cups flour, divided", "2 cup", "flour", "divided"),
    ("1 cup water at 105–115°F", "1 cup", "water", "at 105–115°F"),
    ("1 lb. 4 oz. bread flour (567 g)", "1.25 lb = 567 g", "bread flour", ""),
    ("500 g 00 flour", "500 g", "00 flour", ""),
    ("1 cup 2% milk", "1 cup", "2% milk", ""),
    ("3 ripe bananas (about 1 1/3 cups mashed)", "3", "ripe bananas", ""),
    ("1,000 g flour", "1000 g", "flour", ""),
    ("1 T sugar", "1 tbsp", "sugar", ""),
    ("1 t salt", "1 tsp", "salt", ""),
    ("1⁄2 cup oil", "0.5 cup", "oil", ""),
    ("half a nutmeg, grated", "0.5", "nutmeg", "grated"),
    ("1 tbsp oil, plus 1 tsp for the tin", "1 tbsp", "oil", "plus 1 tsp for the tin"),
    ("0.5g saffron", "0.5 g", "saffron", ""),
    ("0,5 l water", "0.5 l", "water", ""),
    ("- [ ] 60 g butter", "60 g", "butter", ""),
    ("3. 60 g butter", "60 g", "butter", ""),
]
TURNED = [
    ("2% milk, 1 cup", "1 cup", "2% milk", ""),
    ("Flour ......... 500 g", "500 g", "Flour", ""),
    ("Flour: 500 g, sifted", "500 g", "Flour", "sifted"),
    ("Eggs: 2 large", "2", "Eggs", ""),
    ("| 500 g | bread flour | 100% |", "500 g", "bread flour", ""),
    ("| | 500 g bread flour |", "500 g", "bread flour", ""),
    ("bread flour\t500 g\t100 %", "500 g", "bread flour", ""),
    ("butter (soft) – 60 g", "60 g", "butter", ""),
    ("100 g toasted walnuts, chopped", "100 g", "walnuts", "toasted, chopped"),
    ("Juice of 1 lemon", "1", "lemon", "juice only"),
]

SURFACES = [
    ("1½ cups – 187 g flour", "1.5 cup = 187 g", "flour", ""),
    ("1½ cups, 187 g, flour", "1.5 cup = 187 g", "flour", ""),
    ("1½ cups [187 g] flour", "1.5 cup = 187 g", "flour", ""),
    ("187 g = 1½ cups flour", "187 g = 1.5 cup", "flour", ""),
    ("100 g – 120 g flour", "100-120 g", "flour", ""),
    ("100 g butter [cold]", "100 g", "butter", "cold"),
    ("500 g: flour", "500 g", "flour", ""),
    ("2 – eggs", "2", "eggs", ""),
    ("flour____500 g", "500 g", "flour", ""),
    ("flour => 500 g", "500 g", "flour", ""),
    ("flour\t500\tg", "500 g", "flour", ""),
    ("Milk 240ml/1 cup", "240 ml = 1 cup", "Milk", ""),
    ("1½ C flour", "1.5 cup", "flour", ""),
    ("2 tblsp sugar", "2 tbsp", "sugar", ""),
    ("2 tea spoons salt", "2 tsp", "salt", ""),
    ("3 x eggs", "3", "eggs", ""),
    ("Eggs × 3", "3", "Eggs", ""),
    ("Egg - 1 no", "1", "Egg", ""),
    ("3 lge eggs, beaten", "3", "eggs", "beaten"),
    ("a half teaspoon salt", "0.5 tsp", "salt", ""),
    ("one and a half cups milk", "1.5 cup", "milk", ""),
    ("three quarters of a cup of milk", "0.75 cup", "milk", ""),
    ("quarter tsp salt", "0.25 tsp", "salt", ""),
    ("scant cup milk", "1 cup", "milk", ""),
    ("1 000 g flour", "1000 g", "flour", ""),
    ("1'000 g flour", "1000 g", "flour", ""),
    ("up to 300 ml water", "300 ml", "water", ""),
    ("300ml+ water", "300 ml", "water", ""),
    ("c. 2 tbsp water", "2 tbsp", "water", ""),
    ("1 7g sachet instant yeast", "1 packet = 7 g", "instant yeast", ""),
    ("400 ml can coconut milk", "1 can = 400 ml", "coconut milk", ""),
    ("1 cup milk plus 2 tbsp", "1.125 cup", "milk", ""),
    ("1 cup, heaped, flour", "1 cup", "flour", ""),
    ("Salt (a pinch)", "a pinch of", "Salt", ""),
    ("big pinch of salt", "a pinch of", "salt", ""),
    ("1 tsp salt¹", "1 tsp", "salt", ""),
    ("1 tsp salt [1]", "1 tsp", "salt", ""),
    ("a) 500 g flour", "500 g", "flour", ""),
    ("500 g flour - 100 %", "500 g", "flour", ""),
    ("65% water, 325 g", "325 g", "water", ""),
    ("Oil for frying", "", "Oil", "for frying"),
    ("Extra flour, for dusting", "for dusting", "flour", "extra"),
    ("Icing sugar to dust", "", "Icing sugar", "to dust"),
    ("1 egg for egg wash", "1", "egg", "for egg wash"),
    ("whites of 2 eggs", "2", "egg whites", ""),
    ("Seeds of 1 vanilla pod", "1", "vanilla pod", "seeds only"),
    ("100 g toasted, chopped walnuts", "100 g", "chopped walnuts", "toasted"),
    ("200 g plain/all-purpose flour", "200 g", "plain flour", ""),
    ("Salt – ½ tsp or to taste", "0.5 tsp", "Salt", "or to taste"),
    ("1 tsk salt", "1 tsp", "salt", ""),
    ("2 łyżki honey", "2 tbsp", "honey", ""),
    ("1 colher de chá de salt", "1 tsp", "salt", ""),
]


@pytest.mark.parametrize(("text", "amount", "item", "preparation"), SURE + TURNED + SURFACES)
def test_a_line_is_read(text: str, amount: str, item: str, preparation: str) -> None:
    line = one(text)
    assert (amounts(line), line.written.item, line.written.preparation, line.known) == (
        amount,
        item,
        preparation,
        True,
    )


@pytest.mark.parametrize("text", [text for text, *_ in SURE])
def test_a_line_in_the_usual_order_is_sure_and_asks_nothing(text: str) -> None:
    lines, doubts = read(text)
    assert ([each.confidence for each in lines], doubts) == ([Confidence.SURE], ())


UNITS = [
    ("2 EL honey", "2 tbsp"),
    ("½ TL honey", "0.5 tsp"),
    ("1½ EL honey", "1.5 tbsp"),
    ("1 TL salt", "1 tsp"),
    ("1 gestrichener TL salt", "1 tsp"),
    ("1 Prise salt", "1 pinch of"),
    ("1 Pck. instant yeast", "1 packet"),
    ("2 c. à soupe de honey", "2 tbsp"),
    ("1 cuillère à café de salt", "1 tsp"),
    ("250 g de butter", "250 g"),
    ("2 cucharadas de honey", "2 tbsp"),
    ("1 cucharadita de salt", "1 tsp"),
    ("2 cucchiai di honey", "2 tbsp"),
    ("un pizzico di salt", "a pinch of"),
    ("3 eetlepels honey", "3 tbsp"),
    ("1 theelepel salt", "1 tsp"),
    ("2 gousses de garlic", "2 clove"),
]


@pytest.mark.parametrize(("text", "amount"), UNITS)
def test_unit_words_of_other_languages_are_put_into_ours(text: str, amount: str) -> None:
    assert amounts(one(text)) == amount


ASKED = [
    ("8 oz milk", "I004", "ounces of a liquid may be weight or volume, 8 % apart"),
    ("1 pint raspberries", "I004", "a pint of fruit may be dry or fluid"),
    ("4 cups (1 L) water, boiling", "I005", "the measures of this line are 5.7 % apart: 946 ml and 1000 ml"),
    ("11/2 cups sugar", "I001", "“11/2” can be read in two ways"),
    ("1.000 g flour", "I001", "“1.000” is read as 1000"),
    ("1 Tasse flour", "I009", "“tasse”: a cup of another country has no one size"),
    ("a handful of raisins", "I008", "nobody knows how much “a handful” is"),
    ("1 tsp kosher salt", "I006", "1 tsp of “kosher salt” cannot be weighed from a table"),
    ("75 g moonberries", "I007", "“moonberries” is not known, so the line is set aside"),
    ("110 g butter, or dairy-free spread", "I002", "the second choice “dairy-free spread” is not known"),
    ("2 cups flour (almond)", "I003", "“almond” stands beside “flour” and is another allergen"),
]


@pytest.mark.parametrize(("text", "code", "message"), ASKED)
def test_what_is_not_clear_is_asked(text: str, code: str, message: str) -> None:
    lines, doubts = read(text)
    assert [(each.code, each.message) for each in doubts] == [(code, message)]
    assert lines[0].confidence is Confidence.DOUBTFUL


CHOICES = [
    ("200 ml whole milk or 180 ml oat drink", "whole milk", ("oat drink",)),
    ("1 large (or 2 small) apples, diced", "apples", ("2 small apples",)),
    ("100 g dark or milk chocolate", "dark chocolate", ("milk chocolate",)),
    ("1 cup milk or water", "milk", ("water",)),
    (
        "380 g (1½ cups) buttermilk, or 380 g plain yogurt, thinned",
        "buttermilk",
        ("380 g plain yogurt, thinned",),
    ),
]


@pytest.mark.parametrize(("text", "item", "choices"), CHOICES)
def test_a_second_choice_stands_under_or(text: str, item: str, choices: tuple[str, ...]) -> None:
    line = one(text)
    assert (line.written.item, line.alternatives) == (item, choices)


def test_two_ingredients_of_one_line_are_two_lines() -> None:
    lines, _ = read("2 tbsp each cinnamon and sugar")
    assert [(amounts(each), each.written.item) for each in lines] == [
        ("2 tbsp", "cinnamon"),
        ("2 tbsp", "sugar"),
    ]
    assert [each.written.item for each in read("Salt and pepper")[0]] == ["Salt", "pepper"]


def test_an_optional_line_says_so() -> None:
    assert [
        one(text).optional for text in ("50 g raisins (optional)", "optional: 50 g raisins", "50 g raisins")
    ] == [
        True,
        True,
        False,
    ]


@pytest.mark.parametrize(
    "text",
    [
        "100 g gluten-free flour",
        "200 g Mandelmehl",
        "50 g peanut spread",
        "1 cup toasted walnuts",
        "100 g cookie butter",
    ],
)
def test_a_name_is_never_mapped_to_its_nearest(text: str) -> None:
    line = one(text)
    assert (line.known, line.allergens) == (False, ())


@pytest.mark.parametrize(
    ("text", "allergens"),
    [
        ("100 g almond flour", ("almond",)),
        ("200 ml oat milk", ("oats",)),
        ("30 g peanut butter", ("peanut",)),
        ("75 g toasted hazelnuts", ("hazelnut",)),
    ],
)
def test_a_line_has_the_allergens_of_what_it_names(text: str, allergens: tuple[str, ...]) -> None:
    assert one(text).allergens == allergens


@pytest.mark.parametrize("text", ["", "   ", "—", "12", "½", "()", "(optional)"])
def test_what_names_no_ingredient_gives_no_line(text: str) -> None:
    assert read(text)[0] == ()


def test_a_recipe_of_the_makers_own_is_taken_for_what_it_is_called() -> None:
    lines, doubts = read_ingredient(
        "100 g crackled pecans, chopped",
        shelf=stock(),
        number=1,
        part="",
        made={"crackled pecans": "crackled-pecans"},
    )
    assert (lines[0].recipe, lines[0].known, [each.code for each in doubts]) == (
        "crackled-pecans",
        True,
        ["I012"],
    )


def test_sum_of_two_measures_is_exact() -> None:
    (quantity,) = one("1/3 cup plus 1 tablespoon cornstarch").written.measures
    assert quantity.amount.low == Fraction(1, 3) + Fraction(1, 16)


def test_an_egg_and_a_yolk_are_two_lines() -> None:
    for text in ("3 large eggs + 1 yolk", "3 eggs plus 1 egg yolk", "3 eggs and 1 yolk"):
        assert [each.written.item for each in read(text)[0]] == [
            "eggs",
            text.split("1 ")[1].replace("yolk", "egg yolk").replace("egg egg", "egg"),
        ]


def test_two_names_parted_by_a_slash_are_a_choice() -> None:
    line = one("50 g walnuts/pecans")
    assert (line.written.item, line.alternatives, line.allergens) == ("walnuts", ("pecans",), ("walnut",))


@pytest.mark.parametrize("text", ["1 400 g flour", "1 - 500 g flour", "500 flour"])
def test_numbers_that_can_be_read_in_two_ways_are_asked_about(text: str) -> None:
    assert [each.code for each in read(text)[1]][:1] == ["I001"]


def test_words_that_make_an_amount_inexact_are_kept() -> None:
    for text in ("up to 300 ml water", "just under 300 ml water", "at least 300 ml water"):
        assert one(text).note == text.partition(" 300")[0]
