"""The vocabulary of allergens, and the catalogue's rows against the published classes."""

import pytest

from generator.catalogue.allergens import ALLERGENS, allergen_named, allergens_named, allergens_near
from generator.catalogue.load import built_in


@pytest.mark.parametrize(
    ("word", "ident"),
    [
        ("Eggs", "egg"),
        ("soya", "soy"),
        ("soybeans", "soy"),
        ("nuts", "tree nuts"),
        ("tree nut", "tree nuts"),
        ("Sulfites", "sulphites"),
        ("sulphur dioxide", "sulphites"),
        ("E220", "sulphites"),
        ("e 228", "sulphites"),
        ("filberts", "hazelnut"),
        ("groundnuts", "peanut"),
        ("gluten", "gluten"),
        ("prawns", "shrimp"),
        ("anchovies", "anchovy"),
        ("spelt", "wheat"),
        ("malt extract", "barley"),
        ("oat", "oats"),
        ("lupine", "lupin"),
        ("celeriac", "celery"),
        ("goat's milk", "goat milk"),
        ("Brazil nuts", "brazil nut"),
    ],
)
def test_words_of_packs(word: str, ident: str) -> None:
    assert allergen_named(word) == ident


@pytest.mark.parametrize("word", ["coconut", "chestnut", "buckwheat", "nutmeg", "rice", ""])
def test_words_that_are_no_declared_class(word: str) -> None:
    assert allergen_named(word) is None


def test_a_mistyped_word_has_its_nearest() -> None:
    assert allergens_near("almnod")[0] == "almond"
    assert allergens_near("sulphite s")[0] == "sulphites"


def test_each_name_means_one_allergen() -> None:
    names = [name for each in ALLERGENS.values() for name in each.names]
    assert len(names) == len(set(names))
    assert all(allergen_named(each) == each for each in ALLERGENS)


def test_a_peanut_is_no_tree_nut() -> None:
    assert ALLERGENS["peanut"].group == "peanut"
    assert ALLERGENS["pine nut"].group == "tree nuts"


