"""Formulas in percent, and both tables of the formula sheet, against worked formulas of the trade.

The total formula is on all flour, the final dough on the flour that goes in beside the preferment (form of the Bread
Bakers Guild of America, 2009, from memory). The source of each formula stands beside it.
"""

from collections.abc import Mapping
from fractions import Fraction

import pytest

from generator.formula.model import Formula
from generator.formula.sheet import Row, final_dough, levain_builds, total_formula
from tests.formula.kitchen import formula_of, recipe

F = Fraction


def _value(percent: Fraction | None) -> float:
    assert percent is not None
    return float(percent)


def _poolish(preferment: str, final: str) -> Formula:
    indented = [
        "\n".join(f"{space}- {line}" for line in part.split("; "))
        for part, space in ((preferment, "    "), (final, "  "))
    ]
    text = f"poolish:\n  preferment: poolish\n  lines:\n{indented[0]}\ndough:\n{indented[1]}"
    return formula_of(recipe(text))


def _table(rows: tuple[Row, ...]) -> dict[str, tuple[float, float]]:
    return {row.item: (float(row.grams.mid), _value(row.percent)) for row in rows}


def _near(found: Mapping[str, tuple[float, float]], expected: Mapping[str, tuple[float, float]]) -> None:
    """Grams to a hundredth, percents to half a hundredth."""
    assert list(found) == list(expected)
    for item, (grams, percent) in expected.items():
        assert found[item][0] == pytest.approx(grams, abs=0.01), item
        assert found[item][1] == pytest.approx(percent, abs=0.005), item


def _in_percent(front: str, preferment: str, whole: str) -> Formula:
    """A preferment with a share of all flour, and the whole dough with the preferment in it."""
    lines = ["\n".join(f"    - {line}" for line in part.split("; ")) for part in (preferment, whole)]
    text = f"{front}\n  lines:\n{lines[0]}\ndough:\n  total: yes\n  lines:\n{lines[1]}"
    return formula_of(recipe(text, more="flour: 1000 g\n"))


def test_lean_dough_in_percent() -> None:
    # 100/65/2/1 for two loaves of 500 g: flour = dough over 168 % (W. Gisslen, Professional Cooking; arithmetic).
    text = recipe(
        "- 100% bread flour\n- 65% water\n- 2% table salt\n- 1% instant yeast", more="dough: 1000 g\n"
    )
    rows = total_formula(formula_of(text), {})
    expected = {
        "bread flour": (595.24, 100),
        "water": (386.90, 65),
        "table salt": (11.90, 2),
        "instant yeast": (5.95, 1),
    }
    _near(_table(rows), expected)


def test_flour_of_a_cake_in_percent() -> None:
    # W. Gisslen, Professional Cooking: a total of 377.5 % for 3000 g is 794.7 g of flour (the book rounds up).
    text = recipe("- 100% cake flour\n- 277.5% granulated sugar", more="dough: 3000 g\n")
    assert float(formula_of(text).totals.flour) == pytest.approx(794.70, abs=0.01)


def test_poolish_in_percent_and_both_tables() -> None:
    # Arithmetic: 30 % of 1000 g of flour at 100 %; total 68 / 2 / 0.6, the final dough on its own 700 g.
    formula = _in_percent(
        "poolish:\n  preferment: poolish\n  flour: 30 %\n  hydration: 100 %",
        "100% bread flour; 100% water; 0.1% instant yeast",
        "100% bread flour; 68% water; 2% table salt; 0.6% instant yeast",
    )
    _near(
        _table(total_formula(formula, {})),
        {"bread flour": (1000, 100), "water": (680, 68), "instant yeast": (6, 0.6), "table salt": (20, 2)},
    )
    _near(
        _table(final_dough(formula, {})),
        {
            "bread flour": (700, 100),
            "poolish": (600.3, 85.76),
            "water": (380, 54.29),
            "table salt": (20, 2.857),
            "instant yeast": (5.7, 0.814),
        },
    )


def test_biga_in_percent_and_both_tables() -> None:
    # Arithmetic: 40 % prefermented at 50 %, instant yeast 0.4 % of the biga's flour; total 1000/660/22/5 = 1687.
    formula = _in_percent(
        "biga:\n  preferment: biga\n  flour: 40 %\n  hydration: 50 %",
        "100% bread flour; 50% water; 0.4% instant yeast",
        "100% bread flour; 66% water; 2.2% table salt; 0.5% instant yeast",
    )
    final = _table(final_dough(formula, {}))
    assert final["biga"][0] == pytest.approx(601.6)
    assert final["water"] == pytest.approx((460, 76.67), abs=0.005)
    assert final["instant yeast"][0] == pytest.approx(3.4)
    assert formula.totals.dough_grams.mid == 1687
    assert formula.totals.hydration == 66


