"""What the server knows of the content folder: the newest reading, the last good pages, and files already made."""

import os
import threading
from collections import OrderedDict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from generator.asked.again import ledger_of, read_again
from generator.asked.preview import Piece, pieces_of
from generator.diagnostics.diagnostic import Severity, has_errors
from generator.pipeline import CheckResult, check_folder

MOST_KEPT = 600
"""Files that are kept in memory; the oldest go first."""

_FOLDERS = ("site/leaf/", "site/media/")
_SHARED = frozenset({"site.yaml", "pantry.yaml"})

Stamp = tuple[tuple[str, int, int], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """One reading of the folder. `pieces` may hold older files for what has errors now; `number` rises.

    `ledger` holds a mark of what the ledger says of each recipe.
    """

    number: int
    stamp: Stamp
    result: CheckResult
    pieces: Mapping[str, Piece]
    ledger: Mapping[str, str] | None


class Desk:
    """A content folder that is read again whenever something in it has changed. Safe to ask from many threads.

    Files are made outside the lock: a sheet that is being laid out keeps nobody from a page.
    """

    def __init__(self, root: Path, *, day: date | None = None) -> None:
        self.root, self.day = root, day
        self._known: Known | None = None
        self._made: OrderedDict[str, tuple[object, bytes | None]] = OrderedDict()
        self._lock = threading.RLock()
        self._making: dict[str, threading.Lock] = {}

    @property
    def lock(self) -> threading.RLock:
        """Held by whoever reads, decides and writes as one."""
        return self._lock

    def now(self) -> Known:
        """The folder as it is at this moment."""
        with self._lock:
            stamp = tuple(_stamp(self.root))
            if self._known is None or self._known.stamp != stamp:
                self._known = self._read(stamp)
            return self._known

    @property
    def last(self) -> Known | None:
        """The newest reading there is, without another look at the disk."""
        return self._known

    def file(self, path: str, known: Known | None = None) -> bytes | None:
        """The file of the output at this path, of this reading or of the newest; None where it has none."""
        known = known or self.now()
        pieces = known.pieces
        key = path if path in pieces else next((each for each in _FOLDERS if path.startswith(each)), "")
        if key not in pieces:
            return None
        piece = pieces[key]
        with self._lock:
            made = self._found(path, key, piece)
            turn = self._making.setdefault(key, threading.Lock())
        if made is not None:
            return made[1]
        with turn:
            # Whoever waited for the same files finds them made.
            with self._lock:
                made = self._found(path, key, piece)
            with known.result.speaking():
                return made[1] if made is not None else self._made_now(path, key, piece)

    def _found(self, path: str, key: str, piece: Piece) -> tuple[object, bytes | None] | None:
        """The file as it was made of the same things; a folder's files are made once, whether one is there or not."""
        made = self._made.get(path) or self._made.get(key)
        return made if made is not None and made[0] == piece.made_from else None

    def _made_now(self, path: str, key: str, piece: Piece) -> bytes | None:
        products = piece.work()
        with self._lock:
            self._keep(key, piece, None)
            for product in products:
                self._keep(product.path, piece, product.content)
            while len(self._made) > MOST_KEPT:
                oldest, _ = self._made.popitem(last=False)
                for each in _FOLDERS:
                    if oldest.startswith(each):
                        self._made.pop(each, None)
        return next((product.content for product in products if product.path == path), None)

    def _keep(self, path: str, piece: Piece, content: bytes | None) -> None:
        self._made[path] = (piece.made_from, content)
        self._made.move_to_end(path)

    def _read(self, stamp: Stamp) -> Known:
        ledger = ledger_of(self.root)
        before = self._known
        if before is None:
            result = check_folder(self.root, day=self.day)
        else:
            paths = self._changed(before.stamp, stamp)
            result = read_again(
                self.root, before.result, paths, day=self.day, ledgers=(before.ledger, ledger)
            )
        number = self._known.number + 1 if self._known else 1
        pieces: Mapping[str, Piece] = pieces_of(result, self.root)
        if self._known and has_errors(result.diagnostics):
            pieces = _last_good(result, pieces, self._known.pieces)
        return Known(number=number, stamp=stamp, result=result, pieces=pieces, ledger=ledger)

    def _changed(self, before: Stamp, now: Stamp) -> list[str]:
        """The files that are not as they were, by their paths in the folder."""
        return [Path(each).relative_to(self.root).as_posix() for each, *_ in set(before) ^ set(now)]


def _last_good(
    result: CheckResult, new: Mapping[str, Piece], old: Mapping[str, Piece]
) -> Mapping[str, Piece]:
    """The files as they were, save those of bakes that are free of errors."""
    wrong = {each.span.path for each in result.diagnostics if each.severity is Severity.ERROR}
    if wrong & _SHARED or any(path.startswith("themes/") for path in wrong):
        return old
    own = [f"{start}{name}/" for name in result.setting.book for start in ("site/recipes/", "desk/")]
    return {**old, **{path: piece for path, piece in new.items() if path.startswith(tuple(own))}}


def _stamp(folder: Path) -> Iterator[tuple[str, int, int]]:
    """Name, moment and size of every file that is not hidden. What vanishes meanwhile is left out."""
    try:
        entries = sorted(os.scandir(folder), key=lambda each: each.name)
    except OSError:
        return
    for each in entries:
        if each.name.startswith("."):
            continue
        try:
            if each.is_dir(follow_symlinks=False):
                yield from _stamp(Path(each.path))
            else:
                found = each.stat()
                yield each.path, found.st_mtime_ns, found.st_size
        except OSError:
            continue
