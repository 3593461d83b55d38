"""What a maker buys: packs, and what they add to the catalogue; they never take an allergen away."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from fractions import Fraction
from types import MappingProxyType

from generator.catalogue.ingredient import Ingredient
from generator.catalogue.lookup import Catalogue
from generator.catalogue.names import fold, number_forms
from generator.diagnostics.span import Span


def _not_stated() -> Mapping[str, Fraction]:
    return MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Pack:
    """A row of the pantry, checked.

    `stands_for` is the printed name of a catalogue ingredient, None for a thing of the maker's own;
    `stands_in` is true where the row's name is its own and not one of the ingredient. `contains` and
    `may_contain` are allergen ids; `contains_given` tells an empty list from none at all. `composition`
    has the keys water, fat, sugar, salt that the row states, in grams in 100 g; `buy` says where to get it.
    """

    name: str
    stands_for: str | None
    span: Span
    stands_in: bool = False
    label: str = ""
    label_span: Span | None = None
    contains: tuple[str, ...] = ()
    contains_given: bool = False
    may_contain: tuple[str, ...] = ()
    checked: date | None = None
    url: str = ""
    buy: str = ""
    note: str = ""
    flour: bool = False
    grams_per_ml: Fraction | None = None
    grams_per_piece: Fraction | None = None
    composition: Mapping[str, Fraction] = field(default_factory=_not_stated, hash=False)

    @property
    def read(self) -> bool:
        """Whether the maker has said what the pack contains: named an allergen, or read it and found none.

        A label alone does not settle it, since a word in it may be one that nobody here knows.
        """
        return self.contains_given and bool(self.contains or self.label or self.checked)


class Pantry:
    """The maker's packs over the catalogue, read-only."""

    __slots__ = ("_by_ingredient", "_by_name", "_catalogue", "_packs")

    def __init__(self, packs: Iterable[Pack], *, catalogue: Catalogue) -> None:
        self._catalogue = catalogue
        self._packs = tuple(packs)
        self._by_name = MappingProxyType({fold(each.name): each for each in self._packs})
        self._by_ingredient = MappingProxyType(
            {each.stands_for: each for each in self._packs if each.stands_for and not each.stands_in}
        )

    def names(self) -> tuple[str, ...]:
        """The name of every row, in the order of the file."""
        return tuple(each.name for each in self._packs)

    def packs(self) -> tuple[Pack, ...]:
        return self._packs

    def pack_for(self, name: str) -> Pack | None:
        """The row of that name, or the row of the catalogue ingredient that answers to it."""
        for form in number_forms(fold(name)):
            if form in self._by_name:
                return self._by_name[form]
        found = self._catalogue.find(name)
        return self._by_ingredient.get(found.name) if found else None

    def ingredient(self, name: str) -> Ingredient | None:
        """The ingredient with what the pack says added, None where the pantry has no row for it."""
        pack = self.pack_for(name)
        if pack is None:
            return None
        known = self._catalogue.find(pack.stands_for) if pack.stands_for else None
        return _merged(known, pack) if known else _of_its_own(pack)


def _of_its_own(pack: Pack) -> Ingredient:
    """An ingredient with nothing known but what the row states."""
    ask = () if pack.read else (f"{pack.name}: say in the pantry what its pack contains",)
    bare = Ingredient(
        name=pack.name,
        names=(fold(pack.name),),
        plural=pack.name,
        group="pantry",
        flour=pack.flour,
        ask=ask,
        label_name=pack.name,
    )
    return _with_statements(bare, pack)


def _merged(known: Ingredient, pack: Pack) -> Ingredient:
    """The catalogue's row with the pack's additions; the maker's own weighing and composition win."""
    merged = _with_statements(known, pack)
    if pack.read:
        merged = replace(merged, ask=(), often=())
    if pack.stands_in:
        merged = replace(merged, name=pack.name, names=(fold(pack.name),), plural=pack.name)
    return merged


def _with_statements(known: Ingredient, pack: Pack) -> Ingredient:
    stated = dict.fromkeys(_stated_fields(pack), f"pantry: {pack.name}")
    changed = replace(
        known,
        allergens=tuple(sorted({*known.allergens, *pack.contains})),
        water=pack.composition.get("water", known.water),
        fat=pack.composition.get("fat", known.fat),
        sugar=pack.composition.get("sugar", known.sugar),
        salt=pack.composition.get("salt", known.salt),
        sources=MappingProxyType({**known.sources, **stated}),
    )
    if pack.grams_per_piece is not None:
        changed = replace(changed, pieces=MappingProxyType({"": pack.grams_per_piece}))
    return changed if pack.grams_per_ml is None else _weighed(changed, pack.grams_per_ml)


def _weighed(known: Ingredient, grams_per_ml: Fraction) -> Ingredient:
    """With the maker's own weighing in place of the plain one, under whatever name the catalogue had it."""
    old = {known.grams_per_ml, *(known.modifiers.get(each) for each in ("spooned", "dipped"))}
    kept = {form: weight for form, weight in known.modifiers.items() if weight not in old}
    return replace(known, grams_per_ml=grams_per_ml, white_wheat=False, modifiers=MappingProxyType(kept))


def _stated_fields(pack: Pack) -> tuple[str, ...]:
    weights = ("grams_per_ml",) if pack.grams_per_ml is not None else ()
    pieces = ("pieces.",) if pack.grams_per_piece is not None else ()
    allergens = ("allergens",) if pack.contains_given else ()
    return (*weights, *pieces, *allergens, *pack.composition)
