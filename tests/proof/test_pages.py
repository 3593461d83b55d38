"""Every page, feed and data file of the sample says what the recipe says; changed by a hand, it is found out.

Each case edits one built file as somebody might, and wants the finding to name the file, what it says now, and what
the recipe says.
"""

import json
import re
from dataclasses import dataclass

import pytest

from tests.proof.building import BRAID, edited, proved, sample, texts, told

PAGE = f"site/recipes/{BRAID}/index.html"
DATA = f"site/recipes/{BRAID}/recipe.json"
G = '<span class="unit">\u00a0g</span>'


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """`old` becomes `new` at its first place; `code` is found, and each of `says` stands in a message."""

    path: str
    old: str
    new: str
    code: str
    says: tuple[str, ...]


CASES = {
    "a weight of the docket": Case(
        path=PAGE,
        old=f'10">430{G}',
        new=f'10">400{G}',
        code="A002",
        says=("bread flour", "“400 g”", "“430 g”"),
    ),
    "a volume of the docket": Case(
        path=PAGE,
        old='<span class="second"><span data-n="10 5">3⅓<span class="unit">\u00a0cups',
        new='<span class="second"><span data-n="10 5">3¼<span class="unit">\u00a0cups',
        code="A002",
        says=("the line of bread flour", "“3¼ cups”", "“3⅓ cups”"),
    ),
    "a count": Case(path=PAGE, old=">2</span>", new=">3</span>", code="A002", says=("egg yolks", "3", "2")),
    "a percentage": Case(
        path=PAGE,
        old='<span class="percent">100\u00a0%',
        new='<span class="percent">101\u00a0%',
        code="A002",
        says=("the percentage of bread flour", "“101 %”", "“100 %”"),
    ),
    "a weight in a sentence": Case(
        path=PAGE,
        old=">215\u00a0g, half<",
        new=">251\u00a0g, half<",
        code="A002",
        says=("step 1", "“251 g", "“215 g"),
    ),
    "a share that another step has": Case(
        path=PAGE,
        old=">215\u00a0g, half<",
        new=">430\u00a0g, half<",
        code="A002",
        says=("step 1", "“430 g", "“215 g"),
    ),
    "an amount beside a step": Case(
        path=PAGE,
        old=f'data-n="34 35">215{G}',
        new=f'data-n="34 35">225{G}',
        code="A002",
        says=("bread flour beside step 1", "“225 g”", "“215 g”"),
    ),
    "an amount in the machine": Case(
        path=PAGE,
        old=f'data-n="6 7">240{G}</span> <span class="load-item">',
        new=f'data-n="6 7">204{G}</span> <span class="load-item">',
        code="A002",
        says=("water in the machine", "“204 g”", "“240 g”"),
    ),
    "two lines exchanged": Case(
        path=PAGE,
        old='<span class="item"><b>table salt</b>',
        new='<span class="item"><b>instant yeast</b>',
        code="A002",
        says=("the line of table salt",),
    ),
    "the temperature of the oven": Case(
        path=PAGE,
        old="350\u00a0°F</b>",
        new="450\u00a0°F</b>",
        code="A002",
        says=("step 2", "“450 °F”", "“350 °F”"),
    ),
    "the other scale": Case(
        path=PAGE,
        old="(175\u00a0°C)</span></li>",
        new="(185\u00a0°C)</span></li>",
        code="A002",
        says=("185 °C", "175 °C"),
    ),
    "a temperature in other ovens": Case(
        path=PAGE,
        old="<td>325\u00a0°F, 155",
        new="<td>325\u00a0°F, 145",
        code="A002",
        says=("other ovens", "145", "155"),
    ),
    "a whole time": Case(
        path=PAGE,
        old='class="total">3\u00a0h\u00a032\u00a0min',
        new='class="total">3\u00a0h\u00a023\u00a0min',
        code="A002",
        says=("the whole time of “dough cycle”", "23 min", "32 min"),
    ),
    "a stage of the strip": Case(
        path=PAGE,
        old="<li>rise 1\u00a0h</li>",
        new="<li>rise 2\u00a0h</li>",
        code="A002",
        says=("“2 h”", "“1 h”"),
    ),
    "a time in a sentence": Case(
        path=PAGE,
        old="<b>rise 40\u00a0min",
        new="<b>rise 4\u00a0min",
        code="A002",
        says=("step 1", "“4 min", "“40 min"),
    ),
    "a timer": Case(
        path=PAGE,
        old="2400 2400",
        new="240 240",
        code="A005",
        says=("rise 240 s", "rise 2400 s"),
    ),
    "an allergen of the label": Case(
        path=PAGE,
        old="wheat, milk, egg</b>",
        new="wheat, egg</b>",
        code="A003",
        says=("what it contains", "milk"),
    ),
    "an allergen in the list": Case(
        path=PAGE,
        old="butter (cream, salt)",
        new="margarine (salt)",
        code="A003",
        says=("the list of ingredients", "margarine", "butter"),
    ),
    "an allergen of a line": Case(
        path=PAGE,
        old="bread flour: <b>barley</b>, <b>wheat</b>",
        new="bread flour: <b>wheat</b>",
        code="A003",
        says=("what bread flour carries", "barley"),
    ),
    "a caution": Case(
        path=PAGE,
        old="<p>Honey is not for babies under 12 months, not even baked.</p>",
        new="",
        code="A003",
        says=("a caution", "Honey is not for babies"),
    ),
    "the revision": Case(
        path=PAGE,
        old="<dd>2 · Sep",
        new="<dd>1 · Sep",
        code="A004",
        says=("the revision", "“1”", "“2”"),
    ),
    "a correction": Case(
        path=PAGE,
        old="+ 1 tbsp) → 430 g (3⅓ cups)</span>",
        new="+ 1 tbsp) → 440 g (3⅓ cups)</span>",
        code="A002",
        says=("the correction", "“440 g”", "“430 g”"),
    ),
    "what changed since a revision": Case(
        path=PAGE,
        old="→ 430\u00a0g (3⅓\u00a0cups)</dd>",
        new="→ 420\u00a0g (3⅓\u00a0cups)</dd>",
        code="A002",
        says=("420 g",),
    ),
    "a chapter": Case(
        path=PAGE,
        old="1:25</span>",
        new="1:52</span>",
        code="A002",
        says=("the chapter at 1:25", "1:52"),
    ),
    "a figure": Case(
        path=PAGE,
        old="<dd>62.2\u00a0%",
        new="<dd>66.2\u00a0%",
        code="A002",
        says=("Hydration", "66.2 %"),
    ),
    "a row of the formula": Case(
        path=PAGE,
        old="<td>240\u00a0g</td>",
        new="<td>250\u00a0g</td>",
        code="A002",
        says=("water in “", "250 g", "240 g"),
    ),
    "other yeast": Case(
        path=PAGE,
        old=">21\u00a0g</dd>",
        new=">12\u00a0g</dd>",
        code="A002",
        says=("other yeast", "12 g"),
    ),
    "a sentence that is nobody's": Case(
        path=PAGE,
        old="<p>Text before the first",
        new="<p>Take 555 g of flour instead.</p><p>Text before the first",
        code="A001",
        says=("“555 g”",),
    ),
    "an amount in a description for machines": Case(
        path=PAGE,
        old='content="A soft',
        new='content="With 99 g. A soft',
        code="A001",
        says=("“99 g”",),
    ),
    "a size for the script": Case(
        path=PAGE,
        old='"860\u00a0g"',
        new='"840\u00a0g"',
        code="A005",
        says=("840g", "860 g"),
    ),
    "a heat for the script": Case(
        path=PAGE,
        old='["350\u00a0°F","350',
        new='["350\u00a0°F","335',
        code="A005",
        says=("335f",),
    ),
    "a correction for search engines": Case(
        path=PAGE,
        old="tbsp) → 430 g",
        new="tbsp) → 440 g",
        code="A001",
        says=("search engines", "“440 g”"),
    ),
    "a size that is chosen": Case(
        path=PAGE,
        old='<option value="2">',
        new='<option value="3">',
        code="A005",
        says=("the sizes",),
    ),
    "an ingredient for search engines": Case(
        path=PAGE,
        old='"430 g (3⅓ cups) bread',
        new='"400 g (3⅓ cups) bread',
        code="A005",
        says=("recipeIngredient", "400 g", "430 g"),
    ),
    "a step for search engines": Case(
        path=PAGE,
        old='"text": "Braid, rise 40',
        new='"text": "Braid, rise 60',
        code="A005",
        says=("recipeInstructions", "60", "40"),
    ),
    "a time for search engines": Case(
        path=PAGE,
        old='"cookTime": "PT35M"',
        new='"cookTime": "PT45M"',
        code="A005",
        says=("cookTime", "PT45M", "PT35M"),
    ),
    "a time of a list": Case(
        path="site/index.html",
        old="3\u00a0h\u00a032\u00a0min",
        new="2\u00a0h\u00a032\u00a0min",
        code="A002",
        says=("Honey oat braid", "2 h"),
    ),
    "the list of corrections": Case(
        path="site/corrections/index.html",
        old="→ 430 g",
        new="→ 340 g",
        code="A002",
        says=("the correction", "340 g", "430 g"),
    ),
    "a cell of the allergens": Case(
        path="site/allergens/index.html",
        old="Contains</span>",
        new="May contain</span>",
        code="A003",
        says=("Honey oat braid",),
    ),
    "a weight of a feed": Case(
        path="site/feed.xml",
        old="430\u00a0g (3⅓\u00a0cups) bread flour",
        new="400\u00a0g (3⅓\u00a0cups) bread flour",
        code="A002",
        says=("400 g", "430 g"),
    ),
    "an allergen of a feed": Case(
        path="site/feed.xml",
        old="Contains: wheat, milk, egg",
        new="Contains: wheat, egg",
        code="A003",
        says=("what it contains",),
    ),
    "a date of a feed": Case(
        path="site/feed.xml",
        old="<updated>2026-09-20T00:00:00Z</updated>\n  <category",
        new="<updated>2026-09-12T00:00:00Z</updated>\n  <category",
        code="A005",
        says=("2026-09-12", "2026-09-20"),
    ),
    "a weight of the other feed": Case(
        path="site/feed.json",
        old="240\u00a0g (1\u00a0cup) water",
        new="420\u00a0g (1\u00a0cup) water",
        code="A002",
        says=("water", "420 g", "240 g"),
    ),
    "grams in recipe.json": Case(
        path=DATA,
        old="   430,\n",
        new="   400,\n",
        code="A005",
        says=("parts[0].", "400", "430"),
    ),
    "an allergen in recipe.json": Case(
        path=DATA,
        old='"barley"',
        new='"oats"',
        code="A005",
        says=('"oats"', '"barley"'),
    ),
    "a time on a shelf": Case(
        path="site/by/time/index.html",
        old="3\u00a0h\u00a032\u00a0min",
        new="1\u00a0h\u00a032\u00a0min",
        code="A002",
        says=("Honey oat braid", "“1 h”", "“3 h”"),
    ),
    "a choice of the search": Case(
        path="site/search/index.html",
        old=">4 hours<",
        new=">5 hours<",
        code="A002",
        says=("the choice “4",),
    ),
    "an allergen in the data of the search page": Case(
        path="site/search/index.html",
        old='"contains":["',
        new='"contains":["sesame","',
        code="A005",
        says=("“contains”", "sesame"),
    ),
    "a time in the data of the search": Case(
        path="site/search.json",
        old='"total":215',
        new='"total":125',
        code="A005",
        says=("“times”", "125", "215"),
    ),
    "a bake that the search does not know to be unfinished": Case(
        path="site/search.json",
        old='"finished":true',
        new='"finished":false',
        code="A005",
        says=("“finished”",),
    ),
    "an address of the map": Case(
        path="site/sitemap.xml",
        old="/recipes/honey-oat-braid/",
        new="/recipes/rye-loaf/",
        code="A005",
        says=("rye-loaf",),
    ),
}


