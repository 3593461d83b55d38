"""A recipe's films. Without name, picture and moment of upload none is told: consumers need all three."""

from generator.present.views import ChapterView, RecipeView, VideoView
from generator.render.structured_data.script import Node, known


def films(view: RecipeView) -> list[Node]:
    """One VideoObject for each film whose required properties are known."""
    return [_film(film, view) for film in view.films_on_site if film.name and film.published and view.photo]


def _film(film: VideoView, view: RecipeView) -> Node:
    return known(
        {
            "@type": "VideoObject",
            "name": film.name,
            "description": view.lead,
            "thumbnailUrl": [view.photo.url] if view.photo else [],
            "uploadDate": film.published,
            "duration": film.duration,
            "url": film.url,
            "hasPart": _clips(film.chapters),
        }
    )


def _clips(chapters: tuple[ChapterView, ...]) -> list[Node]:
    """A Clip for each chapter; of chapters that share a start the first, since no two clips may."""
    firsts = {chapter.seconds: chapter for chapter in reversed(chapters)}
    return [
        known(
            {
                "@type": "Clip",
                "name": chapter.title,
                "startOffset": chapter.seconds,
                "endOffset": chapter.end_seconds,
                "url": chapter.url,
            }
        )
        for chapter in chapters
        if firsts[chapter.seconds] is chapter
    ]
