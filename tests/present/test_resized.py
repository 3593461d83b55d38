"""The words of another size are those of its whole view, place by place; the way there is only shorter."""

from fractions import Fraction

import pytest

from generator.formula.wish import Granted, Wish, grant
from generator.present.plain import plain_words
from generator.present.recipe import recipe_view
from generator.present.resized import both_orders, resized_words
from generator.present.spots import sized_spots
from tests.demo import checked

FRONT = 3
"""The maker's own words for the yield and the tin, which come first."""


@pytest.mark.parametrize("times", [Fraction(1), Fraction(2, 7)])
def test_the_words_of_a_size_are_those_of_its_view(times: Fraction) -> None:
    setting, places = checked().setting, 0
    orders = both_orders(setting)
    for formula in setting.book.values():
        granted = grant(formula, Wish(times=times), spoons=setting.spoons)
        assert isinstance(granted, Granted)
        found = list(resized_words(granted.formula, orders))
        # One order for each half of the demo: a whole view is what takes the time.
        at = places % 2
        view = recipe_view(granted.formula, orders[at])
        assert [pair[at] for pair in found] == [words for _, words in sized_spots(view)][FRONT:], formula.name
        places += len(found)
    assert places > 1000


MARKED = (
    "a *b* c",
    "a _b_",
    "`a` b",
    "a [b](https://example.org)",
    "a & b &amp; c",
    "a\\*b",
    "a < b > c",
    "a\nb",
    "1. a",
)


@pytest.mark.parametrize(
    "text", [*MARKED, "- a", "# a", "    a", "a | b\n- | -", "> a", "", " a", "***", "é a", "~~a~~"]
)
def test_what_may_be_markdown_is_read_as_markdown(text: str) -> None:
    assert plain_words(text, ()) == _by_the_reader(text)


@pytest.mark.parametrize(
    "text",
    ["A: b – c; d, (e) 1. “f” - + = # ! 5 %", "a  b\t c ", "Mix\u00a0it.", "a {b} 'c' \"d\" $ ^ / @ ?"],
)
def test_plain_text_is_what_the_reader_of_markdown_makes_of_it(text: str) -> None:
    assert plain_words(text, ()) == _by_the_reader(text)


def _by_the_reader(text: str) -> str:
    """The same text in a paragraph that begins with a mark, so that the short way is not taken; then without it."""
    return plain_words(f"{text}\n\n*x*", ()).removesuffix("x").removesuffix("\n")
