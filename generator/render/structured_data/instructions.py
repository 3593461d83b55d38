"""The method as sections and steps."""

from collections.abc import Iterator

from generator.present.views import BlockView, RecipeView, SectionView, WayView
from generator.render.structured_data.script import Node
from generator.wording.speech import say


def instructions(view: RecipeView) -> list[Node]:
    """A section for each way, which says that one is enough, then what all ways share.

    What is shared, or all there is, keeps its own sections; steps without a heading stand by themselves, or
    under the title of the common part where ways come before it.
    """
    ways = [_way(way, view) for way in view.ways]
    common = view.common.sections if view.common else ()
    untitled = view.common.title if view.common and view.ways else ""
    shared = [node for section in common for node in _titled(section, section.title or untitled, view)]
    return [*(node for node in ways if node), *shared]


def _way(way: WayView, view: RecipeView) -> Node:
    steps = [step for section in way.sections for step in _steps(section, view)]
    if not steps:
        return {}
    node: dict[str, object] = {"@type": "HowToSection", "name": way.title}
    if len(view.ways) > 1:
        node["description"] = say("One of {number} ways to do the same: choose one.", number=len(view.ways))
    return {**node, "itemListElement": steps}


def _titled(section: SectionView, title: str, view: RecipeView) -> list[Node]:
    steps = list(_steps(section, view))
    if not title or not steps:
        return steps
    return [{"@type": "HowToSection", "name": title, "itemListElement": steps}]


def _steps(section: SectionView, view: RecipeView) -> Iterator[Node]:
    """Cautions and asides are steps too: whoever hears the method read aloud must not miss them."""
    for block in section.blocks:
        if block.words.plain:
            yield {"@type": "HowToStep", "text": _text(block), "url": f"{view.url}#{block.anchor}"}


def _text(block: BlockView) -> str:
    return say("Caution: {words}", words=block.words.plain) if block.kind == "caution" else block.words.plain
