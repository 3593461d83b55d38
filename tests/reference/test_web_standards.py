"""Text outputs against the published rules of the formats they are in."""

import json
import re
from calendar import timegm
from collections.abc import Iterator
from datetime import UTC, datetime
from fractions import Fraction
from itertools import pairwise
from typing import Any
from urllib.parse import urlsplit
from xml.etree.ElementTree import Element, fromstring

import feedparser
import pytest

from generator.present.durations import iso_duration, iso_seconds
from generator.present.trails import ListPage
from generator.render.description.plain import size
from generator.render.description.render import render_description
from generator.render.feeds.render import render_feeds
from generator.render.sitemap import MOST, render_sitemap
from generator.render.structured_data.render import structured_data
from tests.render.text.sample import ABOUT, BRAID, POST, PUBLICATION, SUGAR, many

ATOM = "{http://www.w3.org/2005/Atom}"
MAP = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
# RFC 3339 section 5.6, with the capital T and Z that RFC 4287 section 3.3 asks for.
RFC_3339 = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?(?:Z|[+-]\d\d:\d\d)")
# ISO 8601: at least one component, T before hours, minutes and seconds.
DURATION = re.compile(
    r"P(?=\d|T\d)(?:\d+Y)?(?:\d+M)?(?:\d+D)?(?:T(?=\d)(?:\d+H)?(?:\d+M)?(?:\d+(?:\.\d+)?S)?)?|P\d+W"
)

BY_TIME = ListPage(title="Bakes by time", path="by/time/", lead="How long each takes.")
VIEWS = (BRAID, SUGAR, POST, ABOUT, PUBLICATION, BY_TIME)


def atom() -> Element:
    return fromstring(next(iter(render_feeds(PUBLICATION))).content)


def json_feed() -> dict[str, Any]:
    return dict(json.loads(list(render_feeds(PUBLICATION))[1].content))


def nodes(value: Any) -> Iterator[dict[str, Any]]:
    """Every typed node of a JSON-LD text."""
    if isinstance(value, dict) and "@type" in value:
        yield value
    for inner in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from nodes(inner)


def all_nodes() -> list[dict[str, Any]]:
    return [node for view in VIEWS for node in nodes(json.loads(structured_data(view, PUBLICATION)))]


def one(parent: Element, name: str) -> str:
    found = parent.findall(ATOM + name)
    assert len(found) == 1, f"{name} {len(found)} times"
    return found[0].text or ""


def test_atom_has_what_rfc_4287_requires() -> None:
    """RFC 4287 sections 4.1.1 and 4.1.2: one id, title, updated each; an author; a self link."""
    feed = atom()
    assert feed.tag == f"{ATOM}feed"
    for element in (feed, *feed.findall(f"{ATOM}entry")):
        assert urlsplit(one(element, "id")).scheme == "https"
        assert one(element, "title")
        assert RFC_3339.fullmatch(one(element, "updated"))
    assert feed.findtext(f"{ATOM}author/{ATOM}name") == PUBLICATION.maker
    assert [link.get("href") for link in feed.findall(f"{ATOM}link") if link.get("rel") == "self"] == [
        f"{PUBLICATION.url}feed.xml"
    ]


def test_atom_ids_are_unique_and_the_feed_is_as_new_as_its_newest_entry() -> None:
    feed = atom()
    entries = feed.findall(f"{ATOM}entry")
    ids = [one(entry, "id") for entry in entries]
    assert len(ids) == len(set(ids)) == 3
    newest = max(datetime.fromisoformat(one(entry, "updated")) for entry in entries)
    assert datetime.fromisoformat(one(feed, "updated")) == newest


def test_each_atom_entry_has_content_and_one_alternate() -> None:
    """RFC 4287 sections 4.1.1 and 4.1.3: text of type html is escaped and lies in the entry itself."""
    for entry in atom().findall(f"{ATOM}entry"):
        content = entry.findall(f"{ATOM}content")
        assert [each.get("type") for each in content] == ["html"]
        assert content[0].text
        assert len(content[0]) == 0
        alternates = [
            link for link in entry.findall(f"{ATOM}link") if link.get("rel", "alternate") == "alternate"
        ]
        assert len(alternates) == 1


def test_a_stranger_s_reader_sees_in_the_atom_feed_what_the_json_feed_holds() -> None:
    """feedparser (PyPI), a reader of feeds that knows nothing of us: well formed, and the same entries in full."""
    read = feedparser.parse(
        next(iter(render_feeds(PUBLICATION))).content, sanitize_html=False, resolve_relative_uris=False
    )
    assert not read.bozo
    assert read.version == "atom10"
    items = json_feed()["items"]
    assert [entry.id for entry in read.entries] == [item["id"] for item in items]
    for entry, item in zip(read.entries, items, strict=True):
        assert entry.title == item["title"]
        assert entry.link == item["url"]
        assert entry.content[0].value == item["content_html"].strip()
        told = datetime.fromisoformat(item.get("date_modified", item["date_published"]))
        assert datetime.fromtimestamp(timegm(entry.updated_parsed), tz=UTC) == told
    linked = re.findall(r'(?:href|src)="([^"]+)"', " ".join(entry.content[0].value for entry in read.entries))
    assert linked
    assert not [each for each in linked if not re.match(r"https?://|mailto:|#", each)]


