"""The films of a recipe and their chapters, as frozen views."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class ChapterView:
    """`stamp` as typed ("1:25"); `seconds` from the start; `url` leads into the film.

    `remarks` say what it still shows and what stands now.
    """

    stamp: str
    seconds: int
    end_seconds: int | None
    title: str
    url: str
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class VideoView:
    """`published` RFC 3339 or ""; `duration` ISO 8601 or ""; `film_remarks` what the film still shows."""

    url: str
    name: str
    published: str
    day: str
    duration: str
    length: str
    chapters: tuple[ChapterView, ...]
    film_remarks: tuple[str, ...]
    on_site: bool = True
