"""Values as bytes: the same bytes for equal values, in every process, so that bytes can be compared for values."""

import copyreg
import pickle
import zlib
from collections.abc import Callable, Mapping
from hashlib import sha256
from io import BytesIO
from multiprocessing.reduction import ForkingPickler
from types import MappingProxyType
from typing import Any


def _read_only(content: dict[object, object]) -> Mapping[object, object]:
    return MappingProxyType(content)


def _by_parts(mapping: Mapping[object, object]) -> tuple[Callable[..., object], tuple[object, ...]]:
    return _read_only, (dict(mapping),)


_TABLE: dict[type, Callable[[Any], Any]] = {**copyreg.dispatch_table, MappingProxyType: _by_parts}


# Views hold read-only mappings, which Python does not know how to send to another process.
ForkingPickler.register(MappingProxyType, _by_parts)


def packed(value: object) -> bytes:
    """Frozen dataclasses, tuples, mappings, numbers, dates and texts as bytes.

    Without the memory for what occurred before: whether two equal texts are one object is an accident of the run.
    A set has no order that is the same in two processes, so it must not be in the value.
    """
    written = BytesIO()
    pickler = pickle.Pickler(written, protocol=5)
    pickler.fast = True
    pickler.dispatch_table = _TABLE
    pickler.dump(value)
    return written.getvalue()


def pressed(packed_value: bytes) -> bytes:
    """Fewer bytes of the same: the sizes of a page repeat most of their words."""
    return zlib.compress(packed_value, 1)


def unpressed(kept: bytes) -> object:
    return pickle.loads(zlib.decompress(kept))


def mark_of(packed_value: bytes) -> str:
    """The fingerprint of packed bytes."""
    return sha256(packed_value).hexdigest()


def digest(*values: object) -> str:
    """One fingerprint of several values."""
    return sha256(packed(values)).hexdigest()
