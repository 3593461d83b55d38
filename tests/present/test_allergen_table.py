"""The site's table: as long as a pack is to be read, no cell says that something is not listed."""

import pytest

from generator.declaration.model import Declaration, Trace
from generator.present.allergen_table import Declared, allergen_table


def bake(
    title: str, contains: tuple[str, ...], may: tuple[str, ...], unknown: tuple[str, ...] = ()
) -> Declared:
    traces = [("contains", each) for each in contains] + [("may contain", each) for each in may]
    declaration = Declaration(
        region="EU",
        finished=not unknown,
        ingredients=(),
        contains=contains,
        may_contain=may,
        unknown=unknown,
        contains_line=(),
        may_line=(),
        unfinished="This declaration is not finished." if unknown else "",
        statement="",
        traces=(),
    )
    return Declared(
        title=title,
        path=f"recipes/{title}/",
        declaration=declaration,
        traces=tuple(
            Trace(
                allergen=each,
                state=state,
                part="",
                item=f"thing with {each}",
                source="label of it",
                words=each,
            )
            for state, each in traces
        ),
    )


TABLE = allergen_table(
    (bake("tart", ("milk", "almond"), ("tree nuts",)), bake("bun", ("wheat",), (), ("Read the pack.",))),
    region="EU",
)


def test_columns_are_what_any_bake_lists_in_the_words_of_the_region() -> None:
    assert [head.words for head in TABLE.heads] == ["almonds", "milk", "nuts", "wheat"]
    assert [row.title for row in TABLE.rows] == ["bun", "tart"]


def test_each_cell_says_its_state_and_where_it_comes_from() -> None:
    bun, tart = TABLE.rows
    assert [cell.state for cell in tart.cells] == ["contains", "contains", "contains", "not listed"]
    sources = ("thing with almond: its pack says “almond”", "thing with tree nuts: its pack says “tree nuts”")
    assert tart.cells[0].sources == tart.cells[2].sources == sources
    assert tart.cells[3].sources == ()
    assert [cell.state for cell in bun.cells] == ["to be read"] * 3 + ["contains"]
    assert bun.cells[0].sources == ("Read the pack.",)


def state(region: str, column: str, *bakes: Declared) -> list[str]:
    table = allergen_table(bakes, region=region)
    at = [head.words for head in table.heads].index(column)
    return [row.cells[at].state for row in table.rows]


@pytest.mark.parametrize("region", ["US", "CA", "EU"])
def test_a_warning_of_a_class_stands_under_every_kind_of_it(region: str) -> None:
    """Who hides what lists hazelnut must not be shown a bake whose pack warns of tree nuts."""
    column = {"US": "hazelnut", "CA": "hazelnuts", "EU": "hazelnuts"}[region]
    a, b = bake("a", ("hazelnut",), ()), bake("b", ("milk",), ("tree nuts",))
    c, d = bake("c", ("tree nuts",), ()), bake("d", ("milk",), ("pecan",))
    assert state(region, column, a, b, c, d) == ["contains", "may contain", "may contain", "not listed"]


def test_a_kind_stands_under_its_class_whatever_the_region_counts() -> None:
    wheat, barley, milk = (
        bake("a", ("wheat",), ()),
        bake("b", ("barley",), ()),
        bake("c", ("milk",), ("gluten",)),
    )
    gluten = state("US", "cereals containing gluten", wheat, barley, milk)
    assert gluten == ["contains", "contains", "may contain"]
    goat = bake("d", ("goat milk",), ())
    assert state("US", "milk", goat, milk) == ["contains", "contains"]
    assert state("US", "goat milk", goat, milk) == ["not listed", "contains"]
