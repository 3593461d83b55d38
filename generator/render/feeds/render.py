"""Both feeds as products."""

from collections.abc import Iterator

from generator.present.views import SiteView
from generator.render.feeds.atom import atom
from generator.render.feeds.entry import entries_of
from generator.render.feeds.json_feed import json_feed
from generator.render.output import Product


def render_feeds(view: SiteView) -> Iterator[Product]:
    """`site/feed.xml` and `site/feed.json` with everything that is on the site."""
    entries = entries_of(view)
    yield Product(path="site/feed.xml", content=atom(view, entries))
    yield Product(path="site/feed.json", content=json_feed(view, entries))
