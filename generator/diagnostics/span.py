"""A place in a maker's file."""

from dataclasses import dataclass

PROGRAM = "./"
"""Stands before the path of a file that is the program's own and not the maker's."""


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Span:
    """A stretch of characters. Lines and columns count from 1, columns in characters; the end is exclusive.

    `path` is the file's path inside the content folder, with forward slashes; one that begins with `./` is of a file
    of the program.
    """

    path: str
    line: int
    column: int
    end_line: int
    end_column: int

    def until(self, other: "Span") -> "Span":
        """The stretch from the start of this one to the end of `other`."""
        return Span(
            path=self.path,
            line=self.line,
            column=self.column,
            end_line=other.end_line,
            end_column=other.end_column,
        )

    def slice(self, start: int, end: int) -> "Span":
        """Characters `start` to `end` of this stretch, which must stand on one line."""
        return Span(
            path=self.path,
            line=self.line,
            column=self.column + start,
            end_line=self.line,
            end_column=self.column + max(end, start + 1),
        )


def whole_file(path: str) -> Span:
    """The place to name when a file as a whole is meant: its first character."""
    return Span(path=path, line=1, column=1, end_line=1, end_column=2)


def first_place(path: str, text: str, words: str) -> Span:
    """Where `words` first stand in a file's text; the whole file where they do not (they came from elsewhere)."""
    for number, line in enumerate(text.splitlines(), start=1):
        at = line.find(words)
        if at >= 0:
            end = at + 1 + len(words)
            return Span(path=path, line=number, column=at + 1, end_line=number, end_column=end)
    return whole_file(path)
