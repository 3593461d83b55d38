"""The lines of a text in the shape that they read best in: without the dress of their layout, one thing on a line."""

from dataclasses import dataclass, replace

from generator.formula.shelf import Shelf
from generator.importer.model import Doubt, SourceLine
from generator.importer.places.labels import without_counts
from generator.importer.places.lists import apart
from generator.importer.places.pairs import joined
from generator.importer.places.shares import without_shares
from generator.importer.places.sizes import one_size
from generator.importer.places.undress import undressed
from generator.importer.places.worth import Worth


@dataclass(frozen=True, slots=True, kw_only=True)
class Shaped:
    """`said` tells what was taken off, `aside` has its words; `notes` has what else lines say, by their numbers."""

    lines: tuple[SourceLine, ...]
    said: tuple[str, ...]
    aside: tuple[str, ...]
    notes: dict[int, str]
    doubts: tuple[Doubt, ...]


def shaped(lines: tuple[SourceLine, ...], shelf: Shelf) -> Shaped:
    worth = Worth(shelf)
    lines, counted = without_counts(lines, worth)
    lines, shares = without_shares(lines, worth)
    sized = one_size(lines, worth)
    bare = undressed(sized.lines, worth)
    if not sized.notes:
        sized = one_size(bare.lines, worth)
        bare = replace(bare, lines=sized.lines)
    told = joined(apart(bare.lines, worth), worth)
    return Shaped(
        lines=told,
        said=bare.said,
        aside=(*counted, *bare.aside),
        notes=shares | sized.notes,
        doubts=sized.doubts,
    )
