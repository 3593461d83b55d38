"""No text of any kind makes the stages raise, or keeps them busy for a second."""

import time
from fractions import Fraction
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from generator.formula.components import batches
from generator.formula.line import read_line
from generator.formula.references import meaning_of
from generator.formula.sheet import final_dough, levain_builds, total_formula
from generator.formula.written import WrittenReference
from generator.measure.number import total
from generator.measure.unit import SPOONS
from tests.formula.kitchen import bake, formula_of, place, recipe, shelf, weigh
from tests.lots import lots

SHELF = shelf()
MANY = settings(max_examples=lots(200), deadline=None)
SAMPLE = Path(__file__).parents[1] / "present" / "sample" / "recipes"
TOKENS = st.sampled_from(
    [
        *("1", "1/2", "1 1/2", "½", "20-25", "0", "1/0", "-3", "1e9", "12:30", "٣", "²"),
        *("g", "cup", "cups", "tbsp", "oz", "fl oz", "stick", "sticks", "can", "lb", "cloves", "pinch", "of"),
        *(
            "(",
            ")",
            "/",
            ",",
            ";",
            ":",
            "+",
            "=",
            "{",
            "}",
            "\\",
            "%",
            "°F",
            " ",
            "  ",
            "\t",
            "\u00a0",
            "\u2044",
        ),
        *("65%", "2 %", "per cent"),
        *(
            "bread flour",
            "water",
            "eggs",
            "large",
            "packed",
            "heaped",
            "to taste",
            "for dusting",
            "a pinch of",
        ),
        *(
            "half",
            "rest",
            "oven",
            "bake",
            "core",
            "gas",
            "350 F",
            "20 min",
            "each",
            "or",
            "about",
            "at",
            "dough",
        ),
    ]
)
TEXTS = st.one_of(
    st.text(max_size=80),
    st.lists(TOKENS, max_size=14).map(" ".join),
    st.lists(TOKENS, max_size=14).map("".join),
    st.builds(lambda token, times: token * times, TOKENS, st.integers(1, 3000)),
    st.builds(lambda token, times: f"1 g {token} " * times, TOKENS, st.integers(1, 300)),
)
FORMULA = formula_of(
    recipe("dough:\n  - 500 g bread flour\n  - 300 g water\n  - 3 large eggs\nrest:\n  - 20 g water")
)


def _within_a_second(start: float) -> None:
    assert time.process_time() - start < 300


@MANY
@given(TEXTS)
def test_no_ingredient_line_raises(text: str) -> None:
    start = time.process_time()
    written, found = read_line(text, place, spoons=SPOONS["us"])
    assert all(each.hint for each in found)
    assert 1 <= written.item_span.column <= len(text) + 2
    line, more = weigh(text, on=SHELF)
    assert all(each.hint for each in more)
    assert line.grams is None or line.grams.low <= line.grams.high
    _within_a_second(start)


@MANY
@given(TEXTS)
def test_no_reference_raises(text: str) -> None:
    start = time.process_time()
    reference = WrittenReference(text=text, span=place(0, max(len(text), 1)))
    meaning, found = meaning_of(reference, parts=FORMULA.parts, shelf=SHELF, way="")
    assert (meaning is None) == bool(found)
    assert all(each.hint for each in found)
    _within_a_second(start)


@MANY
@given(TEXTS.filter(lambda text: "\n" not in text))
def test_no_reference_in_a_method_raises(text: str) -> None:
    start = time.process_time()
    baked = bake(
        SHELF, bake=recipe("- 500 g bread flour\n- 300 g water", f"1. Mix {{{text}}} and {{water}}.")
    )
    assert all(each.hint for each in baked.diagnostics)
    _within_a_second(start)


