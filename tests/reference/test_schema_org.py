"""What the pages tell programs: the whole vocabulary of schema.org, and what readers of it ask for.

The vocabulary is that of the package schema-dts, which is generated from schema.org's own definitions; what readers
require and recommend is the public documentation of rich results.
"""

import json
from collections.abc import Callable, Iterator
from datetime import datetime
from functools import cache, partial
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest

from generator.present.views import RecipeView
from generator.render.site.page import Page
from generator.render.site.pages import site_pages
from generator.render.structured_data.render import structured_data
from tests.demo import checked
from tests.reference.vocabulary import vocabulary
from tests.render.text import sample

Node = dict[str, Any]


@cache
def told() -> tuple[tuple[str, Node], ...]:
    """Every node at the top of every page of the demo and of the sample, with the page's address."""
    pages: list[Page] = []
    for site in (checked().site, sample.PUBLICATION):
        pages += site_pages(site, structured=partial(structured_data, site=site))
    graphs = [(page.path, json.loads(page.structured)) for page in pages if page.structured]
    assert all(graph["@context"] == "https://schema.org" for _, graph in graphs)
    return tuple((path, node) for path, graph in graphs for node in graph["@graph"])


def inside(value: object) -> Iterator[Node]:
    """Every node of a kind of its own, at any depth."""
    if isinstance(value, dict):
        if "@type" in value:
            yield value
        for each in value.values():
            yield from inside(each)
    elif isinstance(value, list):
        for each in value:
            yield from inside(each)


def of_kind(kind: str) -> list[Node]:
    return [node for _, top in told() for node in inside(top) if node["@type"] == kind]


def test_the_vocabulary_is_whole() -> None:
    """schema.org: a Recipe has 10 properties of its own, 9 of HowTo, 116 of CreativeWork and 13 of Thing."""
    words = vocabulary()
    assert [len(words.ranges[each]) for each in words.above("Recipe")] == [10, 9, 116, 13]
    assert len(words.parents) > 900
    assert ("HowTo", "steps") in words.superseded
    assert "https://schema.org/VeganDiet" in words.members["RestrictedDiet"]


@pytest.mark.parametrize(
    ("node", "said"),
    [
        ({"@type": "Receipt"}, "there is no type Receipt"),
        ({"@type": "Recipe", "recipeIngredients": ["salt"]}, "Recipe has no property recipeIngredients"),
        ({"@type": "Person", "recipeYield": "1"}, "Person has no property recipeYield"),
        ({"@type": "Recipe", "ingredients": "salt"}, "ingredients is superseded"),
        ({"@type": "Recipe", "cookTime": "45 minutes"}, "'45 minutes' is none of Duration"),
        ({"@type": "Recipe", "author": "Somebody"}, "'Somebody' is none of Organization, Person"),
        ({"@type": "Recipe", "author": {"@type": "Clip"}}, "is none of Organization, Person"),
        ({"@type": "Recipe", "datePublished": "2 May 2026"}, "'2 May 2026' is none of Date, DateTime"),
        ({"@type": "VideoObject", "uploadDate": "2026-05-02T10:00"}, "is none of Date, DateTime"),
        ({"@type": "Recipe", "url": "recipes/loaf/"}, "'recipes/loaf/' is none of URL"),
        ({"@type": "Recipe", "suitableForDiet": "FunDiet"}, "'FunDiet' is none of Diet, RestrictedDiet"),
        ({"@type": "Clip", "startOffset": "a while"}, "'a while' is none of HyperTocEntry, Number"),
        ({"@type": "ListItem", "position": 1.5}, "1.5 is none of Integer, Text"),
        ({"@type": "ListItem", "item": "https://a.example/"}, "is none of Thing, IdReference"),
        ({"@type": "Recipe", "name": ""}, "'' is none of Text"),
    ],
)
def test_the_vocabulary_finds_faults(node: Node, said: str) -> None:
    assert any(said in each for each in vocabulary().faults(node)), list(vocabulary().faults(node))


def test_every_page_keeps_to_the_vocabulary() -> None:
    kinds = {node["@type"] for _, top in told() for node in inside(top)}
    assert kinds >= {"Recipe", "VideoObject", "Clip", "BreadcrumbList", "BlogPosting", "WebPage", "WebSite"}
    assert [fault for path, node in told() for fault in vocabulary().faults(node, where=path)] == []


