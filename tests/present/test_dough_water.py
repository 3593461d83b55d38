"""Water for a wanted dough temperature: only from figures that the maker states.

Water = 3 x wanted - room - flour - friction, with a preferment 4 x wanted and the preferment's too (San Francisco
Baking Institute class notes).
"""

from pathlib import Path

from tests.present.worked import MACHINE, POOLISH, facts_of, sheet_of, view_of, water_of
from tests.present.worked import MACHINE_METHOD as METHOD

DOUGH = MACHINE.replace("{flour}", "430")
BOTH = "dough_temperature: 78 F\nfriction: {machine: 35 F, hand: 5 F}\n"


def test_a_table_by_room_and_by_way(tmp_path: Path) -> None:
    view = view_of(tmp_path, DOUGH, method=METHOD, site=BOTH)
    water = water_of(view)
    assert water.columns == ("Dough cycle", "By hand")
    # 3 x 78 - 2 x 68 - 35 = 63, and with 5 it is 93.
    assert {row.room: row.cells for row in water.rows}["68 °F (20 °C)"] == ("63 °F (17 °C)", "93 °F (34 °C)")
    assert [row.room for row in water.rows] == [
        "64 °F (18 °C)",
        "68 °F (20 °C)",
        "72 °F (22 °C)",
        "75 °F (24 °C)",
        "79 °F (26 °C)",
    ]
    assert facts_of(view)["Wanted dough temperature"] == "78 °F (26 °C)"


def test_degrees_celsius_and_friction_in_the_other_scale(tmp_path: Path) -> None:
    # 3 x 24 - 2 x 20 - 13 = 19; 23.4 °F degrees are 13 °C degrees, a difference without the 32.
    site = "dough_temperature: 24 C\nfriction: {hand: 23.4 F}\n"
    rows = water_of(view_of(tmp_path, DOUGH, method=METHOD, site=site)).rows
    assert {row.room: row.cells for row in rows}["20 °C (68 °F)"] == ("19 °C (66 °F)",)


def test_a_preferment_counts_as_a_fourth(tmp_path: Path) -> None:
    # 4 x 78 - 3 x 72 - 5 = 91.
    method = "## Method: by hand\n1. Stir {poolish}. Mix in the {dough}. {knead 10 min}\n"
    water = water_of(view_of(tmp_path, POOLISH, method=method, site=BOTH))
    # The machine has a column too: its friction is stated, and the dough is kneaded.
    assert water.columns == ("By hand", "Bread machine")
    cells = {row.room: row.cells for row in water.rows}["72 °F (22 °C)"]
    assert cells == ("91 °F (33 °C)", "61 °F (16 °C)")


def test_below_freezing_is_ice_and_above_fifty_is_a_warning(tmp_path: Path) -> None:
    site = "dough_temperature: 70 F\nfriction: {machine: 45 F, hand: 0 F}\n"
    water = water_of(view_of(tmp_path, DOUGH, method=METHOD, site=site))
    assert water.rows[-1].cells == ("below freezing: ice", "52 °F (11 °C)")
    assert any("use ice" in note for note in water.notes)
    hot = "dough_temperature: 85 F\nfriction: {machine: 35 F, hand: 0 F}\n"
    water = water_of(view_of(tmp_path / "hot", DOUGH, method=METHOD, site=hot))
    assert water.rows[0].cells[1] == "too warm for yeast"
    assert any("harms yeast" in note for note in water.notes)


def test_no_friction_figure_is_said_and_none_is_guessed(tmp_path: Path) -> None:
    water = water_of(view_of(tmp_path, DOUGH, method=METHOD, site="dough_temperature: 78 F\n"))
    assert (water.columns, water.rows) == ((), ())
    assert water.notes == (
        "How much mixing warms the dough is not stated for dough cycle, so no water temperature is given.",
        "How much mixing warms the dough is not stated for by hand, so no water temperature is given.",
    )


def test_no_wanted_temperature_no_table(tmp_path: Path) -> None:
    view = view_of(tmp_path, DOUGH, method=METHOD, site="friction: {machine: 35 F, hand: 5 F}\n")
    assert sheet_of(view).water is None
    assert "Wanted dough temperature" not in facts_of(view)


def test_the_recipe_wants_another_temperature_than_the_site(tmp_path: Path) -> None:
    view = view_of(tmp_path, DOUGH, method=METHOD, site=BOTH, front="dough_temperature: 24 C\n")
    assert water_of(view).wanted == "24 °C (75 °F)"


def test_what_does_not_ferment_has_no_dough_temperature(tmp_path: Path) -> None:
    view = view_of(tmp_path, "- 200 g cake flour\n- 100 g whole milk\n- 8 g baking powder", site=BOTH)
    assert sheet_of(view).water is None
