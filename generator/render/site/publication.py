"""The whole publication as products."""

from collections.abc import Iterator

from generator.present.views import SiteView
from generator.render.output import Product
from generator.render.site.assets import asset_products
from generator.render.site.frame import frame_of
from generator.render.site.moved import moved_product
from generator.render.site.page import finished_page
from generator.render.site.pages import Structured, site_pages
from generator.render.site.pictures import Media, media_products


def _no_data(_: object) -> str:
    return ""


def render_site(site: SiteView, *, media: Media, structured: Structured = _no_data) -> Iterator[Product]:
    """Pages, shared files and pictures of the site, all under "site/".

    `media` reads a file of the content folder by the name a photograph's `source` has and raises OSError
    where it cannot; `structured` gives the JSON-LD of a view, or "".
    """
    frame = frame_of(site)
    yield from (finished_page(page, frame) for page in site_pages(site, structured=structured))
    yield from (moved_product(each, frame) for each in site.moved)
    yield from asset_products(site.theme)
    yield from media_products(site, media)
