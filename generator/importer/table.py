"""A table of old descriptions: one row is one recipe, with a name and a text."""

import csv
import io
from dataclasses import dataclass

MOST_ROWS = 500
_NAMES = ("name", "title", "recipe", "titel", "titre", "titolo", "nombre", "naam")
_TEXTS = ("text", "description", "body", "content", "beschreibung", "texto", "testo", "tekst")


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """`number` is the row's first line in the file. `more` holds the other cells, each with its column's name."""

    number: int
    name: str
    text: str
    more: tuple[tuple[str, str], ...] = ()


def read_table(text: str) -> tuple[tuple[Row, ...], str]:
    """The rows, or why the text is no table of recipes."""
    if len(text) > csv.field_size_limit():
        csv.field_size_limit(len(text) + 1)
    try:
        rows = _rows(text)
    except csv.Error as fault:
        return (), f"it is no table: {fault}"
    filled = [(number, row) for number, row in rows if any(cell.strip() for cell in row)]
    if not filled:
        return (), "the table is empty"
    if len(filled) > MOST_ROWS:
        return (), f"it has more than {MOST_ROWS} rows; split it"
    head = [cell.strip().casefold() for cell in filled[0][1]]
    name_at = next((head.index(each) for each in _NAMES if each in head), None)
    text_at = next((head.index(each) for each in _TEXTS if each in head), None)
    if name_at is None or text_at is None:
        if any(len(row) < 2 for _, row in filled):
            return (), "it needs two columns, “name” and “text”"
        return tuple(Row(number=number, name=row[0], text=row[1]) for number, row in filled), ""
    return tuple(_row(number, row, head, name_at, text_at) for number, row in filled[1:]), ""


def _rows(text: str) -> list[tuple[int, list[str]]]:
    first = text.lstrip("\ufeff").split("\n", 1)[0]
    delimiter = max(",;\t", key=first.count)
    reader = csv.reader(
        io.StringIO(text.removeprefix("\ufeff"), newline=""), delimiter=delimiter, strict=True
    )
    rows, last = [], 0
    for row in reader:
        rows.append((last + 1, row))
        last = reader.line_num
    return rows


def _row(number: int, row: list[str], head: list[str], name_at: int, text_at: int) -> Row:
    cells = [*row, *([""] * (len(head) - len(row)))]
    more = tuple(
        (head[at] if at < len(head) else "", cell)
        for at, cell in enumerate(cells)
        if at not in (name_at, text_at) and cell.strip()
    )
    return Row(number=number, name=cells[name_at], text=cells[text_at], more=more)
