"""Spellings of units."""

from fractions import Fraction

import pytest

from generator.measure.unit import SPOONS, Kind, nearest_units, unit_named

US = SPOONS["us"]


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("g", "g G g. gm gram grams gramme Grams"),
        ("kg", "kg KG kg. kilogram kilograms kilo"),
        ("mg", "mg milligram"),
        ("oz", "oz oz. OZ ounce ounces"),
        ("lb", "lb lb. lbs lbs. pound pounds"),
        ("stick", "stick sticks"),
        ("ml", "ml mL ml. millilitre milliliters"),
        ("cl", "cl centilitre"),
        ("dl", "dl decilitres"),
        ("l", "l L litre liters"),
        ("tsp", "tsp tsp. t t. Tsp TSP teaspoon teaspoons"),
        ("tbsp", "tbsp tbsp. T T. Tbsp TBSP tbs tablespoon Tablespoons"),
        ("cup", "cup cups c c. Cup"),
        ("pint", "pint pints pt pt."),
        ("quart", "quart quarts qt"),
        ("gallon", "gallon gal"),
        ("piece", "piece pieces"),
        ("clove", "clove cloves"),
        ("slice", "slice slices"),
        ("sheet", "sheet sheets"),
        ("packet", "packet packets package pkg sachet sachets envelope envelopes"),
        ("leaf", "leaf leaves"),
        ("sprig", "sprig sprigs"),
        ("can", "can cans tin tins"),
        ("jar", "jar jars"),
        ("block", "block blocks"),
        ("pod", "pod pods"),
        ("stalk", "stalk stalks"),
        ("drop", "drop drops"),
        ("pinch", "pinch pinches"),
        ("dash", "dash dashes"),
    ],
)
def test_every_usual_spelling_is_known(name: str, words: str) -> None:
    for word in words.split():
        unit = unit_named(word, spoons=US)
        assert unit is not None, word
        assert unit.name == name, word


@pytest.mark.parametrize(
    "word", ["fl oz", "fl. oz.", "fl.oz.", "FL OZ", "fluid ounce", "fluid  ounces", "floz"]
)
def test_the_fluid_ounce_is_not_the_ounce(word: str) -> None:
    unit = unit_named(word, spoons=US)
    assert unit is not None
    assert (unit.name, unit.kind) == ("fl oz", Kind.VOLUME)


@pytest.mark.parametrize("word", ["", ".", "C", "F", "m", "egg", "fl", "cupboard", "x" * 10**6, "ｇ", "℃"])
def test_any_other_word_is_no_unit(word: str) -> None:
    assert unit_named(word, spoons=US) is None


@pytest.mark.parametrize(
    ("country", "word", "millilitres"),
    [
        ("us", "cup", "236.5882365"),
        ("us", "tbsp", "14.78676478125"),
        ("us", "tsp", "4.92892159375"),
        ("us", "pint", "473.176473"),
        ("metric", "cup", "250"),
        ("metric", "tbsp", "15"),
        ("metric", "tsp", "5"),
        ("metric", "pint", "473.176473"),
        ("imperial", "cup", "284.130625"),
        ("imperial", "tbsp", "15"),
        ("imperial", "tsp", "5"),
        ("imperial", "pint", "568.26125"),
        ("imperial", "fl oz", "28.4130625"),
        ("australian", "cup", "250"),
        ("australian", "tbsp", "20"),
        ("australian", "tsp", "5"),
    ],
)
def test_each_country_has_its_own_cup_and_spoons(country: str, word: str, millilitres: str) -> None:
    unit = unit_named(word, spoons=SPOONS[country])
    assert unit is not None
    assert unit.factor == Fraction(millilitres)


def test_a_hint_names_the_unit_most_like_the_word() -> None:
    assert nearest_units("gramz")[0] == "g"
    assert nearest_units("tablespon")[0] == "tbsp"
    assert nearest_units("zzzz") == ()
    assert nearest_units("g" * 10**6) == ()
