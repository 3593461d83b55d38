"""A YAML parser's complaint in the words of a baker, at the place where the baker went wrong."""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace

import yaml

from generator.diagnostics.diagnostic import Diagnostic
from generator.source.lines import Places

_NO_SPACE = re.compile(r"^\s*(?:- +)*[^\s\"'\[{#:-][^:\"'\[{]*?(:)[^ \t\r\n/:]")
_KEY_BEFORE = re.compile(r"[^\s:]:\s")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Case:
    """What the parser says, where it says it, and the lines around; indexes are of the whole file."""

    problem: str
    context: str
    at: int
    context_at: int
    places: Places
    first_line: int

    @property
    def line(self) -> int:
        return self.places.line_of(self.at)

    @property
    def column(self) -> int:
        return self.places.line_and_column(self.at)[1]

    def text(self, line: int) -> str:
        return self.places.line_text(line)

    def line_above(self) -> int | None:
        """The nearest line above that is neither blank nor a comment, inside the YAML."""
        for line in range(self.line - 1, self.first_line - 1, -1):
            stripped = self.text(line).strip()
            if stripped and not stripped.startswith("#"):
                return line
        return None

    def found(self, code: str, message: str, hint: str, at: int, width: int = 1) -> Diagnostic:
        span = self.places.span(at, at + width)
        return Diagnostic(code=code, message=message, span=span, hint=hint)


def explain(fault: yaml.MarkedYAMLError, places: Places, start: int, source: str) -> Diagnostic:
    """The diagnostic for a syntax error in `source`, which begins at index `start` of the file."""
    at = _index(fault.problem_mark, source)
    context_at = _index(fault.context_mark, source) if fault.context_mark else at
    last = max(len(source.rstrip()) - 1, 0)
    case = _Case(
        problem=str(fault.problem or ""),
        context=str(fault.context or ""),
        at=start + min(at, last),
        context_at=start + min(context_at, last),
        places=places,
        first_line=places.line_of(start),
    )
    for words, answer in _ANSWERS:
        if words in case.problem or words in case.context:
            return answer(case)
    return _unreadable(case)


def _index(mark: yaml.Mark | None, source: str) -> int:
    return min(mark.index, len(source)) if mark is not None else 0


def _open_quote(case: _Case) -> Diagnostic:
    if "document indicator" in case.problem or "end of stream" in case.problem:
        return case.found(
            "S017",
            "the quote opened here is never closed",
            f"End the text with another {case.places.text[case.context_at]}.",
            case.context_at,
        )
    return _backslash(case)


def _backslash(case: _Case) -> Diagnostic:
    at = case.places.text.rfind("\\", case.context_at, case.at + 1)
    return case.found(
        "S021",
        "a backslash has a meaning of its own inside double quotes",
        "Use single quotes around this text, or write the backslash twice.",
        at if at >= 0 else case.at,
        2,
    )


def _open_bracket(case: _Case) -> Diagnostic:
    opening = case.places.text[case.context_at]
    closing = {"[": "]", "{": "}"}.get(opening, "]")
    return case.found(
        "S020",
        f"the “{opening}” opened here is not closed where it should be",
        f"End it with “{closing}”, put commas between its items, and quote text that holds one of them.",
        case.context_at,
    )


def _missing_space(case: _Case, line: int) -> Diagnostic | None:
    match = _NO_SPACE.match(case.text(line))
    if not match:
        return None
    return case.found(
        "S018",
        "a space is missing after this colon",
        "Write “key: value”, with a space after the colon.",
        case.places.index_of(line, match.start(1) + 1),
    )


def _colon(case: _Case) -> Diagnostic:
    before = case.text(case.line)[: case.column - 1]
    if _KEY_BEFORE.search(before):
        return case.found(
            "S021",
            "a second colon in one line",
            "Put the whole text after the first colon in quotes.",
            case.at,
        )
    above = case.line_above()
    if above is not None:
        spaceless = _missing_space(case, above)
        if spaceless:
            return spaceless
        if _indent(case.text(case.line)) > _indent(case.text(above)):
            return _indentation(case)
        return _no_colon(case, above)
    return _unreadable(case)


