"""Yeast: one kind for another, and what slows or kills it. Gentle notes, each with its source."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from types import MappingProxyType
from typing import Literal

from generator.catalogue.lookup import fold
from generator.formula.model import Block, Formula, Heat, Line, Use, WholePart
from generator.formula.note import Note
from generator.measure.number import Range, total
from generator.measure.same import Same
from generator.measure.temperature import Temperature
from generator.wording.speech import later

Yeast = Literal["fresh", "active dry", "instant"]

NAMES: Mapping[str, Yeast] = MappingProxyType(
    {
        "fresh yeast": "fresh",
        "active dry yeast": "active dry",
        "instant yeast": "instant",
    }
)
"""The catalogue's names of the three kinds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class YeastRatios:
    """Weights that raise the same dough. Books differ, so it is a setting: 100 : 50 : 35 to 40 in others (W. Gisslen,
    from memory), dry for instant x 0.75 to 0.8 (from memory), one for one in many home recipes."""

    fresh: Fraction = Fraction(100)
    active_dry: Fraction = Fraction(40)
    instant: Fraction = Fraction(33)
    source: str = later("a textbook of baking") + ": 100 : 40 : 33 by weight"

    def of(self, kind: Yeast) -> Fraction:
        return {"fresh": self.fresh, "active dry": self.active_dry, "instant": self.instant}[kind]


TEXTBOOK = YeastRatios()

OSMOTOLERANT_FROM = Fraction(10)
"""Percent of sugar on flour above which osmotolerant yeast is suggested (common practice: 5 to 12 are in use)."""
SALT_USUAL = Range(Fraction(1), Fraction(5, 2))
"""Percent of salt on flour: sweet doughs from 1; above 2.5 yeast is slowed strongly (from memory)."""
HYDRATION_USUAL = Range(Fraction(50), Fraction(90))
"""Percent of water on flour from a bagel to a focaccia (W. Gisslen; J. Hamelman; M. Suas; from memory)."""
DEADLY_F = Range(Fraction(130), Fraction(140))
"""Yeast dies from 130 to 140 °F, 55 to 60 °C (A. Gardiner and S. Wilson, The Inquisitive Cook, 1998)."""
CINNAMON_NEAR = Fraction(3, 4)
"""Cinnamon of so much of the yeast's weight is near it: gassing rises at half and falls at the whole."""

CINNAMON = frozenset({"ground cinnamon"})
SUGARY = frozenset({"sugar", "juice", "fruit", "spread", "condiment"})
_COOK = "A. Gardiner and S. Wilson, The Inquisitive Cook (1998)"
_OWN_LIMIT = "from memory and common practice; sources run from 5 to 12 %"


def converted(grams: Range, frm: Yeast, to: Yeast, ratios: YeastRatios = TEXTBOOK) -> Range | None:
    """So much of another yeast; None where a ratio is not above zero, or the amount is below it."""
    ratio = _ratio(frm, to, Same(ratios))
    return None if ratio is None or grams.low < 0 else grams.scaled(ratio)


@lru_cache(maxsize=64)
def _ratio(frm: Yeast, to: Yeast, of: Same[YeastRatios]) -> Fraction | None:
    first, second = of.thing.of(frm), of.thing.of(to)
    return None if min(first, second) <= 0 else second / first


def yeast_kind(line: Line) -> Yeast | None:
    """Which yeast a line is; None for all else."""
    return NAMES.get(line.ware.known_as) if line.ware else None


def sugar_on_flour(formula: Formula) -> Fraction | None:
    """Percent of added sugar on flour, in the dough: of sugars, syrups, honey, juice and fruit.

    Not milk sugar, which yeast does not eat, nor what dried fruit and chocolate keep to themselves (our decision).
    None without flour.
    """
    lines = [line for line in _dough_lines(formula) if line.ware and line.ware.ingredient.group in SUGARY]
    sugar = sum((_sugar(line) for line in lines), start=Fraction(0))
    return 100 * sugar / formula.totals.flour if formula.totals.flour else None


def _sugar(line: Line) -> Fraction:
    share = line.ware.ingredient.sugar if line.ware else None
    return line.kept.mid * (share or 0) / 100 if line.kept else Fraction(0)


def sugar_note(percent: Fraction, *, threshold: Fraction = OSMOTOLERANT_FROM) -> Note | None:
    """Above the threshold a sweet dough slows common yeast."""
    if percent <= threshold:
        return None
    says = (
        f"Sugar is {_plain(percent)} % of the flour, more than {_plain(threshold)} %: common yeast is slow in it. "
        "Osmotolerant yeast is made for sweet doughs; with a common one, let it rise longer."
    )
    return Note(
        kind="sweet dough", says=says, source=f"a text on yeast fermentation in bakeries; {_OWN_LIMIT}"
    )


def salt_note(percent: Fraction, *, usual: Range = SALT_USUAL) -> Note | None:
    """Salt outside the usual range of yeast doughs."""
    if usual.low <= percent <= usual.high:
        return None
    effect = "the dough rises fast and tastes flat" if percent < usual.low else "yeast is slowed strongly"
    says = (
        f"Salt is {_plain(percent)} % of the flour; {_plain(usual.low)} to {_plain(usual.high)} % is usual. "
        f"With this, {effect}."
    )
    return Note(kind="salt", says=says, source="from memory: W. Gisslen; J. Hamelman; M. Suas")


