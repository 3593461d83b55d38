"""Names are one under case, accents, spaces, hyphens and number."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.catalogue.names import fold, number_forms, same_name


@pytest.mark.parametrize(
    ("written", "folded"),
    [
        ("  All-Purpose   Flour ", "all purpose flour"),
        ("Crème fraîche", "creme fraiche"),
        ("confectioners’ sugar", "confectioners' sugar"),
        ("ﬁg", "fig"),
        ("half‑and‑half", "half and half"),
    ],
)
def test_folding(written: str, folded: str) -> None:
    assert fold(written) == folded


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("egg yolk", "Egg Yolks"),
        ("self-rising flour", "self rising flour"),
        ("cherry", "cherries"),
        ("potato", "potatoes"),
        ("loaf", "loaves"),
        ("peach", "peaches"),
        ("anchovies", "anchovy"),
        ("cookie", "cookies"),
    ],
)
def test_names_that_are_one(first: str, second: str) -> None:
    assert same_name(first, second)
    assert same_name(second, first)


@pytest.mark.parametrize(
    ("first", "second"),
    [
        ("butter", "unsalted butter"),
        ("egg", "egg yolk"),
        ("bread flour", "bread flours mix"),
        ("molasses", "mole"),
        ("cornflour", "corn flour"),
    ],
)
def test_names_that_are_two(first: str, second: str) -> None:
    assert not same_name(first, second)


@given(st.text(max_size=30))
def test_folding_twice_is_folding_once(text: str) -> None:
    assert fold(fold(text)) == fold(text)


@given(st.text(max_size=30))
def test_a_name_is_itself_and_any_text_is_answered(text: str) -> None:
    assert same_name(text, text)
    assert number_forms(fold(text))[0] == fold(text)
