"""No text that a reader is told stands in `present/` outside of `say`: it would be English in every language."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.wording.texts import ROOT, SAYING

PRESENT = ROOT / "generator" / "present"
# Whole modules whose words speak to the maker alone, or are no words.
NOT_FOR_READERS = {
    "bake_comparison.py": "the terminal and the desk",
    "bake_days.py": "the terminal and the desk; the reason that is put into a recipe is said",
    "bake_views.py": "the terminal and the desk",
    "facts.py": "values that the ledger keeps; `changed.py` words them",
    "moved.py": "findings for the maker",
    "spots.py": "names of places in a page",
    "addresses.py": "addresses, and the measures of cards",
    "stored.py": "patterns that recipes are searched by",
    "unheated.py": "names of the catalogue",
    "search_words.py": "words that the search passes over",
}
# Texts elsewhere that are no words for readers, each with the reason.
EXCEPTED = {
    "may contain": "a state, worded by the template",
    "to be read": "a state, worded by the template",
    "not listed": "a state, worded by the template",
    "taken back": "a reason as the ledger keeps it",
    "nearest 5": "a setting",
    "liquids first": "a setting",
    "yeast first": "a setting",
    "active dry": "a kind of yeast",
    "baking powder": "a kind of the tables",
    "load {}": "the name of a place in the page",
    "{} yeast": "a name of the catalogue",
    **dict.fromkeys(
        ("egg filling", "raw dough", "raw flour", "raw egg", "hot sugar", "hot oil", "whole nuts"),
        "a caution's key",
    ),
    **dict.fromkeys(("sugar alcohols", "royal jelly"), "a caution's key"),
}
_WORDS = re.compile(r"[A-Za-z’']{2,} [A-Za-z]{2,}|[A-Za-z]{2,} \{\}|\{\} [A-Za-z]{1,}")
"""Two words in a row, or a word beside a value."""


def escaped(tree: ast.Module) -> Iterator[tuple[int, str]]:
    """Line and text of each literal with words in it that nothing says."""
    passed = set(_passed(tree))
    for node in ast.walk(tree):
        if id(node) in passed:
            continue
        text = _text(node)
        if text is not None and _WORDS.search(text) and text not in EXCEPTED:
            yield node.lineno, text  # type: ignore[attr-defined]


def _text(node: ast.AST) -> str | None:
    if isinstance(node, ast.JoinedStr):
        return "".join(str(each.value) if isinstance(each, ast.Constant) else "{}" for each in node.values)
    return node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else None


def _passed(tree: ast.Module) -> Iterator[int]:
    """What is said, documented, compared with, looked up by, searched for, or raised for a fault of ours."""
    for node in ast.walk(tree):
        inside: list[ast.AST] = []
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            inside = [node.value]
        elif isinstance(node, ast.Call):
            name = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
            if name in SAYING:
                inside = [node.args[at] for at in SAYING[name] if at < len(node.args)]
            elif name in ("compile", "startswith", "get", "removeprefix", "partition", "frozenset"):
                inside = [node]
        elif isinstance(node, ast.Compare | ast.Raise | ast.Subscript):
            inside = [node] if not isinstance(node, ast.Subscript) else [node.slice]
        elif isinstance(node, ast.Dict):
            inside = [key for key in node.keys if key is not None]
        elif isinstance(node, ast.JoinedStr):
            inside = list(node.values)
            yield from (id(each) for each in inside if isinstance(each, ast.Constant))
            continue
        elif isinstance(node, ast.keyword) and node.arg in ("basis", "source", "name"):
            inside = [node.value]
        yield from (id(each) for one in inside for each in ast.walk(one))


@pytest.mark.parametrize(
    "path",
    [each for each in sorted(PRESENT.glob("*.py")) if each.name not in NOT_FOR_READERS],
    ids=lambda path: path.stem,
)
def test_every_word_is_said(path: Path) -> None:
    found = list(escaped(ast.parse(path.read_text(encoding="utf-8"))))
    assert not found, f"{path.name} has words that no other language can say: {found}"


@pytest.mark.parametrize(
    ("code", "texts"),
    [
        ('x = "Dough weight"', ["Dough weight"]),
        ('x = f"{a} of the recipe"', ["{} of the recipe"]),
        ('x = f"{n} h"', ["{} h"]),
        ('x = say("Dough weight")', []),
        ('x = say("{a} of it", a=f"{b} more")', ["{} more"]),
        ('x = {"a key": later("said later")}', []),
        ('"""A docstring of words."""', []),
        ('x = y == "as written"', []),
        ('raise ValueError("our own fault")', []),
    ],
)
def test_what_escapes_is_found(code: str, texts: list[str]) -> None:
    assert [text for _, text in escaped(ast.parse(code))] == texts


def test_every_exception_is_still_there() -> None:
    there = {each.name for each in PRESENT.glob("*.py")}
    assert set(NOT_FOR_READERS) <= there
    texts = {
        _text(node)
        for path in PRESENT.glob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
    }
    assert {text for text in EXCEPTED if text not in texts} == set()
