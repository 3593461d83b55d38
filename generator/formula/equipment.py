"""What a method mixes with, and what it does before, while and after it mixes: to word it for other equipment.

Which equipment the maker wrote for is read from the names of the ways and, of a method with one nameless way, from
its own words. What goes in at the start and what comes later is read from the amounts that the steps use, as for the
dough cycle.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain
from typing import Literal

from generator.formula.machine import RISES, STARTS
from generator.formula.model import Block, Formula, Heat, Timed, Use, Way, WholePart
from generator.formula.yeast import yeast_kind
from generator.measure.number import Range

Equipment = Literal["machine", "mixer", "hand"]
EVERY: tuple[Equipment, ...] = ("machine", "mixer", "hand")

_BY_WORDS: tuple[tuple[Equipment, re.Pattern[str]], ...] = (
    ("machine", re.compile(r"\bbread[ -]machine\b|\bdough cycle\b", re.IGNORECASE)),
    ("mixer", re.compile(r"\b(?:stand |planetary |spiral )?mixer\b|\bdough hook\b", re.IGNORECASE)),
    ("hand", re.compile(r"\bby hand\b|\bwith (?:a |your )?(?:wet |floured )?hands?\b", re.IGNORECASE)),
)
_KNEADS = re.compile(r"\bknead", re.IGNORECASE)
_WAITS = frozenset({"chill", "freeze", "cool", "rest", "rise"})
_COOKS = "cook"


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A step of the method: the way it stands in, the heading above it, and its number."""

    way: str
    section: str
    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Mixing:
    """How the maker mixes the dough.

    `prepared` is used in steps of their own before it (seeds that are toasted, fruit that is soaked), `first` goes in
    at the start, `later` after the first mixing. `kneads` is the time it is kneaded, None where none is told. `rise`
    is the step of the first rise, `after` the one that follows; None where there is none.
    """

    way: Way
    prepared: tuple[Use, ...]
    first: tuple[Use, ...]
    later: tuple[Use, ...]
    kneads: Range | None
    rise: Place | None
    after: Place | None


def equipment_of_name(way: str) -> Equipment | None:
    """What a way mixes with, as far as its own name says it."""
    words = way.casefold().replace("-", " ").split()
    if "machine" in words or " ".join(words) == "dough cycle":
        return "machine"
    if "mixer" in words:
        return "mixer"
    return "hand" if {"hand", "hands"} & set(words) else None


def written_for(formula: Formula) -> tuple[Equipment, ...]:
    """The equipment that the method speaks of, in the order of `EVERY`; none where it does not say."""
    named = [way.name for way in formula.ways if way.name]
    found = {equipment_of_name(name) for name in named}
    if not named:
        text = " ".join(block.words.markdown for way in formula.ways for block in blocks_of(way))
        found = {equipment for equipment, pattern in _BY_WORDS if pattern.search(text)}
    return tuple(each for each in EVERY if each in found)


def is_yeast_dough(formula: Formula) -> bool:
    """Whether there is flour, and yeast or a preferment to raise it."""
    counted = [line for part in formula.parts if part.counts for line in part.lines if line.counts]
    yeast = any(yeast_kind(line) is not None for line in counted)
    return bool(formula.totals.flour) and (yeast or formula.totals.prefermented_percent is not None)


def mixing_of(formula: Formula) -> Mixing | None:
    """The mixing to word anew: by hand before any other, for it says the most. None where no way kneads a dough."""
    ways = sorted(formula.ways, key=_told_most)
    found = (_mixing(way, formula) for way in ways if _kneads(way))
    return next((each for each in found if each is not None), None)


def is_baked_dough(formula: Formula) -> bool:
    """Whether the method itself bakes it: what goes into another bake does not."""
    return any(
        isinstance(each, Heat) and each.kind == "oven"
        for way in formula.ways
        for block in blocks_of(way)
        for each in block.words.mentions
    )


def blocks_of(way: Way) -> Iterator[Block]:
    return (block for section in way.sections for block in section.blocks)


def _told_most(way: Way) -> int:
    order = ("hand", "mixer", None, "machine")
    return order.index(equipment_of_name(way.name))


def _kneads(way: Way) -> bool:
    return any(
        _KNEADS.search(block.words.markdown) or any(each.kind == "knead" for each in _stages(block))
        for block in blocks_of(way)
    )


def _mixing(way: Way, formula: Formula) -> Mixing | None:
    dough = {id(line) for part in formula.parts if part.counts and not part.preferment for line in part.lines}
    prepared, first, later = list[Use](), list[Use](), list[Use]()
    kneads, risen, started = None, None, False
    for block in blocks_of(way):
        uses = [use for use in _uses(block) if not use.extra and id(use.line) in dough]
        if not started and _prepares(block, uses):
            prepared += uses
            continue
        for mention in _in_order(block):
            if isinstance(mention, Timed):
                if (first or started) and mention.kind in RISES:
                    risen = block
                    break
                started = started or (bool(first) and mention.kind in STARTS)
                kneads = _longer(kneads, mention)
            elif any(mention is use for use in uses):
                (later if started else first).append(mention)
        if risen is not None:
            break
    if not first:
        return None
    return Mixing(
        way=way,
        prepared=tuple(prepared),
        first=tuple(first),
        later=tuple(later),
        kneads=kneads,
        rise=_place(risen, way) if risen else None,
        after=_after(risen, way, formula) if risen else None,
    )


def _prepares(block: Block, uses: list[Use]) -> bool:
    """Whether a step makes something ready by itself: it cooks it, or lets something without flour stand."""
    kinds = {stage.kind for stage in _stages(block)}
    if not uses or kinds & STARTS:
        return False
    flour = any(use.line is not None and use.line.flour for use in uses)
    return _COOKS in kinds or (not flour and bool(kinds & _WAITS))


def _longer(known: Range | None, stage: Timed) -> Range | None:
    if stage.kind != "knead":
        return known
    return stage.duration.minutes if known is None else known + stage.duration.minutes


def _in_order(block: Block) -> Iterator[Use | Timed]:
    each = (
        mention.uses if isinstance(mention, WholePart) else (mention,) for mention in block.words.mentions
    )
    return (one for one in chain.from_iterable(each) if isinstance(one, Use | Timed))


def _uses(block: Block) -> Iterator[Use]:
    return (each for each in _in_order(block) if isinstance(each, Use))


def _stages(block: Block) -> Iterator[Timed]:
    return (each for each in block.words.mentions if isinstance(each, Timed))


def _places(way: Way) -> Iterator[tuple[Block, Place]]:
    for section in way.sections:
        for block in section.blocks:
            yield block, Place(way=way.name, section=section.title, number=block.number)


def _place(wanted: Block, way: Way) -> Place | None:
    return next((place for block, place in _places(way) if block is wanted and block.kind == "step"), None)


def _after(wanted: Block, way: Way, formula: Formula) -> Place | None:
    """The first step behind a block, in its way or in what is common to all."""
    common = [each for each in formula.ways if not each.name and each is not way]
    following = [*_places(way), *(pair for each in common for pair in _places(each))]
    index = next(number for number, (block, _) in enumerate(following) if block is wanted)
    return next((place for block, place in following[index + 1 :] if block.kind == "step"), None)
