"""Every factor against a general unit library, and against published definitions."""

from fractions import Fraction

import pint
import pytest

from generator.measure.density import apart, grams_of
from generator.measure.duration import TIMES
from generator.measure.length import LENGTHS, read_length
from generator.measure.number import Range, looks_garbled, read_number
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.unit import SPOONS, Kind, unit_named

F = Fraction
US = SPOONS["us"]
BASE = {Kind.MASS: "gram", Kind.VOLUME: "milliliter", Kind.LENGTH: "millimeter", Kind.TIME: "minute"}


@pytest.fixture(scope="module")
def library() -> pint.UnitRegistry[Fraction]:
    """Exact fractions, so that the comparison is for equality."""
    return pint.UnitRegistry(non_int_type=Fraction)


@pytest.mark.parametrize(
    ("word", "country", "theirs"),
    [
        # NIST SP 811, Appendix B: the pound is 453.59237 g, the ounce its sixteenth.
        ("g", "us", "gram"),
        ("kg", "us", "kilogram"),
        ("mg", "us", "milligram"),
        ("lb", "us", "pound"),
        ("oz", "us", "ounce"),
        # NIST Handbook 44, Appendix C: the US gallon is 231 cubic inches; its parts follow.
        ("gallon", "us", "gallon"),
        ("quart", "us", "quart"),
        ("pint", "us", "pint"),
        ("cup", "us", "cup"),
        ("fl oz", "us", "fluid_ounce"),
        ("tbsp", "us", "tablespoon"),
        ("tsp", "us", "teaspoon"),
        ("gallon", "metric", "gallon"),
        ("fl oz", "australian", "fluid_ounce"),
        # SI brochure: the litre is a cubic decimetre.
        ("l", "us", "liter"),
        ("dl", "us", "deciliter"),
        ("cl", "us", "centiliter"),
        ("ml", "us", "milliliter"),
        # UK Units of Measurement Regulations 1995: the imperial gallon is 4.54609 l; its parts follow.
        ("gallon", "imperial", "imperial_gallon"),
        ("quart", "imperial", "imperial_quart"),
        ("pint", "imperial", "imperial_pint"),
        ("cup", "imperial", "imperial_cup"),
        ("fl oz", "imperial", "imperial_fluid_ounce"),
    ],
)
def test_a_unit_is_exactly_that_of_a_general_library(
    library: pint.UnitRegistry[Fraction], word: str, country: str, theirs: str
) -> None:
    unit = unit_named(word, spoons=SPOONS[country])
    assert unit is not None
    assert library.Quantity(F(1), theirs).m_as(BASE[unit.kind]) == unit.factor


@pytest.mark.parametrize(
    ("word", "theirs"),
    [
        # NIST SP 811, Appendix B: the inch is 25.4 mm.
        ("in", "inch"),
        ("cm", "centimeter"),
        ("mm", "millimeter"),
        ("week", "week"),
        ("day", "day"),
        ("h", "hour"),
        ("min", "minute"),
        ("s", "second"),
    ],
)
def test_a_length_or_time_is_exactly_that_of_a_general_library(
    library: pint.UnitRegistry[Fraction], word: str, theirs: str
) -> None:
    unit = {**LENGTHS, **TIMES}[word]
    assert library.Quantity(F(1), theirs).m_as(BASE[unit.kind]) == unit.factor


@pytest.mark.parametrize(
    ("country", "cup", "tbsp", "tsp"),
    [
        # NIST Handbook 44, Appendix C, from memory: 1/16 gallon, 1/2 fluid ounce, 1/3 tablespoon.
        ("us", "236.5882365", "14.78676478125", "4.92892159375"),
        # The metric cup of Australia, New Zealand and Canada, from memory.
        ("metric", "250", "15", "5"),
        # UK Units of Measurement Regulations 1995 for the half pint; the spoons are common practice.
        ("imperial", "284.130625", "15", "5"),
        # AS 1325, from memory: the tablespoon of 20 ml.
        ("australian", "250", "20", "5"),
    ],
)
def test_the_cups_and_spoons_of_each_country(country: str, cup: str, tbsp: str, tsp: str) -> None:
    spoons = SPOONS[country]
    assert (spoons.cup, spoons.tbsp, spoons.tsp) == (F(cup), F(tbsp), F(tsp))
    assert spoons.name == country


def read(text: str, country: str = "us") -> Quantity:
    found = read_quantity(text, spoons=SPOONS[country])
    assert found is not None
    return found[0]


def exactly(amount: Range | None) -> Fraction:
    assert amount is not None
    assert amount.is_exact
    return amount.low


