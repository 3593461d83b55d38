"""What a label says: printed pack texts of our own with the truth beside each."""

from dataclasses import dataclass

import pytest

from generator.declaration.pack import listed_as, read_pack


@dataclass(frozen=True, slots=True, kw_only=True)
class Truth:
    """A label with what it contains, what it may contain, and the words it leaves open."""

    label: str
    contains: str = ""
    may: str = ""
    asks: tuple[str, ...] = ()


def t(label: str, contains: str = "", may: str = "", *asks: str) -> Truth:
    return Truth(label=label, contains=contains, may=may, asks=asks)


TRUTHS = (
    # plain lists, nested brackets, percentages, tails
    t("Bread flour (wheat flour, malted barley flour)", "wheat, barley"),
    t("Enriched flour (wheat flour, niacin, reduced iron, thiamin, riboflavin, folic acid)", "wheat"),
    t("Plain flour", "wheat"),
    t("Candied peel (orange peel, glucose syrup, sugar, preservative (sulphur dioxide))", "sulphites"),
    t("Dark chocolate [cocoa mass 62 %, sugar, cocoa butter, emulsifier: soya lecithin]", "soy"),
    t("Milk chocolate (sugar, cocoa butter, whole milk powder, cocoa mass, lecithin (sunflower))", "milk"),
    t("Cocoa 10.5 %, sugar, whey powder, salt, contains 2% or less of: soy lecithin, vanilla", "milk, soy"),
    t("Corn syrup, sugar, contains less than 2% of each of the following: egg white, salt", "egg"),
    t("Sugar, palm oil, hazelnuts 13 %, skimmed milk powder, cocoa, emulsifier (lecithins (soya))",
      "hazelnut, milk, soy"),
    t("Semolina (durum wheat), water", "wheat"),
    t("Spelt wholemeal; rye flakes; rolled oats", "wheat, rye, oats"),
    t("INGREDIENTS: SUGAR, WHEAT STARCH, DRIED EGG WHITES.", "wheat, egg"),
    t("Graham crumbs (graham flour, sugar, honey)", "wheat"),
    t("Malt extract, barley malt vinegar", "barley"),
    t("Farro, bulgur, couscous and seitan", "wheat"),
    t("Ghee", "milk"),
    t("Sodium caseinate, whey, lactose", "milk"),
    t("Goat's milk cheese, salt", "goat milk"),
    t("Duck eggs", "duck egg"),
    t("Egg albumen, meringue powder", "egg"),
    t("Tofu, miso, edamame, tempeh", "soy"),
    t("Marzipan (almonds, sugar)", "almond"),
    t("Gianduja and praline (hazelnuts, sugar)", "hazelnut"),
    t("Tahini", "sesame"),
    t("Worcestershire sauce (malt vinegar, molasses, anchovies)", "anchovy, barley"),
    t("Mustard flour, celery salt, lupin bran", "mustard, celery, lupin"),
    t("Pine kernels, Brazil nuts, macadamias, pecans, cashews",
      "pine nut, brazil nut, macadamia, pecan, cashew"),
    t("Sultanas (sultanas, vegetable oil (sunflower), E220)", "sulphites"),
    t("Glucose syrup (wheat), sugar", "wheat"),
    t("Crème fraîche, Crème pâtissière", "milk, egg"),
    t("Soft\u00adened bu\u200btter, wheat \ufb02our", "milk, wheat"),
    t("Unsalted butter\nSea salt\nEggs", "milk, egg"),
    t("Almond milk chocolate", "almond, milk"),
    # traps: no allergen where only a word looks like one
    t("Coconut milk (coconut, water), coconut cream"),
    t("Cocoa butter, shea butter, cream of tartar"),
    t("Peanut butter (peanuts, salt)", "peanut"),
    t("Almond milk, oat milk, soya milk, rice milk", "almond, oats, soy"),
    t("Butternut squash, nutmeg, water chestnuts, coconut, chestnut puree"),
    t("Buckwheat flour, rice flour, cornflour, potato starch"),
    t("Buttermilk, milkfat", "milk"),
    t("Eggplant, butter beans, glutinous rice, lactic acid, maltodextrin"),
    t("Doughnuts", "wheat"),
    t("Sodium sulphate, ginger ale, oyster mushrooms, crab apples"),
    t("Apricot kernel persipan"),
    # precautions, in many forms
    t("Chocolate chips [sugar, cocoa butter, milkfat, soy lecithin; may contain peanuts, tree nuts]",
      "milk, soy", "peanut, tree nuts"),
    t("Sugar, cocoa mass. May contain traces of nuts and gluten.", "", "tree nuts, gluten"),
    t("Oats. Made in a facility that also processes peanuts, tree nuts, and sesame.",
      "oats", "peanut, tree nuts, sesame"),
    t("Sunflower seeds. Produced on shared equipment with milk and soy", "", "milk, soy"),
    t("Raisins (may also contain: almonds)", "", "almond"),
    t("Almonds are packed in a factory that handles peanuts.", "almond", "peanut"),
    t("Not suitable for nut allergy sufferers due to manufacturing methods. Sugar", "", "tree nuts"),
    t("Nuts and sesame may be present. Sugar, palm oil.", "", "tree nuts, sesame"),
    t("Sugar, cocoa mass, may contain nuts, milk", "", "tree nuts, milk"),
    t("Due to the methods used, this product may contain egg. Sugar", "", "egg"),
    t("Honey. Our kitchen also handles wheat", "", "wheat"),
    t("Dried apple. Might contain shellfish", "", "crustacean, mollusc"),
    t("Contains milk and soy, may contain almonds", "milk, soy", "almond"),
    t("This product contains wheat and may contain walnuts.", "wheat", "walnut"),
    t("May contain milk. Contains: soy.", "soy", "milk"),
    t("Sugar, may contain nuts, wheat flour, butter", "wheat, milk", "tree nuts, wheat, milk",
      "“may contain nuts, wheat flour, butter”"),
    # summaries and class words
    t("Natural flavor, sugar. Contains: milk, soy.", "milk, soy"),
    t("Allergy advice: contains milk and egg", "milk, egg"),
    t("Nuts (almonds, walnuts), gluten (wheat)", "almond, walnut, wheat"),
    t("Wheat flour (contains gluten), salt", "wheat"),
    t("Sugar, pistachios. Contains tree nuts.", "pistachio"),
    t("Muesli (oats, nuts, almonds)", "oats, tree nuts, almond"),
    # refined oils keep their allergen where any region wants it
    t("Soybean oil", "soy"),
    t("Fully refined soybean oil"),
    t("Highly refined soybean oil", "soy"),
    t("Fully refined peanut oil", "peanut"),
    # claims raise nothing and remove nothing
    t("Gluten-free oats", "oats"),
    t("Dairy-free margarine (rapeseed oil, water)"),
    t("Free from nuts, milk and soy. Sugar, egg", "egg"),
    t("Free from nuts, wheat flour, sugar", "wheat"),
    t("Contains no peanuts. Wheat flour", "wheat"),
    t("Lactose-free milk, fat-free milk", "milk"),
    t("Nut-free biscuits (flour, almonds)", "wheat, almond"),
    t("Free range eggs", "egg"),
    # words that must be asked about
    t("Natural flavor", "", "", "“Natural flavor”"),
    t("Sugar, gelatine", "", "", "“gelatine”"),
    t("Gelatine (bovine), pork gelatin"),
    t("Fish gelatin", "fish"),
    t("Sugar, emulsifier (lecithin)", "", "", "“lecithin”"),
    t("Lecithin (emulsifier)", "", "", "“Lecithin”"),
    t("Lecithin (soy), lecithins (from rapeseed), egg lecithin", "soy, egg"),
    t("E322", "", "", "“E322”"),
    t("Margarine", "", "", "“Margarine”"),
    t("Modified food starch, modified starch (corn)", "", "", "“Modified food starch”"),
    t("Vegetable oils: palm, rapeseed; vegetable fat", "", "", "“vegetable fat”"),
    t("Non-dairy creamer", "", "", "“Non-dairy creamer”"),
    t("Dark chocolate", "", "", "“Dark chocolate”"),
)  # fmt: skip


