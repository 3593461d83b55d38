"""How amounts were measured, and what the oven is on other dials."""

from generator.present.views import RecipeView
from generator.render.terminal.table import block, columns


def measured(view: RecipeView) -> str:
    """Which cup, how flour got into it, which eggs."""
    return block("How this is measured", *columns([(fact.label, fact.words) for fact in view.measured]))


def ovens(view: RecipeView) -> str:
    """Each oven temperature without a fan, with one, and as a gas mark."""
    head = ("in the method", "without a fan", "with a fan", "gas mark")
    rows = [(oven.written, oven.plain, oven.fan, oven.gas or "none") for oven in view.ovens]
    return block("Oven settings", *columns([head, *rows])) if rows else ""
