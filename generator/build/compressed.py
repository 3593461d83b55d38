"""Copies of the texts of the site for servers that send a ready `.gz` to browsers that take it."""

import gzip
from collections.abc import Iterable, Iterator

from generator.render.output import Product

ENDING = ".gz"
_TEXTS = (".html", ".css", ".js", ".json", ".xml", ".svg", ".txt")


def with_copies(products: Iterable[Product]) -> Iterator[Product]:
    """The products, and after each text of the site its copy. The same text gives the same bytes at any time."""
    for each in products:
        yield each
        if each.path.startswith("site/") and each.path.endswith(_TEXTS):
            yield Product(path=each.path + ENDING, content=gzip.compress(each.content, 9, mtime=0))
