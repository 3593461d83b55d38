"""The films of a recipe: chapters with their addresses, and what a film still shows after a correction."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from zoneinfo import ZoneInfo

from generator.formula.model import Formula, Video
from generator.history.taking_back import in_time
from generator.measure.duration import read_clock
from generator.present.corrected import change_words, standing_now
from generator.present.durations import iso_seconds
from generator.present.views import ChapterView, VideoView
from generator.settings import Settings
from generator.wording.forms import day_words
from generator.wording.speech import say, voice

_PLACE = re.compile(r"\bat ([0-9]{1,3}(?::[0-9]{2}){1,2})\b")


def video_views(formula: Formula, settings: Settings, *, day: date) -> tuple[VideoView, ...]:
    """The films in the order of the file; those that appear after `day` are not on the site yet.

    What a film shows is said beside the first one, and at its chapter.
    """
    shown = tuple(_shown(formula, settings))
    return tuple(
        _video(video, formula.about.title, settings, shown if index == 0 else (), day)
        for index, video in enumerate(formula.about.videos)
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shown:
    """What the film still shows: `remark` beside the film, `beside` at its chapter; `seconds` where, if said."""

    seconds: int | None
    remark: str
    beside: str


def _shown(formula: Formula, settings: Settings) -> Iterator[_Shown]:
    corrections = in_time(formula.about.corrections)
    for at, each in enumerate(corrections):
        if not each.film:
            continue
        now = standing_now(each, corrections[at + 1 :], formula, settings)
        now = now or change_words(each, formula, settings)
        day = day_words(each.on)
        remark = say(
            "The film still shows {film}; the recipe now says {now}, corrected {day}.",
            film=film_words(each.film),
            now=now,
            day=day,
        )
        place = _PLACE.search(each.film)
        what = _PLACE.sub("", each.film).strip(" ,;") or each.film
        beside = say("still shows {what}; now {now}", what=what, now=now)
        yield _Shown(seconds=read_clock(place[1]) if place else None, remark=remark, beside=beside)


def film_words(film: str) -> str:
    """What a film still shows and when, as its maker wrote it: “400 g at 1:25”."""
    place = _PLACE.search(film) if voice().catalogue else None
    what = _PLACE.sub("", film).strip(" ,;") if place else ""
    return say("{what} at {time}", what=what, time=place[1]) if place and what else film


def _video(video: Video, title: str, settings: Settings, shown: tuple[_Shown, ...], day: date) -> VideoView:
    appears = video.published.astimezone(ZoneInfo(settings.zone)).date() if video.published else day
    return VideoView(
        url=video.url,
        name=title,
        published=video.published.isoformat() if video.published else "",
        day=day_words(video.published.date() if video.published else None),
        duration=iso_seconds(video.seconds) if video.seconds else "",
        length=_stamp(video.seconds) if video.seconds else "",
        chapters=_chapters(video, shown),
        film_remarks=tuple(each.remark for each in shown),
        on_site=appears <= day,
    )


def _chapters(video: Video, shown: tuple[_Shown, ...]) -> tuple[ChapterView, ...]:
    ends = (*(each.seconds for each in video.chapters[1:]), video.seconds)[: len(video.chapters)]
    return tuple(
        ChapterView(
            stamp=each.stamp,
            seconds=each.seconds,
            end_seconds=end,
            title=each.title,
            url=_at(video.url, each.seconds),
            remarks=tuple(
                one.beside
                for one in shown
                if one.seconds is not None
                and each.seconds <= one.seconds
                and (end is None or one.seconds < end)
            ),
        )
        for each, end in zip(video.chapters, ends, strict=True)
    )


def _at(url: str, seconds: int) -> str:
    """The film's address with a start time in seconds, as a query parameter `t` (common practice)."""
    bare, mark, fragment = url.partition("#")
    joint = "&" if re.search(r"\?", bare) else "?"
    return f"{bare}{joint}t={seconds}{mark}{fragment}"


def _stamp(seconds: int) -> str:
    hours, rest = divmod(seconds, 3600)
    minutes, left = divmod(rest, 60)
    return f"{hours}:{minutes:02}:{left:02}" if hours else f"{minutes}:{left:02}"
