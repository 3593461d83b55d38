"""The places of a recipe's page where words change with the size, with the measure or with the scale of heat.

A place is a name such as "line 1.3 first" or "step-1-1-2 mention 0 tail". The renderer asks for what stands at a
place while it writes it, so a place that is renamed on one side only is found by the first test.
"""

from collections.abc import Iterator

from generator.present.sheet_views import MachineView
from generator.present.views import BlockView, LineView, MentionView, RecipeView, Rich

Heats = tuple[str, str, str]
"""As written, with °F first, with °C first."""


def sized_spots(view: RecipeView) -> Iterator[tuple[str, str]]:
    """Place and words of everything that another size or another measure changes, in the order of the page."""
    yield from (("makes", view.makes), ("portions", view.portions), ("tin", view.tin))
    yield from ((f"fact {number}", fact.words) for number, fact in enumerate(view.facts, start=1))
    yield from _mentions(view.intro, "intro")
    for number, part in enumerate(view.parts, start=1):
        yield f"part {number}", part.weight
        for row, line in enumerate(part.lines, start=1):
            yield from _line(line, f"{number}.{row}")
    for way in view.ways:
        yield from machine_spots(way.machine, way.anchor) if way.machine else ()
    yield from _yeast(view)
    for block in blocks_of(view):
        yield from _mentions(block.words, block.anchor)
        for number, use in enumerate(block.uses, start=1):
            yield f"{block.anchor} use {number} first", use.amount.first
            yield f"{block.anchor} use {number} second", use.amount.second


def heat_spots(view: RecipeView) -> Iterator[tuple[str, Heats]]:
    """Place and words of everything that the scale of heat changes."""
    yield from _heat_mentions(view.intro, "intro")
    for block in blocks_of(view):
        yield from _heat_mentions(block.words, block.anchor)
        for number, heat in enumerate(block.heats, start=1):
            yield f"{block.anchor} heat {number}", (heat.words, heat.in_f, heat.in_c)


def blocks_of(view: RecipeView) -> Iterator[BlockView]:
    """The blocks of every way and of the steps common to all."""
    for way in (*view.ways, *((view.common,) if view.common else ())):
        for section in way.sections:
            yield from section.blocks


def _line(line: LineView, place: str) -> Iterator[tuple[str, str]]:
    yield f"line {place} first", line.amount.first
    yield f"line {place} second", line.amount.second
    yield from ((f"beside {place}.{number}", each.words) for number, each in enumerate(line.beside, start=1))
    yield from ((f"choice {place}.{number}", words) for number, words in enumerate(line.choices, start=1))


def machine_spots(machine: MachineView, place: str) -> Iterator[tuple[str, str]]:
    """What goes into the pan of a machine, and which pan it fits."""
    rows = [row for layer in machine.layers for row in layer.rows] + list(machine.added)
    for row in rows:
        yield f"{place} {row.place} first", row.first
        yield f"{place} {row.place} second", row.second
    yield f"{place} pan", machine.pan


def _yeast(view: RecipeView) -> Iterator[tuple[str, str]]:
    """The recipe's yeast as the other kinds."""
    rows = view.sheet.yeast.rows if view.sheet and view.sheet.yeast else ()
    for number, row in enumerate(rows, start=1):
        yield from ((f"yeast {number}.{column}", cell) for column, cell in enumerate(row.cells, start=1))


def _mentions(words: Rich, place: str) -> Iterator[tuple[str, str]]:
    for number, mention in enumerate(words.mentions):
        for end, said in mention_spots(mention):
            yield f"{place} mention {number} {end}", said


def mention_spots(mention: MentionView) -> tuple[tuple[str, str], ...]:
    """The end of a reference where its amount stands, and its words: an extra begins with it."""
    if mention.kind in ("ingredient", "part"):
        return (("tail", mention.tail),)
    return (("lead", mention.lead), ("tail", mention.tail)) if mention.kind == "extra" else ()


def _heat_mentions(words: Rich, place: str) -> Iterator[tuple[str, Heats]]:
    for number, mention in enumerate(words.mentions):
        if mention.kind == "heat":
            (f_lead, f_tail), (c_lead, c_tail) = mention.in_f, mention.in_c
            yield f"{place} mention {number} lead", (mention.lead, f_lead, c_lead)
            yield f"{place} mention {number} tail", (mention.tail, f_tail, c_tail)
