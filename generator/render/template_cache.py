"""Templates that were translated once are kept in the user's cache folder: all of a site take a quarter of a second.

What is kept under a template's name and place is used only for the very text that it was made from, by the same
versions of Python and of the template engine.
"""

from hashlib import sha256
from pathlib import Path

from jinja2 import BytecodeCache, __version__
from jinja2.bccache import Bucket

from generator.render.kept import cache_folder, keep, read_kept


class TemplateCache(BytecodeCache):
    """`written` tells of all else that the translation depends on."""

    def __init__(self, written: str) -> None:
        self._written = written

    def load_bytecode(self, bucket: Bucket) -> None:
        place = self._place(bucket)
        content = read_kept(place) if place else None
        if content is not None:
            bucket.bytecode_from_string(content)

    def dump_bytecode(self, bucket: Bucket) -> None:
        place = self._place(bucket)
        if place:
            keep(place, bucket.bytecode_to_string())

    def _place(self, bucket: Bucket) -> Path | None:
        folder = cache_folder("templates")
        name = sha256(f"{__version__} {self._written} {bucket.key}".encode()).hexdigest()
        return folder / name if folder else None
