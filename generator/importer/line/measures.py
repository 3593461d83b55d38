"""The measures of a line with where they stand in it."""

import re
from dataclasses import dataclass
from fractions import Fraction

from generator.formula.shelf import Shelf
from generator.importer.line.fields import leading_measure
from generator.importer.line.tidy import SIGNS
from generator.measure.quantity import read_quantity

_NUMBER = re.compile(rf"(?<![\w.,/⁄])[\d{SIGNS}]|(?<=[^\W\d_])(?=\d)")
_LIST_NUMBER = re.compile(r"^\W*\d{1,2}[.)]\s+(?=\S)")
_METRIC = frozenset({"mg", "g", "kg", "ml", "cl", "dl", "l"})
"""A spoon of 20 ml and a cup of 200 are amounts said twice: metric and other units are two kinds."""
_MOST = 12
"""Measures of one line, at the most."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """Letters `start` to `end` are a measure. `kind` is "mass", "volume", either "in metric", or what is counted."""

    start: int
    end: int
    kind: str
    amount: Fraction


def stretches(text: str, shelf: Shelf) -> tuple[Stretch, ...]:
    """The measures of a line in order; shares in percent and numbers of a list are none."""
    out: list[Stretch] = []
    counted = _LIST_NUMBER.match(text)
    at = counted.end() if counted else 0
    while len(out) < _MOST and (found := _NUMBER.search(text, at)):
        start = found.start()
        if text[start - 1 : start].isalpha() and not (out and out[-1].end == start):
            at = found.end() + 1
            continue
        tail = text[start:]
        head, rest = leading_measure(tail, shelf)
        read = read_quantity(head, spoons=shelf.spoons) if head else None
        end = start + len(tail[: len(tail) - len(rest)].rstrip()) if rest else start + len(tail.rstrip())
        if read is None or end <= start:
            at = max(found.end(), start + 1)
            continue
        at = end
        if text[end:].lstrip().startswith("%"):
            continue
        unit = read[0].unit
        kind = unit.kind.value if unit else ""
        kind = unit.name if unit and kind not in ("mass", "volume") else kind
        kind = f"{kind} in metric" if unit and unit.name in _METRIC else kind
        factor = unit.factor if unit else Fraction(1)
        out.append(Stretch(start=start, end=end, kind=kind, amount=read[0].amount.low * factor))
    return tuple(out)
