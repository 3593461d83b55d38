"""Worked cases of the rules, with the regulator's example or the rule it is derived from beside each.

The United States and the European Union; `test_labels_regions.py` has the others. FDA holds singular and plural of
a source's name to be the same ("peanut(s)"), so words are compared without it.
"""

from fractions import Fraction

import pytest

from generator.declaration.declare import declare
from generator.declaration.entries import entries
from generator.declaration.model import Declaration
from generator.declaration.regions import region_named
from generator.formula.model import Formula
from tests.declaration.bakes import bake, book, line, marked, pack

ENRICHED = pack(
    "all-purpose flour",
    "Enriched flour (wheat flour, niacin, reduced iron, thiamin mononitrate, riboflavin, folic acid)",
)


def us(formula: Formula) -> Declaration:
    return declare(formula, book=book(formula), region="US")


def eu(formula: Formula) -> Declaration:
    return declare(formula, book=book(formula), region="EU")


def from_label(label: str) -> Formula:
    return bake(line("bought thing", 100, pack("bought thing", label, contains=[])))


def strong(declaration: Declaration) -> list[str]:
    return [each.text.casefold() for each in declaration.ingredients if each.strong]


def test_a_contains_line_names_all_or_nothing() -> None:
    """FDA, questions and answers on FALCPA, 2006: caseinate, whey, yolks, peanut flavor: milk, egg, peanuts."""
    formula = from_label("Cookies (sodium caseinate, whey, egg yolks, natural peanut flavor)")
    assert set(us(formula).contains) >= {"milk", "egg", "peanut"}
    line_words = marked(us(formula).contains_line)
    assert all(word in line_words for word in ("milk", "egg", "peanut"))
    assert eu(formula).contains_line == ()
    assert strong(eu(formula)).count("milk") == 2
    assert {"egg", "peanut"} <= set(strong(eu(formula)))


def test_sources_in_brackets() -> None:
    """FDA consumer page: "flour (wheat), lecithin (soy), whey (milk)" or "Contains wheat, milk, and soy"."""
    formula = bake(
        line("flour mix", 300, pack("flour mix", "Flour", contains=[])),
        line("lecithin", 5, pack("lecithin", "Lecithin (soy)")),
        line("whey drink", 2, pack("whey drink", "Whey", contains=[])),
    )
    assert us(formula).contains == ("wheat", "soy", "milk")
    assert us(formula).finished
    assert marked(eu(formula).ingredients) == (
        "flour (**wheat**), lecithin (soy (**soya**)), whey (**milk**)"
    )


def test_the_bird_is_named_in_the_us_and_not_in_the_eu() -> None:
    """FDA, 2025: "Contains eggs, duck eggs"; Commission Notice 2017/C 428/01: eggs of all farmed birds."""
    formula = bake(line("eggs", 100), line("pond eggs", 70, pack("pond eggs", "Duck eggs")))
    assert us(formula).contains == ("egg", "duck egg")
    assert marked(us(formula).contains_line) == "**Contains: egg, duck egg**."
    assert eu(formula).contains == ("egg",)
    assert strong(eu(formula)) == ["egg", "eggs"]


def test_wine_gluten_and_milk_powder() -> None:
    """Commission Notice 2017/C 428/01, 3.1 and 3.2: "wine (contains sulphites)", "gluten (wheat)", "milk powder"."""
    formula = bake(
        line("cooking wine", 100, pack("cooking wine", "Wine", contains=["sulphites"])),
        line("binder", 20, pack("binder", "Gluten (wheat)")),
        line("dry milk", 10, pack("dry milk", "Milk powder", contains=["milk"])),
    )
    assert us(formula).contains == ("wheat", "milk")
    assert "wine (sulfites)" in marked(us(formula).ingredients)
    listed = marked(eu(formula).ingredients)
    assert "wine (**sulphites**)" in listed
    assert "gluten (**wheat**)" in listed
    assert "**milk** powder" in listed
    assert eu(formula).contains == ("sulphites", "wheat", "milk")
    assert eu(formula).finished


def test_shortbread() -> None:
    """Derived from 21 CFR 101.4(a) and 343(w), and from Articles 18 and 21: 49.75/33.17/16.58/0.50 %."""
    butter = pack("salted butter", "Butter (cream, salt)")
    formula = bake(
        line("all-purpose flour", 300, ENRICHED),
        line("salted butter", 200, butter),
        line("granulated sugar", 100),
        line("table salt", 3),
    )
    found = entries(formula, book=book(formula), region=region_named("US"))
    assert [round(float(each.grams / 603 * 100), 2) for each in found] == [49.75, 33.17, 16.58, 0.5]
    assert marked(us(formula).ingredients) == (
        "enriched flour (wheat flour, niacin, reduced iron, thiamin mononitrate, riboflavin, folic acid), "
        "butter (cream, salt), sugar, contains 2% or less of salt"
    )
    assert "CONTAINS: WHEAT, MILK." in us(formula).statement
    assert marked(eu(formula).ingredients) == (
        "enriched flour (**wheat** flour, niacin, reduced iron, thiamin mononitrate, riboflavin, folic acid), "
        "butter (cream (**milk**), salt), sugar, salt"
    )


