"""Reads a content folder: every file, and every mistake of every file, in one run."""

import os
from collections.abc import Mapping as ReadOnlyMapping
from pathlib import Path, PurePosixPath
from types import MappingProxyType
from typing import TypeVar

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, in_order
from generator.diagnostics.span import whole_file
from generator.source.body import check_page, read_body
from generator.source.characters import MOST_BYTES, decode, not_utf8
from generator.source.discover import Found, discover
from generator.source.document import Body, Document, Folder, Kind, Mapping
from generator.source.front_matter import read_front, read_keys
from generator.source.lines import Places

Thing = TypeVar("Thing", Document, Mapping)
MOST_LINES = 10_000
MOST_LEDGER_BYTES = 64_000_000
_KINDS: dict[str, Kind] = {"recipes": "recipe", "journal": "journal", "standing": "standing"}


def read_folder(
    root: Path,
    *,
    instead: ReadOnlyMapping[str, bytes] | None = None,
    only: frozenset[str] | None = None,
) -> tuple[Folder, Diagnostics]:
    """The content folder `root`. A file with a grave fault is missing from the result; see `unreadable`.

    `instead` holds, by path, bytes to read in place of those of files that are there: the folder as it would be.
    With `only`, other recipes than those are left aside: they stand in `aside` by their names.
    """
    found, faults = discover(root)
    aside = _left_aside(found, only)
    reader = _FolderReader(root=root, instead=instead or {})
    reader.found.extend(faults)
    documents = {
        folder: tuple(
            each
            for path in found.folders.get(folder, ())
            if path not in aside and (each := reader.document(path, kind))
        )
        for folder, kind in _KINDS.items()
    }
    bakes = tuple(
        (path, keys) for path in found.folders.get("bakes", ()) if (keys := reader.keys(path)) is not None
    )
    folder = Folder(
        root=root,
        recipes=documents["recipes"],
        journal=documents["journal"],
        standing=documents["standing"],
        bakes=bakes,
        pantry=reader.data("pantry.yaml", found),
        site=reader.data("site.yaml", found),
        ledger=reader.plain("ledger.jsonl") if "ledger.jsonl" in found.data else "",
        media=found.media,
        texts=MappingProxyType(reader.texts),
        unreadable=tuple(sorted(reader.unreadable | _misnamed(faults))),
        aside=tuple(PurePosixPath(path).stem for path in aside),
    )
    return folder, in_order(reader.found)


def _left_aside(found: Found, only: frozenset[str] | None) -> dict[str, None]:
    """The paths of recipes that are not asked for, in order."""
    paths = found.folders.get("recipes", ()) if only is not None else ()
    return {path: None for path in paths if only is not None and PurePosixPath(path).stem not in only}


def read_document(path: str, data: bytes, kind: Kind) -> tuple[Document | None, Diagnostics]:
    """One Markdown file. None where its front matter cannot be read; its body's mistakes are told still."""
    text, found = decode(path, data)
    if any(each.code in ("S001", "S003") for each in found):
        return None, found
    places = Places(path, text)
    if places.line_count() > MOST_LINES:
        return None, (*found, _too_many_lines(path))
    front, start, faults = read_front(places)
    if any(each.code in ("S004", "S005", "S006") for each in faults):
        return None, in_order((*found, *faults))
    body, body_faults = _body(places, start, kind)
    found = in_order((*found, *faults, *body_faults))
    if front is None:
        return None, found
    document = Document(
        path=path,
        name=PurePosixPath(path).stem,
        kind=kind,
        text=text,
        front=front,
        body=body,
        markdown=text[start:],
        body_span=places.span(start, len(text)),
    )
    return document, found


def _body(places: Places, start: int, kind: Kind) -> tuple[Body | None, Diagnostics]:
    if kind == "recipe":
        return read_body(places, start)
    return None, check_page(places, start)


def read_mapping(path: str, data: bytes) -> tuple[Mapping | None, Diagnostics]:
    """One file of keys and values. None where it cannot be read."""
    text, found = decode(path, data)
    if any(each.code in ("S001", "S003") for each in found):
        return None, found
    places = Places(path, text)
    keys, faults = read_keys(places, places.starts[0], len(text))
    return keys, in_order((*found, *faults))


def _too_many_lines(path: str) -> Diagnostic:
    return Diagnostic(
        code="S003",
        message="this file has more than 10,000 lines",
        span=whole_file(path),
        hint="Split it: nothing this long is one recipe or one post.",
    )


def _misnamed(faults: Diagnostics) -> set[str]:
    return {each.span.path for each in faults if each.code in ("S051", "S053", "S054", "S055")}


class _FolderReader:
    """Reads files one by one, and gathers their texts and mistakes."""

    __slots__ = ("found", "instead", "root", "texts", "unreadable")

    def __init__(self, *, root: Path, instead: ReadOnlyMapping[str, bytes]) -> None:
        self.root, self.instead = root, instead
        self.found: list[Diagnostic] = []
        self.texts: dict[str, str] = {}
        self.unreadable: set[str] = set()

    def document(self, path: str, kind: Kind) -> Document | None:
        data = self._bytes(path)
        if data is None:
            return None
        document, found = read_document(path, data, kind)
        return self._kept(path, document, found)

    def keys(self, path: str) -> Mapping | None:
        data = self._bytes(path)
        if data is None:
            return None
        keys, found = read_mapping(path, data)
        return self._kept(path, keys, found)

    def data(self, path: str, found: Found) -> Mapping | None:
        return self.keys(path) if path in found.data else None

    def plain(self, path: str) -> str:
        """The text of a file that only the tool writes, however much of it is spoilt. It grows with the years."""
        data = self._bytes(path, most=MOST_LEDGER_BYTES) or b""
        try:
            return data.decode("utf-8")
        except UnicodeDecodeError as fault:
            self.found.append(not_utf8(path, data, fault.start))
            return data.decode("utf-8", "replace")

    def _kept(self, path: str, thing: Thing | None, found: Diagnostics) -> Thing | None:
        self.found.extend(found)
        if thing is None:
            self.unreadable.add(path)
        return thing

    def _bytes(self, path: str, *, most: int = MOST_BYTES) -> bytes | None:
        try:
            data = self.instead.get(path)
            if data is None:
                with open(self.root / path, "rb") as file:
                    data = file.read(most + 1)
        except OSError as fault:
            why = os.strerror(fault.errno) if fault.errno else "unknown"
            self.found.append(
                Diagnostic(
                    code="S055",
                    message=f"this file cannot be read ({why})",
                    span=whole_file(path),
                    hint="Look at its permissions.",
                )
            )
            self.unreadable.add(path)
            return None
        self.texts[path] = data[:most].decode("utf-8", "replace")
        return data
