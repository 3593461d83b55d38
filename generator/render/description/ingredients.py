"""The ingredients, part by part, a line each, in the words and the order of the view."""

from generator.present.views import PartView, RecipeView
from generator.render.description.plain import plain
from generator.render.description.section import listed
from generator.render.plain_words import ingredient_words
from generator.wording.speech import say


def ingredients(view: RecipeView) -> str:
    """All parts under one heading; a part's title stands above its lines."""
    told = [text for part in view.parts if (text := _part(part))]
    return "\n\n".join([f"{say('INGREDIENTS')}\n{told[0]}", *told[1:]]) if told else ""


def _part(part: PartView) -> str:
    lines = [ingredient_words(line) for line in part.lines]
    return listed(f"{plain(part.title)}:", lines) if part.title else "\n".join(map(plain, lines))
