"""Worked cases of the rules in the United Kingdom, Canada, and Australia and New Zealand, with their basis.

UK: Regulation 1169/2011 as retained. CA: Food and Drug Regulations B.01.010.1 to B.01.010.3. ANZ: Standard 1.2.3 and
Schedule 9.
"""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.declaration.characteristic import shares
from generator.declaration.declare import REGION_NAMES, declare, kitchen_sentence
from generator.declaration.entries import entries
from generator.declaration.model import Declaration
from generator.declaration.regions import region_named
from generator.formula.model import Formula
from generator.measure.number import Range
from generator.present.net_weight import net_weight
from tests.declaration.bakes import bake, book, line, marked, pack
from tests.lots import lots
from tests.reference.test_labels import ENRICHED, from_label


def told(formula: Formula, region: str) -> Declaration:
    return declare(formula, book=book(formula), region=region)


def summary(formula: Formula, region: str) -> str:
    return marked(told(formula, region).contains_line)


def listed(formula: Formula, region: str) -> str:
    return marked(told(formula, region).ingredients)


def test_the_regions_are_the_files_in_a_fixed_order() -> None:
    assert REGION_NAMES == ("US", "EU", "UK", "CA", "ANZ")
    for name in REGION_NAMES:
        rules = region_named(name)
        assert rules.id == name
        assert rules.sources
        assert rules.checked.isoformat() == "2026-11-25"
        assert "10" in rules.sulphites_from
    lines = {name: region_named(name).contains_line for name in REGION_NAMES}
    assert lines == {
        "US": "allowed",
        "EU": "not allowed",
        "UK": "not allowed",
        "CA": "allowed",
        "ANZ": "required",
    }


def test_an_unknown_region_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        region_named("XX")


def test_all_sources_stand_in_the_contains_line() -> None:
    """The FDA's example of 2006 under B.01.010.3 (the statement is complete) and under Standard 1.2.3."""
    formula = from_label("Snack (sodium caseinate, whey, egg yolks, natural peanut flavor)")
    assert summary(formula, "CA") == "**Contains: milk, egg, peanuts**."
    assert summary(formula, "ANZ") == "**Contains milk, egg, peanut**."
    assert listed(formula, "ANZ") == (
        "snack (sodium caseinate (**milk**), whey (**milk**), **egg** yolks, natural **peanut** flavor)"
    )
    assert summary(formula, "UK") == ""


def test_sources_in_brackets() -> None:
    formula = bake(
        line("flour mix", 300, pack("flour mix", "Flour", contains=[])),
        line("lecithin", 5, pack("lecithin", "Lecithin (soy)")),
        line("whey drink", 2, pack("whey drink", "Whey", contains=[])),
    )
    assert listed(formula, "UK") == "flour (**wheat**), lecithin (soy (**soya**)), whey (**milk**)"
    assert listed(formula, "ANZ") == "flour (**wheat**), lecithin (**soy**), whey (**milk**)"
    assert summary(formula, "ANZ") == "**Contains wheat, gluten, soy, milk**."
    assert summary(formula, "CA") == "**Contains: wheat, soy, milk**."


def test_eggs_of_all_birds_are_egg() -> None:
    formula = bake(line("eggs", 100), line("pond eggs", 70, pack("pond eggs", "Duck eggs")))
    for region in ("UK", "CA", "ANZ"):
        assert told(formula, region).contains == ("egg",)


def test_wine_gluten_and_milk_powder() -> None:
    """Canada wants "sulphites" in a Contains statement though the list says them too (B.01.010.3)."""
    formula = bake(
        line("cooking wine", 100, pack("cooking wine", "Wine", contains=["sulphites"])),
        line("binder", 20, pack("binder", "Gluten (wheat)")),
        line("dry milk", 10, pack("dry milk", "Milk powder", contains=["milk"])),
    )
    assert summary(formula, "CA") == "**Contains: sulphites, wheat, milk**."
    assert summary(formula, "ANZ") == "**Contains sulphites, wheat, gluten, milk**."
    for region in ("UK", "ANZ"):
        assert "wine (**sulphites**)" in listed(formula, region)
        assert "gluten (**wheat**)" in listed(formula, region)
        assert "**milk** powder" in listed(formula, region)


def test_every_gluten_source_is_in_the_canadian_line() -> None:
    """Oats, rye and barley are gluten sources though no priority allergens; "wheat or triticale" is one."""
    formula = bake(
        line("rolled oats", 50), line("rye flour", 40), line("barley flour", 30), line("triticale flour", 20)
    )
    assert summary(formula, "CA") == "**Contains: oats, rye, barley, triticale, wheat**."


