"""What the drawn pictures of a bake say: the one to share, the tall one, and a card for each chapter of its films."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from generator.present.views import (
    ArticleView,
    ChapterView,
    Fact,
    PhotoView,
    RecipeView,
    SiteView,
    VideoView,
)
from generator.wording.speech import say

SHARE_SIZE = (1200, 630)


@dataclass(frozen=True, slots=True, kw_only=True)
class SharedView:
    """The picture that stands for a page where somebody passes it on, as Open Graph tells of it."""

    url: str
    text: str
    width: int
    height: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PosterView:
    """`facts` in the order of their worth: a picture with little room shows the first of them."""

    name: str
    title: str
    lead: str
    maker: str
    language: str
    facts: tuple[Fact, ...]
    photo: PhotoView | None


@dataclass(frozen=True, slots=True, kw_only=True)
class StretchView:
    """A chapter's part of its film: `start` and `share` in percent of the whole."""

    start: Fraction
    share: Fraction


@dataclass(frozen=True, slots=True, kw_only=True)
class ChapterCardView:
    """The card before a chapter. `number` counts the chapters of its film from 1, `count` says so of how many.

    `length` is the film's, "" where nobody stated it; `minutes` places the whole minutes on the strip, in percent.
    """

    name: str
    bake: str
    maker: str
    language: str
    file: str
    number: int
    count: str
    title: str
    stamp: str
    length: str
    strip: tuple[StretchView, ...]
    minutes: tuple[Fraction, ...]


def share_path(view: RecipeView) -> str:
    """Where the picture to share lies, from the site's root."""
    return f"{view.path}share.jpg"


def shared_view(view: RecipeView) -> SharedView:
    return _shared(view.url, view.title, view.photo)


def _shared(url: str, title: str, photo: PhotoView | None) -> SharedView:
    text = f"{title}. {photo.text}" if photo and photo.text else title
    return SharedView(url=f"{url}share.jpg", text=text, width=SHARE_SIZE[0], height=SHARE_SIZE[1])


def shared_article(article: ArticleView) -> SharedView | None:
    """None for a post or page without a photograph, which has no picture to share."""
    return _shared(article.url, article.title, article.photo) if article.photo else None


def shared_home(site: SiteView) -> SharedView | None:
    """None where no bake has a photograph."""
    photo = _newest_photo(site)
    return _shared(site.url, site.title, photo) if photo else None


def page_posters(site: SiteView) -> Iterator[tuple[str, PosterView]]:
    """What the pictures to share say of pages that are no bake's: home, posts, standing pages; with the place of each
    from the site's root. Home shows the newest photograph."""
    photo = _newest_photo(site)
    if photo:
        yield "share.jpg", _page_poster(site, "home", site.title, site.lead, (), photo)
    for article in (*site.journal, *site.standing):
        if article.photo:
            day = (Fact(label=say("Journal"), words=article.day),) if article.day else ()
            words = (article.name, article.title, article.lead, day, article.photo)
            yield f"{article.path}share.jpg", _page_poster(site, *words)


def _page_poster(
    site: SiteView, name: str, title: str, lead: str, facts: tuple[Fact, ...], photo: PhotoView
) -> PosterView:
    return PosterView(
        name=name,
        title=title,
        lead=lead,
        maker=site.maker,
        language=site.language,
        facts=facts,
        photo=photo,
    )


def _newest_photo(site: SiteView) -> PhotoView | None:
    return next((teaser.photo for teaser in site.teasers if teaser.photo), None)


def poster_view(view: RecipeView) -> PosterView:
    return PosterView(
        name=view.name,
        title=view.title,
        lead=view.lead,
        maker=view.maker,
        language=view.language,
        facts=tuple(Fact(label=label, words=words) for label, words in _facts(view) if words),
        photo=view.photo,
    )


def _facts(view: RecipeView) -> Iterator[tuple[str, str]]:
    yield say("Makes"), view.makes or view.portions
    yield say("Time in all"), view.times[0].total if view.times else ""
    yield say("Tin"), view.tin
    yield from ((fact.label, fact.words) for fact in view.facts)


def chapter_cards(view: RecipeView) -> tuple[ChapterCardView, ...]:
    """One for each chapter of each film."""
    return tuple(
        _card(view, film, number, place)
        for number, film in enumerate(view.videos, start=1)
        for place in range(len(film.chapters))
    )


def _card(view: RecipeView, film: VideoView, number: int, place: int) -> ChapterCardView:
    chapter, count = film.chapters[place], len(film.chapters)
    end = film.chapters[-1].end_seconds
    return ChapterCardView(
        name=view.name,
        bake=view.title,
        maker=view.maker,
        language=view.language,
        file=f"chapter-{place + 1}.png" if number == 1 else f"film-{number}-chapter-{place + 1}.png",
        number=place + 1,
        count=say("{number} of {count}", number=place + 1, count=count),
        title=chapter.title,
        stamp=chapter.stamp,
        length=film.length,
        strip=tuple(_strip(film.chapters, end)),
        minutes=tuple(Fraction(100 * at, end) for at in range(60, end, 60)) if end else (),
    )


def _strip(chapters: tuple[ChapterView, ...], end: int | None) -> Iterator[StretchView]:
    """The chapters by their lengths; all alike where the film's length is not known."""
    if not end:
        share = Fraction(100, len(chapters))
        yield from (StretchView(start=at * share, share=share) for at in range(len(chapters)))
        return
    stops = [*(each.seconds for each in chapters[1:]), end]
    for chapter, stop in zip(chapters, stops, strict=True):
        yield StretchView(
            start=Fraction(100 * chapter.seconds, end), share=Fraction(100 * (stop - chapter.seconds), end)
        )
