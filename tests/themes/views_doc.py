"""Writes the list of views in docs/themes.md from the views themselves: `python -m tests.themes.views_doc`."""

import types
import typing
from collections.abc import Iterator, Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from pathlib import Path
from typing import Any

from generator.present.book import BookView
from generator.present.people import PeopleView
from generator.present.search_views import MovedView, SearchView, ShelfList
from generator.present.tag_views import TagView
from generator.present.views import ArticleView, KindView, RecipeView, SiteView
from generator.render.site.frame import Frame
from generator.render.site.page import Page
from generator.render.site.pictures import Picture
from generator.render.site.strip import Bar

DOC = Path(__file__).parents[2] / "docs" / "themes.md"
BEGIN, END = "<!-- views: written by tests/themes/views_doc.py -->", "<!-- end of the views -->"
GIVEN = (Frame, Page, SiteView, RecipeView, ArticleView, KindView, ShelfList, SearchView, MovedView)
ROOTS: tuple[type, ...] = (*GIVEN, TagView, BookView, PeopleView, Picture, Bar)
PLAIN: Mapping[Any, str] = {
    str: "text",
    int: "number",
    float: "number",
    bool: "yes or no",
    date: "day",
    type(None): "nothing",
}


def views() -> tuple[type, ...]:
    """The views that templates are given, and those inside them, each once, in the order they are come to."""
    found: dict[type, None] = {}
    waiting = list(ROOTS)
    while waiting:
        view = waiting.pop(0)
        if view not in found:
            found[view] = None
            waiting += [each for hint in hints(view).values() for each in inside(hint)]
    return tuple(found)


def hints(view: type) -> Mapping[str, Any]:
    told = typing.get_type_hints(view)
    return {field.name: told[field.name] for field in fields(view)}


def inside(hint: Any) -> Iterator[type]:
    if isinstance(hint, type) and is_dataclass(hint):
        yield hint
    for each in typing.get_args(hint):
        yield from inside(each)


def worded(hint: Any) -> str:
    """ "text", "several `Fact`", "`PhotoView` or nothing"."""
    if hint in PLAIN:
        return PLAIN[hint]
    if isinstance(hint, type) and is_dataclass(hint):
        return f"`{hint.__name__}`"
    origin, args = typing.get_origin(hint), typing.get_args(hint)
    if origin in (typing.Union, types.UnionType):
        return " or ".join(worded(each) for each in args)
    if origin is tuple and args[-1] is Ellipsis:
        return f"several {worded(args[0])}"
    if origin is tuple:
        return "(" + ", ".join(worded(each) for each in args) + ")"
    if origin is typing.Literal:
        return " or ".join(f"“{each}”" for each in args)
    return "values by name" if origin is not None else str(getattr(hint, "__name__", hint))


def section(view: type) -> Iterator[str]:
    yield f"### `{view.__name__}`"
    yield ""
    said = (view.__doc__ or "").strip()
    if said and not said.startswith(f"{view.__name__}("):
        yield " ".join(said.split())
        yield ""
    yield from (f"- `{name}`: {worded(hint)}" for name, hint in hints(view).items())
    yield from (f"- `{name}`: worked out" for name, each in vars(view).items() if isinstance(each, property))
    yield ""


def block() -> str:
    lines = [line for view in views() for line in section(view)]
    return "\n".join([BEGIN, "", *lines, END])


def main() -> None:
    text = DOC.read_text(encoding="utf-8")
    before, _, rest = text.partition(BEGIN)
    DOC.write_text(before + block() + rest.partition(END)[2], encoding="utf-8")


if __name__ == "__main__":
    main()
