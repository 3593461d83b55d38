"""What common names of other languages usually mean: a guess that is offered to the maker, and never taken alone.

Only whole names are looked up here, because a part of one is another food: Mandelmehl is not Mehl.
"""

from collections.abc import Mapping
from types import MappingProxyType

from generator.formula.shelf import Shelf

_NAMES: Mapping[str, str] = MappingProxyType(
    {
        "all-purpose flour": "mehl weizenmehl farine farina harina bloem tarwebloem",
        "granulated sugar": "zucker sucre zucchero azucar suiker",
        "unsalted butter": "butter beurre burro mantequilla boter",
        "egg": "ei eier oeuf oeufs uovo uova huevo huevos eieren",
        "whole milk": "milch vollmilch lait latte leche melk",
        "water": "wasser eau acqua agua",
        "table salt": "salz sel sale sal zout",
        "fresh yeast": "hefe frischhefe levure lievito levadura gist",
        "instant yeast": "trockenhefe",
        "baking powder": "backpulver bakpoeder",
        "honey": "honig miel miele honing",
        "vanilla sugar": "vanillezucker vanillesuiker",
        "icing sugar": "puderzucker poedersuiker",
        "lemon": "zitrone citron limone limon citroen",
        "cream": "sahne",
        "rye flour": "roggenmehl",
        "ground cinnamon": "zimt cannelle cannella canela kaneel",
        "olive oil": "olivenol",
        "quark": "magerquark",
        "raisins": "rosinen uvetta pasas rozijnen",
        "hazelnuts": "haselnusse noisettes nocciole avellanas hazelnoten",
        "almonds": "mandeln amandes mandorle almendras amandelen",
        "ground almonds": "gemahlene-mandeln",
    }
)
_USUAL = MappingProxyType(
    {word.replace("-", " "): ours for ours, words in _NAMES.items() for word in words.split()}
)


def usual_name(name: str, shelf: Shelf) -> str:
    """The catalogue's name that a folded name usually stands for, "" where nobody can say."""
    ours = _USUAL.get(name, "")
    row = shelf.catalogue.exact(ours) if ours else None
    return row.name if row is not None else ""
