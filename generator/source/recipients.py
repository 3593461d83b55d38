"""A list of the people that tags are for: a table of text with a heading row, as spreadsheets save it (RFC 4180).

Columns `to` (needed), `from` and `note`, in any order; cells apart by commas or, where the heading has any, by
semicolons. A cell in double quotes may hold separators, line ends, and quotes written twice.
"""

import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass, field

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, did_you_mean, in_order
from generator.diagnostics.span import Span, whole_file
from generator.source.characters import decode
from generator.source.lines import Places

COLUMNS = ("to", "from", "note")
MOST_PEOPLE = 500


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    value: str
    span: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class Recipient:
    """One row; a column that is absent gives ""."""

    to: str
    sender: str
    note: str
    span: Span


def read_recipients(path: str, data: bytes) -> tuple[tuple[Recipient, ...], Diagnostics, str]:
    """Everyone on the list in its order, every mistake with its place, and the text for excerpts."""
    text, found = decode(path, data)
    if any(each.code in ("S001", "S003") for each in found):
        return (), found, text
    scanner = _Scanner(places=Places(path, text))
    rows = [row for row in scanner.rows() if any(cell.value.strip() for cell in row)]
    people, faults = _people(path, rows)
    return people, in_order((*found, *scanner.found, *faults)), text


def _people(path: str, rows: list[list[Cell]]) -> tuple[tuple[Recipient, ...], list[Diagnostic]]:
    if not rows:
        hint = "Write a heading row “to,from,note” and below it a row for each person."
        return (), [_fault("G008", whole_file(path), "this list is empty", hint)]
    columns, found = _columns(rows[0])
    if "to" not in columns:
        hint = "The first row names the columns: to, from, note."
        found.append(_fault("G001", rows[0][0].span, "no column is called “to”", hint))
        return (), found
    people = [person for row in rows[1:] if (person := _person(row, columns, found)) is not None]
    if not rows[1:]:
        hint = "Write a row for each person below the heading."
        found.append(_fault("G008", rows[0][0].span, "nobody stands on this list", hint))
    if len(people) > MOST_PEOPLE:
        hint = f"Split the list: at most {MOST_PEOPLE} tags are printed at a time."
        found.append(_fault("G008", people[MOST_PEOPLE].span, "this list is too long", hint))
    return tuple(people), found


def _columns(heading: list[Cell]) -> tuple[list[str], list[Diagnostic]]:
    """The name of each column, "" for one that is not known."""
    names: list[str] = []
    found: list[Diagnostic] = []
    for cell in heading:
        name = _tidied(cell.value).casefold()
        if name and name not in COLUMNS:
            hint = did_you_mean(name, COLUMNS) or f"The columns are: {', '.join(COLUMNS)}."
            found.append(_fault("G002", cell.span, f"there is no column “{name[:40]}”", hint))
        elif name and name in names:
            found.append(_fault("G003", cell.span, f"the column “{name}” is given twice", "Delete one."))
        names.append(name if name in COLUMNS and name not in names else "")
    return names, found


def _person(row: list[Cell], columns: list[str], found: list[Diagnostic]) -> Recipient | None:
    surplus = [cell for cell in row[len(columns) :] if cell.value.strip()]
    if surplus:
        hint = "A text with a comma or a semicolon in it needs quotes around it."
        found.append(_fault("G004", surplus[0].span, "this row has more cells than the heading", hint))
    cells = {name: _tidied(cell.value) for name, cell in zip(columns, row, strict=False) if name}
    if not cells.get("to"):
        at = columns.index("to")
        span = row[at].span if at < len(row) else row[-1].span
        found.append(
            _fault("G007", span, "this row does not say whom the tag is for", "Write a name under “to”.")
        )
        return None
    return Recipient(
        to=cells["to"], sender=cells.get("from", ""), note=cells.get("note", ""), span=row[0].span
    )


def _tidied(text: str) -> str:
    """One line, composed letters: a spreadsheet may save “é” as two characters, which no font joins well."""
    return " ".join(unicodedata.normalize("NFC", text).split())


@dataclass(slots=True, kw_only=True)
class _Scanner:
    """Splits the text into rows of cells in one pass."""

    places: Places
    found: list[Diagnostic] = field(default_factory=list)
    at: int = 0
    separator: str = ","

    def rows(self) -> Iterator[list[Cell]]:
        self.at = self.places.starts[0]
        self.separator = self._separator()
        while self.at < len(self.places.text):
            yield self._row()

    def _separator(self) -> str:
        heading = next((line for line in self.places.text[self.at :].splitlines() if line.strip()), "")
        return ";" if ";" in heading else ","

    def _row(self) -> list[Cell]:
        row = [self._cell()]
        while self._next() == self.separator:
            self.at += 1
            row.append(self._cell())
        self._line_end()
        return row

    def _line_end(self) -> None:
        if self._next() == "\r":
            self.at += 1
        if self._next() == "\n":
            self.at += 1

    def _next(self) -> str:
        return self.places.text[self.at : self.at + 1]

    def _cell(self) -> Cell:
        while self._next() in (" ", "\t"):
            self.at += 1
        return self._quoted() if self._next() == '"' else self._plain()

    def _plain(self) -> Cell:
        start = self.at
        while self._next() not in ("", "\r", "\n", self.separator):
            self.at += 1
        return self._made(self.places.text[start : self.at], start)

    def _quoted(self) -> Cell:
        start = self.at
        pieces: list[str] = []
        self.at += 1
        while True:
            end = self.places.text.find('"', self.at)
            if end < 0:
                pieces.append(self.places.text[self.at :])
                self._unclosed(start)
                return self._made("".join(pieces), start)
            pieces.append(self.places.text[self.at : end])
            self.at = end + 1
            if self._next() != '"':
                break
            pieces.append('"')
            self.at += 1
        cell = self._made("".join(pieces), start)
        self._nothing_follows()
        return cell

    def _unclosed(self, start: int) -> None:
        self.at = len(self.places.text)
        span = self.places.span(start, start + 1)
        hint = "Write a quote at the end of the cell; a quote inside is written twice."
        self.found.append(_fault("G005", span, "the quote that opens here never closes", hint))

    def _nothing_follows(self) -> None:
        start = self.at
        rest = self._plain().value
        if rest.strip():
            hint = "Put the whole cell into the quotes; a quote inside is written twice."
            span = self.places.span(start, start + len(rest.rstrip()))
            self.found.append(_fault("G006", span, "text stands after the closing quote", hint))

    def _made(self, value: str, start: int) -> Cell:
        return Cell(value=value, span=self.places.span(start, max(self.at, start + 1)))


def _fault(code: str, span: Span, message: str, hint: str) -> Diagnostic:
    return Diagnostic(code=code, message=message, span=span, hint=hint)
