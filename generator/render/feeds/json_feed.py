"""The feed as JSON Feed, version 1.1."""

import json

from generator.present.views import SiteView
from generator.render.feeds.entry import Entry
from generator.render.feeds.places import uri

VERSION = "https://jsonfeed.org/version/1.1"


def json_feed(site: SiteView, entries: tuple[Entry, ...]) -> bytes:
    """The whole feed in UTF-8, keys in the order of the specification; a key without a value is left out."""
    feed = {
        "version": VERSION,
        "title": site.title,
        "home_page_url": uri(site.url),
        "feed_url": uri(f"{site.url}feed.json"),
        "description": site.lead,
        "authors": [{"name": site.maker, "url": uri(site.url)}],
        "language": site.language,
        "items": [_known(_item(entry)) for entry in entries],
    }
    kept = {key: value for key, value in feed.items() if value or key == "items"}
    return (json.dumps(kept, ensure_ascii=False, indent=1) + "\n").encode("utf-8")


def _item(entry: Entry) -> dict[str, object]:
    return {
        "id": entry.url,
        "url": entry.url,
        "title": entry.title,
        "content_html": entry.html,
        "summary": entry.summary,
        "image": entry.image,
        "date_published": entry.published,
        "date_modified": entry.updated if entry.updated != entry.published else "",
        "tags": list(entry.tags),
    }


def _known(values: dict[str, object]) -> dict[str, object]:
    return {key: value for key, value in values.items() if value or key == "content_html"}
