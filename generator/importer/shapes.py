"""The lines of a text in the shape that they read best in: without the dress of their layout, one thing on a line."""

from generator.formula.shelf import Shelf
from generator.importer.lists import apart
from generator.importer.model import SourceLine
from generator.importer.pairs import joined
from generator.importer.undress import Undressed, undressed
from generator.importer.worth import Worth


def shaped(lines: tuple[SourceLine, ...], shelf: Shelf) -> Undressed:
    worth = Worth(shelf)
    bare = undressed(lines, worth)
    told = joined(apart(bare.lines, worth), worth)
    return Undressed(lines=told, said=bare.said, aside=bare.aside)
