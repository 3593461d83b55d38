"""The formula of a bake day: packs replace, nothing that touched the bake is lost."""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from generator.catalogue.load import built_in, read_pantry
from generator.declaration.declare import declare
from generator.declaration.lines import formula_allergens
from generator.formula.bake_day import Added, as_baked
from generator.formula.book import understand_all
from generator.formula.intake.recipe import read_recipe
from generator.formula.model import Formula, Ware
from generator.formula.shelf import Shelf
from generator.measure.number import Range
from generator.measure.unit import SPOONS
from generator.source.read import read_document, read_mapping

PANTRY = """\
bread flour:
  label: Bread flour (wheat flour)
  contains: [wheat]
  checked: 2026-09-01
strong flour of the mill:
  is: bread flour
  label: Strong flour (wheat flour, malted barley flour)
  contains: [wheat, barley]
  may_contain: [soy, sesame]
  checked: 2026-12-01
bought peel:
  is: candied orange peel
  label: Candied peel (orange peel, sugar, preservative (sulphur dioxide))
  contains: [sulphites]
  checked: 2026-12-01
almonds:
  label: Almonds
  contains: [almond]
  may_contain: [tree nuts]
  checked: 2026-12-01
"""
PEEL = """\
---
title: Candied orange peel
weighs: 100 g
formula:
  - 100 g orange peel
  - 100 g granulated sugar
---
## Method
1. Stir the {orange peel} and the {granulated sugar}.
"""
LOAF = """\
---
title: Loaf
formula:
  - 500 g bread flour
  - 300 g water
  - {line: 50 g candied orange peel, recipe: candied-orange-peel}
---
## Method
1. Mix the {bread flour}, {water} and {candied orange peel}. {bake 30 min} at {oven 350 F}.
"""


def kitchen() -> tuple[Shelf, dict[str, Formula]]:
    keys, _ = read_mapping("pantry.yaml", PANTRY.encode())
    pantry, found = read_pantry(keys, catalogue=built_in(), spoons=SPOONS["us"])
    assert found == ()
    shelf = Shelf(catalogue=built_in(), pantry=pantry, spoons=SPOONS["us"], flour_cup="spooned", egg="large")
    written = {}
    for name, text in (("candied-orange-peel", PEEL), ("loaf", LOAF)):
        document, found = read_document(f"recipes/{name}.md", text.encode(), "recipe")
        assert document is not None
        written[name], _ = read_recipe(document, spoons=shelf.spoons)
    book = understand_all(written, faulty=set(), shelf=shelf)
    return shelf, dict(book.formulas)


SHELF, BOOK = kitchen()
LOAF_NAME = "loaf"


def ware(name: str) -> Ware:
    found = SHELF.ware(name)[0]
    assert found is not None
    return found


def added(item: str, grams: int) -> Added:
    formula = BOOK[LOAF_NAME]
    line = next((each for each in formula.lines if each.item == item), None)
    return Added(
        item=item,
        ware=line.ware if line else ware(item),
        line=line,
        grams=Range.exact(grams),
        span=formula.spans["title"],
    )


def declared(
    packs: tuple[Ware, ...] = (), more: tuple[Added, ...] = (), region: str = "EU"
) -> tuple[str, ...]:
    book = as_baked(BOOK[LOAF_NAME], book=BOOK, packs=packs, added=more)
    return declare(book[LOAF_NAME], book=book, region=region).contains


def statement(packs: tuple[Ware, ...] = (), more: tuple[Added, ...] = ()) -> str:
    book = as_baked(BOOK[LOAF_NAME], book=BOOK, packs=packs, added=more)
    return declare(book[LOAF_NAME], book=book, region="EU").statement


def test_without_a_record_nothing_changes() -> None:
    assert as_baked(BOOK[LOAF_NAME], book=BOOK, packs=(), added=()) == BOOK


def test_the_pack_of_the_day_takes_the_place_of_the_usual_one() -> None:
    assert declared() == ("wheat",)
    assert declared((ware("strong flour of the mill"),)) == ("wheat", "barley")
    assert statement((ware("strong flour of the mill"),)).startswith("Ingredients: strong flour (WHEAT flour")
    assert "bread flour" not in statement((ware("strong flour of the mill"),)).casefold()


def test_two_packs_of_one_thing_are_both_declared() -> None:
    words = statement((ware("bread flour"), ware("strong flour of the mill")))
    assert "bread flour" in words.casefold()
    assert "BARLEY" in words


def test_a_bought_pack_of_what_is_made_at_home_is_declared_beside_it() -> None:
    assert declared((ware("bought peel"),)) == ("wheat", "sulphites")
    assert "candied orange peel (" in statement((ware("bought peel"),))


def test_a_pack_that_no_line_is_made_of_is_declared_all_the_same() -> None:
    assert declared((ware("almonds"),)) == ("wheat", "almond")


def test_what_was_added_is_declared_and_weighed_where_it_stands_in_the_formula() -> None:
    assert declared(more=(added("almonds", 20),)) == ("wheat", "almond")
    more = as_baked(BOOK[LOAF_NAME], book=BOOK, packs=(), added=(added("water", 300),))[LOAF_NAME]
    assert sum(line.grams.mid for line in more.lines if line.item == "water" and line.grams) == 600
    assert statement(more=(added("water", 300),)).startswith("Ingredients: water, ")


NAMES = ("bread flour", "strong flour of the mill", "bought peel", "almonds")


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    packs=st.lists(st.sampled_from(NAMES), unique=True),
    more=st.lists(st.sampled_from(("almonds", "whole milk", "eggs", "water")), max_size=3),
    one=st.sampled_from(("almonds", "whole milk", "eggs", "bread flour")),
)
def test_naming_or_adding_one_thing_more_never_takes_an_allergen_away(
    packs: list[str], more: list[str], one: str
) -> None:
    """Only a pack in place of the usual one may do that; one more of anything never does."""
    wares = tuple(map(ware, packs))
    extra = tuple(added(each, 10) for each in more)
    before = as_baked(BOOK[LOAF_NAME], book=BOOK, packs=wares, added=extra)
    after = as_baked(BOOK[LOAF_NAME], book=BOOK, packs=wares, added=(*extra, added(one, 5)))
    carried = [formula_allergens(book[LOAF_NAME], book=book) for book in (before, after)]
    assert set(carried[0].allergens) <= set(carried[1].allergens)
    assert set(carried[0].may_contain) <= {*carried[1].may_contain, *carried[1].allergens}
    named = {allergen for each in wares for pack in each.packs for allergen in pack.contains}
    assert named <= set(carried[0].allergens)
