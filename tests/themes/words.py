"""Finds words of ours that stand in a theme as they are, so that they could be said in one language only."""

import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

from jinja2 import Environment, nodes

from generator.render.worded import WORDED

ENGINE = Environment(extensions=["jinja2.ext.i18n"], trim_blocks=True, lstrip_blocks=True)
# What the engine fills in stands for itself in the flat text: one word that no theme has.
_FILLED = "qqfilledqq"
_LETTER = re.compile(r"[^\W\d_]")
_TOLD = frozenset(
    {"alt", "title", "aria-label", "aria-description", "aria-roledescription", "aria-valuetext"}
    | {"placeholder", "label", "summary"}
)
# These say a text; these make or find something by a name that nobody reads.
SAYS = frozenset({"_", "gettext", "ngettext", "pgettext", "npgettext"})
_TOOLS = frozenset({"to", "follow", "mark", "picture", "page", "address", "get", "range", "rich", "prose"})

_SILENT = (
    nodes.Compare,
    nodes.Getitem,
    nodes.Test,
    nodes.Extends,
    nodes.Include,
    nodes.Import,
    nodes.FromImport,
)


def in_template(text: str) -> Iterator[str]:
    """Bare words of a template: those of its HTML, then those that its expressions would print."""
    found: list[str] = []
    _Bare(found).feed(_flat(text))
    yield from found
    yield from _printed(ENGINE.parse(text))


def _flat(text: str) -> str:
    """The template without its tags, all branches one after the other, and a stand-in for each printed value."""
    pieces: list[str] = []
    inside = ""
    saying = False
    tokens = [(kind, value) for _, kind, value in ENGINE.lex(text)]
    for kind, value in tokens:
        if kind == "variable_begin":
            pieces.append(_FILLED)
        elif kind == "block_begin":
            inside = ""
        elif kind == "name" and not inside:
            inside = value
            saying = (saying or value == "trans") and value != "endtrans"
        elif kind == "data" and not saying:
            pieces.append(value)
    return "".join(pieces)


class _Bare(HTMLParser):
    def __init__(self, found: list[str]) -> None:
        super().__init__(convert_charrefs=True)
        self._found = found
        self._unread = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in ("style", "script"):
            self._unread += 1
        for name, value in attrs:
            if name in _TOLD or name.startswith("data-"):
                self._keep(value or "", f"{name}=")

    def handle_endtag(self, tag: str) -> None:
        if tag in ("style", "script"):
            self._unread -= 1

    def handle_data(self, data: str) -> None:
        if not self._unread:
            self._keep(data, "")

    def _keep(self, text: str, where: str) -> None:
        bare = " ".join(text.replace(_FILLED, " ").split())
        if _LETTER.search(bare):
            self._found.append(where + bare)


def _printed(node: nodes.Node) -> Iterator[str]:
    """Texts in the expressions of a template that may reach the reader: not names of tools, tests and keys."""
    if isinstance(node, nodes.Const):
        if isinstance(node.value, str) and _LETTER.search(node.value):
            yield node.value
    elif isinstance(node, nodes.Call):
        yield from () if _name(node.node) in SAYS | _TOOLS else _of_children(node)
    elif isinstance(node, nodes.Filter):
        yield from _printed(node.node) if node.node is not None else ()
    elif isinstance(node, nodes.Dict):
        for pair in node.items:
            yield from _printed(pair.value)
    elif isinstance(node, nodes.CondExpr):
        yield from _printed(node.expr1)
        yield from _printed(node.expr2) if node.expr2 is not None else ()
    elif isinstance(node, _SILENT):
        yield from ()
    elif isinstance(node, nodes.If):
        for each in (*node.body, *node.elif_, *node.else_):
            yield from _printed(each)
    else:
        yield from _of_children(node)


def _of_children(node: nodes.Node) -> Iterator[str]:
    for child in node.iter_child_nodes():
        yield from _printed(child)


def _name(node: nodes.Node) -> str:
    return getattr(node, "name", "") or getattr(node, "attr", "")


_QUOTED = re.compile(r'"((?:[^"\\\n]|\\.)*)"|\'((?:[^\'\\\n]|\\.)*)\'|`([^`]*)`')
_REMARK = re.compile(r"^[ \t]*//[^\n]*$|/\*.*?\*/", re.M | re.S)
# A word as a sentence begins, or three words after each other: names of the web begin small and stand alone.
_PROSE = re.compile(r"^[“„]?[A-Z][a-z]+(?![A-Za-z])|[A-Za-z]+ [a-z]+ [a-z]+|^[A-Za-z]+ [a-z]+[.!?…]?$")
_SHOWN = re.compile(
    r"(?:textContent|innerText|title|placeholder|ariaLabel)\s*=\s*$|append\(\s*$|\"aria-label\",\s*$"
)


def in_script(text: str) -> Iterator[str]:
    """Bare texts of a script that read like words for people, or stand where people will see them."""
    bare = _REMARK.sub("", WORDED.sub("said", text))
    for found in _QUOTED.finditer(bare):
        words = next(each for each in found.groups() if each is not None)
        plain = re.sub(r"\$\{[^}]*\}", "", words)
        before = bare[max(0, found.start() - 40) : found.start()]
        if _PROSE.search(plain) or (_SHOWN.search(before) and _LETTER.search(plain)):
            yield words


_CONTENT = re.compile(r'content\s*:((?:"[^"]*"|[^;}"])*)')


def in_style(text: str) -> Iterator[str]:
    """Bare texts that a style sheet would write."""
    bare = _REMARK.sub("", WORDED.sub("said", text))
    for found in _CONTENT.finditer(bare):
        for quoted in re.findall(r'"([^"]*)"', found[1]):
            if _LETTER.search(re.sub(r"\\[0-9a-fA-F]{1,6}", "", quoted)):
                yield quoted


def bare_words(path: Path) -> Iterator[str]:
    """Bare words of one file of a theme."""
    text = path.read_text(encoding="utf-8")
    if path.suffix in (".html", ".xhtml", ".opf", ".xml", ".txt"):
        yield from in_template(text)
    elif path.suffix == ".js":
        yield from in_script(text)
    elif path.suffix == ".css":
        yield from in_style(text)


def said_too_early(text: str) -> Iterator[str]:
    """What a template that others import says outside its macros: the engine would keep it in its first language."""
    for node in ENGINE.parse(text).body:
        if not isinstance(node, nodes.Macro):
            yield from (
                f"line {call.lineno}" for call in node.find_all(nodes.Call) if _name(call.node) in SAYS
            )


def imported(text: str) -> Iterator[str]:
    """The templates that this one imports, by name."""
    for node in ENGINE.parse(text).find_all((nodes.Import, nodes.FromImport)):
        template = getattr(node, "template", None)
        if isinstance(template, nodes.Const):
            yield str(template.value)
