"""One recipe as the rest of a publication knows it: small, so that ten thousand of them fit on a page of memory.

What the recipe's own outputs are made of lies in the cache. What lists, feeds, the sitemap and the checks over all
recipes need of it stands here. A list of the site is always made from leaves, in a first make as in a later one.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Protocol

from generator.build.cache import Cache
from generator.build.task import Kept, kept
from generator.declaration.checks import Footprint, footprint
from generator.declaration.lines import every_line
from generator.history.bakes import BakeRecord
from generator.present.data import recipe_data
from generator.present.listed import Listed, listed_of
from generator.present.moved import Standing
from generator.present.offers import sizes_view
from generator.present.recipe import Setting
from generator.present.tag_views import TagView
from generator.present.views import LabelView, RecipeView, Rich, SiteView
from generator.render.feeds.entry import Entry, recipe_entry
from generator.render.site.pictures import named_by
from generator.settings import Settings

_NO_LABEL = LabelView(
    heading="",
    ingredients=(),
    contains_line=(),
    may_line=(),
    kitchen_line="",
    unfinished="",
    statement="",
    advice="",
)


class Known(Protocol):
    """What was understood, as far as a leaf is made of it."""

    @property
    def setting(self) -> Setting: ...

    @property
    def views(self) -> Mapping[str, RecipeView]: ...

    @property
    def bakes(self) -> tuple[BakeRecord, ...]: ...

    @property
    def bare_site(self) -> SiteView: ...

    def tag(self, name: str) -> TagView: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Leaf:
    """`view`, `sizes`, `data` and `tag` lie in the cache; `sizes` and `entry` are there for what is on the site.

    `short` is the view without all that lists have no use for; `named` are files of `media/` that it names;
    `components` are recipes that it uses, `packs` the rows of the pantry in it or in its
    bake records; `listed` is what the lists say of it
    beside the view, `standing` where it stands and stood.
    """

    name: str
    view: Kept
    data: Kept
    tag: Kept
    sizes: Kept | None
    short: RecipeView
    entry: Entry | None
    named: tuple[str, ...]
    components: tuple[str, ...]
    packs: tuple[str, ...]
    listed: Listed
    standing: Standing
    footprint: Footprint


@dataclass(frozen=True, slots=True, kw_only=True)
class Own:
    """What the files of one bake are held against: its leaf, and the publication without anything that it lists.

    The `entry` of its leaf stays in it only where it is to be proved itself.
    """

    leaf: Leaf
    site: SiteView
    settings: Settings


def leaf_of(name: str, checked: Known, cache: Cache) -> Leaf:
    """The leaf of a recipe that is free of errors; what is large goes into the cache."""
    setting, view = checked.setting, checked.views[name]
    formula = setting.book[name]
    sizes = _held(sizes_view(formula, setting, view), cache) if view.on_site else None
    # A component can stand in a line's alternatives too, and a starter's flour is a line inside another.
    components = (line.component for line in every_line(formula.lines) if line.component)
    printed = footprint(formula, setting.book)
    recorded = (
        pack.name
        for each in checked.bakes
        if each.recipe == name
        for ware in each.packs
        for pack in ware.packs
    )
    return Leaf(
        name=name,
        view=_held(view, cache),
        data=_held(dict(recipe_data(formula, setting)), cache),
        tag=_held(checked.tag(name), cache),
        sizes=sizes,
        short=shortened(view),
        entry=recipe_entry(view, checked.bare_site) if view.on_site else None,
        named=named_by(view) if view.on_site else (),
        components=tuple(dict.fromkeys(components)),
        listed=listed_of(view, setting),
        standing=Standing(path=formula.path, kinds=formula.about.kinds, was=formula.about.was),
        packs=tuple(dict.fromkeys((*printed.packs, *recorded))),
        footprint=printed,
    )


def _held(value: object, cache: Cache) -> Kept:
    made = kept(value)
    # Read, not only found: a file with a flipped bit is no input.
    if cache.get(made.mark) is not None:
        return replace(made, content=None)
    return replace(made, content=None) if cache.put(made.mark, made.content or b"") else made


def shortened(view: RecipeView) -> RecipeView:
    """What a list of the site may ask of a bake: names, days, addresses, kinds, the photograph, corrections."""
    return replace(
        view,
        facts=(),
        parts=(),
        ways=(),
        common=None,
        cautions=(),
        intro=Rich(markdown="", mentions=(), plain=""),
        prose=(),
        label=_NO_LABEL,
        videos=(),
        links=(),
        credits=(),
        used_in=(),
        cards=(),
        ingredient_lines=(),
        eater_cautions=(),
        measured=(),
        ovens=(),
        sizes=None,
        sheet=None,
        since=(),
        related=(),
    )


def bare(site: SiteView) -> SiteView:
    """The publication without anything that it lists."""
    return replace(
        site,
        recipes=(),
        teasers=(),
        journal=(),
        standing=(),
        kinds=(),
        corrections=(),
        all_recipes=(),
        allergens=None,
        search=None,
        shelves=(),
        moved=(),
        pages=(),
        updated="",
    )


class Tied(Protocol):
    """A recipe and those that it is made with."""

    @property
    def name(self) -> str: ...

    @property
    def components(self) -> tuple[str, ...]: ...


def users_of(names: Iterable[str], leaves: Iterable[Tied]) -> set[str]:
    """Recipes that use one of `names`, themselves or through others."""
    known, found, fresh = tuple(leaves), set[str](), set(names)
    while fresh:
        fresh = {each.name for each in known if fresh & set(each.components)} - found
        found |= fresh
    return found
