"""Reads a case file: a content folder with the expected findings written beside the lines.

A case begins with a sentence on what it is about. Then come files:

    === recipes/plain-loaf.md
    ---
    title: Plain loaf
    title: Loaf
    ^^^^^ S010 “title” is already given in line 2

A line of carets, a code and a message is an expectation for the line above; it is taken out before the
file is written. The carets stand under the exact columns. `^^^...` is a place that goes on to a later line:
its carets end with its first line. Expectations before the first line of a file belong to line 1.

After a path may stand, in any order: `bom` and `crlf`; `escapes`, which makes `\\xNN` a byte, `\\uNNNN` a
character and `\\t` a tab; `empty`, a file of no bytes; `absent`, no file. A folder `=== .` takes findings
about the folder itself. Without a `site.yaml` in the case, a sound one is laid, and so is a `pantry.yaml` that
says what the packs of bread flour hold, since those differ and would be asked about.
"""

import re
from dataclasses import dataclass, field
from pathlib import Path

from generator.diagnostics.diagnostic import Diagnostic

SITE = b"title: Invented bakes\nmaker: An invented kitchen\nurl: https://kitchen.example/\n"
PANTRY = b"bread flour:\n  label: Bread flour (wheat flour)\n  contains: [wheat]\n  checked: 2026-09-01\n"
_HEADER = re.compile(r"=== (?P<path>\S+)(?P<options>(?: [a-z]+)*)")
_EXPECTED = re.compile(
    r"(?P<before> *)(?P<carets>\^+)(?P<on>\.\.\.)? (?P<code>[A-Z][0-9]{3}) (?P<message>.+)"
)
_OPTIONS = {"bom", "crlf", "escapes", "empty", "absent"}


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Finding:
    """A finding in comparable form; `end_column` is 0 where the place goes on to a later line."""

    path: str
    line: int
    column: int
    end_column: int
    code: str
    message: str

    def __str__(self) -> str:
        end = self.end_column or "…"
        return f"{self.path}:{self.line}:{self.column}-{end} {self.code} {self.message}"


@dataclass(slots=True, kw_only=True)
class CaseFile:
    path: str
    options: frozenset[str]
    lines: list[str] = field(default_factory=list)
    expected: list[Finding] = field(default_factory=list)

    def data(self) -> bytes:
        end = b"\r\n" if "crlf" in self.options else b"\n"
        convert = _unescape if "escapes" in self.options else str.encode
        body = b"".join(convert(line) + end for line in self.lines)
        return b"\xef\xbb\xbf" + body if "bom" in self.options else body


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    about: str
    files: tuple[CaseFile, ...]

    @property
    def expected(self) -> list[Finding]:
        return sorted(finding for file in self.files for finding in file.expected)

    def write(self, root: Path) -> None:
        """Lays the files below `root`."""
        root.mkdir()
        for name, sound in (("site.yaml", SITE), ("pantry.yaml", PANTRY)):
            if all(file.path != name for file in self.files):
                (root / name).write_bytes(sound)
        for file in self.files:
            if file.path == "." or "absent" in file.options:
                continue
            target = root / file.path
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(b"" if "empty" in file.options else file.data())


def read_case(text: str) -> Case:
    """The case that a case file's text describes. ValueError where it breaks the rules above."""
    about: list[str] = []
    files: list[CaseFile] = []
    for line in text.splitlines():
        if header := _HEADER.fullmatch(line):
            options = frozenset(header["options"].split())
            if options - _OPTIONS:
                raise ValueError(f"unknown option in “{line}”")
            files.append(CaseFile(path=header["path"], options=options))
        elif not files:
            about.append(line)
        elif expected := _EXPECTED.fullmatch(line):
            files[-1].expected.append(_finding(files[-1], expected))
        elif re.match(r" *\^", line):
            raise ValueError(f"not an expectation: “{line}”")
        else:
            files[-1].lines.append(line)
    if not " ".join(about).strip() or not files:
        raise ValueError("a case says what it is about, and has a file")
    return Case(about=" ".join(about).strip(), files=tuple(files))


def finding_of(diagnostic: Diagnostic) -> Finding:
    span = diagnostic.span
    return Finding(
        path=span.path,
        line=span.line,
        column=span.column,
        end_column=span.end_column if span.end_line == span.line else 0,
        code=diagnostic.code,
        message=diagnostic.message,
    )


def _finding(file: CaseFile, match: re.Match[str]) -> Finding:
    column = len(match["before"]) + 1
    return Finding(
        path=file.path,
        line=max(len(file.lines), 1),
        column=column,
        end_column=0 if match["on"] else column + len(match["carets"]),
        code=match["code"],
        message=match["message"],
    )


def _unescape(line: str) -> bytes:
    def byte_or_character(match: re.Match[str]) -> str:
        if match[0] == "\\t":
            return "\t"
        return chr(int(match[2], 16)) if match[2] else chr(0xDC00 + int(match[1], 16))

    replaced = re.sub(r"\\x([0-9a-f]{2})|\\u([0-9a-f]{4})|\\t", byte_or_character, line)
    return replaced.encode("utf-8", "surrogateescape")
