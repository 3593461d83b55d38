"""Pack texts made up by chance from pieces whose allergens are known, in the ways packs are printed.

The pieces are written down here from common knowledge of labels, not from the words that the reader knows.
"""

from dataclasses import dataclass
from random import Random

# allergen ids, then things on packs that hold them
SOURCES: tuple[tuple[str, str], ...] = (
    ("wheat", "wheat flour|fortified wheat flour (wheat flour, calcium carbonate, iron, niacin, thiamin)|"
     "enriched bleached flour|durum wheat semolina|wheat bran|wheat gluten|spelt flour|wholemeal spelt|"
     "wheat germ|"
     "whole wheat flour|wheat starch|couscous|khorasan wheat|bulgur wheat|wheat protein|breadcrumbs|"
     "wheat flakes|"
     "hydrolysed wheat protein|kibbled wheat|wheat semolina|einkorn flour"),
    ("rye", "rye flour|wholegrain rye|dried rye sourdough|rye flakes|fermented rye flour"),
    ("barley", "barley malt extract|malted barley flour|pearl barley|barley malt syrup|malt vinegar|"
     "barley flakes|"
     "malted barley|roasted barley malt"),
    ("oats", "oat flakes|rolled oats|oat fibre|oat syrup|wholegrain oats|oat bran|oat flour"),
    ("milk", "skimmed milk powder|whey powder|butter|butter oil|butterfat|anhydrous milk fat|cream|lactose|"
     "cheese|"
     "sodium caseinate|milk protein|whole milk|cheddar cheese|yogurt powder|buttermilk powder|"
     "nonfat dry milk|"
     "sweetened condensed milk|cultured cream|whey solids|clarified butter|ghee|milk sugar|mozzarella|"
     "mascarpone|"
     "whey protein concentrate|cream powder|milk minerals|calcium caseinate|demineralised whey powder"),
    ("egg", "egg|whole egg|dried egg white|egg yolk powder|liquid whole egg|albumen|pasteurised egg|"
     "free range egg|"
     "egg white powder|egg albumen|meringue pieces|salted egg yolk"),
    ("soy", "soya flour|soy protein isolate|soybeans|emulsifier: soya lecithin|emulsifier (soya lecithins)|"
     "soy lecithin|"
     "soybean oil|tofu|lecithin (soy)|defatted soya flour|textured soy protein|miso paste|"
     "hydrolysed soya protein"),
    ("peanut", "peanuts|roasted peanuts|peanut butter|peanut flour|peanut oil|groundnut oil|groundnuts|"
     "peanut paste"),
    ("almond", "almonds|ground almonds|almond paste|marzipan|blanched almonds|flaked almonds|almond flour|"
     "sliced almonds"),
    ("hazelnut", "hazelnuts|hazelnut paste|roasted hazelnuts|chopped hazelnuts|filberts|gianduja"),
    ("walnut", "walnuts|walnut pieces|walnut oil|candied walnuts"),
    ("pecan", "pecans|pecan halves|pecan nuts"),
    ("pistachio", "pistachios|pistachio kernels|pistachio paste|pistachio nuts"),
    ("cashew", "cashews|cashew nuts|cashew butter"),
    ("macadamia", "macadamias|macadamia nuts"),
    ("brazil_nut", "Brazil nuts"),
    ("pine_nut", "pine nuts|pine kernels"),
    ("sesame", "sesame seeds|tahini|toasted sesame oil|hulled sesame|halva|sesame paste"),
    ("mustard", "mustard flour|yellow mustard seeds|mustard bran|mustard powder|brown mustard"),
    ("celery", "celery seed|celeriac|celery powder|celery salt"),
    ("lupin", "lupin flour|lupin protein|lupin bran"),
    ("sulphites", "preservative (sulphur dioxide)|preservative: E220|sodium metabisulphite|"
     "preservative (sodium "
     "metabisulfite)|sulfur dioxide (preservative)|potassium metabisulphite|E223|sodium bisulfite|"
     "white wine"),
    ("anchovy", "anchovies|anchovy paste"),
    ("salmon", "smoked salmon"),
    ("shrimp", "shrimp powder|dried shrimps|prawns"),
    ("crab", "crab meat"),
    ("squid", "squid ink"),
    ("wheat barley", "malted wheat flakes (wheat, barley malt)|"
     "bread flour (wheat flour, malted barley)"),
    ("milk egg", "custard|lemon curd"),
    ("soy wheat", "soy sauce|shoyu"),
)  # fmt: skip

_HARMLESS = (
    "sugar|salt|water|cocoa mass|cocoa butter|rice flour|cornstarch|maize starch|potato starch|coconut|"
    "coconut milk|"
    "coconut oil|palm oil|sunflower oil|rapeseed oil|dextrose|glucose syrup|invert sugar syrup|"
    "buckwheat flour|millet|"
    "raising agent (sodium bicarbonate)|cream of tartar|citric acid|ascorbic acid|nutmeg|cinnamon|ginger|"
    "vanilla beans|"
    "yeast|honey|raisins|currants|dried cranberries|orange peel|apple puree|poppy seeds|sunflower seeds|"
    "pumpkin seeds|"
    "flaxseed|chia seeds|chickpea flour|tapioca starch|pectin|agar|xanthan gum|guar gum|sunflower lecithin|"
    "emulsifier (sunflower lecithin)|shea butter|cornflour|corn flour|quinoa|butternut squash powder|"
    "water chestnuts|"
    "chestnut puree|niacin|folic acid|reduced iron|colour (beetroot red)|paprika extract|lactic acid|"
    "rosemary extract|"
    "calcium carbonate|molasses|maple syrup|date paste|fruit juice concentrate|mono- and diglycerides|"
    "cocoa powder|"
    "tocopherols|spirit vinegar|lemon juice|rice syrup|sorghum flour|teff flour|aniseed|cardamom|cloves|"
    "black pepper|"
    "allspice|star anise|pork gelatine|bovine gelatin|carob powder|caramel colour|glycerine|sorbitol|banana|"
    "peaches"
)
HARMLESS = _HARMLESS.split("|")

