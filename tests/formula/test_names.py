"""Which line a name means: case, spaces, plurals, size words, parts."""

import pytest

from generator.formula.model import Formula
from generator.formula.names import lines_called, names_near, parts_called
from tests.formula.kitchen import formula_of, recipe

BRAID = recipe(
    """
dough:
  - 2 large eggs
  - 1 small egg
  - 220 g packed light brown sugar
  - 12 cherries (80 g)
  - 100 g water
  - 50 g chopped pecans
glaze:
  counts: no
  lines:
    - 20 g water
    - 30 g icing sugar
"""
)


@pytest.fixture(scope="module")
def formula() -> Formula:
    return formula_of(BRAID)


@pytest.mark.parametrize(
    ("name", "texts"),
    [
        ("light brown sugar", ["220 g packed light brown sugar"]),
        ("Light  Brown-Sugar", ["220 g packed light brown sugar"]),
        ("packed light brown sugar", ["220 g packed light brown sugar"]),
        ("light brown sugars", ["220 g packed light brown sugar"]),
        ("level light brown sugar", ["220 g packed light brown sugar"]),
        ("large egg", ["2 large eggs"]),
        ("large eggs", ["2 large eggs"]),
        ("small egg", ["1 small egg"]),
        ("egg", ["2 large eggs", "1 small egg"]),
        ("cherry", ["12 cherries (80 g)"]),
        ("water", ["100 g water", "20 g water"]),
        ("dough/water", ["100 g water"]),
        ("Glaze/Water", ["20 g water"]),
        ("glaze/egg", []),
        ("sugar", []),
        ("brown sugar", []),
        ("pecans", []),
        ("", []),
        ("dough/", []),
        ("/water", []),
        ("large " * 3000 + "egg", []),
    ],
)
def test_the_lines_that_a_name_means(formula: Formula, name: str, texts: list[str]) -> None:
    assert [line.written.text for line in lines_called(name, formula.parts)] == texts


def test_parts_go_by_their_folded_name(formula: Formula) -> None:
    assert [part.name for part in parts_called("DOUGH", formula.parts)] == ["dough"]
    assert parts_called("", formula.parts) == ()


def test_items_that_hold_the_words_are_offered(formula: Formula) -> None:
    assert names_near("pecans", formula.parts) == ("chopped pecans",)
    assert names_near("brown sugar", formula.parts) == ("light brown sugar",)
    assert names_near("", formula.parts) == ()
