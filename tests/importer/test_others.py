"""How well old texts of another hand are read, who had not seen the reader. The figures stand in docs/decisions.

A text that is not read at all is not lost: it is said of it that no ingredients were found.
"""

from functools import cache

import pytest

from generator.asked.incoming import arrive
from tests.importer.corpus.bakes_other import OTHERS
from tests.importer.corpus.layouts import Text
from tests.importer.corpus.measuring import Score, score
from tests.importer.corpus.others import BY_OTHERS, beside, measured, texts_by_others
from tests.importer.corpus.others_held import HELD
from tests.importer.corpus.others_last import LAST
from tests.importer.corpus.truth import Bake
from tests.importer.kitchen import kitchen

TEXTS = tuple(texts_by_others(BY_OTHERS))


def _few() -> tuple[tuple[str, Bake, Text], ...]:
    """A text of each of eleven layouts, another bake each time, so that the short run stays short."""
    out = []
    for number, name in enumerate(tuple(BY_OTHERS)[::3]):
        own = [each for each in TEXTS if each[0].rpartition(" ")[0] == name]
        out.append(own[number % len(own)])
    return tuple(out)


FEW = _few()


@cache
def scored(number: int) -> Score:
    return score(*FEW[number])


def hold(each: tuple[str, Bake, Text], found: Score) -> None:
    """No allergen hidden and no line lost; what `check` refuses has a message; what is not read is named."""
    name, _, text = each
    assert (found.hidden, found.lost) == (0, 0), name
    assert found.accepted == (1, 1) or found.wrong, name
    if not found.steps[1]:
        arrival = arrive(text.name, text.data.encode(), kitchen())
        assert arrival.empty or arrival.refused or arrival.recipes, name


def test_nothing_is_hidden_or_lost_in_a_few_texts() -> None:
    for number, each in enumerate(FEW):
        hold(each, scored(number))


def test_most_lines_of_a_few_texts_are_right() -> None:
    """A floor under the reader: of the texts that are read at all, nearly every line."""
    read = [found for number in range(len(FEW)) if (found := scored(number)).steps[1]]
    right = sum(found.lines[0] for found in read)
    assert len(read) >= len(FEW) - 1
    assert right >= sum(found.lines[1] for found in read) * 97 / 100


@pytest.mark.long
@pytest.mark.parametrize("name", BY_OTHERS)
def test_nothing_is_hidden_or_lost_in_any_text(name: str) -> None:
    texts = list(texts_by_others({name: BY_OTHERS[name]}))
    lines = 0
    for each in texts:
        found = score(*each)
        hold(each, found)
        lines += found.lines[1]
    assert len(beside(texts).unasked) <= lines * 3 / 100


def test_the_texts_are_as_many_as_is_said() -> None:
    assert (len(BY_OTHERS), len(OTHERS), len(TEXTS), len(FEW)) == (32, 10, 306, 11)
    assert len({text.data for _, _, text in TEXTS}) == len(TEXTS)


def test_the_title_is_found() -> None:
    found = {each[0]: beside([each]).titles[0] for each in FEW}
    assert {name for name, titles in found.items() if not titles} == set()


@pytest.mark.long
@pytest.mark.parametrize("name", BY_OTHERS)
def test_every_title_is_found(name: str) -> None:
    titles, texts = beside(texts_by_others({name: BY_OTHERS[name]})).titles
    assert titles == texts


ONE_EACH = tuple(next(iter(texts_by_others({name: HELD[name]}))) for name in HELD)


def test_no_allergen_is_hidden_in_the_layouts_that_were_set_aside() -> None:
    """What they came to when they were first read stands in the decision; two sizes and shares are mended."""
    for each in ONE_EACH:
        found = score(*each)
        assert (found.hidden, found.accepted) == (0, (1, 1)), each[0]


@pytest.mark.long
@pytest.mark.parametrize("name", HELD)
def test_the_layouts_that_were_set_aside_are_read_as_they_were_mended(name: str) -> None:
    right = {
        "index card": 100,
        "definition list": 100,
        "nested lists": 100,
        "two sizes": 100,
        "baker's table": 39,
    }
    found = [score(*each) for each in texts_by_others({name: HELD[name]})]
    assert sum(each.lines[0] for each in found) >= right[name]
    assert sum(each.hidden for each in found) == 0
    assert sum(each.lost for each in found) == 0
    assert all(each.accepted == (1, 1) for each in found)


LAST_ONES = tuple(next(iter(texts_by_others({name: LAST[name]}))) for name in LAST)


def test_no_allergen_is_hidden_in_the_last_layouts_that_were_set_aside() -> None:
    for each in LAST_ONES:
        found = score(*each)
        assert (found.hidden, found.lost, found.accepted) == (0, 0, (1, 1)), each[0]


@pytest.mark.long
@pytest.mark.parametrize("name", LAST)
def test_the_last_layouts_that_were_set_aside_are_read_no_worse_than_at_first(name: str) -> None:
    """Of one line, an amount is missing and nothing is asked; of one card, three steps are taken for lines."""
    found = measured(texts_by_others({name: LAST[name]}))
    assert found.lines[0] >= (99 if name == "name first" else 100)
    assert found.steps[1] - found.steps[0] <= (3 if name == "typed card" else 0)
    assert (found.hidden, found.lost) == (0, 0)
    assert found.accepted == (10, 10)
