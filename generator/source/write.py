"""The only room that changes a maker's file: named stretches are replaced, every other byte is kept."""

import os
import tempfile
from collections.abc import Iterable
from pathlib import Path

from generator.diagnostics.span import Span
from generator.source.lines import Places


def replace_spans(text: str, changes: Iterable[tuple[Span, str]]) -> str:
    """`text` with each stretch replaced. A stretch of no width (end = start) is a place to insert at.

    `text` is the whole file as read, byte-order mark and line ends included.
    Raises ValueError where two stretches overlap or one lies outside the text.
    """
    places = Places("", text)
    ordered = sorted(
        (
            _index(places, span.line, span.column),
            _index(places, span.end_line, span.end_column),
            new,
        )
        for span, new in changes
    )
    pieces, last = [], 0
    for start, end, new in ordered:
        if start < last or end < start:
            raise ValueError("the stretches to replace overlap")
        pieces += [text[last:start], new]
        last = end
    return "".join((*pieces, text[last:]))


def _index(places: Places, line: int, column: int) -> int:
    if not 1 <= line <= places.line_count():
        raise ValueError(f"the text has no line {line}")
    index = places.index_of(line, column)
    if index > places.starts[line - 1] + len(places.line_text(line)):
        raise ValueError(f"line {line} has no column {column}")
    return index


def write_atomically(path: Path, data: bytes) -> None:
    """Writes a file whole or not at all: a reader sees the old bytes or the new, never a half.

    Keeps the permissions of the file it replaces. Raises OSError where the folder cannot be written to.
    """
    target = Path(os.path.realpath(path))
    handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(name, target.stat().st_mode & 0o7777 if target.exists() else 0o666 & ~_umask())
        os.replace(name, target)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _umask() -> int:
    mask = os.umask(0o022)
    os.umask(mask)
    return mask
