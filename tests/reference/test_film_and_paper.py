"""Chapters of a film, and tags on their sheets, against published rules and sizes."""

import pytest

from generator.render.tag_sheets.sizes import Grid, Size
from tests.formula.kitchen import bake, recipe, shelf

DOUGH = "- 500 g bread flour\n- 320 g water\n- 10 g table salt"


def _codes(*stamps: str) -> list[str]:
    chapters = "\n".join(f"      {stamp}: Chapter {number}" for number, stamp in enumerate(stamps, start=1))
    video = f"videos:\n  - url: https://video.example/w/x\n    length: 10:00\n    chapters:\n{chapters}\n"
    found = bake(shelf(), bake=recipe(DOUGH, more=video)).codes
    return [code for code in found if code.startswith("T")]


# Rules of chapters under a film, as published by its help pages: the first at 0:00, three at least, of ten seconds.
@pytest.mark.parametrize(
    ("stamps", "codes"),
    [
        (("0:00", "0:05", "1:00"), ["T013"]),
        (("0:01", "0:30", "1:00"), ["T012"]),
        (("0:00", "0:30", "1:00"), []),
        (("0:00", "0:30"), ["T013"]),
        (("0:00", "0:30", "9:55"), ["T013"]),
    ],
)
def test_chapters_that_a_films_page_passes_over(stamps: tuple[str, ...], codes: list[str]) -> None:
    assert _codes(*stamps) == codes


def _grid(width: float, height: float) -> Grid:
    return Grid(size=Size(name="x", words="", width=width, height=height), paper="a4")


# ISO 216: A6 is 105 x 148 mm, A7 74 x 105 mm, A4 210 x 297 mm.
def test_a7_and_a6_on_a4() -> None:
    assert _grid(105, 74).tags == 8
    assert _grid(105, 148).tags == 4


# Twenty-one of 63.5 x 38.1 mm on A4: 7.25 mm at the sides with gaps of 2.5 mm, 15.15 mm above (arithmetic). We lay
# tags side by side without gaps, so that the two gaps stand at the sides: half of 5 mm more on each.
def test_twenty_one_on_a4() -> None:
    grid = _grid(63.5, 38.1)
    left, top = grid.corner
    assert (grid.columns, grid.rows) == (3, 7)
    assert left - 2.5 == pytest.approx(7.25, abs=0.001)
    assert top == pytest.approx(15.15, abs=0.001)
