"""What a built file says, as running text with a place for everything in it."""

from bisect import bisect_right
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate

from generator.diagnostics.span import Span
from generator.proof.squeeze import Squeezed, readable, squeeze


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A stretch of a file: its words, the line and column it begins at, the side of a PDF it stands on, else 0."""

    words: str
    line: int = 1
    column: int = 1
    side: int = 0


@dataclass(frozen=True, kw_only=True)
class BuiltText:
    """A file's text: its pieces one after another. `inside` names a part of the file: the entry “Oat braid”.

    `lay` gives the pieces; `said` are their words as they are read, where these are known without.
    """

    path: str
    lay: Callable[[], tuple[Piece, ...]]
    inside: str = ""
    said: str | None = None

    @cached_property
    def pieces(self) -> tuple[Piece, ...]:
        return self.lay()

    @cached_property
    def _read(self) -> tuple[str, ...]:
        return tuple(readable(each.words) for each in self.pieces)

    @cached_property
    def _starts(self) -> tuple[int, ...]:
        return (0, *accumulate(map(len, self._read)))

    @cached_property
    def words(self) -> str:
        return "".join(self._read) if self.said is None else self.said

    @cached_property
    def squeezed(self) -> Squeezed:
        return squeeze(self.words)

    def span(self, start: int, end: int) -> Span:
        """The place of a stretch of `words` in the file; of a PDF or a picture the file as a whole."""
        number = self._number(start)
        if number is None:
            return Span(path=self.path, line=1, column=1, end_line=1, end_column=2)
        piece = self.pieces[number]
        before = self.words[self._starts[number] : start]
        line, column = piece.line + before.count("\n"), len(before) - before.rfind("\n")
        column += piece.column - 1 if "\n" not in before else 0
        width = max(1, len(self.words[start:end].partition("\n")[0]))
        if piece.side:
            line, column, width = 1, 1, 1
        return Span(path=self.path, line=line, column=column, end_line=line, end_column=column + width)

    def where(self, start: int) -> str:
        """ "in the entry “Oat braid”", "on side 2", for a message; "" where the line says it."""
        number = self._number(start)
        told = [f"in {self.inside}"] if self.inside else []
        if number is not None and self.pieces[number].side:
            told.append(f"on side {self.pieces[number].side}")
        return ", ".join(told)

    def _number(self, start: int) -> int | None:
        """Which piece the offset lies in."""
        if not self.pieces:
            return None
        return min(max(bisect_right(self._starts, start) - 1, 0), len(self.pieces) - 1)


def lines_of(path: str, lines: Iterable[str], *, inside: str = "", line: int = 1) -> BuiltText:
    """A text of lines, a piece for each, the first of them on the given line of the file."""
    told = tuple(lines)

    def pieces() -> tuple[Piece, ...]:
        return tuple(Piece(words=f"{words}\n", line=number) for number, words in enumerate(told, start=line))

    said = readable("".join(f"{words}\n" for words in told))
    return BuiltText(path=path, lay=pieces, inside=inside, said=said)
