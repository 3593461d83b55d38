"""What helps at the bench: other yeast, water, the loading of a machine, other equipment, other tins, altitude."""

from collections.abc import Iterator
from itertools import islice

from generator.present.bench_views import AltitudeTable, EquipmentEntry
from generator.present.sheet_views import MachineView, SheetView
from generator.present.views import WayView
from generator.render.terminal.table import INDENT, block, columns, paragraph

_DEEPER = INDENT * 2


def yeast(sheet: SheetView) -> str:
    """The recipe's own kind stands among the others."""
    view = sheet.yeast
    if view is None:
        return ""
    rows = [("", *(each.lower() for each in view.columns)), *((row.item, *row.cells) for row in view.rows)]
    return block("Other yeast", *columns(rows), *map(paragraph, view.notes))


def water(sheet: SheetView) -> str:
    view = sheet.water
    if view is None:
        return ""
    rows = [
        ("room", *(each.lower() for each in view.columns)),
        *((row.room, *row.cells) for row in view.rows),
    ]
    table = columns(rows) if view.rows else []
    return block(f"Water for a dough of {view.wanted}", *table, *map(paragraph, view.notes))


def loading(way: WayView) -> str:
    view = way.machine
    if view is None:
        return ""
    words = (f"Caution: {view.timer}", view.rest, view.look, view.pan, view.basis)
    told = (paragraph(each) for each in words if each)
    return block(f"Loading the machine, {way.name}", paragraph(view.order), *_layers(view), *told)


def _layers(view: MachineView) -> Iterator[str]:
    """The rows of all layers stand in the same columns."""
    told = [row for layer in view.layers for row in layer.rows] + list(view.added)
    cells = [(row.first, row.second, row.item) for row in told]
    rows = iter([INDENT + line for line in columns(cells, right=frozenset({0}))])
    for number, layer in enumerate(view.layers, start=1):
        mark = f"{number}. " if view.ordered else ""
        yield f"{INDENT}{mark}{layer.title}{f', {layer.remark}' if layer.remark else ''}"
        yield from islice(rows, len(layer.rows))
    if view.added:
        yield f"{INDENT}Later, {view.added_when}"
        yield from rows


def equipment(sheet: SheetView) -> Iterator[str]:
    """The same dough with what the maker wrote no way for."""
    view = sheet.equipment
    if view is None:
        return
    yield block("With other equipment", paragraph(view.intro))
    yield from (_entry(each) for each in view.entries)
    yield "\n".join(paragraph(each) for each in (*view.common, view.basis) if each)


def _entry(entry: EquipmentEntry) -> str:
    layers = (
        paragraph(
            f"{f'{number}. ' if entry.ordered else ''}{layer.title}: {layer.items}"
            f"{f' ({layer.remark})' if layer.remark else ''}",
            first=_DEEPER,
            rest=_DEEPER + "   ",
        )
        for number, layer in enumerate(entry.layers, start=1)
    )
    caution = paragraph(f"Caution: {entry.caution}") if entry.caution else ""
    return block(
        f"{INDENT}{entry.title}", paragraph(entry.order), *layers, caution, *map(paragraph, entry.says)
    )


def tins(sheet: SheetView) -> str:
    """The usual tins, each as `--tin` takes it."""
    view = sheet.tins
    if view is None:
        return ""
    rows = [(row.times, row.title) for row in view.rows]
    return block("Other tins", *columns(rows, right=frozenset({0})), paragraph(view.remark))


def altitude(sheet: SheetView) -> str:
    """Only for a kitchen whose height was asked for: the page has it folded away."""
    view = sheet.altitude
    if view is None or not view.height:
        return ""
    tables = (line for each in view.tables for line in _altitude_table(each))
    return block(f"At {view.height}", *tables, *map(paragraph, view.notes))


def _altitude_table(table: AltitudeTable) -> Iterator[str]:
    yield f"{INDENT}{table.title}"
    yield from (INDENT + line for line in columns([table.columns, *table.rows]))
    yield paragraph(table.note, first=_DEEPER, rest=_DEEPER)
