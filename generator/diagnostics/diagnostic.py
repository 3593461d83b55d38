"""A mistake of the maker is a value: what, where, how bad, and what to type."""

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from enum import Enum

from generator.diagnostics.codes import CODES
from generator.diagnostics.span import Span


class Severity(Enum):
    """An error stops a build; a warning never changes the exit."""

    ERROR = "error"
    WARNING = "warning"


@dataclass(frozen=True, slots=True, kw_only=True)
class Diagnostic:
    """One finding. `code` is a key of `codes.CODES`, which also fixes the severity."""

    code: str
    message: str
    span: Span
    hint: str = ""

    @property
    def severity(self) -> Severity:
        return Severity.ERROR if CODES[self.code].error else Severity.WARNING


Diagnostics = tuple[Diagnostic, ...]


def has_errors(diagnostics: Iterable[Diagnostic]) -> bool:
    return any(each.severity is Severity.ERROR for each in diagnostics)


def in_order(diagnostics: Iterable[Diagnostic]) -> Diagnostics:
    """Sorted by file and place, each finding once."""
    unique = dict.fromkeys(diagnostics)
    return tuple(sorted(unique, key=lambda each: (each.span, each.code, each.message)))


def nearest(word: str, known: Iterable[str], *, most: int = 3) -> tuple[str, ...]:
    """The known words most like `word`, best first, for a hint."""
    return tuple(get_close_matches(word.casefold(), list(known), n=most, cutoff=0.6))


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """A sentence with the nearest known words, or nothing where none is near."""
    near = nearest(word, known)
    if not near:
        return ""
    return "Did you mean " + " or ".join(f"“{each}”" for each in near) + "?"
