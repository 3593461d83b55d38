"""The keys at the head of a Markdown file, between two lines of `---`, and the files that are keys only."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, has_errors
from generator.diagnostics.span import whole_file
from generator.source.document import Mapping
from generator.source.lines import Places
from generator.source.yaml_nodes import read_yaml

MOST_CHARACTERS = 256_000
_LINES_TO_LOOK_AT = 1_000
_FENCE = re.compile(r"---[ \t]*$")
_CLOSING = re.compile(r"[\r\n](---)[ \t]*(?=[\r\n]|\Z)")
_NEARLY_A_FENCE = re.compile(r"(?:--|-{4,}|[–—]-?|\s+---|- - -|\.\.\.)\s*$")
_INDENT = re.compile(r"[ ]*([\t\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]+)[^\r\n]*\S")
_START = "Begin the file with a line ---, then “title: …” and the other keys, then another line ---."


@dataclass(frozen=True, slots=True, kw_only=True)
class Split:
    """Indexes of a file's text: its YAML, and where the body begins."""

    start: int
    end: int
    body: int


def split_front(places: Places) -> tuple[Split | None, Diagnostics]:
    """Where the front matter of a Markdown file stands; None and an error where there is none."""
    if not places.text.strip("\ufeff \t\r\n"):
        return None, (_fault("S004", places, "this file is empty", _START),)
    if not _FENCE.match(places.line_text(1)):
        return None, (_missing(places),)
    closing = _CLOSING.search(places.text, places.starts[0] + 3)
    if closing is None:
        return None, (_unclosed(places),)
    line = places.line_of(closing.start(1))
    body = places.starts[line] if line < places.line_count() else len(places.text)
    return Split(start=places.starts[1], end=closing.start(1), body=body), ()


def read_front(places: Places) -> tuple[Mapping | None, int, Diagnostics]:
    """The keys of a Markdown file, and the index where its body begins."""
    split, found = split_front(places)
    if split is None:
        return None, len(places.text), found
    if not places.text[split.start : split.end].strip():
        span = places.span(places.starts[0], places.starts[0] + 3)
        hint = "Write the keys between the two lines of ---, at least “title: …”."
        empty = Diagnostic(code="S007", message="the front matter is empty", span=span, hint=hint)
        return None, split.body, (empty,)
    node, found = read_keys(places, split.start, split.end)
    return node, split.body, found


def read_keys(places: Places, start: int, end: int) -> tuple[Mapping | None, Diagnostics]:
    """The mapping that stands between two indexes. Blank text is a mapping without keys."""
    if end - start > MOST_CHARACTERS:
        return None, (_fault("S003", places, "these keys take more than 256,000 characters", _SMALLER),)
    indentation = tuple(_bad_indentation(places, start, end))
    if indentation:
        return None, indentation
    node, found = read_yaml(places, start, end)
    if node is None:
        span = places.span(start, start + 1)
        return (None if has_errors(found) else Mapping(entries=(), span=span)), found
    if not isinstance(node, Mapping):
        return None, (*found, _not_keys(places, node.span.line))
    return node, found


_SMALLER = "Split the file; nothing this long is a recipe or a pantry."


def _fault(code: str, places: Places, message: str, hint: str) -> Diagnostic:
    return Diagnostic(code=code, message=message, span=whole_file(places.path), hint=hint)


def _missing(places: Places) -> Diagnostic:
    first = places.line_text(1)
    span = places.span(places.starts[0], places.starts[0] + max(len(first), 1))
    hint = _START
    if _NEARLY_A_FENCE.match(first):
        hint = "Write exactly three hyphens in the first line: ---"
    elif not first.strip() and re.match(r"\s*---[ \t]*[\r\n]", places.text.removeprefix("\ufeff")):
        hint = "Delete the blank lines above ---: it must be the first line."
    return Diagnostic(code="S005", message="the file does not begin with front matter", span=span, hint=hint)


def _unclosed(places: Places) -> Diagnostic:
    span = places.span(places.starts[0], places.starts[0] + 3)
    hint = "Write another line --- after the last key."
    for line in range(2, min(places.line_count(), _LINES_TO_LOOK_AT) + 1):
        if _NEARLY_A_FENCE.match(places.line_text(line)):
            hint = f"Make line {line} exactly three hyphens: ---"
            break
    return Diagnostic(code="S006", message="the front matter opened here has no end", span=span, hint=hint)


def _bad_indentation(places: Places, start: int, end: int) -> Iterator[Diagnostic]:
    """Each line of the YAML that is indented with anything but spaces."""
    first, last = places.line_of(start), places.line_of(max(end - 1, start))
    for line in range(first, last + 1):
        match = _INDENT.match(places.line_text(line))
        if match:
            what = "a tab" if match[1].startswith("\t") else "a space of another kind"
            yield Diagnostic(
                code="S009",
                message=f"{what} in the indentation",
                span=places.span(
                    places.starts[line - 1] + match.start(1), places.starts[line - 1] + match.end(1)
                ),
                hint="Use plain spaces: two for each level.",
            )


def _not_keys(places: Places, line: int) -> Diagnostic:
    text = places.line_text(line)
    indent = len(text) - len(text.lstrip())
    start = places.index_of(line, indent + 1)
    if match := re.match(r"[^\s:\"']+(:)\S", text.strip()):
        colon = start + match.start(1)
        message = "a space is missing after this colon"
        hint = "Write “key: value”, with a space after the colon."
        return Diagnostic(code="S018", message=message, span=places.span(colon, colon + 1), hint=hint)
    return Diagnostic(
        code="S008",
        message="keys and their values are expected here",
        span=places.span(start, start + max(len(text.strip()), 1)),
        hint="Write “key: value”, one to a line.",
    )
