"""The yeast of a formula as the two other kinds, and what a kitchen scale can make of so little."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from generator.formula.model import Block, Formula, Heat, Line, Use, WholePart
from generator.formula.note import Note
from generator.formula.yeast import (
    TEXTBOOK,
    Yeast,
    YeastRatios,
    converted,
    heats_beside_yeast,
    rehydration_note,
    yeast_kind,
)
from generator.measure.number import Range

KINDS: tuple[Yeast, ...] = ("fresh", "active dry", "instant")


@dataclass(frozen=True, slots=True, kw_only=True)
class Exchange:
    """One line of yeast: `grams` of each kind that raises the same dough, its own kind as the recipe has it."""

    part: str
    item: str
    kind: Yeast
    grams: Mapping[Yeast, Range]


def exchanges(formula: Formula, ratios: YeastRatios = TEXTBOOK) -> tuple[Exchange, ...]:
    """One for each line of yeast that counts and has a weight, in the order of the formula."""
    lines = (line for part in formula.parts if part.counts for line in part.lines if line.counts)
    found = (_exchange(line, ratios) for line in lines)
    return tuple(each for each in found if each is not None)


def _exchange(line: Line, ratios: YeastRatios) -> Exchange | None:
    kind = yeast_kind(line)
    if kind is None or line.grams is None:
        return None
    grams = {each: converted(line.grams, kind, each, ratios) for each in KINDS}
    known = {each: amount for each, amount in grams.items() if amount is not None}
    return Exchange(part=line.part, item=line.item, kind=kind, grams=MappingProxyType(known))


def half_step_error(grams: Fraction, *, step: Fraction = Fraction(1)) -> Fraction:
    """By how many percent a weight may be off on a scale that shows steps: half a step, on `grams` above zero."""
    return 100 * (step / 2) / grams


def rehydration_notes(formula: Formula) -> tuple[Note, ...]:
    """Steps that stir active dry yeast into a liquid by itself, and too cool for it."""
    found = (rehydration_note(heat.temperature) for heat in _rehydrated(formula))
    return tuple(dict.fromkeys(each for each in found if each is not None))


def _rehydrated(formula: Formula) -> Iterator[Heat]:
    beside = {id(heat) for heat in heats_beside_yeast(formula)}
    blocks = (block for way in formula.ways for section in way.sections for block in section.blocks)
    for block in blocks:
        lines = tuple(_lines(block))
        active = any(yeast_kind(line) == "active dry" for line in lines)
        if active and not any(line.flour for line in lines):
            yield from (
                each for each in block.words.mentions if isinstance(each, Heat) and id(each) in beside
            )


def _lines(block: Block) -> Iterator[Line]:
    for each in block.words.mentions:
        uses = each.uses if isinstance(each, WholePart) else (each,) if isinstance(each, Use) else ()
        yield from (use.line for use in uses if use.line is not None)
