"""The feeds: the same entries in both, absolute addresses only, corrections said."""

import json
import re
from dataclasses import replace
from typing import Any
from xml.etree.ElementTree import Element, fromstring

import pytest

from generator.present.views import SiteView
from generator.render.feeds.places import absolute, uri
from generator.render.feeds.render import render_feeds
from tests.render.text.sample import BRAID, POST, PUBLICATION, SITE, SUGAR

ATOM = "{http://www.w3.org/2005/Atom}"
ADDRESS = re.compile(r'(?:href|src)="([^"]*)"')


def feeds(site: SiteView) -> tuple[Element, dict[str, Any]]:
    xml, text = render_feeds(site)
    assert (xml.path, text.path) == ("site/feed.xml", "site/feed.json")
    return fromstring(xml.content), json.loads(text.content)


def entry_text(entry: Element, name: str) -> str:
    return entry.findtext(ATOM + name) or ""


def test_both_feeds_hold_the_same_entries_the_latest_change_first() -> None:
    feed, items = feeds(PUBLICATION)
    addresses = [BRAID.url, POST.url, SUGAR.url]
    assert [entry_text(entry, "id") for entry in feed.iter(ATOM + "entry")] == addresses
    assert [item["id"] for item in items["items"]] == addresses
    assert [entry_text(entry, "content") for entry in feed.iter(ATOM + "entry")] == [
        item["content_html"] for item in items["items"]
    ]


def test_entries_do_not_depend_on_the_order_they_came_in() -> None:
    turned = replace(PUBLICATION, recipes=PUBLICATION.recipes[::-1])
    assert tuple(render_feeds(turned)) == tuple(render_feeds(PUBLICATION))


def test_a_corrected_bake_is_updated_and_says_so() -> None:
    feed, items = feeds(PUBLICATION)
    entry = next(feed.iter(ATOM + "entry"))
    told = "Corrected September 20, 2026: dough/bread flour 400 g → 430 g, because too wet twice."
    assert entry_text(entry, "published") == items["items"][0]["date_published"] == "2026-09-12T00:00:00Z"
    assert entry_text(entry, "updated") == items["items"][0]["date_modified"] == "2026-09-20T00:00:00Z"
    assert entry_text(entry, "summary").startswith(told)
    assert items["items"][0]["content_html"].startswith(
        "<ul>\n<li><strong>Corrected September 20, 2026:</strong> "
        "dough/bread flour 400\u00a0g → 430\u00a0g, because too wet twice. "
        "The film still shows 400\u00a0g at 1:25.</li>"
    )


def test_a_bake_that_never_changed_has_no_date_of_change() -> None:
    _, items = feeds(PUBLICATION)
    assert "date_modified" not in items["items"][2]


def test_every_address_in_a_text_is_absolute() -> None:
    _, items = feeds(PUBLICATION)
    found = [address for item in items["items"] for address in ADDRESS.findall(item["content_html"])]
    assert [address for address in found if not address.startswith("https://")] == []
    for expected in (
        f"{SITE}journal/wet-plums/",
        f"{SITE}recipes/plum-braid/",
        f"{SITE}recipes/plum-braid/#method",
        f"{SITE}about/",
        f"{SITE}media/shelf-png.jpg",
    ):
        assert expected in found


def test_the_text_of_a_bake_is_whole() -> None:
    _, items = feeds(PUBLICATION)
    html = items["items"][0]["content_html"].replace("\u00a0", " ")
    for words in (
        "430 g (3⅓ cups) bread flour",
        "a pinch of cardamom",
        "<p>Choose one of 2 ways.</p>",
        "<p>The syrup is hotter than it looks.</p>",
        "Do not taste raw dough.",
        "This list is not finished: the pack of cardamom has not been read.",
        "<b>wheat, milk, egg</b>",
        "May contain: sesame.",
        "walnuts",
        "3 days in a paper bag",
        "Keep it at &lt; 20 °C.",
        "1:25 Weighing out",
        "A cookery class",
    ):
        assert words in html
    assert html.index(BRAID.paid_words) < html.index("shop.example")
    assert 'Paid link: <a href="https://shop.example/tin?a=1&amp;b=%3C2%3E">Loaf tin</a>' in html


def test_a_publication_without_anything_is_still_a_feed() -> None:
    feed, items = feeds(replace(PUBLICATION, recipes=(), journal=(), lead=""))
    assert list(feed.iter(ATOM + "entry")) == []
    assert items["items"] == []
    assert "description" not in items


def test_what_xml_cannot_hold_is_left_out() -> None:
    odd = replace(SUGAR, title="Sugar\x0c & spice\ufffe")
    feed, _ = feeds(replace(PUBLICATION, recipes=(odd,), journal=()))
    assert entry_text(next(feed.iter(ATOM + "entry")), "title") == "Sugar & spice"


@pytest.mark.parametrize(
    ("address", "told"),
    [
        ("recipes/plum-cake.md", "recipes/plum-cake/"),
        ("standing/about.md#me", "about/#me"),
        ("/recipes/plum-cake", "recipes/plum-cake/"),
        ("../../recipes/plum-cake/?a=1", "recipes/plum-cake/?a=1"),
        ("media/two words.pdf", "media/two%20words.pdf"),
        ("kinds/crème/", "kinds/cr%C3%A8me/"),
    ],
)
def test_places_of_the_publication_become_absolute(address: str, told: str) -> None:
    assert absolute(address, SITE) == SITE + told


def test_what_is_encoded_already_stays() -> None:
    assert uri("https://a.example/x%20y?q=1&r=a b#é") == "https://a.example/x%20y?q=1&r=a%20b#%C3%A9"
    assert uri("mailto:me@a.example") == "mailto:me@a.example"
