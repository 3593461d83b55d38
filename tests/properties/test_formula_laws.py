"""Laws of the baker's percentage that hold for any recipe."""

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from generator.formula.model import Formula, Use
from generator.formula.sheet import final_dough, total_formula
from generator.measure.number import Range, total
from tests.formula.kitchen import bake, exact, formula_of, recipe, shelf
from tests.lots import lots

SHELF = shelf()
LAW = settings(max_examples=lots(200), deadline=None)
ITEMS = (
    "bread flour",
    "rye flour",
    "water",
    "milk",
    "unsalted butter",
    "honey",
    "eggs",
    "table salt",
    "rolled oats",
)
AMOUNTS = st.lists(st.integers(1, 2000), min_size=len(ITEMS), max_size=len(ITEMS))
FACTORS = st.fractions(min_value=Fraction(1, 8), max_value=8, max_denominator=8).filter(lambda each: each > 0)


def _understood(amounts: list[Fraction], items: tuple[str, ...] = ITEMS, more: str = "") -> Formula:
    """Each amount in grams, a fraction where it is no whole number, so that the text is exact."""
    lines = "\n".join(f"- {amount} g {item}" for amount, item in zip(amounts, items, strict=True))
    return formula_of(recipe(lines, more=more), on=SHELF)


def _of(grams: list[int], factor: Fraction = Fraction(1)) -> list[Fraction]:
    return [each * factor for each in grams]


@LAW
@given(AMOUNTS, FACTORS)
def test_percentages_ignore_the_size_of_the_batch(grams: list[int], factor: Fraction) -> None:
    one, other = _understood(_of(grams)), _understood(_of(grams, factor))
    assert [line.percent for line in one.lines] == [line.percent for line in other.lines]
    assert one.totals.hydration == other.totals.hydration
    assert one.totals.hydration_nominal == other.totals.hydration_nominal
    assert one.totals.salt_percent == other.totals.salt_percent
    assert one.totals.salt_with_ingredients_percent == other.totals.salt_with_ingredients_percent


@LAW
@given(AMOUNTS, FACTORS)
def test_scaling_every_line_scales_every_total(grams: list[int], factor: Fraction) -> None:
    one = _understood(_of(grams), more="bakes_off: 12 %\n").totals
    other = _understood(_of(grams, factor), more="bakes_off: 12 %\n").totals
    assert other.grams == one.grams.scaled(factor)
    assert (other.flour, other.water) == (one.flour * factor, one.water * factor)
    assert one.finished_grams is not None
    assert other.finished_grams == one.finished_grams.scaled(factor)


@LAW
@given(AMOUNTS)
def test_the_flours_are_a_hundred_together(grams: list[int]) -> None:
    formula = _understood(_of(grams))
    assert sum(line.percent or 0 for line in formula.lines if line.flour) == 100


@LAW
@given(st.integers(1, 2000), st.integers(1, 2000), st.integers(1, 100))
def test_hydration_is_nominal_where_plain_water_is_the_only_wet_thing(
    flour: int, water: int, salt: int
) -> None:
    items = ("bread flour", "water", "table salt", "granulated sugar", "vegetable oil")
    totals = _understood(_of([flour, water, salt, salt, salt]), items).totals
    assert totals.hydration == totals.hydration_nominal == Fraction(100 * water, flour)


@LAW
@given(st.integers(100, 1000), st.integers(1, 800))
def test_milk_for_water_by_its_water_leaves_true_hydration_as_it_was(flour: int, milk: int) -> None:
    # Whole milk is 88.13 % water (USDA SR28 01077).
    water = Fraction("0.8813") * milk
    with_water = _understood([Fraction(flour), water], ("bread flour", "water")).totals
    with_milk = _understood([Fraction(flour), Fraction(milk)], ("bread flour", "whole milk")).totals
    assert with_milk.hydration == with_water.hydration


@LAW
@given(AMOUNTS, st.integers(1, 60))
def test_what_bakes_off_is_a_share_of_the_raw_weight(grams: list[int], loss: int) -> None:
    totals = _understood(_of(grams), more=f"bakes_off: {loss} %\n").totals
    assert totals.finished_grams == exact(sum(grams) * Fraction(100 - loss, 100))


SHARES = st.lists(st.integers(1, 9), min_size=1, max_size=5)


