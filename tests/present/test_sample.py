"""One recipe worked out by hand, every number: the honey oat braid and the peel that goes into it.

The figures follow from the lines by arithmetic: bread flour 128 g a cup by the maker's own weighing; yolks 17 g,
egg white 33 g, salt 6 g and yeast 28/9 g a teaspoon; water of egg yolk 52.31 %, of salted butter 15.87 %,
salt in it from 643 mg of sodium (USDA SR28 01125, 01124, 02047, 01001). A packet of yeast is 7 g (common practice).
"""

import json
from collections.abc import Mapping
from datetime import date
from pathlib import Path
from shutil import copytree
from typing import Any

import pytest
from PIL import Image

from generator.pipeline import CheckResult, check_folder, show_json

HERE = Path(__file__).parent
DAY = date(2026, 10, 1)


@pytest.fixture(scope="module")
def checked(tmp_path_factory: pytest.TempPathFactory) -> CheckResult:
    root = tmp_path_factory.mktemp("sample") / "content"
    copytree(HERE / "sample", root)
    (root / "media").mkdir()
    Image.new("RGB", (1200, 800), (150, 110, 70)).save(root / "media" / "honey-oat-braid.jpg")
    return check_folder(root, day=DAY)


@pytest.fixture(scope="module")
def braid(checked: CheckResult) -> Mapping[str, Any]:
    found: Mapping[str, Any] = json.loads(show_json(checked, "honey-oat-braid").text)
    return found


def _lines(braid: Mapping[str, Any]) -> dict[str, Mapping[str, Any]]:
    return {line["item"]: line for part in braid["parts"] for line in part["lines"]}


def test_the_sample_passes_check(checked: CheckResult) -> None:
    assert checked.diagnostics == ()


def test_parts_and_their_weights(braid: Mapping[str, Any]) -> None:
    assert [(part["name"], part["counts"], part["preferment"]) for part in braid["parts"]] == [
        ("dough", True, None),
        ("finish", False, None),
    ]
    # 240 + 34 + 430 + 50 + 9 + 7 + 60 + 40 = 870; 33 and 20 to 25 of the finish.
    assert braid["parts"][0]["grams"] == pytest.approx([870, 870])
    assert braid["parts"][1]["grams"] == pytest.approx([53, 58])


@pytest.mark.parametrize(
    ("item", "grams", "percent", "weight", "volume"),
    [
        ("water", [240, 240], 55.814, "240 g", "1 cup"),
        ("egg yolks", [34, 34], 7.907, "34 g", "2"),
        ("bread flour", [430, 430], 100, "430 g", "3⅓ cups"),
        ("rolled oats", [50, 50], 11.628, "50 g", "½ cup + 2 tbsp"),
        ("table salt", [9, 9], 2.093, "9 g", "1½ tsp"),
        ("instant yeast", [7, 7], 1.628, "7 g", "2¼ tsp"),
        ("salted butter", [60, 60], 13.953, "60 g", "¼ cup + ¾ tsp"),
        ("candied lemon peel", [40, 40], 9.302, "40 g", ""),
        ("egg white", [33, 33], None, "33 g", "1"),
        ("honey", [20, 25], None, "20–25 g", "2⅞ tsp to 1 tbsp + ½ tsp"),
    ],
)
def test_every_line(
    braid: Mapping[str, Any], item: str, grams: list[float], percent: float | None, weight: str, volume: str
) -> None:
    line = _lines(braid)[item]
    assert line["grams"] == pytest.approx(grams, abs=0.01)
    assert line["percent"] == (None if percent is None else pytest.approx(percent, abs=0.001))
    assert (line["weight"], line["volume"]) == (weight, volume)
    assert line["optional"] is False
    assert line["flour"] is (item == "bread flour")


