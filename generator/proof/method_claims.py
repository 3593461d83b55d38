"""What the steps claim: each sentence as worded, and what some outputs set beside it."""

import re
from collections.abc import Iterator

from generator.present.plain import plain_words
from generator.present.sheet_views import LoadRow, MachineView
from generator.present.views import BlockView, RecipeView, WayView
from generator.proof.claim import DECLARATION, Claim, claim
from generator.wording.speech import gettext, say

# A link or a picture of Markdown: paper adds an address to the one and sets words for the other.
_LINK = re.compile(r"!?\[((?:[^\[\]]|\[[^\]]*\])*)\]\([^)]*\)|<[a-z]+:[^>]*>")


def method_claims(
    view: RecipeView, *, uses: bool = False, when: bool = False, machine: bool = False, asides: bool = True
) -> Iterator[Claim]:
    """Every way, then what all ways share.

    `uses`: the amounts stand beside the step. `when`: times and temperatures do. `machine`: the loading is there.
    `asides`: so are cautions and text between the steps.
    """
    for way in (*view.ways, *((view.common,) if view.common else ())):
        if machine and way.machine:
            yield from _machine(way.machine, way)
        for section in way.sections:
            for block in section.blocks:
                if block.kind == "step" or asides:
                    yield from _block(block, way)
                if block.kind == "step":
                    yield from _beside(block, way, uses=uses, when=when)


def _name(block: BlockView, way: WayView) -> str:
    of = f" of “{way.title}”" if way.name else ""
    return f"step {block.number}{of}" if block.kind == "step" else f"a {block.kind}{of}"


def _block(block: BlockView, way: WayView) -> Iterator[Claim]:
    kind = DECLARATION if block.kind == "caution" else "amount"
    for words in _pieces(block):
        yield from claim(_name(block, way), words, kind=kind, group="method")


def _pieces(block: BlockView) -> Iterator[str]:
    """The block in one, or what stands before, in and after its links."""
    text = block.words.plain
    at = 0
    for found in _LINK.finditer(block.words.markdown):
        words = plain_words(found.group(), block.words.mentions)
        start = text.find(words, at) if words else -1
        if start >= 0:
            yield text[at:start]
            yield words if not found.group().startswith("!") else ""
            at = start + len(words)
    yield from text[at:].split("\n")


def _beside(block: BlockView, way: WayView, *, uses: bool, when: bool) -> Iterator[Claim]:
    where = _name(block, way)
    for use in block.uses if uses else ():
        first, second = use.amount.first, use.amount.second
        words = f"{first} {use.item} {use.remark} {second}"
        yield from claim(f"{use.item} beside {where}", words)
    for stage in block.stages if when else ():
        either = (f"{gettext(stage.kind)} {stage.words}", f"{stage.words} {gettext(stage.kind)}")
        yield from claim(f"the time beside {where}", *either)
    for heat in block.heats if when else ():
        kind = "" if heat.kind == "other" else gettext(heat.kind)
        yield from claim(f"the temperature beside {where}", f"{kind} {heat.words}")


def _machine(machine: MachineView, way: WayView) -> Iterator[Claim]:
    """The loading: rows in their order, then what is said of the pan."""
    for layer in machine.layers:
        yield from _rows(layer.rows, way)
    yield from _rows(machine.added, way)
    for words in (machine.timer, machine.rest, machine.look, machine.pan):
        kind = DECLARATION if words == machine.timer else "amount"
        yield from claim(f"what is said of the machine for “{way.title}”", words, kind=kind)


def _rows(rows: tuple[LoadRow, ...], way: WayView) -> Iterator[Claim]:
    for row in rows:
        what = f"{row.item} in the machine for “{way.title}”"
        yield from claim(what, f"{row.first} {row.item} {row.second}", f"{row.first} {row.item}")


def described_steps(view: RecipeView) -> Iterator[Claim]:
    """The method in plain text, without its asides, and the temperatures once more."""
    yield from method_claims(view, asides=False)
    heats: dict[str, None] = {}
    for way in (*view.ways, *((view.common,) if view.common else ())):
        for heat in (heat for section in way.sections for block in section.blocks for heat in block.heats):
            if heat.kind in ("oven", "core"):
                kind = say("core of the bake") if heat.kind == "core" else say("oven")
                heats[f"{kind} {heat.words}"] = None
    if heats:
        words = say("Temperatures: {temperatures}", temperatures="; ".join(heats))
        yield from claim("the line of temperatures", words, group="temperatures")
