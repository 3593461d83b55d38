"""The folded formula and the loading of a machine on a page, read back and held against recipe.json."""

import html
import re
from datetime import date
from functools import cache
from pathlib import Path

import pytest

from generator.pipeline import CheckResult, check_folder
from generator.present.data import recipe_data
from generator.present.views import RecipeView
from generator.render.site.frame import frame_of
from generator.render.site.page import page_product
from generator.render.site.pages import recipe_page
from tests.agreement.reading import plain

CONTENT = Path(__file__).parents[2] / "content"
DAY = date(2027, 3, 1)
_TAG = re.compile(r"<[^>]*>")
_ROW = re.compile(
    r'<li><span class="first"[^>]*>(.*?)</span> <span class="load-item">(.*?)</span>'
    r'(?: <span class="second"[^>]*>(.*?)</span>)?</li>',
    re.DOTALL,
)
_LINE = re.compile(r'<tr><th scope="row">(.*?)</th><td>(.*?)</td>(?:<td>(.*?)</td>)?')


@cache
def _demo() -> CheckResult:
    return check_folder(CONTENT, day=DAY)


def _page(view: RecipeView) -> str:
    return page_product(recipe_page(view, structured=lambda _: ""), frame_of(_demo().site)).content.decode()


def _words(text: str | None) -> str:
    return plain(html.unescape(_TAG.sub("", text or "")))


def _data_lines(name: str, *, counted: bool) -> list[dict[str, object]]:
    parts = recipe_data(_demo().setting.book[name], _demo().setting)["parts"]
    assert isinstance(parts, list)
    return [line for part in parts if part["counts"] or not counted for line in part["lines"]]


def test_the_braids_loading_has_the_docket_s_amounts_of_every_line_of_the_dough() -> None:
    (view,) = (each for each in _demo().site.recipes if each.name == "cardamom-orange-braid")
    text = _page(view)
    box = text[text.index('<div class="loading">') : text.index('<p class="basis">')]
    read = sorted((_words(row[1]), _words(row[0]), _words(row[2])) for row in _ROW.findall(box))
    wanted = sorted(
        (plain(str(line["item"])), plain(str(line["weight"])), plain(str(line["volume"])))
        for line in _data_lines(view.name, counted=True)
    )
    assert read == wanted


def _of_lines_alone(name: str) -> bool:
    """Whether every row is a line of the recipe: a preferment that is a recipe of its own is opened on the sheet."""
    parts = _demo().setting.book[name].parts
    return not any(line.component for part in parts if part.preferment for line in part.lines)


PLAIN = [view for view in _demo().site.recipes if _of_lines_alone(view.name)]


def test_the_demo_has_recipes_to_compare() -> None:
    assert len(PLAIN) >= 10


@pytest.mark.parametrize("view", PLAIN, ids=lambda view: view.name)
def test_total_formula_on_the_page_adds_up_the_lines_of_recipe_json(view: RecipeView) -> None:
    text = _page(view)
    start = text.index("<caption>", text.index('<section class="formula"'))
    table = text[start : text.index("</tbody>", start)]
    read = {_words(item): (_words(weight), _words(percent)) for item, weight, percent in _LINE.findall(table)}
    summed: dict[str, float] = {}
    percents: dict[str, float] = {}
    for line in _data_lines(view.name, counted=True):
        grams, item = line["grams"], plain(str(line["item"]))
        if isinstance(grams, list) and not line["optional"]:
            summed[item] = summed.get(item, 0.0) + sum(grams) / 2
            if line["percent"] is not None:
                percents[item] = percents.get(item, 0.0) + float(str(line["percent"]))
    assert read, view.name
    for item, (weight, percent) in read.items():
        if item in summed:
            ends = [float(each) for each in re.findall(r"[\d.]+", weight)]
            assert sum(ends) / len(ends) == pytest.approx(summed[item], abs=0.51), item
            if percent:
                assert float(percent.removesuffix("%")) == pytest.approx(percents[item], abs=0.0051), item
