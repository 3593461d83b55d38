"""The declaration as it is printed beside a recipe."""

from generator.declaration.declare import kitchen_sentence
from generator.declaration.model import Declaration
from generator.declaration.regions import allergen_word
from generator.present.views import LabelView
from generator.settings import Settings
from generator.wording.speech import later, say

ADVICE = later(
    "Made in a home kitchen. If you have an allergy, ask the maker before you eat, and take your doctor's "
    "advice; your own packs may differ from the maker's."
)


def label_view(declaration: Declaration, settings: Settings) -> LabelView:
    """The words of the site's region, in the order in which they are printed."""
    return LabelView(
        heading=say("Ingredients"),
        ingredients=declaration.ingredients,
        contains_line=declaration.contains_line,
        may_line=declaration.may_line,
        kitchen_line=kitchen_sentence(
            settings.kitchen_handles, contains=declaration.contains, region=declaration.region
        ),
        unfinished=declaration.unfinished,
        advice=say(ADVICE),
        statement=declaration.statement,
        also_in=tuple(map(allergen_word, declaration.also_in)),
        also_may=tuple(map(allergen_word, declaration.also_may)),
    )
