"""Class words ("nuts") that are only the heading of a kind beside them: "nuts (almond)", "almond (nuts)"."""

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import accumulate

from generator.catalogue.allergens import ALLERGENS
from generator.declaration.brackets import item_at, next_open
from generator.declaration.sentences import Sentence
from generator.declaration.words import Match


@dataclass(slots=True)
class _Group:
    """Where the kinds of a class stand, and the brackets after each: from the opening mark to the item's end."""

    starts: list[int] = field(default_factory=list)
    opened: list[int] = field(default_factory=list)
    closed: list[int] = field(default_factory=list)


class Kinds:
    """The kinds that a list names. A question costs little, however long the list is."""

    __slots__ = ("_groups", "_listed", "_summaries")

    def __init__(self, listed: str, found: Sequence[Match], summed: Sequence[Sentence]) -> None:
        self._listed = listed
        self._summaries = summed
        self._groups: dict[str, _Group] = {}
        for match in found:
            for name in {ALLERGENS[each].group for each in match.meaning.allergens if _is_kind(each)}:
                self._add(name, match)
        for group in self._groups.values():
            brackets = sorted(zip(group.opened, group.closed, strict=True))
            group.opened = [each for each, _ in brackets]
            group.closed = list(accumulate((each for _, each in brackets), max))

    def name_closer(self, allergen: str, general: Match) -> bool:
        """Whether the class word is explained by a kind beside it, so that the kind alone is declared.

        A class word of the summary is explained by any kind in the list, one of the list by its own brackets
        only.
        """
        if not ALLERGENS[allergen].general:
            return False
        classes = {ALLERGENS[each].group for each in general.meaning.allergens} | {allergen}
        groups = [self._groups[each] for each in classes if each in self._groups]
        if self._in_summary(general):
            return bool(groups)
        return any(self._beside(general, group) for group in groups)

    def _add(self, name: str, kind: Match) -> None:
        group = self._groups.setdefault(name, _Group())
        group.starts.append(kind.start)
        opened, closed = next_open(self._listed, kind.end), item_at(self._listed, kind.start)[1]
        if opened < closed:
            group.opened.append(opened)
            group.closed.append(closed)

    def _in_summary(self, general: Match) -> bool:
        at = bisect_left(self._summaries, general.start + 1, key=lambda each: each.start) - 1
        return at >= 0 and general.start < self._summaries[at].end

    def _beside(self, general: Match, group: _Group) -> bool:
        """Whether one of the two stands in the brackets of the other's item."""
        opened, closed = next_open(self._listed, general.end), item_at(self._listed, general.start)[1]
        if _any_between(group.starts, opened, closed):
            return True
        before = bisect_left(group.opened, general.start)
        return before > 0 and group.closed[before - 1] > general.start


def _is_kind(allergen: str) -> bool:
    return not ALLERGENS[allergen].general


def _any_between(places: list[int], start: int, end: int) -> bool:
    at = bisect_left(places, start)
    return at < len(places) and places[at] < end
