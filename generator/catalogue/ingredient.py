"""One row of the catalogue: everything known of an ingredient, and where each value comes from."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from types import MappingProxyType

US_CUP_ML = Fraction(2365882365, 10_000_000)  # 1/16 US gallon of 231 cubic inches
FLOUR_CUPS: Mapping[str, Fraction] = MappingProxyType(
    {
        "spooned": Fraction(125) / US_CUP_ML,  # USDA SR28 20081, 1 cup = 125 g
        "dipped": Fraction(137) / US_CUP_ML,  # USDA SR28 20129, 1 cup unsifted, dipped = 137 g
    }
)


def _none_given() -> Mapping[str, Fraction]:
    return MappingProxyType({})


def _nothing_said() -> Mapping[str, str]:
    return MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Ingredient:
    """Weights are exact grams; composition is grams in 100 g; None is not known, never zero by default.

    name            as the catalogue prints it
    names           every folded form it answers to
    plural          printed for counts other than one
    group           flour, starch, sugar, fat, dairy, egg, ...
    flour           counts as flour in baker's percentage
    white_wheat     its cup follows the setting `flour_cup`
    nominal_liquid  added water and liquid milk: counts whole in nominal hydration
    salt_added      is itself salt
    grams_per_ml    None where no weight per volume is honest (coarse salt)
    modifiers       grams per ml under another filling or form: packed, sifted, chopped, mashed, ...
    pieces          grams a piece by size word; "" is the usual size
    units           grams of a named count unit: clove, packet, stick, sheet, leaf, ...
    allergens       ids of `allergens.ALLERGENS`, sorted
    ask             why a pack must be read before the allergens are known; empty means known
    often           allergen ids that its packs often add: a nudge to read the pack, not an unknown
    label_name      common name on an ingredient list (US); `label_names` by region where it differs
    made_of         sub-ingredients as a label prints them, "" if simple
    cautions        keys: raw flour, raw egg, honey, alcohol, whole nuts, choking
    sources         field -> where the value comes from ("grams_per_ml", "modifiers.packed", "pieces.large")
    """

    name: str
    names: tuple[str, ...] = ()
    plural: str = ""
    group: str = ""
    flour: bool = False
    white_wheat: bool = False
    nominal_liquid: bool = False
    salt_added: bool = False
    grams_per_ml: Fraction | None = None
    modifiers: Mapping[str, Fraction] = field(default_factory=_none_given, hash=False)
    pieces: Mapping[str, Fraction] = field(default_factory=_none_given, hash=False)
    units: Mapping[str, Fraction] = field(default_factory=_none_given, hash=False)
    water: Fraction | None = None
    fat: Fraction | None = None
    sugar: Fraction | None = None
    salt: Fraction | None = None
    allergens: tuple[str, ...] = ()
    ask: tuple[str, ...] = ()
    often: tuple[str, ...] = ()
    label_name: str = ""
    label_names: Mapping[str, str] = field(default_factory=_nothing_said, hash=False)
    made_of: str = ""
    cautions: tuple[str, ...] = ()
    sources: Mapping[str, str] = field(default_factory=_nothing_said, hash=False)

    def weight_per_ml(self, *, flour_cup: str, form: str = "") -> Fraction | None:
        """Grams a millilitre under `form` (a key of `modifiers`, or ""), None where not known.

        `flour_cup` is the maker's setting, spooned or dipped; it rules plain white wheat flour only. A form
        that the row does not know falls back to the plain weight: "level" and "scant" are no filling.
        """
        if form in self.modifiers:
            return self.modifiers[form]
        if self.white_wheat:
            return FLOUR_CUPS[flour_cup]
        return self.grams_per_ml

    def labelled(self, region: str) -> str:
        """The name on an ingredient list in `region` (US, EU, UK, CA, ANZ)."""
        return self.label_names.get(region) or self.label_name or self.name
