"""Words on a pack, and what each of the five regions declares of them.

Columns: United States, 21 USC 321(qq) with FDA's list of January 2025; European Union, Regulation 1169/2011, Annex
II, and the United Kingdom, which kept it; Canada, Food and Drug Regulations B.01.010.1; Australia and New Zealand,
Standard 1.2.3 with Schedule 9, where the summary says "gluten" beside the grain. The rows are derived from these;
synonyms partly from lists of state agriculture departments, the rest from memory.
"""

import pytest

from generator.catalogue.allergens import ALLERGENS, allergens_named
from generator.catalogue.load import built_in
from generator.declaration.claims import blanked, denied
from generator.declaration.declare import REGION_NAMES, declare
from generator.declaration.model import Declaration
from generator.declaration.regions import region_named
from generator.declaration.words import matches
from tests.declaration.bakes import bake, book, line, marked, pack, said

# words on a pack | US | EU and UK | CA | ANZ; an id of several words with underscores
MAP = """
wheat flour; semolina; durum; bulgur; couscous; spelt; kamut; emmer; einkorn | wheat | wheat | wheat | wheat gluten
farro; freekeh; seitan; wheat germ; wheat starch | wheat | wheat | wheat | wheat gluten
flour | wheat | wheat | wheat | wheat gluten
triticale | wheat | wheat rye | triticale wheat | wheat rye gluten
rye; rye flour | | rye | rye | rye gluten
barley; pearl barley; malt; malt extract; malt syrup | | barley | barley | barley gluten
malt vinegar; malted barley flour | | barley | barley | barley gluten
oats; rolled oats; oat bran | | oats | oats | oats gluten
buckwheat; rice; maize; teff; sorghum; millet; quinoa | | | |
milk; cream; butter; ghee; buttermilk; whey; casein; caseinate; lactose; yogurt; cheese | milk | milk | milk | milk
quark; milk powder; dulce de leche | milk | milk | milk | milk
goat milk | goat_milk | milk | milk | milk
sheep milk | sheep_milk | milk | milk | milk
buffalo milk | buffalo_milk | milk | milk | milk
egg; egg white; egg yolk; albumen; meringue powder; lysozyme; mayonnaise; advocaat | egg | egg | egg | egg
duck egg | duck_egg | egg | egg | egg
soy flour; soya milk; tofu; miso; edamame; TVP; soy lecithin; soybean oil | soy | soy | soy | soy
fully refined soybean oil | | | |
highly refined soybean oil | | soy | soy | soy
sunflower lecithin; rapeseed lecithin | | | |
egg lecithin | egg | egg | egg | egg
E306; mixed tocopherols | | | |
goose egg | goose_egg | egg | egg | egg
quail egg | quail_egg | egg | egg | egg
cold-pressed almond oil; gourmet almond oil | almond | almond | almond | almond
cold-pressed peanut oil; unrefined peanut oil | peanut | peanut | peanut | peanut
fully refined peanut oil; highly refined groundnut oil | | peanut | peanut | peanut
unrefined sesame oil; toasted sesame oil | sesame | sesame | sesame | sesame
peanut; peanut butter; groundnut; monkey nut; arachis; peanut oil | peanut | peanut | peanut | peanut
almond; marzipan; frangipane; amaretti; almond flour; almond milk; almond paste | almond | almond | almond | almond
persipan | | | |
hazelnut; filbert; gianduja; praline | hazelnut | hazelnut | hazelnut | hazelnut
walnut; black walnut; heartnut; walnut oil | walnut | walnut | walnut | walnut
pecan | pecan | pecan | pecan | pecan
pistachio | pistachio | pistachio | pistachio | pistachio
cashew | cashew | cashew | cashew | cashew
macadamia | macadamia | macadamia | macadamia | macadamia
Brazil nut | brazil_nut | brazil_nut | brazil_nut | brazil_nut
pine nut | pine_nut | | pine_nut | pine_nut
pesto | pine_nut milk | milk | pine_nut milk | pine_nut milk
chocolate hazelnut spread | hazelnut | hazelnut | hazelnut | hazelnut
hickory nut; pili nut; ginkgo; beech nut | | | |
coconut; chestnut; butternut; shea butter; water chestnut; nutmeg; butternut squash | | | |
sesame; tahini; halva; benne; za'atar; sesame oil | sesame | sesame | sesame | sesame
mustard seed; mustard powder | | mustard | mustard |
celery; celeriac; celery seed; celery salt | | celery | |
lupin flour; lupin bran | | lupin | | lupin
sulphur dioxide; E220; E228; sodium metabisulphite; wine; cider | | sulphites | sulphites | sulphites
Worcestershire sauce | anchovy | fish barley | anchovy barley | fish barley gluten
anchovy; fish sauce | anchovy | fish | anchovy | fish
salmon | salmon | fish | salmon | fish
shrimp; prawn | shrimp | crustacean | shrimp | crustacean
crab | crab | crustacean | crab | crustacean
oyster | | mollusc | oyster | mollusc
squid | | mollusc | squid | mollusc
shellfish | crustacean | crustacean mollusc | crustacean mollusc | crustacean mollusc
poppy seeds; sunflower seeds; cocoa; carob; vanilla; honey; baker's yeast; vanilla extract; rum; lutein | | | |
wheat glucose syrup; glucose syrup (wheat); wheat maltodextrin | wheat | | wheat | wheat gluten
barley glucose syrup | | | barley | barley gluten
beef gelatin; porcine gelatine; modified corn starch; yeast; inactive yeast; nutritional yeast | | | |
fish gelatin | fish | fish | fish | fish
""".strip().splitlines()

