"""Stages summed way by way, ranges kept."""

import pytest

from generator.formula.model import Times
from tests.formula.kitchen import formula_of, recipe

LINES = "- 500 g bread flour"


def _times(body: str) -> dict[str, Times]:
    return {each.way: each for each in formula_of(recipe(LINES, body=body)).times}


def _numbers(times: Times) -> list[tuple[int, int]]:
    return [
        (int(each.low), int(each.high)) for each in (times.hands_on, times.waiting, times.baking, times.total)
    ]


def test_without_named_ways_there_is_one_entry() -> None:
    times = _times("\n## Method\n1. {bread flour} {knead 12 min} {rise 1 h 30 min} {bake 12-15 min}\n")
    assert list(times) == [""]
    assert _numbers(times[""]) == [(12, 12), (90, 90), (12, 15), (114, 117)]


def test_named_ways_have_an_entry_each_with_the_common_steps() -> None:
    times = _times(
        "\n## Method: by hand\n1. {bread flour} {knead 12 min}\n"
        "\n## Method: slow\n1. {bread flour} {rest 1 day}\n\n## Method\n1. {bake 20 min}\n"
    )
    assert _numbers(times["by hand"]) == [(12, 12), (0, 0), (20, 20), (32, 32)]
    assert _numbers(times["slow"]) == [(0, 0), (1440, 1440), (20, 20), (1460, 1460)]


@pytest.mark.parametrize("name", ["dough cycle", "Dough  Cycle"])
def test_on_a_dough_cycle_mixing_and_kneading_are_waiting(name: str) -> None:
    # A cycle of 5 min mixing, 20 min kneading and 55 min rising takes 80 min (common practice, one typical pattern).
    times = _times(
        f"\n## Method: {name}\n1. {{bread flour}} {{mix 5 min}} {{knead 20 min}} {{rise 55 min}} {{work 2 min}}\n"
    )
    (only,) = times.values()
    assert _numbers(only) == [(2, 2), (80, 80), (0, 0), (82, 82)]


def test_in_the_steps_after_the_cycle_kneading_is_work_again() -> None:
    times = _times(
        "\n## Method: dough cycle\n1. {bread flour} {knead 20 min}\n\n## Method\n1. {knead 3 min}\n"
    )
    assert _numbers(times["dough cycle"]) == [(3, 3), (20, 20), (0, 0), (23, 23)]


def test_a_bake_in_two_stages_is_the_sum_of_both() -> None:
    # 30 min, then 20 to 30 min, is 50 to 60 min (common practice).
    times = _times("\n## Method\n1. {bread flour} {bake 30 min} {oven 350 F} {bake 20-30 min} {oven 325 F}\n")
    assert _numbers(times[""])[2] == (50, 60)


def test_a_plain_measure_is_no_stage() -> None:
    assert _numbers(_times("\n## Method\n1. {bread flour}. After {5 min} look.\n")[""])[3] == (0, 0)
