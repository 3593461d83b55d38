"""What every page of a publication has around its own text."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.present.views import PageLink, SiteView
from generator.wording.speech import say


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """Names, addresses and navigation. `contact_url` is "" where the contact is no address to follow,
    `search` where nothing can be searched."""

    title: str
    lead: str
    maker: str
    contact: str
    contact_url: str
    url: str
    language: str
    theme: str
    navigation: tuple[PageLink, ...]
    foot: tuple[PageLink, ...]
    search: str = ""
    shelves: tuple[PageLink, ...] = ()


def frame_of(site: SiteView) -> Frame:
    """The frame that all pages of the site share."""
    return Frame(
        title=site.title,
        lead=site.lead,
        maker=site.maker,
        contact=site.contact,
        contact_url=_contact_url(site.contact),
        url=site.url,
        language=site.language,
        theme=site.theme,
        navigation=tuple(_navigation(site)),
        foot=tuple(_foot(site)),
        search="search/" if site.search is not None else "",
        shelves=tuple(PageLink(title=each.title, path=each.path) for each in site.shelves),
    )


def _navigation(site: SiteView) -> Iterator[PageLink]:
    own = [PageLink(title=say("Bakes"), path="recipes/")]
    if site.kinds:
        own.append(PageLink(title=say("Kinds"), path="kinds/"))
    if site.journal:
        own.append(PageLink(title=say("Journal"), path="journal/"))
    yield from own
    taken = {"", "index.html", "corrections/", *(link.path for link in own)}
    yield from (link for link in site.pages if link.path not in taken)


def _foot(site: SiteView) -> Iterator[PageLink]:
    if site.allergens is not None:
        yield PageLink(title=say("Allergens"), path="allergens/")
    yield PageLink(title=say("Corrections"), path="corrections/")
    yield PageLink(title=say("Atom feed"), path="feed.xml")
    yield PageLink(title=say("JSON feed"), path="feed.json")


def _contact_url(contact: str) -> str:
    """An e-mail or web address to follow, or "" for a contact in plain words."""
    if " " in contact or not contact:
        return ""
    if contact.startswith(("https://", "http://", "mailto:")):
        return contact
    return f"mailto:{contact}" if "@" in contact else ""
