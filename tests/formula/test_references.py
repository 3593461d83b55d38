"""What stands in braces: whole items and parts, shares, extras, measures, and the account of each way."""

from fractions import Fraction

import pytest

from generator.formula.model import Formula, Heat, Measure, Mention, Timed, Use, WholePart
from tests.formula.kitchen import Baked, F, bake, exact, formula_of, recipe

FORMULA = """
dough:
  - 500 g bread flour
  - 300 g water
  - 4 eggs
  - 20-25 g honey
  - salt, to taste
finish:
  counts: no
  lines:
    - 20 g water
    - {line: 30 g pecans, optional: yes}
"""
ALL = "{bread flour}, {dough/water}, {eggs}, {honey}, {salt}, {finish/water}"


def _mentions(formula: Formula) -> tuple[Mention, ...]:
    return tuple(
        mention
        for way in formula.ways
        for section in way.sections
        for block in section.blocks
        for mention in block.words.mentions
    )


def _baked(method: str) -> Baked:
    return bake(bake=recipe(FORMULA, method))


def _uses(method: str) -> list[Use]:
    formula = formula_of(recipe(FORMULA, method))
    return [each for each in _mentions(formula) if isinstance(each, Use)]


def _without(*taken: str) -> str:
    kept = [each for each in ALL.split(", ") if each not in taken]
    return "1. Mix " + ", ".join(kept) + ". "


def test_an_item_is_its_whole_amount() -> None:
    use = next(each for each in _uses(f"1. {ALL}.") if each.item == "bread flour")
    assert (use.grams, use.share, use.fraction, use.part) == (exact(500), "all", 1, "dough")


def test_a_part_is_everything_in_it() -> None:
    formula = formula_of(recipe(FORMULA, "1. Mix the {dough}, then the {finish}."))
    whole = [each for each in _mentions(formula) if isinstance(each, WholePart)]
    assert [each.part for each in whole] == ["dough", "finish"]
    assert [use.item for use in whole[0].uses] == ["bread flour", "water", "eggs", "honey", "salt"]
    assert [use.grams for use in whole[0].uses][:2] == [exact(500), exact(300)]


def test_an_item_comes_before_a_part_of_its_name() -> None:
    formula = formula_of(
        recipe("water:\n  - 300 g water\n  - 500 g bread flour", "1. Mix {water} and {bread flour}.")
    )
    assert isinstance(_mentions(formula)[0], Use)


@pytest.mark.parametrize(
    ("share", "grams"),
    [
        ("half", 250),
        ("1/3", F(500, 3)),
        ("⅓", F(500, 3)),
        ("20 g", 20),
        ("30 %", 150),
        ("two thirds", F(1000, 3)),
        ("0.2 kg", 200),
        ("1 cup", 125),
    ],
)
def test_a_share_and_the_rest_make_the_whole(share: str, grams: Fraction | int) -> None:
    method = _without("{bread flour}") + f"Add {{bread flour: {share}}} and {{bread flour: rest}}."
    first, rest = [each for each in _uses(method) if each.item == "bread flour"]
    assert first.grams is not None
    assert rest.grams is not None
    assert first.grams.mid == grams
    assert first.grams + rest.grams == exact(500)


def test_pieces_may_be_shared() -> None:
    first, rest = [
        each for each in _uses(_without("{eggs}") + "{eggs: 1} and {eggs: rest}.") if each.item == "eggs"
    ]
    assert (first.count, first.grams) == (exact(1), exact(50))
    assert (rest.count, rest.grams) == (exact(3), exact(150))


def test_a_stated_share_of_a_range_is_as_stated_and_the_rest_keeps_the_range() -> None:
    first, rest = [
        each for each in _uses(_without("{honey}") + "{honey: 10 g}, {honey: rest}.") if each.item == "honey"
    ]
    assert first.grams == exact(10)
    assert rest.grams is not None
    assert (rest.grams.low, rest.grams.high) == (10, 15)


def test_rest_is_what_earlier_references_of_the_same_way_left() -> None:
    text = recipe(
        "- 500 g bread flour\n- 300 g water",
        body="\n## Method: one\n1. {water} {bread flour: half} {bread flour: rest}\n"
        "\n## Method: two\n1. {water} {bread flour: 1/5} {bread flour: rest}\n",
    )
    formula = formula_of(text)
    rests = [each for each in _mentions(formula) if isinstance(each, Use) and each.share == "rest"]
    assert [each.grams for each in rests] == [exact(250), exact(400)]


def test_a_rest_in_the_common_steps_must_be_the_same_for_all_ways() -> None:
    text = recipe(
        "- 500 g bread flour\n- 300 g water",
        body="\n## Method: one\n1. {water} {bread flour: half}\n"
        "\n## Method: two\n1. {water} {bread flour: 1/5}\n\n## Method\n1. {bread flour: rest}\n",
    )
    assert bake(bake=text).codes == ["R026"]


@pytest.mark.parametrize(
    ("extra", "grams", "words"),
    [
        ("10 g of bread flour", exact(10), ""),
        ("1 cup of water", exact(231 * F("2.54") ** 3 / 16), ""),
        ("a pinch of salt", None, "a pinch"),
        ("2 pinches of cinnamon", None, "2 pinches"),
        ("1 of eggs", exact(50), "1"),
        ("20 g of rice flour", exact(20), ""),
    ],
)
def test_an_extra_is_outside_the_formula(extra: str, grams: object, words: str) -> None:
    formula = formula_of(recipe(FORMULA, f"1. {ALL}. Then {{{extra}}}."))
    use = _mentions(formula)[-1]
    assert isinstance(use, Use)
    assert (use.extra, use.grams, use.words) == (True, grams, words)
    assert formula.totals.grams == formula_of(recipe(FORMULA)).totals.grams


