"""Recipes in a content folder of their own, seen as readers see them."""

from datetime import date
from pathlib import Path

from generator.diagnostics.diagnostic import has_errors
from generator.pipeline import check_folder
from generator.present.recipe import recipe_view
from generator.present.sheet_views import MachineView, SheetTable, SheetView, WaterView
from generator.present.views import RecipeView

SITE = "title: Invented bakes\nmaker: An invented kitchen\nurl: https://kitchen.example/\n"
PANTRY = "bread flour:\n  label: Bread flour (wheat flour)\n  contains: [wheat]\n  checked: 2026-09-01\n"


def view_of(folder: Path, formula: str, *, site: str = "", front: str = "", method: str = "") -> RecipeView:
    """The view of one recipe: the lines under `formula:`, more settings, more front matter, the method's text."""
    lines = "".join(f"  {line}\n" for line in formula.strip("\n").splitlines())
    head = f"---\ntitle: A worked bake\npublished: 2026-01-10\n{front}"
    text = f"{head}formula:\n{lines}---\n{method}"
    (folder / "recipes").mkdir(parents=True)
    (folder / "site.yaml").write_text(SITE + site, encoding="utf-8")
    (folder / "pantry.yaml").write_text(PANTRY, encoding="utf-8")
    (folder / "recipes" / "worked.md").write_text(text, encoding="utf-8")
    checked = check_folder(folder, day=date(2026, 10, 1))
    assert not has_errors(checked.diagnostics), checked.diagnostics
    return recipe_view(checked.setting.book["worked"], checked.setting)


def sheet_of(view: RecipeView) -> SheetView:
    assert view.sheet is not None
    return view.sheet


def water_of(view: RecipeView) -> WaterView:
    water = sheet_of(view).water
    assert water is not None
    return water


def machine_of(view: RecipeView) -> MachineView:
    (machine,) = (way.machine for way in view.ways if way.machine is not None)
    return machine


def facts_of(view: RecipeView) -> dict[str, str]:
    return {fact.label: fact.words for fact in sheet_of(view).facts}


def rows_of(table: SheetTable) -> dict[str, tuple[str, str, str]]:
    """Weight, percent of all flour and percent of the table's own, by ingredient; the sum under its word."""
    return {row.item: (row.weight, row.of_all, row.of_own) for row in (*table.rows, table.sum)}


def table_called(view: RecipeView, title: str) -> dict[str, tuple[str, str, str]]:
    (table,) = (each for each in (*sheet_of(view).tables, *sheet_of(view).builds) if each.title == title)
    return rows_of(table)


POOLISH = """
poolish:
  preferment: poolish
  lines:
    - 300 g bread flour
    - 300 g water
    - 0.3 g instant yeast
dough:
  - 700 g bread flour
  - 380 g water
  - 20 g table salt
  - 5.7 g instant yeast
"""
PUBLISHED_POOLISH = """
poolish:
  preferment: poolish
  lines:
    - 468 g bread flour
    - 468 g water
    - 0.3 g instant yeast
dough:
  - 900 g bread flour
  - 468 g water
  - 9 g instant yeast
  - 27 g table salt
"""
LEVAIN = """
levain:
  preferment: levain
  hydration: 100 %
  build: 1:2:2
  lines:
    - 200 g bread flour
    - 200 g water
dough:
  - 800 g bread flour
  - 500 g water
  - 20 g table salt
"""
MACHINE = """
- 240 g whole milk
- 1 large egg
- {flour} g bread flour
- 8 g table salt
- 5 g instant yeast
- 60 g raisins
"""
MACHINE_METHOD = """
## Method: dough cycle
1. Put in {whole milk}, {egg}, {bread flour}, {table salt} and {instant yeast}. {mix 5 min} {knead 20 min}
   Add the {raisins}. {rise 55 min}

## Method: by hand
1. Mix {whole milk}, {egg}, {bread flour}, {table salt} and {instant yeast}. {knead 10 min} Add the
   {raisins}. {rise 1 h}
"""
