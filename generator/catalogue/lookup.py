"""Ingredients found by the name a baker writes."""

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType

from generator.catalogue.ingredient import Ingredient
from generator.catalogue.names import fold, number_forms, same_name
from generator.diagnostics.diagnostic import nearest

__all__ = ["Catalogue", "fold", "same_name"]

# Words that say how good or how fresh a thing is and leave its weight as it was. "Unsalted", "dried" and
# "ground" are not among them: they name another ingredient.
_QUALITY = (
    *("good quality", "best quality", "organic", "fresh", "raw", "fine", "good", "ripe", "pure"),
    *("freshly squeezed", "freshly grated", "freshly ground"),
)
_WARMTH = (
    *("room temperature", "ice cold", "lukewarm", "warm", "cold", "cool", "hot", "boiling", "tepid"),
    *("chilled", "scalded", "just boiled"),
)
_SOFTNESS = ("softened", "soft", "melted", "very soft")
_BEATEN = ("lightly beaten", "well beaten", "beaten", "whisked")
_HOW = frozenset({"finely", "coarsely", "roughly", "thinly", "lightly", "firmly", "freshly", "well"})
_WARMED = frozenset({"water", "dairy", "dairy alternative", "egg", "fat", "drink", "juice"})
_SOFTENED = frozenset({"fat"})
_EGGS = frozenset({"egg"})
# A dried thing is another thing than the fresh one: "fresh thyme" never answers as dried thyme.
_NEVER_FRESH = frozenset({"spice", "dried fruit", "leavening", "grain", "extract", "decoration"})


class Catalogue:
    """A read-only set of ingredients. Two rows never answer to one name."""

    __slots__ = ("_index", "_rows")

    def __init__(self, rows: Iterable[Ingredient]) -> None:
        self._rows = tuple(rows)
        self._index: Mapping[str, Ingredient] = MappingProxyType(_index(self._rows))

    def __iter__(self) -> Iterator[Ingredient]:
        return iter(self._rows)

    def __len__(self) -> int:
        return len(self._rows)

    def find(self, name: str) -> Ingredient | None:
        """The row that answers to `name`, with neutral words before it set aside; None where none does."""
        return self.exact(name) or self._without_neutral_words(fold(name))

    def exact(self, name: str) -> Ingredient | None:
        """The row that answers to `name` as it stands, in either number; no word is set aside."""
        for form in number_forms(fold(name)):
            if form in self._index:
                return self._index[form]
        return None

    def find_form(self, name: str) -> tuple[Ingredient, str] | None:
        """The row, and the form its name is written with: "finely chopped pecans" is pecans, "chopped".

        The form is a key of the row's `modifiers`, "" where none is written.
        """
        found = self.find(name)
        if found is not None:
            return found, ""
        first, _, rest = fold(name).partition(" ")
        if first in _HOW and rest:
            return self.find_form(rest)
        whole = self.find(rest) if rest else None
        return (whole, first) if whole is not None and first in whole.modifiers else None

    def names(self) -> tuple[str, ...]:
        """The printed name of every row, in the order of the data."""
        return tuple(each.name for each in self._rows)

    def nearest(self, name: str) -> tuple[str, ...]:
        """Printed names most like `name`, best first, at most three."""
        near = nearest(fold(name), self._index, most=6)
        return tuple(dict.fromkeys(self._index[each].name for each in near))[:3]

    def _without_neutral_words(self, folded: str) -> Ingredient | None:
        for word, groups, barred in _neutral_words():
            if folded.startswith(word + " "):
                found = self.find(folded[len(word) + 1 :])
                if found and (groups is None or found.group in groups) and found.group not in barred:
                    return found
        return None


def _neutral_words() -> Iterator[tuple[str, frozenset[str] | None, frozenset[str]]]:
    """Each neutral word with the groups it is neutral for (None: all) and the groups it is not."""
    for word in _QUALITY:
        yield word, None, _NEVER_FRESH if word == "fresh" or word == "raw" else frozenset()
    for word in _WARMTH:
        yield word, _WARMED, frozenset()
    for word in _SOFTNESS:
        yield word, _SOFTENED, frozenset()
    for word in _BEATEN:
        yield word, _EGGS, frozenset()


def _index(rows: tuple[Ingredient, ...]) -> dict[str, Ingredient]:
    """Folded name -> row. Raises ValueError where two rows claim one name: a fault of our own data."""
    index: dict[str, Ingredient] = {}
    for row in rows:
        for name in row.names:
            if index.setdefault(name, row) is not row:
                raise ValueError(f"{name!r} names both {index[name].name!r} and {row.name!r}")
    return index
