"""Whatever the bytes, reading gives an answer, and gives it soon."""

import time
from typing import Literal

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generator.diagnostics.text import as_text
from generator.source.document import Document, Mapping, Node, Sequence, Text
from generator.source.read import read_document, read_mapping
from tests.lots import lots

RECIPE = """---
title: Plain loaf
lead: "A loaf: plain"
kinds: [bread, 'lean']
formula:
  dough:
    - 500 g (4 cups) bread flour
    - {line: 320 g water, note: cool}
  finish: {counts: no, lines: [1 egg white]}
keeps: >
  3 days
  in paper
---
A loaf with {water}.

## Method: by hand
1. Mix the {bread flour: half}
   and {water}.

   Caution: mind the \\{hook}.
2. {knead 10 min}.

| a | b |
|---|---|
| 1 | {2 min} |

## Method
### Bake
- {bake 35 min}
## Notes
Some `{code}`.
"""
SECONDS = 30.0


def _read(data: bytes, kind: Literal["recipe", "journal"] = "recipe") -> Document | None:
    """Reads and shows; every finding has a place inside or at the end of the text, and a hint."""
    document, found = read_document("recipes/a.md", data, kind)
    text = data.decode("utf-8", "replace")
    shown = as_text(found, {"recipes/a.md": text})
    assert shown.count("\n  hint: ") == len(found)
    lines = len(text.replace("\r\n", "\n").replace("\r", "\n").split("\n"))
    for each in found:
        assert 1 <= each.span.line <= each.span.end_line <= lines
        assert (each.span.line, each.span.column) < (each.span.end_line, each.span.end_column)
    assert document is not None or found
    return document


def test_the_recipe_that_is_mutated_below_is_sound() -> None:
    document, found = read_document("recipes/a.md", RECIPE.encode(), "recipe")
    assert document is not None
    assert [each.code for each in found] == ["S046"]


@given(st.binary(max_size=400))
def test_any_bytes(data: bytes) -> None:
    _read(data)
    _read(b"---\n" + data + b"\n---\n" + data)
    read_mapping("site.yaml", data)


@given(st.text(max_size=200))
def test_any_text(text: str) -> None:
    data = text.encode("utf-8", "ignore")
    _read(b"---\ntitle: a\n---\n" + data)
    _read(b"---\n" + data + b"\n---\n## Method\n1. " + data)


SIGNS = (
    "{",
    "}",
    "[",
    "]",
    '"',
    "'",
    ":",
    "- ",
    "\t",
    "\n",
    "\r",
    "&a",
    "*a",
    "!x",
    "|",
    ">",
    "#",
    "?",
    "\\",
    "%",
)
FRONT = ("---\n", "...\n", "<<: ", "  ", "a", "\ufeff", "\x00", "\u2028", "\u0085", "\ue000", "\u202e")
BODY = ("\\{", "## Method", "## Method:", "### ", "1. ", "Caution:", "`", "```\n", "> ", "|-|", "<!--", "-->")
PIECES = st.sampled_from((*SIGNS, *FRONT, *BODY))


@settings(max_examples=lots(300), suppress_health_check=[HealthCheck.too_slow])
@given(
    st.lists(
        st.tuples(st.integers(0, len(RECIPE)), st.integers(0, 12), st.lists(PIECES, max_size=3)),
        min_size=1,
        max_size=4,
    )
)
def test_a_recipe_with_pieces_taken_out_and_put_in(changes: list[tuple[int, int, list[str]]]) -> None:
    text = RECIPE
    for at, length, pieces in changes:
        text = text[:at] + "".join(pieces) + text[at + length :]
    document = _read(text.encode())
    if document is not None:
        _check_scalars(document)


@given(st.lists(PIECES, max_size=30))
def test_pieces_alone(pieces: list[str]) -> None:
    text = "".join(pieces)
    _read(text.encode())
    _read(f"---\ntitle: {text}\n---\n{text}".encode())
    _read(f"---\ntitle: a\n---\n## Method\n1. a\n   {text}".encode())


def _check_scalars(document: Document) -> None:
    """A scalar that says it stands letter for letter in the file does."""
    text = document.text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
    lines = text.split("\n")
    for scalar in _texts(document.front):
        if scalar.inset is not None and scalar.value:
            span = scalar.at(0, len(scalar.value))
            assert lines[span.line - 1][span.column - 1 : span.end_column - 1] == scalar.value


def _texts(node: Node) -> list[Text]:
    if isinstance(node, Text):
        return [node]
    if isinstance(node, Sequence):
        return [text for item in node.items for text in _texts(item)]
    assert isinstance(node, Mapping)
    return [text for key, value in node.entries for text in (key, *_texts(value))]


HEAD = "---\ntitle: a\n---\n## Method\n"
LARGE = {
    "brackets in the front matter": "---\na: " + "[" * 100_000 + "\n---\n",
    "closed brackets": "---\na: " + "[" * 100_000 + "]" * 100_000 + "\n---\n",
    "braces in the front matter": "---\na: " + "{a: " * 50_000 + "\n---\n",
    "dashes": "---\n" + "- " * 100_000 + "\n---\n",
    "question marks": "---\n" + "? " * 100_000 + "\n---\n",
    "one endless line": "x" * 10_000_000,
    "an endless line in the front matter": "---\na: " + "x" * 10_000_000 + "\n---\n",
    "an endless body": HEAD + "x" * 1_900_000,
    "open braces": HEAD + "1. " + "{" * 100_000,
    "open braces over lines": HEAD + "1. " + "{\n   " * 9_000,
    "pairs of braces": HEAD + "1. " + "{}" * 20_000,
    "references": HEAD + "1. " + "{a} " * 20_000,
    "nested braces": HEAD + "1. " + "{" * 50_000 + "}" * 50_000,
    "quotes": HEAD + ">" * 100_000,
    "nested lists": HEAD + "- " * 50_000,
    "deep indentation": HEAD + "\n".join("  " * depth + "- a" for depth in range(800)),
    "brackets in the body": HEAD + "[" * 100_000,
    "back-quotes": HEAD + "`" * 100_000,
    "a wide table": HEAD + "|a" * 1_000 + "\n" + "|-" * 1_000 + "\n" + "a\n" * 200,
    "spaces": "---\n" + " " * 250_000 + "\n---\n" + " " * 1_000_000,
    "blank lines in a text": "---\na: b" + "\n" * 250_000 + " c\n---\n",
    "colons": "---\n" + "a:" * 100_000 + "\n---\n",
    "colons and spaces": "---\n" + "a: " * 80_000 + "\n---\n",
    "keys": "---\n" + "".join(f"k{number}: v\n" for number in range(9_000)) + "---\n",
    "bells": HEAD + "\x07 " * 100_000,
    "many lines": HEAD + "a\n\n" * 900_000,
    "hash signs": HEAD + "#" * 100_000,
}


@pytest.mark.parametrize("name", LARGE)
def test_large_and_deep_input_is_answered_and_does_not_hang(name: str) -> None:
    data = LARGE[name].encode()
    start = time.process_time()
    read_document("recipes/a.md", data, "recipe")
    assert time.process_time() - start < SECONDS
