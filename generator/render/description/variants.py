"""All texts that go with a recipe's films, and the names that they have on the desk."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from generator.present.views import RecipeView, VideoView
from generator.render.description.chapters import render_chapters
from generator.render.description.comment import render_comment
from generator.render.description.render import render_description
from generator.render.description.short import render_short

FULL, SHORT, COMMENT, CHAPTERS = "description", "short", "comment", "chapters"


@dataclass(frozen=True, slots=True, kw_only=True)
class Variant:
    """`file` is its name on the desk, `kind` one of the four above."""

    file: str
    kind: str
    text: str


def of_film(view: RecipeView, film: VideoView) -> RecipeView:
    """The recipe as it is told below one of its films: that one first."""
    others = (each for each in view.videos if each is not film)
    return replace(view, videos=(film, *others))


def variants(view: RecipeView, *, limit: int, short_limit: int) -> Iterator[Variant]:
    """The block, the short one, the comment and the chapter file; all but the comment also of every further film.

    `limit` and `short_limit` are bytes. A film without usable chapters has no chapter file.
    """
    for file, kind, film in names_of(view):
        told = of_film(view, film) if film else view
        yield Variant(file=file, kind=kind, text=text_of(told, kind, limit=limit, short_limit=short_limit))


def text_of(view: RecipeView, kind: str, *, limit: int, short_limit: int) -> str:
    """One of the texts, of the view's first film; "" for chapters that there cannot be."""
    if kind == FULL:
        return render_description(view, limit=limit).text
    if kind == SHORT:
        return render_short(view, limit=short_limit).text
    if kind == COMMENT:
        return render_comment(view)
    return render_chapters(view.videos[0]) if view.videos else ""


def names_of(view: RecipeView) -> Iterator[tuple[str, str, VideoView | None]]:
    """File, kind and film of each text that there is."""
    yield "comment.txt", COMMENT, None
    for number, film in enumerate(view.videos or (None,), start=1):
        yield _numbered("description", number, ".txt"), FULL, film
        yield _numbered("short", number, ".txt"), SHORT, film
        if film is not None and render_chapters(film):
            yield _numbered("chapters", number, ".vtt"), CHAPTERS, film


def _numbered(name: str, number: int, ending: str) -> str:
    return f"{name}{'' if number == 1 else f'-{number}'}{ending}"
