"""Names in a formula: which line or part a reference means.

Names match after folding case, spaces and plurals of the catalogue; size words may be repeated or left out.
"""

from collections.abc import Iterable

from generator.catalogue.lookup import fold, same_name
from generator.formula.line import SIZES
from generator.formula.model import Line, Part


def names_of(line: Line) -> tuple[str, ...]:
    """Every name a line answers to: its item, and the item with its size word."""
    item = fold(line.item)
    sizes = tuple(f"{fold(word)} {item}" for word in (line.written.size, *line.written.size.split()) if word)
    return (item, *sizes)


def goes_by(line: Line, name: str) -> bool:
    """Whether `name` means this line."""
    bare = without_sizes(name)
    return any(_alike(own, name) or (bare != name and _alike(own, bare)) for own in names_of(line)) or (
        _by_catalogue(line, name) or (bare != name and _by_catalogue(line, bare))
    )


def _alike(own: str, name: str) -> bool:
    return own == fold(name) or same_name(own, name)


def _by_catalogue(line: Line, name: str) -> bool:
    """Irregular plurals of the catalogue: “leaves” for “leaf”, where the item is the ingredient's own name."""
    if line.ware is None:
        return False
    ingredient = line.ware.ingredient
    own = (fold(ingredient.name), fold(ingredient.plural))
    return fold(line.item) in own and fold(name) in own


def without_sizes(name: str) -> str:
    """The name with leading size words taken off."""
    folded = fold(name)
    for size in (fold(each) for each in SIZES):
        if folded.startswith(size + " "):
            return without_sizes(folded[len(size) + 1 :])
    return folded


def lines_called(name: str, parts: Iterable[Part]) -> tuple[Line, ...]:
    """The lines that `name` means: `item`, or `part/item` where a part goes by what stands before the slash."""
    parts = tuple(parts)
    bare = tuple(line for part in parts for line in part.lines if goes_by(line, name))
    if bare or "/" not in name:
        return bare
    for at in (index for index, character in enumerate(name) if character == "/"):
        for part in parts_called(name[:at], parts):
            found = tuple(line for line in part.lines if goes_by(line, name[at + 1 :]))
            if found:
                return found
    return ()


def parts_called(name: str, parts: Iterable[Part]) -> tuple[Part, ...]:
    return tuple(part for part in parts if part.name and fold(part.name) == fold(name))
