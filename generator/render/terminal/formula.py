"""The formula sheet: total formula, preferments, final dough, the build of a levain, batches of components."""

from collections.abc import Iterator

from generator.present.sheet_views import SheetTable, SheetView
from generator.render.terminal.table import INDENT, block, columns

_FIGURES = frozenset({1, 2, 3})
_TOLD = frozenset(
    {"Prefermented flour", "Dough weight", "Raw weight", "Finished weight", "Flour", "Hydration"}
)
"""What stands beside the docket already."""


def formula(sheet: SheetView) -> Iterator[str]:
    """The tables where they say more than the docket does, then what a levain is built of."""
    yield _facts(sheet)
    if len([each for each in sheet.tables if each.has_all]) > 1:
        yield from (_table(each) for each in sheet.tables if each.has_all)
    yield from (_table(each) for each in sheet.builds)


def batches(sheet: SheetView) -> str:
    head = ("", "used here", "make", "left over")
    rows = [(each.title, each.used, each.made, each.left or "nothing") for each in sheet.batches]
    return block("To make before", *columns([head, *rows])) if rows else ""


def _facts(sheet: SheetView) -> str:
    rows = [(fact.label, fact.words) for fact in sheet.facts if fact.label not in _TOLD]
    base = f"{INDENT}{sheet.base}." if sheet.base else ""
    return block("Formula sheet", base, *columns(rows))


def _table(table: SheetTable) -> str:
    heads = ("of all flour" if table.has_all else "", table.own_flour if table.has_own else "")
    rows = [(row.item, row.weight, row.of_all, row.of_own) for row in (*table.rows, table.sum)]
    shown = [("", "", *heads), *rows] if any(heads) else rows
    remark = f", {table.remark}" if table.remark else ""
    return block(f"{table.title}{remark}", *columns(shown, right=_FIGURES))
