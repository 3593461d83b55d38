"""How well invented texts in 40 layouts are read. What was measured, and when, stands in docs/decisions.

Twenty layouts were open while the reader was written. Four times five were set aside, and were read for the first
time when it was done; their figures of that day are in the decision and are not the figures of this test, for
what they showed has been mended since.
"""

from collections.abc import Mapping

import pytest

from tests.importer.corpus.bakes import BAKES
from tests.importer.corpus.hard_lines import HARD
from tests.importer.corpus.held_out import HELD_OUT
from tests.importer.corpus.held_out_fourth import FOURTH
from tests.importer.corpus.held_out_later import LATER
from tests.importer.corpus.held_out_third import THIRD
from tests.importer.corpus.layouts import OPEN, Layout
from tests.importer.corpus.layouts_more import MORE
from tests.importer.corpus.measuring import Score, score, texts_of

ALL: Mapping[str, Layout] = {**OPEN, **HELD_OUT, **LATER, **MORE, **THIRD, **FOURTH}
FEW = (1,)
"""Bakes of the short run: one with two parts."""


def measured(names: Mapping[str, Layout], *, only: tuple[int, ...] | None = None) -> Score:
    total = Score()
    for name, bake, text in texts_of(names):
        if only is None or int(name.split()[1]) in only:
            total = total + score(name, bake, text)
    return total


def hold(total: Score) -> None:
    right, lines = total.lines
    assert right >= lines * 97 / 100, total.wrong
    for found, wanted in (total.steps, total.times, total.heats):
        assert found >= wanted * 97 / 100, total.wrong
    assert total.accepted[0] == total.accepted[1], total.wrong
    assert (total.hidden, total.lost) == (0, 0), total.wrong


@pytest.mark.parametrize("name", ALL)
def test_a_few_texts_of_each_layout(name: str) -> None:
    hold(measured({name: ALL[name]}, only=FEW))


@pytest.mark.long
@pytest.mark.parametrize("name", ALL)
def test_every_text_of_each_layout(name: str) -> None:
    hold(measured({name: ALL[name]}))


def test_the_corpus_is_as_large_as_is_said() -> None:
    texts = list(texts_of(ALL))
    assert (len(texts), len(ALL), len(OPEN), len(BAKES), len(HARD)) == (480, 40, 10, 12, 42)
    assert len({text.data for _, _, text in texts}) == len(texts)


def test_a_lost_line_and_a_hidden_allergen_would_be_counted() -> None:
    """The measure itself: a text without its walnuts misses a line, and hides what walnuts are."""
    name, bake, text = next(each for each in texts_of(OPEN) if each[0] == "markdown 3")
    cut = type(text)(
        name=text.name, data="\n".join(line for line in text.data.splitlines() if "100 g walnuts" not in line)
    )
    whole, less = score(name, bake, text), score(name, bake, cut)
    assert (whole.hidden, less.hidden, whole.lines[0] - less.lines[0]) == (0, 1, 1)
