"""Finds `{…}` in Markdown and records where everything stands: markdown-it gives inline text no place."""

import re
from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import TypeAlias

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import Span
from generator.source.document import Passage, Reference, Run, mark

_SIGN = re.compile(r"[\\{}]")
_BRACE = re.compile(r"\\.|[{}]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One dedented line of a passage, and where its first character stands in the file."""

    text: str
    line: int
    column: int


def read_passage(path: str, lines: Iterable[Line], *, at: Span) -> tuple[Passage, Diagnostics]:
    """The passage that `lines` make, blank lines at both ends left off. `at` is its place if it is empty."""
    kept = _without_blank_ends(tuple(lines))
    if not kept:
        return Passage(markdown="", references=(), span=at), ()
    scanner = _Scanner(path=path, lines=kept, pairs=_pair_braces(kept))
    scanner.scan()
    span = Span(
        path=path,
        line=kept[0].line,
        column=kept[0].column,
        end_line=kept[-1].line,
        end_column=kept[-1].column + len(kept[-1].text.rstrip()),
    )
    passage = Passage(
        markdown="".join(scanner.out),
        references=tuple(scanner.references),
        span=span,
        places=tuple(scanner.runs),
    )
    return passage, tuple(scanner.found)


def find_braces(path: str, lines: Iterable[Line]) -> tuple[Span, ...]:
    """The place of each whole pair of braces in text where references mean nothing."""
    kept = tuple(lines)
    scanner = _Scanner(path=path, lines=kept, pairs=_pair_braces(kept))
    scanner.scan()
    return tuple(reference.span for reference in scanner.references)


def _without_blank_ends(lines: tuple[Line, ...]) -> tuple[Line, ...]:
    filled = [index for index, line in enumerate(lines) if line.text.strip()]
    return lines[filled[0] : filled[-1] + 1] if filled else ()


@dataclass(slots=True, kw_only=True)
class _Scanner:
    """Copies lines to `out`, references aside, and notes a run for every stretch copied."""

    path: str
    lines: tuple[Line, ...]
    pairs: "_Pairs"
    row: int = 0
    index: int = 0
    length: int = 0
    escaped: int = 0
    out: list[str] = field(default_factory=list)
    runs: list[Run] = field(default_factory=list)
    references: list[Reference] = field(default_factory=list)
    found: list[Diagnostic] = field(default_factory=list)

    def scan(self) -> None:
        while self.row < len(self.lines):
            self._scan_line()
            self.row, self.index = self.row + 1, 0
            if self.row < len(self.lines):
                self._put("\n", self._place(self.row - 1, len(self.lines[self.row - 1].text), 1))

    def _scan_line(self) -> None:
        """Reads on from `index` to the end of the line it then stands in (a reference may span lines)."""
        while self.index < len(self.lines[self.row].text):
            text = self.lines[self.row].text
            character = text[self.index]
            if character == "\\" and text[self.index + 1 : self.index + 2] == "{":
                self._put("{", self._place(self.row, self.index, 2))
                self.escaped += 1
                self.index += 2
            elif character == "\\":
                self._copy(2)
            elif character == "{":
                self._reference()
            elif character == "}":
                self._closing()
            else:
                self._copy(_plain_length(text, self.index))

    def _copy(self, width: int) -> None:
        piece = self.lines[self.row].text[self.index : self.index + width]
        self._put(piece, self._place(self.row, self.index, len(piece)))
        self.index += len(piece)

    def _put(self, piece: str, span: Span) -> None:
        self.out.append(piece)
        self.runs.append(Run(start=self.length, length=len(piece), span=span))
        self.length += len(piece)

    def _place(self, row: int, index: int, width: int) -> Span:
        line = self.lines[row]
        return Span(
            path=self.path,
            line=line.line,
            column=line.column + index,
            end_line=line.line,
            end_column=line.column + index + width,
        )

    def _closing(self) -> None:
        if self.escaped:
            self.escaped -= 1
        else:
            self._note("S033", "this brace closes nothing", self._here(), "Delete it, or write { before it.")
        self._copy(1)

    def _here(self) -> Span:
        return self._place(self.row, self.index, 1)

    def _note(self, code: str, message: str, span: Span, hint: str) -> None:
        self.found.append(Diagnostic(code=code, message=message, span=span, hint=hint))

    def _reference(self) -> None:
        opening = self._here()
        end = self._find_end()
        if end is None:
            self._unclosed()
            return
        row, index, text, nested = end
        span = opening.until(self._place(row, index, 1))
        self.row, self.index = row, index + 1
        if nested is not None:
            hint = "Close the first brace before the second; a brace that is only a sign is written \\{."
            self._note("S031", "a brace inside braces", nested, hint)
        elif not text:
            hint = "Name what is meant, as in {butter} or {bake 20 min}; a plain brace is written \\{."
            self._note("S032", "these braces are empty", span, hint)
        else:
            self._put(mark(len(self.references)), span)
            self.references.append(Reference(text=text, span=span))

    def _unclosed(self) -> None:
        """Tells of the braces that stand here side by side without an end, once for all of them."""
        text, end = self.lines[self.row].text, self.index + 1
        while text[end : end + 1] == "{" and (self.row, end) not in self.pairs.closings:
            end += 1
        hint = "Write } after the name or amount; a brace that is only a sign is written \\{."
        span = self._place(self.row, self.index, end - self.index)
        self._note("S030", "the brace opened here is never closed", span, hint)
        self._copy(end - self.index)

    def _find_end(self) -> tuple[int, int, str, Span | None] | None:
        """Row and index of the closing brace, the text before it, and the first brace nested in it.

        None where the paragraph ends first.
        """
        opening = (self.row, self.index)
        closing = self.pairs.closings.get(opening)
        if closing is None:
            return None
        row, index = closing
        if row == self.row:
            pieces = [self.lines[row].text[self.index + 1 : index]]
        else:
            between = (line.text for line in self.lines[self.row + 1 : row])
            last = self.lines[row].text[:index]
            pieces = [self.lines[self.row].text[self.index + 1 :], *between, last]
        nested = self.pairs.nested.get(opening)
        text = " ".join(piece.strip() for piece in pieces).strip()
        return row, index, text, None if nested is None else self._place(*nested, 1)


_Spot: TypeAlias = tuple[int, int]


@dataclass(slots=True, kw_only=True)
class _Pairs:
    """By the row and index of an opening brace: its closing brace, and the first brace inside it."""

    closings: dict[_Spot, _Spot] = field(default_factory=dict)
    nested: dict[_Spot, _Spot] = field(default_factory=dict)


def _pair_braces(lines: tuple[Line, ...]) -> _Pairs:
    """Matches braces in one pass, paragraph by paragraph, so that a thousand open braces cost no more."""
    pairs, waiting = _Pairs(), list[_Spot]()
    for row, line in enumerate(lines):
        if not line.text.strip():
            waiting.clear()
        for match in _BRACE.finditer(line.text):
            if match[0] == "{":
                if waiting:
                    pairs.nested.setdefault(waiting[-1], (row, match.start()))
                waiting.append((row, match.start()))
            elif match[0] == "}" and waiting:
                pairs.closings[waiting.pop()] = (row, match.start())
    return pairs


def _plain_length(text: str, index: int) -> int:
    """How many characters from `index` on mean nothing here; at least one."""
    match = _SIGN.search(text, index)
    return max((match.start() if match else len(text)) - index, 1)
