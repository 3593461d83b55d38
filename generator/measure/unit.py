"""Units of mass, volume and count: their spellings and exact sizes.

Mass: the pound is 453.59237 g and the ounce its sixteenth (NIST SP 811, Appendix B).
Volume: the US gallon is 231 cubic inches of 2.54 cm each, the cup its sixteenth (NIST Handbook 44,
Appendix C); the imperial gallon is 4546.09 ml, the pint its eighth (UK Units of Measurement Regulations
1995).
"""

from collections.abc import Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from enum import Enum
from fractions import Fraction
from functools import cache
from types import MappingProxyType


class Kind(Enum):
    """What a unit measures."""

    MASS = "mass"
    VOLUME = "volume"
    COUNT = "count"
    LENGTH = "length"
    TIME = "time"


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """`factor` is in grams, millilitres, millimetres or minutes; 1 for a count, whose weight others know."""

    name: str
    kind: Kind
    factor: Fraction
    plural: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoons:
    """The cup and spoons of one country, in millilitres. `name` is the word of the `cup` setting."""

    cup: Fraction
    tbsp: Fraction
    tsp: Fraction
    name: str


US_GALLON = 231 * Fraction("2.54") ** 3
IMPERIAL_GALLON = Fraction("4546.09")
POUND = Fraction("453.59237")
_US_CUP = US_GALLON / 16

SPOONS: Mapping[str, Spoons] = MappingProxyType(
    {
        "us": Spoons(cup=_US_CUP, tbsp=_US_CUP / 16, tsp=_US_CUP / 48, name="us"),
        "metric": Spoons(cup=Fraction(250), tbsp=Fraction(15), tsp=Fraction(5), name="metric"),
        # Our decision: the cup is the imperial half pint, but the spoons are metric, since the spoons sold
        # in the UK today hold 15 and 5 ml (common practice, no published source).
        "imperial": Spoons(cup=IMPERIAL_GALLON / 16, tbsp=Fraction(15), tsp=Fraction(5), name="imperial"),
        # The Australian tablespoon is the one of 20 ml (AS 1325, from memory).
        "australian": Spoons(cup=Fraction(250), tbsp=Fraction(20), tsp=Fraction(5), name="australian"),
    }
)

_MASS: Mapping[str, tuple[Fraction, str, str]] = MappingProxyType(
    {
        "g": (Fraction(1), "g", "g gm gms gram grams gramme grammes"),
        "kg": (Fraction(1000), "kg", "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes"),
        "mg": (Fraction(1, 1000), "mg", "mg milligram milligrams milligramme milligrammes"),
        "oz": (POUND / 16, "oz", "oz ozs ounce ounces"),
        "lb": (POUND, "lb", "lb lbs pound pounds"),
        # The US stick of butter is a quarter of a pound (common practice).
        "stick": (POUND / 4, "sticks", "stick sticks"),
    }
)

_METRIC_VOLUME: Mapping[str, tuple[Fraction, str, str]] = MappingProxyType(
    {
        "ml": (Fraction(1), "ml", "ml mls millilitre millilitres milliliter milliliters"),
        "cl": (Fraction(10), "cl", "cl centilitre centilitres centiliter centiliters"),
        "dl": (Fraction(100), "dl", "dl decilitre decilitres deciliter deciliters"),
        "l": (Fraction(1000), "l", "l litre litres liter liters ltr"),
    }
)

# Synonyms share one name, so that the catalogue needs one weight for a packet, sachet or envelope of yeast.
_COUNT: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        "piece": ("pieces", "piece pieces pc pcs"),
        "clove": ("cloves", "clove cloves"),
        "slice": ("slices", "slice slices"),
        "sheet": ("sheets", "sheet sheets"),
        "packet": ("packets", "packet packets pkt package packages pkg sachet sachets envelope envelopes"),
        "leaf": ("leaves", "leaf leaves"),
        "sprig": ("sprigs", "sprig sprigs"),
        "can": ("cans", "can cans tin tins"),
        "jar": ("jars", "jar jars"),
        "block": ("blocks", "block blocks"),
        "pod": ("pods", "pod pods"),
        "stalk": ("stalks", "stalk stalks"),
        "drop": ("drops", "drop drops"),
        "pinch": ("pinches", "pinch pinches"),
        "dash": ("dashes", "dash dashes"),
    }
)

LONGEST_WORD = 16
"""Letters in the longest spelling, with room to spare."""


def unit_named(word: str, *, spoons: Spoons) -> Unit | None:
    """The unit of mass, volume or count that a word stands for; None for any other word.

    Case is folded and dots are dropped; only `t` is a teaspoon, `T` a tablespoon, and `C` is Celsius, no cup.
    """
    if len(word) > 2 * LONGEST_WORD:
        return None
    plain = " ".join(word.replace(".", " ").split())
    if plain in ("T", "C"):
        return _spellings(spoons)["tbsp"] if plain == "T" else None
    return _spellings(spoons).get(plain.casefold())


def nearest_units(word: str) -> tuple[str, ...]:
    """Names of the units whose spelling is most like `word`, best first, at most three."""
    if len(word) > 2 * LONGEST_WORD:
        return ()
    spellings = _spellings(SPOONS["us"])
    near = get_close_matches(word.casefold(), list(spellings), n=8, cutoff=0.6)
    return tuple(dict.fromkeys(spellings[each].name for each in near))[:3]


@cache
def _spellings(spoons: Spoons) -> Mapping[str, Unit]:
    found: dict[str, Unit] = {}
    for kind, table in ((Kind.MASS, _MASS), (Kind.VOLUME, _METRIC_VOLUME), (Kind.VOLUME, _volumes(spoons))):
        for name, (factor, plural, spellings) in table.items():
            unit = Unit(name=name, kind=kind, factor=factor, plural=plural)
            found.update(dict.fromkeys(spellings.split(), unit))
    for name, (plural, spellings) in _COUNT.items():
        unit = Unit(name=name, kind=Kind.COUNT, factor=Fraction(1), plural=plural)
        found.update(dict.fromkeys(spellings.split(), unit))
    for spaced in ("fl oz", "fl ozs", "fl ounce", "fl ounces", "fluid oz", "fluid ounce", "fluid ounces"):
        found[spaced] = found["floz"]
    return MappingProxyType(found)


def _volumes(spoons: Spoons) -> Mapping[str, tuple[Fraction, str, str]]:
    """Cups and spoons of a country; fluid ounce, pint, quart and gallon are US unless the cup is imperial."""
    imperial = spoons.name == "imperial"
    gallon = IMPERIAL_GALLON if imperial else US_GALLON
    return {
        "cup": (spoons.cup, "cups", "cup cups c"),
        "tbsp": (spoons.tbsp, "tbsp", "tbsp tbsps tbs tb tbl tablespoon tablespoons"),
        "tsp": (spoons.tsp, "tsp", "tsp tsps t teaspoon teaspoons"),
        "fl oz": (gallon / (160 if imperial else 128), "fl oz", "floz"),
        "pint": (gallon / 8, "pints", "pint pints pt pts"),
        "quart": (gallon / 4, "quarts", "quart quarts qt qts"),
        "gallon": (gallon, "gallons", "gallon gallons gal"),
    }
