"""The same dough with other equipment: derived from the written method, and nothing guessed."""

from pathlib import Path

import pytest

from generator.present.bench_views import EquipmentEntry, EquipmentView
from generator.present.views import RecipeView
from tests.demo import checked
from tests.present.worked import MACHINE, MACHINE_METHOD, sheet_of, view_of

DOUGH = MACHINE.replace("{flour}", "430")
HAND = "## Method: by hand" + MACHINE_METHOD.split("## Method: by hand")[1]
HAND_AND_BAKE = (
    f"{HAND}\n## Method\n### Shape\n1. Form a loaf. {{work 5 min}}\n2. {{bake 30 min}} at {{oven 375 F}}.\n"
)
SITE = (
    "dough_temperature: 78 F\nfriction: {hand: 5 F, machine: 35 F}\n"
    "machine: {order: liquids first, rest: 20 min}\n"
)


def _equipment(view: RecipeView) -> EquipmentView:
    found = sheet_of(view).equipment
    assert found is not None
    return found


def _entry(view: RecipeView, title: str) -> EquipmentEntry:
    return next(each for each in _equipment(view).entries if each.title == title)


def test_what_is_written_is_not_told_again(tmp_path: Path) -> None:
    both = _equipment(view_of(tmp_path, DOUGH, method=MACHINE_METHOD))
    assert [each.title for each in both.entries] == ["Stand mixer"]
    assert both.intro.startswith("The maker wrote the method for a bread machine and by hand.")


def test_a_nameless_method_says_so_and_has_all_three(tmp_path: Path) -> None:
    method = "## Method\n" + HAND.split("\n", 1)[1]
    found = _equipment(view_of(tmp_path, DOUGH, method=method))
    assert [each.title for each in found.entries] == ["Bread machine", "Stand mixer", "By hand"]
    assert found.intro.startswith("The method does not say what mixes the dough.")


@pytest.mark.parametrize(
    ("words", "left"),
    [
        ("Mix in a stand mixer", ["Bread machine", "By hand"]),
        ("Put it all in the bread machine", ["Stand mixer", "By hand"]),
        ("Work it by hand", ["Bread machine", "Stand mixer"]),
    ],
)
def test_a_nameless_method_is_read_for_its_equipment(tmp_path: Path, words: str, left: list[str]) -> None:
    method = "## Method\n" + HAND.split("\n", 1)[1].replace("Mix ", f"{words}: ")
    assert [each.title for each in _equipment(view_of(tmp_path, DOUGH, method=method)).entries] == left


def test_a_machine_is_loaded_by_its_order_with_what_comes_later(tmp_path: Path) -> None:
    machine = _entry(view_of(tmp_path, DOUGH, method=HAND_AND_BAKE, site=SITE), "Bread machine")
    assert [(layer.title, layer.items) for layer in machine.layers] == [
        ("Liquids", "whole milk, egg"),
        ("Fat, sugar, salt and all else", "table salt"),
        ("Flour, and what is dry like it", "bread flour"),
        ("Yeast", "instant yeast"),
    ]
    assert machine.ordered
    told = " ".join(machine.says)
    assert "else when the dough has become one ball: raisins." in told
    assert "430 g of flour fits a 1½ lb pan" in told
    assert "After 5 minutes of kneading lift the lid." in told
    assert "stands still for 20 min" in told
    assert "Then go on with step 1 under “Shape”." in told
    assert "here whole milk and egg" in machine.caution


def test_the_yeast_first_turns_the_layers_round(tmp_path: Path) -> None:
    site = SITE.replace("liquids first", "yeast first")
    machine = _entry(view_of(tmp_path, DOUGH, method=HAND_AND_BAKE, site=site), "Bread machine")
    assert [layer.title for layer in machine.layers][::3] == ["Yeast", "Liquids"]


def test_an_order_that_nobody_stated_has_no_numbers(tmp_path: Path) -> None:
    machine = _entry(view_of(tmp_path, DOUGH, method=HAND_AND_BAKE), "Bread machine")
    assert not machine.ordered
    assert machine.order.startswith("The order of loading is not stated here")


def test_water_by_each_ones_friction_and_none_where_it_is_not_stated(tmp_path: Path) -> None:
    # San Francisco Baking Institute class notes: 3 x 78 - 72 - 72 - 35 = 55 °F.
    view = view_of(tmp_path, DOUGH, method=HAND_AND_BAKE, site=SITE)
    assert "in a room of 72 °F (22 °C): 55 °F (13 °C)." in _entry(view, "Bread machine").says[-1]
    assert (
        "what mixing adds is not stated for a mixer, so no temperature is given"
        in _entry(view, "Stand mixer").says[-1]
    )
    without = view_of(tmp_path / "without", DOUGH, method=HAND_AND_BAKE)
    assert _entry(without, "Stand mixer").says[-1].startswith("No dough temperature is stated")


def test_minutes_are_only_those_that_the_maker_gave(tmp_path: Path) -> None:
    found = _equipment(view_of(tmp_path, DOUGH, method=HAND_AND_BAKE))
    assert "(The maker kneads 10 min by hand.)" in " ".join(found.common)
    mixer = next(each for each in found.entries if each.title == "Stand mixer")
    assert "min" not in " ".join(mixer.says).replace("mixing", "").split()
    assert "No minutes of mixing are given where the maker gave none" in found.basis


def test_what_is_toasted_before_is_not_loaded() -> None:
    (loaf,) = (each for each in checked().site.recipes if each.name == "seeded-tin-loaf")
    found = _equipment(loaf)
    layers = " ".join(layer.items for entry in found.entries for layer in entry.layers)
    assert "seeds" not in layers
    assert found.common[0].endswith("sunflower seeds, sesame seeds and poppy seeds.")


def test_a_dough_that_is_folded_is_not_turned_into_one_that_is_kneaded() -> None:
    (boule,) = (each for each in checked().site.recipes if each.name == "kettle-boule")
    found = _equipment(boule)
    assert found.entries == ()
    assert "kneads nothing" in found.intro
    assert "not stated" in found.intro


def test_a_cake_asks_for_no_machine(tmp_path: Path) -> None:
    cake = "- 200 g cake flour\n- 100 g whole milk\n- 3 g baking soda"
    assert sheet_of(view_of(tmp_path, cake)).equipment is None


def test_a_share_is_told_as_a_part(tmp_path: Path) -> None:
    method = HAND.replace("{bread flour}", "{bread flour: 400 g}").replace(
        "Add the\n", "Add {bread flour: rest} and the\n"
    )
    mixer = _entry(view_of(tmp_path, DOUGH, method=method), "Stand mixer")
    assert "part of the bread flour" in [layer.items for layer in mixer.layers]
    assert "Later, when the dough has come together: part of the bread flour, raisins." in mixer.says
