"""Other yeast in words: the ratio with its source, each kind, and what a kitchen scale makes of so little."""

from fractions import Fraction
from pathlib import Path

from generator.formula.wish import Granted, Wish, grant
from generator.measure.unit import SPOONS
from generator.present.bench_views import YeastView
from generator.present.data import recipe_data
from generator.present.scaled import scaled_view
from generator.present.views import RecipeView
from tests.demo import checked
from tests.present.worked import POOLISH, sheet_of, view_of

DOUGH = "- 500 g bread flour\n- 300 g water\n- 10 g table salt\n- 20 g fresh yeast"


def _yeast(view: RecipeView) -> YeastView:
    yeast = sheet_of(view).yeast
    assert yeast is not None
    return yeast


def test_each_kind_stands_beside_the_recipes_own(tmp_path: Path) -> None:
    # A textbook of baking: fresh : active dry : instant = 100 : 40 : 33; a packet of 7 g is 2 1/4 tsp of dry yeast.
    yeast = _yeast(view_of(tmp_path, DOUGH))
    assert yeast.columns == ("Fresh", "Active dry", "Instant")
    (row,) = yeast.rows
    assert (row.item, row.own) == ("fresh yeast", 0)
    assert row.cells == ("20 g", "8 g (2⅝ tsp)", "6.6 g (2⅛ tsp)")
    assert yeast.notes[0].startswith(
        "Reckoned as fresh : active dry : instant = 100 : 40 : 33 by weight (a textbook"
    )
    assert "105 to 115 °F (41 to 46 °C)" in yeast.notes[1]
    assert yeast.notes[2].startswith("On a scale that shows whole grams 6.6 g may be 8 % more or less")


def test_each_line_of_yeast_has_its_part_where_there_are_two(tmp_path: Path) -> None:
    yeast = _yeast(view_of(tmp_path, POOLISH))
    assert [row.item for row in yeast.rows] == ["instant yeast (poolish)", "instant yeast (dough)"]
    assert [row.cells[0] for row in yeast.rows] == ["0.91 g", "17 g"]
    assert yeast.notes[-1].startswith("A scale that shows whole grams cannot weigh 0.3 g")


def test_without_yeast_nothing_is_said(tmp_path: Path) -> None:
    assert (
        sheet_of(view_of(tmp_path, "- 200 g cake flour\n- 100 g whole milk\n- 3 g baking soda")).yeast is None
    )


def test_too_cool_for_active_dry_yeast_is_said_with_its_source(tmp_path: Path) -> None:
    dough = DOUGH.replace("20 g fresh", "8 g active dry")
    method = (
        "## Method\n1. Stir the {active dry yeast} into the {water} at {90 F}.\n"
        "2. Add the {bread flour} and {table salt}. {knead 10 min}\n"
    )
    notes = _yeast(view_of(tmp_path, dough, method=method)).notes
    assert any(note.startswith("Below 100 °F (38 °C) dry yeast leaks glutathione") for note in notes)
    # Mixed in with the flour it is not rehydrated, and a cool liquid is no mistake.
    together = (
        "## Method\n1. Mix the {active dry yeast}, {water} at {90 F}, {bread flour} and {table salt}. "
        "{knead 10 min}\n"
    )
    notes = _yeast(view_of(tmp_path / "together", dough, method=together)).notes
    assert not any("glutathione" in note for note in notes)


def test_another_size_has_its_own_yeast() -> None:
    setting = checked().setting
    formula = setting.book["cardamom-orange-braid"]
    granted = grant(formula, Wish(times=Fraction(2)), spoons=SPOONS["us"])
    assert isinstance(granted, Granted)
    assert _yeast(scaled_view(granted, setting)).rows[0].cells == (
        "42 g",
        "17 g (1 tbsp + 2½ tsp)",
        "14 g (1 tbsp + 1½ tsp)",
    )


def test_recipe_json_has_the_grams_of_each_kind_with_the_ratio() -> None:
    setting = checked().setting
    told = recipe_data(setting.book["cardamom-orange-braid"], setting)["yeast"]
    assert isinstance(told, list)
    (yeast,) = told
    assert yeast["grams"]["instant"] == [7, 7]
    assert yeast["grams"]["fresh"][0] == 700 / 33
    assert yeast["ratio"] == {"fresh": 100, "active dry": 40, "instant": 33}
    assert yeast["source"].startswith("a textbook of baking")
