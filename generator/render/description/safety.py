"""What keeps people from harm: allergens in words, cautions, and what the reader must still do."""

from collections.abc import Iterable

from generator.present.views import RecipeView, Run
from generator.render.description.method import blocks
from generator.render.description.plain import plain
from generator.wording.speech import later, say, say_of


def allergens(view: RecipeView) -> str:
    """The label's sentences; the whole list where the region has no line for what is contained.

    The list itself is not repeated otherwise, and a region's line names only what that region asks for. So
    what any line carries beyond it is told too: a film is watched everywhere.
    """
    label = view.label
    held = _in_capitals(label.contains_line) or _list(view)
    may = _in_capitals(label.may_line)
    lines = [
        label.unfinished,
        held,
        _beyond(later("Also in it: {allergens}."), label.also_in),
        may,
        _beyond(later("May also contain: {allergens}."), label.also_may),
    ]
    return "\n".join(plain(line) for line in lines if line)


def kitchen(view: RecipeView) -> str:
    return plain(view.label.kitchen_line)


def advice(view: RecipeView) -> str:
    return plain(view.label.advice)


def cautions(view: RecipeView) -> str:
    """Every caution once, whether the formula raises it or the method."""
    placed = (block.words.plain for block in blocks(view) if block.kind == "caution")
    told = dict.fromkeys(plain(words) for words in (*view.cautions, *placed))
    return "\n".join(say("Caution: {words}", words=words) for words in told if words)


def _list(view: RecipeView) -> str:
    words = _in_capitals(view.label.ingredients)
    return f"{view.label.heading}: {words}" if words else ""


def _in_capitals(runs: Iterable[Run]) -> str:
    """What stands out in print stands in capitals here."""
    return "".join(run.text.upper() if run.strong else run.text for run in runs)


def _beyond(words: str, names: tuple[str, ...]) -> str:
    return say(words, allergens=", ".join(say_of("allergen", each) for each in names)) if names else ""
