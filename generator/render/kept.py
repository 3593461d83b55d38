"""What was made once is kept in the user's cache folder, apart from what belongs to one publication.

The folder is XDG_CACHE_HOME or ~/.cache, in it `tinleaf/`. It is safe to delete, and where it cannot be read or
written everything works as before, only slower. What is read back is held against its checksum, so that a file cut
off by a full disk, or with a flipped bit, is made anew and never used.
"""

import os
import tempfile
from contextlib import suppress
from hashlib import sha256
from pathlib import Path

_DIGEST = 32
"""Bytes of the checksum that stands before the content of a file."""


def cache_folder(kind: str) -> Path | None:
    """Where a kind is kept; None for a user without a home. A relative XDG_CACHE_HOME does not count (XDG)."""
    wanted = os.environ.get("XDG_CACHE_HOME", "")
    try:
        base = Path(wanted) if os.path.isabs(wanted) else Path.home() / ".cache"
    except RuntimeError:
        return None
    return base / "tinleaf" / kind


def read_kept(place: Path) -> bytes | None:
    """What was kept there; None where nothing is, or nothing that can be trusted."""
    try:
        kept = place.read_bytes()
    except OSError:
        return None
    digest, content = kept[:_DIGEST], kept[_DIGEST:]
    return content if sha256(content).digest() == digest else None


def keep(place: Path, content: bytes) -> None:
    """Writes beside and renames, so that another make never reads half a file."""
    try:
        place.parent.mkdir(parents=True, exist_ok=True)
        handle, beside = tempfile.mkstemp(dir=place.parent)
    except OSError:
        return
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(sha256(content).digest() + content)
        os.replace(beside, place)
    except OSError:
        with suppress(OSError):
            Path(beside).unlink(missing_ok=True)
