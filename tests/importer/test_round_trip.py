"""What we print of a recipe, brought back in, is the same formula."""

from collections.abc import Mapping
from functools import cache, partial
from itertools import takewhile

import pytest

from generator.pipeline import describe_text
from generator.render.site.publication import render_site
from generator.render.structured_data.render import structured_data
from tests.demo import checked
from tests.importer.round_trip import brought_back, differences

NAMES = tuple(sorted(checked().setting.book))
FEW = ("candied-orange-peel", "cardamom-orange-braid", "crackle-apple-cake")


@cache
def pages() -> Mapping[str, str]:
    """The pages of the demo's recipes, as they are made; pages come before all that they load."""
    site = checked().site
    made = render_site(site, media=checked().media, structured=partial(structured_data, site=site))
    only = takewhile(lambda each: each.path.endswith(".html"), made)
    return {each.path: each.content.decode() for each in only}


def page_of(name: str) -> str | None:
    return pages().get(f"site/recipes/{name}/index.html")


@pytest.mark.parametrize("name", FEW)
def test_a_description_comes_back_as_its_formula(name: str) -> None:
    text = describe_text(checked(), name)
    assert text
    assert differences(name, brought_back("description.txt", text)) == []


@pytest.mark.long
@pytest.mark.parametrize("name", NAMES)
def test_every_description_comes_back_as_its_formula(name: str) -> None:
    assert differences(name, brought_back("description.txt", describe_text(checked(), name))) == []


@pytest.mark.parametrize("name", FEW)
def test_a_page_comes_back_as_its_formula(name: str) -> None:
    page = page_of(name)
    assert page is not None
    assert differences(name, brought_back("index.html", page)) == []


@pytest.mark.long
@pytest.mark.parametrize("name", NAMES)
def test_every_page_comes_back_as_its_formula(name: str) -> None:
    """Bakes that are not published have no page; every other has one."""
    page = page_of(name)
    assert (page is None) is (name not in {each.name for each in checked().site.recipes})
    if page is not None:
        assert differences(name, brought_back("index.html", page)) == []
