"""Where a theme's templates, styles and scripts stand, and how a template is filled.

A checkout keeps the themes beside the package; an installed copy carries them inside it.
"""

import re
from collections.abc import Iterable
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

_PACKAGE = Path(__file__).resolve().parent.parent
_HOMES = (_PACKAGE / "_themes", _PACKAGE.parent / "themes")
DEFAULT = "docket"
_NAMED = re.compile(r"""{%-?\s*(?:extends|include|import|from)\s+["']([^"']+)["']""")


def theme_names() -> tuple[str, ...]:
    """The themes there are, sorted."""
    found = {folder.name for home in _HOMES if home.is_dir() for folder in home.iterdir() if folder.is_dir()}
    return tuple(sorted(found))


def theme_folder(theme: str, kind: str) -> Path:
    """The folder of one kind of output ("site", "cards") in a theme, or in the built-in theme.

    Raises FileNotFoundError where not even the built-in theme has it, which is a fault of the installation.
    """
    for name in (theme, DEFAULT):
        for home in _HOMES:
            if (home / name / kind).is_dir():
                return home / name / kind
    raise FileNotFoundError(f"no theme holds templates for {kind}")


def files_behind(theme: str, names: Iterable[str]) -> tuple[Path, ...]:
    """The files of a theme by names such as "site/recipe.html", and those that templates among them name in turn.

    A name that ends in a slash is the whole folder; a star stands for any letters. Sorted by name; a file that is
    not there is left out.
    """
    found: dict[str, Path] = {}
    waiting = list(names)
    while waiting:
        name = waiting.pop()
        kind, _, inside = name.partition("/")
        path = theme_folder(theme, kind) / inside
        if name.endswith(("/", "*")):
            pattern = inside or "*"
            waiting += [
                f"{kind}/{each.name}" for each in theme_folder(theme, kind).glob(pattern) if each.is_file()
            ]
        elif name not in found and path.is_file():
            found[name] = path
            if inside.endswith(".html"):
                waiting += [f"{kind}/{each}" for each in _NAMED.findall(path.read_text(encoding="utf-8"))]
    return tuple(found[name] for name in sorted(found))


@cache
def templates(theme: str, kind: str) -> Environment:
    """Templates that escape everything and fail loudly on a name they were not given."""
    environment = Environment(
        loader=FileSystemLoader(theme_folder(theme, kind)),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        extensions=["jinja2.ext.i18n"],
    )
    # Every word of a template that is not the maker's stands in _("…"), so that it can be said in another language.
    environment.install_null_translations(newstyle=True)  # type: ignore[attr-defined]
    return environment