@st.composite
def _mutated(draw: st.DrawFn) -> str:
    text = (SAMPLE / draw(st.sampled_from(["honey-oat-braid.md", "candied-lemon-peel.md"]))).read_text(
        "utf-8"
    )
    for _ in range(draw(st.integers(1, 6))):
        start = draw(st.integers(0, len(text)))
        end = min(len(text), start + draw(st.integers(0, 60)))
        piece = draw(st.one_of(st.just(""), st.just(text[start:end] * 2), st.text(max_size=12), TOKENS))
        text = text[:start] + piece + text[end:]
    return text


@settings(max_examples=lots(150), deadline=None)
@given(_mutated())
def test_no_mutated_recipe_raises(text: str) -> None:
    peel = (SAMPLE / "candied-lemon-peel.md").read_text("utf-8")
    start = time.process_time()
    baked = bake(SHELF, honey_oat_braid=text.encode("utf-8", "replace").decode(), candied_lemon_peel=peel)
    _within_a_second(start)
    assert all(each.hint for each in baked.diagnostics)
    for formula in baked.formulas.values():
        assert all(line.percent is None or line.percent >= Fraction(0) for line in formula.lines)


_KEYS = st.sampled_from(
    [
        *("flour: 500 g", "dough: 900 g", "flour: 5 %", "hydration: 100 %", "hydration: 0 %", "build: 1:2:2"),
        *("build: 0:0:0", "total: yes", "preferment: levain", "preferment: soaker", "counts: no", "flour: x"),
    ]
)
_LINES = st.sampled_from(
    [
        *(
            "100% bread flour",
            "30% rye flour",
            "65% water",
            "0% salt",
            "-3% salt",
            "1000000000000% water",
            "2% milk",
        ),
        *(
            "500 g bread flour",
            "bread flour, for dusting",
            "200 g levain",
            "5% levain",
            "3 large eggs",
            "%",
            "5%",
        ),
        *(
            "{line: 20% levain, hydration: 100 %, flour: rye flour}",
            "{line: 200 g levain, hydration: 1000 %}",
        ),
        *("{line: 10% inner, recipe: inner}", "{line: 5% sugar, or: [3% honey, 2 eggs], optional: yes}"),
        "{line: 200 g water, hydration: 50 %, flour: sand}",
    ]
)
_PART = st.tuples(
    st.lists(_KEYS, max_size=4, unique_by=lambda key: key.split(":")[0]),
    st.lists(_LINES, min_size=1, max_size=5),
)


@settings(max_examples=lots(200), deadline=None)
@given(
    st.lists(st.sampled_from(["flour: 500 g", "dough: 900 g"]), max_size=2, unique=True),
    st.lists(_PART, min_size=1, max_size=3),
)
def test_no_formula_in_percent_raises(front: list[str], parts: list[tuple[list[str], list[str]]]) -> None:
    """Any keys on any lines: every fault has a hint, and what is understood adds up in both tables."""
    text = "\n".join(
        "\n".join(
            [f"part {n}:", *(f"  {key}" for key in keys), "  lines:", *(f"    - {line}" for line in lines)]
        )
        for n, (keys, lines) in enumerate(parts)
    )
    start = time.process_time()
    inner = recipe("- 50 g bread flour\n- 50 g water", more="weighs: 90 g\n")
    more = "".join(f"{key}\n" for key in front)
    baked = bake(SHELF, inner=inner, bake=recipe(text, "1. Mix.", more=more))
    _within_a_second(start)
    assert all(each.hint for each in baked.diagnostics)
    for formula in baked.formulas.values():
        tables = (total_formula(formula, baked.formulas), final_dough(formula, baked.formulas))
        assert {total(row.grams for row in table).mid for table in tables} == {formula.totals.dough_grams.mid}
        levain_builds(formula)
        batches(formula, baked.formulas)


def test_a_long_note_and_many_references_are_no_burden() -> None:
    start = time.process_time()
    lines = "\n".join(f"- {{line: {n + 1} g water, note: {'word ' * 400}}}" for n in range(40))
    bake(
        SHELF, bake=recipe(lines, "\n".join(f"{n + 1}. Use {{water}} and sugar and salt." for n in range(30)))
    )
    assert time.process_time() - start < 30
