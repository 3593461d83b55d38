"""The method without its asides, and the temperatures once more in one line."""

from collections.abc import Iterator

from generator.present.views import BlockView, RecipeView, SectionView, WayView
from generator.render.description.plain import plain
from generator.render.plain_words import choice_words, sentence
from generator.wording.speech import later, say

_KINDS = {"oven": later("oven"), "core": later("core of the bake")}


def method(view: RecipeView) -> str:
    """Every step in the view's words, which carry amounts and times. Text between steps stays on the page."""
    choice = choice_words(view)
    heading = say("METHOD: {choice}", choice=choice) if choice else say("METHOD")
    told = [text for way in _ways(view) if (text := _way(way, headed=bool(view.ways)))]
    return "\n\n".join([f"{heading}\n{told[0]}", *told[1:]]) if told else ""


def temperatures(view: RecipeView) -> str:
    """Ovens and cores in the order of work, each once; any other temperature only has meaning in its step."""
    heats = (heat for block in blocks(view) for heat in block.heats if heat.kind in _KINDS)
    told = dict.fromkeys(f"{say(_KINDS[heat.kind])} {plain(heat.words)}" for heat in heats)
    return say("Temperatures: {temperatures}", temperatures="; ".join(told)) if told else ""


def blocks(view: RecipeView) -> Iterator[BlockView]:
    """Every step, caution and aside, way after way."""
    return (block for way in _ways(view) for section in way.sections for block in section.blocks)


def _ways(view: RecipeView) -> tuple[WayView, ...]:
    return (*view.ways, *((view.common,) if view.common else ()))


def _way(way: WayView, *, headed: bool) -> str:
    steps = [line for section in way.sections for line in _section(section)]
    if not steps:
        return ""
    if not headed:
        return "\n".join(steps)
    return "\n".join([f"{plain(way.title)}:", *steps] if way.name else [say("Then, for all ways:"), *steps])


def _section(section: SectionView) -> list[str]:
    steps = [
        f"{block.number}. {plain(sentence(block.words.plain))}"
        for block in section.blocks
        if block.kind == "step"
    ]
    return [f"{plain(section.title)}:", *steps] if section.title and steps else steps
