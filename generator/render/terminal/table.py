"""Columns and paragraphs of a terminal."""

from collections.abc import Sequence
from textwrap import fill

INDENT = "  "
WIDEST = 100
"""Columns of a paragraph: longer lines are hard to read."""

Row = Sequence[str]


def columns(rows: Sequence[Row], *, right: frozenset[int] = frozenset()) -> list[str]:
    """Each row as one line, the cells below each other; `right` names the columns that end together, from 0."""
    count = max((len(row) for row in rows), default=0)
    widths = [max((len(row[each]) for row in rows if each < len(row)), default=0) for each in range(count)]
    return [INDENT + _line(row, widths, right) for row in rows]


def _line(row: Row, widths: Sequence[int], right: frozenset[int]) -> str:
    cells = [_padded(cell, widths[each], right=each in right) for each, cell in enumerate(row)]
    return "  ".join(cells).rstrip()


def _padded(cell: str, width: int, *, right: bool) -> str:
    space = " " * (width - len(cell))
    return space + cell if right else cell + space


def paragraph(text: str, *, first: str = INDENT, rest: str = INDENT) -> str:
    """Text in lines of a readable length."""
    return fill(
        text,
        WIDEST,
        initial_indent=first,
        subsequent_indent=rest,
        break_long_words=False,
        break_on_hyphens=False,
    )


def block(head: str, *lines: str) -> str:
    """A heading with its lines; "" where there are none."""
    told = [line for line in lines if line]
    return "\n".join((head, *told)) if told else ""