@pytest.mark.parametrize(
    ("text", "country", "millilitres", "tolerance"),
    [
        ("1 cup", "us", "236.5882365", "0.000001"),  # by definition
        ("240 ml", "us", "240", "0"),  # the cup of labels, 21 CFR 101.9(b)(5)(viii); who means it writes so
        ("1 tbsp", "us", "14.78676", "0.0001"),  # by definition
        ("1 fl oz", "imperial", "28.4130625", "0.000001"),  # by definition, from memory
        ("1 tbsp", "australian", "20", "0"),  # AS 1325, from memory
        ("5 tbsp + 1 tsp", "us", "78.8627455", "0"),  # a third of a cup, worked out from the definitions
    ],
)
def test_volumes_that_are_published_or_follow(
    text: str, country: str, millilitres: str, tolerance: str
) -> None:
    assert abs(exactly(read(text, country).millilitres()) - F(millilitres)) <= F(tolerance)


@pytest.mark.parametrize(
    ("text", "grams", "tolerance"),
    [
        ("1 lb 4 oz", "566.990", "0.001"),  # by definition (NIST SP 811)
        ("8.8185 oz", "250", "0.001"),  # 250 g is 8.8185 oz, worked out
        ("1 stick", "113.398", "0.001"),  # a quarter of a pound, common practice
        ("1 8-oz block", "226.796", "0.001"),  # one pack of 8 oz, worked out
        ("16 oz", "453.59237", "0"),  # NIST SP 811
    ],
)
def test_weights_that_are_published_or_follow(text: str, grams: str, tolerance: str) -> None:
    assert abs(exactly(read(text).grams()) - F(grams)) <= F(tolerance)


@pytest.mark.parametrize(
    ("left", "right"),
    [
        # Worked out from 1 cup = 16 tbsp and 1 tbsp = 3 tsp.
        ("1/3 cup", "5 tbsp + 1 tsp"),
        ("2/3 cup", "10 tbsp + 2 tsp"),
        ("1/8 cup", "2 tbsp"),
        ("3/8 cup", "1/4 cup + 2 tbsp"),
        ("5/8 cup", "1/2 cup + 2 tbsp"),
        ("7/8 cup", "3/4 cup + 2 tbsp"),
        ("1/6 cup", "2 tbsp + 2 tsp"),
        ("1/12 cup", "4 tsp"),
        ("5/16 cup", "1/4 cup + 1 tbsp"),
        ("11/16 cup", "1/2 cup + 3 tbsp"),
        ("3.375 tsp", "1 tbsp + 3/8 tsp"),
        ("1.125 cup", "1 cup + 2 tbsp"),
        ("2/9 cup", "3 tbsp + 1 2/3 tsp"),
        ("1 pint", "2 cups"),
        ("1 quart", "2 pints"),
    ],
)
def test_two_ways_to_measure_one_volume(left: str, right: str) -> None:
    assert read(left).millilitres() == read(right).millilitres()


def test_a_half_as_much_again_of_spoons_and_cups() -> None:
    """Worked out: 2¼ tsp x 1.5 is 1 tbsp + ⅜ tsp; ¾ cup x 1.5 is 1 cup + 2 tbsp."""
    for before, after in (("2¼ tsp", "1 tbsp + 3/8 tsp"), ("¾ cup", "1 cup + 2 tbsp")):
        assert exactly(read(before).millilitres()) * F(3, 2) == exactly(read(after).millilitres())


def test_seven_eighths_of_a_cup_of_water_weigh_207_grams() -> None:
    """Worked out, at 1 g a millilitre."""
    for text in ("7/8 cup", "¾ cup + 2 tbsp"):
        volume = read(text).millilitres()
        assert volume is not None
        assert abs(exactly(grams_of(volume, F(1))) - 207) <= F("0.1")


def test_four_us_cups_and_a_litre_are_not_the_same() -> None:
    """Worked out: 946 ml against 1000 ml is 5.7 % of the cups, more than the 5 % two measures may differ."""
    cups, litre = read("4 cups").millilitres(), read("1 L").millilitres()
    assert cups is not None
    assert litre is not None
    assert abs(apart(cups, litre) - F("0.0567")) <= F("0.0001")


def test_an_ounce_of_milk_may_be_weight_or_volume() -> None:
    """Worked out, at 244 g a cup of milk (USDA SR Legacy): 8 fl oz and 8 oz of it are 7.6 % apart."""
    assert abs(apart(Range.exact(244), read("8 oz").grams() or Range.exact(0)) - F("0.0705")) <= F("0.0001")
    assert abs(apart(read("8 oz").grams() or Range.exact(0), Range.exact(244)) - F("0.0758")) <= F("0.0001")


def test_a_hyphen_joins_a_mixed_number_and_a_dash_a_range() -> None:
    """Common practice in recipes: 1-1/2 is 1.5, 1–1½ is 1 to 1.5, and 11/2 has to be asked about."""
    assert read_number("1-1/2") == (Range.exact(F(3, 2)), 5)
    assert read_number("1–1½") == (Range(F(1), F(3, 2)), 4)
    assert looks_garbled("11/2")
    assert not looks_garbled("1-1/2")


def test_a_three_by_five_card_in_millimetres() -> None:
    """By the definition of the inch: 3 x 5 in is 76.2 x 127 mm."""
    card = [read_length(text) for text in ("3 in", "5 in")]
    assert [exactly(side.millimetres) for side in card if side is not None] == [F("76.2"), F(127)]
