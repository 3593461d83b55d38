"""Other tins in words, and why there may be none."""

from pathlib import Path

import pytest

from tests.present.worked import sheet_of, view_of

CAKE = "- 200 g cake flour\n- 100 g whole milk\n- 3 g baking soda"


def test_the_usual_tins_with_how_they_are_compared(tmp_path: Path) -> None:
    tins = sheet_of(view_of(tmp_path, CAKE, front="tin: round 20 x 5 cm\n")).tins
    assert tins is not None
    # 23 cm for 20 cm by area is 1.3225 (arithmetic).
    assert [(row.name, row.title, row.times) for row in tins.rows][3] == (
        "round 25 cm",
        "round 25 cm (10 in)",
        "1.56 ×",
    )
    assert ("round 23 cm", "1.32 ×") in [(row.name, row.times) for row in tins.rows]
    assert tins.remark.startswith("Compared by area")


@pytest.mark.parametrize(
    ("tin", "remark"),
    [
        ("ring 24 x 7 cm", "No other tins are offered: a ring tin needs its hole"),
        ("a lined baking sheet", "No other tins are offered: this names no tin that can be measured"),
        ("muffin 7 x 3 cm", "No other tins are offered: a muffin tin needs the number of its cups"),
    ],
)
def test_why_there_are_none(tmp_path: Path, tin: str, remark: str) -> None:
    tins = sheet_of(view_of(tmp_path, CAKE, front=f"tin: {tin}\n")).tins
    assert tins is not None
    assert tins.rows == ()
    assert tins.remark.startswith(remark)


def test_without_a_tin_nothing_is_said(tmp_path: Path) -> None:
    assert sheet_of(view_of(tmp_path, CAKE)).tins is None
