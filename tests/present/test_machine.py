"""The loading of a machine in words: what is stated is told, what is not is told to be unknown."""

from pathlib import Path

import pytest

from generator.present.machine import LOOK
from tests.present.worked import MACHINE as FORMULA
from tests.present.worked import MACHINE_METHOD as METHOD
from tests.present.worked import machine_of, view_of

STATED = "machine: {order: yeast first, rest: 15-20 min, add_ins: at the signal, pan: 1.5 lb}\n"


def test_only_the_dough_cycle_has_a_loading(tmp_path: Path) -> None:
    view = view_of(tmp_path, FORMULA.replace("{flour}", "430"), method=METHOD)
    assert [way.machine is not None for way in view.ways] == [True, False]


def test_stated_settings_are_told(tmp_path: Path) -> None:
    machine = machine_of(view_of(tmp_path, FORMULA.replace("{flour}", "430"), method=METHOD, site=STATED))
    assert machine.ordered
    assert machine.layers[0].title == "Yeast"
    assert machine.layers[0].remark == "on the bottom, dry, under the flour"
    assert [row.item for row in machine.layers[-1].rows] == ["whole milk", "egg"]
    assert "15–20 min" in machine.rest
    assert machine.added_when == "at the signal"
    assert [(row.first, row.item) for row in machine.added] == [("60 g", "raisins")]
    assert machine.pan.startswith("430 g of flour fits the maker’s 1½ lb pan")


def test_what_is_not_stated_is_said_and_not_guessed(tmp_path: Path) -> None:
    machine = machine_of(view_of(tmp_path, FORMULA.replace("{flour}", "430"), method=METHOD))
    assert not machine.ordered
    assert "order of loading is not stated here" in machine.order
    assert "is not stated here" in machine.rest
    assert machine.added_when == "when the method says"
    assert machine.pan.startswith("430 g of flour fits a 1½ lb pan.")


def test_the_recipe_says_more_than_the_site(tmp_path: Path) -> None:
    formula, own = FORMULA.replace("{flour}", "430"), "machine: {order: liquids first, rest: 0 min}\n"
    machine = machine_of(view_of(tmp_path, formula, method=METHOD, site=STATED, front=own))
    assert machine.layers[0].title == "Liquids"
    assert machine.rest == "The machine mixes at once."
    assert machine.added_when == "at the signal"


@pytest.mark.parametrize(
    ("flour", "words"),
    [
        ("750", "is the measure of no usual pan. For a 1½ lb pan (375–455 g) make ½ times the recipe."),
        ("480", "is the measure of no usual pan. For a 1½ lb pan (375–455 g) make 0.8 times the recipe."),
        ("600", "fits a 2 lb pan. For a 1½ lb pan (375–455 g) make ⅔ times the recipe."),
    ],
)
def test_flour_that_the_makers_pan_does_not_take(tmp_path: Path, flour: str, words: str) -> None:
    formula = FORMULA.replace("{flour}", flour)
    machine = machine_of(view_of(tmp_path, formula, method=METHOD, site=STATED))
    assert machine.pan.startswith(f"{flour} g of flour {words}")


def test_the_timer_caution_names_what_spoils_and_calls_nothing_safe(tmp_path: Path) -> None:
    timer = machine_of(view_of(tmp_path, FORMULA.replace("{flour}", "430"), method=METHOD)).timer
    assert timer == (
        "Timer: do not set it to start hours later with egg, milk or anything else in it that spoils: here whole "
        "milk and egg. The yeast must stay dry until it mixes."
    )


def test_the_look_after_five_minutes_mends_little_by_little() -> None:
    # Flour 10 g at a time, water 5 to 15 g, a minute or two between (common practice).
    for words in (
        "After 5 minutes",
        "one smooth ball",
        "10 g at a time",
        "5 to 15 g at a time",
        "a minute or two",
    ):
        assert words in LOOK