def test_untouched_output_is_silent() -> None:
    assert told(proved(texts())) == ""


def test_every_page_and_every_file_of_data_is_read() -> None:
    """What is carried along, pictures and fonts and styles, says nothing of a recipe."""
    unread = {path for path in texts() if path not in sample().expected.places}
    assert {path for path in unread if not path.startswith(("site/leaf/", "site/media/"))} == set()


@pytest.mark.parametrize("case", CASES.values(), ids=CASES)
def test_an_edited_file_is_found_out(case: Case) -> None:
    found = proved(edited(texts(), case.path, case.old, case.new))
    assert {each.span.path for each in found} == {case.path}
    assert case.code in {each.code for each in found}, told(found)
    assert any(all(words in each.message for words in case.says) for each in found), told(found)


def test_a_finding_names_the_line_of_the_page() -> None:
    case = CASES["a weight of the docket"]
    files = edited(texts(), case.path, case.old, case.new)
    lines = files[PAGE].decode().splitlines()
    (line,) = {each.span.line for each in proved(files) if each.code == "A002"}
    assert "400" in lines[line - 1]


def test_a_finding_names_the_line_of_recipe_json() -> None:
    case = CASES["an allergen in recipe.json"]
    files = edited(texts(), case.path, case.old, case.new)
    (found,) = proved(files)
    assert '"oats"' in files[DATA].decode().splitlines()[found.span.line - 1]


