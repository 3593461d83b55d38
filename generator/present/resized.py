"""The words of a page that change with its size, in another size: those of `spots.sized_spots`, place by place.

A page offers a dozen sizes in both orders. So only what stands at these places is worded anew, by the functions
that word the recipe, and no view is built around it.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from generator.formula.model import Formula, Line, Part, Way, Words
from generator.present.amounts import weight_words
from generator.present.machine import machine_view
from generator.present.measured import cups_beside
from generator.present.measures import line_amounts, use_amounts
from generator.present.mentions import amount_mention, amount_mentions, uses_of
from generator.present.recipe import Setting, amount_facts, ingredient_line
from generator.present.spots import machine_spots, mention_spots
from generator.present.views import Amount
from generator.present.yeast_words import yeast_rows
from generator.settings import First

Pair = tuple[str, str]
"""The words with the weight first, and with the volume first."""

Both = tuple[Setting, Setting]
"""The setting of a site that puts the weight first, and of one that puts the volume first."""


def both_orders(setting: Setting) -> Both:
    """The same setting with either measure first."""
    return _with_first(setting, "weight"), _with_first(setting, "volume")


def _with_first(setting: Setting, first: First) -> Setting:
    return replace(setting, settings=replace(setting.settings, first=first))


def resized_words(formula: Formula, orders: Both) -> Iterator[Pair]:
    """The words at each place after those of the front matter, in the order of the places."""
    yield from ((fact.words, fact.words) for fact in amount_facts(formula))
    yield from _mentions(formula.intro, _amounts(formula.intro, orders))
    for part in formula.parts:
        yield from _part(part, orders)
    named, common = [way for way in formula.ways if way.name], [way for way in formula.ways if not way.name]
    for way in named:
        yield from _machine(formula, way, orders)
    for row in yeast_rows(formula, settings=orders[0].settings):
        yield from zip(row.cells, row.cells, strict=True)
    for way in (*named, *common[:1]):
        yield from _steps(way, orders)


def _part(part: Part, orders: Both) -> Iterator[Pair]:
    weight = weight_words(part.grams) if part.grams.high else ""
    yield weight, weight
    for line in part.lines:
        yield from _line(line, orders)


def _line(line: Line, orders: Both) -> Iterator[Pair]:
    yield from _ends(line_amounts(line, orders[0].spoons))
    yield from ((each.words, each.words) for each in cups_beside(line, orders[0].settings))
    for choice in line.alternatives:
        by_weight_first, by_volume_first = (ingredient_line(choice, each) for each in orders)
        yield by_weight_first, by_volume_first


def _ends(amounts: tuple[Amount, Amount]) -> tuple[Pair, Pair]:
    by_weight, by_volume = amounts
    return (by_weight.first, by_volume.first), (by_weight.second, by_volume.second)


def _machine(formula: Formula, way: Way, orders: Both) -> Iterator[Pair]:
    by_weight, by_volume = (
        machine_view(formula, way, settings=each.settings, spoons=each.spoons) for each in orders
    )
    if by_weight is not None and by_volume is not None:
        both = zip(machine_spots(by_weight, ""), machine_spots(by_volume, ""), strict=True)
        yield from ((one, other) for (_, one), (_, other) in both)


def _steps(way: Way, orders: Both) -> Iterator[Pair]:
    for section in way.sections:
        for block in section.blocks:
            amounts = _amounts(block.words, orders)
            yield from _mentions(block.words, amounts)
            for use in uses_of(block.words):
                yield from _ends(amounts[id(use)])


def _amounts(words: Words, orders: Both) -> Mapping[int, tuple[Amount, Amount]]:
    """The amounts of a passage by the identity of their uses: its sentences tell them, and the list beside it."""
    return {id(use): use_amounts(use, orders[0].spoons) for use in uses_of(words)}


def _mentions(words: Words, amounts: Mapping[int, tuple[Amount, Amount]]) -> Iterator[Pair]:
    for mention in amount_mentions(words):
        by_weight = mention_spots(amount_mention(mention, lambda use: amounts[id(use)][0]))
        by_volume = mention_spots(amount_mention(mention, lambda use: amounts[id(use)][1]))
        for (_, one), (_, other) in zip(by_weight, by_volume, strict=True):
            yield one, other
