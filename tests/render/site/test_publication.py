"""The finished publication holds together and says what its views say."""

import itertools
import posixpath
import re
from collections import Counter
from dataclasses import replace
from urllib.parse import unquote, urlsplit

import pytest

from generator.present.views import RecipeView
from generator.render.site.frame import frame_of
from generator.render.site.page import finished_page, page_product
from generator.render.site.pages import recipe_page
from generator.render.site.publication import render_site
from generator.render.template_fault import TemplateFault
from generator.render.theme import templates
from tests.render.site.reading import read_page
from tests.render.site.sample import braid, long_bake, media, peel, sample_site

BRAID = "site/recipes/honey-oat-braid/index.html"
# Made by other renderers, beside the pages.
ELSEWHERE = re.compile(r"(feed\.xml|feed\.json|card-[0-9a-z]+\.pdf)$")


def rendered(recipe: RecipeView) -> bytes:
    page = recipe_page(recipe, structured=lambda view: "")
    return page_product(page, frame_of(sample_site())).content


def test_every_page_of_the_publication_is_there(pages: dict[str, bytes]) -> None:
    assert sorted(pages) == [
        "site/404.html",
        "site/about/index.html",
        "site/corrections/index.html",
        "site/index.html",
        "site/journal/damp-days/index.html",
        "site/journal/index.html",
        "site/kinds/bread/index.html",
        "site/kinds/enriched/index.html",
        "site/kinds/index.html",
        "site/recipes/candied-lemon-peel/index.html",
        "site/recipes/honey-oat-braid/index.html",
        "site/recipes/index.html",
        "site/recipes/long-bake/index.html",
    ]


def addresses(content: bytes) -> list[str]:
    """Every address in a page that the browser loads or a reader follows, but not what it says of itself."""
    page = read_page(content)
    links = [one["href"] for one in page.all("a")]
    loaded = [one["href"] for one in page.all("link") if one.get("rel") != "canonical"]
    shown = [one["src"] for one in page.all("img", "script") if "src" in one]
    choices = [
        part.split()[0]
        for one in page.all("img", "source")
        for part in one.get("srcset", "").split(",")
        if part
    ]
    return [*links, *loaded, *shown, *choices]


def test_every_local_address_leads_to_a_file(products: dict[str, bytes], pages: dict[str, bytes]) -> None:
    lost = []
    for path, content in pages.items():
        for address in addresses(content):
            parts = urlsplit(address)
            if parts.scheme or not parts.path:
                continue
            target = posixpath.normpath(posixpath.join(posixpath.dirname(path), unquote(parts.path)))
            if target not in products and not ELSEWHERE.search(target):
                lost.append((path, address))
    assert lost == []


def test_every_address_inside_a_page_has_its_element(pages: dict[str, bytes]) -> None:
    for path, content in pages.items():
        page = read_page(content)
        named = {attributes["id"] for _, attributes in page.elements if "id" in attributes}
        wanted = {one["href"][1:] for one in page.all("a") if one["href"].startswith("#")}
        assert (path, wanted - named) == (path, set())


def test_no_address_is_absolute_but_those_that_leave(pages: dict[str, bytes]) -> None:
    inside = [
        (path, address)
        for path, content in pages.items()
        if path != "site/404.html"
        for address in addresses(content)
        if address.startswith(("/", sample_site().url))
    ]
    assert inside == []


def test_the_page_for_lost_readers_works_at_any_depth(pages: dict[str, bytes]) -> None:
    assert all(urlsplit(address).scheme in ("https", "data") for address in addresses(pages["site/404.html"]))


def test_names_of_elements_are_unique(pages: dict[str, bytes]) -> None:
    for path, content in pages.items():
        counted = Counter(one["id"] for _, one in read_page(content).elements if "id" in one)
        assert (path, [name for name, times in counted.items() if times > 1]) == (path, [])


def test_headings_are_in_order(pages: dict[str, bytes]) -> None:
    for path, content in pages.items():
        levels = [int(name[1]) for name, _ in read_page(content).elements if re.fullmatch(r"h[1-6]", name)]
        assert (path, levels[0], levels.count(1)) == (path, 1, 1)
        assert [pair for pair in itertools.pairwise(levels) if pair[1] > pair[0] + 1] == []


def test_the_content_policy_has_nothing_to_refuse(pages: dict[str, bytes]) -> None:
    for path, content in pages.items():
        page = read_page(content)
        assert [
            one for _, one in page.elements if "style" in one or any(name.startswith("on") for name in one)
        ] == []
        inline = [one for one in page.all("script") if "src" not in one]
        assert (path, [one for one in inline if one.get("type") != "application/ld+json"]) == (path, [])
        assert [one for one in page.all("meta") if one.get("http-equiv") == "Content-Security-Policy"]


def test_structured_data_cannot_end_its_element(pages: dict[str, bytes]) -> None:
    assert b'{"a": "\\u003c/script>\\u003c!--"}</script>' in pages[BRAID]


def test_every_amount_of_the_view_is_on_the_page(pages: dict[str, bytes]) -> None:
    text = read_page(pages[BRAID]).text
    shown = [
        amount
        for part in braid().parts
        for line in part.lines
        for amount in (line.amount.first, line.amount.second, line.percent)
        if amount
    ]
    assert [amount for amount in shown if amount not in text] == []


def test_a_line_reads_weight_first_then_volume_then_item(pages: dict[str, bytes]) -> None:
    assert (
        "430 g 3⅓ cups bread flour the maker's cup is spooned and levelled 100 %"
        in read_page(pages[BRAID]).text
    )


