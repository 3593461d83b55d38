"""Where a search engine finds every page: `sitemap.xml` by the sitemaps protocol, announced in `robots.txt`."""

from collections.abc import Iterable, Iterator
from datetime import date
from urllib.parse import quote
from xml.etree.ElementTree import Element, SubElement, indent, tostring

from generator.present.views import KindView, SiteView
from generator.render.output import Product

NAMESPACE = "http://www.sitemaps.org/schemas/sitemap/0.9"
# Addresses in one file, by the protocol; more go into several files with an index.
MOST = 50_000

Place = tuple[str, date | None]


def render_sitemap(view: SiteView) -> Iterator[Product]:
    """`site/sitemap.xml`, further files where one is too small, and `site/robots.txt`."""
    places = tuple(_places(view))
    files = [places[start : start + MOST] for start in range(0, len(places), MOST)]
    if len(files) == 1:
        yield Product(path="site/sitemap.xml", content=_document("urlset", "url", places, view.url))
    else:
        names = [(f"sitemap-{number}.xml", None) for number in range(1, len(files) + 1)]
        yield Product(path="site/sitemap.xml", content=_document("sitemapindex", "sitemap", names, view.url))
        for (name, _), some in zip(names, files, strict=True):
            yield Product(path=f"site/{name}", content=_document("urlset", "url", some, view.url))
    robots = f"User-agent: *\nAllow: /\n\nSitemap: {_address('sitemap.xml', view.url)}\n"
    yield Product(path="site/robots.txt", content=robots.encode())


def _places(view: SiteView) -> Iterator[Place]:
    """Every page with the day of its last change, None where that is not known. The page 404 is none to find."""
    bakes = {recipe.path: _newest((recipe.published, recipe.updated)) for recipe in view.recipes}
    posts = {post.path: post.published for post in view.journal}
    everything = _newest((*bakes.values(), *posts.values()))
    yield "", everything
    yield "recipes/", _newest(bakes.values())
    yield from bakes.items()
    yield "kinds/", everything
    yield from ((kind.path, _kind_changed(kind, bakes, posts)) for kind in view.kinds)
    yield "journal/", _newest(posts.values())
    yield from posts.items()
    yield from ((page.path, page.published) for page in view.standing)
    yield from ((each.path, _newest(bakes.values())) for each in view.shelves)
    if view.search is not None:
        yield "search/", everything
    if view.allergens is not None:
        yield "allergens/", _newest(bakes.values())
    yield "corrections/", _newest(correction.on for correction in view.corrections)


def _kind_changed(
    kind: KindView, bakes: dict[str, date | None], posts: dict[str, date | None]
) -> date | None:
    shown = (*(bakes.get(bake.path, bake.published) for bake in kind.bakes),)
    return _newest((*shown, *(posts.get(post.path, post.published) for post in kind.articles)))


def _newest(days: Iterable[date | None]) -> date | None:
    return max((day for day in days if day is not None), default=None)


def _document(root: str, entry: str, places: Iterable[Place], site: str) -> bytes:
    document = Element(root, xmlns=NAMESPACE)
    for path, changed in places:
        element = SubElement(document, entry)
        SubElement(element, "loc").text = _address(path, site)
        if changed is not None:
            SubElement(element, "lastmod").text = changed.isoformat()
    indent(document, space=" ")
    return bytes(tostring(document, encoding="utf-8", xml_declaration=True)) + b"\n"


def _address(path: str, site: str) -> str:
    return site + quote(path, safe="/%")
