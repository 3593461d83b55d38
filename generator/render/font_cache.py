"""Fonts that were cut once are kept in the user's cache folder: cutting one takes seconds, in every make.

The folder is XDG_CACHE_HOME or ~/.cache, in it `tinleaf/fonts/`. It is safe to delete, and where it cannot be
read or written everything works as before, only slower. What is read back is held against its checksum, so that
a file cut off by a full disk is made anew and never published.
"""

import os
import tempfile
from collections.abc import Callable
from contextlib import suppress
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path

_DIGEST = 32
"""Bytes of the checksum that stands before the font in its file."""


def kept_font(source: Path, recipe: str, make: Callable[[], bytes]) -> bytes:
    """What `make` gives for the font file `source`: from the cache, or made and kept.

    `recipe` is everything else that the result depends on: what is kept of the font, and how. The versions of the
    tools that cut and pack are added to it here.
    """
    place = _place(source, recipe)
    found = _read(place) if place else None
    if found is not None:
        return found
    made = make()
    if place:
        _keep(place, made)
    return made


def _place(source: Path, recipe: str) -> Path | None:
    folder = cache_folder()
    if folder is None:
        return None
    tools = f"fonttools {version('fonttools')}, brotli {version('brotli')}"
    key = sha256(sha256(source.read_bytes()).digest() + f"{tools}\n{recipe}".encode())
    return folder / key.hexdigest()


def cache_folder() -> Path | None:
    """Where cut fonts are kept; None for a user without a home. A relative XDG_CACHE_HOME does not count (XDG)."""
    wanted = os.environ.get("XDG_CACHE_HOME", "")
    try:
        base = Path(wanted) if os.path.isabs(wanted) else Path.home() / ".cache"
    except RuntimeError:
        return None
    return base / "tinleaf" / "fonts"


def _read(place: Path) -> bytes | None:
    try:
        kept = place.read_bytes()
    except OSError:
        return None
    digest, font = kept[:_DIGEST], kept[_DIGEST:]
    return font if sha256(font).digest() == digest else None


def _keep(place: Path, font: bytes) -> None:
    """Writes beside and renames, so that another make never reads half a file."""
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        handle, beside = tempfile.mkstemp(dir=place.parent)
    except OSError:
        return
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(sha256(font).digest() + font)
        os.replace(beside, place)
    except OSError:
        with suppress(OSError):
            Path(beside).unlink(missing_ok=True)
