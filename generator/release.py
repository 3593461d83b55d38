"""The release gate: finished files pass it only where they say what the recipes say.

The pipeline gives what it understood in the shape that the proof asks for (`proof/expected.py`).
"""

from collections.abc import Iterable, Mapping

from generator.diagnostics.diagnostic import Diagnostics
from generator.present.data import recipe_data
from generator.present.people import PeopleView
from generator.present.recipe import Setting
from generator.present.tag_views import TagView
from generator.present.views import SiteView
from generator.proof.expected import Expected
from generator.proof.prove import prove
from generator.render.output import Product


def expected_output(
    site: SiteView, setting: Setting, *, tags: Mapping[str, TagView], people: PeopleView | None
) -> Expected:
    """What the files of the output must say."""
    return Expected(
        site=site,
        data={name: recipe_data(formula, setting) for name, formula in setting.book.items()},
        tags=tags,
        people=people,
        limit=setting.settings.description_limit,
    )


def gate(products: Iterable[Product], expected: Expected) -> Diagnostics:
    """Where new files disagree with the recipes; a finding is a fault of ours, and nothing may be written."""
    return prove({each.path: each.content for each in products}, expected)
