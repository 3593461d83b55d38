"""A recipe in another size, worded as the recipe is: the same functions make both."""

from collections.abc import Mapping
from dataclasses import replace

from generator.formula.wish import Granted
from generator.present.data import number, recipe_data
from generator.present.recipe import Setting, recipe_view
from generator.present.tins import factor_words
from generator.present.views import RecipeView
from generator.wording.speech import say


def scaled_view(granted: Granted, setting: Setting) -> RecipeView:
    """The view of a scaled formula."""
    return told_as_scaled(recipe_view(granted.formula, setting), granted)


def told_as_scaled(view: RecipeView, granted: Granted) -> RecipeView:
    """The view of a formula that was scaled: the maker's own words for the yield are told as so many times."""
    if granted.factor == 1:
        return view
    times = f"{factor_words(granted.factor)} ×"
    return replace(
        view,
        makes=f"{times} {view.makes}" if view.makes else "",
        portions=f"{times} {view.portions}" if view.portions else "",
        tin=say("{tin}, for 1 × the recipe", tin=view.tin) if view.tin else "",
        net_weight="",
        scale=say("{times} the recipe", times=times),
        notes=tuple(say(note.says) for note in granted.notes),
    )


def scaled_data(granted: Granted, setting: Setting) -> Mapping[str, object]:
    """The numbers of recipe.json in another size, with the factor and what to think about."""
    data = recipe_data(granted.formula, setting)
    if granted.factor == 1:
        return data
    notes = [{"kind": note.kind, "says": note.says, "source": note.source} for note in granted.notes]
    return {**data, "scaled": {"factor": number(granted.factor), "notes": notes}}
