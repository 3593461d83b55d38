"""Altitude in words: two tables side by side, with the recipe's own lines, and no figure where a table is silent."""

from fractions import Fraction
from pathlib import Path

from generator.present.altitude import altitude_view, at_altitude
from generator.present.bench_views import AltitudeView
from tests.demo import checked
from tests.present.worked import sheet_of, view_of

F = Fraction


def _at(name: str, feet: int) -> AltitudeView:
    setting = checked().setting
    view = next(each for each in checked().site.recipes if each.name == name)
    sheet = at_altitude(view, setting.book[name], spoons=setting.spoons, feet=F(feet)).sheet
    assert sheet is not None
    assert sheet.altitude is not None
    return sheet.altitude


def test_the_page_has_both_tables_for_a_cake_and_none_for_bread() -> None:
    setting = checked().setting
    cake = altitude_view(setting.book["crackle-apple-cake"], spoons=setting.spoons)
    assert cake is not None
    assert [table.title for table in cake.tables] == [
        "W. Gisslen, Professional Cooking, for shortened cakes",
        "Colorado State University Extension",
    ]
    assert cake.tables[0].rows[0] == ("Baking powder", "−20 %", "−40 %", "−60 %")
    assert cake.tables[1].rows[0][1] == "−⅛ tsp for each tsp"
    bread = altitude_view(setting.book["kettle-boule"], spoons=setting.spoons)
    assert bread is not None
    assert bread.tables == ()
    assert bread.notes[0].startswith("Yeast doughs rise faster at altitude")


def test_the_recipes_own_lines_at_5000_feet() -> None:
    # 100 g of egg and 9 % more; 6.9 g of baking powder less 40 %, and less an eighth (the two tables).
    view = _at("crackle-apple-cake", 5000)
    textbook, extension = view.tables
    assert textbook.columns == ("", "as written", "5000 ft (1524 m)")
    assert ("eggs", "100 g", "109 g") in textbook.rows
    assert ("baking powder", "6.9 g (1½ tsp)", "4.1 g (⅞ tsp)") in textbook.rows
    assert ("baking powder", "6.9 g (1½ tsp)", "6 g (1¼ tsp)") in extension.rows
    assert any("cannot be reached there" in note for note in view.notes)


def test_between_the_columns_both_neighbours_stand() -> None:
    view = _at("crackle-apple-cake", 6000)
    assert view.tables[0].columns[2:] == ("5000 ft (1524 m)", "7500 ft (2286 m)")
    assert view.notes[0].startswith("The textbook has no figures for 6000 ft (1829 m) itself")


def test_beyond_the_extensions_table_it_says_nothing() -> None:
    view = _at("crackle-apple-cake", 2500)
    assert len(view.tables) == 1
    assert view.notes[0].endswith("so it says nothing here.")


def test_what_is_not_baked_says_so() -> None:
    assert _at("candied-orange-peel", 5000).notes == (
        "Nothing is baked here, and the tables speak of baking.",
    )


def test_a_page_without_an_oven_has_nothing_on_altitude(tmp_path: Path) -> None:
    assert sheet_of(view_of(tmp_path, "- 200 g granulated sugar\n- 100 g water")).altitude is None
