"""One writer at a time in a content folder. The lock is advisory, and ends with the program that holds it."""

import os
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

PATIENCE = 10.0
_PAUSE = 0.01


@contextmanager
def locked(root: Path) -> Iterator[bool]:
    """Holds the folder's lock for the length of a `with`; what it gives is false where another kept it.

    It waits for `PATIENCE` seconds. The folder itself is what is locked, so that no file of ours is left in it.
    Raises OSError where the folder cannot be opened or cannot be locked at all.
    """
    handle = _open(root)
    try:
        yield _take(handle, until=time.monotonic() + PATIENCE)
    finally:
        os.close(handle)


def _take(handle: int, *, until: float) -> bool:
    while not _try(handle):
        if time.monotonic() >= until:
            return False
        time.sleep(_PAUSE)
    return True


if sys.platform == "win32":
    import msvcrt

    # Windows locks no folder: a file beside the others stands for it.
    def _open(root: Path) -> int:
        return os.open(root / ".tinleaf-lock", os.O_RDWR | os.O_CREAT)

    def _try(handle: int) -> bool:
        try:
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True

else:
    import fcntl

    def _open(root: Path) -> int:
        return os.open(root, os.O_RDONLY)

    def _try(handle: int) -> bool:
        try:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True
