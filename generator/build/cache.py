"""What was made once, kept under the fingerprint of all that went into it.

The folder is XDG_CACHE_HOME or ~/.cache, in it `tinleaf/made/`. It is safe to delete at any moment. Each file
holds its own checksum, so that a flipped bit, a file cut off or a file of another version is noticed and made
anew; it is written beside and renamed, so that two makes at once never read half a file. Where nothing can be
read or written, everything works as before, only slower.
"""

import os
import tempfile
from contextlib import suppress
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

MOST_BYTES = 2_000_000_000
"""Where TINLEAF_CACHE_BYTES says nothing else; what was used the longest ago goes first."""

_DIGEST = 32
_MARK = b"tinleaf1"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cache:
    """Bytes by key. `root` None is a cache that keeps nothing. A key is a fingerprint in hexadecimal."""

    root: Path | None
    most: int = MOST_BYTES

    def get(self, key: str) -> bytes | None:
        """What was kept under the key; None where nothing is, or nothing that can be trusted."""
        if self.root is None:
            return None
        place = self._place(self.root, key)
        try:
            kept = place.read_bytes()
        except OSError:
            return None
        head, content = kept[: len(_MARK) + _DIGEST], kept[len(_MARK) + _DIGEST :]
        if head != _MARK + sha256(key.encode() + content).digest():
            with suppress(OSError):
                place.unlink()
            return None
        with suppress(OSError):
            os.utime(place)
        return content

    def put(self, key: str, content: bytes) -> bool:
        """Keeps the content; False where that cannot be."""
        if self.root is None:
            return False
        place = self._place(self.root, key)
        try:
            place.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            handle, beside = tempfile.mkstemp(prefix=".new-", dir=place.parent)
        except OSError:
            return False
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(_MARK + sha256(key.encode() + content).digest() + content)
            os.replace(beside, place)
        except OSError:
            with suppress(OSError):
                Path(beside).unlink()
            return False
        return True

    def drop(self, key: str) -> None:
        if self.root is not None:
            with suppress(OSError):
                self._place(self.root, key).unlink()

    def trim(self, most: int | None = None) -> int:
        """Removes what was used the longest ago until at most `most` bytes are left; returns how many files went."""
        if self.root is None:
            return 0
        most = self.most if most is None else most
        files = sorted(_files(self.root))
        left, gone = sum(size for _, size, _ in files), 0
        for _, size, path in files:
            if left <= most:
                break
            with suppress(OSError):
                os.unlink(path)
                gone += 1
            left -= size
        return gone

    @staticmethod
    def _place(root: Path, key: str) -> Path:
        return root / key[:2] / key[2:]


def users_cache() -> Cache:
    """The cache of the person who runs this; one that keeps nothing where there is no home, or none is wanted."""
    if os.environ.get("TINLEAF_CACHE_BYTES") == "0":
        return Cache(root=None)
    wanted = os.environ.get("XDG_CACHE_HOME", "")
    try:
        base = Path(wanted) if os.path.isabs(wanted) else Path.home() / ".cache"
    except RuntimeError:
        return Cache(root=None)
    return Cache(root=base / "tinleaf" / "made", most=_most_bytes())


def _most_bytes() -> int:
    wanted = os.environ.get("TINLEAF_CACHE_BYTES", "")
    return int(wanted) if wanted.isdecimal() else MOST_BYTES


def _files(root: Path) -> list[tuple[int, int, str]]:
    """When each file was last used, its size, and its path."""
    found = []
    for folder in _entries(root):
        for each in _entries(folder.path) if folder.is_dir(follow_symlinks=False) else ():
            with suppress(OSError):
                about = each.stat(follow_symlinks=False)
                found.append((about.st_mtime_ns, about.st_size, each.path))
    return found


def _entries(folder: str | Path) -> list[os.DirEntry[str]]:
    try:
        with os.scandir(folder) as entries:
            return list(entries)
    except OSError:
        return []
