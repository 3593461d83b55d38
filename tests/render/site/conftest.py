"""The sample publication, rendered once."""

import pytest

from generator.render.site.publication import render_site
from tests.render.site.sample import media, sample_site


@pytest.fixture(scope="session")
def products() -> dict[str, bytes]:
    """Every file of the sample by its path."""
    made = render_site(sample_site(), media=media, structured=lambda view: '{"a": "</script><!--"}')
    return {product.path: product.content for product in made}


@pytest.fixture(scope="session")
def pages(products: dict[str, bytes]) -> dict[str, bytes]:
    return {path: content for path, content in products.items() if path.endswith(".html")}