# What must be declared: 21 USC 321(qq), the FDA list of nuts of January 2025 (US); Reg. (EU) 1169/2011
# Annex II with Commission Notice 2017/C 428/01 (EU); B.01.010.1 (Canada); Standard 1.2.3 (ANZ).
DECLARED = {
    # wheat and its kinds: 21 USC 321(qq); Annex II 1
    "all-purpose flour": "wheat",
    "bread flour": "wheat",
    "whole wheat flour": "wheat",
    "semolina": "wheat",
    "durum flour": "wheat",
    "spelt flour": "wheat",
    "khorasan flour": "wheat",
    "emmer flour": "wheat",
    "einkorn flour": "wheat",
    "bulgur": "wheat",
    "couscous": "wheat",
    "wheat germ": "wheat",
    "wheat starch": "wheat",
    "vital wheat gluten": "wheat",
    # a hybrid: Annex II 1; Canada names triticale itself
    "triticale flour": "rye, triticale, wheat",
    # rye, barley, oats: Annex II 1; not in 21 USC 321(qq)
    "rye flour": "rye",
    "pearl barley": "barley",
    "barley flour": "barley",
    "malt extract": "barley",
    "malt syrup": "barley",
    "malt vinegar": "barley",
    "malted barley flour": "barley",
    "rolled oats": "oats",
    "oat milk": "oats",
    # milk: 321(qq); Annex II 7
    "milk": "milk",
    "heavy cream": "milk",
    "butter": "milk",
    "ghee": "milk",
    "buttermilk": "milk",
    "whey": "milk",
    "yogurt": "milk",
    "quark": "milk",
    "milk powder": "milk",
    "dulce de leche": "milk",
    "cheddar": "milk",
    # the animal is named: FDA questions and answers, January 2025
    "goat's milk": "goat milk",
    # egg: 321(qq); Annex II 3; other birds by name in the US
    "egg": "egg",
    "egg white": "egg",
    "egg yolk": "egg",
    "meringue powder": "egg",
    "mayonnaise": "egg",
    "advocaat": "egg",
    "duck egg": "duck egg",
    "quail egg": "quail egg",
    # soy: 321(qq); Annex II 6
    "soy flour": "soy",
    "soya milk": "soy",
    "tofu": "soy",
    "miso": "soy",
    "soy lecithin": "soy",
    "soybean oil": "soy",
    # peanut: 321(qq); Annex II 5
    "peanuts": "peanut",
    "peanut butter": "peanut",
    "groundnut oil": "peanut",
    # nuts: 343(w)(2) by name; Annex II 8
    "almonds": "almond",
    "marzipan": "almond",
    "almond flour": "almond",
    "almond milk": "almond",
    "amaretti": "almond, egg",
    "hazelnuts": "hazelnut",
    "praline": "hazelnut",
    "chocolate-hazelnut spread": "hazelnut",
    "walnuts": "walnut",
    "black walnuts": "walnut",
    "pecans": "pecan",
    "pistachios": "pistachio",
    "cashews": "cashew",
    "macadamia nuts": "macadamia",
    "brazil nuts": "brazil nut",
    "pine nuts": "pine nut",
    # sesame: FASTER Act 2021; Annex II 11
    "sesame seeds": "sesame",
    "tahini": "sesame",
    "halva": "sesame",
    "za'atar": "sesame",
    "sesame oil": "sesame",
    # Annex II 10, 9, 13
    "mustard powder": "mustard",
    "mustard seeds": "mustard",
    "celery": "celery",
    "celeriac": "celery",
    "celery salt": "celery",
    "lupin flour": "lupin",
    # fish: Annex II 4
    "worcestershire sauce": "anchovy",
    "anchovies": "anchovy",
    # wine as an ingredient: Commission Notice 2017/C 428/01
    "red wine": "sulphites",
}
# Nothing to declare, and nothing to ask: not a class of any of the regions.
PLAIN = (
    *("buckwheat flour", "rice flour", "cornmeal", "teff", "sorghum flour", "millet", "quinoa", "cornstarch"),
    *("chestnuts", "fresh coconut", "coconut oil", "coconut flour", "poppy seeds", "sunflower seeds"),
    *("cocoa powder", "carob powder", "vanilla extract", "honey", "granulated sugar", "brown sugar", "salt"),
    *(
        "baking soda",
        "cream of tartar",
        "instant yeast",
        "fresh yeast",
        "active dry yeast",
        "water",
        "raisins",
    ),
    *(
        "dates",
        "apple",
        "lemon",
        "canola oil",
        "sunflower oil",
        "olive oil",
        "rum",
        "brandy",
        "cinnamon",
        "nutmeg",
    ),
)
# Only the pack can tell.
ASKED = (
    *("margarine", "dark chocolate", "chocolate chips", "white chocolate", "milk chocolate", "lecithin"),
    *(
        "baking powder",
        "icing sugar",
        "custard powder",
        "mixed spice",
        "sprinkles",
        "flavouring",
        "food colouring",
    ),
    *(
        "mincemeat",
        "suet",
        "gelatin",
        "marshmallows",
        "worcestershire sauce",
        "white wine",
        "cider",
        "yeast extract",
    ),
    *(
        "glucose syrup",
        "dextrose",
        "glacé cherries",
        "candied orange peel",
        "candied lemon peel",
        "mixed peel",
    ),
    *(
        "desiccated coconut",
        "molasses",
        "black treacle",
        "dried apricots",
        "golden raisins",
        "almond extract",
    ),
    *("liqueur", "vegan butter", "puff pastry", "breadcrumbs", "digestive biscuits", "vegetable oil"),
    *("cooking spray", "sourdough starter", "almond paste", "vegetable shortening"),
)
STAPLES = (
    *(
        "all-purpose flour",
        "bread flour",
        "cake flour",
        "whole wheat flour",
        "rye flour",
        "spelt flour",
        "semolina",
    ),
    *(
        "sugar",
        "brown sugar",
        "butter",
        "unsalted butter",
        "salted butter",
        "milk",
        "heavy cream",
        "egg",
        "egg white",
    ),
    *(
        "egg yolk",
        "yogurt",
        "buttermilk",
        "sour cream",
        "cream cheese",
        "almonds",
        "walnuts",
        "pecans",
        "hazelnuts",
    ),
    *("sesame seeds", "rolled oats", "peanut butter", "tahini", "self-rising flour"),
)


@pytest.mark.parametrize(("name", "allergens"), DECLARED.items())
def test_what_a_food_is_must_be_declared(name: str, allergens: str) -> None:
    found = built_in().find(name)
    assert found is not None
    assert found.allergens == tuple(allergens.split(", "))


@pytest.mark.parametrize("name", PLAIN)
def test_a_plain_food_has_nothing_to_declare_or_ask(name: str) -> None:
    found = built_in().find(name)
    assert found is not None
    assert (found.allergens, found.ask) == ((), ())


@pytest.mark.parametrize("name", ASKED)
def test_a_food_that_only_its_pack_can_tell_is_asked_about(name: str) -> None:
    found = built_in().find(name)
    assert found is not None
    assert found.ask != ()
    assert all("read" in each or "pantry" in each for each in found.ask)


@pytest.mark.parametrize("name", STAPLES)
def test_a_staple_is_not_unknown(name: str) -> None:
    found = built_in().find(name)
    assert found is not None
    assert found.ask == ()


def test_malted_barley_in_white_flour_is_a_nudge() -> None:
    for name in ("all-purpose flour", "bread flour"):
        found = built_in().find(name)
        assert found is not None
        assert found.often == ("barley",)
        assert "barley" not in found.allergens


def test_a_word_over_several_classes_is_every_one_of_them() -> None:
    assert allergens_named("Shellfish") == ("crustacean", "mollusc")
    assert allergens_named("seafood") == ("crustacean", "fish", "mollusc")
    assert allergens_named("eggs") == ("egg",)
    assert allergens_named("pollen") == ()
    assert allergens_near("shelfish")[0] == "shellfish"
