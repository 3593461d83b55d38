"""Fonts that were cut once are kept in the user's cache folder: cutting one takes seconds, in every make."""

from collections.abc import Callable
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path

from generator.render.kept import cache_folder, keep, read_kept


def kept_font(source: Path, recipe: str, make: Callable[[], bytes]) -> bytes:
    """What `make` gives for the font file `source`: from the cache, or made and kept.

    `recipe` is everything else that the result depends on: what is kept of the font, and how. The versions of the
    tools that cut and pack are added to it here.
    """
    place = _place(source, recipe)
    found = read_kept(place) if place else None
    if found is not None:
        return found
    made = make()
    if place:
        keep(place, made)
    return made


def _place(source: Path, recipe: str) -> Path | None:
    folder = cache_folder("fonts")
    if folder is None:
        return None
    tools = f"fonttools {version('fonttools')}, brotli {version('brotli')}"
    key = sha256(sha256(source.read_bytes()).digest() + f"{tools}\n{recipe}".encode())
    return folder / key.hexdigest()
