"""The photographs and other files of `media/` that the pages use."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from generator.present.views import PhotoView, RecipeView, SiteView
from generator.render.output import Product
from generator.render.photographs import (
    Copy,
    Focus,
    encoded,
    focus_in_list,
    is_picture,
    list_copies,
    picture_set,
    published_path,
    published_size,
    whole_copies,
)
from generator.render.rich_text import is_local, local_links
from generator.render.site.places import from_maker, relative

Media = Callable[[str], bytes]


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A format as a `source` element needs it: its media type, and its copies as a `srcset`."""

    type: str
    choices: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A photograph as `picture` and `img` need it, seen from its page. `sources` are the smaller formats, best first;
    `address` and `choices` are the JPEG that every browser knows. `focus` are classes that say which part must stay
    in sight where a sheet cuts it ("x25 y100": at a quarter from the left, at the foot), "" for the middle."""

    sources: tuple[Source, ...]
    address: str
    choices: str
    text: str
    width: int
    height: int
    focus: str = ""


def picture_of(photo: PhotoView, *, page: str) -> Picture:
    """The whole photograph in the widths that a large picture needs."""
    return _picture(photo, whole_copies(photo.path, photo.width, photo.height), photo.focus, page)


def list_picture_of(photo: PhotoView, *, page: str) -> Picture:
    """The photograph for a list: all have one shape, cut around the focal point."""
    copies = list_copies(photo.path, photo.width, photo.height)
    size = (photo.width, photo.height)
    focus = focus_in_list(size, photo.focus) if copies[-1].cut else photo.focus
    return _picture(photo, copies, focus, page)


def _picture(photo: PhotoView, copies: tuple[Copy, ...], focus: Focus, page: str) -> Picture:
    def choices(form: str) -> str:
        return ",".join(f"{relative(each.path(form), page=page)} {each.width}w" for each in copies)

    widest = copies[-1]
    return Picture(
        sources=tuple(Source(type=f"image/{form}", choices=choices(form)) for form in ("avif", "webp")),
        address=relative(widest.path("jpg"), page=page),
        choices=choices("jpg"),
        text=photo.text,
        width=widest.width,
        height=widest.height,
        focus=" ".join(_focus(focus)),
    )


def _focus(focus: Focus) -> Iterator[str]:
    """One class for each direction in which the point lies off the middle, to the nearest quarter, because the
    content policy allows no style in a page. A point at p percent keeps its place where p percent of what is cut is
    cut before it; an eighth more or less still leaves it in sight."""
    for axis, percent in zip("xy", focus, strict=True):
        quarter = 25 * round(percent / 25)
        if quarter != 50:
            yield f"{axis}{quarter}"


def media_place(address: str) -> str:
    """Where a file that Markdown names is published, from the root of the site."""
    place = from_maker(address)
    return published_path(place) if place.startswith("media/") and is_picture(place) else place


def photo_products(photo: PhotoView, media: Media) -> Iterator[Product]:
    """The photograph in every width and format its pages offer; nothing where the file cannot be read."""
    try:
        data = media(photo.source)
        copies = picture_set(data, photo.path, width=photo.width, height=photo.height, focus=photo.focus)
        for path, content in copies:
            yield Product(path=f"site/{path}", content=content)
    except OSError:
        return


def media_products(site: SiteView, media: Media) -> Iterator[Product]:
    """Every file that a page of the site shows or links to, each once."""
    named = {address for recipe in site.recipes for address in named_by(recipe)}
    photos, others = media_of(site, named)
    for photo in photos:
        yield from photo_products(photo, media)
    for address in others:
        yield from text_media(address, media)


def media_of(site: SiteView, named: Iterable[str]) -> tuple[tuple[PhotoView, ...], tuple[str, ...]]:
    """The photographs of the site, and what else its texts name, each once. `named` is what the bakes name."""
    photos = {photo.path: photo for photo in reversed(tuple(_photos(site)))}
    articles = (
        each for page in (*site.journal, *site.standing) for each in _places(local_links(page.markdown))
    )
    places: dict[str, str] = {}
    for address in sorted({*named, *articles}):
        if media_place(address) not in photos:
            places.setdefault(media_place(address), address)
    order = dict.fromkeys(photo.path for photo in _photos(site))
    return tuple(photos[path] for path in order), tuple(places.values())


def named_by(recipe: RecipeView) -> tuple[str, ...]:
    """The addresses under `media/` in any text, link or credit of a bake."""
    linked = (*(link.url for link in recipe.links), *(credit.url for credit in recipe.credits))
    written = (each for text in _texts(recipe) for each in local_links(text))
    return tuple(sorted(set(_places((*written, *filter(is_local, linked))))))


def _places(addresses: Iterable[str]) -> Iterator[str]:
    places = (from_maker(address) for address in addresses)
    return (place for place in places if place.startswith("media/") and not place.endswith("/"))


def text_media(address: str, media: Media) -> Iterator[Product]:
    """A file that Markdown names: a picture is published like a photograph, anything else as it is."""
    try:
        data = media(address)
        size = published_size(data) if is_picture(address) else None
        content = encoded(data, width=size[0], height=size[1]) if size else data
    except OSError:
        return
    if size or not is_picture(address):
        yield Product(path=f"site/{media_place(address)}", content=content)


def _photos(site: SiteView) -> Iterator[PhotoView]:
    shown = (
        *(recipe.photo for recipe in site.recipes),
        *(teaser.photo for teaser in site.teasers),
        *(article.photo for article in (*site.journal, *site.standing)),
    )
    yield from (photo for photo in shown if photo)


def _texts(recipe: RecipeView) -> Iterator[str]:
    yield recipe.intro.markdown
    yield from (prose.markdown for prose in recipe.prose)
    for way in (*recipe.ways, *((recipe.common,) if recipe.common else ())):
        yield from (block.words.markdown for section in way.sections for block in section.blocks)
