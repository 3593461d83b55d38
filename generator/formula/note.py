"""A gentle note: something a baker may want to know, and who says so. It never stops a build."""

from dataclasses import dataclass

COMMON_PRACTICE = "common practice, no published source"


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """`kind` is a stable word for programs, `says` a sentence for people, `items` the lines it is about."""

    kind: str
    says: str
    source: str
    items: tuple[str, ...] = ()
