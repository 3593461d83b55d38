"""Whether the shelf knows an item, under the words it was written with, and what those words might hide.

A name is never mapped to another: what the shelf does not know under its own words is asked about, because the
nearest name may have fewer allergens ("almond flour" is not flour). Only words that say how a thing is cut or
how warm it is are moved out of the way.
"""

import re

from generator.catalogue.allergens import ALLERGENS, allergen_named
from generator.formula.model import Ware
from generator.formula.shelf import Shelf

CUTS = frozenset(
    [
        "chopped",
        "sliced",
        "diced",
        "cubed",
        "toasted",
        "melted",
        "softened",
        "cooled",
        "peeled",
        "pitted",
        "crushed",
        "minced",
        "shredded",
        "halved",
        "quartered",
        "drained",
        "rinsed",
        "sifted",
        "beaten",
        "cold",
        "warm",
        "hot",
        "chilled",
        "frozen",
        "thawed",
        "good-quality",
        "organic",
        "fresh",
        "finely",
        "roughly",
        "coarsely",
        "thinly",
        "lightly",
        "freshly",
        "well",
        "firmly",
        "washed",
        "trimmed",
        "cored",
        "seeded",
        "soft",
        "very",
        "lukewarm",
        "tepid",
        "mashed",
        "grated",
        "zested",
        "juiced",
        "strained",
        "separated",
        "unwaxed",
        "ripe",
        "plump",
    ]
)
"""Words that name no other food: cut, warmth, freshness."""
_WORD = re.compile(r"[^\W\d_]+(?:['’-][^\W\d_]+)*")
_LONGEST = 4


def known(name: str, shelf: Shelf) -> Ware | None:
    return shelf.ware(name)[0] if name else None


def names_food(text: str, shelf: Shelf) -> bool:
    """Whether any words of a text, side by side, are a food that is known."""
    tokens = [each.group() for each in _WORD.finditer(text)]
    return any(
        known(" ".join(tokens[start:end]), shelf) is not None
        for start in range(len(tokens))
        for end in range(start + 1, min(start + _LONGEST, len(tokens)) + 1)
    )


def without_cuts(item: str, shelf: Shelf) -> tuple[str, str] | None:
    """An item that is known once its words of cutting stand behind it: (`walnuts`, `toasted, chopped`)."""
    words = item.split()
    for most in range(1, len(words)):
        before, rest = words[:most], words[most:]
        if all(each.strip(",").casefold() in CUTS for each in before) and known(" ".join(rest), shelf):
            return " ".join(rest), " ".join(before)
    for most in range(len(words) - 1, 0, -1):
        rest, after = words[:most], words[most:]
        if all(each.strip(",").casefold() in CUTS for each in after) and known(" ".join(rest), shelf):
            return " ".join(rest), " ".join(after)
    return None


def hidden_allergens(words: str, ware: Ware, shelf: Shelf) -> tuple[str, ...]:
    """Foods named beside an item that have an allergen the item has not: “flour (almond)” may be no flour."""
    tokens = [each.group() for each in _WORD.finditer(words)]
    own = set(ware.ingredient.allergens)
    found: dict[str, None] = {}
    for start in range(len(tokens)):
        for length in range(min(_LONGEST, len(tokens) - start), 0, -1):
            name = " ".join(tokens[start : start + length])
            row = shelf.catalogue.exact(name)
            if row is None:
                continue
            if set(row.allergens) - own:
                found[name] = None
            break
    for token in tokens:
        allergen = allergen_named(token)
        if allergen is None or allergen in own:
            continue
        groups = {ALLERGENS[each].group for each in own}
        # “nuts” beside walnuts say nothing new.
        if not (ALLERGENS[allergen].general and ALLERGENS[allergen].group in groups):
            found.setdefault(token, None)
    return tuple(found)