@pytest.mark.parametrize("truth", TRUTHS, ids=lambda truth: truth.label[:50])
def test_a_label_says_what_it_says(truth: Truth) -> None:
    reading = read_pack(truth.label)
    everywhere = [each for each in reading.contains if len(each.excepted) < 5]
    assert {each.allergen for each in everywhere} == _ids(truth.contains)
    assert {each.allergen for each in reading.may_contain} == _ids(truth.may)
    assert len(reading.asks) == len(truth.asks)
    assert all(ask.startswith(words) for ask, words in zip(reading.asks, truth.asks, strict=True))


def _ids(text: str) -> set[str]:
    return {each.strip() for each in text.split(",") if each.strip()}


@pytest.mark.parametrize("truth", TRUTHS, ids=lambda truth: truth.label[:50])
def test_capitals_change_nothing(truth: Truth) -> None:
    loud, quiet = read_pack(truth.label.upper()), read_pack(truth.label)
    assert [each.allergen for each in loud.contains] == [each.allergen for each in quiet.contains]
    assert [each.allergen for each in loud.may_contain] == [each.allergen for each in quiet.may_contain]
    assert len(loud.asks) == len(quiet.asks)


@pytest.mark.parametrize(
    ("label", "name", "printed"),
    [
        ("Bread flour (wheat flour, malted barley flour)", "bread flour",
         "bread flour (wheat flour, malted barley flour)"),
        ("Wheat flour, malted barley flour", "bread flour", "bread flour (wheat flour, malted barley flour)"),
        ("Ingredients: wheat flour.", "flour", "wheat flour"),
        ("Dark chocolate: sugar, cocoa mass", "dark chocolate", "dark chocolate (sugar, cocoa mass)"),
        ("Sugar, cocoa. Contains: milk. May contain nuts.", "chocolate", "chocolate (sugar, cocoa)"),
        ("Chips [sugar, milkfat; may contain peanuts]", "chips", "chips [sugar, milkfat]"),
        ("May contain nuts.", "raisins", "raisins"),
        ("BREAD FLOUR", "bread flour", "BREAD FLOUR"),
        ("Dutch cocoa", "cocoa", "Dutch cocoa"),
        ("Gluten-free oats", "oats", "oats"),
        ("Peel (orange, sugar", "peel", "peel (orange, sugar)"),
    ],
)  # fmt: skip
def test_the_list_prints_the_pack_once_without_its_sentences(label: str, name: str, printed: str) -> None:
    assert listed_as(read_pack(label), name) == printed


def test_the_words_of_a_precaution_are_kept_as_they_stand() -> None:
    (said,) = read_pack("Oats. Made in a facility that also processes Peanuts.").may_contain
    assert said.words == "Made in a facility that also processes Peanuts"


def test_a_name_alone_tells_nothing() -> None:
    assert not read_pack("Marshmallows").tells
    assert not read_pack("May contain nuts.").tells
    assert read_pack("Marshmallows (sugar, pork gelatine)").tells