# allergens, the words that a warning or a summary has for them
NAMED: tuple[tuple[str, str], ...] = (
    ("wheat", "wheat"), ("milk", "milk"), ("egg", "egg"), ("egg", "eggs"), ("soy", "soy"), ("soy", "soya"),
    ("peanut", "peanuts"), ("tree_nuts", "tree nuts"), ("tree_nuts", "nuts"), ("almond", "almonds"),
    ("hazelnut", "hazelnuts"), ("pecan", "pecans"), ("cashew", "cashews"), ("sesame", "sesame"),
    ("sesame", "sesame seeds"), ("mustard", "mustard"), ("celery", "celery"), ("lupin", "lupin"),
    ("gluten", "gluten"), ("rye", "rye"), ("barley", "barley"), ("oats", "oats"), ("fish", "fish"),
    ("crustacean mollusc", "shellfish"), ("crustacean", "crustaceans"), ("sulphites", "sulphites"),
)  # fmt: skip

WARNINGS = (
    "May contain {}.", "May contain traces of {}.", "MAY CONTAIN: {}.", "May also contain {}",
    "Traces of {} possible.",
    "Made in a facility that also processes {}.", "Produced in a factory which handles {}.",
    "Manufactured on shared equipment with {}.", "Packed in an environment where {} are present.",
    "This product may contain {}.", "Not suitable for {} allergy sufferers.", "Allergy advice: may contain {}.",
    "Processed on equipment that also processes {}.", "Made on a line that also handles {}",
    "Due to manufacturing methods, may contain {}.", "{} may be present.", "Possible traces of {}",
    "Made in a bakery that uses {}.", "May be present: {}.", "Cannot guarantee free from {}.",
)  # fmt: skip
SUMMARIES = (
    "Contains: {}.",
    "CONTAINS {}.",
    "Contains {}",
    "Allergens: contains {}.",
    "Contains {} ingredients.",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class PackText:
    """A text with what it says is in the pack and what may be."""

    text: str
    contains: frozenset[str]
    may: frozenset[str]


def made_up(count: int, *, seed: int) -> tuple[PackText, ...]:
    chance = Random(seed)
    return tuple(_one(chance) for _ in range(count))


def _one(chance: Random) -> PackText:
    held: set[str] = set()  # with an underscore for the space of "pine nut"
    items = [_item(chance, held) for _ in range(chance.randint(2, 9))]
    text = _list(chance, items, held)
    sentences = []
    if chance.random() < 0.25 and held <= {each for ids, _ in NAMED for each in ids.split()}:
        named = [chance.choice([word for ids, word in NAMED if ids == each]) for each in sorted(held)]
        sentences += [chance.choice(SUMMARIES).format(_and(chance, named))] if named else []
    may: set[str] = set()
    if chance.random() < 0.6:
        warned = chance.sample(NAMED, chance.randint(1, 4))
        may = {each for ids, _ in warned for each in ids.split()}
        sentences.append(chance.choice(WARNINGS).format(_and(chance, [word for _, word in warned])))
    whole = " ".join((text + ".", *sentences)) if sentences or chance.random() < 0.5 else text
    whole = chance.choice((whole, whole, whole, whole.upper(), whole.replace(". ", ".\n")))
    return PackText(text=whole, contains=_ids(held), may=_ids(may))


def _ids(words: set[str]) -> frozenset[str]:
    return frozenset(each.replace("_", " ") for each in words)


def _item(chance: Random, held: set[str]) -> str:
    if chance.random() < 0.5:
        item = chance.choice(HARMLESS)
    else:
        ids, things = chance.choice(SOURCES)
        held.update(ids.split())
        item = chance.choice(things.split("|"))
    share = chance.choice(("", "", "", f" {chance.randint(1, 60)} %", f" ({chance.randint(1, 60)}%)", "*"))
    return item + share


def _list(chance: Random, items: list[str], held: set[str]) -> str:
    opened, closed = chance.choice(("()", "[]"))
    joint = chance.choice((", ", ", ", "; ", ",", " , "))
    head, inner, tail = items[:2], items[2:4], items[4:]
    listed = [*head]
    if inner:
        name = chance.choice(("filling", "coating", "topping", "crumb", "syrup", "pieces"))
        listed.append(f"{name} {opened}{', '.join(inner)}{closed}")
    if tail and chance.random() < 0.4:
        lead = chance.choice(
            ("contains 2% or less of: ", "contains less than 2% of the following: ", "2% or less of ")
        )
        listed.append(lead + ", ".join(tail))
    elif tail:
        listed += tail
    heading = chance.choice(("", "", "Ingredients: ", "INGREDIENTS: ", "Ingredients:\n"))
    first = joint.join(listed)
    return heading + first[:1].upper() + first[1:]


def _and(chance: Random, names: list[str]) -> str:
    if len(names) == 1:
        return names[0]
    last = chance.choice((" and ", ", and ", " or ", ", ", " & "))
    return ", ".join(names[:-1]) + last + names[-1]