def test_the_line_as_written(braid: Mapping[str, Any]) -> None:
    line = _lines(braid)["bread flour"]
    assert (line["written"], line["preparation"]) == ("430 g (3 1/3 cups) bread flour", "")
    assert (line["allergens"], line["may_contain"], line["unknown"]) == (["barley", "wheat"], [], [])
    assert _lines(braid)["water"]["preparation"] == "cool"


def test_totals(braid: Mapping[str, Any]) -> None:
    totals = braid["totals"]
    assert totals["grams"] == pytest.approx([923, 928])
    assert totals["flour"] == 430
    # 240 + 34 x 52.31 % + 60 x 15.87 %; the peel is no preferment, the finish does not count.
    assert totals["water"] == pytest.approx(240 + 34 * 0.5231 + 60 * 0.1587)
    assert round(totals["water"], 1) == 267.3
    assert round(totals["hydration"], 1) == 62.2
    assert round(totals["hydration_nominal"], 1) == 55.8
    assert round(totals["salt_percent"], 2) == 2.09
    assert round(totals["salt_with_ingredients_percent"], 1) == 2.3
    # 12 % off 923 and 928.
    assert totals["finished_grams"] == pytest.approx([812.24, 816.64])


def test_times_of_both_ways(braid: Mapping[str, Any]) -> None:
    assert braid["times"] == [
        {
            "method": "dough cycle",
            "hands_on": [0, 0],
            "waiting": [180, 180],
            "baking": [32, 35],
            "total": [212, 215],
        },
        {
            "method": "by hand",
            "hands_on": [12, 12],
            "waiting": [190, 190],
            "baking": [32, 35],
            "total": [234, 237],
        },
    ]


def test_steps_with_their_uses(braid: Mapping[str, Any]) -> None:
    assert [(step["method"], step["section"]) for step in braid["steps"]] == [
        ("dough cycle", ""),
        ("dough cycle", ""),
        ("by hand", ""),
        ("", "Shape and bake"),
        ("", "Shape and bake"),
    ]
    first, second = braid["steps"][:2]
    assert {"part": "dough", "item": "bread flour", "grams": [215, 215], "extra": False} in first["uses"]
    assert [use["item"] for use in first["uses"]].count("bread flour") == 2
    assert {"part": "dough", "item": "bread flour", "grams": [10, 10], "extra": True} in second["uses"]
    assert second["stages"] == [{"kind": "knead", "minutes": [20, 20]}, {"kind": "rise", "minutes": [60, 60]}]


def test_temperatures_keep_what_was_stated(braid: Mapping[str, Any]) -> None:
    heats = [
        (each["kind"], each["stated"], each["f"], each["c"])
        for step in braid["steps"]
        for each in step["temperatures"]
    ]
    assert heats == [
        ("oven", "F", [350, 350], [175, 175]),
        ("oven", "F", [325, 325], [165, 165]),
        ("core", "C", [190, 190], [88, 88]),
    ]


def test_revision_and_label(braid: Mapping[str, Any]) -> None:
    assert (braid["name"], braid["title"]) == ("honey-oat-braid", "Honey oat braid")
    assert (braid["revision"], braid["updated"]) == (2, "2026-09-20")
    label = braid["labels"]["US"]
    assert set(label) >= {"finished", "ingredients", "contains", "may_contain", "unknown", "statement"}
    assert set(label["contains"]) >= {"wheat", "milk", "egg"}


def test_the_component(checked: CheckResult) -> None:
    peel = checked.setting.book["candied-lemon-peel"]
    braid = checked.setting.book["honey-oat-braid"]
    assert peel.weighs is not None
    assert peel.weighs.mid == 260
    assert braid.component_shares["candied-lemon-peel"] == pytest.approx(40 / 260)


def test_text_of_a_step_has_its_amounts(braid: Mapping[str, Any]) -> None:
    plain = [" ".join(step["text"].split()) for step in braid["steps"]]
    assert "bread flour (215 g, half)" in plain[0]
    assert "bread flour (215 g, the rest)" in plain[0]
    assert "10 g of bread flour" in plain[1]
    assert "350 °F (175 °C)" in plain[4]
