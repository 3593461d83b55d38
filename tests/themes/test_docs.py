"""docs/themes.md tells of every template what it is given, and of every view each field: no more, and no less."""

import re
from collections.abc import Mapping
from pathlib import Path

import pytest
from jinja2 import meta, nodes

from generator.render.theme import templates, theme_names
from generator.render.theme_check import KINDS, TEMPLATES
from tests.themes.views_doc import BEGIN, DOC, END, block

ROOT = Path(__file__).parents[2] / "themes"
TEXT = DOC.read_text(encoding="utf-8")
ALWAYS = frozenset({"_", "gettext", "ngettext", "pgettext", "npgettext"})
NAME = re.compile(r"`([a-z_]+)(?:\([a-z, ]*\))?`")
ROW = re.compile(r"^\| `([a-z]+/[a-z0-9-]+\.[a-z]+)` \| (.+) \|$", re.M)


def given() -> Mapping[str, frozenset[str]]:
    """What the table of templates says, by the path in a theme."""
    return {row[1]: frozenset(NAME.findall(row[2])) for row in ROW.finditer(TEXT)}


def on_every_page() -> frozenset[str]:
    """What the paragraph and the table of calls say of every page."""
    start = TEXT.index("Every page of `site/`")
    told = TEXT[start : TEXT.index("| template | is given besides |")]
    return frozenset(NAME.findall(told))


def parts() -> frozenset[str]:
    start = TEXT.index("These are parts of the others")
    return frozenset(re.findall(r"`([a-z]+/[a-z0-9-]+\.[a-z]+)`", TEXT[start : TEXT.index("## The views")]))


def needed(theme: str, kind: str, name: str) -> set[str]:
    """The names that a template takes from what it is given, with those of what it builds on and takes in."""
    environment = templates(theme, kind)
    assert environment.loader is not None
    own: set[str] = set()
    names: set[str] = set()
    waiting, seen = [name], set()
    while waiting:
        each = waiting.pop()
        if each in seen:
            continue
        seen.add(each)
        tree = environment.parse(environment.loader.get_source(environment, each)[0])
        names |= meta.find_undeclared_variables(tree)
        own |= {node.name for node in tree.find_all(nodes.Name) if node.ctx == "store"}
        own |= {macro.name for macro in tree.find_all(nodes.Macro)}
        own |= {node.target for node in tree.find_all(nodes.Import)}
        taken = (pair for node in tree.find_all(nodes.FromImport) for pair in node.names)
        own |= {pair if isinstance(pair, str) else pair[1] for pair in taken}
        taken_in = [node.template for node in tree.find_all(nodes.Extends)]
        taken_in += [node.template for node in tree.find_all(nodes.Include)]
        waiting += [template.value for template in taken_in if isinstance(template, nodes.Const)]
    return names - (own - set(SHADOWED)) - ALWAYS


# Names that a macro of the chain has too, and that are given all the same.
SHADOWED = (
    "recipe",
    "kind",
    "article",
    "site",
    "view",
    "tag",
    "size",
    "person",
    "title",
    "width",
    "page",
)


def test_every_template_is_in_the_table_or_among_the_parts() -> None:
    there = {
        f"{kind}/{path.name}"
        for theme in theme_names()
        for kind in KINDS
        for path in (ROOT / theme / kind).glob("*")
        if path.suffix in TEMPLATES
    }
    assert there == set(given()) | parts()
    assert not set(given()) & parts()


@pytest.mark.parametrize("theme", theme_names())
def test_every_name_that_a_template_takes_is_documented(theme: str) -> None:
    wrong: dict[str, object] = {}
    for path, told in given().items():
        kind, _, name = path.partition("/")
        common = on_every_page() if kind == "site" else frozenset()
        missing = needed(theme, kind, name) - told - common
        wrong |= {path: missing} if missing else {}
    assert wrong == {}


def test_no_template_is_promised_what_it_is_not_given() -> None:
    """Each name of the table is one that our own template of that name takes."""
    wrong: dict[str, object] = {}
    for path, told in given().items():
        kind, _, name = path.partition("/")
        idle = told - needed("docket", kind, name) - PROMISED_FREELY.get(path, frozenset())
        wrong |= {path: idle} if idle else {}
    assert wrong == {}


# "no `page`": what is not given stands in the table too.
PROMISED_FREELY: Mapping[str, frozenset[str]] = {"site/moved.html": frozenset({"page"})}


def test_the_views_are_those_of_the_program() -> None:
    written = TEXT[TEXT.index(BEGIN) : TEXT.index(END) + len(END)]
    assert written == block(), "run: python -m tests.themes.views_doc"
