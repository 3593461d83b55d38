"""Diagnostics for a person at a terminal: the place, the message, the line underlined, the hint."""

import re
import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from generator.diagnostics.diagnostic import Diagnostic, Severity
from generator.diagnostics.span import PROGRAM, Span

WIDEST = 100
MOST_LINES = 3
_TAB = 4
_LINE_END = re.compile(r"\r\n|\n|\r")
_PAINTS = {Severity.ERROR: "1;31", Severity.WARNING: "1;33"}
_QUIET = "2"
_STRONG = "1"


def as_text(
    diagnostics: Iterable[Diagnostic],
    texts: Mapping[str, str],
    *,
    prefix: str = "",
    colour: bool = False,
) -> str:
    """All findings, one after another. `texts` gives the files by path, `prefix` goes before each path.

    Ends with a line end, and is empty where nothing was found.
    """
    lines: dict[str, list[str]] = {}
    out: list[str] = []
    for each in diagnostics:
        path = each.span.path
        if path not in lines:
            text = texts.get(path, "").removeprefix("\ufeff")
            lines[path] = _LINE_END.split(text) if text else []
        out += _blocks(each, lines[path], prefix=prefix, brush=_Brush(colour=colour))
    return "".join(f"{line}\n" for line in out)


def summary(diagnostics: Iterable[Diagnostic]) -> str:
    """One line such as “3 errors, 1 warning in 2 files”."""
    found = tuple(diagnostics)
    if not found:
        return "nothing to correct"
    errors = sum(each.severity is Severity.ERROR for each in found)
    counts = ((errors, "error"), (len(found) - errors, "warning"))
    told = ", ".join(_counted(number, word) for number, word in counts if number)
    return f"{told} in {_counted(len({each.span.path for each in found}), 'file')}"


def place_of(span: Span, *, prefix: str = "") -> str:
    """`path:line:col`, the path as the maker can open it."""
    return f"{path_of(span, prefix=prefix)}:{span.line}:{span.column}"


def path_of(span: Span, *, prefix: str = "") -> str:
    """The path with what stands before those of the content folder. One that begins with `./` is of a file of the
    program itself, which lies in no content folder."""
    if span.path.startswith(PROGRAM):
        return span.path.removeprefix(PROGRAM)
    return prefix.rstrip("/") if prefix and span.path == "." else f"{prefix}{span.path}"


def _counted(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Brush:
    colour: bool

    def paint(self, text: str, code: str) -> str:
        return f"\x1b[{code}m{text}\x1b[0m" if self.colour and text else text


def _blocks(each: Diagnostic, lines: list[str], *, prefix: str, brush: _Brush) -> Iterator[str]:
    paint = _PAINTS[each.severity]
    label = brush.paint(f"{each.severity.value}[{each.code}]", paint)
    place = brush.paint(place_of(each.span, prefix=prefix), _STRONG)
    yield f"{place}: {label} {_shown(each.message)}"
    yield from _excerpt(each.span, lines, paint=paint, brush=brush)
    if each.hint:
        yield f"  {brush.paint('hint:', _STRONG)} {_shown(each.hint)}"


def _excerpt(span: Span, lines: list[str], *, paint: str, brush: _Brush) -> Iterator[str]:
    """Up to three lines of the place, each with its underline below; none where the file has no such line."""
    last = min(span.end_line, span.line + MOST_LINES - 1, len(lines))
    gutter = max(len(str(last)), 4)
    for number in range(span.line, last + 1):
        text = lines[number - 1]
        start = span.column if number == span.line else len(text) - len(text.lstrip()) + 1
        end = span.end_column if number == span.end_line else len(text.rstrip()) + 1
        if number > span.line and end <= start:
            continue
        shown, marks = window(text, start - 1, max(end, start + 1) - 1)
        bar = brush.paint("|", _QUIET)
        yield f"  {brush.paint(f'{number:>{gutter}}', _QUIET)} {bar} {shown}".rstrip()
        yield f"  {' ' * gutter} {bar} {brush.paint(marks, paint)}"
    if last < min(span.end_line, len(lines)):
        yield f"  {'…':>{gutter}} {brush.paint('|', _QUIET)}"


def window(text: str, start: int, end: int) -> tuple[str, str]:
    """A line and the underline of its characters `start` to `end`, at most `WIDEST` columns of it.

    Wide characters take two columns, combining ones none, a tab four; what cannot be shown becomes U+FFFD.
    """
    near = max(start - WIDEST, 0)
    cells = [_cell(each) for each in text[near : start + 2 * WIDEST]]
    start, end = start - near, end - near
    cut_left = near > 0
    total = sum(width for _, width in cells)
    if total > WIDEST or cut_left or near + len(cells) < len(text):
        return _cut(cells, start, end, more=near + len(cells) < len(text), cut_left=cut_left)
    return "".join(shown for shown, _ in cells), _underline(cells, start, end)


def _cut(
    cells: list[tuple[str, int]], start: int, end: int, *, more: bool, cut_left: bool
) -> tuple[str, str]:
    """A window of the cells that begins a third of its width before the place, an ellipsis where it cuts."""
    first, before = start, 0
    room = WIDEST // 3
    while first > 0 and before + cells[first - 1][1] <= room:
        first -= 1
        before += cells[first][1]
    last, width = first, 0
    while last < len(cells) and width + cells[last][1] <= WIDEST - 2:
        width += cells[last][1]
        last += 1
    left = "…" if first or cut_left else ""
    right = "…" if last < len(cells) or more else ""
    shown = "".join(text for text, _ in cells[first:last])
    marks = _underline(cells[first:last], start - first, min(end - first, last - first))
    return f"{left}{shown}{right}", " " * len(left) + marks


def _underline(cells: list[tuple[str, int]], start: int, end: int) -> str:
    before = sum(width for _, width in cells[:start])
    marked = sum(width for _, width in cells[start:end])
    return " " * before + "^" * max(marked, 1)


def _cell(character: str) -> tuple[str, int]:
    """How a character is shown, and how many columns of a terminal that takes."""
    if character == "\t":
        return " " * _TAB, _TAB
    category = unicodedata.category(character)
    if category in ("Mn", "Me"):
        return character, 0
    if category in ("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"):
        return "\ufffd", 1
    return character, 2 if unicodedata.east_asian_width(character) in ("W", "F") else 1


def _shown(text: str) -> str:
    """A message in one line, without anything that would change the terminal."""
    return "".join(_cell(each)[0] for each in text)
