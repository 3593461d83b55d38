"""What is to be written, in one file: the whole of a change that touches several files of a maker's."""

import base64
import binascii
import hashlib
import json
from collections.abc import Iterable
from dataclasses import dataclass

NAME = ".tinleaf-pending"
UNFINISHED = ".tinleaf-pending.part"


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """`path` is inside the content folder, with forward slashes. `before` is None where there was no file."""

    path: str
    before: bytes | None
    after: bytes


@dataclass(frozen=True, slots=True, kw_only=True)
class Waiting:
    """A change read back: `before` is the fingerprint of the bytes it was made from, "" for no file."""

    path: str
    before: str
    after: bytes


def fingerprint(data: bytes | None) -> str:
    return "" if data is None else hashlib.sha256(data).hexdigest()


def as_bytes(changes: Iterable[Change]) -> bytes:
    """The file, made so that one cut short cannot be read."""
    files = [
        {
            "path": each.path,
            "before": fingerprint(each.before),
            "after": base64.b64encode(each.after).decode(),
        }
        for each in changes
    ]
    return (json.dumps({"tinleaf": 1, "files": files}, indent=1) + "\n").encode()


def read(data: bytes) -> tuple[Waiting, ...] | None:
    """The changes in the order of writing; None where the file is no such file, or not whole."""
    try:
        files = json.loads(data)["files"]
        return tuple(
            Waiting(
                path=_text(each["path"]),
                before=_text(each["before"]),
                after=base64.b64decode(_text(each["after"]), validate=True),
            )
            for each in files
        )
    except (ValueError, KeyError, TypeError, RecursionError, binascii.Error):
        return None


def _text(value: object) -> str:
    if not isinstance(value, str):
        raise TypeError("a text was expected")
    return value
