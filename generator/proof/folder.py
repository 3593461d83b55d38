"""A built output folder, read back as a whole: every file, files that nothing explains, files that are missing."""

import gzip
import hashlib
import json
import posixpath
import re
import zlib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import unquote, urlsplit

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, in_order
from generator.diagnostics.span import Span, whole_file
from generator.proof.expected import MADE_BY_COMMAND, Expected
from generator.proof.page_reader import read_page
from generator.proof.papers import book_faults, card_sheet_faults, own_tags_faults
from generator.proof.prove import prove

_MOST = 8
"""So many differences of one file are told."""

MANIFEST = ".tinleaf-manifest.json"
_STYLE_LINK = re.compile(r"url\(\s*['\"]?([^'\")]+)['\"]?\s*\)")
_OVERLAY = re.compile(r"desk/[^/]+/overlay-\d+\.png")
_BOOK = re.compile(r"desk/books/[^/]+\.(?:pdf|epub)")
_CARDS = re.compile(r"desk/cards/[^/]+\.pdf")
_COPY = ".gz"
_SITEMAP = re.compile(r"site/sitemap-\d+\.xml")


@dataclass(frozen=True, slots=True, kw_only=True)
class Proved:
    """What was found, and the texts of the files with findings, for excerpts."""

    diagnostics: Diagnostics
    texts: Mapping[str, str]
    count: int


def why_unreadable(root: Path) -> str:
    """A sentence for the maker where the folder cannot be a built output; "" where it can."""
    if not root.exists():
        return f"there is no folder {root}"
    if not root.is_dir():
        return f"{root} is a file; name the output folder that it lies in"
    if (root / MANIFEST).is_file() or (root / "site").is_dir() or (root / "desk").is_dir():
        return ""
    if any((root.parent / name).is_file() for name in (MANIFEST,)):
        return f"{root} is a part of an output; name the folder above it, {root.parent}"
    if not any(root.iterdir()):
        return f"{root} is empty; `tinleaf make` writes an output folder"
    return f"{root} is no output of ours: there is no site/ and no desk/ in it"


def prove_folder(root: Path, expected: Expected) -> Proved:
    """Every file of an output folder against the recipes. OSError: the disk would not."""
    files, strange = _read(root)
    made = _manifest(files.pop(MANIFEST, b""))
    if _is_of_others(files, expected):
        message = "this output was made of other content: none of its bakes is in recipes/"
        return Proved(
            diagnostics=(_finding("A006", ".", message, expected.remedy),), texts={}, count=len(files)
        )
    links = tuple(_links(files))
    found = [
        *strange,
        *prove(files, expected),
        *_personal(files, expected),
        *_copies(files, expected),
        *_foreign(files, expected, made, {each.target for each in links if _is_carried(each.target)}),
        *_missing(files, expected, links),
    ]
    found += _altered(files, made, {each.span.path for each in found}, expected)
    texts = {each.span.path: files.get(each.span.path, b"") for each in found}
    shown = {path: content.decode() for path, content in texts.items() if _is_text(path, content)}
    return Proved(diagnostics=in_order(_at_most(found, expected)), texts=shown, count=len(files))


def _at_most(found: Iterable[Diagnostic], expected: Expected) -> Iterator[Diagnostic]:
    """The gravest few of each file: a card of another recipe differs in everything."""
    by_path: dict[str, list[Diagnostic]] = {}
    for each in dict.fromkeys(found):
        by_path.setdefault(each.span.path, []).append(each)
    for path, several in by_path.items():
        # Allergens first, then what is missing or said otherwise, then what is said besides.
        several.sort(key=lambda each: (each.code != "A003", each.code == "A001"))
        yield from several[:_MOST]
        if len(several) > _MOST:
            code, more = several[_MOST].code, len(several) - _MOST
            yield _finding(
                code, path, f"{more} more differences than these are in this file", expected.remedy
            )


def _read(root: Path) -> tuple[dict[str, bytes], list[Diagnostic]]:
    """The content of every plain file by its path; a finding for each link, which is never followed."""
    files: dict[str, bytes] = {}
    strange = []
    for path in sorted(root.rglob("*")):
        name = path.relative_to(root).as_posix()
        if path.is_symlink():
            strange.append(_finding("A006", name, "this is a link to another place", "Take it away."))
        elif path.is_file() and not name.startswith(".tinleaf-staging/"):
            files[name] = path.read_bytes()
    return files, strange


def _is_of_others(files: Mapping[str, bytes], expected: Expected) -> bool:
    """Whether there are bakes in the output, and none of them is one that the content knows."""
    built = {path.split("/")[2] for path in files if path.startswith("site/recipes/") and path.count("/") > 2}
    known = {view.name for view in expected.site.all_recipes}
    return bool(built) and not built & known


def _manifest(content: bytes) -> Mapping[str, str]:
    """The fingerprints that the make noted; none where it noted nothing."""
    try:
        noted = json.loads(content)
    except ValueError:
        return {}
    files = noted.get("files") if isinstance(noted, dict) else None
    return {str(path): str(mark) for path, mark in files.items()} if isinstance(files, dict) else {}


