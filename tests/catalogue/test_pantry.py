"""The pantry adds to the catalogue, and every mistake in it is told at its place."""

from fractions import Fraction

import pytest

from generator.catalogue.ingredient import US_CUP_ML, Ingredient
from generator.catalogue.load import Pack, Pantry, built_in, empty_pantry, read_pantry
from generator.diagnostics.diagnostic import Diagnostics
from generator.measure.unit import SPOONS
from generator.source.front_matter import read_keys
from generator.source.lines import Places


def read(text: str) -> tuple[Pantry, Diagnostics]:
    document, faults = read_keys(Places("pantry.yaml", text), 0, len(text))
    assert faults == ()
    return read_pantry(document, catalogue=built_in(), spoons=SPOONS["us"])


def ingredient(text: str, name: str) -> Ingredient:
    pantry, faults = read(text)
    assert [each for each in faults if each.code != "P010"] == []
    found = pantry.ingredient(name)
    assert found is not None
    return found


def pack(text: str, name: str) -> Pack:
    found = read(text)[0].pack_for(name)
    assert found is not None
    return found


FLOUR = """\
bread flour:
  label: Bread flour (wheat flour, malted barley flour)
  contains: [wheat, barley]
  cup: 128 g
  checked: 2026-09-01
"""
PEEL = """\
bought candied peel:
  is: candied orange peel
  label: Candied peel (orange peel, glucose syrup, sugar, preservative (sulphur dioxide))
  contains: [sulphites]
  may_contain: [tree nuts]
"""


def test_a_catalogue_name_is_added_to() -> None:
    flour = ingredient(FLOUR, "strong flour")
    assert flour.name == "bread flour"
    assert flour.allergens == ("barley", "wheat")
    assert flour.flour
    assert flour.often == ()


def test_the_makers_own_weighing_wins_over_the_setting() -> None:
    flour = ingredient(FLOUR, "bread flour")
    for filling in ("spooned", "dipped"):
        assert flour.weight_per_ml(flour_cup=filling) == Fraction(128) / US_CUP_ML
    assert flour.sources["grams_per_ml"] == "pantry: bread flour"


def test_the_makers_own_cup_is_the_packed_one_too() -> None:
    sugar = ingredient("brown sugar: {cup: 210 g}", "brown sugar")
    assert sugar.weight_per_ml(flour_cup="spooned", form="packed") == Fraction(210) / US_CUP_ML
    assert sugar.weight_per_ml(flour_cup="spooned", form="unpacked") == Fraction(145) / US_CUP_ML


def test_a_pack_with_a_name_of_its_own_stands_in() -> None:
    peel = ingredient(PEEL, "Bought candied peels")
    assert (peel.name, peel.label_name) == ("bought candied peel", "candied orange peel")
    assert (peel.allergens, peel.ask) == (("sulphites",), ())
    assert peel.water == Fraction("16.70")
    assert pack(PEEL, "bought candied peel").may_contain == ("tree nuts",)


def test_a_stand_in_does_not_speak_for_the_ingredient_itself() -> None:
    pantry, _ = read(PEEL)
    assert pantry.ingredient("candied orange peel") is None
    assert pantry.pack_for("candied orange peel") is None


def test_a_pack_never_takes_an_allergen_away() -> None:
    assert ingredient("butter: {label: Butter, contains: []}", "butter").allergens == ("milk",)


def test_a_thing_of_the_makers_own_is_what_its_row_states() -> None:
    own = ingredient("oat crunch: {contains: [oats], water: 3 %, cup: 100 g, piece: 12 g}", "oat crunch")
    assert (own.allergens, own.ask, own.fat) == (("oats",), (), None)
    assert own.water == 3
    assert own.grams_per_ml == Fraction(100) / US_CUP_ML
    assert dict(own.pieces) == {"": 12}
    assert not own.flour


def test_a_thing_of_the_makers_own_may_be_flour() -> None:
    assert ingredient("mill blend: {contains: [wheat], flour: yes}", "mill blend").flour


def test_a_thing_of_the_makers_own_is_unknown_until_its_pack_is_read() -> None:
    own = ingredient("oat crunch: {cup: 100 g}", "oat crunch")
    assert own.ask == ("oat crunch: say in the pantry what its pack contains",)


