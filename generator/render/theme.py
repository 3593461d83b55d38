"""Where a theme's templates, styles and scripts stand, and how a template is filled.

A checkout keeps the themes beside the package; an installed copy carries them inside it. A theme of the maker's own
stands in the content folder, in `themes/NAME/`; it is known by its whole path, since its name could be anybody's.
"""

import os
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any, NoReturn

from jinja2 import BaseLoader, ChoiceLoader, Environment, FileSystemLoader, PrefixLoader, TemplateNotFound
from jinja2.sandbox import ImmutableSandboxedEnvironment

from generator.diagnostics.span import PROGRAM
from generator.render.template_cache import TemplateCache
from generator.render.template_fault import Missed, TemplateFault, fault_of
from generator.wording.speech import gettext, ngettext, npgettext, pgettext

_PACKAGE = Path(__file__).resolve().parent.parent
_HOMES = (_PACKAGE / "_themes", _PACKAGE.parent / "themes")
DEFAULT = "docket"
_OURS = f"{DEFAULT}/"
_WRITTEN: Mapping[str, Any] = MappingProxyType(
    {
        "trim_blocks": True,
        "lstrip_blocks": True,
        "keep_trailing_newline": True,
        "extensions": ["jinja2.ext.i18n"],
    }
)


def theme_names() -> tuple[str, ...]:
    """The themes there are, sorted."""
    found = {folder.name for home in _HOMES if home.is_dir() for folder in home.iterdir() if folder.is_dir()}
    return tuple(sorted(found))


def is_own(theme: str) -> bool:
    """Whether this is a theme of the maker's own, known by its path."""
    return os.sep in theme


def own_root(theme: str) -> Path:
    """The content folder of a theme of the maker's own."""
    return Path(theme).parent.parent


def theme_folders(theme: str, kind: str) -> tuple[Path, ...]:
    """The folders of one kind of output ("site", "paper"): the theme's own first, then the built-in theme's.

    Raises FileNotFoundError where not even the built-in theme has it, which is a fault of the installation.
    """
    found = tuple(each for each in _folders(theme, kind) if each.is_dir())
    if not any(home in each.parents for each in found for home in _HOMES):
        raise FileNotFoundError(f"no theme holds templates for {kind}")
    return found


def _folders(theme: str, kind: str) -> tuple[Path, ...]:
    own = (Path(theme) / kind,) if is_own(theme) and stays_inside(Path(theme) / kind, theme) else ()
    names = dict.fromkeys((DEFAULT,) if is_own(theme) else (theme, DEFAULT))
    return (*own, *(home / name / kind for name in names for home in _HOMES))


def stays_inside(path: Path, theme: str) -> bool:
    """Whether a file of the maker's theme lies in the content folder, wherever links lead."""
    return Path(os.path.realpath(path)).is_relative_to(os.path.realpath(own_root(theme)))


def theme_folder(theme: str, kind: str) -> Path:
    """The theme's own folder of one kind of output, or the built-in theme's."""
    return theme_folders(theme, kind)[0]


def theme_file(theme: str, kind: str, name: str) -> Path:
    """One file of a theme, or the built-in theme's where it has none of that name.

    "docket/base.html" is always the built-in theme's: what another theme only adds to, it names so.
    """
    if name.startswith(_OURS):
        theme, name = DEFAULT, name.removeprefix(_OURS)
    places = [folder / name for folder in theme_folders(theme, kind)]
    return next((place for place in places if is_readable(place, theme)), places[-1])


def is_readable(path: Path, theme: str) -> bool:
    """Whether a file is there, and inside the content folder if it is the maker's."""
    mine = is_own(theme) and path.is_relative_to(theme)
    return path.is_file() and (not mine or stays_inside(path, theme))


def shown_path(path: str | Path) -> str | None:
    """`themes/NAME/site/page.html` for a file of a theme, with the mark of the program's own files before one of
    ours; None for any other file."""
    for home in _HOMES:
        if Path(path).is_relative_to(home):
            return f"{PROGRAM}themes/{Path(path).relative_to(home).as_posix()}"
    parts = Path(path).parts
    at = max((at for at, part in enumerate(parts) if part in ("themes", "_themes")), default=None)
    return "/".join(("themes", *parts[at + 1 :])) if at is not None else None


@cache
def templates(theme: str, kind: str) -> Environment:
    """Templates that escape everything and fail loudly on a name they were not given.

    Those of a theme of the maker's own, which may come from a stranger, see no more of Python than their values.
    """
    folders = _folders(theme, kind)
    usual: BaseLoader = _Inside(folders, theme=theme) if is_own(theme) else FileSystemLoader(folders)
    loader = ChoiceLoader([usual, PrefixLoader({DEFAULT: FileSystemLoader(_folders(DEFAULT, kind))})])
    environment: Environment
    if is_own(theme):
        environment = _FencedEnvironment(loader=loader, autoescape=True, undefined=Missed, **_WRITTEN)
    else:
        kept = TemplateCache(f"{sorted(_WRITTEN.items())}")
        environment = _TellingEnvironment(
            loader=loader, autoescape=True, undefined=Missed, bytecode_cache=kept, **_WRITTEN
        )
    # Every word of a template that is not the maker's stands in _("…"); it is said in the language that is spoken.
    environment.install_gettext_callables(  # type: ignore[attr-defined]
        gettext, ngettext, newstyle=True, pgettext=pgettext, npgettext=npgettext
    )
    environment.filters["begun"] = begun
    environment.filters["stretch"] = stretch
    return environment


def begun(words: str) -> str:
    """Words as they begin a line: the first letter large, the rest as it is, since a noun may be written large."""
    return words[:1].upper() + words[1:]


def stretch(share: str) -> str:
    """The share of a strip without its sign, as a style sheet takes it."""
    return share.rstrip(" %")


class _Inside(FileSystemLoader):
    """Follows no link out of the content folder."""

    def __init__(self, folders: tuple[Path, ...], *, theme: str) -> None:
        super().__init__(folders)
        self._theme = theme

    def get_source(self, environment: Environment, template: str) -> Any:
        found = super().get_source(environment, template)
        if not is_readable(Path(found[1]), self._theme):
            raise TemplateNotFound(template)
        text, file, fresh = found
        # A file that the maker adds takes the place of ours at once, in a preview too.
        return text, file, lambda: fresh() and self._first(template) == Path(file)

    def _first(self, template: str) -> Path | None:
        places = (Path(folder, template) for folder in self.searchpath)
        return next((place for place in places if place.is_file()), None)


class _TellingEnvironment(Environment):
    """Whatever goes wrong in a template comes out as a `TemplateFault` with its place."""

    def handle_exception(self, source: str | None = None) -> NoReturn:
        try:
            super().handle_exception(source)
        except TemplateFault:
            raise
        except Exception as error:
            fault = fault_of(error, self, shown=shown_path)
            if fault is None:
                raise
            raise fault from error


class _FencedEnvironment(_TellingEnvironment, ImmutableSandboxedEnvironment):
    """Templates see their values, and can change none of them."""
