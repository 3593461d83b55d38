"""The formula sheet in words, against worked formulas of the trade (arithmetic from the definition)."""

from fractions import Fraction
from pathlib import Path

from generator.measure.number import Range
from generator.present.sheet import row_words, sheet_percent
from tests.present.worked import (
    LEVAIN,
    POOLISH,
    PUBLISHED_POOLISH,
    facts_of,
    rows_of,
    sheet_of,
    table_called,
    view_of,
)


def test_poolish_in_the_total_formula_and_in_the_final_dough(tmp_path: Path) -> None:
    # 1000 g of flour, 30 % of it in a poolish of 100 %: final dough on 700 g of flour.
    view = view_of(tmp_path, POOLISH)
    assert table_called(view, "Total formula") == {
        "bread flour": ("1000 g", "100 %", ""),
        "water": ("680 g", "68 %", ""),
        "instant yeast": ("6 g", "0.6 %", ""),
        "table salt": ("20 g", "2 %", ""),
        "Together": ("1706 g", "170.6 %", ""),
    }
    assert table_called(view, "Final dough") == {
        "bread flour": ("700 g", "70 %", "100 %"),
        "poolish": ("600.3 g", "60.03 %", "85.76 %"),
        "water": ("380 g", "38 %", "54.29 %"),
        "table salt": ("20 g", "2 %", "2.857 %"),
        "instant yeast": ("5.7 g", "0.57 %", "0.814 %"),
        "Together": ("1706 g", "170.6 %", "243.71 %"),
    }
    assert table_called(view, "Poolish")["Together"] == ("600.3 g", "60.03 %", "200.1 %")
    assert facts_of(view)["Prefermented flour"] == "30 %"


def test_published_poolish(tmp_path: Path) -> None:
    # Water 936/1368, salt 27/1368, yeast 9.3/1368, prefermented 468/1368 (a published tutorial's weights).
    view = view_of(tmp_path, PUBLISHED_POOLISH)
    facts, formula = facts_of(view), table_called(view, "Total formula")
    assert (facts["Hydration"], facts["Salt"], facts["Prefermented flour"]) == (
        "68.42 %",
        "1.974 %",
        "34.21 %",
    )
    assert formula["instant yeast"] == ("9.3 g", "0.68 %", "")
    assert table_called(view, "Final dough")["poolish"][2] == "104.03 %"


def test_levain_with_its_build(tmp_path: Path) -> None:
    # 400 g by 1 : 2 : 2 is 80 g of seed, 160 g of flour, 160 g of water; the total is 1000/700/20.
    view = view_of(tmp_path, LEVAIN)
    (build,) = sheet_of(view).builds
    assert build.title == "To build the levain"
    assert {item: weight for item, (weight, _, _) in rows_of(build).items()} == {
        "seed": "80 g",
        "flour": "160 g",
        "water": "160 g",
        "Together": "400 g",
    }
    assert table_called(view, "Final dough")["levain"] == ("400 g", "40 %", "50 %")
    assert table_called(view, "Total formula")["Together"] == ("1720 g", "172 %", "")
    assert facts_of(view)["Prefermented flour"] == "20 %"


def test_what_a_component_lost_in_its_making_is_a_weight_below_nothing() -> None:
    # 300.5 g of a sponge that weighs 300 g: the half gram is 0.111 % of 450 g of flour.
    assert row_words(Range.exact(Fraction(-1, 2))) == "−0.5 g"
    assert sheet_percent(Fraction(-1, 9)) == "−0.111 %"


def test_both_hydrations_loss_and_yield(tmp_path: Path) -> None:
    formula = "- 500 g bread flour\n- 300 g whole milk\n- 10 g table salt\n- 5 g instant yeast"
    facts = facts_of(view_of(tmp_path, formula, front="weighs: 717.2 g\n"))
    # USDA SR28 01077: 88.13 g of water in 100 g of whole milk.
    assert facts["Hydration"] == "52.88 %"
    assert facts["Hydration by added water and milk alone"] == "60 %"
    assert facts["Dough weight"] == "815 g"
    assert facts["Finished weight"] == "717 g"
    assert facts["Loss in baking"] == "12 % of the raw weight"


def test_a_bake_without_flour_has_a_sheet_without_percents(tmp_path: Path) -> None:
    view = view_of(tmp_path, "- 120 g egg white\n- 240 g granulated sugar")
    sheet = sheet_of(view)
    assert sheet.base == ""
    assert [(table.title, table.has_all, table.has_own) for table in sheet.tables] == [
        ("Ingredients", False, False)
    ]
    assert table_called(view, "Ingredients") == {
        "egg white": ("120 g", "", ""),
        "granulated sugar": ("240 g", "", ""),
        "Together": ("360 g", "", ""),
    }
    assert "Hydration" not in facts_of(view)


def test_parts_that_do_not_count_have_weights_alone(tmp_path: Path) -> None:
    formula = """
dough:
  - 500 g bread flour
  - 300 g water
finish:
  counts: no
  lines:
    - 20 g honey
    - {line: 5 g turbinado sugar, optional: yes}
    - rice flour, for dusting
"""
    view = view_of(tmp_path, formula)
    finish = next(table for table in sheet_of(view).tables if table.title == "Finish")
    assert finish.remark == "not counted in the percentages, without its optional lines"
    assert rows_of(finish) == {
        "honey": ("20 g", "", ""),
        "rice flour": ("for dusting", "", ""),
        "Together": ("20 g", "", ""),
    }
    assert facts_of(view)["All parts"] == "820 g"