@pytest.mark.parametrize(
    ("row", "asked"),
    [
        ("{contains: [], label: Margarine (oils)}", False),
        ("{contains: [], checked: 2026-09-01}", False),
        ("{contains: [milk]}", False),
        ("{contains: []}", True),
        ("{label: Margarine (oils)}", True),
        ("{contains: , label: Margarine (oils)}", True),
        ("{cup: 227 g}", True),
    ],
)
def test_when_a_pack_counts_as_read(row: str, *, asked: bool) -> None:
    assert bool(ingredient(f"margarine: {row}", "margarine").ask) is asked


def test_an_unread_pack_is_a_nudge_where_only_the_pack_can_tell() -> None:
    _, faults = read("margarine: {cup: 227 g}\nbutter: {cup: 226 g}\n")
    assert [(each.code, each.message) for each in faults] == [
        ("P010", "what “margarine” contains is not said")
    ]


def test_a_copied_label_is_no_nudge() -> None:
    _, faults = read("margarine: {label: 'Margarine (rapeseed oil, water)'}\n")
    assert faults == ()


def test_no_pantry_at_all() -> None:
    assert empty_pantry(catalogue=built_in()).names() == ()
    pantry, faults = read_pantry(None, catalogue=built_in(), spoons=SPOONS["us"])
    assert (pantry.ingredient("butter"), faults) == (None, ())


def test_labels_and_places_are_kept() -> None:
    found = pack(FLOUR, "bread flour")
    assert found.label == "Bread flour (wheat flour, malted barley flour)"
    assert found.label_span is not None
    assert (found.span.line, found.label_span.line) == (1, 2)
    assert str(found.checked) == "2026-09-01"


def test_spoons_follow_the_setting() -> None:
    text = "oat crunch: {contains: [oats], tbsp: 20 g}"
    document, _ = read_keys(Places("pantry.yaml", text), 0, len(text))
    pantry, _ = read_pantry(document, catalogue=built_in(), spoons=SPOONS["australian"])
    found = pantry.ingredient("oat crunch")
    assert found is not None
    assert found.grams_per_ml == 1


@pytest.mark.parametrize(
    ("text", "code", "column", "message", "hint"),
    [
        (
            "oats, rolled: {}",
            "P001",
            1,
            "“oats, rolled” has a comma",
            "An item ends at its first comma: leave it out.",
        ),
        (
            "butter: yes please",
            "P002",
            9,
            "“butter” needs keys and values",
            "Write what the pack says below it, as in “contains: [wheat]”.",
        ),
        (
            "my flour: {is: bred flour}",
            "P003",
            16,
            "the catalogue does not know “bred flour”",
            "Did you mean “bread flour” or “rye flour” or “barley flour”?",
        ),
        (
            "butter: {is: margarine}",
            "P004",
            14,
            "“butter” is an ingredient of the catalogue and cannot stand in for “margarine”",
            "Give the pack a name of its own.",
        ),
        (
            "butter: {contains: [milk, almnod]}",
            "P005",
            27,
            "“almnod” is not an allergen known here",
            "Did you mean “almond” or “salmon” or “egg”?",
        ),
        (
            "butter: {cup: 227}",
            "P006",
            15,
            "“227” is not a weight",
            "Write one weight, as in 128 g.",
        ),
        (
            "butter: {cup: 220-230 g}",
            "P006",
            15,
            "“220-230 g” is not a weight",
            "Write one weight, as in 128 g.",
        ),
        (
            "butter: {flour: yes}",
            "P008",
            17,
            "whether “butter” counts as flour is settled by the catalogue",
            "Delete it; only a thing of your own says whether it is flour.",
        ),
        (
            "butter: {water: lots}",
            "P009",
            17,
            "“lots” is not grams in 100 g",
            "Write a number from 0 to 100, as in 16 g.",
        ),
        (
            "butter: {fat: 182 %}",
            "P009",
            15,
            "“182 %” is not grams in 100 g",
            "Write a number from 0 to 100, as in 16 g.",
        ),
        (
            "butter: {contans: [milk]}",
            "S060",
            10,
            "a pantry row has no key “contans”",
            "Did you mean “contains” or “may_contain”?",
        ),
    ],
)
def test_mistakes(text: str, code: str, column: int, message: str, hint: str) -> None:
    _, faults = read(text)
    found = [(each.code, each.span.column, each.message, each.hint) for each in faults if each.code != "P010"]
    assert found == [(code, column, message, hint)]


def test_two_rows_for_one_ingredient() -> None:
    _, faults = read("bread flour: {cup: 128 g}\nStrong flour: {cup: 130 g}\n")
    assert [(each.code, each.span.line, each.message) for each in faults] == [
        ("P007", 2, "“Strong flour” and “bread flour” are one ingredient")
    ]
