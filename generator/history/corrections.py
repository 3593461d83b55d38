"""What the corrections of a recipe file say, held against its formula.

A correction states its change as “PART/ITEM OLD -> NEW”; for a temperature or a time “KIND OLD -> NEW”. Other
words are a maker's right, and are let pass.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, did_you_mean
from generator.diagnostics.span import Span
from generator.formula.model import Correction, Formula, Heat, Line, Timed
from generator.formula.names import lines_called
from generator.formula.references import KINDS
from generator.measure.density import apart
from generator.measure.duration import read_duration
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.temperature import read_temperature
from generator.measure.unit import SPOONS, Kind, Spoons

ARROW = re.compile(r"\s*(?:->|→|=>)\s*")
_PERCENT = re.compile(r"[0-9.,/½¼¾⅓⅔–-]+\s?%")
_WORDS = re.compile(
    r"(?:an?|one|two|three) (?:pinch|dash|drop)(?:es|s)?|to taste|no amount|for dusting", re.I
)
_NEAR = Fraction(5, 1000)
"""A stated amount and its weight in the formula are the same within this, for spoons and cups are rounded."""
_LONGEST = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """`what` is `part/item`, `item`, or a kind such as `oven`, perhaps with its way before a slash."""

    what: str
    old: str
    new: str


def read_change(text: str) -> Change | None:
    """The change that a correction states; None where its words say it otherwise."""
    sides = ARROW.split(" ".join(text.split()))
    if len(sides) != 2 or not all(sides) or len(text) > _LONGEST:
        return None
    words, new = sides[0].split(" "), sides[1]
    for at in range(1, len(words)):
        old = " ".join(words[at:])
        if is_value(old):
            return Change(what=" ".join(words[:at]), old=old, new=new)
    return None


def is_value(text: str) -> bool:
    """Whether the whole text is an amount, a percentage, a temperature or a time."""
    read = read_quantity(text, spoons=SPOONS["us"])
    if read is not None and read[1] == len(text):
        return True
    if _PERCENT.fullmatch(text) or _WORDS.fullmatch(text):
        return True
    return read_temperature(text) is not None or read_duration(text) is not None


def correction_diagnostics(formula: Formula, *, spoons: Spoons) -> Diagnostics:
    """Warnings where the corrections are out of order, or where the newest of a line is not what the formula says."""
    return (*_out_of_order(formula), *_unlike(formula, spoons))


def _folded(text: str) -> str:
    return " ".join(text.split()).casefold()


def _span(each: Correction, formula: Formula) -> Span:
    return each.span or formula.spans.get("corrections", formula.spans["title"])


def _out_of_order(formula: Formula) -> Iterator[Diagnostic]:
    corrections = formula.about.corrections
    for earlier, later in pairwise(corrections):
        if later.on < earlier.on:
            days = f"{later.on.isoformat()}, and stands below one of {earlier.on.isoformat()}"
            message = f"this correction is of {days}"
            hint = "Put corrections in the order of their days: readers are told them from the newest back."
            yield Diagnostic(code="C002", message=message, span=_span(later, formula), hint=hint)


def _unlike(formula: Formula, spoons: Spoons) -> Iterator[Diagnostic]:
    """The newest correction of each thing; the older ones were true in their time."""
    seen: set[str] = set()
    newest_first = sorted(
        enumerate(formula.about.corrections), key=lambda each: (each[1].on, each[0]), reverse=True
    )
    for _, each in newest_first:
        change = read_change(each.change)
        if change is None:
            continue
        lines = lines_called(change.what, formula.parts)
        key = lines[0].key if len(lines) == 1 else _folded(f"{change.what} {change.old if not lines else ''}")
        if key in seen:
            continue
        seen.add(key)
        yield from _held_against(formula, each, change, lines, spoons)


def _held_against(
    formula: Formula, each: Correction, change: Change, lines: tuple[Line, ...], spoons: Spoons
) -> Iterator[Diagnostic]:
    span = _span(each, formula)
    if len(lines) == 1:
        now = _other_amount(lines[0], change.new, spoons)
        if now:
            message = f"this correction says {change.new}, and the formula has {now} of {lines[0].item}"
            hint = f"Record what it is now: tinleaf correct {formula.name} --as-it-stands --why “…”."
            yield Diagnostic(code="C001", message=message, span=span, hint=hint)
        return
    kind = _folded(change.what.rpartition("/")[2])
    if kind in (*KINDS, "oven", "core"):
        if not _is_in_method(formula, kind, change.new):
            message = f"this correction says {kind} {change.new}, and the method has none such"
            yield Diagnostic(
                code="C001", message=message, span=span, hint="Look at the method, or at the entry."
            )
    elif not lines and _amount(change.new, spoons) is not None and kind not in _KEYS:
        known = {_folded(line.item): line.item for line in formula.lines}
        message = f"the formula has no “{change.what}” any more"
        hint = did_you_mean(kind, known) or "That may well be right: the entry tells what was corrected then."
        yield Diagnostic(code="C003", message=message, span=span, hint=hint)


_KEYS = (
    "makes",
    "portions",
    "tin",
    "weighs",
    "bakes_off",
    "keeps",
    "flour",
    "dough",
    "temperature",
    "time",
    "length",
)


def _amount(text: str, spoons: Spoons) -> Quantity | None:
    read = read_quantity(text, spoons=spoons)
    return read[0] if read is not None and read[1] == len(text) else None


def _other_amount(line: Line, new: str, spoons: Spoons) -> str:
    """What the line says instead; "" where it says the same, or where the two cannot be compared."""
    quantity = _amount(new, spoons)
    if quantity is None:
        return ""
    stated = [each for each in line.written.measures if _kind(each) is _kind(quantity)]
    if any(_in_base(each) == _in_base(quantity) for each in stated):
        return ""
    grams = quantity.grams()
    if grams is not None and line.grams is not None:
        if apart(line.grams, grams) <= _NEAR:
            return ""
        return stated[0].text.strip() if stated else f"{float(line.grams.mid):.4g} g"
    return stated[0].text.strip() if stated else ""


def _kind(quantity: Quantity) -> Kind:
    return quantity.unit.kind if quantity.unit else Kind.COUNT


def _in_base(quantity: Quantity) -> object:
    return quantity.amount.scaled(quantity.unit.factor if quantity.unit else 1)


def _is_in_method(formula: Formula, kind: str, new: str) -> bool:
    for way in formula.ways:
        for section in way.sections:
            for block in section.blocks:
                for mention in block.words.mentions:
                    if (
                        isinstance(mention, Timed)
                        and mention.kind == kind
                        and mention.duration == read_duration(new)
                    ):
                        return True
                    if (
                        isinstance(mention, Heat)
                        and mention.kind == kind
                        and mention.temperature == read_temperature(new)
                    ):
                        return True
    return False
