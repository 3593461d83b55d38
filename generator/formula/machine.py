"""A dough cycle: what goes into the pan, in which order, and what comes later.

The maker's own method says what is in the pan when the machine starts: all that the way uses before its first mixing
or kneading. What the way uses after that, and before the dough rises, is added while it kneads. A preferment is made
by itself and goes in whole.

Order: liquids, then fat, sugar and salt, then flour, then the yeast in a dry hollow; some machines take the yeast
first, and all else turned round (common practice; always the order of one's own machine).
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import chain
from typing import Literal

from generator.catalogue.lookup import fold
from generator.formula.machine_kind import Order
from generator.formula.model import Formula, Line, Part, Timed, Use, Way, WholePart
from generator.formula.yeast import yeast_kind
from generator.measure.number import Range, total

DOUGH_CYCLE = "dough cycle"
STARTS = frozenset({"mix", "knead"})
RISES = frozenset({"rise", "bake"})
ENDS = RISES | {"chill", "freeze", "cool", "cook", "work"}
WET_FROM = Fraction(50)
"""Grams of water in 100 g from which a thing is poured in with the liquids (our decision: milk, egg, purée, not
butter, honey or cheese)."""

Layer = Literal["liquids", "rest", "flour", "yeast"]
LAYERS: tuple[Layer, ...] = ("liquids", "rest", "flour", "yeast")
_DRY = frozenset({"flour", "starch", "grain", "pulse flour"})
_LIQUID = frozenset({"water", "egg", "extract", "drink", "juice"})
_SPOILS = frozenset({"dairy", "dairy alternative", "egg", "juice", "fruit", "vegetable"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Loaded:
    """One thing for the pan: a line with so much of it, or a preferment (`line` None). `item` names it."""

    item: str
    layer: Layer
    line: Line | None
    uses: tuple[Use, ...]
    grams: Range | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Load:
    """What is in the pan at the start, by layers from the bottom up, and what is added while it kneads.

    `order` is None where it is not stated: the layers then stand as liquids come first. `dry` is the grams of flour,
    oats and bran in it; `spoils` what may not stand for hours in a warm pan.
    """

    order: Order | None
    layers: tuple[tuple[Layer, tuple[Loaded, ...]], ...]
    added: tuple[Loaded, ...]
    dry: Fraction
    spoils: tuple[str, ...]


def dough_cycle(formula: Formula) -> Way | None:
    """The way of this name; a recipe has at most one."""
    return next((way for way in formula.ways if fold(way.name) == DOUGH_CYCLE), None)


def load_of(formula: Formula, way: Way, order: Order | None) -> Load:
    """What the way puts into the pan."""
    before, after = _sorted_out(way, formula)
    return loaded(formula, before, after, order)


def loaded(formula: Formula, before: Iterable[Use], after: Iterable[Use], order: Order | None) -> Load:
    """What goes in at the start and what comes later, by layers; preferments go in at the start."""
    ferments = tuple(_preferment(part) for part in formula.parts if part.counts and part.preferment)
    first = (*ferments, *_gathered(before))
    names = LAYERS if order != "yeast first" else tuple(reversed(LAYERS))
    layers = ((name, tuple(each for each in first if each.layer == name)) for name in names)
    added = _gathered(after)
    return Load(
        order=order,
        layers=tuple((name, things) for name, things in layers if things),
        added=added,
        dry=dry_grams(formula),
        spoils=tuple(dict.fromkeys(each.item for each in first if _spoils(each))),
    )


def dry_grams(formula: Formula) -> Fraction:
    """All flour of the dough with its oats and bran, in grams: what a pan is measured by."""
    grains = (
        line.kept.mid
        for part in formula.parts
        if part.counts
        for line in part.lines
        if line.counts and line.kept and _group(line) == "grain"
    )
    return sum(grains, start=formula.totals.flour)


def _sorted_out(way: Way, formula: Formula) -> tuple[list[Use], list[Use]]:
    """The uses of dough lines before the machine mixes, and those while it kneads."""
    dough = {id(line) for part in _dough(formula) for line in part.lines if line.counts}
    before, after = list[Use](), list[Use]()
    started = False
    for mention in _mentions(way):
        if isinstance(mention, Timed):
            started = started or (bool(before) and mention.kind in STARTS)
            if before and mention.kind in (ENDS if started else RISES):
                break
        elif not mention.extra and id(mention.line) in dough:
            (after if started else before).append(mention)
    return before, after


def _mentions(way: Way) -> Iterator[Use | Timed]:
    for section in way.sections:
        for each in chain.from_iterable(block.words.mentions for block in section.blocks):
            if isinstance(each, WholePart):
                yield from each.uses
            elif isinstance(each, Use | Timed):
                yield each


def _dough(formula: Formula) -> Iterator[Part]:
    """The parts that are mixed in the pan: a preferment is made before."""
    return (part for part in formula.parts if part.counts and not part.preferment)


def _gathered(uses: Iterable[Use]) -> tuple[Loaded, ...]:
    """Each line once, in the order of its first use, with all of its uses."""
    found: dict[int, list[Use]] = {}
    for use in uses:
        found.setdefault(id(use.line), []).append(use)
    return tuple(_loaded(tuple(each)) for each in found.values())


def _loaded(uses: tuple[Use, ...]) -> Loaded:
    first = uses[0]
    weights = [use.grams for use in uses if use.grams is not None]
    return Loaded(
        item=first.item,
        layer=_layer(first.line),
        line=first.line,
        uses=uses,
        grams=total(weights) if len(weights) == len(uses) else None,
    )


def _preferment(part: Part) -> Loaded:
    name = part.name or part.preferment or ""
    return Loaded(item=name, layer="liquids", line=None, uses=(), grams=part.grams)


def _layer(line: Line | None) -> Layer:
    if line is None or line.hydration is not None:
        return "liquids"
    ingredient = line.ware.ingredient if line.ware else None
    if ingredient is None:
        return "rest"
    if yeast_kind(line) is not None:
        return "yeast"
    if line.flour or ingredient.group in _DRY:
        return "flour"
    wet = ingredient.water is not None and ingredient.water >= WET_FROM
    return "liquids" if wet or ingredient.group in _LIQUID else "rest"


def _spoils(loaded: Loaded) -> bool:
    """Whether it spoils in warmth, or may: a preferment, a component, eggs, and what milk, fruit and roots give.

    Flour, sugar, salt, fat and honey keep.
    """
    if loaded.line is None:
        return True
    if loaded.line.ware is None:
        return True
    ingredient = loaded.line.ware.ingredient
    dry = ingredient.water is not None and ingredient.water < 10
    return loaded.line.hydration is not None or (ingredient.group in _SPOILS and not dry)


def _group(line: Line) -> str:
    return line.ware.ingredient.group if line.ware else ""
