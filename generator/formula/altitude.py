"""Cakes high above the sea: two published tables, side by side and never blended.

The textbook's table is for shortened cakes, in percent of each ingredient (W. Gisslen, Professional Cooking). The
extension's is for any cake, in spoons for each teaspoon or cup (Colorado State University Extension). They do not
agree, and nobody is helped by their middle. Between the altitudes of a table nothing is reckoned either.

Yeast doughs have no such table: they rise faster, so they get less yeast or less time (extension). Water boils about
1 °F lower for each 500 ft (from memory), and no crumb becomes hotter than that.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from generator.formula.model import Formula, Heat, Line
from generator.measure.number import Range
from generator.wording.speech import later

Kind = Literal["baking powder", "flour", "eggs", "sugar", "fat", "liquid"]
KINDS: tuple[Kind, ...] = ("baking powder", "flour", "eggs", "sugar", "fat", "liquid")

TEXTBOOK_SOURCE = later("W. Gisslen, Professional Cooking, for shortened cakes")
EXTENSION_SOURCE = "Colorado State University Extension"
METRES_IN_A_FOOT = Fraction("0.3048")
BOILING_F = Fraction(212)
FEET_A_DEGREE = Fraction(500)
"""Feet for each °F that water boils lower (from memory)."""
HIGHEST_FT = Fraction(15000)
"""Above this nobody keeps a kitchen, and a number is a mistake."""


def _percents(*values: int) -> tuple[Fraction, ...]:
    return tuple(Fraction(value) for value in values)


TEXTBOOK_FEET = (2500, 5000, 7500)
TEXTBOOK: Mapping[Kind, tuple[Fraction, ...]] = MappingProxyType(
    {
        "baking powder": _percents(-20, -40, -60),
        "flour": _percents(0, 4, 9),
        "eggs": (Fraction("2.5"), Fraction(9), Fraction(15)),
        "sugar": _percents(-3, -6, -9),
        "fat": _percents(0, 0, -9),
        "liquid": _percents(9, 15, 22),
    }
)
"""Percent more or less of each, at each of `TEXTBOOK_FEET`. The columns of flour and fat are inferred."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """A row of the extension's table: teaspoons a teaspoon of baking powder, tablespoons a cup of the others."""

    low: int
    high: int
    powder: Fraction
    sugar: Range
    liquid: Range

    def holds(self, feet: Fraction) -> bool:
        return self.low <= feet <= self.high


def _band(low: int, high: int, powder: str, sugar: tuple[int, int], liquid: tuple[int, int]) -> Band:
    lows = (Range(Fraction(each[0]), Fraction(each[1])) for each in (sugar, liquid))
    return Band(low=low, high=high, powder=Fraction(powder), sugar=next(lows), liquid=next(lows))


BANDS = (
    _band(3500, 6500, "1/8", (1, 1), (1, 2)),
    _band(6500, 8500, "1/4", (2, 2), (2, 4)),
    _band(8500, 10000, "1/4", (1, 3), (3, 4)),
)
"""Less baking powder and sugar, more liquid; at the highest an egg white more as well."""

_LIQUIDS = frozenset({"water", "dairy", "dairy alternative", "juice", "drink"})
_WET = Fraction(50)


def kind_of(line: Line) -> Kind | None:
    """Which row of the tables a line falls under; None for all that they do not speak of, baking soda too."""
    ingredient = line.ware.ingredient if line.ware else None
    if ingredient is None:
        return None
    if line.ware is not None and line.ware.known_as == "baking powder":
        return "baking powder"
    if line.flour:
        return "flour"
    plain: Mapping[str, Kind] = {"egg": "eggs", "sugar": "sugar", "fat": "fat"}
    if ingredient.group in plain:
        return plain[ingredient.group]
    wet = ingredient.water is not None and ingredient.water >= _WET
    return "liquid" if ingredient.group in _LIQUIDS and wet else None


def by_textbook(kind: Kind, feet: int) -> Fraction:
    """The factor for an amount at one of `TEXTBOOK_FEET`: 1.15 of the eggs at 7500 ft."""
    return 1 + TEXTBOOK[kind][TEXTBOOK_FEET.index(feet)] / 100


def around(feet: Fraction) -> tuple[int, ...]:
    """The altitudes of the textbook that stand next to this one: itself, or the one below and the one above."""
    if feet in TEXTBOOK_FEET:
        return (int(feet),)
    below = [each for each in TEXTBOOK_FEET if each < feet]
    above = [each for each in TEXTBOOK_FEET if each > feet]
    return (*below[-1:], *above[:1])


def bands_at(feet: Fraction) -> tuple[Band, ...]:
    """The rows of the extension for an altitude: two of them on the edge of both, none outside."""
    return tuple(band for band in BANDS if band.holds(feet))


def powder_by_extension(teaspoons: Fraction, band: Band) -> Fraction:
    """Two teaspoons at 5000 ft become 1 3/4."""
    return teaspoons * (1 - band.powder)


def boiling_f(feet: Fraction) -> Fraction:
    """At which °F water boils, about."""
    return BOILING_F - feet / FEET_A_DEGREE


def cores(formula: Formula) -> Iterator[Heat]:
    """The core temperatures of a method."""
    for way in formula.ways:
        for section in way.sections:
            for block in section.blocks:
                yield from (
                    each for each in block.words.mentions if isinstance(each, Heat) and each.kind == "core"
                )


def has_leavening(formula: Formula) -> bool:
    """Whether something chemical raises it: baking powder, soda and the like, but no yeast."""
    return any(
        line.ware is not None and line.ware.known_as in ("baking powder", "baking soda")
        for line in formula.lines
    )
