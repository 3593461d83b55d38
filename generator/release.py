"""The release gate: finished files pass it only where they say what the recipes say.

The pipeline gives what it understood in the shape that the proof asks for (`proof/expected.py`).
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace

from generator.build.task import Kept
from generator.diagnostics.diagnostic import Diagnostics
from generator.leaves import Leaf
from generator.outputs import Publication
from generator.present.data import recipe_data
from generator.present.people import PeopleView
from generator.present.recipe import Setting
from generator.present.size_views import SizesView
from generator.present.tag_views import TagView
from generator.present.views import RecipeView, SiteView
from generator.proof.expected import Expected
from generator.proof.prove import prove


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


def gate(
    files: Mapping[str, bytes], publication: Publication, value: Callable[[Kept], object]
) -> Diagnostics:
    """Where new files, by their paths, disagree with the publication: a fault of ours, and nothing may be written.

    `value` reads what is kept: the whole views are asked for only where a file shows more than a list does.
    """
    site, leaves = publication.site, publication.leaves
    names = _shown(files, leaves)
    whole = {name: _whole(leaves[name], value) for name in names}
    expected = Expected(
        site=replace(
            site,
            recipes=tuple(whole.get(view.name, view) for view in site.recipes),
            all_recipes=tuple(whole.get(view.name, view) for view in site.all_recipes),
        ),
        data={name: value(leaves[name].data) for name in names},  # type: ignore[misc]
        tags={name: value(leaves[name].tag) for name in names},  # type: ignore[misc]
        people=publication.people,
        limit=publication.settings.description_limit,
    )
    return prove(files, expected)


def _shown(files: Iterable[str], leaves: Mapping[str, Leaf]) -> tuple[str, ...]:
    """The bakes whose own words the files show: those they belong to, and with a feed all of the site."""
    paths = tuple(files)
    if any(path.startswith("site/feed.") for path in paths):
        return tuple(leaves)
    places = {
        path.split("/")[2 if path.startswith("site/recipes/") else 1] for path in paths if path.count("/") > 1
    }
    return tuple(name for name in leaves if name in places)


def _whole(leaf: Leaf, value: Callable[[Kept], object]) -> RecipeView:
    view = value(leaf.view)
    sizes = value(leaf.sizes) if leaf.sizes else None
    if not isinstance(view, RecipeView) or not (sizes is None or isinstance(sizes, SizesView)):
        raise TypeError(f"what is kept of {leaf.name} is no view")
    return replace(view, sizes=sizes)
