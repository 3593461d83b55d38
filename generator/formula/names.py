"""Names in a formula: which line or part a reference means.

Names match after folding case, spaces and plurals of the catalogue; size words may be repeated or left out.
"""

from collections.abc import Iterable
from functools import lru_cache

from generator.catalogue.lookup import fold
from generator.catalogue.names import number_forms
from generator.formula.model import Line, Part
from generator.formula.sizes import SIZES

LONGEST = 120
"""Letters of a name; what is longer names nothing."""


def goes_by(line: Line, name: str) -> bool:
    """Whether `name` means this line."""
    return _means(line, name) or _means(line, without_sizes(name))


def _means(line: Line, name: str) -> bool:
    """Whether the name as it stands, size words and all, is one of the line's."""
    own = _own_names(line.item, line.written.size)
    return len(name) <= LONGEST and (bool(own & _forms(name)) or _by_catalogue(line, name))


@lru_cache(maxsize=4096)
def _own_names(item: str, size: str) -> frozenset[str]:
    """Every name a line answers to, in both numbers: its item, and the item with its size words."""
    sizes = (size, *size.split()) if size else ()
    return frozenset(form for name in (item, *(f"{each} {item}" for each in sizes)) for form in _forms(name))


@lru_cache(maxsize=4096)
def _forms(name: str) -> frozenset[str]:
    return frozenset(number_forms(fold(name[: LONGEST + 1])))


def _by_catalogue(line: Line, name: str) -> bool:
    """Irregular plurals of the catalogue, where the item is the ingredient's own name."""
    if line.ware is None:
        return False
    own = (fold(line.ware.ingredient.name), fold(line.ware.ingredient.plural))
    return fold(line.item) in own and fold(name) in own


def without_sizes(name: str) -> str:
    """The name with leading size words taken off."""
    folded = fold(name[: LONGEST + 1])
    while size := next((each for each in _FOLDED if folded.startswith(each + " ")), ""):
        folded = folded[len(size) + 1 :]
    return folded


_FOLDED = tuple(fold(each) for each in SIZES)


def lines_called(name: str, parts: Iterable[Part]) -> tuple[Line, ...]:
    """The lines that `name` means: `item`, or `part/item` where a part goes by what stands before the slash.

    A size word picks among lines that differ by it: `large egg` of one large and one small egg.
    """
    parts = tuple(parts)
    lines = tuple(line for part in parts for line in part.lines)
    bare = _best(lines, name)
    if bare or "/" not in name[:LONGEST]:
        return bare
    for at in (index for index, character in enumerate(name[:LONGEST]) if character == "/"):
        for part in parts_called(name[:at], parts):
            found = _best(part.lines, name[at + 1 :])
            if found:
                return found
    return ()


def _best(lines: tuple[Line, ...], name: str) -> tuple[Line, ...]:
    exactly = tuple(line for line in lines if _means(line, name))
    bare = without_sizes(name)
    return exactly or tuple(line for line in lines if _means(line, bare))


def parts_called(name: str, parts: Iterable[Part]) -> tuple[Part, ...]:
    return tuple(part for part in parts if part.name and fold(part.name) == fold(name[: LONGEST + 1]))


def names_near(name: str, parts: Iterable[Part]) -> tuple[str, ...]:
    """Items whose name holds the words of `name`, for a hint: “pecans” of “chopped pecans”."""
    wanted = set(fold(name[:LONGEST]).split())
    items = (line.item for part in parts for line in part.lines)
    return tuple(dict.fromkeys(item for item in items if wanted and wanted <= set(fold(item).split())))[:3]
