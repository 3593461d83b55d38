"""What a renderer hands to the build: bytes and the place they belong."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Product:
    """One finished file. `path` is relative to the output folder, with forward slashes."""

    path: str
    content: bytes
