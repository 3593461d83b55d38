"""What a content folder means after a change, from what it meant before: for whoever keeps a reading in memory.

A change of recipes, of bake records, or of what the ledger says of a recipe reaches that recipe, what it is made
with and what is made with it. Those are understood anew; all else is taken from the reading before. What reaches
further (the pantry, the settings, pictures, files that come or go) is read as a whole. Either way the result is what
`check_folder` would give.
"""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path, PurePosixPath

from generator.declaration.checks import PACK_CODES, pack_diagnostics
from generator.declaration.lines import every_line
from generator.diagnostics.diagnostic import Diagnostic, in_order
from generator.formula.model import Formula
from generator.history.ledger import LEDGER
from generator.pipeline import check_folder
from generator.present.listed import listed_of
from generator.present.listing import site_view
from generator.present.moved import Standing
from generator.present.offers import sizes_view
from generator.present.views import RecipeView, SiteView
from generator.publication.checked import CheckResult
from generator.publication.noticed import MOVED_CODES, moved_diagnostics
from generator.publication.sources_apart import ledger_marks
from generator.publication.understanding import changed_keys

_OVERALL = PACK_CODES | MOVED_CODES
"""Findings over several bakes at once."""


def read_again(
    root: Path,
    before: CheckResult,
    changed: Iterable[str],
    *,
    day: date | None,
    ledgers: tuple[Mapping[str, str] | None, Mapping[str, str] | None] = (None, None),
) -> CheckResult:
    """The folder after a change of the files at these paths. `ledgers` are the ledger's marks before and now."""
    felt = _felt(tuple(changed), before, ledgers)
    if felt is None:
        return check_folder(root, day=day)
    book = before.setting.book
    reached = _with_kin(felt, book)
    while True:
        checked = check_folder(root, day=day, only=frozenset(_needed(reached, book)))
        now = {name: checked.setting.book[name] for name in reached if name in checked.setting.book}
        more = {each for one in now.values() for each in components_of(one)} - reached
        if not more:
            break
        if not more <= set(book):
            return check_folder(root, day=day)
        reached |= more
    if any(_pictured(now[name]) != _pictured(book[name]) for name in now):
        return check_folder(root, day=day)
    if checked.setting.day != before.setting.day or checked.setting.settings != before.setting.settings:
        return check_folder(root, day=day)
    return _joined(before, checked, reached)


def ledger_of(root: Path) -> Mapping[str, str] | None:
    """A mark of what the ledger says of each recipe; None where it cannot be read."""
    return ledger_marks(root / LEDGER)


def components_of(formula: Formula) -> tuple[str, ...]:
    """The recipes that a recipe is made with; one can stand in a line's alternatives too."""
    found = (line.component for line in every_line(formula.lines) if line.component)
    return tuple(dict.fromkeys(found))


def _pictured(formula: Formula) -> tuple[object, ...]:
    """What a recipe says of its photograph: what all who show the same one must agree on."""
    return formula.about.photo, formula.about.photo_text, formula.about.photo_focus


def _felt(
    changed: tuple[str, ...],
    before: CheckResult,
    ledgers: tuple[Mapping[str, str] | None, Mapping[str, str] | None],
) -> set[str] | None:
    """The recipes that feel the change themselves; None where more than recipes do."""
    felt: set[str] = set()
    for path in changed:
        folder, _, file = path.partition("/")
        if path == LEDGER:
            told = changed_keys(ledgers[0], ledgers[1]) if ledgers[0] is not None else None
            if told is None:
                return None
            felt |= told
        elif folder == "recipes" and file.endswith(".md"):
            felt.add(PurePosixPath(path).stem)
        elif folder == "bakes" and file.endswith(".yaml"):
            baked = _baked(path, before)
            if not baked:
                return None
            felt.add(baked)
        else:
            return None
    return felt if felt <= set(before.setting.book) else None


def _baked(path: str, before: CheckResult) -> str:
    """The recipe of a bake record: as it was read before, or as a new record's name says."""
    known = next((each.recipe for each in before.bakes if each.path == path), "")
    said = PurePosixPath(path).stem[11:]
    names = (name for name in before.setting.book if said == name or said.startswith(f"{name}-"))
    return known or max(names, key=len, default="")


