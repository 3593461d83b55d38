"""The sitemap and robots.txt."""

from dataclasses import replace
from xml.etree.ElementTree import fromstring

import pytest

from generator.present.views import KindView
from generator.render import sitemap
from generator.render.sitemap import render_sitemap
from tests.render.text.sample import PUBLICATION, SITE

MAP = "{http://www.sitemaps.org/schemas/sitemap/0.9}"


def entries(content: bytes) -> list[tuple[str, str]]:
    return [
        ((each.findtext(f"{MAP}loc") or ""), each.findtext(f"{MAP}lastmod") or "")
        for each in fromstring(content)
    ]


def test_every_page_stands_there_with_the_day_of_its_own_change() -> None:
    document, robots = render_sitemap(PUBLICATION)
    assert document.path == "site/sitemap.xml"
    assert [(address.removeprefix(SITE), day) for address, day in entries(document.content)] == [
        ("", "2026-09-20"),
        ("recipes/", "2026-09-20"),
        ("recipes/plum-braid/", "2026-09-20"),
        ("recipes/vanilla-sugar/", "2026-09-01"),
        ("kinds/", "2026-09-20"),
        ("kinds/bread/", "2026-09-20"),
        ("journal/", "2026-09-15"),
        ("journal/wet-plums/", "2026-09-15"),
        ("about/", ""),
        ("corrections/", "2026-09-20"),
    ]
    assert robots.path == "site/robots.txt"
    assert robots.content == f"User-agent: *\nAllow: /\n\nSitemap: {SITE}sitemap.xml\n".encode()


def test_letters_that_an_address_may_not_hold_are_encoded() -> None:
    kind = KindView(title="Crème", path="kinds/crème/", bakes=(), articles=())
    document, _ = render_sitemap(replace(PUBLICATION, kinds=(kind,)))
    assert (f"{SITE}kinds/cr%C3%A8me/", "") in entries(document.content)


def test_more_addresses_than_a_file_may_hold_go_into_several(monkeypatch: pytest.MonkeyPatch) -> None:
    whole = entries(next(iter(render_sitemap(PUBLICATION))).content)
    monkeypatch.setattr(sitemap, "MOST", 4)
    index, *files, _ = render_sitemap(PUBLICATION)
    assert [address for address, _ in entries(index.content)] == [
        f"{SITE}sitemap-{number}.xml" for number in (1, 2, 3)
    ]
    assert [file.path for file in files] == [f"site/sitemap-{number}.xml" for number in (1, 2, 3)]
    assert [entry for file in files for entry in entries(file.content)] == whole
