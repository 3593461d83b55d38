"""The site's table: as long as a pack is to be read, no cell says that something is not listed."""

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
    return Declared(title=title, path=f"recipes/{title}/", declaration=declaration)


TABLE = allergen_table(
    (bake("tart", ("milk", "almond"), ("tree nuts",)), bake("bun", ("wheat",), (), ("Read the pack.",))),
    region="EU",
)


def test_columns_are_what_any_bake_lists_in_the_words_of_the_region() -> None:
    assert [head.words for head in TABLE.heads] == ["almonds", "milk", "nuts", "wheat"]
    assert [row.title for row in TABLE.rows] == ["bun", "tart"]


def test_each_cell_says_its_state_and_where_it_comes_from() -> None:
    bun, tart = TABLE.rows
    assert [cell.state for cell in tart.cells] == ["contains", "contains", "may contain", "not listed"]
    assert tart.cells[0].sources == ("thing with almond: its pack says “almond”",)
    assert tart.cells[2].sources == ("thing with tree nuts: its pack says “tree nuts”",)
    assert tart.cells[3].sources == ()
    assert [cell.state for cell in bun.cells] == ["to be read"] * 3 + ["contains"]
    assert bun.cells[0].sources == ("Read the pack.",)
