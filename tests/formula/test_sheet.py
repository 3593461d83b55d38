"""The formula sheet: total formula, final dough, builds; and batches of components."""

from fractions import Fraction

from generator.formula.components import batches
from generator.formula.sheet import final_dough, levain_builds, total_formula
from generator.measure.number import total
from tests.formula.kitchen import Baked, F, bake, exact, recipe


def _sums(baked: Baked, name: str) -> tuple[Fraction, Fraction, Fraction]:
    formula = baked.formulas[name]
    tables = (total_formula(formula, baked.formulas), final_dough(formula, baked.formulas))
    whole, bowl = (total(row.grams for row in table).mid for table in tables)
    return whole, bowl, formula.totals.dough_grams.mid


def test_the_same_ingredient_is_one_row_of_the_total_formula() -> None:
    text = (
        "biga:\n  preferment: biga\n  lines:\n    - 400 g bread flour\n    - 200 g water\n"
        "dough:\n  - 600 g bread flour, sifted\n  - 460 g water, cool\n  - 22 g table salt"
    )
    baked = bake(bake=recipe(text))
    rows = total_formula(baked.only(), baked.formulas)
    assert [(row.item, row.grams, row.percent) for row in rows] == [
        ("bread flour", exact(1000), 100),
        ("water", exact(660), 66),
        ("table salt", exact(22), F("2.2")),
    ]
    final = final_dough(baked.only(), baked.formulas)
    assert [row.item for row in final] == ["bread flour", "biga", "water", "table salt"]
    assert final[1].percent == 100


def test_without_flour_there_are_no_percents() -> None:
    baked = bake(bake=recipe("- 200 g ground almonds\n- 200 g granulated sugar"))
    assert [row.percent for row in final_dough(baked.only(), baked.formulas)] == [None, None]


def test_what_does_not_count_is_on_no_sheet() -> None:
    text = (
        "dough:\n  - 500 g bread flour\n  - {line: 50 g raisins, optional: yes}\n"
        "finish:\n  counts: no\n  lines: [20 g honey]"
    )
    baked = bake(bake=recipe(text))
    assert [row.item for row in total_formula(baked.only(), baked.formulas)] == ["bread flour"]


def test_a_preferment_made_by_a_recipe_is_opened_and_its_loss_is_a_row() -> None:
    scald = recipe("- 25 g bread flour\n- 125 g water", more="weighs: 140 g\n")
    dough = recipe(
        "scald:\n  preferment: water roux\n  lines:\n    - {line: 140 g scald, recipe: scald}\n"
        "dough:\n  - 475 g bread flour\n  - 225 g water"
    )
    baked = bake(scald=scald, dough=dough)
    rows = {row.item: row.grams.mid for row in total_formula(baked.formulas["dough"], baked.formulas)}
    assert rows == {"bread flour": 500, "water": 350, "lost in making scald": -10}
    assert len(set(_sums(baked, "dough"))) == 1


def test_a_component_of_the_dough_itself_stays_one_row() -> None:
    peel = recipe("- 150 g lemon peel\n- 200 g granulated sugar", more="weighs: 260 g\n")
    dough = recipe("- 500 g bread flour\n- {line: 40 g candied peel, recipe: peel}")
    baked = bake(peel=peel, dough=dough)
    rows = total_formula(baked.formulas["dough"], baked.formulas)
    assert [row.item for row in rows] == ["bread flour", "candied peel"]


def test_a_starter_in_the_dough_is_opened_in_the_total_and_a_row_of_the_final_dough() -> None:
    text = "- 900 g bread flour\n- 600 g water\n- {line: 200 g levain, hydration: 100 %, flour: bread flour}"
    baked = bake(bake=recipe(text))
    whole = {row.item: row.percent for row in total_formula(baked.only(), baked.formulas)}
    assert whole == {"bread flour": 100, "water": 70}
    assert [row.item for row in final_dough(baked.only(), baked.formulas)] == [
        "bread flour",
        "water",
        "levain",
    ]
    unknown = bake(bake=recipe("- 900 g bread flour\n- {line: 200 g levain, hydration: 100 %}"))
    assert [row.item for row in total_formula(unknown.only(), unknown.formulas)] == [
        "bread flour",
        "flour in levain",
        "water",
    ]


def test_a_levain_tells_how_it_is_built() -> None:
    text = (
        "levain:\n  preferment: levain\n  hydration: 100 %\n  build: 1:2:2\n  lines:\n"
        "    - 200 g bread flour\n    - 200 g water\ndough:\n  - 800 g bread flour\n  - 500 g water"
    )
    (found,) = levain_builds(bake(bake=recipe(text)).only())
    assert (found.part, found.build.seed, found.build.flour, found.build.water) == ("levain", 80, 160, 160)


def _nested(depth: int) -> dict[str, str]:
    """r0 in r1 in r2 …, each half flour and half the one before."""
    recipes = {"r0": recipe("- 100 g bread flour\n- 100 g water", more="weighs: 200 g\n")}
    for n in range(1, depth + 1):
        inner = (
            f"starter:\n  preferment: starter\n  lines:\n    - {{line: 100 g old one, recipe: r{n - 1}}}\n"
        )
        recipes[f"r{n}"] = recipe(
            f"{inner}dough:\n  - 50 g bread flour\n  - 50 g water", more="weighs: 200 g\n"
        )
    return recipes


def test_components_nest_to_any_depth() -> None:
    baked = bake(None, **_nested(30))
    last = baked.formulas["r30"]
    assert (last.totals.flour, last.totals.water) == (100, 100)
    rows = {row.item: row.grams.mid for row in total_formula(last, baked.formulas)}
    assert rows == {"bread flour": 100, "water": 100}
    assert len(set(_sums(baked, "r30"))) == 1


def test_a_circle_is_refused_at_any_depth() -> None:
    recipes = _nested(6)
    recipes["r0"] = recipe("- 100 g bread flour\n- {line: 10 g old one, recipe: r6}", more="weighs: 200 g\n")
    baked = bake(None, **recipes)
    assert baked.codes.count("F046") == 1
    assert baked.formulas == {}


def test_batches_of_a_component_and_what_is_left_over() -> None:
    peel = recipe("- 150 g lemon peel\n- 200 g granulated sugar", more="weighs: 260 g\n")
    dough = recipe(
        "dough:\n  - 500 g bread flour\n  - {line: 200 g peel, recipe: peel}\n"
        "top:\n  counts: no\n  lines:\n    - {line: 100 g peel, recipe: peel}"
    )
    baked = bake(peel=peel, dough=dough)
    (batch,) = batches(baked.formulas["dough"], baked.formulas)
    assert (batch.name, batch.share, batch.batches) == ("peel", F(300, 260), 2)
    assert (batch.used_grams, batch.left_grams) == (300, 220)
    assert baked.codes.count("N006") == 1
    assert batches(baked.formulas["peel"], baked.formulas) == ()


def test_a_whole_batch_leaves_nothing_over() -> None:
    peel = recipe("- 150 g lemon peel\n- 200 g granulated sugar", more="weighs: 260 g\n")
    baked = bake(peel=peel, dough=recipe("- 500 g bread flour\n- {line: 260 g peel, recipe: peel}"))
    (batch,) = batches(baked.formulas["dough"], baked.formulas)
    assert (batch.batches, batch.left_grams) == (1, 0)
    assert "N006" not in baked.codes