# What readers require, and what they recommend; "" is a property that is always known. A recommendation is kept where
# the recipe's file says what it asks for.
REQUIRED = {
    "Recipe": "name",
    "HowToSection": "name itemListElement",
    "HowToStep": "text",
    "VideoObject": "name thumbnailUrl uploadDate",
    "Clip": "name startOffset url",
    "BreadcrumbList": "itemListElement",
    "ListItem": "position name",
    "BlogPosting": "headline author datePublished",
}
Known = Callable[[RecipeView], bool]
ALWAYS: Known = lambda view: True  # noqa: E731
RECOMMENDED: dict[str, Known] = {
    "image": lambda view: view.photo is not None,
    "author": ALWAYS,
    "datePublished": ALWAYS,
    "dateModified": lambda view: view.updated is not None,
    "description": lambda view: bool(view.lead),
    "keywords": lambda view: bool(view.occasions),
    "recipeCategory": lambda view: bool(view.kinds),
    "recipeIngredient": ALWAYS,
    "recipeInstructions": lambda view: bool(view.ways or view.common),
    "recipeYield": lambda view: bool(view.makes or view.portions),
    "prepTime": lambda view: bool(view.iso_times[0]),
    "cookTime": lambda view: bool(view.iso_times[1]),
    "totalTime": lambda view: bool(view.iso_times[2]),
    "video": lambda view: bool(view.photo and any(each.published for each in view.videos)),
}
# Recommended too, and nobody ever told us: a rating, nutrition, a cuisine, a diet.
UNKNOWN = ("aggregateRating", "review", "nutrition", "recipeCuisine", "suitableForDiet")


@pytest.mark.parametrize("kind", REQUIRED)
def test_what_readers_require_is_there(kind: str) -> None:
    found = of_kind(kind)
    assert found
    assert [node for node in found if not set(REQUIRED[kind].split()) <= set(node)] == []


def test_a_recipe_says_all_that_is_recommended_and_known_and_nothing_made_up() -> None:
    views = {view.url: view for view in (*checked().site.recipes, *sample.PUBLICATION.recipes)}
    recipes = of_kind("Recipe")
    assert {node["url"] for node in recipes} == set(views)
    for node in recipes:
        meant = {key for key, known in RECOMMENDED.items() if known(views[node["url"]])}
        assert set(node) & set(RECOMMENDED) == meant, node["url"]
        assert set(node).isdisjoint(UNKNOWN), node["url"]


def test_words_of_the_category_are_not_repeated_as_keywords() -> None:
    """Public documentation of rich results: keywords are other terms than category and cuisine."""
    for node in of_kind("Recipe"):
        words = set(str(node.get("keywords", "")).split(", "))
        assert words.isdisjoint(node.get("recipeCategory", ())), node["url"]


def test_a_film_says_when_it_went_up_with_its_zone_and_how_long_it_is() -> None:
    for node in of_kind("VideoObject"):
        assert datetime.fromisoformat(node["uploadDate"]).tzinfo is not None
        assert {"description", "duration", "url"} <= set(node)
        assert set(node).isdisjoint({"contentUrl", "embedUrl", "interactionStatistic", "expires"})


def test_clips_lie_in_their_film_and_lead_to_their_start() -> None:
    """Public documentation: the film's own address with the time, and no two with one start."""
    clips = 0
    for film in of_kind("VideoObject"):
        parts = film.get("hasPart", [])
        starts = [each["startOffset"] for each in parts]
        assert len(starts) == len(set(starts))
        for each in parts:
            clips += 1
            address, whole = urlsplit(each["url"]), urlsplit(film["url"])
            assert address[:3] == whole[:3]
            assert parse_qs(address.query)["t"] == [str(each["startOffset"])]
            assert each["endOffset"] > each["startOffset"]
    assert clips > 40


def test_breadcrumbs_count_from_one_and_only_the_page_itself_has_no_address() -> None:
    for trail in of_kind("BreadcrumbList"):
        steps = trail["itemListElement"]
        assert [each["position"] for each in steps] == list(range(1, len(steps) + 1))
        assert ["item" in each for each in steps] == [True] * (len(steps) - 1) + [False]
