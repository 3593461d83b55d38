"""Compares finished products with the output folder, and writes only what differs."""

import sys
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from types import MappingProxyType

from generator.build import manifest, swap
from generator.build.fingerprint import fingerprint, fingerprint_of_file
from generator.build.place import why_unusable
from generator.render.output import Product

_NOTHING: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Finished:
    """A file as it shall stand in the output folder; its content is asked for only where it must be written."""

    path: str
    mark: str
    content: Callable[[], bytes]


def finished(product: Product) -> Finished:
    return Finished(path=product.path, mark=fingerprint(product.content), content=lambda: product.content)


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


def write_output(
    root: Path,
    products: Iterable[Product | Finished],
    *,
    content: Path | None = None,
    trusted: Callable[[], Mapping[str, str]] = lambda: _NOTHING,
    after: Callable[[WriteReport], None] = lambda _: None,
    stays: tuple[str, ...] = (),
    dry: bool = False,
) -> WriteReport:
    """Makes the folder `root` hold exactly `products`, and whatever in it is not ours.

    `content` is the maker's folder, which the output must not overlap. `trusted` gives fingerprints of files that are
    known without reading them; it is asked while nobody else writes here, and so is `after`, when all is written.
    What an earlier make wrote below a path of `stays` is left as it is. A `dry` run writes nothing and reports what
    would be. ValueError: a product's path is given twice or leaves the folder, which is a bug of the renderer.
    OSError: the disk would not.
    """
    wanted = _in_order(each if isinstance(each, Finished) else finished(each) for each in products)
    reason = why_unusable(root, content=content)
    if reason:
        return WriteReport(refused=(reason,))
    if dry:
        return _replace(root, wanted, trusted(), stays, dry=True)
    root.mkdir(parents=True, exist_ok=True)
    with _alone(root):
        # What a make that was cut off left behind was written after it was last looked at.
        recovered = swap.recover(root)
        known = trusted()
        report = _replace(root, wanted, _NOTHING if recovered else known, stays, dry=False)
        after(report)
        return report


def _in_order(products: Iterable[Finished]) -> tuple[Finished, ...]:
    wanted = tuple(sorted(products, key=lambda each: each.path))
    paths = [each.path for each in wanted]
    for path in paths:
        if not manifest.is_inside(path) or path.startswith(".tinleaf"):
            raise ValueError(f"a product cannot be written to {path!r}")
    twice = {path for path, following in pairwise(paths) if path == following}
    if twice:
        raise ValueError(f"two products have one path: {sorted(twice)}")
    return wanted


def _replace(
    root: Path, wanted: tuple[Finished, ...], trusted: Mapping[str, str], stays: tuple[str, ...], *, dry: bool
) -> WriteReport:
    old = manifest.read_manifest(root / manifest.NAME) or {}
    new = {each.path: each.mark for each in wanted}
    new |= {path: mark for path, mark in old.items() if path not in new and path.startswith(stays)}
    changed = tuple(each for each in wanted if _mark_of(root, each.path, trusted) != each.mark)
    refused = tuple(reason for each in changed if (reason := _why_not(root, each.path, old)))
    if refused:
        return WriteReport(refused=refused)
    swapped = swap.Swapped(removed=tuple(sorted(set(old) - set(new)))) if dry else swap.Swapped()
    if not dry and (changed or dict(old) != new):
        swap.stage(root, ((each.path, each.content) for each in changed), new)
        swapped = swap.finish(root)
    written = {each.path for each in changed}
    return WriteReport(
        written=tuple(each.path for each in changed),
        unchanged=tuple(each.path for each in wanted if each.path not in written),
        removed=swapped.removed,
        kept=swapped.kept,
    )


def _mark_of(root: Path, path: str, trusted: Mapping[str, str]) -> str | None:
    return trusted.get(path) or fingerprint_of_file(root / path)


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
