"""Ingredients found by the name a baker writes."""

from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType

from generator.catalogue.ingredient import Ingredient
from generator.catalogue.names import fold, number_forms, same_name
from generator.diagnostics.diagnostic import nearest

__all__ = ["Catalogue", "fold", "same_name"]

# Words that say how good or how fresh a thing is and leave its weight as it was. "Unsalted", "dried" and
# "ground" are not among them: they name another ingredient.
_QUALITY = ("good quality", "best quality", "organic", "fresh", "freshly squeezed", "raw", "fine", "good", "ripe",
            "freshly grated", "pure", "freshly ground")  # fmt: skip
_WARMTH = ("room temperature", "ice cold", "lukewarm", "warm", "cold", "cool", "hot", "boiling", "tepid",
           "chilled", "scalded", "just boiled")  # fmt: skip
_SOFTNESS = ("softened", "soft", "melted", "cold melted")
_WARMED = frozenset({"water", "dairy", "dairy alternative", "egg", "fat", "drink", "juice"})
_SOFTENED = frozenset({"fat"})
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
        folded = fold(name)
        return self._exact(folded) or self._without_neutral_words(folded)

    def names(self) -> tuple[str, ...]:
        """The printed name of every row, in the order of the data."""
        return tuple(each.name for each in self._rows)

    def nearest(self, name: str) -> tuple[str, ...]:
        """Printed names most like `name`, best first, at most three."""
        near = nearest(fold(name), self._index, most=6)
        return tuple(dict.fromkeys(self._index[each].name for each in near))[:3]

    def _exact(self, folded: str) -> Ingredient | None:
        for form in number_forms(folded):
            if form in self._index:
                return self._index[form]
        return None

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


def _index(rows: tuple[Ingredient, ...]) -> dict[str, Ingredient]:
    """Folded name -> row. Raises ValueError where two rows claim one name: a fault of our own data."""
    index: dict[str, Ingredient] = {}
    for row in rows:
        for name in row.names:
            if index.setdefault(name, row) is not row:
                raise ValueError(f"{name!r} names both {index[name].name!r} and {row.name!r}")
    return index
