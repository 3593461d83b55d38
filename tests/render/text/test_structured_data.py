"""JSON-LD: what is known is said, what is not known is absent."""

import json
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from generator.render.structured_data.recipe import recipe_data
from generator.render.structured_data.render import structured_data
from tests.render.text.sample import ABOUT, BRAID, FILM, POST, PUBLICATION, SITE, SUGAR, film


def node(view: object, kind: str) -> dict[str, Any]:
    graph: list[dict[str, Any]] = json.loads(structured_data(view, PUBLICATION))["@graph"]
    return next(each for each in graph if each["@type"] == kind)


def keys(value: Any) -> Iterator[str]:
    if isinstance(value, dict):
        yield from value
    for inner in value.values() if isinstance(value, dict) else value if isinstance(value, list) else ():
        yield from keys(inner)


def test_a_recipe_says_what_is_known() -> None:
    recipe = node(BRAID, "Recipe")
    told = {
        key: recipe[key]
        for key in ("name", "image", "keywords", "recipeYield", "prepTime", "cookTime", "totalTime")
    }
    assert told == {
        "name": "Plum braid",
        "image": [f"{SITE}media/plum-braid.jpg"],
        "keywords": "plum time",
        "recipeYield": ["14", "1 loaf", "14 slices"],
        "prepTime": "PT2H",
        "cookTime": "PT20M",
        "totalTime": "PT2H20M",
    }
    assert (recipe["datePublished"], recipe["dateModified"]) == ("2026-09-12", "2026-09-20")
    assert recipe["recipeIngredient"] == list(BRAID.ingredient_lines)


def test_a_recipe_leaves_out_what_is_not_known() -> None:
    recipe = node(SUGAR, "Recipe")
    absent = {
        "image",
        "description",
        "keywords",
        "recipeYield",
        "prepTime",
        "cookTime",
        "totalTime",
        "video",
        "encoding",
    }
    assert not absent & set(recipe)


def test_nothing_is_ever_claimed_of_diet_rating_or_nutrition() -> None:
    for view in (BRAID, SUGAR):
        said = set(keys(json.loads(recipe_data(view, PUBLICATION))))
        assert not said & {
            "suitableForDiet",
            "aggregateRating",
            "review",
            "nutrition",
            "recipeCuisine",
        }


def test_each_way_is_a_section_that_says_that_one_is_enough_and_the_common_part_follows() -> None:
    sections = node(BRAID, "Recipe")["recipeInstructions"]
    choice = "One of 2 ways to do the same: choose one."
    assert [(each["name"], each.get("description")) for each in sections] == [
        ("Dough cycle", choice),
        ("By hand", choice),
        ("Shape", None),
        ("Bake", None),
    ]
    assert sections[3]["itemListElement"] == [
        {
            "@type": "HowToStep",
            "text": "Bake 20\u00a0min at 350\u00a0°F (175\u00a0°C), to 88\u00a0°C (190\u00a0°F).",
            "url": f"{BRAID.url}#step-3-2-1",
        },
        {
            "@type": "HowToStep",
            "text": "Caution: The syrup is hotter than it looks.",
            "url": f"{BRAID.url}#step-3-2-2",
        },
    ]


def test_steps_without_a_heading_stand_by_themselves() -> None:
    assert [each["@type"] for each in node(SUGAR, "Recipe")["recipeInstructions"]] == ["HowToStep"]


def test_a_film_has_its_chapters_as_clips() -> None:
    video = node(BRAID, "Recipe")["video"]
    assert (video["uploadDate"], video["duration"]) == (FILM.published, "PT18M40S")
    assert video["thumbnailUrl"] == [f"{SITE}media/plum-braid.jpg"]
    assert [(clip["startOffset"], clip["endOffset"], clip["url"]) for clip in video["hasPart"]] == [
        (0, 85, "https://video.example/w/plum-braid?t=0"),
        (85, 1070, "https://video.example/w/plum-braid?t=85"),
        (1070, 1120, "https://video.example/w/plum-braid?t=1070"),
    ]


def test_a_film_without_its_moment_or_a_picture_is_not_told() -> None:
    undated = replace(BRAID, videos=(replace(FILM, published=""),))
    assert "video" not in node(undated, "Recipe")
    assert "video" not in node(replace(BRAID, photo=None), "Recipe")


def test_no_two_clips_share_a_start_and_an_unknown_end_is_absent() -> None:
    twice = film("x", ("0:00", 0, "One"), ("0:00", 0, "Two"))
    last = replace(twice.chapters[1], seconds=9, end_seconds=None)
    doubled = replace(twice, chapters=(*twice.chapters, last))
    clips = node(replace(BRAID, videos=(doubled,)), "Recipe")["video"]["hasPart"]
    assert [clip["name"] for clip in clips] == ["One", "Two"]
    assert [clip["startOffset"] for clip in clips] == [0, 9]
    assert "endOffset" not in clips[1]


def test_posts_pages_and_the_home_page_have_their_kinds() -> None:
    assert node(POST, "BlogPosting")["headline"] == "Wet plums"
    assert "datePublished" not in node(ABOUT, "WebPage")
    assert node(PUBLICATION, "WebSite")["name"] == "Plums & Tins"
    assert structured_data(PUBLICATION.kinds[0], PUBLICATION) == ""


def test_breadcrumbs_lead_from_the_home_page() -> None:
    trail = node(POST, "BreadcrumbList")["itemListElement"]
    assert [(each["position"], each["name"], each.get("item")) for each in trail] == [
        (1, "Plums & Tins", {"@id": SITE}),
        (2, "Journal", {"@id": f"{SITE}journal/"}),
        (3, "Wet plums", None),
    ]


def test_no_text_can_end_the_script_element_it_stands_in() -> None:
    odd = replace(BRAID, title="</script><!-- x", lead="</SCRIPT >")
    text = recipe_data(odd, PUBLICATION)
    assert "</" not in text
    assert "<!--" not in text
    assert json.loads(text)["@graph"][0]["name"] == "</script><!-- x"


def test_letters_stay_letters() -> None:
    assert "3⅓ cups" in recipe_data(BRAID, PUBLICATION)
