"""Words that nobody knows are asked about, and those that look like an allergen say so: none is passed over."""

import pytest

from generator.declaration.checks import pack_diagnostics
from generator.declaration.claims import claim_spans
from generator.declaration.declare import REGION_NAMES, declare
from generator.declaration.pack import read_pack
from generator.declaration.strange import looks_like
from tests.declaration.bakes import bake, book, line, pack
from tests.declaration.pack_texts import made_up
from tests.declaration.test_checks import DAY
from tests.declaration.test_pack import TRUTHS

# As they stand on packs of the trade, in our own words; none has a word that is not known here.
USUAL = """
Enriched flour (wheat flour, malted barley flour, niacin, reduced iron, thiamin mononitrate, riboflavin, folic acid)
Cream cheese (pasteurized milk and cream, cheese culture, salt, stabilizers (xanthan and/or guar gums))
Shortening (soybean oil, fully hydrogenated palm oil, mono and diglycerides, TBHQ and citric acid (antioxidants))
Baking powder (cornstarch, sodium bicarbonate, sodium aluminum sulfate, monocalcium phosphate)
Candied orange peel (orange peel, corn syrup, sugar, citric acid, sodium benzoate and sulfur dioxide (preservatives))
Glacé cherries (cherries, glucose-fructose syrup, sugar, colour: anthocyanins, acidity regulator: citric acid)
Sprinkles (sugar, corn starch, palm oil, dextrin, soy lecithin, confectioner's glaze, FD&C Yellow 5, carnauba wax)
Self-raising flour (wheat flour (with calcium, iron, niacin, thiamin), raising agents (sodium carbonates))
Marzipan (sugar, ground almonds 25 %, glucose syrup, invert sugar syrup, water)
Hazelnut spread (sugar, palm oil, hazelnuts 13 %, skimmed milk powder 8.7 %, fat-reduced cocoa, lecithins (soya))
Mincemeat (sugar, apple, sultanas, suet (palm oil, rice flour), mixed peel, barley malt extract, spirit vinegar)
Coconut milk (coconut extract 60 %, water, emulsifier: polysorbate 60)
Worcestershire sauce (barley malt vinegar, molasses, sugar, salt, anchovies, tamarind extract, onions, garlic, spice)
Quick oats. Made in a facility that also processes wheat
Evaporated milk (milk, dipotassium phosphate, carrageenan, vitamin D3)
Toffee bits (sugar, palm oil, dairy product solids, milk chocolate (sugar, cocoa butter, milk, soy lecithin), salt)
""".strip().splitlines()

# Common words of imported packs, by Annex II in other languages, and what they name.
FOREIGN = """
farine de blé, sucre, lait en poudre, œufs | wheat milk egg
Weizenmehl, Zucker, Vollmilchpulver, Eiweiß, Haselnüsse | wheat milk egg hazelnut
harina de trigo, leche, huevos, almendras, sésamo | wheat milk egg almond sesame
farina di frumento, burro, uova, nocciole, soia | wheat milk egg hazelnut soy
tarwebloem, roomboter, eieren, amandelen, pinda's | wheat milk egg almond peanut
seigle, orge, avoine, moutarde, céleri, sulfites | rye barley oats mustard celery sulphites
Roggenmehl, Gerstenmalz, Haferflocken, Senf, Sellerie, Erdnüsse | rye barley oats mustard celery peanut
hvedemel, smør, æg, mandler | wheat milk egg almond
""".strip().splitlines()

TRAPS = (
    "lait de coco, noix de coco, beurre de cacao, noix de muscade",
    "Kokosmilch, Kakaobutter, Muskatnuss, Buchweizen",
    "leche de coco, manteca de cacao, trigo sarraceno",
    "latte di cocco, burro di cacao, grano saraceno",
)


@pytest.mark.parametrize(
    ("word", "allergen"),
    [
        *(
            ("wheet", "wheat"),
            ("almnods", "almond"),
            ("mlik", "milk"),
            ("milkpowder", "milk"),
            ("penut", "peanut"),
        ),
        *(("wheatflour", "wheat"), ("hazlenuts", "hazelnut"), ("seasame", "sesame"), ("buter", "milk")),
        *(
            ("eggg", "egg"),
            ("mustrad", "mustard"),
            ("celary", "celery"),
            ("lupinn", "lupin"),
            ("shrmp", "shrimp"),
        ),
        *(("glueten", "gluten"), ("barly", "barley"), ("cashw", "cashew"), ("sulfitte", "sulphites")),
    ],
)
def test_a_misprint_is_told_with_what_it_looks_like(word: str, allergen: str) -> None:
    assert allergen in looks_like(word)
    row = pack("crunch", f"Crunch (sugar, {word})")
    for region in REGION_NAMES:
        formula = bake(line("crunch", 50, row))
        declaration = declare(formula, book=book(formula), region=region)
        assert not declaration.finished
        assert f"“{word}” (like " in declaration.unknown[0]


