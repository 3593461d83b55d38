"""The comment to pin below a film: what was corrected; before any correction the page, cautions and allergens."""

from generator.present.views import RecipeView
from generator.render.description.correction import correction_note
from generator.render.description.opening import dish
from generator.render.description.safety import advice, allergens, cautions, kitchen


def render_comment(view: RecipeView) -> str:
    """The text with a line end."""
    note = correction_note(view)
    if note:
        return note
    safe = (cautions(view), allergens(view), kitchen(view), advice(view))
    return "\n".join([dish(view), *(each for each in safe if each)]) + "\n"