def _with_kin(names: set[str], book: Mapping[str, Formula]) -> set[str]:
    """The recipes, all that are made with them, and what they are made with: its page says where it is used."""
    parts = {each for name in names for each in components_of(book[name])} & set(book)
    users, fresh = set(names), set(names)
    while fresh:
        fresh = {name for name, one in book.items() if fresh & set(components_of(one))} - users
        users |= fresh
    return users | parts


def _needed(reached: set[str], book: Mapping[str, Formula]) -> set[str]:
    """With those that use them, whose names stand on their pages, and everything that any of these is made with."""
    needed = reached | {name for name, one in book.items() if reached & set(components_of(one))}
    fresh = set(needed)
    while fresh:
        fresh = {each for name in fresh & set(book) for each in components_of(book[name])} - needed
        needed |= fresh
    return needed


def _joined(before: CheckResult, checked: CheckResult, reached: set[str]) -> CheckResult:
    old, new = before.setting, checked.setting
    stays = [name for name in old.book if name not in reached]
    names = sorted({*stays, *(name for name in reached if name in new.book)})
    bakes = (
        *(each for each in before.bakes if each.recipe not in reached),
        *(each for each in checked.bakes if each.recipe in reached),
    )
    setting = replace(
        new,
        book={name: (new if name in reached else old).book[name] for name in names},
        declarations={name: (new if name in reached else old).declarations[name] for name in names},
        # A photograph's middle may be told by another bake or post that shows it too; none has changed.
        photos=old.photos,
    )
    result = replace(
        checked,
        texts={
            **{path: text for path, text in before.texts.items() if path not in checked.texts},
            **checked.texts,
        },
        setting=setting,
        views={name: (checked if name in reached else before).views[name] for name in names},
        bakes=tuple(sorted(bakes, key=lambda each: each.path)),
        diagnostics=(),
    )
    paths = {f"recipes/{name}.md" for name in reached} | {"pantry.yaml", LEDGER}
    paths |= {
        each.span.path
        for each in (*before.diagnostics, *checked.diagnostics)
        if _of_bake(each, stays, before)
    }
    found = (
        *(each for each in checked.diagnostics if each.span.path in paths and each.code not in _OVERALL),
        *(each for each in before.diagnostics if each.span.path not in paths and each.code not in _OVERALL),
        *pack_diagnostics(setting.book, day=setting.day, pack_age=setting.settings.pack_age),
        *moved_diagnostics(_standing(before, result), result.articles),
    )
    return _with_site(replace(result, diagnostics=in_order(found)), before, reached)


def _of_bake(each: Diagnostic, stays: list[str], before: CheckResult) -> bool:
    """Whether a finding stands in a bake record of a recipe that was understood anew."""
    return each.span.path.startswith("bakes/") and _baked(each.span.path, before) not in stays


def _standing(before: CheckResult, now: CheckResult) -> dict[str, Standing]:
    """Where every recipe stands, one with errors where it stood before."""
    book = {**before.setting.book, **now.setting.book}
    return {
        name: Standing(path=one.path, kinds=one.about.kinds, was=one.about.was)
        for name, one in sorted(book.items())
    }


def _with_site(result: CheckResult, before: CheckResult, reached: set[str]) -> CheckResult:
    """With the publication's lists, for which the other sizes of unchanged bakes need not be worded again."""
    worded = {each.name: each.sizes for each in before.site.recipes if each.name not in reached}
    setting = result.setting

    def sized(name: str, view: RecipeView) -> RecipeView:
        if not view.on_site:
            return view
        sizes = worded[name] if name in worded else sizes_view(setting.book[name], setting, view)
        return replace(view, sizes=sizes)

    views = {name: sized(name, view) for name, view in result.views.items()}
    known = {name: listed_of(view, setting) for name, view in result.views.items() if view.on_site}
    site: SiteView = site_view(result.articles, setting, views, known=known)
    result.__dict__["site"] = replace(site, all_recipes=tuple(result.views.values()))
    return result
