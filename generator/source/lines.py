"""From an index of a file's text to its line and column, and back."""

import re
from bisect import bisect_right

from generator.diagnostics.span import Span

BYTE_ORDER_MARK = "\ufeff"
LINE_END = re.compile(r"\r\n|\n|\r")


class Places:
    """Where each character of one file stands.

    A line ends with a line feed, a carriage return, or both. A byte-order mark at the start takes no column.
    """

    __slots__ = ("path", "starts", "text")

    def __init__(self, path: str, text: str) -> None:
        self.path = path
        self.text = text
        first = 1 if text.startswith(BYTE_ORDER_MARK) else 0
        self.starts = (first, *(match.end() for match in LINE_END.finditer(text)))

    def line_of(self, index: int) -> int:
        """The number of the line that holds `index`, from 1."""
        return max(bisect_right(self.starts, index), 1)

    def line_and_column(self, index: int) -> tuple[int, int]:
        line = self.line_of(index)
        return line, max(index - self.starts[line - 1], 0) + 1

    def line_text(self, line: int) -> str:
        """The characters of a line, without its end."""
        start = self.starts[line - 1]
        end = self.starts[line] if line < len(self.starts) else len(self.text)
        return self.text[start:end].rstrip("\r\n")

    def line_count(self) -> int:
        return len(self.starts)

    def index_of(self, line: int, column: int) -> int:
        return self.starts[line - 1] + column - 1

    def span(self, start: int, end: int) -> Span:
        """The stretch from `start` to `end`, never empty and without a line end at its end."""
        while end > start + 1 and self.text[end - 1 : end] in ("\n", "\r"):
            end -= 1
        line, column = self.line_and_column(start)
        end_line, end_column = self.line_and_column(max(end, start))
        if (end_line, end_column) <= (line, column):
            end_line, end_column = line, column + 1
        return Span(path=self.path, line=line, column=column, end_line=end_line, end_column=end_column)
