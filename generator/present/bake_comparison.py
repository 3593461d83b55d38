"""Several bakes of one recipe side by side, in words. What is measured is shown; no rule is made out of it."""

from collections.abc import Callable, Iterable, Iterator
from fractions import Fraction
from math import sqrt

from generator.history.bake_days import BakeDay, Group, Spread, groups_of
from generator.measure.number import Range
from generator.present.amounts import decimal, percent_words, weight_words
from generator.present.bake_days import signed_grams, times_words
from generator.present.bake_views import BakeRowView, ComparisonView, GroupView, SpreadView
from generator.wording.forms import day_words

FEW = 5
"""Bakes below which a mean says little: our decision, and a mild one."""


def comparison_view(days: Iterable[BakeDay], *, title: str) -> ComparisonView:
    """All bakes in groups by revision, since amounts of another revision are added to another recipe."""
    groups = tuple(_group(each) for each in groups_of(days))
    return ComparisonView(title=title, groups=groups)


def _group(group: Group) -> GroupView:
    count = len(group.days)
    named = f"Revision {group.revision}" if group.revision is not None else "Revision not recorded"
    return GroupView(
        title=f"{named}: {count} {'bake' if count == 1 else 'bakes'}",
        rows=tuple(_row(each) for each in group.days),
        spreads=tuple(_spread(each) for each in group.spreads) if count > 1 else (),
        by_humidity=_ordered(group, lambda day: day.humidity, lambda value: percent_words(value)),
        by_warmth=_ordered(group, lambda day: day.warmth, lambda value: f"{decimal(value, places=1)} °C"),
        remarks=tuple(_remarks(group)),
    )


def _row(day: BakeDay) -> BakeRowView:
    record = day.record.as_written
    number = f" ({record.number})" if record.number > 1 else ""
    number += f" ({times_words(day.record)} the recipe)" if day.record.size not in (None, 1) else ""
    loss = f" (-{decimal(100 * day.loss, places=1)} %)" if day.loss is not None and day.loss >= 0 else ""
    baked = weight_words(Range.exact(record.baked)) + loss if record.baked is not None else ""
    return BakeRowView(
        day=f"{day_words(record.day)}{number}",
        room=record.room,
        weather=record.weather,
        added=net_words(day),
        dough=weight_words(Range.exact(record.dough)) if record.dough is not None else "",
        baked=baked,
    )


def net_words(day: BakeDay) -> str:
    """`+55 g bread flour, -6 g honey`; what has no known weight is named without one."""
    told = [
        f"some {each.item}" if each.unweighed else f"{signed_grams(each.net.mid)} {each.item}"
        for each in day.sums.changes
    ]
    return ", ".join(told) or "nothing"


def _spread(spread: Spread) -> SpreadView:
    amounts = tuple("not weighed" if each is None else signed_grams(each) for each in spread.amounts)
    deviation = standard_deviation(spread)
    count = len(spread.known)
    spread_words = (
        f"spread {decimal(Fraction(deviation), places=1)} g" if deviation is not None else "no spread"
    )
    return SpreadView(
        item=spread.item,
        amounts=amounts,
        mean=f"mean {signed_grams(spread.mean)}" if spread.mean is not None else "",
        spread=f"{spread_words} (n = {count})",
    )


def standard_deviation(spread: Spread) -> float | None:
    """The sample's, in grams; None below two weighed bakes."""
    return sqrt(spread.variance) if spread.variance is not None else None


def _ordered(
    group: Group, measured: Callable[[BakeDay], Fraction | None], words: Callable[[Fraction], str]
) -> tuple[tuple[str, str], ...]:
    known = [(value, day) for day in group.days if (value := measured(day)) is not None]
    ordered = sorted(known, key=lambda pair: (pair[0], pair[1].record.day, pair[1].record.number))
    return tuple((words(value), net_words(day)) for value, day in ordered)


def _remarks(group: Group) -> Iterator[str]:
    count = len(group.days)
    if count == 1:
        yield "One bake shows no spread."
    elif count < FEW:
        yield f"{count} bakes are few: a mean of so few may be chance, and the orders below show no rule."
    silent = sum(day.humidity is None for day in group.days)
    if count > 1 and silent:
        yield f"No humidity in {silent} of {count}: write it into the weather, as in “damp, 70 %”."
    silent = sum(day.warmth is None for day in group.days)
    if count > 1 and silent:
        yield f"No room warmth in {silent} of {count}."
