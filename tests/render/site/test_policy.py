"""The content policy of every page: nothing of another host, nothing inline but what it names by its hash."""

import re
from base64 import b64decode
from hashlib import sha256

import pytest

from generator.render.site.policy import policy_of
from generator.render.site.publication import render_site
from tests.render.site.reading import read_page
from tests.render.site.sample import media, sample_site

INLINE = re.compile(r"<(script|style)\b(?![^>]* src=)[^>]*>(.*?)</\1>", re.DOTALL)


@pytest.fixture(scope="module")
def pages() -> dict[str, str]:
    products = render_site(sample_site(), media=media, structured=lambda view: '{"@type": "Thing"}')
    return {each.path: each.content.decode() for each in products if each.path.endswith(".html")}


def directives(html: str) -> dict[str, list[str]]:
    policies = [
        one["content"]
        for one in read_page(html.encode()).all("meta")
        if one.get("http-equiv") == "Content-Security-Policy"
    ]
    assert len(policies) == 1
    parts = [each.split() for each in str(policies[0]).split(";")]
    return {name: sources for name, *sources in parts}


def test_every_page_has_a_policy_that_allows_only_the_site_itself(pages: dict[str, str]) -> None:
    assert {"site/index.html", "site/404.html"} <= set(pages)
    for path, html in pages.items():
        told = directives(html)
        hashes = [each for sources in told.values() for each in sources if each.startswith("'sha256-")]
        others = {each for sources in told.values() for each in sources} - set(hashes)
        assert (path, others - {"'self'", "'none'", "data:"}) == (path, set())
        assert (told["default-src"], told["base-uri"]) == (["'none'"], ["'none'"])
        assert "data:" not in told["script-src"] + told["style-src"]


def test_what_stands_in_a_page_is_named_by_its_hash_and_nothing_else_is(pages: dict[str, str]) -> None:
    """Content Security Policy Level 3, 2.3.1: base64 of the SHA-256 of the element's text."""
    for path, html in pages.items():
        inline = [(found[1], sha256(found[2].encode()).digest()) for found in INLINE.finditer(html)]
        told = directives(html)
        named = [
            (kind, b64decode(each[8:-1]))
            for kind in ("script", "style")
            for each in told[f"{kind}-src"]
            if each != "'self'"
        ]
        assert (path, sorted(named)) == (path, sorted(inline))


def test_only_a_page_with_a_picture_in_its_address_may_have_one() -> None:
    assert "img-src 'self' data:" in policy_of('<link rel="icon" href="data:,">')
    assert "data:" not in policy_of('<link rel="icon" href="leaf/icon.svg"><p>href=data</p>')
