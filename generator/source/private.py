"""The maker's private files, which no discovery finds and no page is made of."""

from collections.abc import Mapping as ReadOnlyMapping
from pathlib import Path

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import whole_file
from generator.source.characters import MOST_BYTES
from generator.source.document import Mapping
from generator.source.read import read_mapping

PEOPLE = "private/people.yaml"


def read_private(root: Path) -> tuple[Mapping | None, Diagnostics, ReadOnlyMapping[str, str]]:
    """`private/people.yaml` of the content folder: its keys, what is wrong in it, and its text for excerpts."""
    file = root / PEOPLE
    if not file.is_file():
        return None, (), {}
    try:
        with file.open("rb") as opened:
            data = opened.read(MOST_BYTES + 1)
    except OSError:
        fault = Diagnostic(
            code="S055",
            message="this file cannot be read",
            span=whole_file(PEOPLE),
            hint="Look at its permissions.",
        )
        return None, (fault,), {}
    keys, found = read_mapping(PEOPLE, data)
    return keys, found, {PEOPLE: data[:MOST_BYTES].decode("utf-8", "replace")}