def _personal(files: Mapping[str, bytes], expected: Expected) -> Iterator[Diagnostic]:
    """Tags and booklets that were printed by hand, at some time: they may be older than the recipes."""
    for path, content in files.items():
        name = path.split("/")[1] if path.count("/") > 1 else ""
        try:
            if path.endswith(f"/{MADE_BY_COMMAND}") and name in expected.tags:
                command = f"Print them anew with `tinleaf tags {name}`."
                yield from own_tags_faults(path, content, expected.tags[name], command=command)
            elif _BOOK.fullmatch(path) and path.endswith(".pdf"):
                yield from book_faults(path, content, expected)
            elif _CARDS.fullmatch(path):
                yield from card_sheet_faults(path, content, expected)
        except ValueError as error:
            yield _finding("A007", path, f"this file cannot be read back: {error}", expected.remedy)


def _foreign(
    files: Mapping[str, bytes], expected: Expected, made: Mapping[str, str], linked: set[str]
) -> Iterator[Diagnostic]:
    """Files that no recipe, no page and no link of a page explains."""
    own = {f"desk/{name}/{MADE_BY_COMMAND}" for name in expected.tags}
    for path in files:
        if path in expected.places or path in own or path in linked:
            continue
        if _BOOK.fullmatch(path) or _CARDS.fullmatch(path):
            continue
        if _is_further(path, files, expected) or _is_copy(path, files):
            continue
        if path in made:
            message = "an earlier make wrote this file, and nothing in the content asks for it any more"
            yield _finding("A006", path, message, expected.remedy)
        else:
            message = "nothing in the content explains this file, and no make wrote it"
            yield _finding("A006", path, message, "Move it away; a make leaves alone what it did not write.")


def _is_copy(path: str, files: Mapping[str, bytes]) -> bool:
    return path.endswith(_COPY) and path.removesuffix(_COPY) in files


def _copies(files: Mapping[str, bytes], expected: Expected) -> Iterator[Diagnostic]:
    """Compressed copies: a reader gets them in place of the file that they are of."""
    for path in (each for each in files if _is_copy(each, files)):
        try:
            said = gzip.decompress(files[path])
        except (OSError, EOFError, zlib.error) as error:
            yield _finding("A007", path, f"this file cannot be read back: {error}", expected.remedy)
            continue
        if said != files[path.removesuffix(_COPY)]:
            message = f"this copy does not hold what {path.removesuffix(_COPY)} holds"
            yield _finding("A010", path, message, expected.remedy)


def _is_further(path: str, files: Mapping[str, bytes], expected: Expected) -> bool:
    """A second picture of an overlay, a second map of a large site."""
    first = re.sub(r"-\d+(?=\.\w+$)", "", path)
    known = _OVERLAY.fullmatch(path) or _SITEMAP.fullmatch(path)
    return bool(known) and first in expected.places and first in files


@dataclass(frozen=True, slots=True, kw_only=True)
class _Link:
    """A file that a page or a style sheet leads to, and where it says so."""

    target: str
    source: str
    line: int


def _links(files: Mapping[str, bytes]) -> Iterator[_Link]:
    """Every link inside the output."""
    for path, content in files.items():
        found: list[tuple[str, int]] = []
        if path.endswith(".html"):
            found = list(read_page(path, content.decode("utf-8", "replace")).links)
        elif path.endswith(".css"):
            text = content.decode("utf-8", "replace")
            found = [(each[1], text.count("\n", 0, each.start()) + 1) for each in _STYLE_LINK.finditer(text)]
        for address, line in found:
            parts = urlsplit(address)
            if not parts.scheme and not parts.netloc and parts.path:
                target = posixpath.normpath(posixpath.join(posixpath.dirname(path), unquote(parts.path)))
                yield _Link(target=target, source=path, line=line)


def _is_carried(path: str) -> bool:
    """Whether a link is enough to explain a file: a picture, a font, a style. A page needs a source of its own."""
    return not path.endswith((".html", ".json", ".xml", ".pdf", ".txt"))


def _missing(
    files: Mapping[str, bytes], expected: Expected, links: tuple[_Link, ...]
) -> Iterator[Diagnostic]:
    gone = {path for path in expected.places if path not in files}
    for path in sorted(gone):
        yield _finding("A008", path, "this file is not there", expected.remedy)
    for link in links:
        if link.target not in files and link.target not in gone and not link.target.startswith(".."):
            span = Span(path=link.source, line=link.line, column=1, end_line=link.line, end_column=2)
            message = f"a link leads to {link.target}, and there is no such file"
            yield Diagnostic(code="A008", message=message, span=span, hint=expected.remedy)


def _altered(
    files: Mapping[str, bytes], made: Mapping[str, str], told: set[str], expected: Expected
) -> Iterator[Diagnostic]:
    """Files whose bytes are not those that the make noted, and of which nothing worse was found."""
    for path, content in files.items():
        mark = made.get(path)
        if mark is not None and path not in told and hashlib.sha256(content).hexdigest() != mark:
            message = "this file was changed after it was made; its amounts still agree"
            yield _finding("A010", path, message, expected.remedy)


def _is_text(path: str, content: bytes) -> bool:
    return path.endswith((".html", ".txt", ".json", ".xml", ".css")) and b"\0" not in content


def _finding(code: str, path: str, message: str, hint: str) -> Diagnostic:
    return Diagnostic(code=code, message=message, span=whole_file(path), hint=hint)