def test_optional_lines_need_not_be_used() -> None:
    assert _baked(f"1. {ALL}.").codes == []
    assert _baked(f"1. {ALL} {{pecans}}.").codes == []


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("oven 350 F", "oven"),
        ("oven 180 C fan", "oven"),
        ("oven gas 4", "oven"),
        ("oven 350-375 F", "oven"),
        ("core 88 C", "core"),
        ("240 F", "other"),
    ],
)
def test_temperatures(text: str, kind: str) -> None:
    heat = _mentions(formula_of(recipe(FORMULA, f"1. {ALL}. {{{text}}}")))[-1]
    assert isinstance(heat, Heat)
    assert heat.kind == kind


@pytest.mark.parametrize("text", ["5 min", "6.75 in", "23 cm", "1 h 30 min"])
def test_plain_measures(text: str) -> None:
    assert isinstance(_mentions(formula_of(recipe(FORMULA, f"1. {ALL}. {{{text}}}")))[-1], Measure)


def test_an_escaped_brace_is_plain() -> None:
    formula = formula_of(recipe(FORMULA, f"1. {ALL}. \\{{water}}"))
    assert "{water}" in formula.ways[0].sections[0].blocks[0].words.markdown
    assert len(_mentions(formula)) == 6


@pytest.mark.parametrize(
    ("reference", "code", "hint"),
    [
        ("bred flour", "R010", "Did you mean “bread flour”?"),
        ("flour", "R010", "Did you mean “bread flour”?"),
        ("water", "R011", "Say which one: “{dough/water}” or “{finish/water}”."),
        ("dough: half", "R012", "Take shares of its ingredients, or write “{dough}” for everything in it."),
        ("bread flour: some", "R012", "Write “{bread flour: half}”"),
        ("bread flour: 3/2", "R022", "as “{bread flour: half}”"),
        ("bread flour: 0 g", "R012", "Write “{bread flour: half}”"),
        ("10 g bread flour", "R010", "Write “{bread flour: 10 g}” for a share"),
        ("10 g of flower", "R013", "Did you mean"),
        ("0 g of bread flour", "F004", "Give an amount above 0."),
        ("bake", "T001", "Write “{bake 20 min}”"),
        ("bake until brown", "T001", "Write “{bake 20 min}”"),
        ("bake: 20 min", "R010", "Write “{bake 20 min}”."),
        ("oven 350", "T002", "Write “{oven 350 F}”"),
        ("core done", "T002", "Write “{core 88 C}”."),
        ("oven 350 C", "T003", "Is it °F?"),
        ("core 88 F", "T003", "Is it °C?"),
        ("bread flour: rest", "R023", "Write “{bread flour}” for all of it"),
    ],
)
def test_a_reference_that_means_nothing_is_told_with_what_to_type(
    reference: str, code: str, hint: str
) -> None:
    taken = "{bread flour}" if reference.startswith("bread flour:") else ""
    baked = _baked(_without(taken) + f"{{{reference}}}")
    assert baked.codes == [code]
    assert hint in baked.diagnostics[0].hint


@pytest.mark.parametrize(
    ("method", "code"),
    [
        (f"1. {ALL} and {{bread flour}}.", "R020"),
        (_without("{bread flour}") + "{bread flour: half}, {bread flour}", "R020"),
        (f"1. {ALL} and {{bread flour: half}}.", "R020"),
        (f"1. {ALL} and {{finish}}.", "R020"),
        (_without("{bread flour}") + "{bread flour: 2/3}, {bread flour: half}", "R021"),
        (_without("{bread flour}") + "{bread flour: half} {bread flour: half} {bread flour: rest}", "R023"),
        (_without("{bread flour}") + "{bread flour: half} {bread flour: rest} {bread flour: rest}", "R020"),
        (_without("{salt}") + "{salt: 3 g}", "R022"),
        (_without("{bread flour}") + "Done.", "R024"),
        (_without("{bread flour}") + "{bread flour: half}", "R025"),
    ],
)
def test_the_account_of_a_way_must_come_out(method: str, code: str) -> None:
    baked = _baked(method)
    assert baked.codes == [code]
    assert all(each.hint for each in baked.diagnostics)


def test_shares_that_miss_the_whole_by_less_than_a_scale_shows_are_accepted() -> None:
    assert _baked(_without("{bread flour}") + "{bread flour: 249 g} {bread flour: 250 g}").codes == []


def test_each_way_with_the_common_part_uses_everything() -> None:
    text = recipe(
        "- 500 g bread flour\n- 300 g water",
        body="\n## Method: one\n1. {water}\n\n## Method: two\n1. Nothing.\n\n## Method\n1. {bread flour}\n",
    )
    baked = bake(bake=text)
    assert baked.codes == ["R024"]
    assert baked.diagnostics[0].message == "water is never used in “two”"


def test_stages_belong_to_kinds() -> None:
    kinds = ["work", "mix", "knead", "cook", "rest", "rise", "chill", "freeze", "cool", "bake"]
    stages = " ".join(f"{{{kind} 1 min}}" for kind in kinds)
    found = [
        each
        for each in _mentions(formula_of(recipe(FORMULA, f"1. {ALL} {stages}")))
        if isinstance(each, Timed)
    ]
    assert [each.stage.value for each in found] == ["hands_on"] * 4 + ["waiting"] * 5 + ["baking"]
