"""A table of old descriptions: one row is one recipe, with a name and a text."""

import csv
import io
import re

from generator.importer.files.food_rows import Row, by_recipe, food_columns
from generator.importer.places.words import SECTIONS, plain

MOST_ROWS = 500
_NAMES = ("name", "title", "recipe", "titel", "titre", "titolo", "nombre", "naam")
_LEADS = ("lead", "summary", "intro", "introduction", "about", "notes before")
_FACTS = ("yield", "yields", "makes", "servings", "serves", "portions", "storage", "keeps", "tin", "pan")
_TEXTS = ("text", "description", "body", "content", "beschreibung", "texto", "testo", "tekst")


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
    if foods := food_columns(head):
        return by_recipe(filled, foods), ""
    sections = {at: SECTIONS[plain(each)] for at, each in enumerate(head) if plain(each) in SECTIONS}
    if "ingredients" in sections.values():
        rows_of = (_in_sections(number, row, head, name_at or 0, sections) for number, row in filled[1:])
        return tuple(rows_of), ""
    if name_at is None or text_at is None:
        if any(len(row) < 2 for _, row in filled):
            return (), "it needs two columns, “name” and “text”"
        return tuple(Row(number=number, name=row[0], text=row[1]) for number, row in filled), ""
    return tuple(_row(number, row, head, name_at, text_at) for number, row in filled[1:]), ""


def _in_sections(number: int, row: list[str], head: list[str], name_at: int, sections: dict[int, str]) -> Row:
    """A recipe whose list, steps and facts stand in columns of their own: each under the name of its column."""
    cells = [*row, *([""] * (len(head) - len(row)))]
    used = {name_at, *sections}
    said = [at for at, each in enumerate(head) if at not in used and each in (*_TEXTS, *_LEADS)]
    facts = [at for at, each in enumerate(head) if at not in used and each in _FACTS]
    used |= {*said, *facts}
    words = [cells[at].strip() for at in said]
    words += [f"{head[at].capitalize()}: {cells[at].strip()}" for at in facts if cells[at].strip()]
    for wanted in ("ingredients", "method"):
        for at in (at for at, name in sections.items() if name == wanted):
            words += ["", head[at].capitalize(), *_parted(cells[at])]
    more = tuple(
        (head[at] if at < len(head) else "", cell)
        for at, cell in enumerate(cells)
        if (at not in used or sections.get(at) not in (None, "ingredients", "method")) and cell.strip()
    )
    return Row(number=number, name=cells[name_at], text="\n".join(words), more=more)


def _parted(cell: str) -> list[str]:
    """The lines of a cell; a bar between things on one line is a line's end."""
    lines = cell.strip().splitlines()
    return re.split(r"\s*[|¶]\s*|\s*;;\s*", lines[0]) if len(lines) == 1 else lines


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
