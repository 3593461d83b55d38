"""What the formula sheet claims, on paper and folded into the page."""

from collections.abc import Iterator

from generator.present.bench_views import AltitudeView, EquipmentView, YeastView
from generator.present.sheet_views import SheetRow, SheetTable, SheetView, WaterView
from generator.proof.claim import DECLARATION, Claim, claim
from generator.wording.speech import gettext, shown


def sheet_claims(sheet: SheetView) -> Iterator[Claim]:
    """The base, the figures, the tables row by row."""
    yield from claim("the base of the percentages", sheet.base)
    for fact in sheet.facts:
        yield from claim(f"the figure “{fact.label}” of the formula", f"{fact.label} {fact.words}")
    for table in (*sheet.tables, *sheet.builds):
        yield from _table(table)


def batch_claims(sheet: SheetView) -> Iterator[Claim]:
    """The components to make before."""
    for batch in sheet.batches:
        words = f"{batch.title} {batch.used} {batch.made} {batch.left or gettext('nothing')}"
        yield from claim(f"how much to make of {batch.title}", words)


def water_claims(water: WaterView) -> Iterator[Claim]:
    """The temperature of the water for each room."""
    yield from claim(
        "the wanted temperature of the dough",
        shown("Water for a dough of %(temperature)s", temperature=water.wanted),
    )
    for row in water.rows:
        yield from claim(f"the water in a room of {row.room}", " ".join([row.room, *row.cells]))
    for note in water.notes:
        yield from claim("what the water is reckoned from", note)


def yeast_claims(yeast: YeastView) -> Iterator[Claim]:
    """Each yeast of the recipe as each of the three kinds: a row of a table, or a list under its name."""
    for row in yeast.rows:
        told = [f"{column} {cell}" for column, cell in zip(yeast.columns, row.cells, strict=True)]
        named = [
            f"{shown('%(yeast)s, as written', yeast=column) if at == row.own else column} {cell}"
            for at, (column, cell) in enumerate(zip(yeast.columns, row.cells, strict=True))
        ]
        ways = (" ".join([row.item, *named]), " ".join([row.item, *told]), " ".join([row.item, *row.cells]))
        yield from claim(f"{row.item} as other yeast", *ways)
    for note in yeast.notes:
        yield from claim("a note on other yeast", note)


def altitude_claims(altitude: AltitudeView) -> Iterator[Claim]:
    """The tables for kitchens that lie high, row by row."""
    for table in altitude.tables:
        yield from claim("a table for altitude", " ".join([table.title, *table.columns[1:]]))
        for row in table.rows:
            yield from claim(f"{row[0]} at altitude", " ".join(row))
    for note in (*(table.note for table in altitude.tables), *altitude.notes):
        yield from claim("a note on altitude", note, loose=True)


def equipment_claims(equipment: EquipmentView) -> Iterator[Claim]:
    """What is said of other equipment; its cautions must be there whole."""
    for entry in equipment.entries:
        yield from claim(f"a caution on “{entry.title}”", entry.caution, kind=DECLARATION, loose=True)
        for words in entry.says:
            yield from claim(f"what is said of “{entry.title}”", words, loose=True)
    for words in equipment.common:
        yield from claim("what is said of all other equipment", words, loose=True)


def _table(table: SheetTable) -> Iterator[Claim]:
    for row in (*table.rows, *((table.sum,) if table.sum.weight else ())):
        yield from claim(f"{row.item} in “{table.title}”", _row(row, table))


def _row(row: SheetRow, table: SheetTable) -> str:
    cells = [row.item, row.weight]
    cells += [row.of_all] if table.has_all else []
    cells += [row.of_own] if table.has_own else []
    return " ".join(cells)
