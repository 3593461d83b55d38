"""The way from the home page to a page, as it stands above every inner page and is told to programs."""

from dataclasses import dataclass

from generator.present.page_link import PageLink
from generator.wording.speech import later, say

_PARENTS = {
    "recipes/": later("Bakes"),
    "kinds/": later("Kinds"),
    "journal/": later("Journal"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class ListPage:
    """A page that lists others; `lead` says in one sentence what."""

    title: str
    path: str
    lead: str


def trail_of(path: str, title: str) -> tuple[PageLink, ...]:
    """The pages between the home page and this one, itself last; () for the home page."""
    if not path:
        return ()
    above = "recipes/" if path.startswith("by/") else path.partition("/")[0] + "/"
    own = PageLink(title=title, path=path)
    if above == path or above not in _PARENTS:
        return (own,)
    return (PageLink(title=say(_PARENTS[above]), path=above), own)
