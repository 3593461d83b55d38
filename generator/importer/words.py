"""The words by which a recipe's sections are known, in the languages of many kitchens (trade usage, CLDR names)."""

import re
import unicodedata
from collections.abc import Mapping
from types import MappingProxyType

INGREDIENTS = (
    "ingredients ingredient ingredienser zutaten ingrédients ingredientes ingredienti ingrediënten benodigdheden"
).split() + [
    *("what you need", "you will need", "you'll need", "what you'll need", "what goes in", "shopping list"),
    *("recipe", "the recipe", "amounts", "formula", "weigh out", "das brauchst du", "il vous faut"),
    *("ingredient list", "the ingredients", "stuff you need", "what i used", "for the recipe", "weights"),
]
METHOD = (
    "method instructions directions steps procedure zubereitung anleitung préparation preparación elaboración "
    "preparazione procedimento bereiding bereidingswijze werkwijze étapes"
).split() + [
    *("how to make it", "how to make", "how to", "what to do", "the method", "making it", "preparation"),
    *("instruction", "how i make it", "how it's made", "how we make it", "to make", "step by step", "so geht's"),
    *("the steps", "putting it together", "how to bake it", "how it goes", "baking instructions"),
]
NOTES = [
    *("notes", "note", "tips", "tip", "recipe notes", "tips and tricks", "good to know", "tipps", "hinweise"),
    *("notas", "note e consigli", "consigli", "conseils", "opmerkingen", "questions", "faq", "remarks"),
    *("variations", "about this bake", "baker's notes", "trucos", "astuces", "nutrition"),
]
LINKS = [
    *("links", "link", "useful links", "my gear", "gear", "equipment links", "shop", "find me", "follow me"),
    *("what i use", "products", "tools i use", "where to find me", "more recipes", "watch next", "follow"),
    *("products used", "my tools", "see also", "related"),
]
PAID = [
    *("paid links", "affiliate links", "affiliate", "paid link", "sponsored links", "ads", "gear (affiliate)"),
]
CHAPTERS = [
    *("chapters", "timestamps", "time stamps", "in this video", "timecodes", "kapitel", "chapitres"),
    *("capítulos", "capitoli", "hoofdstukken", "contents", "video chapters"),
]
CREDITS = ["credits", "thanks", "thanks to", "credit", "sources", "source", "acknowledgements", "dank"]
KEEPS = [
    *("storage", "storing", "keeping", "how to store", "to store", "aufbewahrung", "conservation"),
    *("conservación", "conservazione", "bewaren", "keeps"),
]
GEAR = ["equipment", "tools", "you will also need", "utensils", "tins and tools", "utensili", "ustensiles"]

SECTIONS: Mapping[str, str] = MappingProxyType(
    {
        **dict.fromkeys(INGREDIENTS, "ingredients"),
        **dict.fromkeys(METHOD, "method"),
        **dict.fromkeys(NOTES, "notes"),
        **dict.fromkeys(LINKS, "links"),
        **dict.fromkeys(PAID, "paid"),
        **dict.fromkeys(CHAPTERS, "chapters"),
        **dict.fromkeys(CREDITS, "credits"),
        **dict.fromkeys(KEEPS, "keeps"),
        **dict.fromkeys(GEAR, "gear"),
    }
)

PARTS = frozenset(
    "dough batter filling topping glaze icing frosting finish crust base streusel crumble syrup custard cream "
    "swirl starter levain poolish biga sponge preferment tangzhong roux soaker scald egg-wash wash coating sauce "
    "ganache meringue shell pastry cake decoration crumb soak brine caramel curd compote buttercream "
    "teig füllung guss belag streusel glasur pâte garniture glaçage crème masa relleno glaseado cobertura "
    "impasto ripieno glassa farcia deeg vulling glazuur beslag".split()
)
"""What a part of a formula is usually called."""

NOT_DOUGH = frozenset(
    "filling topping glaze icing frosting finish streusel crumble syrup custard cream swirl wash coating sauce "
    "ganache meringue decoration soak brine caramel curd compote buttercream füllung guss belag glasur garniture "
    "glaçage crème relleno glaseado cobertura ripieno glassa farcia vulling glazuur dusting brushing serve "
    "serving sprinkle tin garnish egg-wash".split()
)
"""Parts that are no dough: they stand outside baker's percentage."""

PREFERMENTS: Mapping[str, str] = MappingProxyType(
    {name: name for name in ("poolish", "biga", "sponge", "levain", "soaker", "scald")}
)

VERBS = frozenset(
    "add allow arrange bake beat blend blitz boil braid bring brush butter chill chop coat combine cook cool cover "
    "cream cut divide dissolve drain drizzle drop dust ease ferment fill flatten flour fold freeze fry grate "
    "grease grind heat invert knead keep lay leave let lift line lower make measure melt mix mould move once "
    "pat peel pinch pipe place plait poke pour preheat press proof prove pull punch put reduce refrigerate "
    "remove repeat rest return reserve rinse rise roll rub scale scatter score scrape set shape sift simmer "
    "slash slice slide slowly smooth soak spoon spread sprinkle stand start steam stir strain stretch tap take "
    "tear tip toast top toss transfer trim tuck turn unmold use warm wash weigh when whip whisk work wrap "
    "meanwhile after carefully gently finally next now first then while in on with using switch "
    "mischen verrühren kneten backen rühren mélanger pétrir cuire ajouter mezclar amasar hornear mescolare "
    "impastare cuocere aggiungere meng kneed bak den die das le la il el de".split()
)
"""Words that a step begins with."""

_EDGES = re.compile(r"^[\W_]+|[\W_]+$")
_SPACES = re.compile(r"\s+")


def plain(text: str) -> str:
    """A heading's words alone: case, marks and pictures around them away."""
    return _SPACES.sub(" ", _EDGES.sub("", unicodedata.normalize("NFC", text))).casefold().replace("’", "'")
