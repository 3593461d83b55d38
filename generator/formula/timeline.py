"""Timed stages summed into hands-on, waiting and baking, one after another, ranges kept."""

from collections.abc import Iterable

from generator.formula.model import Section, Stage, Timed, Times, Way
from generator.measure.number import Range, total


def times_of(ways: tuple[Way, ...]) -> tuple[Times, ...]:
    """One entry for each way, the common steps in all; one entry named "" where there is only one way."""
    common = tuple(way for way in ways if not way.name)
    named = tuple(way for way in ways if way.name)
    if not named:
        return (_times("", common),)
    return tuple(_times(way.name, (way, *common)) for way in named)


def stages_of(ways: Iterable[Way]) -> tuple[Timed, ...]:
    """The timed stages in the order of work."""
    return tuple(
        mention
        for way in ways
        for section in way.sections
        for mention in _mentions(section)
        if isinstance(mention, Timed)
    )


def _mentions(section: Section) -> tuple[object, ...]:
    return tuple(mention for block in section.blocks for mention in block.words.mentions)


def _times(name: str, ways: tuple[Way, ...]) -> Times:
    stages = stages_of(ways)
    return Times(
        way=name,
        hands_on=_sum(stages, Stage.HANDS_ON),
        waiting=_sum(stages, Stage.WAITING),
        baking=_sum(stages, Stage.BAKING),
    )


def _sum(stages: tuple[Timed, ...], kind: Stage) -> Range:
    return total(each.duration.minutes for each in stages if each.stage is kind)