def hydration_note(percent: Fraction, *, usual: Range = HYDRATION_USUAL) -> Note | None:
    """Hydration that few yeast doughs have."""
    if usual.low <= percent <= usual.high:
        return None
    says = (
        f"Water is {_plain(percent)} % of the flour; yeast doughs mostly have {_plain(usual.low)} to "
        f"{_plain(usual.high)} %. Is an amount mistyped?"
    )
    return Note(kind="hydration", says=says, source="from memory: W. Gisslen; J. Hamelman; M. Suas")


def cinnamon_note(cinnamon: Fraction, yeast: Fraction, *, near: Fraction = CINNAMON_NEAR) -> Note | None:
    """Grams of cinnamon in the dough against grams of yeast; in a swirl it does no harm."""
    if yeast <= 0 or cinnamon < near * yeast:
        return None
    says = (
        f"The dough has {_plain(cinnamon)} g of cinnamon for {_plain(yeast)} g of yeast. Near its own weight of "
        "cinnamon yeast makes less gas: put the cinnamon into the filling, or use less."
    )
    source = "Wright, Bice and Fogelberg, Cereal Chemistry 31 (1954) 100-112, as cited"
    return Note(kind="cinnamon", says=says, source=source)


def hot_liquid_note(temperature: Temperature) -> Note | None:
    """A liquid hot enough to kill the yeast that it touches."""
    high = temperature.fahrenheit().high
    if high < DEADLY_F.low:
        return None
    celsius = temperature.celsius().high
    says = (
        f"{_plain(high)} °F ({_plain(celsius)} °C) kills yeast: it dies from 130 to 140 °F (55 to 60 °C). "
        "Let the liquid cool before the yeast meets it."
    )
    return Note(kind="hot liquid", says=says, source=_COOK)


def rehydration_note(temperature: Temperature) -> Note | None:
    """Active dry yeast stirred into a liquid by itself: 105 to 115 °F; below 100 °F it slackens a dough."""
    read = temperature.fahrenheit()
    if read.high >= DEADLY_F.low:
        return hot_liquid_note(temperature)
    if read.low >= 100:
        return None
    says = later(
        "Below 100 °F (38 °C) dry yeast leaks glutathione, and the dough grows sticky: 105 to 115 °F is usual."
    )
    return Note(kind="cool rehydration", says=says, source=_COOK)


def yeast_notes(
    formula: Formula, *, threshold: Fraction = OSMOTOLERANT_FROM, preferment: bool = False
) -> tuple[Note, ...]:
    """Every note on a formula; none where it has no yeast and no preferment. In the order of this page.

    `preferment` says that other recipes use it as one: it has its salt and its water in the final dough.
    """
    lines = _dough_lines(formula)
    yeasts = tuple(line for line in lines if yeast_kind(line))
    if not yeasts and formula.totals.prefermented_percent is None:
        return ()
    sugar = None if _osmotolerant(yeasts) else sugar_on_flour(formula)
    hydration = formula.totals.hydration
    found = (
        sugar_note(sugar, threshold=threshold) if sugar is not None else None,
        None if preferment or _unweighed(lines, salt=True) else _salt(formula),
        None
        if preferment or hydration is None or _unweighed(lines, salt=False)
        else hydration_note(hydration),
        cinnamon_note(_grams(line for line in lines if _is_cinnamon(line)), _grams(yeasts)),
        *(hot_liquid_note(each.temperature) for each in heats_beside_yeast(formula)),
    )
    return tuple(dict.fromkeys(each for each in found if each is not None))


def _unweighed(lines: tuple[Line, ...], *, salt: bool) -> bool:
    """Whether some of the salt, or else of the liquid, has no weight: how much there is cannot be judged then."""
    wares = (line.ware.ingredient for line in lines if line.ware is not None and line.grams is None)
    return any(each.salt_added if salt else each.nominal_liquid for each in wares)


def _salt(formula: Formula) -> Note | None:
    """Too little of all salt, or too much added salt: what cheese and olives hold stays mostly in them."""
    added, whole = formula.totals.salt_percent, formula.totals.salt_with_ingredients_percent
    if added is None or whole is None:
        return None
    return salt_note(whole if added < SALT_USUAL.low else added)


def _dough_lines(formula: Formula) -> tuple[Line, ...]:
    return tuple(line for part in formula.parts if part.counts for line in part.lines if line.counts)


def _osmotolerant(yeasts: tuple[Line, ...]) -> bool:
    return any("osmotolerant" in fold(line.item) for line in yeasts)


def _is_cinnamon(line: Line) -> bool:
    return line.ware is not None and line.ware.known_as in CINNAMON


def _grams(lines: Iterable[Line]) -> Fraction:
    return total(line.grams for line in lines if line.grams is not None).mid


def heats_beside_yeast(formula: Formula) -> tuple[Heat, ...]:
    """Other temperatures than of oven and core, in steps that use yeast."""
    blocks = (block for way in formula.ways for section in way.sections for block in section.blocks)
    return tuple(
        each
        for block in blocks
        if _uses_yeast(block)
        for each in block.words.mentions
        if isinstance(each, Heat) and each.kind == "other"
    )


def _uses_yeast(block: Block) -> bool:
    uses = [each for each in block.words.mentions if isinstance(each, Use)]
    uses += [use for each in block.words.mentions if isinstance(each, WholePart) for use in each.uses]
    return any(use.line is not None and yeast_kind(use.line) for use in uses)


def _plain(value: Fraction) -> str:
    """At most one decimal."""
    return f"{float(value):.1f}".removesuffix(".0")