def test_levain_in_percent_with_its_build() -> None:
    # Arithmetic: 20 % prefermented at 100 %, built 1 : 2 : 2 from seed of 100 %: 80, 160 and 160 g for 400 g.
    formula = _in_percent(
        "levain:\n  preferment: levain\n  flour: 20 %\n  hydration: 100 %\n  build: 1:2:2",
        "100% bread flour; 100% water",
        "100% bread flour; 70% water; 2% table salt",
    )
    (levain,) = levain_builds(formula)
    assert (levain.build.seed, levain.build.flour, levain.build.water) == (80, 160, 160)
    assert _table(final_dough(formula, {})) == {
        "bread flour": (800, 100),
        "levain": (400, 50),
        "water": (500, 62.5),
        "table salt": (20, 2.5),
    }
    assert formula.totals.dough_grams.mid == 1720


def test_a_published_poolish_dough_in_both_tables() -> None:
    # A published tutorial (data as quoted): on the final dough's 900 g water is 52, salt 3, yeast 1, poolish 104 %.
    formula = _poolish(
        "468 g bread flour; 468 g water; 0.3 g instant yeast",
        "900 g bread flour; 468 g water; 9 g instant yeast; 27 g table salt",
    )
    final = _table(final_dough(formula, {}))
    assert [round(final[each][1]) for each in ("water", "table salt", "instant yeast", "poolish")] == [
        52,
        3,
        1,
        104,
    ]
    whole = _table(total_formula(formula, {}))
    assert whole["water"] == pytest.approx((936, 68.42), abs=0.005)
    assert whole["instant yeast"] == pytest.approx((9.3, 0.680), abs=0.001)


def test_a_textbook_poolish_in_pounds_in_the_total_formula() -> None:
    # A textbook's example (as quoted): poolish 38.66 lb; total flour 59.44, water 38.64, yeast 0.74 lb or 1.245 %.
    formula = _poolish(
        "19.32 lb bread flour; 19.32 lb water; 0.02 lb instant yeast",
        "40.12 lb bread flour; 19.32 lb water; 1.19 lb table salt; 0.72 lb instant yeast",
    )
    whole = total_formula(formula, {})
    pounds = {row.item: float(row.grams.mid / F("453.59237")) for row in whole}
    assert pounds == pytest.approx(
        {"bread flour": 59.44, "water": 38.64, "instant yeast": 0.74, "table salt": 1.19}
    )
    assert _table(whole)["instant yeast"][1] == pytest.approx(1.245, abs=0.001)
    final = {row.item: float(row.grams.mid / F("453.59237")) for row in final_dough(formula, {})}
    assert final["poolish"] == pytest.approx(38.66)


def test_the_trap_of_the_percent_of_starter_in_a_line() -> None:
    # Arithmetic: 200 g of starter at 100 % on 1000 g flour and 700 g water is 72.73 %, prefermented 9.09 %.
    line = "{line: 200 g starter, hydration: 100 %, flour: bread flour}"
    formula = formula_of(recipe(f"- 1000 g bread flour\n- 700 g water\n- {line}"))
    assert _value(formula.totals.hydration) == pytest.approx(72.73, abs=0.01)
    assert _value(formula.totals.prefermented_percent) == pytest.approx(9.09, abs=0.01)
    whole = _table(total_formula(formula, {}))
    assert whole["bread flour"] == pytest.approx((1100, 100))
    assert whole["water"][1] == pytest.approx(72.73, abs=0.01)


def test_a_stiff_starter_in_a_line() -> None:
    # Arithmetic: 160 g at 60 % is 100 g of flour and 60 g of water.
    totals = formula_of(recipe("- {line: 160 g stiff starter, hydration: 60 %}")).totals
    assert (totals.flour, totals.water) == (100, 60)


def test_a_scald_in_both_tables() -> None:
    # Arithmetic: 5 % of 500 g of flour scalded 1 : 5 is 25 + 125; the rest is 475 and 225, the whole 70 %.
    formula = formula_of(
        recipe(
            "scald:\n  preferment: water roux\n  flour: 5 %\n  hydration: 500 %\n  lines:\n    - 100% bread flour\n"
            "    - 500% water\ndough:\n  total: yes\n  lines:\n    - 100% bread flour\n    - 70% water",
            more="flour: 500 g\n",
        )
    )
    final = {row.item: row.grams.mid for row in final_dough(formula, {})}
    assert final == {"bread flour": 475, "scald": 150, "water": 225}
    assert (formula.totals.hydration, formula.totals.prefermented_percent) == (70, None)