def _no_colon(case: _Case, line: int) -> Diagnostic:
    text = case.text(line)
    return case.found(
        "S021",
        "this line has no key",
        "Write “key: value”; to go on with the text of the line above, indent this line by two spaces.",
        case.places.index_of(line, _indent(text) + 1),
        len(text.strip()),
    )


def _simple_key(case: _Case) -> Diagnostic:
    line = case.places.line_of(case.context_at)
    return _missing_space(case, line) or _no_colon(case, line)


def _indentation(case: _Case) -> Diagnostic:
    indent = _indent(case.text(case.line))
    return case.found(
        "S019",
        "the indentation of this line fits neither the line above nor its list",
        "Lines that belong together start in the same column; use two spaces for each level.",
        case.places.index_of(case.line, 1),
        max(indent, 1),
    )


def _expected_key(case: _Case) -> Diagnostic:
    text = case.text(case.line)
    if not text[: case.column - 1].strip():
        return _missing_space(case, case.line) or _indentation(case)
    return case.found(
        "S021",
        "text stands after the end of a quote or bracket",
        "Put the whole text in quotes of the other kind, or double the quote inside it.",
        case.at,
    )


def _cannot_start(case: _Case) -> Diagnostic:
    character = case.places.text[case.at : case.at + 1]
    if character == "\t":
        return _tab(case)
    if character in ("[", "{"):
        return _open_bracket(replace(case, context_at=case.at))
    return case.found(
        "S021",
        f"a text cannot start with “{character}” here",
        "Put the text in quotes.",
        case.at,
    )


def _tab(case: _Case) -> Diagnostic:
    return case.found("S009", "a tab in the indentation", "Use spaces: two for each level.", case.at)


def _dash(case: _Case) -> Diagnostic:
    return case.found(
        "S023",
        "a list cannot start on the line of its key",
        "Begin the list on the next line, indented by two spaces, or put the text in quotes.",
        case.at,
    )


def _block_header(case: _Case) -> Diagnostic:
    sign = case.places.text[case.context_at]
    return case.found(
        "S021",
        f"a text cannot start with “{sign}” here",
        f"Put the text in quotes, or begin it on the line after the “{sign}”.",
        case.context_at,
    )


def _shorthand(case: _Case) -> Diagnostic:
    sign = case.places.text[case.context_at]
    return case.found(
        "S011",
        f"“{sign}” at the start of a text is a YAML shorthand that is not used here",
        "Put the text in quotes.",
        case.context_at,
    )


def _directive(case: _Case) -> Diagnostic:
    message = "a line that starts with % is an instruction, not content"
    return case.found("S013", message, "Delete this line, or put the text in quotes.", case.context_at)


def _tag(case: _Case) -> Diagnostic:
    message = "“!” at the start of a text is a YAML tag, and tags are not used here"
    return case.found("S013", message, "Delete it, or put the text in quotes.", case.context_at)


def _too_deep(case: _Case) -> Diagnostic:
    hint = "Nothing in these files needs such depth: look for brackets that are never closed."
    return case.found("S015", "this is nested too deep", hint, case.context_at)


def _unreadable(case: _Case) -> Diagnostic:
    return case.found(
        "S022",
        "this cannot be read as keys and values",
        "Write “key: value”, one to a line; put text that holds : # [ ] { } in quotes.",
        case.at,
    )


def _indent(text: str) -> int:
    return len(text) - len(text.lstrip())


# In order: the first whose words stand in the parser's problem or context answers. The words are those
# that the library's C parser and its Python parser share.
_ANSWERS: tuple[tuple[str, Callable[[_Case], Diagnostic]], ...] = (
    ("nesting depth", _too_deep),
    ("increasing flow level", _too_deep),
    ("found a tab", _tab),
    ("escape", _backslash),
    ("quoted scalar", _open_quote),
    ("block scalar", _block_header),
    ("scanning an anchor", _shorthand),
    ("scanning an alias", _shorthand),
    ("directive", _directive),
    ("tag", _tag),
    ("flow sequence", _open_bracket),
    ("flow mapping", _open_bracket),
    ("mapping values are not allowed", _colon),
    ("sequence entries are not allowed", _dash),
    ("could not find expected ':'", _simple_key),
    ("cannot start any token", _cannot_start),
    ("node content", _cannot_start),
    ("expected key", _expected_key),
    ("expected <block end>", _expected_key),
    ("expected '-'", _expected_key),
    ("<document start>", _expected_key),
)