def _uses(method: str, line: str) -> list[tuple[Range | None, Range | None, Range | None]]:
    formula = formula_of(recipe(f"- {line}", method), on=SHELF)
    mentions = formula.ways[0].sections[0].blocks[0].words.mentions
    return [(use.grams, use.millilitres, use.count) for use in mentions if isinstance(use, Use)]


def _sum(found: list[Range | None]) -> Range | None:
    known = [each for each in found if each is not None]
    return sum(known[1:], known[0]) if known else None


@LAW
@given(SHARES, st.sampled_from(["500 g water", "2 cups water", "6 eggs", "20-25 g honey", "1-2 cups milk"]))
def test_fractions_with_a_rest_make_the_whole(weights: list[int], line: str) -> None:
    item = line.split()[-1]
    whole = sum(weights) + 1
    shares = " ".join(f"{{{item}: {each}/{whole}}}" for each in weights)
    parts = _uses(f"1. {shares} {{{item}: rest}}", line)
    ((grams, millilitres, count),) = _uses(f"1. {{{item}}}", line)
    assert _sum([each[0] for each in parts]) == grams
    assert _sum([each[1] for each in parts]) == millilitres
    assert _sum([each[2] for each in parts]) == count


@LAW
@given(st.lists(st.integers(1, 40), min_size=1, max_size=5), st.integers(201, 400), st.integers(0, 50))
def test_stated_grams_with_a_rest_make_the_whole(taken: list[int], low: int, more: int) -> None:
    line = f"{low}-{low + more} g water" if more else f"{low} g water"
    shares = " ".join(f"{{water: {each} g}}" for each in taken)
    parts = _uses(f"1. {shares} {{water: rest}}", line)
    assert _sum([each[0] for each in parts]) == Range(Fraction(low), Fraction(low + more))


MORE = settings(max_examples=lots(200), deadline=None)
SHARE = st.integers(1, 100)


@MORE
@given(SHARE, st.integers(20, 150), st.integers(20, 150), st.integers(1, 30), st.integers(100, 5000))
def test_the_final_dough_and_the_total_formula_weigh_the_same(
    share: int, wet: int, water: int, sugar: int, flour: int
) -> None:
    """Whatever the preferment, written in percent; a dough that it asks more of than there is has a message."""
    text = (
        f"first:\n  preferment: sponge\n  flour: {share} %\n  lines:\n    - 100% bread flour\n    - {wet}% water\n"
        f"dough:\n  total: yes\n  lines:\n    - 100% bread flour\n    - {water}% water\n"
        f"    - {sugar}% granulated sugar"
    )
    baked = bake(SHELF, bake=recipe(text, more=f"flour: {flour} g\n"))
    if share * wet > 100 * water:
        assert "F063" in baked.codes
        return
    formula = baked.only()
    whole, final = total_formula(formula, {}), final_dough(formula, {})
    weights = [total(row.grams for row in table) for table in (whole, final)]
    assert weights[0] == weights[1] == formula.totals.dough_grams
    assert {row.item: row.percent for row in whole} == {
        "bread flour": 100,
        "water": water,
        "granulated sugar": sugar,
    }
    assert formula.totals.prefermented_percent == share


@MORE
@given(st.integers(1, 500), st.integers(0, 200), AMOUNTS)
def test_both_tables_agree_with_a_starter_in_the_dough(
    starter: int, hydration: int, grams: list[int]
) -> None:
    lines = "\n".join(f"- {amount} g {item}" for amount, item in zip(grams, ITEMS, strict=True))
    line = f"- {{line: {starter} g levain, hydration: {hydration} %, flour: rye flour}}"
    formula = formula_of(recipe(f"{lines}\n{line}"), on=SHELF)
    weights = {
        total(row.grams for row in table) for table in (total_formula(formula, {}), final_dough(formula, {}))
    }
    assert weights == {formula.totals.dough_grams}
    flour = sum(row.percent or 0 for row in total_formula(formula, {}) if "flour" in row.item)
    assert flour == 100


@MORE
@given(st.lists(st.integers(1, 300), min_size=3, max_size=3), st.integers(100, 9000))
def test_percents_for_a_dough_come_back_as_they_were_written(percents: list[int], dough: int) -> None:
    items = ("water", "granulated sugar", "table salt")
    lines = "\n".join(f"- {each}% {item}" for each, item in zip(percents, items, strict=True))
    formula = formula_of(recipe(f"- 100% bread flour\n{lines}", more=f"dough: {dough} g\n"), on=SHELF)
    assert [line.percent for line in formula.lines] == [100, *percents]
    assert formula.totals.dough_grams == exact(dough)
