"""Other yeast and other equipment on a page, read back and held against recipe.json and the view."""

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
_CELL = re.compile(r"<dt>(.*?)</dt><dd[^>]*>(.*?)</dd>", re.DOTALL)


@cache
def _demo() -> CheckResult:
    return check_folder(CONTENT, day=DAY)


@cache
def _page(name: str) -> str:
    view = next(each for each in _demo().site.recipes if each.name == name)
    return page_product(recipe_page(view, structured=lambda _: ""), frame_of(_demo().site)).content.decode()


def _words(text: str) -> str:
    return plain(html.unescape(_TAG.sub("", text)))


def _box(name: str, start: str, end: str) -> str:
    text = _page(name)
    begins = text.index(start)
    return text[begins : text.index(end, begins)]


WITH_YEAST = [view.name for view in _demo().site.recipes if view.sheet and view.sheet.yeast]
WITH_EQUIPMENT = [
    view
    for view in _demo().site.recipes
    if view.sheet and view.sheet.equipment and view.sheet.equipment.entries
]


@pytest.mark.parametrize("name", WITH_YEAST)
def test_other_yeast_has_the_grams_of_recipe_json(name: str) -> None:
    told = recipe_data(_demo().setting.book[name], _demo().setting)["yeast"]
    assert isinstance(told, list)
    cells = _CELL.findall(_box(name, '<details class="yeast">', "</details>"))
    kinds = ("fresh", "active dry", "instant")
    wanted = [sum(each["grams"][kind]) / 2 for each in told for kind in kinds]
    assert len(cells) == len(wanted) >= 3
    for (title, words), grams in zip(cells, wanted, strict=True):
        assert title.split(",")[0].casefold() in kinds
        shown = re.match(r"[\d.]+", _words(words))
        assert shown is not None
        step = 1 if grams >= 9.95 else 0.1 if grams >= 0.95 else 0.01
        assert float(shown[0]) == pytest.approx(grams, abs=step / 2 + 1e-9), title


@pytest.mark.parametrize("view", WITH_EQUIPMENT, ids=lambda view: view.name)
def test_every_line_of_the_dough_is_put_somewhere(view: RecipeView) -> None:
    """Nothing is forgotten when a dough goes into another bowl: at the start, later, or made ready before."""
    formula = _demo().setting.book[view.name]
    parts = [part for part in formula.parts if part.counts]
    wanted = {part.name for part in parts if part.preferment}
    wanted |= {line.item for part in parts if not part.preferment for line in part.lines if line.counts}
    box = _words(_box(view.name, '<section class="equipment"', "</section>"))
    assert {each for each in wanted if plain(each) not in box} == set()
    sheet = view.sheet
    assert sheet is not None
    assert sheet.equipment is not None
    for entry in sheet.equipment.entries:
        told = " ".join([*(layer.items for layer in entry.layers), *entry.says, *sheet.equipment.common])
        assert {each for each in wanted if each not in told} == set(), entry.title


def test_the_demo_has_both() -> None:
    assert len(WITH_YEAST) >= 4
    assert len(WITH_EQUIPMENT) >= 3
