"""The yeast of a recipe as the other kinds that a kitchen may have, with the ratio and its source."""

from collections.abc import Iterator
from fractions import Fraction

from generator.catalogue.load import built_in
from generator.formula.model import Formula
from generator.formula.yeast import TEXTBOOK, Yeast, YeastRatios
from generator.formula.yeast_exchange import (
    KINDS,
    Exchange,
    exchanges,
    half_step_error,
    rehydration_notes,
)
from generator.measure.density import millilitres_of
from generator.measure.number import Range
from generator.measure.unit import SPOONS
from generator.present.amounts import decimal, volume_words, weight_words
from generator.present.bench_views import YeastRow, YeastView
from generator.settings import Settings
from generator.wording.speech import later, say

_COLUMNS: dict[Yeast, str] = {
    "fresh": later("Fresh"),
    "active dry": later("Active dry"),
    "instant": later("Instant"),
}
_DRY = later(
    "Instant yeast goes in with the flour. Active dry yeast is first stirred into some of the recipe’s liquid at 105 "
    "to 115 °F (41 to 46 °C), fresh yeast into liquid of about 95 °F (35 °C). Below 100 °F (38 °C) active dry yeast "
    "makes a dough sticky; from 130 °F (54 °C) on yeast dies (A. Gardiner and S. Wilson, The Inquisitive Cook, 1998)."
)
_FINE_BELOW = 10
"""Grams below which a scale with whole grams is too coarse (common practice)."""


def yeast_view(formula: Formula, *, settings: Settings) -> YeastView | None:
    """One row for each line of yeast; None where there is none with a weight."""
    found = exchanges(formula)
    if not found:
        return None
    return YeastView(
        columns=tuple(say(_COLUMNS[kind]) for kind in KINDS),
        rows=_rows(found, settings),
        notes=tuple(_notes(formula, found)),
    )


def yeast_rows(formula: Formula, *, settings: Settings) -> tuple[YeastRow, ...]:
    """The rows alone: what stands beside them is the same in every size, or no place of the page."""
    return _rows(exchanges(formula), settings)


def _rows(found: tuple[Exchange, ...], settings: Settings) -> tuple[YeastRow, ...]:
    named = len({each.part for each in found}) > 1
    return tuple(_row(each, settings, with_part=named) for each in found)


def ratio_words(ratios: YeastRatios = TEXTBOOK) -> str:
    """The ratio as it is stated, and where it is from."""
    numbers = " : ".join(decimal(ratios.of(kind), places=1) for kind in KINDS)
    return say(
        "Reckoned as fresh : active dry : instant = {numbers} by weight ({source}). Other books have "
        "100 : 50 : 35 to 40; go by how the dough rises.",
        numbers=numbers,
        source=say(ratios.source.partition(":")[0]),
    )


def _row(each: Exchange, settings: Settings, *, with_part: bool) -> YeastRow:
    item = f"{each.item} ({each.part})" if with_part and each.part else each.item
    return YeastRow(
        item=item,
        cells=tuple(_cell(kind, each.grams[kind], settings) if kind in each.grams else "" for kind in KINDS),
        own=KINDS.index(each.kind),
    )


def _cell(kind: Yeast, grams: Range, settings: Settings) -> str:
    """`8.5 g (2¾ tsp)`; fresh yeast is weighed alone."""
    row = built_in().find(f"{kind} yeast")
    weight = weight_words(grams)
    if kind == "fresh" or row is None or not row.grams_per_ml:
        return weight
    volume = volume_words(millilitres_of(grams, row.grams_per_ml), SPOONS[settings.cup])
    return f"{weight} ({volume})" if volume else weight


def _notes(formula: Formula, found: tuple[Exchange, ...]) -> Iterator[str]:
    yield ratio_words()
    yield say(_DRY)
    yield from (f"{say(note.says)} ({note.source})" for note in rehydration_notes(formula))
    least = min(amount.low for each in found for amount in each.grams.values())
    if 0 < least < _FINE_BELOW:
        yield _too_fine(least)


def _too_fine(grams: Fraction) -> str:
    """What a scale with whole grams makes of it."""
    shown = weight_words(Range.exact(grams))
    if grams < 1:
        return say(
            "A scale that shows whole grams cannot weigh {shown}: use one that shows hundredths, or a spoon.",
            shown=shown,
        )
    error = decimal(half_step_error(grams), places=0)
    return say(
        "On a scale that shows whole grams {shown} may be {error} % more or less: use one that shows tenths, or a "
        "spoon.",
        shown=shown,
        error=error,
    )
