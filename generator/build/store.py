"""Compares finished products with the output folder, and writes only what differs."""

import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path

from generator.build import manifest, swap
from generator.build.fingerprint import fingerprint_of_file
from generator.build.place import why_unusable
from generator.render.output import Product


@dataclass(frozen=True, slots=True, kw_only=True)
class WriteReport:
    """What became of each file, as paths inside the output folder, in order.

    `kept` are files of an earlier make that nothing asks for any more, but that somebody has edited.
    `refused` are sentences for the maker; where there is one, nothing at all was written.
    """

    written: tuple[str, ...] = ()
    unchanged: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()
    kept: tuple[str, ...] = ()
    refused: tuple[str, ...] = ()


def write_output(root: Path, products: Iterable[Product], *, content: Path | None = None) -> WriteReport:
    """Makes the folder `root` hold exactly `products`, and whatever in it is not ours.

    `content` is the maker's folder, which the output must not overlap. ValueError: a product's path is
    given twice or leaves the folder, which is a bug of the renderer. OSError: the disk would not.
    """
    wanted = _in_order(products)
    reason = why_unusable(root, content=content)
    if reason:
        return WriteReport(refused=(reason,))
    root.mkdir(parents=True, exist_ok=True)
    with _alone(root):
        swap.recover(root)
        return _replace(root, wanted)


def _in_order(products: Iterable[Product]) -> tuple[Product, ...]:
    wanted = tuple(sorted(products, key=lambda each: each.path))
    paths = [each.path for each in wanted]
    for path in paths:
        if not manifest.is_inside(path) or path.startswith(".tinleaf"):
            raise ValueError(f"a product cannot be written to {path!r}")
    twice = {path for path, following in pairwise(paths) if path == following}
    if twice:
        raise ValueError(f"two products have one path: {sorted(twice)}")
    return wanted


def _replace(root: Path, wanted: tuple[Product, ...]) -> WriteReport:
    old = manifest.read_manifest(root / manifest.NAME) or {}
    new = manifest.manifest_of(wanted)
    changed = tuple(each for each in wanted if fingerprint_of_file(root / each.path) != new[each.path])
    refused = tuple(reason for each in changed if (reason := _why_not(root, each.path, old)))
    if refused:
        return WriteReport(refused=refused)
    swapped = swap.Swapped()
    if changed or dict(old) != dict(new):
        swap.stage(root, changed, new)
        swapped = swap.finish(root)
    written = tuple(each.path for each in changed)
    return WriteReport(
        written=written,
        unchanged=tuple(each.path for each in wanted if each.path not in set(written)),
        removed=swapped.removed,
        kept=swapped.kept,
    )


def _why_not(root: Path, path: str, old: manifest.Manifest) -> str:
    """Why a product may not be written to its place: something that is not ours is in the way."""
    target = root / path
    if swap.leads_astray(root, path):
        return f"{target} is reached through a link, and would be written outside the output folder"
    if target.is_file() and path in old:
        return ""
    in_the_way = [each for each in target.parents if each.is_relative_to(root) and each.is_file()]
    in_the_way += _contents(target) if target.is_dir() else [target] if target.exists() else []
    stranger = next((each for each in in_the_way if not _is_ours(root, each, old)), None)
    if stranger is None:
        return ""
    return f"{stranger} stands where {path} belongs, and was not written by this command; move it away"


def _contents(folder: Path) -> list[Path]:
    """The files in a folder and in those below it, and the empty folders."""
    inside = sorted(folder.rglob("*"))
    return [each for each in [folder, *inside] if not each.is_dir() or not any(each.iterdir())]


def _is_ours(root: Path, file: Path, old: manifest.Manifest) -> bool:
    """Whether a file still is as an earlier make wrote it."""
    mark = old.get(file.relative_to(root).as_posix())
    return mark is not None and fingerprint_of_file(file) == mark


@contextmanager
def _alone(root: Path) -> Iterator[None]:
    """Makes two makes into one folder wait for each other (where the system has such locks)."""
    if sys.platform == "win32":
        yield
        return
    import fcntl
    import os

    handle = os.open(root, os.O_RDONLY)
    try:
        fcntl.flock(handle, fcntl.LOCK_EX)
        yield
    finally:
        os.close(handle)
