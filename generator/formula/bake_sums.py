"""What a bake really had in it: the formula with what was added, less what was left, in exact sums."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from generator.catalogue.names import fold
from generator.formula.bake_day import ADDED_PART, Added, added_line, lines_within
from generator.formula.model import Formula, Line, Part, Totals
from generator.formula.percentages import kept_grams, totals_of
from generator.measure.number import Range, total

NOTHING = Range.exact(0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What one ingredient came to on the day, in grams.

    `line` is the formula's, None for what the formula has not; `planned` is None there, or where no weight is
    known. `unweighed` counts the entries whose weight cannot be known: they are in no sum.
    """

    item: str
    line: Line | None
    planned: Range | None
    added: Range
    times: int
    left: Range
    unweighed: int = 0

    @property
    def net(self) -> Range:
        return Range(self.added.low - self.left.high, self.added.high - self.left.low)

    @property
    def used(self) -> Range | None:
        """What was really used, where all of it is known."""
        if self.unweighed or (self.line is not None and self.planned is None):
            return None
        return (self.planned or NOTHING) + self.net


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOver:
    item: str
    line: Line | None
    grams: Range | None


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeSums:
    """`before` are the formula's own totals, `after` those with everything that was added and left.

    `kept` is the weight of all that stays in the bake, before it loses any in the oven.
    """

    changes: tuple[Change, ...]
    before: Totals
    after: Totals
    kept: Range


def sums_of(
    formula: Formula, *, book: Mapping[str, Formula], added: Iterable[Added], left: Iterable[LeftOver]
) -> BakeSums:
    """The bake as it was weighed. What the formula has not counts as dough where the formula has a dough."""
    more, less = tuple(added), tuple(left)
    changes = changes_of(more, less)
    parts = tuple(_changed_part(part, changes) for part in formula.parts)
    strange = tuple(added_line(each) for each in more if each.line is None and each.grams is not None)
    if strange:
        weight = total(line.grams for line in strange if line.grams is not None)
        dough = any(part.counts for part in formula.parts)
        span = strange[0].span
        new = Part(name=ADDED_PART, counts=dough, preferment=None, lines=strange, grams=weight, span=span)
        parts = (*parts, new)
    after = totals_of(parts, book=book, weighs=None, bakes_off=None)
    return BakeSums(changes=changes, before=formula.totals, after=after, kept=kept_grams(parts))


def changes_of(added: tuple[Added, ...], left: tuple[LeftOver, ...]) -> tuple[Change, ...]:
    """One for each ingredient that was added or left, in the order in which they are first named."""
    everything: tuple[Added | LeftOver, ...] = (*added, *left)
    named = dict.fromkeys(_name(each.item, each.line) for each in everything)
    return tuple(
        _change(
            [each for each in added if _name(each.item, each.line) == name],
            [each for each in left if _name(each.item, each.line) == name],
        )
        for name in named
    )


def _name(item: str, line: Line | None) -> str:
    return f"{line.key}" if line is not None else fold(item)


def _change(added: list[Added], left: list[LeftOver]) -> Change:
    everything: list[Added | LeftOver] = [*added, *left]
    first, weights = everything[0], [each.grams for each in everything]
    return Change(
        item=first.line.item if first.line else first.item,
        line=first.line,
        planned=first.line.grams if first.line else None,
        added=total(each.grams for each in added if each.grams is not None),
        times=len(added),
        left=total(each.grams for each in left if each.grams is not None),
        unweighed=sum(each is None for each in weights),
    )


def _changed_part(part: Part, changes: tuple[Change, ...]) -> Part:
    """The part with its changed lines, and one more for what was added of a line that is in no sum itself."""
    lines: list[Line] = []
    for line in part.lines:
        own = next((each for each in changes if each.line is line), None)
        summed = line.counts and line.grams is not None
        lines.append(_changed(line, own.net) if own and summed else line)
        within = _unsummed(line, summed=summed)
        beside = [each for each in changes if any(each.line is one for one in within)]
        lines += [_as_more(each) for each in beside if each.net.low > 0]
    grams = total(line.grams for line in lines if line.counts and line.grams is not None)
    return replace(part, lines=tuple(lines), grams=grams)


def _unsummed(line: Line, *, summed: bool) -> tuple[Line, ...]:
    within = tuple(lines_within((line,)))
    return within[1:] if summed else within


def _changed(line: Line, net: Range) -> Line:
    grams = _never_below_nothing(line.grams, net)
    return replace(line, grams=grams, kept=_never_below_nothing(line.kept, net))


def _never_below_nothing(grams: Range | None, net: Range) -> Range | None:
    if grams is None:
        return None
    ends = sorted((max(grams.low + net.low, Fraction(0)), max(grams.high + net.high, Fraction(0))))
    return Range(ends[0], ends[1])


def _as_more(change: Change) -> Line:
    if change.line is None:
        raise ValueError("only a line of the formula can be had more of")
    return replace(change.line, grams=change.net, kept=change.net, optional=False, percent=None)
