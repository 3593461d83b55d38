"""What a change does to the files, line by line, as it is shown before it is written."""

from collections.abc import Iterator, Mapping
from difflib import unified_diff

_AROUND = 1
"""Unchanged lines shown on either side of a change."""


def difference(before: Mapping[str, str], after: Mapping[str, str], *, prefix: str) -> str:
    """A unified difference of every file that changes; what no terminal can show stands as an escape."""
    return "".join(
        line for path in sorted(after) for line in _of(before.get(path, ""), after[path], f"{prefix}{path}")
    )


def _of(before: str, after: str, name: str) -> Iterator[str]:
    old, new = (text.removeprefix("\ufeff").splitlines() for text in (before, after))
    for line in unified_diff(old, new, name, name, n=_AROUND, lineterm=""):
        yield f"{_shown(line)}\n"


def _shown(line: str) -> str:
    return "".join(each if each.isprintable() else each.encode("unicode_escape").decode() for each in line)
