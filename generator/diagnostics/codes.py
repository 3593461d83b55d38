"""The one table of codes. A code never changes its meaning; a retired one is never used again.

Letters: S a file and its front matter, P the pantry, F the formula, R references and method,
T times and temperatures, L labels, D the description, B building.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True, kw_only=True)
class Code:
    """`title` says in a few words what the code stands for; `error` whether it stops a build."""

    title: str
    error: bool = True


def _warning(title: str) -> Code:
    return Code(title=title, error=False)


def _error(title: str) -> Code:
    return Code(title=title)


CODES: Mapping[str, Code] = MappingProxyType(
    {
        # S: files, front matter, settings
        # P: pantry
        # F: formula and ingredient lines
        # R: references and method
        # T: times and temperatures
        # L: labels
        # D: description
        # B: building
    }
)
