"""The release gate: finished files pass it only where they say what the recipes say.

The pipeline gives what it understood in the shape that the proof asks for (`proof/expected.py`).
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from functools import partial
from typing import Any

from generator.build.task import Kept
from generator.diagnostics.diagnostic import Diagnostics
from generator.present.data import recipe_data
from generator.present.people import PeopleView
from generator.present.recipe import Setting
from generator.present.size_views import SizesView
from generator.present.tag_views import TagView
from generator.present.views import RecipeView, SiteView
from generator.proof.expected import Expected
from generator.proof.feed_entry import FeedEntry
from generator.proof.prove import prove
from generator.proof.texts import FEED, entry_faults
from generator.publication.leaves import Leaf, Own
from generator.publication.outputs import Publication
from generator.render.feeds.entry import Entry


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
        short_limit=setting.settings.short_limit,
    )


def gate(
    files: Mapping[str, bytes],
    publication: Publication,
    value: Callable[[Kept], object],
    entries: frozenset[str] = frozenset(),
) -> Diagnostics:
    """Where new files, by their paths, disagree with the publication: a fault of ours, and nothing may be written.

    `value` reads what is kept: the whole views are asked for only where a file shows more than a list does.
    `entries` names the bakes whose entries in the feeds were proved by themselves.
    """
    site, leaves = publication.site, publication.leaves
    names = _shown(files, leaves)
    whole = {name: _whole(leaves[name], value) for name in names}
    known = [entry for name in entries if (entry := publication.entry_of(name))] if _has_feed(files) else []
    # A feed shows what is on the site, and needs no place among the files of everything that is not.
    everything = () if all(map(_is_feed, files)) else site.all_recipes

    def worded(view: RecipeView) -> RecipeView:
        return whole.get(view.name) or _whole(leaves[view.name], value)

    expected = Expected(
        site=replace(
            site,
            recipes=tuple(whole.get(view.name, view) for view in site.recipes),
            all_recipes=tuple(whole.get(view.name, view) for view in everything),
        ),
        data={name: value(leaves[name].data) for name in names},  # type: ignore[misc]
        tags={name: value(leaves[name].tag) for name in names},  # type: ignore[misc]
        people=publication.people,
        limit=publication.settings.description_limit,
        short_limit=publication.settings.short_limit,
        proved={each.url: as_read(each) for each in known},
        worded=worded,
    )
    return prove(files, expected)


def gate_own(files: Mapping[str, bytes], own: object, value: Callable[[Kept], object]) -> Diagnostics:
    """The same for files of one bake alone, or for what the feeds say of it."""
    if not isinstance(own, Own):
        raise TypeError("nothing to hold the files of a bake against")
    expected = _expected_of(own, value)
    if own.leaf.entry is not None:
        (whole,) = expected.site.all_recipes
        return entry_faults(FEED, as_read(own.leaf.entry), whole, expected)
    return prove(files, expected)


_LAST: list[tuple[object, Expected]] = []
"""The files of one bake are proved one after the other: what its strings explain is worked out once for all."""


def _expected_of(own: Own, value: Callable[[Kept], object]) -> Expected:
    leaf, settings = own.leaf, own.settings
    key = (leaf.view, leaf.sizes, leaf.data, leaf.tag, own.site, settings)
    if not _LAST or _LAST[0][0] != key:
        whole = _whole(leaf, value)
        expected = Expected(
            site=replace(own.site, recipes=(whole,) if whole.on_site else (), all_recipes=(whole,)),
            data=_OnDemand({leaf.name: partial(value, leaf.data)}),
            tags=_OnDemand({leaf.name: partial(value, leaf.tag)}),
            limit=settings.description_limit,
            short_limit=settings.short_limit,
        )
        _LAST[:] = [(key, expected)]
    return _LAST[0][1]


class _OnDemand(Mapping[str, Any]):
    """Values that are read when they are asked for."""

    def __init__(self, ways: Mapping[str, Callable[[], object]]) -> None:
        self._ways = ways

    def __getitem__(self, name: str) -> Any:
        return self._ways[name]()

    def __iter__(self) -> Iterator[str]:
        return iter(self._ways)

    def __len__(self) -> int:
        return len(self._ways)


def as_read(entry: Entry) -> FeedEntry:
    """An entry as a reader of either feed meets it. Where a feed cannot say it so, it is read back from there."""
    return FeedEntry(
        url=entry.url,
        title=entry.title,
        published=entry.published,
        updated=entry.updated,
        summary=entry.summary,
        html=entry.html,
    )


def _has_feed(files: Iterable[str]) -> bool:
    return any(map(_is_feed, files))


def _is_feed(path: str) -> bool:
    return path.startswith("site/feed.")


def _shown(files: Iterable[str], leaves: Mapping[str, Leaf]) -> tuple[str, ...]:
    """The bakes whose own words the files show beside the lists: those they belong to."""
    paths = tuple(files)
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
