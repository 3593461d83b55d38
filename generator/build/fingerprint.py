"""Tells by a short text whether two files hold the same bytes."""

import hashlib
from pathlib import Path


def fingerprint(content: bytes) -> str:
    """The SHA-256 of `content`, in hexadecimal."""
    return hashlib.sha256(content).hexdigest()


def fingerprint_of_file(path: Path) -> str | None:
    """The same of a file's content; None where no plain file stands there (a link is none)."""
    if path.is_symlink() or not path.is_file():
        return None
    with path.open("rb") as file:
        return hashlib.file_digest(file, "sha256").hexdigest()
