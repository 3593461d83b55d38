"""What is said at the bench in one line."""

import pytest

from generator.history.bench_words import Said, read_said
from generator.measure.unit import SPOONS


def said(text: str) -> Said | str:
    return read_said(text, spoons=SPOONS["us"])


@pytest.mark.parametrize(
    ("text", "item", "amount", "when"),
    [
        ("10 g bread flour, 5 min into kneading", "bread flour", "10 g", "5 min into kneading"),
        ("+10 g bread flour", "bread flour", "10 g", ""),
        ("  + 10 g   of bread  flour , a, b ", "bread flour", "10 g", "a, b"),
        ("1/2 tsp water", "water", "1/2 tsp", ""),
        ("2,5 g table salt", "table salt", "2,5 g", ""),
        ("1 egg", "egg", "1", ""),
        ("a pinch of table salt", "table salt", "a pinch", ""),
        ("10 g (1 tbsp) bread flour", "bread flour", "10 g", ""),
        ("20\u2009g dough/honey, at the end", "dough/honey", "20 g", "at the end"),
        ("10 g bread flour (from the new bag), late", "bread flour", "10 g", "late"),
    ],
)
def test_amount_item_and_when(text: str, item: str, amount: str, when: str) -> None:
    assert said(text) == Said(item=item, amount=amount, when=when)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("bread flour", "“bread flour” has no amount; write it as in “10 g bread flour”"),
        ("-5 g honey", "“-5 g honey” takes something away; write what stayed over as --left “5 g honey”"),
        ("0 g honey", "an amount must be more than nothing. Give an amount above 0, or leave the line out."),
        ("10 g", "this line names no ingredient. Write an amount and an ingredient, such as “240 g water”."),
        ("", "this line names no ingredient. Write an amount and an ingredient, such as “240 g water”."),
        ("x" * 301, "this is too long for one entry (301 letters)"),
    ],
)
def test_what_is_not_understood(text: str, told: str) -> None:
    assert said(text) == told
