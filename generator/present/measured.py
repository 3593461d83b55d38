"""How a recipe's amounts were measured, and what its oven is on other dials.

A cup is not the same everywhere, so the page says which one is meant.
"""

from collections.abc import Iterator
from fractions import Fraction

from generator.catalogue.ingredient import FLOUR_CUPS
from generator.formula.model import Formula, Heat, Line
from generator.measure.number import Range
from generator.measure.temperature import GAS_MARKS, nearest
from generator.measure.unit import SPOONS
from generator.present.amounts import decimal, mixed
from generator.present.heats import celsius, degrees, fahrenheit, heat_words
from generator.present.measures import in_pieces, line_amount
from generator.present.size_views import OvenView
from generator.present.views import Fact
from generator.settings import Cup, Settings
from generator.wording.speech import later, say

FAN_C, FAN_F = 20, 25
"""A fan oven is set so many degrees lower (common practice: 20 °C, in the US 25 °F; no published source)."""

_MARK_STEP = Fraction(25)
"""°F from one gas mark to the next; a temperature further than half of it from every mark has none."""

_CUP_NAMES: dict[Cup, str] = {
    "us": later("US"),
    "metric": later("metric"),
    "imperial": later("imperial"),
    "australian": later("Australian"),
}
_CUP, _TBSP, _TSP = later("1 cup {number} ml"), later("1 tbsp {number} ml"), later("1 tsp {number} ml")
_FILLED = {
    "spooned": later("spooned in and levelled, {weight}, where no pack says otherwise"),
    "dipped": later("dipped full and levelled, {weight}, where no pack says otherwise"),
}
_DIALS = {
    "nearest 5": later("rounded to the nearest 5"),
    "dial": later("as British oven dials have it"),
}


def measured_facts(formula: Formula, settings: Settings) -> tuple[Fact, ...]:
    """Which cup, how flour got into it, which eggs, which °C: only what the recipe has."""
    return tuple(_facts(formula, settings))


def _facts(formula: Formula, settings: Settings) -> Iterator[Fact]:
    lines = formula.lines
    if any(line.millilitres is not None for line in lines):
        yield Fact(label=say("Cup and spoons"), words=_cup_words(settings.cup))
    if any(line.ware and line.ware.ingredient.white_wheat for line in lines):
        cup = FLOUR_CUPS[settings.flour_cup] * SPOONS[settings.cup].cup
        words = say(_FILLED[settings.flour_cup], weight=say("{weight} g", weight=decimal(cup, places=0)))
        yield Fact(label=say("A cup of white flour"), words=words)
    if any(line.ware and line.ware.ingredient.group == "egg" for line in lines):
        yield Fact(label=say("Eggs"), words=say("{size}, where a line names no size", size=say(settings.egg)))
    if any(heat.temperature.stated != "C" for heat in _ovens(formula)):
        yield Fact(label=say("Oven in °C"), words=say(_DIALS[settings.oven_c]))


def _cup_words(name: Cup) -> str:
    spoons = SPOONS[name]
    sizes = ((spoons.cup, 0, _CUP), (spoons.tbsp, 1, _TBSP), (spoons.tsp, 1, _TSP))
    told = ", ".join(say(words, number=decimal(size, places=places)) for size, places, words in sizes)
    return f"{say(_CUP_NAMES[name])}: {told}"


def cups_beside(line: Line, settings: Settings) -> tuple[Fact, ...]:
    """The volume of a line in the cups and spoons of other countries; none for what is counted in pieces."""
    if line.millilitres is None or in_pieces(line):
        return ()
    return tuple(
        Fact(
            label=say(_CUP_NAMES[cup]), words=line_amount(line, settings=settings, spoons=SPOONS[cup]).volume
        )
        for cup in settings.cups_beside
    )


def oven_views(formula: Formula, settings: Settings) -> tuple[OvenView, ...]:
    """Each oven temperature of the method once: without a fan, with one, and as a gas mark."""
    views = (_oven(heat, settings) for heat in _ovens(formula))
    return tuple(dict.fromkeys(views))


def _ovens(formula: Formula) -> Iterator[Heat]:
    for way in formula.ways:
        for section in way.sections:
            for block in section.blocks:
                mentions = block.words.mentions
                yield from (each for each in mentions if isinstance(each, Heat) and each.kind == "oven")


def _oven(heat: Heat, settings: Settings) -> OvenView:
    """What says “fan” is never lowered again: there it is the oven without one that is set higher."""
    in_f, in_c = fahrenheit(heat), celsius(heat, oven_c=settings.oven_c)
    lower, higher = (0, 1) if heat.temperature.fan else (-1, 0)
    return OvenView(
        written=heat_words(heat, oven_c=settings.oven_c)[0],
        plain=_both(in_f, in_c, higher),
        fan=_both(in_f, in_c, lower),
        gas=_gas(heat, _moved(in_f, higher * FAN_F)),
    )


def _both(in_f: Range, in_c: Range, steps: int) -> str:
    return f"{degrees(_moved(in_f, steps * FAN_F), 'F')}, {degrees(_moved(in_c, steps * FAN_C), 'C')}"


def _moved(heat: Range, by: int) -> Range:
    """Kept as it is where nothing is moved; else to the nearest 5, as ovens are set."""
    if not by:
        return heat
    return Range(Fraction(nearest(heat.low + by, 5)), Fraction(nearest(heat.high + by, 5)))


def _gas(heat: Heat, in_f: Range) -> str:
    if heat.temperature.stated == "gas":
        marks = (heat.temperature.low, heat.temperature.high)
    else:
        found = (_mark(in_f.low), _mark(in_f.high))
        if found[0] is None or found[1] is None:
            return ""
        marks = found[0], found[1]
    return mixed(marks[0]) if marks[0] == marks[1] else f"{mixed(marks[0])}–{mixed(marks[1])}"


def _mark(degrees_f: Fraction) -> Fraction | None:
    mark, known = min(GAS_MARKS.items(), key=lambda each: abs(each[1] - degrees_f))
    return mark if abs(known - degrees_f) <= _MARK_STEP / 2 else None
