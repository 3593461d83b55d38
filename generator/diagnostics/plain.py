"""Diagnostics for another program: plain objects, ready to be written as JSON."""

from collections.abc import Iterable

from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.text import path_of


def as_objects(diagnostics: Iterable[Diagnostic], *, prefix: str = "") -> list[dict[str, str | int]]:
    """One object for each finding. Lines and columns count from 1; `end_column` is exclusive.

    A place of several lines ends, for `end_column`, with the last character of the place's last line.
    """
    return [_object(each, prefix=prefix) for each in diagnostics]


def _object(each: Diagnostic, *, prefix: str) -> dict[str, str | int]:
    return {
        "path": path_of(each.span, prefix=prefix),
        "line": each.span.line,
        "column": each.span.column,
        "end_column": each.span.end_column,
        "severity": each.severity.value,
        "code": each.code,
        "message": each.message,
        "hint": each.hint,
    }
