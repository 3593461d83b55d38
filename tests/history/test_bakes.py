"""Bake records: what they mean, and every mistake at its place."""

from datetime import date
from fractions import Fraction

from generator.catalogue.load import built_in, read_pantry
from generator.diagnostics.diagnostic import Diagnostics
from generator.formula.book import understand_all
from generator.formula.intake.recipe import read_recipe
from generator.formula.shelf import Shelf
from generator.history.bakes import BakeRecord, newest_bake, read_bakes
from generator.measure.number import Range
from generator.measure.unit import SPOONS
from generator.source.read import read_document, read_mapping

PANTRY = """\
bread flour:
  label: Bread flour (wheat flour)
  contains: [wheat]
strong flour of the mill:
  is: bread flour
  label: Strong flour (wheat flour, malted barley flour)
  contains: [wheat, barley]
raisins:
  label: Raisins
  contains: []
"""
LOAF = """\
---
title: Loaf
formula:
  - 500 g bread flour
  - 300 g water
  - 2 eggs
  - 10 g honey
---
## Method
1. Mix the {bread flour}, {water}, {eggs} and {honey}. {bake 30 min} at {oven 350 F}.
"""
PATH = "bakes/2026-11-08-loaf.yaml"


def read(text: str, path: str = PATH) -> tuple[tuple[BakeRecord, ...], Diagnostics]:
    keys, _ = read_mapping("pantry.yaml", PANTRY.encode())
    pantry, _ = read_pantry(keys, catalogue=built_in(), spoons=SPOONS["us"])
    shelf = Shelf(catalogue=built_in(), pantry=pantry, spoons=SPOONS["us"], flour_cup="spooned", egg="large")
    document, _ = read_document("recipes/loaf.md", LOAF.encode(), "recipe")
    assert document is not None
    written, _ = read_recipe(document, spoons=shelf.spoons)
    book = understand_all({"loaf": written}, faulty=set(), shelf=shelf).formulas
    record, wrong = read_mapping(path, text.encode())
    assert record is not None, wrong
    return read_bakes(((path, record),), names=tuple(book), book=book, shelf=shelf)


def told(text: str, path: str = PATH) -> list[str]:
    return [
        f"{each.span.line}:{each.span.column} {each.code} {each.message} / {each.hint}"
        for each in read(text, path)[1]
    ]


def test_a_whole_record() -> None:
    records, found = read(
        "recipe: loaf\nday: 2026-11-08\nrevision: 1\nroom: 66 F\nweather: rain\n"
        "packs: [Strong flour of the mill]\n"
        "added:\n  - {what: bread flour, amount: 2 tbsp, when: after 8 min}\n  - {what: raisins, amount: 1/2 oz}\n"
        "left:\n  - {what: honey, amount: 6 g}\ndough: 2 lb 4 oz\nbaked: 908 g\nnote: slow\nnext: earlier\n"
    )
    assert found == ()
    (record,) = records
    assert (record.recipe, record.day, record.revision) == ("loaf", date(2026, 11, 8), 1)
    assert (record.room, record.weather, record.note, record.next) == ("66 F", "rain", "slow", "earlier")
    assert record.pack_names == ("strong flour of the mill",)
    flour, raisins = record.added
    assert flour.line is not None
    assert flour.grams is not None
    assert flour.grams.mid == Fraction(125) / 8
    assert raisins.line is None
    assert raisins.grams is not None
    assert raisins.grams.mid == Fraction("28.349523125") / 2
    assert record.whens == ("after 8 min", "")
    assert record.left[0].grams is not None
    assert record.dough == Fraction("453.59237") * 2 + Fraction("28.349523125") * 4
    assert record.baked == 908


def test_the_name_of_the_file_gives_recipe_and_day() -> None:
    records, found = read("baked: 700 g\n")
    assert found == ()
    assert [(each.recipe, each.day) for each in records] == [("loaf", date(2026, 11, 8))]


def test_a_piece_that_was_added_weighs_what_a_piece_of_the_formula_weighs() -> None:
    records, found = read("added: [{what: eggs, amount: 1}]\n")
    assert found == ()
    assert records[0].added[0].grams is not None
    assert records[0].added[0].grams.mid == 50


