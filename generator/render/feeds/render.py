"""Both feeds as products."""

from collections.abc import Iterable, Iterator

from generator.present.views import SiteView
from generator.render.feeds.atom import atom
from generator.render.feeds.entry import Entry, entries_of
from generator.render.feeds.json_feed import json_feed
from generator.render.output import Product


def render_feeds(view: SiteView, bakes: Iterable[Entry] | None = None) -> Iterator[Product]:
    """`site/feed.xml` and `site/feed.json` with everything that is on the site.

    `bakes` are the entries of the bakes, where they were made before.
    """
    entries = entries_of(view, bakes)
    yield Product(path="site/feed.xml", content=atom(view, entries))
    yield Product(path="site/feed.json", content=json_feed(view, entries))
