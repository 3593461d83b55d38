"""One file for the maker, written beside what `make` writes: whole or not at all, and never removed by a make."""

import os
import tempfile
from pathlib import Path

from generator.build import manifest, swap
from generator.build.place import why_unusable
from generator.render.output import Product

# How a file of ours begins: a PDF, or an archive whose first part says that it is an EPUB.
_KINDS = {"PDF": (0, b"%PDF"), "EPUB": (30, b"mimetypeapplication/epub+zip")}


def write_beside(root: Path, product: Product, *, content: Path) -> str:
    """Writes the product into the output folder `root`; a sentence for the maker where that cannot be, else "".

    A new output folder gets an empty manifest, so that a later make knows it for its own.
    """
    reason = why_unusable(root, content=content)
    if reason:
        return reason
    if swap.leads_astray(root, product.path):
        return (
            f"{root / product.path} is reached through a link, and would be written outside the output folder"
        )
    if not (root / manifest.NAME).exists():
        _write(root / manifest.NAME, manifest.as_bytes({}))
    return write_file(root / product.path, product.content, make_folders=True)


def write_file(path: Path, content: bytes, *, make_folders: bool = False) -> str:
    """Writes a PDF or an EPUB where the maker says; a sentence where something else stands there already."""
    if path.is_dir():
        return f"{path} is a folder; name a file in it"
    if not make_folders and not path.parent.is_dir():
        return f"there is no folder {path.parent}"
    kind = next((kind for kind in _KINDS if _is(content, kind)), "PDF")
    if path.is_file() and not _may_be_replaced(path, kind):
        return f"{path} is no {kind} file, and is not written over"
    _write(path, content)
    return ""


def write_text(path: Path, text: str, *, sign: str) -> str:
    """Writes a text of ours where the maker says; a sentence where something else stands there already.

    `sign` stands in every text that this one may take the place of.
    """
    if path.is_dir():
        return f"{path} is a folder; name another one to write into"
    if path.is_file():
        there = path.read_bytes()
        if there and sign.encode() not in there:
            return f"{path} is no text of ours, and is not written over"
    elif path.parent.exists() and not path.parent.is_dir():
        return f"{path.parent} is a file; name a folder"
    _write(path, text.encode())
    return ""


def _is(content: bytes, kind: str) -> bool:
    start, sign = _KINDS[kind]
    return content[start : start + len(sign)] == sign


def _may_be_replaced(path: Path, kind: str) -> bool:
    """Whether the file is empty or of the same kind."""
    with path.open("rb") as file:
        start = file.read(64)
    return start == b"" or _is(start, kind)


def _write(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(prefix=".tinleaf-", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(name, 0o644)
        os.replace(name, path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
