"""What a maker has: the catalogue, the pantry on top of it, and the settings that turn measures into grams."""

from dataclasses import dataclass

from generator.catalogue.ingredient import Ingredient
from generator.catalogue.load import Pantry
from generator.catalogue.lookup import Catalogue, fold
from generator.diagnostics.diagnostic import nearest
from generator.formula.model import Ware
from generator.measure.unit import Spoons


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelf:
    """`flour_cup` is spooned or dipped; `egg` the size word of an egg whose line names none."""

    catalogue: Catalogue
    pantry: Pantry
    spoons: Spoons
    flour_cup: str
    egg: str

    def ware(self, name: str, *, pantry: str = "") -> tuple[Ware | None, str]:
        """What goes by this name, and the form that its first word gives ("chopped" pecans), or "".

        The line's own choice of a pantry row comes first, then a row of that name, then the catalogue.
        """
        if pantry:
            return self._exactly(pantry), ""
        found = self._exactly(name)
        if found is not None:
            return found, ""
        first, _, rest = name.partition(" ")
        whole = self._exactly(rest) if rest else None
        if whole is not None and fold(first) in whole.ingredient.modifiers:
            return whole, fold(first)
        return None, ""

    def _exactly(self, name: str) -> Ware | None:
        ingredient = self.pantry.ingredient(name) or self.catalogue.find(name)
        if ingredient is None:
            return None
        pack = self.pantry.pack_for(name) or self.pantry.pack_for(ingredient.name)
        return Ware(ingredient=ingredient, packs=(pack,) if pack else ())

    def nearest(self, name: str) -> tuple[str, ...]:
        """Names of the pantry and the catalogue most like `name`."""
        own = nearest(fold(name), self.pantry.names(), most=1)
        return tuple(dict.fromkeys((*own, *self.catalogue.nearest(name))))[:3]

    def default_size(self, ingredient: Ingredient) -> str:
        """The size word to look up where a line names none: the setting for eggs, else the usual piece."""
        sized = ingredient.group == "egg" and self.egg in ingredient.pieces
        return self.egg if sized else ""
