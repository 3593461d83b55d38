"""How a folder stands on the disk: every file with its size and times, without reading any.

A file that was changed in the same moment in which it was looked at could keep its size and its time. So what is
younger than `DOUBT` when a snapshot is taken stands in it as doubtful, and is read and hashed the next time.
"""

import os
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

DOUBT = 2_000_000_000
"""Nanoseconds: some disks know the time of a file only to two seconds."""

Stamp = tuple[int, int, int]
"""Size in bytes, time of the last change of the content and of the file's own entry, in nanoseconds."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Snapshot:
    """`mark` is a fingerprint of all paths and stamps; `newest` the youngest of the times."""

    stamps: Mapping[str, Stamp]
    mark: str
    newest: int

    def doubtful(self, now: int) -> tuple[str, ...]:
        """The files that may change without showing it, looked at from the moment `now` (nanoseconds)."""
        if self.newest < now - DOUBT:
            return ()
        return tuple(path for path, stamp in self.stamps.items() if max(stamp[1:]) >= now - DOUBT)


def snapshot_of(root: Path, *, without: frozenset[str] = frozenset()) -> Snapshot:
    """Every file below `root` that is not in a hidden folder.

    `without` names files and folders that do not count, at any depth.
    """
    return _snapshot(sorted(_walk(os.fspath(root), "", without)))


def looked_again(before: Snapshot, root: Path, paths: Iterable[str]) -> Snapshot:
    """The folder as it was looked at before, these plain files of it as they stand now."""
    stamps = dict(before.stamps)
    for path in paths:
        try:
            about = (root / path).stat()
        except OSError:
            stamps[path] = (-1, 0, 0)
            continue
        stamps[path] = about.st_size, about.st_mtime_ns, about.st_ctime_ns
    return _snapshot(sorted(stamps.items()))


def _snapshot(pairs: Iterable[tuple[str, Stamp]]) -> Snapshot:
    stamps = dict(pairs)
    told = "\n".join(f"{path}\0{stamp[0]}\0{stamp[1]}\0{stamp[2]}" for path, stamp in stamps.items())
    newest = max((max(stamp[1:]) for stamp in stamps.values()), default=0)
    return Snapshot(
        stamps=stamps, mark=sha256(told.encode("utf-8", "surrogateescape")).hexdigest(), newest=newest
    )


def content_mark(path: Path) -> str:
    """The SHA-256 of a file, "" where it cannot be read."""
    try:
        with path.open("rb") as file:
            hashed = sha256()
            while chunk := file.read(1 << 20):
                hashed.update(chunk)
    except OSError:
        return ""
    return hashed.hexdigest()


def _walk(folder: str, inside: str, without: frozenset[str]) -> Iterator[tuple[str, Stamp]]:
    try:
        entries = os.scandir(folder)
    except OSError:
        # A folder that cannot be read is a finding of its own; that it cannot is part of how the tree stands.
        yield inside + "?", (-1, 0, 0)
        return
    with entries:
        for entry in entries:
            if entry.name in without:
                continue
            path = inside + entry.name
            try:
                if entry.is_dir(follow_symlinks=False):
                    if not entry.name.startswith("."):
                        yield from _walk(entry.path, path + "/", without)
                    continue
                about = entry.stat()
            except OSError:
                yield path, (-1, 0, 0)
                continue
            yield path, (about.st_size, about.st_mtime_ns, about.st_ctime_ns)
            if entry.is_symlink():
                yield path + "@", (hash_of_link(entry.path), 0, 0)


def hash_of_link(path: str) -> int:
    """Where a link leads, as a number: a file outside can be exchanged by turning the link."""
    try:
        return int.from_bytes(sha256(os.readlink(path).encode("utf-8", "surrogateescape")).digest()[:7])
    except OSError:
        return -1