def test_the_grain_is_in_the_list_and_gluten_in_the_summary() -> None:
    """ "wheat, gluten" for wheat; "gluten" for barley, rye and oats: quoted from guidance, to be checked again."""
    oats = bake(line("rolled oats", 50), line("rye flour", 40))
    assert told(oats, "ANZ").contains == ("oats", "gluten", "rye")
    assert listed(oats, "ANZ") == "rolled **oats**, **rye** flour"
    assert summary(oats, "ANZ") == "**Contains gluten**."
    assert summary(bake(line("bread flour", 50)), "ANZ") == "**Contains wheat, gluten**."


def test_shortbread() -> None:
    formula = bake(
        line("all-purpose flour", 300, ENRICHED),
        line("salted butter", 200, pack("salted butter", "Butter (cream, salt)")),
        line("granulated sugar", 100),
        line("table salt", 3),
    )
    vitamins = "niacin, reduced iron, thiamin mononitrate, riboflavin, folic acid"
    bold = f"enriched flour (**wheat** flour, {vitamins}), butter (cream (**milk**), salt), sugar, salt"
    assert listed(formula, "UK") == listed(formula, "ANZ") == bold
    assert (
        listed(formula, "CA")
        == f"enriched flour (wheat flour, {vitamins}), butter (cream, salt), sugar, salt"
    )
    assert summary(formula, "CA") == "**Contains: wheat, milk**."


def test_precautions_have_the_words_of_each_region() -> None:
    """CA: one form, "may contain" (CFIA). ANZ: kept apart from the summary, "may be present: …" (P1044, quoted)."""
    chips = pack("chocolate chips", "Chips [sugar, milkfat, soy lecithin; may contain peanuts, tree nuts]")
    formula = bake(line("chocolate chips", 250, chips))
    assert marked(told(formula, "UK").may_line) == "May contain **peanuts**, **nuts**."
    assert marked(told(formula, "CA").may_line) == "May contain **peanuts**, **tree nuts**."
    assert marked(told(formula, "ANZ").may_line) == "May be present: **peanut**, **tree nuts**."
    assert summary(formula, "ANZ") == "**Contains milk, soy**."


def test_what_is_contained_is_not_warned_of() -> None:
    """CFIA: not to be used where the food was added; the rest of the warning stays."""
    chocolate = pack(
        "dark chocolate", "Dark chocolate (cocoa mass, sugar). May contain milk, hazelnut, almond."
    )
    formula = bake(
        line("butter", 150),
        line("dark chocolate", 100, chocolate),
        line("frangipane", 80, pack("frangipane", "Frangipane (sugar, butter, almonds, eggs)")),
    )
    for region in REGION_NAMES:
        assert told(formula, region).may_contain == ("hazelnut",)


def test_halva_names_the_nut() -> None:
    formula = bake(line("tahini", 200), line("granulated sugar", 150), line("pistachios", 50))
    assert summary(formula, "CA") == "**Contains: sesame, pistachios**."
    assert summary(formula, "ANZ") == "**Contains sesame, pistachio**."
    assert listed(formula, "ANZ") == "tahini (**sesame**), sugar, **pistachios**"


@pytest.mark.parametrize(("region", "grams"), [("UK", 450), ("CA", 680), ("ANZ", 450)])
def test_water_in_bread(region: str, grams: int) -> None:
    """Annex VII, part A: what stays in the finished food; Canada by the weight before mixing (B.01.008.2, memory)."""
    formula = bake(
        line("bread flour", 1000),
        line("water", 680),
        line("table salt", 20),
        line("instant yeast", 10),
        finished=1480,
    )
    found = entries(formula, book=book(formula), region=region_named(region))
    assert next(each.grams for each in found if each.water) == grams
    assert "2%" not in listed(formula, region)


def test_a_class_word_is_no_name_where_kinds_are_wanted() -> None:
    """B.01.010.1 and Schedule 9: each nut by its name; Canada: fish and molluscs by theirs too (memory)."""
    nuts, fish = from_label("Mix (sugar, nuts)"), from_label("Paste (fish, salt)")
    assert [told(nuts, each).finished for each in ("UK", "CA", "ANZ")] == [False, False, False]
    assert [told(fish, each).finished for each in ("UK", "CA", "ANZ")] == [True, False, True]
    assert told(from_label("Paste (salmon, salt)"), "CA").finished


def test_the_kitchen_speaks_the_words_of_the_region() -> None:
    assert kitchen_sentence(("shellfish", "oats"), contains=(), region="ANZ") == (
        "Made in a home kitchen that also handles crustacean, mollusc, oats and gluten."
    )
    assert kitchen_sentence(("shellfish",), contains=(), region="US") == (
        "Made in a home kitchen that also handles crustacean shellfish and mollusc."
    )