# Only the pack can tell: the same words leave every label unfinished.
ASK = (
    "margarine",
    "non-dairy creamer",
    "dark chocolate",
    "lecithin",
    "gelatin",
    "gelatine",
    "marshmallow",
    "baking powder",
    "icing sugar",
    "custard powder",
    "spice mix",
    "sprinkles",
    "natural flavor",
    "flavouring",
    "mincemeat",
    "suet",
    "brewer's yeast",
    "yeast extract",
    "nut liqueur",
    "cream liqueur",
    "vegetable oil",
    "modified starch",
    "behenic acid",
    "mousse powder",
    "colour",
    "food coloring",
    "semisweet chocolate",
    "couverture",
    "vegetable shortening",
    "hydrolysed vegetable protein",
)

# Ingredients without any pack: the catalogue does not know either.
WITHOUT_PACK = (
    "baking powder",
    "powdered sugar",
    "gelatin",
    "margarine",
    "marshmallows",
    "dark chocolate",
    "candied orange peel",
    "dried apricots",
    "glacé cherries",
    "mixed peel",
    "desiccated coconut",
    "molasses",
    "black treacle",
    "mincemeat",
    "cider",
    "port",
    "sprinkles",
    "custard powder",
    "food colouring",
    "suet",
    "yeast extract",
    "almond extract",
    "worcestershire sauce",
    "liqueur",
)


def told(words: str, region: str) -> Declaration:
    row = pack("bought thing", words[0].upper() + words[1:])
    formula = bake(line("bought thing", 100, row))
    return declare(formula, book=book(formula), region=region)


def rows() -> list[tuple[str, str, str]]:
    found = []
    for row in MAP:
        words, us, eu, ca, anz = (each.strip() for each in row.split("|"))
        columns = {"US": us, "EU": eu, "UK": eu, "CA": ca, "ANZ": anz}
        found += [(each.strip(), region, ids) for each in words.split(";") for region, ids in columns.items()]
    return found


@pytest.mark.parametrize(("words", "region", "ids"), rows())
def test_words_of_a_pack_by_region(words: str, region: str, ids: str) -> None:
    assert set(told(words, region).contains) == {each.replace("_", " ") for each in ids.split()}


