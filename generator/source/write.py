"""The only room that changes a maker's file: named stretches are replaced, every other byte is kept.

`commit` changes several files as one. In this order, each step on the disk before the next begins:

1. Under the folder's lock, every file is compared with the bytes that the change was made from.
2. The whole change is written to `.tinleaf-pending.part`, and every new file beside the old one.
   Cut off here, nothing has changed.
3. The pending file gets its name, `.tinleaf-pending`. From here on the change is decided.
4. Each file takes the old one's place with one rename, and the pending file goes.
   Cut off here, the next `commit` or `recover` finishes it.
"""

import os
from collections.abc import Callable, Iterable
from pathlib import Path, PurePosixPath

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, has_errors
from generator.diagnostics.span import Span, whole_file
from generator.source import pending
from generator.source.lines import Places
from generator.source.lock import locked
from generator.source.pending import Change, Waiting, fingerprint

__all__ = ["Change", "commit", "is_cut_off", "recover", "replace_spans"]


def replace_spans(text: str, changes: Iterable[tuple[Span, str]]) -> str:
    """`text` with each stretch replaced. A stretch of no width (end = start) is a place to insert at.

    `text` is the whole file as read, byte-order mark and line ends included.
    Raises ValueError where two stretches overlap or one lies outside the text.
    """
    places = Places("", text)
    ordered = sorted(
        (
            _index(places, span.line, span.column),
            _index(places, span.end_line, span.end_column),
            new,
        )
        for span, new in changes
    )
    pieces, last = [], 0
    for start, end, new in ordered:
        if start < last or end < start:
            raise ValueError("the stretches to replace overlap")
        pieces += [text[last:start], new]
        last = end
    return "".join((*pieces, text[last:]))


def _index(places: Places, line: int, column: int) -> int:
    if not 1 <= line <= places.line_count():
        raise ValueError(f"the text has no line {line}")
    index = places.index_of(line, column)
    if index > places.starts[line - 1] + len(places.line_text(line)):
        raise ValueError(f"line {line} has no column {column}")
    return index


def commit(root: Path, changes: Iterable[Change]) -> Diagnostics:
    """Writes all the changes or none. They are written where no error comes back.

    A file whose bytes are no longer `before` is never written over, and then nothing is. The files are
    replaced in the order given: put the ledger last, so that it never tells of what is not there yet.
    Raises ValueError where two changes are of one file.
    """
    wanted = tuple(each for each in changes if each.before != each.after)
    if len({each.path for each in wanted}) < len(wanted):
        raise ValueError("two changes of one file")
    return _under_lock(root, lambda: _commit(root, wanted)) if wanted else ()


def is_cut_off(root: Path) -> bool:
    """Whether an earlier change may wait to be finished or cleared away. Costs two looks at the disk."""
    return (root / pending.NAME).exists() or (root / pending.UNFINISHED).exists()


def recover(root: Path) -> Diagnostics:
    """Finishes a change that was cut off once it was decided, clears away one that was not. Tells what it did.

    A file that was edited since is never written over: it is kept and named.
    """
    return _under_lock(root, lambda: _recover(root)) if is_cut_off(root) else ()


def _under_lock(root: Path, work: Callable[[], Diagnostics]) -> Diagnostics:
    try:
        with locked(root) as held:
            return work() if held else (_busy(),)
    except OSError as reason:
        return (_unwritable(reason, "."),)


def _commit(root: Path, changes: tuple[Change, ...]) -> Diagnostics:
    earlier = _recover(root)
    found = (*earlier, *(fault for each in changes for fault in _faults(root, each)))
    if has_errors(found):
        return found
    try:
        _prepare(root, changes)
    except OSError as reason:
        _clear(root, [each.path for each in changes])
        return (*earlier, _unwritable(reason, _path_of(reason, root, changes)))
    try:
        for each in changes:
            _move_in(root, each.path)
        _end(root)
    except OSError as reason:
        return (*earlier, _half_way(reason, changes))
    return earlier


def _faults(root: Path, change: Change) -> Diagnostics:
    """Why a file cannot be changed: something else than `before` stands there, or it is not to be written."""
    target = _target(root, change.path)
    if target is None:
        return (_astray(change.path),)
    try:
        now = target.read_bytes() if target.exists() else None
        guarded = target.exists() and not target.stat().st_mode & 0o222
    except OSError as reason:
        return (_unwritable(reason, change.path),)
    if now != change.before:
        return (_changed(change.path, gone=now is None, new=change.before is None),)
    return (_guarded(change.path),) if guarded else ()


def _target(root: Path, path: str) -> Path | None:
    """The file itself, links followed; None where that is outside the folder."""
    if "\0" in path or PurePosixPath(path).is_absolute() or ".." in PurePosixPath(path).parts:
        return None
    inside, target = Path(os.path.realpath(root)), Path(os.path.realpath(root / path))
    return target if inside in target.parents else None


def _prepare(root: Path, changes: tuple[Change, ...]) -> None:
    unfinished = root / pending.UNFINISHED
    _lay(unfinished, pending.as_bytes(changes))
    for each in changes:
        _lay_beside(root, each.path, each.after)
    os.replace(unfinished, root / pending.NAME)
    _settle(root)


def _real(root: Path, path: str) -> Path:
    return Path(os.path.realpath(root / path))


def _beside(target: Path) -> Path:
    return target.with_name(f".{target.name}.tinleaf-new")


def _lay_beside(root: Path, path: str, data: bytes) -> None:
    """Writes the new file whole beside the old one, with the old one's permissions."""
    target = _real(root, path)
    target.parent.mkdir(parents=True, exist_ok=True)
    beside = _beside(target)
    _lay(beside, data)
    if target.exists():
        os.chmod(beside, target.stat().st_mode & 0o7777)
    _settle(target.parent)