def test_json_feed_has_what_version_1_1_requires() -> None:
    """jsonfeed.org/version/1.1: version, title, items; in an item a unique id and content_html or content_text."""
    feed = json_feed()
    assert feed["version"] == "https://jsonfeed.org/version/1.1"
    assert feed["title"]
    assert feed["feed_url"].startswith("https://")
    ids = [item["id"] for item in feed["items"]]
    assert len(ids) == len(set(ids)) == 3
    for item in feed["items"]:
        assert isinstance(item["id"], str)
        assert isinstance(item["content_html"], str)
        for key in ("date_published", "date_modified"):
            assert key not in item or RFC_3339.fullmatch(item[key])
        assert all(isinstance(tag, str) for tag in item.get("tags", []))
    assert all(set(author) & {"name", "url", "avatar"} for author in feed["authors"])


def test_json_feed_has_no_key_that_the_specification_does_not_know() -> None:
    top = (
        "version title home_page_url feed_url description user_comment next_url icon favicon authors language "
        "expired hubs"
    )
    item = (
        "id url external_url title content_html content_text summary image banner_image date_published date_modified "
        "authors tags language attachments"
    )
    feed = json_feed()
    assert set(feed) <= {*top.split(), "items"}
    assert all(set(each) <= set(item.split()) for each in feed["items"])


def test_the_sitemap_keeps_the_limits_of_the_protocol() -> None:
    """sitemaps.org: 50,000 addresses and 52,428,800 bytes a file, addresses under 2,048 characters, one host."""
    assert MOST == 50_000
    document, robots = render_sitemap(PUBLICATION)
    assert len(document.content) <= 52_428_800
    root = fromstring(document.content)
    assert root.tag == f"{MAP}urlset"
    for entry in root:
        address = entry.findtext(f"{MAP}loc") or ""
        assert address.startswith(PUBLICATION.url)
        assert len(address) < 2048
        assert address.isascii()
        assert {each.tag for each in entry} <= {
            f"{MAP}{name}" for name in ("loc", "lastmod", "changefreq", "priority")
        }
        changed = entry.findtext(f"{MAP}lastmod")
        assert changed is None or re.fullmatch(r"\d{4}-\d\d-\d\d", changed)
    assert f"Sitemap: {PUBLICATION.url}sitemap.xml" in robots.content.decode().splitlines()


@pytest.mark.parametrize("text", ["PT45M", "PT1H30M", "P1DT2H", "P2W"])
def test_the_pattern_for_durations_knows_iso_8601(text: str) -> None:
    assert DURATION.fullmatch(text)


@pytest.mark.parametrize("text", ["", "P", "PT", "1H", "45 minutes", "PT1H 30M", "P1H"])
def test_the_pattern_for_durations_refuses_what_is_none(text: str) -> None:
    assert not DURATION.fullmatch(text)


@pytest.mark.parametrize(("minutes", "told"), [(45, "PT45M"), (90, "PT1H30M"), (60, "PT1H"), (1560, "PT26H")])
def test_times_are_iso_8601_durations(minutes: int, told: str) -> None:
    assert iso_duration(Fraction(minutes)) == told
    assert DURATION.fullmatch(told)


@pytest.mark.parametrize(("seconds", "told"), [(1120, "PT18M40S"), (3600, "PT1H"), (59, "PT59S")])
def test_lengths_of_films_are_iso_8601_durations(seconds: int, told: str) -> None:
    assert iso_seconds(seconds) == told
    assert DURATION.fullmatch(told)


def test_every_duration_in_structured_data_is_one() -> None:
    found = [
        node[key]
        for node in all_nodes()
        for key in ("prepTime", "cookTime", "totalTime", "duration")
        if key in node
    ]
    assert found
    assert all(DURATION.fullmatch(each) for each in found)


def test_steps_carry_no_number_and_no_heading_of_their_own() -> None:
    """Public documentation of rich results: no "Step 1." before a step's text."""
    texts = [node["text"] for node in all_nodes() if node["@type"] == "HowToStep"]
    assert not [text for text in texts if re.match(r"(?i)step\b|\d+[.)]", text)]


@pytest.mark.parametrize(("text", "count"), [("350°F", 6), ("½ cup", 6), ("⅓ cup", 7), ("cup", 3)])
def test_a_description_is_counted_in_bytes(text: str, count: int) -> None:
    """UTF-8 (RFC 3629): ° and ½ take two bytes, ⅓ three."""
    assert size(text) == count


@pytest.mark.parametrize("view", [BRAID, SUGAR, many()], ids=lambda view: view.name)
def test_a_description_keeps_to_its_place(view: Any) -> None:
    """At most 5,000 bytes and no angle bracket: public interface documentation of film platforms, from memory."""
    text = render_description(view, limit=5000).text
    assert len(text.encode("utf-8")) <= 5000
    assert "<" not in text
    assert ">" not in text


def test_chapters_begin_at_nothing_and_rise_by_ten_seconds() -> None:
    """Chapters under a film: the first at 0:00, three at least, ten seconds each (common practice)."""
    block = render_description(BRAID, limit=5000).text.split("CHAPTERS\n")[1].split("\n\n")[0]
    stamps = [line.split(" ")[0] for line in block.splitlines()]
    seconds = [int(stamp.split(":")[0]) * 60 + int(stamp.split(":")[1]) for stamp in stamps]
    assert stamps[0] == "0:00"
    assert len(stamps) >= 3
    assert all(after - before >= 10 for before, after in pairwise(seconds))
