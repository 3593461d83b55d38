"""The choices of a page: every string is on it already, each element leads to its own, and the page stays light."""

import gzip
import json
import re
from functools import cache, partial
from html import unescape
from typing import Any

import pytest

from generator.present.views import RecipeView
from generator.render.fonts import TYPEFACES, web_copy
from generator.render.site.assets import asset_products
from generator.render.site.frame import frame_of
from generator.render.site.page import finished_page, page_product
from generator.render.site.pages import recipe_page
from generator.render.structured_data.render import structured_data
from tests.demo import checked
from tests.render.site.reading import read_page

HEAVIEST = 90_000
"""Bytes of a bake's page with the styles and scripts it loads at first, without photographs and fonts."""

RECIPES = checked().site.recipes
MARKED = re.compile(
    r'<(?P<tag>[a-z]+)[^<>]* data-(?P<axis>[nh])="(?P<numbers>[0-9 ]+)">(?P<inside>.*?)</(?P=tag)>', re.S
)
by_name = pytest.mark.parametrize("recipe", RECIPES, ids=lambda recipe: recipe.name)


@cache
def _page(recipe: RecipeView) -> str:
    page = recipe_page(recipe, structured=lambda view: "")
    return page_product(page, frame_of(checked().site)).content.decode()


def _data(recipe: RecipeView) -> dict[str, Any]:
    block = _page(recipe).split('<script type="application/json" id="leaf-choices">')[1].split("</script>")[0]
    data: dict[str, Any] = json.loads(block)
    return data


def _marked(recipe: RecipeView) -> list[tuple[str, list[int], str]]:
    """Axis, numbers and text of every element that the script may change."""
    # The unit of an amount has an element of its own inside.
    page = re.sub(r'<span class="(?:unit|worded)">([^<]*)</span>', r"\1", _page(recipe))
    return [
        (found["axis"], [int(each) for each in found["numbers"].split()], unescape(found["inside"]))
        for found in MARKED.finditer(page)
    ]


def _told(data: dict[str, Any], column: int, size: int) -> str:
    numbers = data["columns"][column]
    word: str = data["words"][numbers[size if len(numbers) > 1 else 0]]
    return word


@by_name
def test_what_stands_on_the_page_is_the_recipe_as_written(recipe: RecipeView) -> None:
    data, marked = _data(recipe), _marked(recipe)
    assert data["first"] == "weight"
    told = [
        _told(data, numbers[0], 0) if axis == "n" else data["heats"][numbers[0]][0]
        for axis, numbers, _ in marked
    ]
    assert [text for _, _, text in marked] == told
    assert len(marked) > 20


@by_name
def test_every_place_that_changes_has_its_element(recipe: RecipeView) -> None:
    """A place of the view that no template asks for would stay as written while the rest is scaled."""
    sizes, marked = recipe.sizes, _marked(recipe)
    assert sizes is not None
    changing = [
        number
        for number, place in enumerate(sizes.places)
        if len(
            {words for offer in sizes.offers for words in (offer.by_weight[number], offer.by_volume[number])}
        )
        > 1
    ]
    sums = [part for part in recipe.parts if part.weight]
    assert all(part.title or len(sums) == 1 for part in sums)
    assert len([each for each in marked if each[0] == "n"]) == len(changing)
    assert len([each for each in marked if each[0] == "h"]) == len(sizes.heats)


@by_name
def test_every_column_has_every_size_and_every_word_is_used(recipe: RecipeView) -> None:
    data = _data(recipe)
    sizes = len(data["sizes"])
    assert {len(column) for column in data["columns"]} <= {1, sizes}
    assert {word for column in data["columns"] for word in column} == set(range(len(data["words"])))
    assert len(set(data["words"])) == len(data["words"])
    used = {column for axis, numbers, _ in _marked(recipe) if axis == "n" for column in numbers}
    assert used == set(range(len(data["columns"])))


def _first_load() -> dict[str, bytes]:
    """The heaviest bake's page as it is published, and every file of ours that it names."""
    site = checked().site
    structured = partial(structured_data, site=site)
    pages = (finished_page(recipe_page(each, structured=structured), frame_of(site)) for each in RECIPES)
    heaviest = max((page.content for page in pages), key=len)
    shared = {product.path.rsplit("/", 1)[1]: product.content for product in asset_products("docket")}
    named = re.findall(
        r'(?:<link rel=stylesheet|<script)[^>]* (?:href|src)="?[./]*leaf/([^" >]+)', heaviest.decode()
    )
    assert {"docket.css", "print.css", "ticks.js", "sizes.js"} <= set(named)
    return {"page": heaviest, **{name: shared[name] for name in named}}


def test_the_heaviest_page_is_light() -> None:
    assert sum(map(len, _first_load().values())) < HEAVIEST


def test_the_heaviest_page_is_light_with_its_faces_as_a_host_sends_it() -> None:
    """Text compressed as the plainest host does; the four faces with what nearly every page is written with."""
    text = sum(len(gzip.compress(content, 6)) for content in _first_load().values())
    assert text + sum(len(web_copy(face)) for face in TYPEFACES) < HEAVIEST


@by_name
def test_only_what_needs_the_script_is_hidden_without_it(recipe: RecipeView) -> None:
    page = read_page(_page(recipe).encode())
    hidden = {one.get("class") for _, one in page.elements if "hidden" in one}
    assert hidden == {"choices", "as-written"}


@by_name
def test_the_data_is_no_script_and_cannot_end_its_element(recipe: RecipeView) -> None:
    page = read_page(_page(recipe).encode())
    inline = [one.get("type") for one in page.all("script") if "src" not in one]
    assert inline == ["application/json"]
    assert "<" not in json.dumps(_data(recipe), ensure_ascii=False).replace("\\u003c", "")