def _lay(path: Path, data: bytes) -> None:
    path.unlink(missing_ok=True)
    with path.open("xb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def _move_in(root: Path, path: str) -> None:
    target = _real(root, path)
    os.replace(_beside(target), target)
    _settle(target.parent)


def _end(root: Path) -> None:
    (root / pending.NAME).unlink()
    _settle(root)


def _settle(folder: Path) -> None:
    """Makes the disk remember the names in a folder, where the system can be asked to (not on Windows)."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _clear(root: Path, paths: Iterable[str]) -> None:
    """Takes away what was prepared and is not wanted."""
    for path in paths:
        if _target(root, path) is not None:
            _remove(_beside(_real(root, path)))
    _remove(root / pending.UNFINISHED)


def _remove(path: Path) -> None:
    try:
        path.unlink(missing_ok=True)
    except OSError:
        # A hidden file that stays behind harms nobody, and the next commit writes over it.
        return


def _recover(root: Path) -> Diagnostics:
    """Under the lock: what is left there is of a command that ended before its time."""
    name, unfinished = root / pending.NAME, root / pending.UNFINISHED
    if name.exists():
        waiting = pending.read(name.read_bytes())
        if waiting is None or any(_target(root, each.path) is None for each in waiting):
            return (_unreadable(),)
        return _finish(root, waiting)
    if unfinished.exists():
        _clear(root, [each.path for each in pending.read(unfinished.read_bytes()) or ()])
    return ()


def _finish(root: Path, waiting: tuple[Waiting, ...]) -> Diagnostics:
    """Brings in what is missing, or drops the whole where an edit came before anything of it was in place.

    To go on there would leave a ledger that tells of a change which the file does not have.
    """
    now = {each.path: fingerprint(_bytes_of(root, each.path)) for each in waiting}
    done = [each for each in waiting if now[each.path] == fingerprint(each.after)]
    missing = [each for each in waiting if each not in done and now[each.path] == each.before]
    edited = [each for each in waiting if each not in done and each not in missing]
    dropped = bool(edited) and not done
    if not dropped:
        for each in missing:
            _lay_beside(root, each.path, each.after)
            _move_in(root, each.path)
    _clear(root, [each.path for each in waiting])
    _end(root)
    if edited:
        return tuple(_edited(each.path, dropped=dropped) for each in edited)
    return (_finished([each.path for each in missing]),) if missing else ()


def _bytes_of(root: Path, path: str) -> bytes | None:
    target = _real(root, path)
    return target.read_bytes() if target.exists() else None


def _path_of(reason: OSError, root: Path, changes: tuple[Change, ...]) -> str:
    """The file that a failure is about; the folder where that cannot be told (a full disk)."""
    name = str(reason.filename or "")
    return next((each.path for each in changes if name == str(_beside(_real(root, each.path)))), ".")


def _changed(path: str, *, gone: bool, new: bool) -> Diagnostic:
    what = "is no longer there" if gone else "is there already" if new else "changed meanwhile"
    hint = "Nothing was written. Give the command again: it then starts from the file as it is now."
    return Diagnostic(code="W001", message=f"{path} {what}", span=whole_file(path), hint=hint)


def _unwritable(reason: OSError, path: str) -> Diagnostic:
    message = f"this cannot be written: {reason.strerror or reason}"
    hint = "Nothing was changed. Look at the permissions and at the room left on the disk."
    return Diagnostic(code="W002", message=message, span=whole_file(path), hint=hint)


def _guarded(path: str) -> Diagnostic:
    hint = "Nothing was changed. Make the file writable if it is to be changed."
    return Diagnostic(code="W002", message=f"{path} is read-only", span=whole_file(path), hint=hint)


def _busy() -> Diagnostic:
    message = "another command has been writing in this folder for a while"
    hint = "Nothing was changed. Give the command again once the other has ended."
    return Diagnostic(code="W003", message=message, span=whole_file("."), hint=hint)


def _astray(path: str) -> Diagnostic:
    message = f"{path} leads out of the content folder"
    hint = "Nothing was changed. Copy what the link leads to into the folder, and delete the link."
    return Diagnostic(code="W004", message=message, span=whole_file(path), hint=hint)


def _half_way(reason: OSError, changes: tuple[Change, ...]) -> Diagnostic:
    names = ", ".join(each.path for each in changes)
    message = f"a change of {names} was interrupted: {reason.strerror or reason}"
    hint = "Every file is whole. The next command in this folder finishes the change."
    return Diagnostic(code="W005", message=message, span=whole_file(changes[0].path), hint=hint)


def _unreadable() -> Diagnostic:
    message = f"{pending.NAME} cannot be understood"
    hint = "It was damaged after it was written. See that the files are as they should be, then delete it."
    return Diagnostic(code="W006", message=message, span=whole_file(pending.NAME), hint=hint)


def _edited(path: str, *, dropped: bool) -> Diagnostic:
    message = f"{path} was edited after a command that was changing it had been cut off"
    hint = (
        "The edit is kept, and the change of that command was dropped: give it again."
        if dropped
        else "The edit is kept, and the rest of that command's change is in place: compare the file with the ledger."
    )
    return Diagnostic(code="W007", message=message, span=whole_file(path), hint=hint)


def _finished(paths: list[str]) -> Diagnostic:
    message = f"a command that had been cut off is finished now: {', '.join(paths)}"
    return Diagnostic(code="W008", message=message, span=whole_file(paths[0]), hint="Nothing is lost.")
