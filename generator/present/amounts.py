"""How an amount is printed: a weight as a scale shows it, a volume as a cook can measure it.

Kitchen rounding is for display only; nothing computes on from a printed amount. Steps and rules are common practice.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from math import floor, lcm

from generator.measure.number import Range
from generator.measure.same import Same
from generator.measure.unit import Spoons
from generator.wording.forms import number
from generator.wording.speech import later, say, voice

CLOSE = Fraction(25, 1000)
"""A volume may miss its weight by 2.5 %; where no scoops come that near, the weight does the work."""

WIDEST_MISS = Fraction(1, 8)
"""Cups that a volume misses at most: half of the smallest cup there is. Without it 40 cups would print as 39."""

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
_GLYPHS = {(each.numerator, each.denominator): sign for each, sign in GLYPHS.items()}
_CUP_TWELFTHS = (0, 3, 4, 6, 8, 9)
"""Measuring cups of ¼, ⅓, ½, ⅔ and ¾ exist."""
_SPOON_SCOOPS = {0: 0, 1: 1, 2: 1, 3: 2, 4: 1, 5: 2, 6: 1, 7: 2}
"""Scoops for so many eighths of a teaspoon: spoons of ⅛, ¼, ½ and ¾ exist, ⅜ is ¼ and ⅛."""
_MOST_SPOONS = 4
"""Tablespoons: a quarter of a metric or an imperial cup holds four and a little more."""


def mixed(value: Fraction) -> str:
    """A number with true fractions where one fits ("3⅓"), else with at most two decimals."""
    whole, part = divmod(value.numerator, value.denominator)
    if part == 0:
        return str(whole)
    glyph = _GLYPHS.get((part, value.denominator))
    return f"{whole or ''}{glyph}" if glyph else decimal(value, places=2)


def decimal(value: Fraction, *, places: int) -> str:
    """As `pointed`, with the decimal mark of the language."""
    return number(pointed(value, places=places))


def pointed(value: Fraction, *, places: int) -> str:
    """Rounded half up, without trailing zeros, with a point: for programs and commands."""
    scale = 10**places
    units = (2 * value.numerator * scale + value.denominator) // (2 * value.denominator)
    whole, rest = divmod(units, scale)
    digits = str(rest).rjust(places, "0").rstrip("0") if places else ""
    return f"{whole}.{digits}" if digits else str(whole)


def grams_on_scale(grams: Fraction) -> str:
    """Whole grams from 10 g on, tenths below, hundredths below 1 g: what kitchen and pocket scales show."""
    # Whole numbers compare many times faster than fractions.
    hundred, one = 100 * grams.numerator, grams.denominator
    return decimal(grams, places=0 if hundred >= 995 * one else 1 if hundred >= 95 * one else 2)


def weight_words(grams: Range | None) -> str:
    """`430 g`, `20–25 g`; "" where no weight is known."""
    if grams is None:
        return ""
    low, high = grams.low, grams.high
    return _weight_words(low.numerator, low.denominator, high.numerator, high.denominator, voice().tag)


@lru_cache(maxsize=16384)
def _weight_words(low: int, of_low: int, high: int, of_high: int, language: str) -> str:
    """A line, its total, its use in a step and its row of the sheet tell one weight. Whole numbers as a key: to hash
    a fraction takes longer. `language` keeps the words of one apart from those of another."""
    lighter, heavier = (grams_on_scale(Fraction(*each)) for each in ((low, of_low), (high, of_high)))
    return say("{weight} g", weight=ends(lighter, heavier))


def ends(low: str, high: str) -> str:
    """`20`, `20–25`."""
    return low if low == high else f"{low}–{high}"


def number_range(amount: Range, words: Callable[[Fraction], str]) -> str:
    """Both ends in such words, once where they are the same."""
    return ends(words(amount.low), words(amount.high))


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


def scoops(millilitres: Fraction, spoons: Spoons) -> Scoops:
    """The fewest scoops within 2.5 % and an eighth of a cup, of those the nearest; else the nearest there are."""
    sizes = _sizes(millilitres, spoons)
    return _fewest_close(sizes) or _nearest(sizes)


@dataclass(frozen=True, slots=True)
class _Sizes:
    """Volumes as whole numbers of one tiny unit: `volume`, how far it may be missed, and what is filled.

    Whole numbers compare hundreds of times faster than fractions, and a page asks for hundreds of volumes.
    """

    volume: int
    reach: int
    cup: int
    tbsp: int
    eighth: int

    @property
    def most_eighths(self) -> int:
        """As many eighths of a teaspoon as make a tablespoon, or more: from there on a tablespoon is filled."""
        return -(-self.tbsp // self.eighth)

    def twelfths(self) -> list[int]:
        """Cups in twelfths, from a little below the volume to at most a little above, each worth trying."""
        whole = self.volume // self.cup
        tried = (12 * n + part for n in range(max(whole - 1, 0), whole + 2) for part in _CUP_TWELFTHS)
        return [each for each in tried if each * self.cup <= 12 * (self.volume + self.reach)]

    def rests(self) -> Iterator[tuple[int, int, int]]:
        """Twelfths of a cup, tablespoons, and what they leave."""
        for twelfths in self.twelfths():
            after_cups = self.volume - twelfths * self.cup // 12
            for tbsp in range(_MOST_SPOONS + 1):
                yield twelfths, tbsp, after_cups - tbsp * self.tbsp


def _sizes(millilitres: Fraction, spoons: Spoons) -> _Sizes:
    scoop = _scoop_sizes(Same(spoons))
    # Over this denominator the volume and its reach are whole numbers.
    volume, by = millilitres.numerator * scoop.unit, millilitres.denominator * CLOSE.denominator
    return _Sizes(
        volume=volume * CLOSE.denominator,
        reach=min(volume * CLOSE.numerator, scoop.miss * by),
        cup=scoop.twelfth * by * 12,
        tbsp=scoop.tbsp * by,
        eighth=scoop.eighth * by,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _ScoopSizes:
    """How far a volume is missed at most, a twelfth of a cup, a tablespoon and an eighth of a teaspoon, as whole
    numbers of which `unit` make a millilitre."""

    unit: int
    miss: int
    twelfth: int
    tbsp: int
    eighth: int


@lru_cache(maxsize=16)
def _scoop_sizes(spoons: Same[Spoons]) -> _ScoopSizes:
    cup, tbsp, tsp = spoons.thing.cup, spoons.thing.tbsp, spoons.thing.tsp
    exact = (cup * WIDEST_MISS, cup / 12, tbsp, tsp / 8)
    unit = lcm(*(each.denominator for each in exact))
    miss, twelfth, tablespoon, eighth = (each.numerator * (unit // each.denominator) for each in exact)
    return _ScoopSizes(unit=unit, miss=miss, twelfth=twelfth, tbsp=tablespoon, eighth=eighth)


def _fewest_close(sizes: _Sizes) -> Scoops | None:
    """Of what comes near enough: the fewest scoops, then the nearest, then the fewest kinds of scoop."""
    best: tuple[int, int, int] | None = None
    found = (0, 0, 0)
    for twelfths, tbsp, left in _within_spoons(sizes):
        least, most = -((sizes.reach - left) // sizes.eighth), (left + sizes.reach) // sizes.eighth
        large = twelfths // 12 + (twelfths % 12 > 0) + tbsp
        # A teaspoon is the largest of the spoons that fill up the rest.
        if least > most or (best and large + max(-(-least // 8), 0) > best[0]):
            continue
        for eighths in _teaspoons(left, sizes):
            count = large + eighths // 8 + _SPOON_SCOOPS[eighths % 8]
            if count and least <= eighths <= most:
                miss = abs(left - eighths * sizes.eighth)
                key = (count, miss, (twelfths > 0) + (tbsp > 0) + (eighths > 0))
                if best is None or key < best:
                    best, found = key, (twelfths, tbsp, eighths)
    return _as_scoops(*found) if best else None


def _within_spoons(sizes: _Sizes) -> Iterator[tuple[int, int, int]]:
    """Of `rests` those that teaspoons can fill up within reach, or that are too much by no more than that."""
    highest = sizes.reach + (sizes.most_eighths - 1) * sizes.eighth
    for twelfths in sizes.twelfths():
        after_cups = sizes.volume - twelfths * sizes.cup // 12
        for tbsp in range(max(-((highest - after_cups) // sizes.tbsp), 0), _MOST_SPOONS + 1):
            left = after_cups - tbsp * sizes.tbsp
            if left < -sizes.reach:
                break
            yield twelfths, tbsp, left


def _nearest(sizes: _Sizes) -> Scoops:
    def key(each: tuple[int, int, int, int]) -> tuple[int, int]:
        twelfths, tbsp, eighths, miss = each
        return miss, twelfths // 12 + (twelfths % 12 > 0) + tbsp + eighths // 8 + _SPOON_SCOOPS[eighths % 8]

    tried = (
        (twelfths, tbsp, eighths, abs(left - eighths * sizes.eighth))
        for twelfths, tbsp, left in sizes.rests()
        for eighths in _teaspoons(left, sizes)
        if twelfths or tbsp or eighths
    )
    twelfths, tbsp, eighths, _ = min(tried, key=key)
    return _as_scoops(twelfths, tbsp, eighths)


def _as_scoops(twelfths: int, tbsp: int, eighths: int) -> Scoops:
    return Scoops(cups=Fraction(twelfths, 12), tbsp=tbsp, tsp=Fraction(eighths, 8))


def _teaspoons(left: int, sizes: _Sizes) -> tuple[int, ...]:
    """Eighths of a teaspoon worth trying: those next to `left`, and the fewest spoons within reach of it."""
    least = -((sizes.reach - left) // sizes.eighth)
    return _worth_trying(left // sizes.eighth, least, sizes.most_eighths)


@lru_cache(maxsize=8192)
def _worth_trying(at: int, least: int, most: int) -> tuple[int, ...]:
    near = {at // step * step + more for step in (1, 2, 4, 6, 8) for more in (0, step)}
    tried = near | {-(-least // step) * step for step in (1, 2, 4, 8)} | {0}
    return tuple(sorted(each for each in tried if 0 <= each < most))


def volume_words(millilitres: Range | None, spoons: Spoons) -> str:
    """`3⅓ cups`, `1 tbsp + ⅜ tsp`, `1–1½ cups`, `a pinch`; "" where no volume is known."""
    if millilitres is None or millilitres.high.numerator <= 0:
        return ""
    low = high = _one_volume(millilitres.low, spoons)
    if millilitres.low is not millilitres.high:
        high = _one_volume(millilitres.high, spoons)
    if low == high:
        return _sum(high)
    if len(low) == len(high) == 1 and low[0][1].rstrip("s") == high[0][1].rstrip("s"):
        return _term(f"{low[0][0]}–{high[0][0]}", high[0][1])
    return say("{low} to {high}", low=_sum(low), high=_sum(high))


def _sum(terms: tuple[tuple[str, str], ...]) -> str:
    return " + ".join(_term(number, unit) for number, unit in terms)


_UNITS = {
    "cup": later("{number} cup"),
    "cups": later("{number} cups"),
    "tbsp": later("{number} tbsp"),
    "tsp": later("{number} tsp"),
    "pinch": later("a pinch"),
}


def _term(number: str, unit: str) -> str:
    return say(_UNITS[unit], number=number)


def _one_volume(millilitres: Fraction, spoons: Spoons) -> tuple[tuple[str, str], ...]:
    return _terms(millilitres.numerator, millilitres.denominator, Same(spoons))


@lru_cache(maxsize=65536)
def _terms(numerator: int, denominator: int, spoons: Same[Spoons]) -> tuple[tuple[str, str], ...]:
    """Whole numbers as a key: to hash a fraction takes longer than to find what is remembered of it."""
    millilitres = Fraction(numerator, denominator)
    if millilitres < spoons.thing.tsp / 12:
        return (("a", "pinch"),)
    return scoops(millilitres, spoons.thing).terms


def count_words(count: Range) -> str:
    """`2`, `1½`, `2–3`."""
    return number_range(count, mixed)


def percent_words(percent: Fraction | None) -> str:
    """`100 %`, `62.2 %`, `0.28 %`; "" where there is none."""
    if percent is None:
        return ""
    return say(
        "{number} %", number=decimal(percent, places=1 if percent.numerator >= percent.denominator else 2)
    )


def pounds_and_ounces(grams: Fraction) -> str:
    """`1 lb 7.9 oz`, rounded down to a tenth of an ounce: a declared weight never says more than there is."""
    tenths = floor(grams / (Fraction("28.349523125") / 10))
    pounds, rest = divmod(tenths, 160)
    ounces = decimal(Fraction(rest, 10), places=1)
    if not pounds:
        return say("{ounces} oz", ounces=ounces)
    if not rest:
        return say("{pounds} lb", pounds=pounds)
    return say("{pounds} lb {ounces} oz", pounds=pounds, ounces=ounces)
