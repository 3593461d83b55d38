"""A tin that cannot be, and one that cannot be compared with another."""

from collections.abc import Iterator, Mapping

from generator.diagnostics.diagnostic import Diagnostic
from generator.formula.model import Formula
from generator.formula.shelf import Shelf
from generator.formula.tin_text import TinFault, read_shape
from generator.formula.written import WrittenRecipe

_IMPOSSIBLE = frozenset(
    {"negative", "zero", "too large", "too many sides", "uneven", "base", "hole", "capacity"}
)
"""Kinds of faults of which no tin can be the cause; what is left out is only not known."""


def check(
    formula: Formula, written: WrittenRecipe, shelf: Shelf, book: Mapping[str, Formula]
) -> Iterator[Diagnostic]:
    """A tin of no size is an error. One of which a side or the hole is missing is printed as it stands, but no other
    tin can be offered for it, which is told. What names no shape ("a baking sheet") is nothing to compare."""
    if not formula.about.tin:
        return
    _, faults = read_shape(formula.about.tin, spoons=shelf.spoons)
    for fault in faults:
        if fault.kind in _IMPOSSIBLE:
            yield _told("F070", fault.message, fault, written)
        elif fault.kind != "unreadable":
            yield _told("F071", f"{fault.message}, so no other tin is offered", fault, written)


def _told(code: str, message: str, fault: TinFault, written: WrittenRecipe) -> Diagnostic:
    return Diagnostic(code=code, message=message, span=written.spans["tin"], hint=fault.hint)
