"""Three hundred label texts with the truth known, and texts made to be slow."""

import time

import pytest

from generator.declaration.pack import PackReading, read_pack
from tests.declaration.pack_texts import PackText, made_up

COUNT, SEED = 300, 20261125


def missed(each: PackText, reading: PackReading) -> set[str]:
    contains = {said.allergen for said in reading.contains}
    may = {said.allergen for said in reading.may_contain}
    return (set(each.contains) - contains) | (set(each.may) - may - contains)


def false_alarms(each: PackText, reading: PackReading) -> set[str]:
    contains = {said.allergen for said in reading.contains}
    may = {said.allergen for said in reading.may_contain}
    return (contains - each.contains) | (may - each.may)


def test_no_allergen_word_is_missed_and_few_alarms_are_false() -> None:
    """Zero missed is the bar; a text counts as a false alarm if it raises anything that is not in it."""
    texts = made_up(COUNT, seed=SEED)
    assert len({each.text for each in texts}) == COUNT
    words = sum(len(each.contains) + len(each.may) for each in texts)
    lost = [(each.text, found) for each in texts if (found := missed(each, read_pack(each.text)))]
    wrong = [(each.text, found) for each in texts if (found := false_alarms(each, read_pack(each.text)))]
    share = 100 * len(wrong) / COUNT
    figure = (
        f"{words} allergens in {COUNT} texts: {len(lost)} texts with one missed, {share:.1f} % false alarms"
    )
    assert not lost, f"{figure}\n{lost}"
    assert share < 3, f"{figure}\n{wrong}"


SLOW = (
    "contains milk ", "may contain milk ", "milk may be present ", "contains no sugar ", "contains ", "milk (",
    "nuts, almond, ",
    "almond (nuts ", "lecithin ", "free from milk and ", "(", ")", ". ", "allergthis", "a'", "whey, ", "( , ", "* ",
    "sugar, may contain milk, flour, ", "may contain milk contains sugar ", "milk and ", "contains 2 ", "\n", "é",
)  # fmt: skip


@pytest.mark.parametrize("piece", SLOW, ids=repr)
def test_a_long_label_takes_time_in_step_with_its_length(piece: str) -> None:
    """Fifty kilobytes in half a second on a quiet machine; a busy one is given four times that."""
    read_pack("milk (soy). May contain nuts.")  # the words are learned once
    label = (piece * 50_000)[:50_000]
    started = time.process_time()
    read_pack(label)
    assert time.process_time() - started < 30


def test_a_long_label_is_still_read() -> None:
    reading = read_pack("sugar, " * 7000 + "whey. " + "salt, " * 1000 + "may contain pecans.")
    assert [each.allergen for each in reading.contains] == ["milk"]
    assert [each.allergen for each in reading.may_contain] == ["pecan"]
