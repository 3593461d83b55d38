"""Every value that names a USDA row is that row's value, read from the dataset's own rows.

Source: USDA National Nutrient Database for Standard Reference, Release 28 (2015); see data/README.md.
"""

import csv
import re
from collections.abc import Iterator, Mapping
from fractions import Fraction
from pathlib import Path

import pytest

from generator.catalogue.ingredient import Ingredient
from generator.catalogue.load import built_in

CSV = Path(__file__).parent / "data" / "usda_sr28_baking.csv"
WEIGHING = re.compile(r"USDA SR28 (?P<row>\d{5}), (?P<measure>.+) = (?P<grams>[\d.]+) g")
ROW = re.compile(r"USDA SR28 (\d{5})")
# Written out here rather than taken from the program: 1/16 US gallon of 231 cubic inches (NIST Handbook 44).
CUP = Fraction(231, 16) * Fraction("2.54") ** 3
ML: Mapping[str, Fraction] = {
    "cup": CUP,
    "fl oz": CUP / 8,
    "tbsp": CUP / 16,
    "tablespoon": CUP / 16,
    "tsp": CUP / 48,
}
COLUMNS: Mapping[str, str] = {
    "water": "water_g_per_100g",
    "fat": "fat_g",
    "sugar": "sugars_g",
    "salt": "sodium_mg",
}


def _rows() -> Mapping[str, list[dict[str, str]]]:
    found: dict[str, list[dict[str, str]]] = {}
    with CSV.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            found.setdefault(row["ndb_no"], []).append(row)
    return found


ROWS = _rows()


def _dataset_grams(number: str, measure: str) -> tuple[Fraction, Fraction, str]:
    """Amount, grams and text of the dataset's measure; a KeyError where the dataset has none such."""
    for row in ROWS[number]:
        if f"{row['measure_amount']} {row['measure_text']}" == measure:
            return Fraction(row["measure_amount"]), Fraction(row["grams"]), row["measure_text"]
    raise KeyError(f"USDA SR28 {number} has no measure {measure!r}")


def _weighings(ingredient: Ingredient) -> Iterator[tuple[str, Fraction | None, re.Match[str]]]:
    """Field, the catalogue's value, and the row that its source names."""
    for field, source in ingredient.sources.items():
        stated = WEIGHING.fullmatch(source)
        if stated is not None:
            kind, _, word = field.partition(".")
            value = ingredient.grams_per_ml if kind == "grams_per_ml" else getattr(ingredient, kind)[word]
            yield field, value, stated


def faults_of_weight(ingredient: Ingredient) -> Iterator[str]:
    for field, value, stated in _weighings(ingredient):
        amount, grams, text = _dataset_grams(stated["row"], stated["measure"])
        if field.startswith(("pieces", "units")):
            expected = grams / amount
        else:
            unit = next(each for each in sorted(ML, key=len, reverse=True) if text.startswith(each))
            expected = grams / (amount * ML[unit])
        if value != expected or Fraction(stated["grams"]) != grams:
            yield f"{ingredient.name}, {field}: {value} is not {expected} (USDA SR28 {stated['row']})"


def faults_of_composition(ingredient: Ingredient) -> Iterator[str]:
    for field, column in COLUMNS.items():
        stated = ROW.search(ingredient.sources.get(field, ""))
        if stated is None:
            continue
        written = ROWS[stated[1]][0][column]
        if written == "":
            yield f"{ingredient.name}, {field}: USDA SR28 {stated[1]} does not say"
            continue
        # Salt is sodium x 2.5 (Regulation (EU) 1169/2011, Annex I); sodium stands in milligrams.
        expected = Fraction(written) * (Fraction(25, 10_000) if field == "salt" else 1)
        if getattr(ingredient, field) != expected:
            yield f"{ingredient.name}, {field}: {getattr(ingredient, field)} is not {expected}"


def test_the_copy_is_whole() -> None:
    assert len(ROWS) == 496
    assert sum(map(len, ROWS.values())) == 1149


def test_every_weight_that_names_a_row_is_that_rows() -> None:
    weighings = [each for ingredient in built_in() for each in _weighings(ingredient)]
    assert len(weighings) > 500
    assert [fault for ingredient in built_in() for fault in faults_of_weight(ingredient)] == []


