"""The method of a text: ways, sections, steps and cautions, each with the lines it comes from."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from generator.importer.model import Placed


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A step or a caution."""

    kind: str
    text: str
    sources: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    title: str
    blocks: tuple[Block, ...]
    sources: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """`name` is "" for what is common to all ways."""

    name: str
    sections: tuple[Section, ...]
    sources: tuple[int, ...] = ()

    @property
    def blocks(self) -> tuple[Block, ...]:
        return tuple(block for section in self.sections for block in section.blocks)


GOES_ON = "\x00"
"""Begins the value of a line that goes on from the one above."""


def read_ways(placed: Iterable[Placed]) -> tuple[Way, ...]:
    """The ways in the order that a recipe file wants: named ones first, what is common to all of them last."""
    ways: list[Way] = []
    for each in placed:
        if each.role == "way":
            ways.append(Way(name=each.value, sections=(), sources=(each.line.number,)))
        elif each.role == "section":
            _add_section(ways, Section(title=each.value, blocks=(), sources=(each.line.number,)))
        elif each.role in ("step", "caution"):
            _add_block(ways, each)
    return _in_order(ways)


def _add_section(ways: list[Way], section: Section) -> None:
    if not ways:
        ways.append(Way(name="", sections=()))
    ways[-1] = replace(ways[-1], sections=(*ways[-1].sections, section))


def _add_block(ways: list[Way], each: Placed) -> None:
    if not ways or not ways[-1].sections:
        _add_section(ways, Section(title="", blocks=()))
    *before, last = ways[-1].sections
    blocks = last.blocks
    if each.value.startswith(GOES_ON) and blocks:
        text = f"{blocks[-1].text} {each.value.removeprefix(GOES_ON)}"
        joined = replace(blocks[-1], text=text, sources=(*blocks[-1].sources, each.line.number))
        blocks = (*blocks[:-1], joined)
    else:
        new = Block(kind=each.role, text=each.value.removeprefix(GOES_ON), sources=(each.line.number,))
        blocks = (*blocks, new)
    ways[-1] = replace(ways[-1], sections=(*before, replace(last, blocks=blocks)))


def _in_order(ways: list[Way]) -> tuple[Way, ...]:
    named: dict[str, Way] = {}
    common: list[Way] = []
    for way in ways:
        if not way.name:
            common.append(way)
        elif way.name in named:
            old = named[way.name]
            named[way.name] = replace(old, sections=(*old.sections, *way.sections))
        else:
            named[way.name] = way
    sections = tuple(section for way in common for section in way.sections)
    sources = tuple(number for way in common for number in way.sources)
    last = (Way(name="", sections=sections, sources=sources),) if sections else ()
    return (*named.values(), *last)
