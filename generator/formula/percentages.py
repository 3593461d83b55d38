"""Baker's percentages, hydration and salt, on the flour of all dough parts (preferments included).

Each ingredient over total flour, flour 100 % (W. Gisslen, Professional Cooking). Water inside flour, fresh yeast,
dried fruit and soakers is not counted; what holds less than a tenth of water does not wet a dough (our decision,
so that 1 % in brown sugar or 3 % in milk powder is no hydration).
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from generator.catalogue.lookup import fold
from generator.formula.components import component_share
from generator.formula.model import Formula, Line, Part, Totals
from generator.formula.starters import flour_in, water_in
from generator.formula.written import SOAKED, UNFERMENTED
from generator.measure.number import Range, total

WET_GROUPS = frozenset(
    {
        *(
            "water",
            "dairy",
            "dairy alternative",
            "egg",
            "fat",
            "juice",
            "drink",
            "fruit",
            "vegetable",
            "sugar",
        ),
        *("condiment", "extract", "pantry"),
    }
)
"""Groups whose water wets a dough: among sugars only syrups hold enough of it."""

WET_FROM = Fraction(10)
_NOTHING = Fraction(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Counted:
    """What a line or a formula brings into the dough, in grams."""

    flour: Fraction = _NOTHING
    water: Fraction = _NOTHING
    nominal: Fraction = _NOTHING
    salt: Fraction = _NOTHING
    salt_inside: Fraction = _NOTHING

    def plus(self, other: "Counted") -> "Counted":
        return Counted(
            flour=_sum(self.flour, other.flour),
            water=_sum(self.water, other.water),
            nominal=_sum(self.nominal, other.nominal),
            salt=_sum(self.salt, other.salt),
            salt_inside=_sum(self.salt_inside, other.salt_inside),
        )

    def scaled(self, factor: Fraction) -> "Counted":
        return Counted(
            flour=self.flour * factor,
            water=self.water * factor,
            nominal=self.nominal * factor,
            salt=self.salt * factor,
            salt_inside=self.salt_inside * factor,
        )


def _sum(one: Fraction, other: Fraction) -> Fraction:
    """Most lines bring nothing of most things."""
    return (one + other if one else other) if other else one


def in_dough(parts: Iterable[Part], book: Mapping[str, Formula]) -> Counted:
    """The sum over the parts that count."""
    result = Counted()
    for part in parts:
        for line in part.lines:
            if part.counts and line.counts:
                result = result.plus(_line(line, part, book))
    return result


def _line(line: Line, part: Part, book: Mapping[str, Formula]) -> Counted:
    if line.kept is None:
        return Counted()
    if line.component is not None:
        return _component(line, part, book)
    grams = line.kept.mid
    flour, water = flour_in(line.kept, line), water_in(line.kept, line)
    if flour is not None and water is not None:
        return Counted(flour=flour.mid, water=water.mid, nominal=water.mid)
    ingredient = line.ware.ingredient if line.ware else None
    if ingredient is None:
        return Counted()
    salt = grams * ingredient.salt / 100 if ingredient.salt else _NOTHING
    soaked = fold(part.preferment or "") in SOAKED
    wet = ingredient.water is not None and ingredient.water >= WET_FROM and ingredient.group in WET_GROUPS
    return Counted(
        flour=grams if line.flour else _NOTHING,
        water=grams * (ingredient.water or 0) / 100 if wet and not soaked else _NOTHING,
        nominal=grams if ingredient.nominal_liquid and not soaked else _NOTHING,
        salt=salt if ingredient.salt_added else _NOTHING,
        salt_inside=_NOTHING if ingredient.salt_added else salt,
    )


def _component(line: Line, part: Part, book: Mapping[str, Formula]) -> Counted:
    """A component's flour and water count in a preferment only; the salt inside it always does."""
    formula = book.get(line.component or "")
    share = component_share(line, book)
    if formula is None or share is None:
        return Counted()
    whole = in_dough(formula.parts, book).scaled(share)
    if part.preferment:
        return whole
    return Counted(salt_inside=whole.salt + whole.salt_inside)


def with_percents(parts: tuple[Part, ...], flour: Fraction) -> tuple[Part, ...]:
    """The parts with each line's percent: None without flour, in parts that do not count, for optional lines."""
    return tuple(
        replace(part, lines=tuple(_with_percent(line, part, flour) for line in part.lines)) for part in parts
    )


def _with_percent(line: Line, part: Part, flour: Fraction) -> Line:
    if not (part.counts and line.counts and line.grams is not None and flour):
        return line
    return replace(line, percent=100 * line.grams.mid / flour)


def totals_of(
    parts: tuple[Part, ...],
    *,
    book: Mapping[str, Formula],
    weighs: Range | None,
    bakes_off: Fraction | None,
) -> Totals:
    """The sums of a whole formula."""
    counted = in_dough(parts, book)
    kept = kept_grams(parts)
    finished = weighs
    if finished is None and bakes_off is not None and kept.high > 0:
        finished = kept.scaled(1 - bakes_off)
    fermented = in_dough((_fermenting(part) for part in parts), book).flour
    return Totals(
        grams=total(part.grams for part in parts),
        dough_grams=total(part.grams for part in parts if part.counts),
        flour=counted.flour,
        water=counted.water,
        hydration=_percent(counted.water, counted.flour),
        hydration_nominal=_percent(counted.nominal, counted.flour),
        salt_percent=_percent(counted.salt, counted.flour),
        salt_with_ingredients_percent=_percent(counted.salt + counted.salt_inside, counted.flour),
        finished_grams=finished,
        prefermented_percent=_percent(fermented, counted.flour) if fermented else None,
    )


def _fermenting(part: Part) -> Part:
    """The lines of a part whose flour is fermented before: all of a preferment, the starters of any part.

    Flour in a soaker, a scald or a water roux is wetted before, but not fermented.
    """
    if part.preferment is not None and fold(part.preferment) not in UNFERMENTED:
        return part
    return replace(part, lines=tuple(line for line in part.lines if line.hydration is not None))


def kept_grams(parts: Iterable[Part]) -> Range:
    """What stays in the bake before it loses weight: all parts, whether they count as dough or not."""
    return total(line.kept for part in parts for line in part.lines if line.counts and line.kept is not None)


def _percent(amount: Fraction, flour: Fraction) -> Fraction | None:
    return 100 * amount / flour if flour else None
