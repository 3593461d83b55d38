"""Where a theme's templates, styles and scripts stand, and how a template is filled.

A checkout keeps the themes beside the package; an installed copy carries them inside it.
"""

from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

_PACKAGE = Path(__file__).resolve().parent.parent
_HOMES = (_PACKAGE / "_themes", _PACKAGE.parent / "themes")
DEFAULT = "docket"


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