@pytest.mark.parametrize("region", REGION_NAMES)
@pytest.mark.parametrize("words", ["natural flavor", "gelatin", "lecithin", "margarine"])
def test_without_a_pack_the_state_is_unknown(words: str, region: str) -> None:
    bought = bake(line("filling", 50, pack("filling", f"Filling (sugar, {words})")))
    declaration = told(bought, region)
    assert not declaration.finished
    assert declaration.unfinished == "This declaration is not finished. Still to be read: filling."


@pytest.mark.parametrize(
    ("grams", "american", "european"),
    [
        ("681", "1 lb 8 oz (680 g)", "680 g"),
        ("680", "1 lb 7.9 oz (680 g)", "680 g"),
        ("341", "12 oz (340 g)", "340 g"),
        ("340", "11.9 oz (340 g)", "340 g"),
        ("227", "8 oz (227 g)", "227 g"),
        ("226.9", "7.9 oz (226 g)", "226 g"),
        ("20", "0.7 oz (20 g)", "20 g"),
    ],
)
def test_net_weight_is_rounded_down(grams: str, american: str, european: str) -> None:
    """21 CFR 101.7 for the form; 1 lb 8 oz is 680.39 g, 12 oz 340.19 g, 8 oz 226.80 g (NIST SP 811)."""
    assert (net_weight(Fraction(grams), "US").lead, net_weight(Fraction(grams), "US").large) == (
        "Net wt",
        american,
    )
    assert net_weight(Fraction(grams), "CA").large == american
    for region in ("EU", "UK", "ANZ"):
        assert net_weight(Fraction(grams), region).large == european


@given(st.integers(1, 5000))
@settings(max_examples=lots(300))
def test_no_net_weight_is_above_what_was_weighed(grams: int) -> None:
    net = net_weight(Fraction(grams), "EU")
    assert grams - 1 <= net.grams <= grams


def test_names_are_spelt_as_the_region_spells_them() -> None:
    """The catalogue's names are those of the US; a pack's own words stay as they are printed."""
    sour = line("sour cream", 100)
    flakes = line("gelatin", 5, pack("gelatin", contains=[]))
    told_in = {
        each: listed(bake(sour, flakes, line("whole wheat flour", 300)), each) for each in REGION_NAMES
    }
    assert "gelatin" in told_in["US"]
    assert "gelatine" not in told_in["US"]
    assert "gelatine" in told_in["UK"]
    assert "gelatine" in told_in["ANZ"]
    assert "gelatin" in told_in["CA"]
    assert "gelatine" not in told_in["CA"]
    assert "wholemeal" in told_in["UK"]
    assert "wholemeal" in told_in["ANZ"]
    assert "whole wheat flour" in told_in["US"]
    assert "whole wheat flour" in told_in["CA"]
    printed = bake(line("thing", 5, pack("thing", "Thing (sugar, color, natural flavor)", contains=[])))
    assert "sugar, color, natural flavor" in listed(printed, "UK")


@pytest.mark.parametrize("region", REGION_NAMES)
def test_the_share_of_what_the_name_speaks_of(region: str) -> None:
    """Article 22 and Notice 2017/C 393/05: butter in butter shortbread; no such rule in general in the US.

    It is for what is sold packed in advance: the maker is told, and the list of a gift is without it.
    """
    plain = bake(
        *(line("all-purpose flour", 300), line("salted butter", 200), line("granulated sugar", 100)),
        line("table salt", 3),
    )
    named = replace(plain, about=replace(plain.about, title="Butter shortbread"))
    done = replace(named, totals=replace(named.totals, finished_grams=Range.exact(540)))
    told_of = [shares(each, book=book(each), region=region) for each in (plain, named, done)]
    in_all, in_finished = ("salted butter 33 %",), ("salted butter 37 %",)
    assert told_of == ([(), in_all, in_finished] if region in ("EU", "UK") else [(), (), ()])
    assert "%" not in listed(named, region).replace("2%", "")


@pytest.mark.parametrize("region", REGION_NAMES)
def test_a_warning_of_gluten_beside_wheat_is_kept_since_it_may_mean_another_grain(region: str) -> None:
    """Only like cancels like; where the summary says "wheat, gluten" (Standard 1.2.3) the warning stays in words."""
    flour = pack("bread flour", "Wheat flour. May contain gluten.")
    declaration = told(bake(line("bread flour", 100, flour)), region)
    assert "**other cereals containing gluten**" in marked(declaration.may_line)
    assert ("gluten" in declaration.may_contain) is (region != "ANZ")
    assert not set(declaration.may_contain) & set(declaration.contains)


def test_a_named_grain_that_may_be_in_it_is_warned_of_beside_gluten() -> None:
    flour = pack("bread flour", "Wheat flour. May contain rye.")
    declaration = told(bake(line("bread flour", 100, flour)), "ANZ")
    assert declaration.may_contain == ("rye",)
    assert marked(declaration.may_line) == "May be present: **rye**."
