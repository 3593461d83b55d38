"""One piece of rendering that can be done by itself, and all that its result depends on."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from generator.build.packing import mark_of, packed, pressed
from generator.render.output import Product


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """A value that lies in the cache under its own fingerprint. `content` carries it where there is no cache."""

    mark: str
    content: bytes | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class OnDisk:
    """A file of the maker's, read where it stands. Its place on the disk is no part of what the task depends on."""

    root: Path
    path: str
    mark: str

    def read(self) -> bytes:
        """Raises OSError."""
        return (self.root / self.path).read_bytes()


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """`work` makes the products out of `inputs`; `title` names them to a person who waits.

    `work` is a module's own function, and `inputs` are plain data, so that both can travel to another process.
    A `Kept` among them is given to `work` as its value. `themes` names the files of the theme that `work` reads,
    with those that they name in turn. `stage` is the row that the task counts in under `--profile`.
    `libraries` names modules that `work` imports, which are loaded once before processes are forked.
    `about` names what it is about: tasks about one thing are done one after the other, by one worker.
    With `compressed` each text for the web that it makes has a compressed copy beside it.
    `proof` is what its products are held against where they are made; None where they are proved with others.
    """

    title: str
    work: Callable[..., tuple[Product, ...]]
    inputs: tuple[object, ...] = ()
    themes: tuple[str, ...] = ()
    stage: str = "other"
    libraries: tuple[str, ...] = ()
    about: str = ""
    proof: object = None
    compressed: bool = False


def kept(value: object) -> Kept:
    """The value with its bytes, for a cache to keep."""
    content = packed(value)
    return Kept(mark=mark_of(content), content=pressed(content))
