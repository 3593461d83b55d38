"""The last look for allergens: foods that the old text names, and no line that was read has.

However a text is laid out, a line that was not found as an ingredient still holds its words. Whatever food those
name whose allergen stands on no line is asked about aloud.
"""

import re
from collections.abc import Iterable, Iterator

from generator.catalogue.allergens import ALLERGENS
from generator.formula.shelf import Shelf
from generator.importer.line.known import known
from generator.importer.model import Doubt, Placed, ReadLine

_WORD = re.compile(r"[^\W\d_]+(?:['’-][^\W\d_]+)*")
_LONGEST = 4
_UNREAD = frozenset({"tags", "kinds", "link", "video", "credit"})
"""Roles of lines that tell whose a bake is and where it is shown, and not what is in it."""


def unnamed(placed: Iterable[Placed], lines: Iterable[ReadLine], shelf: Shelf) -> tuple[Doubt, ...]:
    """A doubt for each allergen that the text names and no line has, at the first line that names it."""
    have = {allergen for line in lines for allergen in _of_line(line, shelf)}
    groups = {ALLERGENS[each].group for each in have}
    found: dict[str, Doubt] = {}
    for each in placed:
        if each.role in _UNREAD:
            continue
        for name, allergens in _foods(each.line.text, shelf):
            for allergen in allergens:
                general = ALLERGENS[allergen].general and ALLERGENS[allergen].group in groups
                if allergen not in have and not general and allergen not in found:
                    found[allergen] = _doubt(name, allergen, each)
    return tuple(found.values())


def _of_line(line: ReadLine, shelf: Shelf) -> tuple[str, ...]:
    """What a line has, with its second choices; of a line that is set aside, what its words name."""
    words = " ".join((line.text, line.written.text, *line.alternatives))
    told = () if line.known else (name for _, names in _foods(words, shelf) for name in names)
    others = (name for other in line.alternatives for _, names in _foods(other, shelf) for name in names)
    return (*line.allergens, *told, *others)


def _foods(text: str, shelf: Shelf) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The foods that a text names, by their longest names, with their allergens."""
    tokens = [each.group() for each in _WORD.finditer(text)]
    start = 0
    while start < len(tokens):
        for length in range(min(_LONGEST, len(tokens) - start), 0, -1):
            name = " ".join(tokens[start : start + length])
            ware = known(name, shelf)
            if ware is not None:
                yield name, ware.ingredient.allergens
                start += length - 1
                break
        start += 1


def _doubt(name: str, allergen: str, placed: Placed) -> Doubt:
    return Doubt(
        code="I013",
        message=f"the text names “{name}”, and no ingredient that was read has {allergen}",
        hint="If it goes in, add its line to the formula, so that the label names it.",
        line=placed.line.number,
    )
