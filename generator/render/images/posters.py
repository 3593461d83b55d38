"""The drawn pictures of a bake as files: to share, tall, and before each chapter of its films."""

from collections.abc import Callable, Iterator

from generator.present.posters import PosterView, chapter_cards, poster_view, share_path
from generator.present.views import RecipeView
from generator.render.images.chapter_card import chapter_face
from generator.render.images.face import Face
from generator.render.images.paint import as_jpeg, as_png, photo_for
from generator.render.images.poster import share_face, tall_face
from generator.render.output import Product
from generator.render.photographs import MIDDLE

Media = Callable[[str], bytes]


def render_share(view: RecipeView, media: Media) -> Product:
    """`share.jpg` beside the page."""
    return Product(path=f"site/{share_path(view)}", content=_poster(poster_view(view), media, share_face))


def render_page_share(path: str, poster: PosterView, media: Media) -> Product:
    """The picture to share of a page that is no bake's, at `path` from the site's root."""
    return Product(path=f"site/{path}", content=_poster(poster, media, share_face))


def render_tall(view: RecipeView, media: Media) -> Product:
    """`tall.jpg` on the desk."""
    return Product(path=f"desk/{view.name}/tall.jpg", content=_poster(poster_view(view), media, tall_face))


def render_chapter_cards(view: RecipeView) -> Iterator[Product]:
    """`chapter-1.png` and on; nothing for a bake without chapters."""
    for card in chapter_cards(view):
        yield Product(path=f"desk/{view.name}/{card.file}", content=as_png(chapter_face(card)))


def _poster(poster: PosterView, media: Media, drawn: Callable[..., Face]) -> bytes:
    """Over its photograph; of words alone where there is none, or none that can be read."""
    if poster.photo is not None:
        face = drawn(poster, photo=True)
        size = (poster.photo.width, poster.photo.height)
        try:
            return as_jpeg(face, photo_for(face, media(poster.photo.source), size), poster.photo.focus)
        except OSError:
            pass
    return as_jpeg(drawn(poster, photo=False), None, MIDDLE)