_FIGURE = re.compile(r"(?<=>)[^<>]*?(\d+)(?=[^<>]*<)")


def unseen(every: int) -> list[str]:
    """Of the figures from the times to the label, each by itself one more than it is, those that nobody noticed."""
    text = texts()[PAGE].decode()
    start, end = (next(re.finditer(place, text)).start() for place in ('class="?times', 'id="?leaf-label'))
    places = [each.span(1) for each in _FIGURE.finditer(text, start, end)]
    assert len(places) > 150
    found = []
    for first, last in places[::every]:
        other = f"{text[:first]}{int(text[first:last]) + 1}{text[last:]}"
        if not proved({PAGE: other.encode()}):
            found.append(text[first - 60 : last + 40])
    # Where a step stands is no amount.
    return [each for each in found if "Step </span>" not in each]


def test_no_figure_of_the_page_can_change_unseen() -> None:
    assert unseen(every=15) == []


@pytest.mark.long
def test_no_figure_of_the_page_at_all_can_change_unseen() -> None:
    assert unseen(every=1) == []


def test_a_page_of_a_recipe_that_is_gone_is_an_entry_too_many() -> None:
    feed = json.loads(texts()["site/feed.json"])
    feed["items"].append({**feed["items"][0], "id": "https://kitchen.example/recipes/rye/", "title": "Rye"})
    (found,) = proved({"site/feed.json": json.dumps(feed).encode()})
    assert found.message == "the entry “Rye” is of no bake and no post of the site"


def test_a_bake_that_a_feed_has_lost_is_named() -> None:
    feed = json.loads(texts()["site/feed.json"])
    feed["items"] = []
    (found,) = proved({"site/feed.json": json.dumps(feed).encode()})
    assert found.message == "“Honey oat braid” is not in the feed"


@pytest.mark.parametrize(
    ("path", "content"),
    [
        (PAGE, b"\xff\xfe not text"),
        (DATA, b"{"),
        ("site/feed.xml", b"<feed>"),
        ("site/feed.xml", b'<!DOCTYPE feed [<!ENTITY a "b">]><feed/>'),
        ("site/feed.json", b"[]"),
        ("site/sitemap.xml", b""),
    ],
)
def test_what_cannot_be_read_is_said(path: str, content: bytes) -> None:
    assert "A007" in {each.code for each in proved({path: content})}


def test_an_empty_page_misses_everything() -> None:
    found = proved({PAGE: b"<!doctype html><title>x</title>"})
    assert {"A002", "A003", "A004", "A007"} <= {each.code for each in found}
