"""The packaged rows: whole, sourced, and read loudly."""

from fractions import Fraction

import pytest

from generator.catalogue.ingredient import US_CUP_ML, Ingredient
from generator.catalogue.load import built_in
from generator.catalogue.names import fold
from generator.catalogue.rows import FaultyRow, read_rows

ROWS = tuple(built_in())


def _row(name: str) -> Ingredient:
    found = built_in().find(name)
    assert found is not None
    return found


def test_there_are_enough() -> None:
    assert len(ROWS) >= 200


def test_no_two_rows_share_a_name() -> None:
    names = [name for row in ROWS for name in row.names]
    assert len(names) == len(set(names))


@pytest.mark.parametrize("row", ROWS, ids=lambda row: str(row.name))
def test_every_value_has_a_source(row: Ingredient) -> None:
    fields = [
        each for each in ("grams_per_ml", "water", "fat", "sugar", "salt") if getattr(row, each) is not None
    ]
    for kind in ("modifiers", "pieces", "units"):
        fields += [f"{kind}.{word}" for word in getattr(row, kind)]
    assert [each for each in (*fields, "allergens") if not row.sources.get(each)] == []


@pytest.mark.parametrize("row", ROWS, ids=lambda row: str(row.name))
def test_every_row_is_possible(row: Ingredient) -> None:
    composition = [each for each in (row.water, row.fat, row.sugar, row.salt) if each is not None]
    assert all(0 <= each <= 100 for each in composition)
    # Handbook figures are rounded one by one, so a sum may pass 100 by a little.
    assert sum(composition) <= Fraction("100.5")
    weights = [row.grams_per_ml, *row.modifiers.values()]
    assert all(Fraction(1, 20) < each < 2 for each in weights if each is not None)
    assert fold(row.name) in row.names
    assert row.label_name


@pytest.mark.parametrize(
    "name",
    [
        *("rolled oats", "oat flour", "almond flour", "ground almonds", "cornstarch", "vital wheat gluten"),
        *("cocoa powder", "cornmeal", "coconut flour", "chickpea flour", "soy flour", "potato flour"),
        *("wheat germ", "wheat starch"),
    ],
)
def test_what_does_not_count_as_flour(name: str) -> None:
    assert not _row(name).flour


@pytest.mark.parametrize(
    "name",
    [
        *(
            "all-purpose flour",
            "bread flour",
            "whole wheat flour",
            "spelt flour",
            "rye flour",
            "dark rye flour",
        ),
        *("semolina", "buckwheat flour", "rice flour", "masa harina", "teff flour", "millet flour"),
        *("barley flour", "light rye flour"),
    ],
)
def test_what_counts_as_flour(name: str) -> None:
    assert _row(name).flour


@pytest.mark.parametrize(
    "name", ["kosher salt", "coarse salt", "flaky salt", "sea salt", "spelt flour", "almond flour"]
)
def test_what_has_no_honest_weight_per_volume(name: str) -> None:
    assert _row(name).grams_per_ml is None
    assert _row(name).sources["grams_per_ml"]


@pytest.mark.parametrize("name", ["all-purpose flour", "bread flour", "cake flour", "00 flour"])
def test_the_cup_of_white_flour_is_the_way_of_filling_it(name: str) -> None:
    flour = _row(name)
    assert flour.weight_per_ml(flour_cup="spooned") == Fraction(125) / US_CUP_ML
    assert flour.weight_per_ml(flour_cup="dipped") == Fraction(137) / US_CUP_ML
    assert flour.weight_per_ml(flour_cup="spooned", form="dipped") == Fraction(137) / US_CUP_ML


def test_the_setting_rules_white_flour_only() -> None:
    for name in ("whole wheat flour", "rye flour", "granulated sugar"):
        plain = _row(name)
        assert plain.weight_per_ml(flour_cup="spooned") == plain.weight_per_ml(flour_cup="dipped")


def test_water_is_exactly_a_gram_a_millilitre() -> None:
    assert _row("water").grams_per_ml == 1
    assert _row("water").water == 100


def test_a_packet_of_yeast_is_seven_grams_and_two_and_a_quarter_teaspoons() -> None:
    for name in ("active dry yeast", "instant yeast"):
        yeast = _row(name)
        assert yeast.units["packet"] == 7
        assert yeast.grams_per_ml is not None
        assert yeast.grams_per_ml * US_CUP_ML / 48 * Fraction(9, 4) == 7


def test_the_sodium_of_leavening_is_not_salt() -> None:
    for name in ("baking powder", "baking soda", "cream of tartar"):
        assert _row(name).salt == 0
        assert "not salt" in _row(name).sources["salt"]


def test_salt_is_salt() -> None:
    assert [row.name for row in ROWS if row.salt_added] == [row.name for row in ROWS if row.salt == 100]


def test_nominal_liquids_are_water_and_milk() -> None:
    names = {row.name for row in ROWS if row.nominal_liquid}
    assert {"water", "whole milk", "skim milk", "soy milk"} <= names
    assert names.isdisjoint({"buttermilk", "egg", "honey", "heavy cream", "yogurt", "butter"})


def test_eggs_by_size() -> None:
    sizes = {"small": 38, "medium": 44, "large": 50, "extra large": 56, "jumbo": 63}
    assert dict(_row("egg").pieces) == {"": 50, **sizes}
    assert _row("egg yolk").pieces["large"] == 17
    assert _row("egg white").pieces["large"] == 33


def test_packed_and_sifted() -> None:
    sugar, icing = _row("brown sugar"), _row("icing sugar")
    assert sugar.grams_per_ml == sugar.modifiers["packed"] == Fraction(220) / US_CUP_ML
    assert sugar.modifiers["unpacked"] == Fraction(145) / US_CUP_ML
    assert icing.modifiers["sifted"] == Fraction(100) / US_CUP_ML


@pytest.mark.parametrize(
    "row",
    [
        "- {name: x, colour: red}",
        "- {name: x, allergens: [coconut]}",
        '- {name: x, weight: {g: 1, per: "a cup", by: z}}',
        '- {name: x, weight: {g: 1, per: "1 vat", by: z}}',
        '- {name: x, weight: {g: "1", per: "1 cup", by: z}}',
        '- {name: x, weight: {g: 1, per: "1 cup", by: z, to: y}}',
        "- {name: x, cautions: [sharp]}",
        "- {name: x, labels: {france: y}}",
        "- {name: x, composition: {protein: 1, by: z}}",
        "- {name: x, ask: why}",
        "- {name: 3}",
    ],
)
def test_a_faulty_row_is_never_passed_over(row: str) -> None:
    with pytest.raises(FaultyRow):
        read_rows(row, group="flour")