def test_unknown_names_are_told_with_the_nearest() -> None:
    assert told("recipe: loav\n") == [
        "1:9 K001 there is no recipe called “loav” / Did you mean “loaf”?",
    ]
    assert told("packs: [bread flower]\n") == [
        "1:9 K002 the pantry has no row called “bread flower” / Did you mean “bread flour”?"
    ]
    assert told("added:\n  - {what: bred flour, amount: 10 g}\n") == [
        "2:12 K003 neither the bake, the catalogue nor the pantry knows “bred flour” / "
        "Did you mean “bread flour”?"
    ]
    assert told("left:\n  - {what: honye, amount: 10 g}\n") == [
        "2:12 K009 this bake has no “honye” that could be left / Did you mean “honey”?"
    ]


def test_wrong_units_are_told() -> None:
    assert told("added: [{what: honey, amount: 10 gg}]\n") == [
        "1:31 K004 “10 gg” is not an amount / Write a number and a unit, as in 10 g, 2 tsp or 1."
    ]
    assert told("baked: 2 cups\n") == [
        "1:8 K005 “2 cups” is not a weight / Write one weight with its unit, as in 908 g or 2 lb 4 oz."
    ]
    assert told("dough: 900-950 g\n") == [
        "1:8 K005 “900-950 g” is not a weight / Write one weight with its unit, as in 908 g or 2 lb 4 oz."
    ]
    assert told("room: warm\n") == ["1:7 K006 “warm” is not a temperature / Write it as in 66 F or 19 C."]


def test_what_does_not_fit_together_is_asked_about() -> None:
    assert told("day: 2026-11-09\n") == [
        "1:6 K007 this is another day than the file's name says / Write 2026-11-08, or rename the file."
    ]
    assert told("packs: [raisins]\n") == [
        "1:9 K008 nothing in this bake is made of “raisins” / "
        "It is declared all the same. Look at the name, or put what was in under “added:”."
    ]
    assert told("packs: [raisins]\nadded: [{what: raisins, amount: 20 g}]\n") == []
    assert told("dough: 800 g\nbaked: 900 g\n") == [
        "2:8 K010 the baked weight is above that of the dough / "
        "Look at the two weights: a bake loses water in the oven."
    ]


def test_keys_and_shapes_are_looked_at() -> None:
    assert [each.split(" / ")[0] for each in told("pack: [raisins]\nadded: honey\nday: soon\n")] == [
        "1:1 S060 a bake record has no key “pack”",
        "3:6 S063 “soon” is not a date",
        "2:8 K011 this says neither what nor how much",
    ]
    assert [each.split(" / ")[0] for each in told("added: [{amount: 3 g}]\n")] == [
        "1:10 S061 an entry of “added” needs the key “what”"
    ]


def test_the_newest_record_up_to_a_day_is_taken() -> None:
    records = tuple(
        BakeRecord(path=f"bakes/{day}-{name}.yaml", recipe=name, day=date.fromisoformat(day))
        for day, name in (("2026-11-08", "loaf"), ("2026-12-01", "loaf"), ("2026-12-20", "buns"))
    )

    def newest(name: str, **limits: date) -> str:
        found = newest_bake(records, name, **limits)
        return found.path if found else ""

    assert newest("loaf") == "bakes/2026-12-01-loaf.yaml"
    assert newest("loaf", until=date(2026, 11, 30)) == "bakes/2026-11-08-loaf.yaml"
    assert newest("loaf", on=date(2026, 11, 8)) == "bakes/2026-11-08-loaf.yaml"
    assert newest("loaf", on=date(2026, 11, 9)) == newest("pie") == ""


def test_a_scaled_bake_is_reckoned_back_to_the_recipe() -> None:
    text = "size: 1/2\nadded: [{what: water, amount: 10 g}]\nleft: [{what: honey, amount: 2 g}]\n"
    text += "dough: 400 g\nbaked: 350 g\n"
    (record,), found = read(text)
    own = record.as_written
    assert (found, record.size) == ((), Fraction(1, 2))
    assert (own.dough, own.baked, own.size) == (800, 700, None)
    assert [each.grams for each in own.added] == [Range.exact(20)]
    assert [each.grams for each in own.left] == [Range.exact(4)]
    assert own.as_written is own


def test_a_size_is_a_number_above_nothing() -> None:
    for size in ("a tin", "0", "-1", "1-2", "1000"):
        (words,) = told(f"size: {size}")
        hint = "Write how many times the recipe, as in 2 or 1/2: above 0 and at most 100."
        assert words == f"1:7 K014 “{size}” is not a size / {hint}"