@pytest.mark.parametrize("region", REGION_NAMES)
@pytest.mark.parametrize("words", ASK)
def test_words_that_leave_a_label_unfinished(words: str, region: str) -> None:
    row = pack("bought thing", f"Mix (sugar, {words})")
    formula = bake(line("bought thing", 100, row))
    declaration = declare(formula, book=book(formula), region=region)
    assert not declaration.finished
    assert declaration.unknown[0].startswith(f"Bought thing: “{words}” ")


@pytest.mark.parametrize("region", REGION_NAMES)
@pytest.mark.parametrize("item", WITHOUT_PACK)
def test_ingredients_that_leave_a_label_unfinished(item: str, region: str) -> None:
    formula = bake(line(item, 100))
    declaration = declare(formula, book=book(formula), region=region)
    assert not declaration.finished
    assert item in declaration.unfinished


@pytest.mark.parametrize("region", ["US", "CA"])
def test_where_kinds_are_named_shellfish_is_to_be_read_again(region: str) -> None:
    """21 USC 343(w)(2); B.01.010.1(6), from memory. Elsewhere both classes are declared, which says enough."""
    assert not told("Stock powder (salt, shellfish)", region).finished
    assert told("Stock powder (salt, shrimp)", region).finished


@pytest.mark.parametrize("region", REGION_NAMES)
def test_shellfish_in_the_makers_own_words_is_never_less_than_on_a_label(region: str) -> None:
    row = pack("paste", contains=allergens_named("shellfish"), may_contain=allergens_named("Seafood"))
    formula = bake(line("paste", 10, row))
    declaration = declare(formula, book=book(formula), region=region)
    assert set(declaration.contains) == set(told("shellfish", region).contains)
    assert "fish" in declaration.may_contain


def test_sulphites_are_seen_in_a_us_list() -> None:
    """21 CFR 101.100(a)(4): sulfites of 10 ppm or more are named in the list, and are no class of the other line."""
    for words in ("wine", "E220", "sulphur dioxide"):
        declaration = told(words, "US")
        assert declaration.contains == ()
        assert "sul" in marked(declaration.ingredients).casefold()


@pytest.mark.parametrize("region", REGION_NAMES)
def test_nothing_of_the_catalogue_is_declared_as_less_than_it_is(region: str) -> None:
    """Every row with an allergen, as a bake of its own: each class that the region declares is declared, in words."""
    rules, missed = region_named(region), []
    for row in built_in():
        formula = bake(line(row.name, 100))
        declaration = declare(formula, book=book(formula), region=region)
        needed = {each for allergen in row.allergens for each in rules.ids(allergen)}
        seen = said(declaration).casefold()
        unsaid = [
            each
            for each in needed
            if not any(word.casefold() in seen for word in (*rules.seen_as[each], rules.word(each)))
        ]
        if not needed <= set(declaration.contains) or unsaid or (row.ask and declaration.finished):
            missed.append((row.name, sorted(needed - set(declaration.contains)), unsaid))
    assert missed == []


def test_no_name_of_the_catalogue_says_an_allergen_that_its_row_neither_holds_nor_asks_about() -> None:
    """Read by the words of packs alone, which know nothing of the catalogue. Listed: names of several words that only
    sound like an allergen, and cider, which is sweet juice in the US."""
    sound_like = {"apple cider", "sweet cider", "all butter puff pastry", "pumpernickel flour"}
    silent = []
    for row in built_in():
        for name in {*row.names, row.label_name, row.made_of, *row.label_names.values()} - sound_like:
            named = {
                each for match in matches(blanked(name, denied(name))) for each in match.meaning.allergens
            }
            groups = {ALLERGENS[each].group for each in row.allergens}
            if not row.ask and any(ALLERGENS[each].group not in groups for each in named):
                silent.append((row.name, name, sorted(named)))
    assert silent == []


def test_a_name_of_the_catalogue_is_for_a_region_that_there_is() -> None:
    assert {region for row in built_in() for region in row.label_names} <= set(REGION_NAMES)
