"""What of a bake is eaten as it was put in: read from the order of the method's references.

A stage of baking or cooking, the temperature of a core, and any other temperature of 71 °C (160 °F) or more count
as heat (foodsafety.gov: eggs and dishes of egg are done at 160 °F). The heat of an oven alone only says that
something is baked, not when, since ovens are lit early. In doubt a thing counts as raw: a caution too many harms
nobody.
"""

import re
from collections.abc import Iterator, Mapping
from fractions import Fraction

from generator.formula.model import (
    Formula,
    Heat,
    Line,
    Mention,
    Section,
    Stage,
    Timed,
    Use,
    Ware,
    Way,
    WholePart,
)

DONE_FROM_C = Fraction(71)
_SPREAD_ON = re.compile(
    r"\b(?:icing|frosting|mousse|buttercream|mayonnaise)\b|(?:guss|glasur|buttercreme)\b", re.IGNORECASE
)
_SPOILS = frozenset(
    {
        "heavy cream",
        "double cream",
        "light whipping cream",
        "light cream",
        "half-and-half",
        "sour cream",
        "reduced-fat sour cream",
        "crème fraîche",
        "clotted cream",
        "cream cheese",
        "neufchatel",
        "mascarpone",
        "ricotta",
        "part-skim ricotta",
        "quark",
        "skyr",
        "cottage cheese",
        "yogurt",
        "low-fat yogurt",
        "greek yogurt",
        "mozzarella",
        "lemon curd",
    }
)
_ONLY_WHILE_RAW = frozenset({"raw flour", "raw egg", "chilled"})
_NOTHING: frozenset[str] = frozenset()


def is_heated(formula: Formula) -> bool:
    """Whether the method heats anything at all."""
    return any(
        _in_the_food(each) or (isinstance(each, Heat) and each.kind == "oven")
        for way in formula.ways
        for section in way.sections
        for each in _mentions(section)
    )


def keys_of(line: Line, book: Mapping[str, Formula]) -> frozenset[str]:
    """The caution keys that a line and its alternatives bring into the bake, those of a component as it is left."""
    return _keys(line, book, _NOTHING)


def left_unheated(formula: Formula, book: Mapping[str, Formula]) -> frozenset[str]:
    """Caution keys ("raw egg", "raw flour", "alcohol", "chilled") of what no heat reaches after it was put in."""
    return _left(formula, book, frozenset({formula.name}))


def ware_keys(ware: Ware | None) -> frozenset[str]:
    """The catalogue's keys, and "chilled" for what spoils outside a refrigerator (USDA, 40 to 140 °F)."""
    if ware is None:
        return _NOTHING
    names = {ware.ingredient.name, *(each.stands_for for each in ware.packs)}
    return frozenset((*ware.ingredient.cautions, *(("chilled",) if names & _SPOILS else ())))


def _keys(line: Line, book: Mapping[str, Formula], seen: frozenset[str]) -> frozenset[str]:
    found = ware_keys(line.ware) if line.component is None else _NOTHING
    inner = book.get(line.component or "")
    if inner is not None and inner.name not in seen:
        found |= _brought(inner, book, seen | {inner.name})
    return found.union(*(_keys(each, book, seen) for each in line.alternatives))


def _brought(formula: Formula, book: Mapping[str, Formula], seen: frozenset[str]) -> frozenset[str]:
    """What a component brings: flour, egg and cream only as far as it leaves them unheated, the rest as it is."""
    every = _NOTHING.union(*(_keys(line, book, seen) for line in formula.lines))
    return (every - _ONLY_WHILE_RAW) | _left(formula, book, seen)


def _left(formula: Formula, book: Mapping[str, Formula], seen: frozenset[str]) -> frozenset[str]:
    if not is_heated(formula):
        return _NOTHING.union(*(_keys(line, book, seen) for line in formula.lines))
    common = tuple(way for way in formula.ways if not way.name)
    named = tuple(way for way in formula.ways if way.name)
    orders = [(way, *common) for way in named] or [common]
    late = [use for order in orders for use in (*_after_the_last_heat(order), *_spread_on(order))]
    return _NOTHING.union(*(_use_keys(use, book, seen) for use in late))


def _after_the_last_heat(ways: tuple[Way, ...]) -> Iterator[Use]:
    order = [each for way in ways for section in way.sections for each in _mentions(section)]
    last = max((at for at, each in enumerate(order) if _in_the_food(each)), default=None)
    if last is not None:
        yield from _uses(order[last + 1 :])


def _spread_on(ways: tuple[Way, ...]) -> Iterator[Use]:
    """Icings and the like that are made in a section of their own without heat, before the bake or after it."""
    for section in (each for way in ways for each in way.sections):
        mentions = tuple(_mentions(section))
        if not any(map(_in_the_food, mentions)):
            yield from (use for use in _uses(mentions) if _SPREAD_ON.search(f"{section.title} {use.part}"))


def _use_keys(use: Use, book: Mapping[str, Formula], seen: frozenset[str]) -> frozenset[str]:
    return _keys(use.line, book, seen) if use.line else ware_keys(use.ware)


def _mentions(section: Section) -> Iterator[Mention]:
    for block in section.blocks:
        yield from block.words.mentions


def _uses(mentions: tuple[Mention, ...] | list[Mention]) -> Iterator[Use]:
    for each in mentions:
        if isinstance(each, Use):
            yield each
        elif isinstance(each, WholePart):
            yield from each.uses


def _in_the_food(mention: Mention) -> bool:
    if isinstance(mention, Timed):
        return mention.stage is Stage.BAKING or mention.kind == "cook"
    if isinstance(mention, Heat):
        core = mention.kind == "core"
        return core or (mention.kind == "other" and mention.temperature.celsius().high >= DONE_FROM_C)
    return False