def test_chocolate_chip_cookies() -> None:
    """Derived from 21 CFR 101.4(a)(2): the tail is 0.8, 0.6 and 0.6 %; the pack's precaution is carried over."""
    chips = pack(
        "chocolate chips",
        "Chocolate chips [sugar, cocoa mass, cocoa butter, milkfat, soy lecithin; may contain peanuts, tree nuts]",
    )
    formula = bake(
        line("all-purpose flour", 380, ENRICHED),
        line("chocolate chips", 250, chips),
        line("brown sugar", 150),
        line("unsalted butter", 130),
        line("eggs", 70),
        line("vanilla extract", 8),
        line("table salt", 6),
        line("baking soda", 6),
    )
    declaration = us(formula)
    assert declaration.finished
    listed = marked(declaration.ingredients)
    order = ("enriched flour", "chocolate chips", "brown sugar", "butter", "egg", "vanilla extract")
    places = [listed.index(each) for each in order[:3]]
    assert places == sorted(places)
    assert listed.endswith("contains 2% or less of: vanilla extract, salt, baking soda")
    assert declaration.contains == ("wheat", "milk", "soy", "egg")
    assert "CONTAINS: WHEAT, MILK, SOY, EGG." in declaration.statement
    assert declaration.may_contain == ("peanut", "tree nuts")
    assert marked(declaration.may_line) == "May contain **peanuts**, **tree nuts**."
    assert {"wheat", "milk", "soya", "egg"} <= set(strong(eu(formula)))
    assert marked(eu(formula).may_line) == "May contain **peanuts**, **nuts**."


def test_a_refined_oil_does_not_name_the_source_of_the_lecithin() -> None:
    """21 USC 343(w)(1)(B)(ii): a mention in the name of what is no allergen does not count."""
    formula = from_label("Shortening (highly refined soybean oil, lecithin (soy))")
    assert us(formula).contains == ("soy",)
    assert us(from_label("Highly refined soybean oil")).contains == ()
    assert eu(from_label("Highly refined soybean oil")).contains == ("soy",)
    assert eu(from_label("Fully refined soybean oil")).contains == ()
    assert eu(from_label("Fully refined peanut oil")).contains == ("peanut",)


def test_halva() -> None:
    """Derived: sesame since the FASTER Act 2021; the nut by its own name, 21 USC 343(w)(2)."""
    formula = bake(line("tahini", 200), line("granulated sugar", 150), line("pistachios", 50))
    assert us(formula).contains == ("sesame", "pistachio")
    assert "CONTAINS: SESAME, PISTACHIO." in us(formula).statement
    listed = marked(eu(formula).ingredients)
    assert listed.startswith("tahini (**sesame**)")
    assert "**pistachio" in listed


def test_precaution_in_a_tart() -> None:
    """Derived from good practice (CFIA): what is contained is not warned of; the rest of the warning stays."""
    chocolate = pack(
        "dark chocolate", "Dark chocolate (cocoa mass, sugar). May contain milk, hazelnut, almond."
    )
    formula = bake(
        line("all-purpose flour", 250),
        line("butter", 150),
        line("dark chocolate", 100, chocolate),
        line("frangipane", 80, pack("frangipane", "Frangipane (sugar, butter, almonds, eggs)")),
    )
    for declaration in (us(formula), eu(formula)):
        assert {"wheat", "milk", "almond"} <= set(declaration.contains)
        assert declaration.may_contain == ("hazelnut",)


def test_water_in_bread() -> None:
    """Derived from Annex VII, part A: 1480 g finished less 1030 g is 450 g of water, 30.4 %."""
    formula = bake(
        line("bread flour", 1000),
        line("water", 680),
        line("table salt", 20),
        line("instant yeast", 10),
        finished=1480,
    )
    found = entries(formula, book=book(formula), region=region_named("EU"))
    water = next(each for each in found if each.water)
    assert water.grams == 450
    assert round(float(water.grams / Fraction(1480) * 100), 1) == 30.4
    assert marked(eu(formula).ingredients) == "**wheat** flour, water, salt, yeast"
    assert marked(us(formula).ingredients) == "wheat flour, water, contains 2% or less of: salt, yeast"


@pytest.mark.parametrize("words", ["natural flavor", "gelatin", "lecithin", "margarine"])
def test_without_a_pack_the_state_is_unknown(words: str) -> None:
    """21 USC 343(w)(4): flavours and incidental additives are covered, so what carries them must be read."""
    bought = bake(line("filling", 50, pack("filling", f"Filling (sugar, {words})")))
    for declaration in (us(bought), eu(bought)):
        assert not declaration.finished
        assert declaration.unfinished == "This declaration is not finished. Still to be read: filling."


@pytest.mark.parametrize("item", ["gelatin", "margarine"])
def test_without_a_pack_the_catalogue_does_not_know_either(item: str) -> None:
    assert not us(bake(line(item, 50))).finished
