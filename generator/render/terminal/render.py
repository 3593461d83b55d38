"""The normalised recipe as text for a terminal, in the words that every other output has."""

from generator.present.views import RecipeView
from generator.render.terminal.bench import altitude, equipment, loading, tins, water, yeast
from generator.render.terminal.docket import facts, head, label, notes, parts, times
from generator.render.terminal.formula import batches, formula
from generator.render.terminal.measured import measured, ovens


def as_terminal(view: RecipeView) -> str:
    """The docket, the formula, the bench, the declaration; what a recipe does not have is left out."""
    blocks = [head(view), *parts(view), facts(view), measured(view), *times(view), ovens(view)]
    sheet = view.sheet
    if sheet is not None:
        blocks += [*formula(sheet), batches(sheet), yeast(sheet), water(sheet)]
    blocks += [loading(way) for way in view.ways]
    if sheet is not None:
        blocks += [*equipment(sheet), tins(sheet), altitude(sheet)]
    blocks += [notes(view), label(view)]
    return "\n\n".join(block for block in blocks if block) + "\n"
