"""From the bytes of a file to the recipes that stand in it."""

import re
from dataclasses import dataclass
from pathlib import PurePosixPath

from generator.importer.files.food_rows import Row
from generator.importer.files.html_page import read_page
from generator.importer.files.plain_text import markdown_lines, text_lines
from generator.importer.files.table import read_table
from generator.importer.incoming_text import Source, slug
from generator.importer.model import SourceLine
from generator.importer.places.around import in_cells, without_labels, without_stamps

MOST_BYTES = 2_000_000
MOST_LINES = 5_000
LONGEST_LINE = 20_000
SUFFIXES = (".txt", ".md", ".markdown", ".html", ".htm", ".csv", ".text")
_SAVE = "Save it as UTF-8 in your editor (“Save with encoding”)."
_OLD = (
    "Save it as UTF-8 in your editor (“Save with encoding”), or type: "
    "iconv -f WINDOWS-1252 -t UTF-8 OLD.txt > NEW.txt, and look at its fractions and accents."
)
_HTML = re.compile(r"\s*(?:<!doctype html|<html|<!--|<head|<body|<script|<div|<article)", re.I)


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """A file that was not read: what is wrong, and what to do."""

    message: str
    hint: str = ""


def sources_of(name: str, data: bytes) -> tuple[Source, ...] | Refused:
    """The recipes of a file. `name` decides how it is read, and for standard input what it begins with."""
    text = _decoded(data)
    if isinstance(text, Refused):
        return text
    suffix = PurePosixPath(name).suffix.casefold()
    if suffix in (".html", ".htm") or (suffix not in SUFFIXES and _HTML.match(text)):
        return _page(name, text)
    lines = text.count("\n") + text.count("\r")
    if lines > MOST_LINES * (100 if suffix == ".csv" else 1):
        return Refused(
            message=f"it has more than {MOST_LINES:,} lines", hint="No recipe is this long: split it."
        )
    if suffix == ".csv":
        return _table(name, text)
    read = markdown_lines if suffix in (".md", ".markdown") else text_lines
    told, said = without_stamps(in_cells(without_labels(read(text))))
    return _checked((Source(name=name, stem=PurePosixPath(name).stem, lines=told, said=said),))


def _decoded(data: bytes) -> str | Refused:
    if len(data) > MOST_BYTES:
        return Refused(
            message="it is larger than 2 MB", hint="A recipe is a few kilobytes: save its text alone."
        )
    if not data.strip():
        return Refused(message="it is empty")
    if data[:4] in (b"\xff\xfe\x00\x00", b"\x00\x00\xfe\xff"):
        return Refused(message="it is UTF-32, not UTF-8", hint=_SAVE)
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        # The mark at its beginning says so: nothing is guessed.
        try:
            data = data.decode("utf-16").encode()
        except UnicodeError:
            return Refused(message="it is UTF-16, and cut off or damaged", hint=_SAVE)
    if b"\x00" in data:
        return Refused(
            message="it is no text: it holds bytes that no text has", hint="Save it as plain text first."
        )
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        before = data[: fault.start]
        line, column = before.count(b"\n") + 1, fault.start - (before.rfind(b"\n") + 1) + 1
        message = f"it is not UTF-8: line {line}, byte {column} (0x{data[fault.start]:02X}) is no character"
        return Refused(message=message, hint=_OLD)
    strange = sum(each < " " and each not in "\t\r\n\x0b\x0c" for each in text[:4000])
    if strange > len(text[:4000]) // 50 + 2:
        return Refused(
            message="it is no text: it is full of control characters", hint="Save it as plain text first."
        )
    return text


def _page(name: str, text: str) -> tuple[Source, ...] | Refused:
    page = read_page(text)
    if page.refused:
        return Refused(message=page.refused, hint="Copy the recipe's text out of the page, and bring that.")
    stem = PurePosixPath(name).stem
    return _checked(
        tuple(Source(name=name, stem=stem, lines=lines, said=page.said) for lines in page.recipes)
    )


def _table(name: str, text: str) -> tuple[Source, ...] | Refused:
    rows, fault = read_table(text)
    if fault:
        return Refused(message=fault, hint="The first line names the columns: name,text")
    return _checked(tuple(_of_row(name, row) for row in rows))


def _of_row(name: str, row: Row) -> Source:
    """A row's cells as lines; all have the number of the row's first line, counted on through the text."""
    title = " ".join(row.name.split())
    body = text_lines(row.text)
    lines = [SourceLine(number=1, text=title, hint="title" if title else "")]
    lines += [SourceLine(number=each.number + 1, text=each.text) for each in body]
    for column, cell in row.more:
        shown = " ".join(cell.split())
        hint, words = "note", f"{column.capitalize()}: {shown}" if column else shown
        if shown.startswith(("http://", "https://")) and " " not in shown:
            film = column in ("video", "film", "watch")
            hint, words = ("video", shown) if film else ("link", f"\t{shown}\t")
        lines.append(SourceLine(number=len(lines) + 1, text=words, hint=hint))
    return Source(
        name=f"{name}, row from line {row.number}",
        stem=slug(title) or PurePosixPath(name).stem,
        lines=tuple(lines),
    )


def _checked(sources: tuple[Source, ...]) -> tuple[Source, ...] | Refused:
    longest = max((len(line.text) for source in sources for line in source.lines), default=0)
    if longest > LONGEST_LINE:
        return Refused(
            message=f"one of its lines has {longest:,} letters",
            hint="Give each ingredient a line of its own.",
        )
    return sources
