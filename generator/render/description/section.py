"""A section of the block: what may be left out as one whole, under the name by which `check` speaks of it."""

from collections.abc import Iterable
from dataclasses import dataclass

from generator.render.description.plain import plain


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """`text` is plain and has no empty line at its ends; a section with nothing to say has ""."""

    name: str
    text: str


def listed(heading: str, lines: Iterable[str]) -> str:
    """Lines under a heading, each made plain; "" where there is no line."""
    told = [line for line in map(plain, lines) if line]
    return "\n".join([heading, *told]) if told else ""