def test_words_that_nobody_knows_are_named_and_the_rest_is_counted() -> None:
    reading = read_pack("Sugar, zorble, 小麦, mi1k, quux, grault, garply")
    assert reading.asks == (
        "“zorble”, “小麦”, “mi1k” (like milk), “quux” and 2 more are no words known here",
    )
    assert read_pack("Sugar, zorble").asks == ("“zorble” is no word known here",)


def test_a_name_that_its_own_brackets_explain_is_not_asked_about() -> None:
    assert read_pack("Hilltop zorble (sugar, cocoa butter)").asks == ()
    assert read_pack("Zorble (organic), sugar").asks != ()


def test_a_warning_of_what_nobody_knows_is_not_passed_over() -> None:
    assert read_pack("Sugar. May contain zorble.").asks == ("“zorble” is no word known here",)


def test_the_makers_own_word_settles_it_and_a_likeness_is_still_questioned() -> None:
    row = pack("crunch", "Crunch (sugar, almnods)", contains=[])
    formula = bake(line("crunch", 50, row))
    assert declare(formula, book=book(formula), region="US").finished
    found = [each for each in pack_diagnostics(book(formula), day=DAY, pack_age=180) if each.code == "L008"]
    assert [each.message for each in found] == [
        "“almnods” on the label of crunch looks like almond or walnut, which its row does not declare."
    ]
    told = bake(line("crunch", 50, pack("crunch", "Crunch (sugar, almnods)", contains=["almond"])))
    codes = [each.code for each in pack_diagnostics(book(told), day=DAY, pack_age=180)]
    assert "L008" not in codes


@pytest.mark.parametrize("label", [*USUAL, *(each.label for each in TRUTHS)])
def test_no_usual_word_is_asked_about(label: str) -> None:
    reading = read_pack(label)
    assert [each for each in reading.asks if "known here" in each] == []
    assert reading.near == ()


def test_of_three_hundred_made_up_texts_none_has_a_strange_word() -> None:
    asked = [
        each.text for each in made_up(300, seed=4) if "known here" in " ".join(read_pack(each.text).asks)
    ]
    assert asked == []


@pytest.mark.parametrize("row", FOREIGN)
def test_words_of_imported_packs_name_their_allergens(row: str) -> None:
    label, ids = (each.strip() for each in row.split("|"))
    assert {each.allergen for each in read_pack(label).contains} == set(ids.split())


@pytest.mark.parametrize("label", TRAPS)
def test_coconut_cocoa_butter_nutmeg_and_buckwheat_are_none_in_any_language(label: str) -> None:
    assert read_pack(label).contains == ()


@pytest.mark.parametrize(
    ("label", "allergen"),
    [
        ("Sucre. Peut contenir des fruits à coque.", "tree nuts"),
        ("Zucker. Kann Spuren von Nüssen enthalten.", "tree nuts"),
        ("Azúcar. Puede contener leche.", "milk"),
        ("Zucchero. Può contenere tracce di sesamo.", "sesame"),
        ("Suiker. Kan sporen van melk bevatten.", "milk"),
    ],
)
def test_precautions_of_imported_packs_warn(label: str, allergen: str) -> None:
    reading = read_pack(label)
    assert [each.allergen for each in reading.may_contain] == [allergen]
    assert reading.contains == ()


@pytest.mark.parametrize(
    ("label", "contains", "printed"),
    [
        ("Biscuits sans gluten (riz)", {"wheat"}, "Biscuits (riz)"),
        ("Kekse ohne Milch, Zucker", {"wheat"}, "Kekse, Zucker"),
        ("Glutenfreie Kekse", {"wheat"}, "Kekse"),
        ("Does not contain milk but made in a facility that processes nuts", set(), ""),
        ("Egg-free mayonnaise (rapeseed oil)", {"egg"}, "mayonnaise (rapeseed oil)"),
        ("Contains no egg, milk", {"milk"}, "milk"),
        ("Mayonnaise, no eggs", {"egg"}, "Mayonnaise"),
    ],
)
def test_a_claim_of_absence_raises_nothing_removes_nothing_and_is_not_printed(
    label: str, contains: set[str], printed: str
) -> None:
    reading = read_pack(label)
    assert {each.allergen for each in reading.contains} == contains
    assert reading.text == printed
    assert claim_spans(reading.text) == []
