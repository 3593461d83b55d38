"""What a baker says at the bench, in one line: “+10 g bread flour, 5 min into kneading”."""

from dataclasses import dataclass

from generator.diagnostics.span import Span
from generator.formula.line import read_line
from generator.measure.unit import Spoons

LONGEST = 300


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """An amount of an item, both as typed, and what followed the comma. The amount may be "": then some of it."""

    item: str
    amount: str
    when: str


def read_said(text: str, *, spoons: Spoons) -> Said | str:
    """What was said; or why it is not understood, and what to type, as one text."""
    words = " ".join(text.split())
    if len(words) > LONGEST:
        return f"this is too long for one entry ({len(words)} letters)"
    if words.startswith(("-", "\u2212")):
        return f"“{words}” takes something away; write what stayed over as --left “{words[1:].strip()}”"
    words = words.removeprefix("+").strip()
    written, found = read_line(words, _place, spoons=spoons)
    if found:
        return f"{found[0].message}. {found[0].hint}"
    amount = _amount(words, written.amount_span, has_amount=bool(written.measures or written.words))
    if not amount or amount in ("to taste", "for dusting"):
        return f"“{words}” has no amount; write it as in “10 g {written.item}”"
    item, _, when = words[written.amount_span.end_column - 1 :].strip().partition(",")
    return Said(item=_bare(item), amount=amount, when=when.strip())


def _place(start: int, end: int) -> Span:
    return Span(path="", line=1, column=start + 1, end_line=1, end_column=end + 1)


def _amount(words: str, span: Span, *, has_amount: bool) -> str:
    """The amount as typed, its “of” taken off; "" where the line begins with its item."""
    if not has_amount or span.column != 1:
        return ""
    typed = words[: span.end_column - 1].strip()
    return typed.removesuffix(" of").partition("(")[0].strip()


def _bare(item: str) -> str:
    """The item without a size before it and without what stands in brackets."""
    return " ".join(item.partition("(")[0].split())
