"""Which files of a theme stand behind an output: those it names, and those that these name."""

import re
from collections.abc import Iterable
from pathlib import Path

from generator.render.theme import is_own, theme_file, theme_folders

_NAMED = re.compile(r"""{%-?\s*(?:extends|include|import|from)\s+["']([^"']+)["']""")


def files_of(theme: str) -> tuple[Path, ...]:
    """Every file of a theme of the maker's own, sorted."""
    return tuple(sorted(path for path in Path(theme).rglob("*") if path.is_file()))


def files_behind(theme: str, names: Iterable[str]) -> tuple[Path, ...]:
    """The files of a theme by names such as "site/recipe.html", and those that templates among them name in turn.

    A name that ends in a slash is the whole folder; a star stands for any letters. Sorted by name; a file that is
    not there is left out. Of a theme of the maker's own it is every file of the same folder: how it names others is
    for the maker to choose.
    """
    found: dict[str, Path] = {}
    waiting = list(names)
    for kind in {name.partition("/")[0] for name in waiting} if is_own(theme) else ():
        waiting += [
            f"{kind}/{each.name}" for each in theme_folders(theme, kind)[0].iterdir() if each.is_file()
        ]
    while waiting:
        name = waiting.pop()
        kind, _, inside = name.partition("/")
        if not inside or "*" in inside:
            places = (each for folder in theme_folders(theme, kind) for each in folder.glob(inside or "*"))
            waiting += [f"{kind}/{each.name}" for each in places if each.is_file()]
            continue
        path = theme_file(theme, kind, inside)
        if name not in found and path.is_file():
            found[name] = path
            if inside.endswith(".html"):
                waiting += [f"{kind}/{each}" for each in _NAMED.findall(path.read_text(encoding="utf-8"))]
    return tuple(found[name] for name in sorted(found))
