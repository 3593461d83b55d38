"""Bake days as plain values for a script: exact grams, and percent, unrounded."""

from collections.abc import Iterable, Mapping
from fractions import Fraction

from generator.formula.bake_sums import Change
from generator.formula.model import Totals
from generator.history.bake_days import BakeDay, Group, Spread, groups_of
from generator.present.bake_comparison import standard_deviation
from generator.present.bake_views import BakeDayView
from generator.present.data import ends, ends_or_none, number

Value = object


def day_data(day: BakeDay, view: BakeDayView) -> Mapping[str, Value]:
    """One day. Percent of loss is of `raw`: the dough as weighed, else all that was put in."""
    record, sums = day.record, day.sums
    return {
        "path": record.path,
        "recipe": record.recipe,
        "day": record.day.isoformat(),
        "bake": record.number,
        "revision": record.revision,
        "size": _number(record.size),
        "room_c": _number(day.warmth),
        "humidity": _number(day.humidity),
        "weather": record.weather or None,
        "packs": list(record.pack_names),
        "changes": [_change(each) for each in sums.changes],
        "before": _totals(sums.before),
        "after": _totals(sums.after),
        "dough": _number(record.dough),
        "baked": _number(record.baked),
        "raw": number(day.raw),
        "loss_percent": _number(None if day.loss is None else 100 * day.loss),
        "times": [{"kind": each.kind, "minutes": ends(each.duration.minutes)} for each in record.times],
        "note": record.note or None,
        "next": record.next or None,
        "summary": view.summary,
        "alarms": list(view.alarms),
        "corrections": list(view.offers),
    }


def comparison_data(days: Iterable[BakeDay], views: Mapping[str, BakeDayView]) -> list[Mapping[str, Value]]:
    """The groups by revision, newest first. `views` are those of the days, by the path of the record."""
    return [_group(each, views) for each in groups_of(days)]


def _group(group: Group, views: Mapping[str, BakeDayView]) -> Mapping[str, Value]:
    return {
        "revision": group.revision,
        "n": len(group.days),
        "bakes": [day_data(each, views[each.record.path]) for each in group.days],
        "items": [_spread(each) for each in group.spreads],
    }


def _spread(spread: Spread) -> Mapping[str, Value]:
    return {
        "item": spread.item,
        "grams": [_number(each) for each in spread.amounts],
        "n": len(spread.known),
        "mean": _number(spread.mean),
        "standard_deviation": standard_deviation(spread),
    }


def _change(change: Change) -> Mapping[str, Value]:
    return {
        "item": change.item,
        "in_recipe": change.line is not None,
        "planned": ends_or_none(change.planned),
        "added": ends(change.added),
        "additions": change.times,
        "left": ends(change.left),
        "used": ends_or_none(change.used),
        "unweighed": change.unweighed,
    }


def _totals(totals: Totals) -> Mapping[str, Value]:
    return {"dough_grams": ends(totals.dough_grams), "hydration": _number(totals.hydration)}


def _number(value: Fraction | None) -> Value:
    return None if value is None else number(value)
