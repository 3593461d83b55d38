"""The films of a recipe: chapters with their addresses, and what a film still shows after a correction."""

import re

from generator.formula.model import Formula, Video
from generator.present.durations import day_words, iso_seconds
from generator.present.views import ChapterView, VideoView
from generator.settings import Settings


def video_views(formula: Formula, settings: Settings) -> tuple[VideoView, ...]:
    """The films in the order of the file. What the film shows is said beside the first one."""
    remarks = tuple(
        f"The film shows {each.film}; since {day_words(each.on, settings.language)} it is "
        f"{each.change.replace('->', '→')}."
        for each in formula.about.corrections
        if each.film
    )
    return tuple(
        _video(video, formula.about.title, settings, remarks if index == 0 else ())
        for index, video in enumerate(formula.about.videos)
    )


def _video(video: Video, title: str, settings: Settings, remarks: tuple[str, ...]) -> VideoView:
    return VideoView(
        url=video.url,
        name=title,
        published=video.published.isoformat() if video.published else "",
        day=day_words(video.published.date() if video.published else None, settings.language),
        duration=iso_seconds(video.seconds) if video.seconds else "",
        length=_stamp(video.seconds) if video.seconds else "",
        chapters=_chapters(video),
        film_remarks=remarks,
    )


def _chapters(video: Video) -> tuple[ChapterView, ...]:
    ends = (*(each.seconds for each in video.chapters[1:]), video.seconds)
    return tuple(
        ChapterView(
            stamp=each.stamp,
            seconds=each.seconds,
            end_seconds=end,
            title=each.title,
            url=_at(video.url, each.seconds),
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
