"""What a viewer sees first: the dish and its page, what was corrected, how much it makes and how long."""

from generator.present.views import RecipeView
from generator.render.description.plain import address, plain
from generator.render.plain_words import correction_words, times_words, way_title
from generator.wording.speech import say


def dish(view: RecipeView) -> str:
    """The dish and its page in one line: only about 100 characters show before "more" (common practice)."""
    return f"{plain(view.title)}: {address(view.url)}"


def lead(view: RecipeView) -> str:
    return plain(view.lead)


def corrections(view: RecipeView) -> str:
    """One line for each, in the view's order, newest first."""
    return "\n".join(
        plain(say("Corrected {day}: {words}", day=each.day, words=correction_words(each)))
        for each in view.corrections
    )


def makes(view: RecipeView) -> str:
    amount = ", ".join(plain(words) for words in dict.fromkeys((view.makes, view.portions)) if words)
    lines = ((say("Makes"), amount), (say("Tin"), plain(view.tin)))
    return "\n".join(f"{label}: {words}" for label, words in lines if words)


def times(view: RecipeView) -> str:
    """One line for each way."""
    told = (
        (say("Time") + (f", {title}" if (title := way_title(view, each.way)) else ""), each)
        for each in view.times
    )
    return "\n".join(plain(f"{label}: {times_words(each)}") for label, each in told if each.total)


def keeping(view: RecipeView) -> str:
    return say("Keeps: {time}", time=plain(view.keeps)) if view.keeps else ""
