"""Recipes worked out by hand: every number that recipe.json holds, with the arithmetic beside it.

`kitchens/NAME/content` is a content folder and `kitchens/NAME/expected/RECIPE.yaml` what its recipes must come to.
The figures come from the USDA rows named beside them (USDA SR28) and the definitions of the units, not from the
program. What is neither a number nor on a label (the words of a line, its note) is left to other tests.
"""

import json
from collections.abc import Iterator
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from generator.diagnostics.diagnostic import has_errors
from generator.pipeline import CheckResult, check_folder
from generator.present.data import recipe_data
from generator.render.recipe_json import render_recipe_json

KITCHENS = Path(__file__).resolve().parent / "kitchens"
EXPECTED = tuple(sorted(KITCHENS.glob("*/expected/*.yaml")))
DAY = date(2026, 7, 1)

KEYS = {
    "": "name title revision updated parts totals steps times labels",
    "parts": "name counts preferment grams lines",
    "lines": "item optional grams percent weight volume flour allergens may_contain unknown",
    "totals": (
        "grams flour water hydration hydration_nominal salt_percent salt_with_ingredients_percent "
        "prefermented_percent finished_grams"
    ),
    "steps": "method section uses stages temperatures",
    "uses": "part item grams extra",
    "stages": "kind minutes",
    "temperatures": "kind stated fan f c",
    "times": "method hands_on waiting baking total",
    "labels": "US EU",
    "US": "finished ingredients contains may_contain unknown",
    "EU": "finished ingredients contains may_contain unknown",
}
"""What every expectation states, by the name of the list or mapping that holds it.

Whatever else recipe.json comes to hold has tests of its own.
"""


@cache
def kitchen(name: str) -> CheckResult:
    return check_folder(KITCHENS / name / "content", day=DAY)


def recipe_json(kitchen_name: str, name: str) -> Any:
    """What is written for a recipe, read back."""
    setting = kitchen(kitchen_name).setting
    return json.loads(render_recipe_json(name, recipe_data(setting.book[name], setting)).content)


def differences(expected: Any, found: Any, path: str = "") -> Iterator[str]:
    """Every place where what is found is not what is expected, as `path: expected, not found`."""
    if isinstance(expected, dict) and isinstance(found, dict):
        for key, value in expected.items():
            here = f"{path}.{key}".lstrip(".")
            if key not in found:
                yield f"{here}: {value!r}, but it is not there"
            else:
                yield from differences(value, found[key], here)
    elif isinstance(expected, list) and isinstance(found, list):
        if len(expected) != len(found):
            yield f"{path}: {expected!r}, not {found!r}"
        for index, (one, other) in enumerate(zip(expected, found, strict=False)):
            yield from differences(one, other, f"{path}[{index}]")
    elif not same(expected, found):
        yield f"{path}: {expected!r}, not {found!r}"


def unstated(expected: Any, name: str = "") -> Iterator[str]:
    """Keys that an expectation should state and does not."""
    if isinstance(expected, list):
        for each in expected:
            yield from unstated(each, name)
    elif isinstance(expected, dict):
        yield from (f"{name}.{key}" for key in KEYS[name].split() if key not in expected)
        for key, value in expected.items():
            yield from unstated(value, key)


def same(expected: Any, found: Any) -> bool:
    """Numbers to nine figures, for a float holds no exact third; all else to the letter."""
    numbers = (int, float)
    if isinstance(expected, numbers) and isinstance(found, numbers) and not isinstance(expected, bool):
        return found == pytest.approx(expected, rel=1e-9, abs=1e-12) and not isinstance(found, bool)
    return bool(expected == found) and type(expected) is type(found)


def test_there_are_at_least_twelve() -> None:
    recipes = {path.stem for path in KITCHENS.glob("*/content/recipes/*.md")}
    assert recipes == {path.stem for path in EXPECTED}
    assert len(EXPECTED) >= 12


@pytest.mark.parametrize("path", EXPECTED, ids=lambda path: path.stem)
def test_every_expectation_states_every_number(path: Path) -> None:
    assert list(unstated(yaml.safe_load(path.read_text(encoding="utf-8")))) == []


@pytest.mark.parametrize("name", sorted(path.name for path in KITCHENS.iterdir()))
def test_every_kitchen_is_free_of_errors(name: str) -> None:
    assert not has_errors(kitchen(name).diagnostics), [each.message for each in kitchen(name).diagnostics]


@pytest.mark.parametrize("path", EXPECTED, ids=lambda path: f"{path.parent.parent.name}/{path.stem}")
def test_every_number_of_recipe_json_is_the_one_worked_out_by_hand(path: Path) -> None:
    expected = yaml.safe_load(path.read_text(encoding="utf-8"))
    found = recipe_json(path.parent.parent.name, path.stem)
    assert list(differences(expected, found)) == []


def test_a_number_that_differs_is_seen() -> None:
    path = KITCHENS / "metric" / "expected" / "weekday-tin.yaml"
    expected = yaml.safe_load(path.read_text(encoding="utf-8"))
    found = recipe_json("metric", "weekday-tin")
    found["parts"][0]["lines"][1]["grams"] = [340, 340.001]
    found["totals"]["salt_percent"] = None
    found["steps"][2]["stages"].append({"kind": "bake", "minutes": [1, 1]})
    del found["totals"]["water"]
    wrong = [each.split(":")[0] for each in differences(expected, found)]
    assert wrong == ["parts[0].lines[1].grams[1]", "totals.water", "totals.salt_percent", "steps[2].stages"]
