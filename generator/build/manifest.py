"""The list of the files that a make wrote, kept with them: what is on it may be replaced or removed later."""

import json
from collections.abc import Iterable, Mapping
from pathlib import Path
from types import MappingProxyType

from generator.build.fingerprint import fingerprint
from generator.render.output import Product

NAME = ".tinleaf-manifest.json"
FORMAT = 1

Manifest = Mapping[str, str]
"""The path of each file inside the output folder, and the fingerprint of its content as written."""


def manifest_of(products: Iterable[Product]) -> Manifest:
    return MappingProxyType({each.path: fingerprint(each.content) for each in products})


def as_bytes(manifest: Manifest) -> bytes:
    content = {"format": FORMAT, "files": dict(sorted(manifest.items()))}
    return (json.dumps(content, indent=1, ensure_ascii=False) + "\n").encode()


def read_manifest(path: Path) -> Manifest | None:
    """The manifest in that file; None where there is none, or none that we can have written."""
    if path.is_symlink() or not path.is_file():
        return None
    try:
        content = json.loads(path.read_bytes())
    except ValueError:
        return None
    if not isinstance(content, dict) or content.get("format") != FORMAT:
        return None
    files = content.get("files")
    if not isinstance(files, dict) or not all(isinstance(each, str) for each in files.values()):
        return None
    return MappingProxyType({str(name): str(mark) for name, mark in files.items() if is_inside(name)})


def is_inside(path: str) -> bool:
    """Whether a path stays inside the folder it is relative to, and is written plainly."""
    parts = path.split("/")
    return "\\" not in path and "\0" not in path and not {"", ".", ".."} & set(parts)
