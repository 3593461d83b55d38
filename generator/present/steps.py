"""The ways and their steps, each step with the amounts, times and temperatures it needs."""

from dataclasses import replace

from generator.formula.model import Block, Formula, Heat, Section, Way
from generator.measure.unit import Spoons
from generator.present.addresses import slug
from generator.present.heats import heat_view
from generator.present.machine import machine_view
from generator.present.mentions import rich, use_views
from generator.present.times import stage_views
from generator.present.views import BlockView, SectionView, WayView
from generator.settings import Settings
from generator.wording.speech import say
from generator.wording.vocabulary import said


def way_views(
    formula: Formula, *, settings: Settings, spoons: Spoons
) -> tuple[tuple[WayView, ...], WayView | None]:
    """The named ways, and the steps common to all."""
    views = tuple(
        replace(
            _way(way, index, settings=settings, spoons=spoons),
            machine=machine_view(formula, way, settings=settings, spoons=spoons),
        )
        for index, way in enumerate(formula.ways, start=1)
    )
    common = next((view for view in views if not view.name), None)
    return tuple(view for view in views if view.name), common


def _way(way: Way, index: int, *, settings: Settings, spoons: Spoons) -> WayView:
    anchor = f"way-{slug(way.name)}" if way.name else "method"
    sections = tuple(
        _section(section, f"{index}-{place}", settings=settings, spoons=spoons)
        for place, section in enumerate(way.sections, start=1)
        if section.blocks or section.title
    )
    named = said(way.name)
    title = named[:1].upper() + named[1:] if named else say("Method")
    return WayView(name=way.name, title=title, anchor=anchor, sections=sections)


def _section(section: Section, place: str, *, settings: Settings, spoons: Spoons) -> SectionView:
    blocks = tuple(
        _block(block, f"step-{place}-{index}", settings=settings, spoons=spoons)
        for index, block in enumerate(section.blocks, start=1)
    )
    return SectionView(title=section.title, blocks=blocks)


def _block(block: Block, anchor: str, *, settings: Settings, spoons: Spoons) -> BlockView:
    mentions = block.words.mentions
    return BlockView(
        kind=block.kind,
        number=block.number,
        anchor=anchor,
        words=rich(block.words, settings=settings, spoons=spoons),
        uses=use_views(block.words, settings=settings, spoons=spoons),
        stages=stage_views(mentions),
        heats=tuple(heat_view(each, oven_c=settings.oven_c) for each in mentions if isinstance(each, Heat)),
    )
