"""What a terminal shows: the view's own words in columns, everything that the page and the sheet have."""

from dataclasses import replace
from functools import cache

import pytest

from generator.present.views import RecipeView
from generator.render.terminal.render import as_terminal
from generator.render.terminal.table import WIDEST, columns
from tests.demo import checked

NAMES = [recipe.name for recipe in checked().site.recipes]


@cache
def _view(name: str) -> RecipeView:
    return next(each for each in checked().site.recipes if each.name == name)


def _plain(text: str) -> str:
    return " ".join(text.split())


@pytest.mark.parametrize("name", NAMES)
def test_every_word_of_the_sheet_is_there(name: str) -> None:
    view = _view(name)
    told, sheet = _plain(as_terminal(view)), view.sheet
    assert sheet is not None
    wanted = [row.made for row in sheet.batches] + [fact.words for fact in sheet.facts]
    wanted += [cell for row in (sheet.water.rows if sheet.water else ()) for cell in row.cells]
    wanted += [row.title for row in (sheet.tins.rows if sheet.tins else ())]
    wanted += [cell for row in (sheet.yeast.rows if sheet.yeast else ()) for cell in row.cells]
    wanted += [
        words for entry in (sheet.equipment.entries if sheet.equipment else ()) for words in entry.says
    ]
    wanted += [fact.words for fact in view.measured] + [oven.fan for oven in view.ovens]
    wanted += [row.item for build in sheet.builds for row in build.rows]
    # Figures that stand beside the docket with one decimal are not told a second time.
    known = {"Flour", "Hydration", "Prefermented flour", "Dough weight", "Raw weight", "Finished weight"}
    skipped = {fact.words for fact in sheet.facts if fact.label in known}
    missing = [words for words in wanted if words not in skipped and _plain(words) not in told]
    assert missing == []


def test_both_tables_of_a_dough_with_a_preferment() -> None:
    told = as_terminal(_view("kettle-boule"))
    assert "Total formula, preferments opened" in told
    assert "Final dough, what goes into the bowl" in told
    assert "  Together       862.2 g      172.44 %\n" in told


def test_a_dough_in_one_part_is_not_told_twice() -> None:
    assert "Total formula" not in as_terminal(_view("cardamom-orange-braid"))


def test_the_loading_of_the_machine_by_layers_with_its_caution() -> None:
    told = as_terminal(_view("cardamom-orange-braid"))
    box = told[told.index("Loading the machine, dough cycle") : told.index("With other equipment")]
    layers = [line.strip() for line in box.splitlines() if line.strip()[:2] in ("1.", "2.", "3.", "4.")]
    assert [layer.split(",")[0] for layer in layers] == [
        "1. Liquids",
        "2. Fat",
        "3. Flour",
        "4. Yeast",
    ]
    assert "Caution: Timer: do not set it" in box
    assert "Later, at the signal" in box


def test_altitude_is_told_only_where_it_was_asked_for() -> None:
    assert "At altitude" not in as_terminal(_view("crackle-apple-cake"))


def test_cups_beside_stand_below_their_line() -> None:
    view = _view("crackle-apple-cake")
    (first, *rest) = view.parts
    line = replace(first.lines[0], beside=(replace(view.facts[0], label="metric", words="1 cup"),))
    shown = as_terminal(replace(view, parts=(replace(first, lines=(line, *first.lines[1:])), *rest)))
    assert "metric: 1 cup\n" in shown


@pytest.mark.parametrize("name", NAMES)
def test_paragraphs_are_of_a_readable_width(name: str) -> None:
    """All but the declaration, which stands as one line to be copied."""
    lines = as_terminal(_view(name)).split("\nIngredients:")[0].splitlines()
    sentences = [line for line in lines if line.startswith("  ") and line.rstrip().endswith(".")]
    assert max((len(line) for line in sentences), default=0) <= WIDEST


def test_columns_begin_and_end_together() -> None:
    assert columns([("a", "1"), ("bcd", "22")], right=frozenset({1})) == ["  a     1", "  bcd  22"]
    assert columns([]) == []
