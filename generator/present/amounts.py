"""How an amount is printed: a weight as a scale shows it, a volume as a cook can measure it.

Kitchen rounding is for display only; nothing computes on from a printed amount. Steps and rules are common practice.
"""

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from itertools import product
from math import ceil, floor

from generator.measure.number import Range
from generator.measure.unit import Spoons

CLOSE = Fraction(25, 1000)
"""A volume may miss its weight by 2.5 %; where no scoops come that near, the weight does the work."""

GLYPHS = {
    Fraction(1, 8): "⅛",
    Fraction(1, 4): "¼",
    Fraction(1, 3): "⅓",
    Fraction(3, 8): "⅜",
    Fraction(1, 2): "½",
    Fraction(5, 8): "⅝",
    Fraction(2, 3): "⅔",
    Fraction(3, 4): "¾",
    Fraction(7, 8): "⅞",
}
_CUP_PARTS = tuple(Fraction(*each) for each in ((0, 1), (1, 4), (1, 3), (1, 2), (2, 3), (3, 4)))
_SPOON_SCOOPS = {0: 0, 1: 1, 2: 1, 3: 2, 4: 1, 5: 2, 6: 1, 7: 2}
"""Scoops for so many eighths of a teaspoon: spoons of ⅛, ¼, ½ and ¾ exist, ⅜ is ¼ and ⅛."""
_MOST_SPOONS = 4
"""Tablespoons: a quarter of a metric or an imperial cup holds four and a little more."""


def mixed(value: Fraction) -> str:
    """A number with true fractions where one fits ("3⅓"), else with at most two decimals."""
    whole, part = floor(value), value - floor(value)
    if part == 0:
        return str(whole)
    if part in GLYPHS:
        return f"{whole or ''}{GLYPHS[part]}"
    return decimal(value, places=2)


def decimal(value: Fraction, *, places: int) -> str:
    """Rounded half up, without trailing zeros."""
    scale = 10**places
    units = floor(value * scale + Fraction(1, 2))
    whole, rest = divmod(units, scale)
    digits = str(rest).rjust(places, "0").rstrip("0") if places else ""
    return f"{whole}.{digits}" if digits else str(whole)


def grams_on_scale(grams: Fraction) -> str:
    """Whole grams from 10 g on, tenths below, hundredths below 1 g: what kitchen and pocket scales show."""
    if grams >= Fraction(995, 100):
        return decimal(grams, places=0)
    return decimal(grams, places=1 if grams >= Fraction(95, 100) else 2)


def weight_words(grams: Range | None) -> str:
    """`430 g`, `20–25 g`; "" where no weight is known."""
    if grams is None:
        return ""
    low, high = grams_on_scale(grams.low), grams_on_scale(grams.high)
    return f"{low} g" if low == high else f"{low}–{high} g"


@dataclass(frozen=True, slots=True, kw_only=True)
class Scoops:
    """A volume as real cups and spoons: cups and teaspoons in fractions that exist, whole tablespoons."""

    cups: Fraction
    tbsp: int
    tsp: Fraction

    def millilitres(self, spoons: Spoons) -> Fraction:
        return self.cups * spoons.cup + self.tbsp * spoons.tbsp + self.tsp * spoons.tsp

    @property
    def count(self) -> int:
        """How often something is filled."""
        whole, eighths = divmod(int(self.tsp * 8), 8)
        return floor(self.cups) + (self.cups % 1 > 0) + self.tbsp + whole + _SPOON_SCOOPS[eighths]

    @property
    def terms(self) -> tuple[tuple[str, str], ...]:
        """Number and unit of each kind of scoop."""
        cups = ((mixed(self.cups), "cups" if self.cups > 1 else "cup"),) if self.cups else ()
        tbsp = ((str(self.tbsp), "tbsp"),) if self.tbsp else ()
        tsp = ((mixed(self.tsp), "tsp"),) if self.tsp else ()
        return cups + tbsp + tsp


