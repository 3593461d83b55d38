"""Whether a line is in percent of the flour, or names a thing that has a percent in its name: “2% milk”."""

from collections.abc import Iterator
from dataclasses import replace

from generator.formula.shelf import Shelf
from generator.formula.written import WrittenLine, WrittenRecipe


def every_line(written: WrittenRecipe) -> Iterator[WrittenLine]:
    """The lines of all parts, each followed by its alternatives."""
    for line in (line for part in written.parts for line in part.lines):
        yield line
        yield from line.alternatives


def in_percent(line: WrittenLine) -> bool:
    """Whether its percent is all that says how much it is."""
    written = line.written
    return written.percent is not None and not written.measures and not written.words


def with_names(written: WrittenRecipe, shelf: Shelf) -> WrittenRecipe:
    """“2% milk” is a name wherever it can be one: beside a measure, and where nothing else is in percent."""
    bare = [each for each in every_line(written) if in_percent(each)]
    by_percent = bool(written.flour or written.dough) or any(not _whole_name(each, shelf) for each in bare)
    parts = tuple(
        replace(part, lines=tuple(_named_line(line, shelf, by_percent=by_percent) for line in part.lines))
        for part in written.parts
    )
    return replace(written, parts=parts)


def _named_line(line: WrittenLine, shelf: Shelf, *, by_percent: bool) -> WrittenLine:
    others = tuple(_named_line(each, shelf, by_percent=by_percent) for each in line.alternatives)
    line, text = replace(line, alternatives=others), line.written
    if text.percent is None or (in_percent(line) and by_percent):
        return line
    if _whole_name(line, shelf):
        name = text.other_item if in_percent(line) else text.item
        return replace(line, written=replace(text, percent=None, item=name, other_item=""))
    bare = text.item if in_percent(line) else text.other_item
    return replace(line, written=replace(text, item=bare, other_item=""))


def _whole_name(line: WrittenLine, shelf: Shelf) -> bool:
    """Whether the name with its percent is one that the catalogue or the pantry knows."""
    name = line.written.other_item if in_percent(line) else line.written.item
    return shelf.ware(name)[0] is not None