def test_a_step_reads_as_its_plain_words_do(pages: dict[str, bytes]) -> None:
    text = read_page(pages[BRAID]).text
    ways = (*braid().ways, braid().common)
    steps = [block for way in ways if way for section in way.sections for block in section.blocks]
    plain = [block.words.plain for block in steps if block.kind == "step"]
    assert len(plain) == 5
    assert [words for words in plain if words not in text] == []


def test_both_ways_are_shown_and_linked_without_scripts(pages: dict[str, bytes]) -> None:
    page = read_page(pages[BRAID])
    assert {"way-dough-cycle", "way-by-hand"} <= {one.get("id") for one in page.all("section")}
    assert {"#way-dough-cycle", "#way-by-hand"} <= {one["href"] for one in page.all("a")}
    assert not [one for _, one in page.elements if "hidden" in one]


def test_the_bars_of_a_strip_lie_end_to_end(pages: dict[str, bytes]) -> None:
    strip = pages[BRAID].decode().split("class=strip")[1].split("</svg>")[0]
    placed = re.findall(r'x="([\d.]+)%" width="([\d.]+)%"', strip)
    assert placed == [
        ("0.00", "8.40"),
        ("8.40", "25.30"),
        ("33.70", "16.90"),
        ("50.60", "8.40"),
        ("59.00", "5.70"),
        ("64.70", "25.30"),
    ]


def test_the_declaration_stands_word_for_word_with_allergens_bold(pages: dict[str, bytes]) -> None:
    page = pages[BRAID].decode()
    text = read_page(pages[BRAID]).text
    label = braid().label
    for runs in (label.ingredients, label.contains_line, label.may_line):
        assert "".join(run.text for run in runs) in text
        assert [run.text for run in runs if run.strong and f"<b>{run.text}</b>" not in page] == []
    for words in (label.kitchen_line, label.unfinished, label.advice):
        assert words in text


def test_what_a_line_carries_is_told_and_the_unknown_said_aloud(pages: dict[str, bytes]) -> None:
    text = read_page(pages[BRAID]).text
    assert "bread flour: barley, wheat" in text
    assert "candied lemon peel: may contain tree nuts" in text
    assert "caraway seeds: not known: no pack of caraway seeds has been read" in text


def test_the_disclosure_stands_before_any_paid_link(pages: dict[str, bytes]) -> None:
    page = pages[BRAID].decode()
    assert -1 < page.index(braid().paid_words) < page.index("https://shop.example/tin")
    assert 'rel="sponsored"' in page


def test_a_correction_says_what_why_and_what_the_film_shows(pages: dict[str, bytes]) -> None:
    assert (
        "Corrected 20 September 2026: bread flour 400 g → 430 g, because too wet at two bakes in damp weather. "
        "The film still shows 400 g at 1:25."
    ) in read_page(pages[BRAID]).text


def test_a_bare_bake_leaves_no_empty_headings(pages: dict[str, bytes]) -> None:
    page = pages["site/recipes/candied-lemon-peel/index.html"].decode()
    headings = re.findall(r"<h[1-6][^>]*>(.*?)</h[1-6]>", page)
    assert headings == ["Candied lemon peel", "Weigh out", "To print", "Method", "What is in it", "Goes into"]
    assert "caution" not in page


def test_a_long_bake_loses_no_line_and_no_step() -> None:
    page = read_page(rendered(long_bake()))
    assert len([one for one in page.all("input") if one.get("type") == "checkbox"]) == 40
    assert len([one for one in page.all("div") if one.get("class") == "step"]) == 30


def test_the_words_of_the_maker_are_never_markup() -> None:
    nasty = '<img src=x onerror="alert(1)">'
    recipe = replace(peel(), title=nasty, lead=nasty, makes=nasty, keeps=nasty, finished_words=nasty)
    assert read_page(rendered(recipe)).all("img") == []


def test_a_recipe_page_needs_only_its_own_view(pages: dict[str, bytes]) -> None:
    page = recipe_page(braid(), structured=lambda view: '{"a": "</script><!--"}')
    assert finished_page(page, frame_of(sample_site())).content == pages[BRAID]


def test_the_same_view_gives_the_same_bytes(products: dict[str, bytes]) -> None:
    again = render_site(sample_site(), media=media, structured=lambda view: '{"a": "</script><!--"}')
    assert {product.path: product.content for product in again} == products


def test_a_photograph_that_cannot_be_read_is_left_out() -> None:
    def nothing(source: str) -> bytes:
        raise FileNotFoundError(source)

    made = {product.path for product in render_site(sample_site(), media=nothing)}
    assert not [path for path in made if path.startswith("site/media/")]
    assert BRAID in made


def test_a_linked_file_is_published_as_it_is(products: dict[str, bytes], pages: dict[str, bytes]) -> None:
    assert products["site/media/plan.txt"] == media("media/plan.txt")
    assert b'<a href="../../media/plan.txt">A plan for braiding</a>' in pages[BRAID]


def test_a_bake_without_a_method_has_no_empty_method() -> None:
    content = rendered(replace(peel(), ways=(), common=None))
    assert b"leaf-method" not in content


def test_a_template_fails_on_a_name_it_was_not_given() -> None:
    with pytest.raises(TemplateFault, match="is given no “frame”"):
        templates("docket", "site").get_template("recipe.html").render()
