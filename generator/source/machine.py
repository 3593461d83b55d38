"""Reads what a maker states of a bread machine, of a wanted dough temperature, and of what mixing adds to it."""

import re
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Any, get_args

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.settings import Degrees, Friction, LoadingOrder, Machine, Pan
from generator.source.document import Mapping, Node
from generator.source.fields import check_keys, choice_of, text_of

MACHINE_KEYS = ("order", "rest", "add_ins", "pan")
FRICTION_KEYS = ("machine", "mixer", "hand")
LONGEST_REST = 30
"""Minutes that machines stand still to warm what is in them, before they mix (common practice: 0 to 30)."""

_WANTED_F = (Fraction(50), Fraction(100))
_MOST_FRICTION_F = Fraction(60)
_SCALE_NAMES = {"F": "°F", "C": "°C"}
_DEGREES = re.compile(r"([0-9]{1,3}(?:\.[0-9]{1,3})?)\s{0,3}(?:°\s?)?([FC])")
_REST = re.compile(r"([0-9]{1,3})(?:\s?[-–]\s?([0-9]{1,3}))?\s{0,3}min(?:utes?)?")

_Reader = Callable[[Node], tuple[Any, Diagnostics]]


def read_machine(node: Node | None) -> tuple[Machine | None, Diagnostics]:
    """The keys of `machine:`, each None or "" where it is not stated; None where there is no such key."""
    if not isinstance(node, Mapping):
        example = "machine: {order: liquids first, rest: 20 min, pan: 1.5 lb}"
        return None, _not_keys(node, "a bread machine", example)
    found = list(check_keys(node, MACHINE_KEYS, what="a bread machine"))
    values = _values(node, _MACHINE_READERS, found)
    return replace(Machine(), **values), tuple(found)


def read_friction(node: Node | None) -> tuple[Friction | None, Diagnostics]:
    """The degrees that mixing adds, by how it is mixed; only what the maker states."""
    if not isinstance(node, Mapping):
        return None, _not_keys(node, "friction", "friction: {machine: 35 F, hand: 5 F}")
    found = list(check_keys(node, FRICTION_KEYS, what="friction"))
    values = _values(node, dict.fromkeys(FRICTION_KEYS, _friction), found)
    return replace(Friction(), **values), tuple(found)


def read_dough_temperature(node: Node | None) -> tuple[Degrees | None, Diagnostics]:
    """One temperature that a dough can have after mixing: 50 to 100 °F (10 to 38 °C)."""
    degrees, found = _degrees(node, "a temperature of a dough", "78 F or 25 C")
    if degrees is None or node is None:
        return None, found
    in_f = degrees.value * Fraction(9, 5) + 32 if degrees.scale == "C" else degrees.value
    if not _WANTED_F[0] <= in_f <= _WANTED_F[1]:
        message = f"no dough is wanted at {_plain(degrees)}"
        hint = (
            "Write what the dough should have after mixing, from 50 to 100 °F (10 to 38 °C); most have 78 °F."
        )
        return None, (_fault("M002", node, message, hint),)
    return degrees, ()


def _friction(node: Node | None) -> tuple[Degrees | None, Diagnostics]:
    """A difference of temperatures: 60 °F degrees are 33 °C degrees."""
    degrees, found = _degrees(node, "a number of degrees", "35 F or 19 C")
    if degrees is None or node is None:
        return None, found
    in_f = degrees.value * Fraction(9, 5) if degrees.scale == "C" else degrees.value
    if in_f > _MOST_FRICTION_F:
        message = f"no mixing warms a dough by {_plain(degrees)}"
        hint = "Write the degrees that mixing adds, a difference and no temperature: 0 to 60 °F (0 to 33 °C)."
        return None, (_fault("M003", node, message, hint),)
    return degrees, ()


def _degrees(node: Node | None, what: str, example: str) -> tuple[Degrees | None, Diagnostics]:
    text, found = text_of(node)
    if node is None or text is None:
        return None, found
    match = _DEGREES.fullmatch(text)
    if match is None:
        hint = f"Write one number with its scale, as in {example}."
        return None, (_fault("M001", node, f"“{text[:40]}” is not {what}", hint),)
    return Degrees(value=Fraction(match[1]), scale="F" if match[2] == "F" else "C"), ()


def _rest(node: Node) -> tuple[tuple[int, int] | None, Diagnostics]:
    """Minutes at least and at most."""
    text, found = text_of(node)
    if text is None:
        return None, found
    match = _REST.fullmatch(text)
    low, high = (int(match[1]), int(match[2] or match[1])) if match else (1, 0)
    if low > high or high > LONGEST_REST:
        hint = (
            f"Write minutes from 0 to {LONGEST_REST}, as in rest: 20 min; with rest: 0 min it mixes at once."
        )
        return None, (_fault("M004", node, f"“{text[:40]}” is no rest before mixing", hint),)
    return (low, high), ()


_MACHINE_READERS: dict[str, _Reader] = {
    "order": lambda node: choice_of(node, get_args(LoadingOrder)),
    "rest": _rest,
    "add_ins": text_of,
    "pan": lambda node: choice_of(node, get_args(Pan)),
}


def _values(node: Mapping, readers: dict[str, _Reader], found: list[Diagnostic]) -> dict[str, Any]:
    values = {}
    for key, value in node.entries:
        if key.value in readers:
            read, faults = readers[key.value](value)
            found.extend(faults)
            if read is not None:
                values[key.value] = read
    return values


def _not_keys(node: Node | None, what: str, example: str) -> Diagnostics:
    blank = node is not None and text_of(node) == (None, ())
    if node is None or blank:
        return ()
    return (_fault("S062", node, f"{what} is told with keys and values", f"Write it as in “{example}”."),)


def _fault(code: str, node: Node, message: str, hint: str) -> Diagnostic:
    return Diagnostic(code=code, message=message, span=node.span, hint=hint)


def _plain(degrees: Degrees) -> str:
    return f"{float(degrees.value):.1f}".removesuffix(".0") + f" {_SCALE_NAMES[degrees.scale]}"
