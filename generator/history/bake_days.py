"""What bake days come to: one day summed up, and several of one recipe side by side. Exact, and without words."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from generator.formula.bake_day import line_named
from generator.formula.bake_sums import BakeSums, LeftOver, sums_of
from generator.formula.model import Formula
from generator.history.bakes import BakeRecord
from generator.measure.temperature import read_temperature

_HUMIDITY = re.compile(r"([0-9]{1,3}(?:[.,][0-9])?)\s?%")


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeDay:
    """A record with its sums, which are those of the recipe's own size.

    `humidity` is the one percentage of the weather, `warmth` the room in °C.

    `raw` is what went into the oven: the dough as it was weighed, else everything that was put in; `weighed` tells
    which. `loss` is the share of it that the bake lost.
    """

    record: BakeRecord
    sums: BakeSums
    humidity: Fraction | None
    warmth: Fraction | None
    raw: Fraction
    weighed: bool

    @property
    def loss(self) -> Fraction | None:
        baked = self.record.as_written.baked
        return (self.raw - baked) / self.raw if baked is not None and self.raw > 0 else None


def bake_day(record: BakeRecord, formula: Formula, book: Mapping[str, Formula]) -> BakeDay:
    """The day by the formula that the record was baked with."""
    own = record.as_written
    left = tuple(LeftOver(item=each.item, line=each.line, grams=each.grams) for each in own.left)
    sums = sums_of(formula, book=book, added=own.added, left=left)
    return BakeDay(
        record=record,
        sums=sums,
        humidity=humidity_in(record.weather),
        warmth=_warmth(record.room),
        raw=own.dough if own.dough is not None else sums.kept.mid,
        weighed=record.dough is not None,
    )


def rebound(record: BakeRecord, formula: Formula) -> BakeRecord:
    """The record with what was added and left found again in another revision of its recipe."""
    return replace(
        record,
        added=tuple(replace(each, line=line_named(formula, each.item)) for each in record.added),
        left=tuple(replace(each, line=line_named(formula, each.item)) for each in record.left),
    )


def humidity_in(weather: str) -> Fraction | None:
    """The percentage that a maker wrote into the weather; None for none, or for several."""
    found = [Fraction(each.replace(",", ".")) for each in _HUMIDITY.findall(weather)]
    return found[0] if len(found) == 1 and found[0] <= 100 else None


def _warmth(room: str) -> Fraction | None:
    temperature = read_temperature(room)
    return temperature.celsius().mid if temperature and temperature.stated != "gas" else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """Of one ingredient over all bakes of a group, a bake without any counting as nothing.

    `variance` is the sample's (divided by n - 1); None for a single bake. `unweighed` bakes are left out.
    """

    item: str
    amounts: tuple[Fraction | None, ...]

    @property
    def known(self) -> tuple[Fraction, ...]:
        return tuple(each for each in self.amounts if each is not None)

    @property
    def mean(self) -> Fraction | None:
        return sum(self.known, start=Fraction(0)) / len(self.known) if self.known else None

    @property
    def variance(self) -> Fraction | None:
        mean, count = self.mean, len(self.known)
        if mean is None or count < 2:
            return None
        return sum(((each - mean) ** 2 for each in self.known), start=Fraction(0)) / (count - 1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """The bakes of one revision, oldest first. Amounts of different revisions are never averaged.

    `revision` is None where the records do not say which one they were.
    """

    revision: int | None
    days: tuple[BakeDay, ...]
    spreads: tuple[Spread, ...]


def groups_of(days: Iterable[BakeDay]) -> tuple[Group, ...]:
    """Newest revision first, records without one last."""
    every = sorted(days, key=lambda each: (each.record.day, each.record.number))
    revisions = sorted(
        {each.record.revision for each in every}, key=lambda each: -1 if each is None else each, reverse=True
    )
    return tuple(_group(each, [day for day in every if day.record.revision == each]) for each in revisions)


def _group(revision: int | None, days: list[BakeDay]) -> Group:
    items = dict.fromkeys(change.item for day in days for change in day.sums.changes)
    spreads = tuple(Spread(item=item, amounts=tuple(_net(day, item) for day in days)) for item in items)
    return Group(revision=revision, days=tuple(days), spreads=spreads)


def _net(day: BakeDay, item: str) -> Fraction | None:
    """How much more of it went in than the formula says; less than nothing for what was left over."""
    changes = [each for each in day.sums.changes if each.item == item]
    if any(each.unweighed for each in changes):
        return None
    return sum((each.net.mid for each in changes), start=Fraction(0))
