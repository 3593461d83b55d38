"""What both feeds say of one bake or one post."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from generator.present.views import ArticleView, PageLink, PhotoView, RecipeView, SiteView
from generator.render.feeds.article_html import article_html
from generator.render.feeds.places import uri
from generator.render.feeds.recipe_html import recipe_html
from generator.wording.speech import say


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """`url` is permanent and serves as id; times are RFC 3339; `html` has only absolute addresses."""

    url: str
    title: str
    published: str
    updated: str
    summary: str
    html: str
    image: str
    tags: tuple[str, ...]


def entries_of(site: SiteView, bakes: Iterable[Entry] | None = None) -> tuple[Entry, ...]:
    """All bakes and posts of the site, the latest change first, then by address.

    `bakes` are the entries of the bakes, where they were made before.
    """
    found = [
        *(bakes if bakes is not None else (recipe_entry(view, site) for view in site.recipes)),
        *(_article_entry(view, site) for view in site.journal),
    ]
    by_address = sorted(found, key=lambda entry: entry.url)
    return tuple(sorted(by_address, key=lambda entry: (entry.updated, entry.published), reverse=True))


def moment(day: date) -> str:
    """The start of the day as RFC 3339: contents carry dates, feeds want moments."""
    return f"{day.isoformat()}T00:00:00Z"


def recipe_entry(view: RecipeView, site: SiteView) -> Entry:
    published = view.published or site.day
    return Entry(
        url=uri(view.url),
        title=view.title,
        published=moment(published),
        updated=moment(max(published, view.updated or published)),
        summary=_summary(view),
        html=str(recipe_html(view, site.url)),
        image=_image(view.photo),
        tags=_tags(view.kinds),
    )


def _article_entry(view: ArticleView, site: SiteView) -> Entry:
    published = moment(view.published or site.day)
    return Entry(
        url=uri(view.url),
        title=view.title,
        published=published,
        updated=published,
        summary=view.lead,
        html=str(article_html(view, site.url)),
        image=_image(view.photo),
        tags=_tags(view.kinds),
    )


def _summary(view: RecipeView) -> str:
    """The lead, and that the bake was corrected: a reader who has the old one must notice."""
    if not view.corrections:
        return view.lead
    newest = view.corrections[0]
    corrected = say("Corrected {day}: {words}", day=newest.day, words=newest.sentence)
    return f"{corrected} {view.lead}".rstrip()


def _image(photo: PhotoView | None) -> str:
    return uri(photo.url) if photo else ""


def _tags(kinds: tuple[PageLink, ...]) -> tuple[str, ...]:
    return tuple(kind.title for kind in kinds)
