"""Puts a complete set of new files in the place of the old ones, and survives being cut off at any moment.

1. `stage`: every changed file is written whole into a staging folder inside the output folder (so on the
   same disk); last comes the new manifest, which marks the staging as complete. Cut off here, nothing of
   the output has changed.
2. `finish`: each staged file is moved in with one rename, orphans are removed, and the new manifest takes
   the old one's place. Cut off here, each file is whole, old or new, and the next make finishes the rest.
"""

import os
import shutil
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from generator.build import manifest
from generator.build.fingerprint import fingerprint_of_file

STAGING = ".tinleaf-staging"
_FILES = "files"
_NEXT = "next.json"


@dataclass(frozen=True, slots=True, kw_only=True)
class Swapped:
    """`removed` are orphans of an earlier make; `kept` are orphans that somebody has edited since."""

    removed: tuple[str, ...] = ()
    kept: tuple[str, ...] = ()


def is_staging_strange(root: Path) -> bool:
    staging = root / STAGING
    return staging.is_symlink() or (staging.exists() and not staging.is_dir())


def is_half_done(root: Path) -> bool:
    """Whether an earlier make was cut off after its staging was complete."""
    return manifest.read_manifest(root / STAGING / _NEXT) is not None


def recover(root: Path) -> bool:
    """Finishes what an earlier make left half done, and clears away what it left unfinished. True where it did."""
    if is_half_done(root):
        finish(root)
        return True
    if (root / STAGING).exists():
        shutil.rmtree(root / STAGING)
        return True
    return False


def stage(root: Path, changed: Iterable[tuple[str, Callable[[], bytes]]], new: manifest.Manifest) -> None:
    """Writes `changed` and the manifest of the whole new output beside the old output."""
    staging = root / STAGING
    staging.mkdir()
    try:
        for path, content in changed:
            _write(staging / _FILES / path, content())
        _write(staging / (_NEXT + ".part"), manifest.as_bytes(new))
        os.replace(staging / (_NEXT + ".part"), staging / _NEXT)
        _settle(staging)
    except BaseException:
        shutil.rmtree(staging, ignore_errors=True)
        raise


def finish(root: Path) -> Swapped:
    """Moves the staged files in. Every step may be repeated after an interruption."""
    staging = root / STAGING
    new = manifest.read_manifest(staging / _NEXT) or {}
    old = manifest.read_manifest(root / manifest.NAME) or {}
    orphans = {path: mark for path, mark in old.items() if path not in new}
    blocking = {path: mark for path, mark in orphans.items() if _blocks(path, new)}
    swapped = [_remove(root, path, mark) for path, mark in blocking.items()]
    _move_in(staging / _FILES, root)
    swapped += [_remove(root, path, mark) for path, mark in orphans.items() if path not in blocking]
    os.replace(staging / _NEXT, root / manifest.NAME)
    _settle(root)
    shutil.rmtree(staging)
    return Swapped(
        removed=tuple(sorted(path for each in swapped for path in each.removed)),
        kept=tuple(sorted(path for each in swapped for path in each.kept)),
    )


def _blocks(path: str, new: manifest.Manifest) -> bool:
    """Whether a file stands where a new folder belongs, or in a folder where a new file belongs."""
    above = {str(each) for each in PurePosixPath(path).parents}
    return any(each in new for each in above) or any(each.startswith(path + "/") for each in new)


def _move_in(source: Path, root: Path) -> None:
    touched = set()
    for file in sorted(_files_in(source)):
        target = root / file.relative_to(source)
        target.parent.mkdir(parents=True, exist_ok=True)
        os.replace(file, target)
        touched.add(target.parent)
    for folder in sorted(touched):
        _settle(folder)


def _files_in(folder: Path) -> Iterator[Path]:
    return (each for each in folder.rglob("*") if each.is_file()) if folder.is_dir() else iter(())


def _remove(root: Path, path: str, mark: str) -> Swapped:
    """Removes a file that still is as we wrote it, and the folders that this leaves empty."""
    file = root / path
    if leads_astray(root, path):
        return Swapped(kept=(path,))
    if not file.exists():
        return Swapped()
    if fingerprint_of_file(file) != mark:
        return Swapped(kept=(path,))
    file.unlink()
    for folder in file.relative_to(root).parents:
        if folder == Path() or any((root / folder).iterdir()):
            break
        (root / folder).rmdir()
    return Swapped(removed=(path,))


def leads_astray(root: Path, path: str) -> bool:
    """Whether a link stands on the way to a file or in its place, so that writing could leave the folder."""
    inside = PurePosixPath(path)
    ways = [inside, *inside.parents]
    return any((root / each).is_symlink() for each in ways if each != PurePosixPath())


def _write(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("xb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())


def _settle(folder: Path) -> None:
    """Makes the disk remember the names in a folder, where the system can be asked to (not on Windows)."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
