"""Values as bytes: the same bytes for equal values, in every process, so that bytes can be compared for values."""

import copyreg
import gc
import pickle
import zlib
from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass
from hashlib import sha256
from io import BytesIO
from multiprocessing.reduction import ForkingPickler
from operator import attrgetter
from types import MappingProxyType
from typing import Any


def _read_only(content: dict[object, object]) -> Mapping[object, object]:
    return MappingProxyType(content)


def _by_parts(mapping: Mapping[object, object]) -> tuple[Callable[..., object], tuple[object, ...]]:
    return _read_only, (dict(mapping),)


Reducer = Callable[[Any], Any]


class _Table(dict[type, Reducer]):
    """How each kind of value is taken apart. A frozen dataclass with slots is asked for all its fields at once, where
    its own way of being packed asks for one after the other and looks up their names every time."""

    def __missing__(self, kind: type) -> Reducer:
        if not (is_dataclass(kind) and "__slots__" in vars(kind) and fields(kind)):
            raise KeyError(kind)
        names = [each.name for each in fields(kind)]
        together = attrgetter(*names)
        if len(names) == 1:
            self[kind] = lambda value: (_rebuilt, (kind, together(value)))
        else:
            self[kind] = lambda value: (_rebuilt, (kind, *together(value)))
        return self[kind]


class _Setters(dict[type, tuple[Callable[[Any, Any], None], ...]]):
    """How the fields of a kind are filled, past the lock of a frozen one."""

    def __missing__(self, kind: type) -> tuple[Callable[[Any, Any], None], ...]:
        self[kind] = tuple(getattr(kind, each.name).__set__ for each in fields(kind))
        return self[kind]


_SETTERS = _Setters()


def _rebuilt(kind: type, *values: object) -> object:
    """ValueError: it was packed by a version of the program in which it had other fields."""
    made: object = object.__new__(kind)
    for put, value in zip(_SETTERS[kind], values, strict=True):
        put(made, value)
    return made


_TABLE = _Table({**copyreg.dispatch_table, MappingProxyType: _by_parts})


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
    # Thousands of values at once, none of which is waste: to look for some among them takes as long as to read them.
    was = gc.isenabled()
    gc.disable()
    try:
        return pickle.loads(zlib.decompress(kept))
    finally:
        if was:
            gc.enable()


def mark_of(packed_value: bytes) -> str:
    """The fingerprint of packed bytes."""
    return sha256(packed_value).hexdigest()


def digest(*values: object) -> str:
    """One fingerprint of several values."""
    return sha256(packed(values)).hexdigest()
