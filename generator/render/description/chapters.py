"""The chapters of a film as a chapter file for players: WebVTT (W3C, https://www.w3.org/TR/webvtt1/).

A cue reaches from a chapter to the next, the last one to the end of the film. Without the film's length there is no
end, and none is made up.
"""

from collections.abc import Iterator

from generator.present.views import ChapterView, VideoView
from generator.render.description.plain import plain

# WebVTT 4.2.2: these cannot stand in a cue's text as they are.
_ESCAPES = {"&": "&amp;", "<": "&lt;", ">": "&gt;"}


def render_chapters(film: VideoView) -> str:
    """The file's text; "" where `why_none` says why there can be none."""
    if why_none(film):
        return ""
    return "\n".join(["WEBVTT", "", *(line for each in film.chapters for line in _cue(each))])


def why_none(film: VideoView) -> str:
    """Why a film can have no chapter file, in a sentence; "" where it can."""
    if not film.chapters:
        return "the film has no chapters"
    if film.chapters[-1].end_seconds is None:
        return "the length of the film is not known: add “length:” to the video"
    if any(each.end_seconds is None or each.end_seconds <= each.seconds for each in film.chapters):
        return "the chapters are not in order of time inside the film"
    return ""


def _cue(chapter: ChapterView) -> Iterator[str]:
    yield f"{_clock(chapter.seconds)} --> {_clock(chapter.end_seconds or 0)}"
    yield "".join(_ESCAPES.get(sign, sign) for sign in plain(chapter.title))
    yield ""


def _clock(seconds: int) -> str:
    """WebVTT timestamp: hours of two figures or more, minutes, seconds, thousandths."""
    minutes, second = divmod(seconds, 60)
    hour, minute = divmod(minutes, 60)
    return f"{hour:02}:{minute:02}:{second:02}.000"