def test_every_composition_that_names_a_row_is_that_rows() -> None:
    named = [each for each in built_in() if ROW.search(each.sources.get("water", ""))]
    assert len(named) > 250
    assert [fault for ingredient in built_in() for fault in faults_of_composition(ingredient)] == []


def test_a_wrong_number_is_found() -> None:
    """The check itself: a catalogue value off by a little is a fault, and so is a row that is not there."""
    wrong = Ingredient(
        name="flour",
        grams_per_ml=Fraction(126) / CUP,
        water=Fraction("11.93"),
        sources={"grams_per_ml": "USDA SR28 20081, 1 cup = 126 g", "water": "USDA SR28 20081"},
    )
    assert len(list(faults_of_weight(wrong))) == 1
    assert len(list(faults_of_composition(wrong))) == 1
    absent = Ingredient(name="flour", sources={"grams_per_ml": "USDA SR28 20081, 1 vat = 126 g"})
    with pytest.raises(KeyError):
        list(faults_of_weight(absent))


# Grams a US cup and grams a teaspoon (USDA SR Legacy household measures, from memory).
A_CUP: Mapping[str, int] = {
    "water": 237,
    "whole milk": 244,
    "buttermilk": 245,
    "yogurt": 245,
    "heavy cream": 238,
    "all-purpose flour": 125,
    "bread flour": 137,
    "whole wheat flour": 120,
    "rye flour": 102,
    "granulated sugar": 200,
    "brown sugar": 220,
    "icing sugar": 120,
    "butter": 227,
    "vegetable oil": 218,
    "honey": 339,
    "molasses": 337,
    "cocoa powder": 86,
    "rolled oats": 81,
    "raisins": 145,
    "walnuts": 117,
    "pecans": 109,
    "canned pumpkin": 245,
    "mashed banana": 225,
}
A_TEASPOON: Mapping[str, str] = {
    "table salt": "6.0",
    "baking powder": "4.6",
    "baking soda": "4.6",
    "cinnamon": "2.6",
    "vanilla extract": "4.2",
    "active dry yeast": "3.11",
    "instant yeast": "3.11",
}


@pytest.mark.parametrize(("name", "grams"), A_CUP.items())
def test_a_cup_weighs_what_bakers_tables_say(name: str, grams: int) -> None:
    found = built_in().find(name)
    assert found is not None
    assert found.grams_per_ml is not None
    assert abs(found.grams_per_ml * CUP - grams) / grams <= Fraction(2, 100)


@pytest.mark.parametrize(("name", "grams"), A_TEASPOON.items())
def test_a_teaspoon_weighs_what_bakers_tables_say(name: str, grams: str) -> None:
    found = built_in().find(name)
    assert found is not None
    assert found.grams_per_ml is not None
    assert abs(found.grams_per_ml * CUP / 48 - Fraction(grams)) / Fraction(grams) <= Fraction(2, 100)


@pytest.mark.parametrize(
    ("name", "percent"),
    [
        # Agriculture Handbook 8 (1976) as bakers quote it, to the whole percent or better.
        ("whole milk", "88.0"),
        ("buttermilk", "90.1"),
        ("skim milk", "90.8"),
        ("heavy cream", "57.7"),
        ("salted butter", "15.9"),
        ("yogurt", "88.0"),
        ("evaporated milk", "74.0"),
        ("sweetened condensed milk", "27.2"),
        ("egg white", "87.8"),
        ("honey", "17.1"),
        ("molasses", "22"),
        ("maple syrup", "32"),
        ("banana", "75"),
        ("pumpkin purée", "90"),
        ("ricotta", "72"),
        ("boiled potato", "77"),
        ("fresh yeast", "69"),
        ("ghee", "0"),
        ("granulated sugar", "0"),
    ],
)
def test_water_is_near_the_older_handbook(name: str, percent: str) -> None:
    found = built_in().find(name)
    assert found is not None
    assert found.water is not None
    assert abs(found.water - Fraction(percent)) <= Fraction(1, 2)