@lru_cache(maxsize=4096)
def scoops(millilitres: Fraction, spoons: Spoons) -> Scoops:
    """The fewest scoops within 2.5 %, of those the nearest; else the nearest that spoons can measure."""

    def miss(each: Scoops) -> Fraction:
        return abs(each.millilitres(spoons) - millilitres) / millilitres

    missed = [(miss(each), each) for each in _candidates(millilitres, spoons) if each.count]
    close = [each for each in missed if each[0] <= CLOSE]
    if close:
        return min(close, key=lambda each: (each[1].count, each[0], len(each[1].terms)))[1]
    return min(missed, key=lambda each: (each[0], each[1].count))[1]


def _candidates(millilitres: Fraction, spoons: Spoons) -> list[Scoops]:
    whole = floor(millilitres / spoons.cup)
    cups = {n + part for n in range(max(whole - 1, 0), whole + 2) for part in _CUP_PARTS}
    below = [each for each in cups if each * spoons.cup <= millilitres * (1 + CLOSE)] or [Fraction(0)]
    below_tbsp = 8 * spoons.tbsp / spoons.tsp
    found = []
    for amount, tbsp in product(sorted(below), range(_MOST_SPOONS + 1)):
        left = millilitres - amount * spoons.cup - tbsp * spoons.tbsp
        for count in _teaspoons(left, CLOSE * millilitres, spoons):
            if 0 <= count < below_tbsp:
                found.append(Scoops(cups=Fraction(amount), tbsp=tbsp, tsp=Fraction(count, 8)))
    return found


def _teaspoons(left: Fraction, reach: Fraction, spoons: Spoons) -> set[int]:
    """Eighths of a teaspoon worth trying: those next to `left`, and the fewest spoons within `reach` of it."""
    exact, least = left / spoons.tsp * 8, ceil((left - reach) / spoons.tsp * 8)
    near = {floor(exact / step) * step + more for step in (1, 2, 4, 6, 8) for more in (0, step)}
    return near | {ceil(Fraction(least, step)) * step for step in (1, 2, 4, 8)} | {0}


def volume_words(millilitres: Range | None, spoons: Spoons) -> str:
    """`3⅓ cups`, `1 tbsp + ⅜ tsp`, `1–1½ cups`, `a pinch`; "" where no volume is known."""
    if millilitres is None or millilitres.high <= 0:
        return ""
    low, high = _one_volume(millilitres.low, spoons), _one_volume(millilitres.high, spoons)
    if low == high:
        return " + ".join(f"{number} {unit}" for number, unit in high)
    if len(low) == len(high) == 1 and low[0][1].rstrip("s") == high[0][1].rstrip("s"):
        return f"{low[0][0]}–{high[0][0]} {high[0][1]}"
    return " to ".join(" + ".join(f"{number} {unit}" for number, unit in each) for each in (low, high))


def _one_volume(millilitres: Fraction, spoons: Spoons) -> tuple[tuple[str, str], ...]:
    if millilitres < spoons.tsp / 12:
        return (("a", "pinch"),)
    return scoops(millilitres, spoons).terms


def count_words(count: Range) -> str:
    """`2`, `1½`, `2–3`."""
    low, high = mixed(count.low), mixed(count.high)
    return low if low == high else f"{low}–{high}"


def percent_words(percent: Fraction | None) -> str:
    """`100 %`, `62.2 %`, `0.28 %`; "" where there is none."""
    if percent is None:
        return ""
    return f"{decimal(percent, places=1 if percent >= 1 else 2)} %"


def pounds_and_ounces(grams: Fraction) -> str:
    """`1 lb 7.9 oz`, rounded down to a tenth of an ounce: a declared weight never says more than there is."""
    tenths = floor(grams / (Fraction("28.349523125") / 10))
    pounds, rest = divmod(tenths, 160)
    ounces = decimal(Fraction(rest, 10), places=1)
    if not pounds:
        return f"{ounces} oz"
    return f"{pounds} lb {ounces} oz" if rest else f"{pounds} lb"
