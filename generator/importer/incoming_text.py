"""One recipe's lines as they came in, and the name of the file that it will have."""

import re
import unicodedata
from dataclasses import dataclass

from generator.importer.model import SourceLine

LONGEST_NAME = 60
_NOT_A_NAME = re.compile(r"[^a-z0-9]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """One recipe's lines. `name` is shown to the maker, `stem` names it where it has no title."""

    name: str
    stem: str
    lines: tuple[SourceLine, ...]
    said: tuple[str, ...] = ()


def slug(title: str) -> str:
    """The name of a file: lower-case letters, digits and single hyphens."""
    plain = unicodedata.normalize(
        "NFKD", title.casefold().replace("ß", "ss").replace("'", "").replace("’", "")
    )
    bare = "".join(each for each in plain if not unicodedata.combining(each))
    whole = _NOT_A_NAME.sub("-", bare).strip("-")
    return (
        whole
        if len(whole) <= LONGEST_NAME
        else whole[:LONGEST_NAME].rpartition("-")[0] or whole[:LONGEST_NAME]
    )
