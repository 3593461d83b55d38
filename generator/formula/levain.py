"""A levain of stated hydration: how to build it, and what flour and water are inside it.

Hydrations are percents of water on flour. None is ever inferred from a name: sources differ from 50 to 125 % for
one and the same word (French Culinary Institute, The Fundamental Techniques of Classic Bread Baking).
"""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class Inside:
    """Grams of flour and of water."""

    flour: Fraction
    water: Fraction

    @property
    def hydration(self) -> Fraction | None:
        """Percent of water on flour; None without flour."""
        return 100 * self.water / self.flour if self.flour else None

    def plus(self, other: "Inside") -> "Inside":
        return Inside(flour=self.flour + other.flour, water=self.water + other.water)


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """What goes into the jar, in grams; `spare` of it is more than the recipe asks for."""

    seed: Fraction
    flour: Fraction
    water: Fraction
    hydration: Fraction
    spare: Fraction = Fraction(0)

    @property
    def grams(self) -> Fraction:
        return self.seed + self.flour + self.water


def inside(starter: Fraction, hydration: Fraction) -> Inside | None:
    """Flour = starter / (1 + hydration), the rest is water; None for less than nothing of either."""
    if starter < 0 or hydration < 0:
        return None
    flour = starter / (1 + hydration / 100)
    return Inside(flour=flour, water=starter - flour)


def prefermented_percent(all_flour: Fraction, starter_flour: Fraction) -> Fraction | None:
    """Flour inside the preferment, of all flour; None unless it is a part of it."""
    if all_flour <= 0 or not 0 <= starter_flour <= all_flour:
        return None
    return 100 * starter_flour / all_flour


def build_by_ratio(
    wanted: Fraction,
    *,
    ratio: tuple[Fraction, Fraction, Fraction],
    seed_hydration: Fraction,
    spare: Fraction = Fraction(0),
) -> Build | None:
    """`wanted` grams by seed : flour : water, such as 1 : 2 : 2; the hydration follows from it.

    `spare` is the percent to build more than wanted. None unless seed and flour are above zero.
    """
    seed, flour, water = ratio
    if wanted <= 0 or spare < 0 or seed <= 0 or flour <= 0 or water < 0 or seed_hydration < 0:
        return None
    unit = wanted * (1 + spare / 100) / (seed + flour + water)
    whole = _mixed(unit * seed, unit * flour, unit * water, seed_hydration)
    return Build(
        seed=unit * seed,
        flour=unit * flour,
        water=unit * water,
        hydration=100 * whole.water / whole.flour,
        spare=wanted * spare / 100,
    )


def build_at(
    wanted: Fraction,
    *,
    hydration: Fraction,
    flour_per_seed: Fraction,
    seed_hydration: Fraction,
    spare: Fraction = Fraction(0),
) -> Build | None:
    """`wanted` grams at a hydration, fed with `flour_per_seed` grams of flour for a gram of seed.

    None where the seed alone brings more water than the levain may have, and for amounts that make no sense.
    """
    if wanted <= 0 or spare < 0 or hydration < 0 or flour_per_seed <= 0 or seed_hydration < 0:
        return None
    grams = wanted * (1 + spare / 100)
    all_flour = grams / (1 + hydration / 100)
    seed = all_flour / (1 / (1 + seed_hydration / 100) + flour_per_seed)
    flour = seed * flour_per_seed
    water = grams - seed - flour
    if water < 0:
        return None
    return Build(seed=seed, flour=flour, water=water, hydration=hydration, spare=wanted * spare / 100)


def _mixed(seed: Fraction, flour: Fraction, water: Fraction, seed_hydration: Fraction) -> Inside:
    seed_flour = seed / (1 + seed_hydration / 100)
    return Inside(flour=flour + seed_flour, water=water + seed - seed_flour)
