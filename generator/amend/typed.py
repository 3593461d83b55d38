"""An amount as the maker types it for a line: a measure, a percentage, or words such as “a pinch”."""

import re
from dataclasses import dataclass

from generator.amend.answer import Refused
from generator.catalogue.names import fold
from generator.measure.number import Range, looks_garbled, read_number
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.unit import Spoons

LONGEST = 60
_PERCENT = re.compile(r"\s{0,3}(?:%|per\s?cent)$", re.I)
_WORDS = re.compile(
    r"(?:(?:a|an|one|two|three|[0-9]{1,2})\s+(?:(?:small|large|generous)\s+)?(?:pinch|dash|drop)(?:es|s)?(?:\s+of)?"
    r"|to taste|as needed|for (?:dusting|greasing|brushing|sprinkling|rolling))",
    re.I,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Typed:
    """Exactly one of the three; `text` is what was typed, without the blanks around it."""

    text: str
    quantity: Quantity | None = None
    percent: Range | None = None
    words: str = ""


def read_typed(text: str, *, item: str, spoons: Spoons) -> Typed | Refused:
    """What was typed; the item's own name after the amount does no harm."""
    plain = " ".join(text.split())
    if len(plain) > LONGEST or not plain.isprintable():
        return _no_amount(plain[:LONGEST])
    plain = _without_item(plain, item)
    if _WORDS.fullmatch(plain):
        return Typed(text=plain, words=re.sub(r"\s+of$", "", plain, flags=re.I))
    if looks_garbled(plain):
        return Refused(
            message=f"“{plain}” can be read in two ways", hint="Write “1 1/2” for one and a half, or 5.5."
        )
    number = read_number(plain)
    if number and _PERCENT.fullmatch(plain, number[1]):
        return _above_nothing(Typed(text=plain, percent=number[0]), number[0])
    read = read_quantity(plain, spoons=spoons)
    if read is None or read[1] != len(plain):
        return (
            _second(plain, read[1])
            if read and plain[read[1] :].lstrip().startswith("(")
            else _no_amount(plain)
        )
    return _above_nothing(Typed(text=plain, quantity=read[0]), read[0].amount)


def _without_item(plain: str, item: str) -> str:
    """“250 g water”, “250 g of water”: the amount alone."""
    for ending in (f" of {fold(item)}", f" {fold(item)}"):
        if fold(plain).endswith(ending) and len(plain) > len(ending):
            shorter = plain[: len(plain) - len(ending)].rstrip()
            if fold(f"{shorter}{ending}") == fold(plain):
                return shorter
    return plain


def _above_nothing(typed: Typed, amount: Range) -> Typed | Refused:
    if amount.low > 0:
        return typed
    return Refused(
        message=f"“{typed.text}” is nothing",
        hint="Give an amount above 0; to leave something out, take its line out of the file and of the method.",
    )


def _second(plain: str, end: int) -> Refused:
    return Refused(
        message=f"“{plain}” is two measures",
        hint=f"Type one, “{plain[:end].strip()}”: the other measure of the line follows by itself.",
    )


def _no_amount(plain: str) -> Refused:
    return Refused(
        message=f"“{plain}” is no amount",
        hint="Type a number with its unit, such as “430 g”, “1 1/2 tsp”, “20-25 g”, or a number of pieces.",
    )
