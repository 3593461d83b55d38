"""Where a theme's templates, styles and scripts stand, and how a template is filled.

A checkout keeps the themes beside the package; an installed copy carries them inside it.
"""

from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from generator.wording.speech import gettext, ngettext, npgettext, pgettext

_PACKAGE = Path(__file__).resolve().parent.parent
_HOMES = (_PACKAGE / "_themes", _PACKAGE.parent / "themes")
DEFAULT = "docket"


def theme_names() -> tuple[str, ...]:
    """The themes there are, sorted."""
    found = {folder.name for home in _HOMES if home.is_dir() for folder in home.iterdir() if folder.is_dir()}
    return tuple(sorted(found))


def theme_folders(theme: str, kind: str) -> tuple[Path, ...]:
    """The folders of one kind of output ("site", "paper"): the theme's own first, then the built-in theme's.

    Raises FileNotFoundError where not even the built-in theme has it, which is a fault of the installation.
    """
    names = dict.fromkeys((theme, DEFAULT))
    found = tuple(home / name / kind for name in names for home in _HOMES if (home / name / kind).is_dir())
    if not found:
        raise FileNotFoundError(f"no theme holds templates for {kind}")
    return found


def theme_folder(theme: str, kind: str) -> Path:
    """The theme's own folder of one kind of output, or the built-in theme's."""
    return theme_folders(theme, kind)[0]


def theme_file(theme: str, kind: str, name: str) -> Path:
    """One file of a theme, or the built-in theme's where it has none of that name."""
    places = [folder / name for folder in theme_folders(theme, kind)]
    return next((place for place in places if place.is_file()), places[-1])


@cache
def templates(theme: str, kind: str) -> Environment:
    """Templates that escape everything and fail loudly on a name they were not given."""
    environment = Environment(
        loader=FileSystemLoader(theme_folders(theme, kind)),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        extensions=["jinja2.ext.i18n"],
    )
    # Every word of a template that is not the maker's stands in _("…"); it is said in the language that is spoken.
    environment.install_gettext_callables(  # type: ignore[attr-defined]
        gettext, ngettext, newstyle=True, pgettext=pgettext, npgettext=npgettext
    )
    return environment
