"""Small decisions that all sheets share."""

from dataclasses import replace

from generator.declaration.model import Run
from generator.render.paper_words import (
    Columns,
    columns,
    home_of,
    line_words,
    loose_cautions,
    running_title,
    runs_html,
    runs_of,
    unsaid_uses,
)
from generator.render.qr import qr_code
from tests.render.paper.sample import TINY, TYPICAL, line


def test_a_column_that_would_stand_empty_is_left_out() -> None:
    assert columns(TYPICAL) == Columns(first="Weight", second="Volume", percent=True)
    bare = replace(TINY, parts=(replace(TINY.parts[0], lines=(line("sugar", "1 g"),)),))
    assert columns(bare) == Columns(first="Weight", second="", percent=False)


def test_steps_around_a_caution_are_two_runs() -> None:
    assert TYPICAL.common is not None
    runs = runs_of(TYPICAL.common.sections[0].blocks)
    assert [(run.kind, [block.number for block in run.blocks]) for run in runs] == [
        ("step", [1]),
        ("caution", [0]),
        ("step", [2]),
    ]


def test_only_amounts_that_the_sentence_leaves_out_are_listed() -> None:
    cycle, hand = TYPICAL.ways
    assert unsaid_uses(cycle.sections[0].blocks[0]) == ()
    assert len(unsaid_uses(hand.sections[0].blocks[0])) == len(TYPICAL.parts[0].lines)


def test_a_caution_with_a_place_in_the_method_is_not_loose() -> None:
    assert loose_cautions(TYPICAL) == ("Do not taste raw dough: flour and eggs are raw.",)


def test_a_running_title_keeps_whole_words() -> None:
    assert running_title("Honey oat braid") == "Honey oat braid"
    assert running_title("word " * 20) == "word word word word word word word …"


def test_the_home_of_a_recipe_is_its_address_without_its_path() -> None:
    assert home_of(TYPICAL) == "https://bakes.example/"


def test_what_follows_an_item_is_one_list() -> None:
    full = line("peel", "1 g", preparation="cut", note="soft", optional=True)
    assert line_words(full) == "cut, optional"
    assert line_words(TYPICAL.parts[0].lines[-1]) == "see Candied lemon peel"


def test_a_word_of_which_a_part_stands_out_is_held_together() -> None:
    runs = (
        Run(text="butter ("),
        Run(text="milk", strong=True),
        Run(text="), salt & "),
        Run(text="egg", strong=True),
    )
    assert runs_html(runs) == (
        'butter <span class="held">(<strong>milk</strong>),</span> salt &amp; <strong>egg</strong>'
    )


def test_a_long_word_of_which_a_part_stands_out_may_break() -> None:
    assert (
        runs_html((Run(text="milk", strong=True), Run(text="x" * 40))) == f"<strong>milk</strong>{'x' * 40}"
    )


def test_a_code_keeps_its_quiet_zone_and_is_never_finer_than_a_reader_needs() -> None:
    code = qr_code("https://bakes.example/recipes/x/", title="the page")
    assert "<title>the page</title>" in code.svg
    assert code.modules >= 21 + 8
    assert code.side_mm(0.1) == round(code.modules * 0.35, 2)
    assert code.side_mm(0.5) == round(code.modules * 0.5, 2)
