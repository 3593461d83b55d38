"""What corrections say is held against the formula, gently."""

import pytest

from generator.history.corrections import Change, correction_diagnostics, read_change
from generator.measure.unit import SPOONS
from tests.formula.kitchen import formula_of, recipe


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("dough/bread flour 400 g -> 430 g", ("dough/bread flour", "400 g", "430 g")),
        ("2% milk 240 g → 250 g", ("2% milk", "240 g", "250 g")),
        ("egg yolks 2 -> 3", ("egg yolks", "2", "3")),
        ("oven 350 F -> 340 F", ("oven", "350 F", "340 F")),
        ("by hand/rise 1 h 30 min => 80 min", ("by hand/rise", "1 h 30 min", "80 min")),
        ("honey 20-25 g -> 25-30 g", ("honey", "20-25 g", "25-30 g")),
        ("water 65 % -> 63 %", ("water", "65 %", "63 %")),
        ("salt a pinch -> 2 g", ("salt", "a pinch", "2 g")),
        ("half and half 1 cup -> 2 cups", ("half and half", "1 cup", "2 cups")),
    ],
)
def test_a_change_is_read(text: str, expected: tuple[str, str, str]) -> None:
    what, old, new = expected
    assert read_change(text) == Change(what=what, old=old, new=new)


@pytest.mark.parametrize(
    "text", ["", "->", "more water", "water -> 250 g", "400 g -> 430 g", "a -> b -> c", "x " * 500]
)
def test_other_words_are_let_pass(text: str) -> None:
    assert read_change(text) is None


def told(*changes: tuple[str, str]) -> list[str]:
    """What is said of corrections, each a day and a change, of a dough of 500 g flour, 300 g water and 2 eggs."""
    entries = "".join(f'  - {{on: {on}, change: "{change}", why: Because.}}\n' for on, change in changes)
    text = recipe(
        "dough:\n  - 500 g bread flour\n  - 300 g (1 1/4 cups) water\n  - 2 eggs",
        "1. Mix {dough}. {bake 30 min} at {oven 400 F}.",
        more=f"corrections:\n{entries}",
    )
    found = correction_diagnostics(formula_of(text), spoons=SPOONS["us"])
    return [f"{each.span.line}: {each.code} {each.message}" for each in found]


@pytest.mark.parametrize(
    "change",
    [
        "dough/water 280 g -> 300 g",
        "water 1 cup -> 1 1/4 cups",
        "water 280 g -> 0.3 kg",
        "eggs 1 -> 2",
        "oven 425 F -> 400 F",
        "bake 25 min -> 30 min",
        "more water",
        "keeps 2 days -> 3 days",
    ],
)
def test_a_correction_that_the_formula_bears_out_says_nothing(change: str) -> None:
    assert told(("2026-09-20", change)) == []


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ("water 280 g -> 290 g", "C001 this correction says 290 g, and the formula has 300 g of water"),
        ("eggs 2 -> 3", "C001 this correction says 3, and the formula has 2 of eggs"),
        ("oven 425 F -> 410 F", "C001 this correction says oven 410 F, and the method has none such"),
        ("dough/milk 280 g -> 290 g", "C003 the formula has no “dough/milk” any more"),
    ],
)
def test_a_correction_that_it_does_not_bear_out_is_a_warning(change: str, said: str) -> None:
    (message,) = told(("2026-09-20", change))
    assert message.partition(" ")[2] == said


def test_only_the_newest_correction_of_a_line_must_agree() -> None:
    assert told(("2026-09-20", "water 260 g -> 280 g"), ("2026-09-21", "water 280 g -> 300 g")) == []


def test_corrections_stand_in_the_order_of_their_days() -> None:
    (message,) = told(("2026-09-21", "water 280 g -> 300 g"), ("2026-09-20", "water 260 g -> 280 g"))
    assert message.endswith("C002 this correction is of 2026-09-20, and stands below one of 2026-09-21")
