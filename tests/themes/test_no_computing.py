"""No computing in a template: what a reader sees is worked out and worded before a template is filled.

The rule, read from the syntax trees of all templates of all themes:

- No arithmetic. The one sum is `level + n`, the rank of a heading below another.
- No comparison with a number, but whether something is there, or more than one: `x | length > 1`.
- Only filters that choose, arrange or join what is there already, and our own that word it (`begun`, `stretch`).
- No surgery on texts: no method of a text, no slice of one. A list may be cut to its first few with a plain number:
  how many bakes a home page shows is a question of its design.
- Texts are put together with `~` only to name a place (`mark("line " ~ place)`, `title=… ~ …`), never to be shown.
- A count that a reader sees is no filter's: `length` is asked in conditions alone, and in the rowspan of a cell.
"""

from collections.abc import Iterator
from pathlib import Path
from typing import TypeGuard

import pytest
from jinja2 import nodes

from generator.render.theme import templates

ROOT = Path(__file__).parents[2] / "themes"
# The pages of the desk are a program's own screens: no theme replaces them, and nothing of them is published.
NO_THEME = "view"
ARRANGE = frozenset(
    {"begun", "stretch", "join", "list", "selectattr", "rejectattr", "map", "groupby", "reverse", "first"}
)
SURGERY = frozenset(name for name in dir(str) if not name.startswith("_")) - {
    "index",
    "count",
    "join",
    "title",
}
SUMS = (nodes.Sub, nodes.Mul, nodes.Div, nodes.FloorDiv, nodes.Mod, nodes.Pow, nodes.Neg, nodes.Pos)

Path_ = tuple[nodes.Node, ...]


def faults(text: str, *, kind: str = "site") -> list[str]:
    """What breaks the rule in a template, each with its line."""
    tree = templates("docket", kind).parse(text)
    found = (f"line {node.lineno}: {why}" for node, above in walk(tree, ()) for why in reasons(node, above))
    return list(found)


def walk(node: nodes.Node, above: Path_) -> Iterator[tuple[nodes.Node, Path_]]:
    yield node, above
    for child in node.iter_child_nodes():
        yield from walk(child, (*above, node))


def reasons(node: nodes.Node, above: Path_) -> Iterator[str]:
    if isinstance(node, SUMS) or (isinstance(node, nodes.Add) and not is_rank(node)):
        yield f"arithmetic ({type(node).__name__})"
    if isinstance(node, nodes.Compare) and not asks_how_many(node):
        yield "a comparison with a number"
    if isinstance(node, nodes.Filter) and node.name == "length":
        if not in_condition(above) and not in_rowspan(above):
            yield "a count that is shown"
    elif isinstance(node, nodes.Filter) and node.name not in ARRANGE:
        yield f"the filter {node.name}"
    if isinstance(node, nodes.Call) and isinstance(node.node, nodes.Getattr) and node.node.attr in SURGERY:
        yield f"surgery on a text ({node.node.attr})"
    if isinstance(node, nodes.Slice) and not is_first_few(node):
        yield "a slice"
    if isinstance(node, nodes.Concat) and isinstance(above[-1], nodes.Output):
        yield "a text put together to be shown"


def is_rank(node: nodes.Add) -> bool:
    named = isinstance(node.left, nodes.Name) and node.left.name == "level"
    return named and isinstance(node.right, nodes.Const)


def is_number(node: nodes.Node) -> TypeGuard[nodes.Const]:
    return isinstance(node, nodes.Const) and type(node.value) in (int, float)


def asks_how_many(node: nodes.Compare) -> bool:
    """No number at all, or a length against nothing or one."""
    if not is_number(node.expr) and not any(is_number(each.expr) for each in node.ops):
        return True
    counted = isinstance(node.expr, nodes.Filter) and node.expr.name == "length"
    return counted and all(is_number(each.expr) and each.expr.value in (0, 1) for each in node.ops)


def in_condition(above: Path_) -> bool:
    inner = next((each for each in reversed(above) if isinstance(each, nodes.Compare | nodes.Test)), None)
    return inner is not None


def in_rowspan(above: Path_) -> bool:
    """The words before it in the same output end in `rowspan="`."""
    output = next((each for each in reversed(above) if isinstance(each, nodes.Output)), None)
    before = output.nodes[0] if output is not None else None
    texts = [each.data for each in output.nodes if isinstance(each, nodes.TemplateData)] if output else []
    return before is not None and any(each.endswith('rowspan="') for each in texts)


def is_first_few(node: nodes.Slice) -> bool:
    return node.start is None and node.step is None and node.stop is not None and is_number(node.stop)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("{{ a * 2 }}", "arithmetic (Mul)"),
        ("{{ a + b }}", "arithmetic (Add)"),
        ("{% set x = total - 1 %}", "arithmetic (Sub)"),
        ("{% if weight > 500 %}x{% endif %}", "a comparison with a number"),
        ("{% if weights | length > 2 %}x{% endif %}", "a comparison with a number"),
        ("{{ weights | sum }}", "the filter sum"),
        ("{{ weight | round }}", "the filter round"),
        ("{{ title | upper }}", "the filter upper"),
        ("{{ bakes | length }}", "a count that is shown"),
        ("{{ title.replace('a', 'b') }}", "surgery on a text (replace)"),
        ("{{ title[1:] }}", "a slice"),
        ("{{ weight ~ ' g' }}", "a text put together to be shown"),
    ],
)
def test_the_rule_bites(text: str, why: str) -> None:
    assert faults(text) == [f"line 1: {why}"]


@pytest.mark.parametrize(
    "text",
    [
        "{% if bakes | length > 1 %}x{% endif %}",
        "{% for bake in bakes[:8] %}{{ bake.title }}{% endfor %}",
        "{{ head(level + 1, title) }}",
        '<td rowspan="{{ rows | length }}">',
        '{{ mark("line " ~ number ~ " first") }}',
        '{{ words | join(", ") }}',
    ],
)
def test_the_rule_lets_a_design_be(text: str) -> None:
    assert faults(text) == []


def test_no_template_of_ours_computes() -> None:
    suffixes = (".html", ".xhtml", ".opf")
    paths = sorted(
        each for each in ROOT.rglob("*") if each.suffix in suffixes and each.parent.name != NO_THEME
    )
    assert len(paths) > 50
    found = {
        each.relative_to(ROOT).as_posix(): faults(each.read_text("utf-8"), kind=each.parent.name)
        for each in paths
    }
    assert {path: wrong for path, wrong in found.items() if wrong} == {}
