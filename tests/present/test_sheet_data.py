"""The formula sheet and the batches in recipe.json."""

from datetime import date

from generator.declaration.declare import REGION_NAMES, declare
from generator.present.data import recipe_data
from generator.present.recipe import Setting
from generator.settings import Settings
from tests.formula.kitchen import Baked, bake, recipe

SPONGE = recipe("- 100 g bread flour\n- 100 g water", more="weighs: 200 g\n")
DOUGH = recipe(
    "levain:\n  preferment: levain\n  hydration: 100 %\n  build: 1:2:2\n  lines:\n"
    "    - {line: 300 g sponge, recipe: sponge}\n"
    "dough:\n  - 350 g bread flour\n  - 200 g water\n  - 10-12 g table salt"
)


def _setting(baked: Baked) -> Setting:
    book = baked.formulas
    declarations = {
        name: {region: declare(each, book=book, region=region) for region in REGION_NAMES}
        for name, each in book.items()
    }
    return Setting(
        settings=Settings(), book=book, declarations=declarations, photos={}, day=date(2026, 10, 1)
    )


def test_both_tables_the_build_and_the_batches_are_in_the_data() -> None:
    baked = bake(sponge=SPONGE, dough=DOUGH)
    data = recipe_data(baked.formulas["dough"], _setting(baked))
    assert data["sheet"] == {
        "total": [
            {"item": "bread flour", "grams": [500, 500], "percent": 100},
            {"item": "water", "grams": [350, 350], "percent": 70},
            {"item": "table salt", "grams": [10, 12], "percent": 2.2},
        ],
        "final": [
            {"item": "bread flour", "grams": [350, 350], "percent": 100},
            {"item": "levain", "grams": [300, 300], "percent": float(30000 / 350)},
            {"item": "water", "grams": [200, 200], "percent": float(20000 / 350)},
            {"item": "table salt", "grams": [10, 12], "percent": float(1100 / 350)},
        ],
        "builds": [{"part": "levain", "seed": 60, "flour": 120, "water": 120, "hydration": 100}],
    }
    assert data["batches"] == [
        {
            "recipe": "sponge",
            "share": 1.5,
            "batches": 2,
            "used_grams": 300,
            "batch_grams": 200,
            "left_grams": 100,
        }
    ]
