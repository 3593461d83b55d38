"""The words by which a recipe's sections are known, in the languages of many kitchens (trade usage, CLDR names)."""

import re
import unicodedata
from collections.abc import Mapping
from types import MappingProxyType


def _listed(text: str) -> tuple[str, ...]:
    return tuple(" ".join(each.split()) for each in text.split(","))


INGREDIENTS = _listed(
    """
    ingredients, ingredient, ingredienser, zutaten, ingrédients, ingredientes, ingredienti, ingrediënten,
    benodigdheden, what you need, you will need, you'll need, what you'll need, what goes in, shopping
    list, recipe, the recipe, amounts, formula, weigh out, das brauchst du, il vous faut, ingredient list,
    the ingredients, stuff you need, what i used, what i bought, for the recipe, weights, you need,
    ingredients needed, ingredients used,
    what to buy, here's what you need, gather, get ready,
    mise en place, das braucht ihr, składniki, ainekset,
    ingredienser til, for this you need, i used, quantities, components
    """
)
METHOD = _listed(
    """
    method, instructions, directions, steps, procedure, zubereitung, anleitung, préparation, preparación,
    elaboración, preparazione, procedimento, bereiding, bereidingswijze, werkwijze, étapes, how to make
    it, how to make, how to, what to do, the method, making it, preparation, instruction, how i make it,
    how it's made, how we make it, to make, step by step, so geht's, the steps, putting it together, how
    to bake it, how it goes, baking instructions, process, the process, what you do, what i did, what we did,
    do this, how i made it, how
    i did it, here's how, here is how, let's bake, let's make it, make it, bake it, the method, making, assembly,
    przygotowanie, fremgangsmåde, gör så här, modo de preparo, valmistus, tutorial, workflow, the bake, walkthrough
    """
)
NOTES = _listed(
    """
    notes, note, tips, tip, recipe notes, tips and tricks, good to know, tipps, hinweise, notas, note e
    consigli, consigli, conseils, opmerkingen, questions, faq, remarks, variations, about this bake,
    baker's notes, trucos, astuces, nutrition
    """
)
LINKS = _listed(
    """
    links, link, useful links, my gear, gear, equipment links, shop, find me, follow me, what i use,
    products, tools i use, where to find me, more recipes, watch next, follow, products used, my tools,
    see also, related
    """
)
PAID = _listed(
    """
    paid links, affiliate links, affiliate, paid link, sponsored links, ads, gear (affiliate)
    """
)
CHAPTERS = _listed(
    """
    chapters, timestamps, time stamps, in this video, timecodes, kapitel, chapitres, capítulos, capitoli,
    hoofdstukken, contents, video chapters
    """
)
CREDITS = _listed(
    """
    credits, thanks, thanks to, credit, sources, source, acknowledgements, dank
    """
)
KEEPS = _listed(
    """
    storage, storing, keeping, how to store, to store, aufbewahrung, conservation, conservación,
    conservazione, bewaren, keeps
    """
)
GEAR = _listed(
    """
    equipment, tools, you will also need, utensils, tins and tools, utensili, ustensiles
    """
)

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
    _listed(
        """
        base, batter, belag, beslag, biga, brine, buttercream, cake, caramel, coating, cobertura, compote,
        cream, crumb, crumble, crust, crème, curd, custard, decoration, deeg, dough, egg-wash, farcia,
        filling, finish, frosting, füllung, ganache, garniture, glaseado, glassa, glasur, glaze, glazuur,
        glaçage, guss, icing, impasto, levain, masa, meringue, pastry, poolish, preferment, pâte, relleno,
        ripieno, roux, sauce, scald, shell, soak, soaker, sponge, starter, streusel, swirl, syrup, tangzhong,
        teig, topping, vulling, wash
        """
    )
)
"""What a part of a formula is usually called."""

NOT_DOUGH = frozenset(
    _listed(
        """
        belag, brine, brushing, buttercream, caramel, coating, cobertura, compote, cream, crumble, crème,
        curd, custard, decoration, dusting, egg-wash, farcia, filling, finish, frosting, füllung, ganache,
        garnish, garniture, glaseado, glassa, glasur, glaze, glazuur, glaçage, guss, icing, meringue, relleno,
        ripieno, sauce, serve, serving, soak, sprinkle, streusel, swirl, syrup, tin, topping, vulling, wash
        """
    )
)
"""Parts that are no dough: they stand outside baker's percentage."""

VERBS = frozenset(
    _listed(
        """
        add, after, aggiungere, ajouter, allow, amasar, arrange, backen, bak, bake, beat, blend, blitz, boil,
        braid, bring, brush, butter, carefully, chill, chop, coat, combine, cook, crumble, cool, cover, cream, cuire,
        cuocere, cut, das, de, den, die, dissolve, divide, drain, drizzle, drop, dust, ease, el, ferment,
        fill, finally, first, flatten, flour, fold, freeze, fry, gently, grate, grease, grind, heat, hornear,
        il, impastare, in, invert, keep, knead, kneed, kneten, la, lay, le, leave, let, lift, line, lower,
        make, meanwhile, measure, melt, meng, mescolare, mezclar, mischen, mix, mould, move, mélanger, next,
        now, on, once, pat, peel, pinch, pipe, place, plait, poke, pour, preheat, press, proof, prove, pull,
        punch, put, pétrir, reduce, refrigerate, remove, repeat, reserve, rest, return, rinse, rise, roll,
        rub, rühren, scale, scatter, score, scrape, set, shape, sift, simmer, slash, slice, slide, slowly,
        smooth, soak, spoon, spread, sprinkle, stand, start, steam, stir, strain, stretch, switch, take, tap,
        tear, then, tip, toast, top, toss, transfer, trim, tuck, turn, unmold, use, using, verrühren, warm,
        wash, weigh, when, while, whip, whisk, with, work, wrap, brown, caramelise, caramelize, choose, crack, crimp,
        crush, deflate, degas, dip, dock, form, halve, ladle, laminate, layer, mash, moisten, oil, process, pulse,
        purée, roast, scald, scoop, season, separate, sieve, skim, swirl, temper, thaw, thin, toss, zest
        """
    )
)
"""Words that a step begins with."""

MENU = frozenset(
    _listed(
        """
        home, start, about, about me, all recipes, my recipes, recipes, search, contact, menu, archive, next,
        previous, log in, login, sign in, subscribe, back, back to top, shop, blog, print, skip to content, imprint,
        privacy, jump to recipe, front, untitled, notes, document, recipe, recipe card, page, comments, share,
        categories, newsletter, inbox, welcome, index, side one, side two, page one, startseite, accueil, inicio
        """
    )
)
"""Words that stand over many texts and are the title of none."""

_EDGES = re.compile(r"^[\W_]+|[\W_]+$")
_SPACED = re.compile(r"(?:[^\W\d_] ){4,}[^\W\d_]")
_SPACES = re.compile(r"\s+")


def plain(text: str) -> str:
    """A heading's words alone: case, marks and pictures around them away."""
    bare = _SPACES.sub(" ", _EDGES.sub("", unicodedata.normalize("NFC", text))).casefold().replace("’", "'")
    return bare.replace(" ", "") if _SPACED.fullmatch(bare) else bare
