"""What a maker has: the catalogue, the pantry on top of it, and the settings that turn measures into grams."""

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from generator.catalogue.ingredient import Ingredient
from generator.catalogue.load import Pantry
from generator.catalogue.lookup import Catalogue, fold
from generator.diagnostics.diagnostic import nearest
from generator.formula.model import Ware
from generator.measure.same import Same
from generator.measure.unit import Spoons

LONGEST_NAME = 120
"""Letters; what is longer is no name of an ingredient but a text that lost its line breaks."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """`flour_cup` is spooned or dipped; `egg` the size word of an egg whose line names none.

    `yeast_sugar` is the percent of sugar on flour above which another yeast is suggested.
    """

    catalogue: Catalogue
    pantry: Pantry
    spoons: Spoons
    flour_cup: str
    egg: str
    yeast_sugar: Fraction = Fraction(10)

    def ware(self, name: str, *, pantry: str = "") -> tuple[Ware | None, str]:
        """What goes by this name, and the form that its first word gives ("chopped" pecans), or "".

        The line's own choice of a pantry row comes first, then a row of that name, then the catalogue.
        """
        if pantry:
            return self._exactly(pantry), self._form_in(name, self._exactly(pantry))
        if len(name) > LONGEST_NAME:
            return None, ""
        found = self._exactly(name)
        if found is not None:
            return found, ""
        formed = self.catalogue.find_form(name)
        if formed is not None:
            return self._exactly(formed[0].name), formed[1]
        first, _, rest = name.partition(" ")
        own = self._exactly(rest) if rest else None
        return (own, fold(first)) if own and fold(first) in own.ingredient.modifiers else (None, "")

    @staticmethod
    def _form_in(name: str, ware: Ware | None) -> str:
        """The form that the first word gives where the line names its pack: ground nuts are ground ones still."""
        first = fold(name.partition(" ")[0])
        return first if ware is not None and first in ware.ingredient.modifiers else ""

    def _exactly(self, name: str) -> Ware | None:
        return None if len(name) > LONGEST_NAME else _exactly(Same(self), name)

    def nearest(self, name: str) -> tuple[str, ...]:
        """Names of the pantry and the catalogue most like `name`."""
        if len(name) > LONGEST_NAME:
            return ()
        own = nearest(fold(name), self.pantry.names(), most=1)
        return tuple(dict.fromkeys((*own, *self.catalogue.nearest(name))))[:3]

    def default_size(self, ingredient: Ingredient) -> str:
        """The size word to look up where a line names none: the setting for eggs, else the usual piece."""
        sized = ingredient.group == "egg" and self.egg in ingredient.pieces
        return self.egg if sized else ""


@lru_cache(maxsize=2048)
def _exactly(of: Same[Shelf], name: str) -> Ware | None:
    """One ware for one name, whichever recipe asks: what was worked out of it is then remembered for all of them."""
    shelf = of.thing
    ingredient = shelf.pantry.ingredient(name) or shelf.catalogue.find(name)
    if ingredient is None:
        return None
    pack = shelf.pantry.pack_for(name) or shelf.pantry.pack_for(ingredient.name)
    return Ware(ingredient=ingredient, packs=(pack,) if pack else ())
