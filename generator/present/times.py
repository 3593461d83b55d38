"""Time drawn: one strip of hands-on, waiting and baking in the order of work, and the sums in words."""

from fractions import Fraction
from math import ceil

from generator.formula.model import Formula, Timed, Times
from generator.formula.timeline import stages_of
from generator.measure.number import Range
from generator.present.amounts import pointed
from generator.present.durations import iso_duration, minutes_words
from generator.present.views import SegmentView, StageView, TimesView
from generator.wording.vocabulary import said


def times_views(formula: Formula) -> tuple[TimesView, ...]:
    """One for each way; none where nothing is timed."""
    longest = max((times.total.high for times in formula.times), default=Fraction(0))
    if not longest:
        return ()
    return tuple(_view(times, formula, longest) for times in formula.times)


def _view(times: Times, formula: Formula, longest: Fraction) -> TimesView:
    ways = tuple(way for way in formula.ways if way.name in ("", times.way))
    named = sorted(ways, key=lambda way: way.name == "")
    segments = tuple(_segment(stage, longest) for stage in stages_of(named))
    return TimesView(
        way=said(times.way),
        hands_on=_or_nothing(times.hands_on),
        waiting=_or_nothing(times.waiting),
        baking=_or_nothing(times.baking),
        total=minutes_words(times.total),
        segments=segments,
    )


def _or_nothing(minutes: Range) -> str:
    return minutes_words(minutes) if minutes.high else ""


def _segment(stage: Timed, longest: Fraction) -> SegmentView:
    minutes = stage.duration.minutes
    return SegmentView(
        stage=stage.stage.value,
        kind=stage.kind,
        words=minutes_words(minutes),
        share=pointed(100 * minutes.high / longest, places=2),
    )


def stage_views(mentions: tuple[object, ...]) -> tuple[StageView, ...]:
    return tuple(_stage(each) for each in mentions if isinstance(each, Timed))


def _stage(timed: Timed) -> StageView:
    minutes = timed.duration.minutes
    return StageView(
        kind=timed.kind,
        stage=timed.stage.value,
        words=minutes_words(minutes),
        seconds=(ceil(minutes.low * 60), ceil(minutes.high * 60)),
    )


def iso_times(formula: Formula) -> tuple[str, str, str]:
    """Preparation, baking and total as ISO 8601 of the longest times; "" where nothing is timed.

    Of several ways the first is meant. Preparation is all that is not baking.
    """
    times = formula.times[0] if formula.times else None
    if times is None:
        return "", "", ""
    preparation = times.hands_on.high + times.waiting.high
    return iso_duration(preparation), iso_duration(times.baking.high), iso_duration(times.total.high)
