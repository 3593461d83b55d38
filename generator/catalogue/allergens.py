"""The vocabulary of allergens, without regard to region: what a region declares is decided elsewhere.

Sources of the classes: 21 USC 321(qq) with the FDA list of tree nuts of January 2025; Regulation (EU)
1169/2011, Annex II; Canada, Food and Drug Regulations B.01.010.1; Standard 1.2.3 with Schedule 9
(Australia and New Zealand). Coconut and chestnut are a declared class in none of them and are not here.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from generator.catalogue.names import fold, number_forms
from generator.diagnostics.diagnostic import nearest


@dataclass(frozen=True, slots=True, kw_only=True)
class Allergen:
    """`group` is the class it belongs to; `general` marks a class word that does not name the species."""

    id: str
    group: str
    names: tuple[str, ...]
    general: bool = False


_CLASSES: tuple[tuple[str, str, str], ...] = (
    # id, group, other names
    (
        "wheat",
        "gluten",
        (
            "wheat flour, spelt, durum, semolina, kamut, khorasan, khorasan wheat, emmer, einkorn, "
            "farro, freekeh, bulgur, couscous, seitan, wheat gluten, wheat germ, wheat starch, wheat "
            "protein"
        ),
    ),
    ("rye", "gluten", "rye flour"),
    (
        "barley",
        "gluten",
        ("barley flour, malt, malted barley, malted barley flour, barley malt, malt extract, malt syrup"),
    ),
    ("oats", "gluten", "oat, oatmeal, rolled oats, oat flour"),
    ("triticale", "gluten", ""),
    (
        "milk",
        "milk",
        (
            "dairy, cow milk, cow's milk, lactose, whey, casein, caseinate, milk powder, butter, cream, "
            "milk protein, milk solids, milkfat, milk fat"
        ),
    ),
    ("goat milk", "milk", "goat's milk, goats milk"),
    ("sheep milk", "milk", "sheep's milk, sheeps milk, ewe's milk"),
    ("buffalo milk", "milk", "buffalo's milk"),
    ("egg", "egg", "hen egg, hen's egg, egg white, egg yolk, albumen, albumin, egg lysozyme"),
    ("duck egg", "egg", "duck's egg"),
    ("quail egg", "egg", "quail's egg"),
    ("goose egg", "egg", "goose's egg"),
    (
        "soy",
        "soy",
        ("soya, soybean, soya bean, soy bean, soy lecithin, soya lecithin, soy protein, soya protein, tofu"),
    ),
    ("peanut", "peanut", "groundnut, ground nut, arachis, monkey nut, earth nut"),
    ("sesame", "sesame", "sesame seed, tahini, benne, gingelly"),
    ("mustard", "mustard", "mustard seed, mustard flour, mustard powder"),
    ("celery", "celery", "celeriac, celery seed, celery salt"),
    ("lupin", "lupin", "lupine, lupin flour, lupin seed"),
    (
        "sulphites",
        "sulphites",
        (
            "sulphite, sulfite, sulphur dioxide, sulfur dioxide, sulphiting agent, sulfiting agent, "
            "so2, e220, e221, e222, e223, e224, e225, e226, e227, e228, e 220, e 221, e 222, e 223, e "
            "224, e 225, e 226, e 227, e 228"
        ),
    ),
    ("almond", "tree nuts", "ground almond, marzipan, almond paste"),
    ("hazelnut", "tree nuts", "filbert, cobnut, cob nut, hazel nut"),
    (
        "walnut",
        "tree nuts",
        ("black walnut, english walnut, persian walnut, california walnut, heartnut, japanese walnut"),
    ),
    ("pecan", "tree nuts", "pecan nut"),
    ("pistachio", "tree nuts", "pistachio nut"),
    ("cashew", "tree nuts", "cashew nut"),
    ("macadamia", "tree nuts", "macadamia nut, queensland nut, bush nut"),
    ("brazil nut", "tree nuts", "brazilnut, brazil"),
    ("pine nut", "tree nuts", "pinon, pinon nut, pinyon nut, pignoli, pignolia, pine kernel"),
    ("bass", "fish", ""),
    ("cod", "fish", ""),
    ("flounder", "fish", ""),
    ("haddock", "fish", ""),
    ("halibut", "fish", ""),
    ("herring", "fish", ""),
    ("mackerel", "fish", ""),
    ("pollock", "fish", ""),
    ("salmon", "fish", ""),
    ("tilapia", "fish", ""),
    ("trout", "fish", ""),
    ("tuna", "fish", ""),
    ("anchovy", "fish", ""),
    ("sardine", "fish", "pilchard"),
    ("shrimp", "crustacean", "prawn"),
    ("crab", "crustacean", ""),
    ("lobster", "crustacean", ""),
    ("crayfish", "crustacean", "crawfish"),
    ("clam", "mollusc", ""),
    ("mussel", "mollusc", ""),
    ("oyster", "mollusc", ""),
    ("scallop", "mollusc", ""),
    ("octopus", "mollusc", ""),
    ("snail", "mollusc", ""),
    ("squid", "mollusc", "calamari, cuttlefish"),
)

_GENERAL: tuple[tuple[str, str], ...] = (
    ("gluten", "gluten cereal, cereals containing gluten, cereal containing gluten"),
    ("tree nuts", "tree nut, nut, treenut, other nut, other tree nut, mixed nut"),
    ("fish", "finfish, fin fish, fish gelatin, fish gelatine, isinglass"),
    ("crustacean", "crustacea, crustacean shellfish"),
    ("mollusc", "mollusk, molluscan shellfish"),
)


def _names(own: str, others: str) -> tuple[str, ...]:
    return tuple(fold(each) for each in (own, *others.split(",")) if each.strip())


def _vocabulary() -> dict[str, Allergen]:
    kinds = {
        ident: Allergen(id=ident, group=group, names=_names(ident, others))
        for ident, group, others in _CLASSES
    }
    general = {
        ident: Allergen(id=ident, group=ident, names=_names(ident, others), general=True)
        for ident, others in _GENERAL
    }
    return kinds | general


ALLERGENS: Mapping[str, Allergen] = MappingProxyType(_vocabulary())
_BY_NAME: Mapping[str, str] = MappingProxyType(
    {name: each.id for each in ALLERGENS.values() for name in each.names}
)


def allergen_named(word: str) -> str | None:
    """The id of the allergen a maker means by `word` ("eggs", "soya", "E220", "nuts"), None where none is.

    "gluten", "tree nuts", "fish", "crustacean" and "mollusc" are ids of their own: the species is not known.
    """
    for form in number_forms(fold(word)):
        if form in _BY_NAME:
            return _BY_NAME[form]
    return None


_OF_SEVERAL_CLASSES: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {"shellfish": ("crustacean", "mollusc"), "seafood": ("crustacean", "fish", "mollusc")}
)


def allergens_named(word: str) -> tuple[str, ...]:
    """The ids that a maker's word stands for: of a word over several classes ("shellfish") every one of them."""
    known = allergen_named(word)
    return (known,) if known else _OF_SEVERAL_CLASSES.get(fold(word), ())


def allergens_near(word: str) -> tuple[str, ...]:
    """Names most like `word`, best first, for a hint: ids, and words over several classes."""
    known = {**_BY_NAME, **{each: each for each in _OF_SEVERAL_CLASSES}}
    near = nearest(fold(word), known, most=6)
    return tuple(dict.fromkeys(known[each] for each in near))[:3]
