"""All flour of a dough that is written in percent, or why it cannot be known."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.formula.written import WrittenLine, WrittenPart, WrittenRecipe

HUNDRED = Fraction(100)
NEAR = Fraction(1, 2)
"""Points by which flours in percent may miss a hundred beside a starter that is weighed: its own percent is odd."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Base:
    """What the lines of the dough say. Grams are of lines with a weight, percents of the others, on all flour.

    `weighed_flour` and `percent_flour` count the flour inside starters and preferments too. `plain` are the flours
    with a weight, `flours` those in percent, `first` the first line in percent; `parts` are those with a share of all
    flour, each with the percents of flour that its own lines come to.
    """

    weighed_grams: Fraction
    weighed_flour: Fraction
    plain: tuple[WrittenLine, ...]
    percent_grams: Fraction
    percent_flour: Fraction
    flours: tuple[WrittenLine, ...]
    first: WrittenLine | None
    parts: tuple[tuple[WrittenPart, Fraction], ...]


def flour_of_all(written: WrittenRecipe, base: Base) -> tuple[Fraction | None, Diagnostics]:
    """Grams of all flour; None with an error where it is not known, or said in two ways."""
    wrong = next((each for each in _unclear(written, base)), None)
    if wrong is not None:
        return None, (wrong,)
    flour = _flour(written, base)
    if flour <= 0:
        return None, (_too_small(written, base),)
    return flour, tuple(_not_hundred(base, flour))


def _flour(written: WrittenRecipe, base: Base) -> Fraction:
    """At most one of the three is given: `_unclear` has seen to that."""
    if written.flour is not None:
        return written.flour.value
    if written.dough is not None:
        rest = written.dough.value - base.weighed_grams
        return HUNDRED * rest / base.percent_grams if base.percent_grams else Fraction(0)
    # Weighed flours are all of it but what starters in percent hold.
    left = 1 - base.percent_flour / HUNDRED
    return base.weighed_flour / left if left > 0 else Fraction(0)


def _unclear(written: WrittenRecipe, base: Base) -> Iterator[Diagnostic]:
    key = written.flour or written.dough
    if written.flour is not None and written.dough is not None:
        message = "both `flour` and `dough` are stated, and one follows from the other"
        hint = "Keep the one that you decide on, and delete the other."
        yield Diagnostic(code="F056", message=message, span=written.dough.span, hint=hint)
    if key is not None and (base.first is None or (written.dough and not base.percent_grams)):
        name = "flour" if written.flour else "dough"
        message = f"`{name}` is stated, but no line that counts is in percent"
        hint = f"Write the lines as in “65% water”, or delete `{name}`; “show --{name}” scales a weighed formula."
        yield Diagnostic(code="F057", message=message, span=key.span, hint=hint)
    if base.plain and (key is not None or base.flours):
        message = f"{base.plain[0].written.item} is weighed, but all flour of this dough is stated otherwise"
        hint = "Write every flour in percent, or every flour in grams without `flour` and `dough`."
        yield Diagnostic(code="F061", message=message, span=base.plain[0].written.amount_span, hint=hint)
    if key is None and not base.plain and base.first is not None:
        message = "this is a percent of flour, but no flour has a weight"
        hint = "Add “flour: 500 g” (all flour) or “dough: 900 g” above `formula`, or weigh the flour lines."
        yield Diagnostic(code="F058", message=message, span=base.first.written.amount_span, hint=hint)


def _too_small(written: WrittenRecipe, base: Base) -> Diagnostic:
    if written.dough is not None:
        weighed = _plain(base.weighed_grams)
        message = (
            f"a dough of {_plain(written.dough.value)} g has no room for its {weighed} g of weighed lines"
        )
        hint = "State a larger `dough`, or write those lines in percent."
        return Diagnostic(code="F065", message=message, span=written.dough.span, hint=hint)
    message = (
        f"the starters in percent hold {_plain(base.percent_flour)} % of all flour, and more flour is weighed"
    )
    hint = "Percents are of all flour, that of starters included: make them smaller."
    line = base.first or base.plain[0]
    return Diagnostic(code="F059", message=message, span=line.written.amount_span, hint=hint)


def _not_hundred(base: Base, flour: Fraction) -> Iterator[Diagnostic]:
    """Flour is 100 % together, in the dough and in each part that has a share of it (W. Gisslen)."""
    faulty = [(part, percent) for part, percent in base.parts if percent != HUNDRED]
    for part, percent in faulty:
        message = f"the flours of “{part.name}” come to {_plain(percent)} % of its own flour, not 100 %"
        hint = "The percents of a part with a share of all flour are on that flour: its flours are 100 % together."
        span = part.flour.span if part.flour else part.span
        yield Diagnostic(code="F060", message=message, span=span, hint=hint)
    if base.plain or faulty:
        return
    percent = base.percent_flour + HUNDRED * base.weighed_flour / flour
    if abs(percent - HUNDRED) > (NEAR if base.weighed_flour else 0):
        line = base.flours[0] if base.flours else base.first
        held = " (preferments and starters included)" if _hidden(base) else ""
        message = f"the flours come to {_plain(percent)} %, not 100 %{held}"
        hint = "All flours of the dough are 100 % together, preferments and starters included; “total: yes” in the "
        hint += "dough says that its lines are the whole."
        if line is not None:
            yield Diagnostic(code="F059", message=message, span=line.written.amount_span, hint=hint)


def _hidden(base: Base) -> bool:
    plain = sum((each.written.percent.mid for each in base.flours if each.written.percent), start=Fraction(0))
    return bool(base.weighed_flour or base.parts) or plain != base.percent_flour


def _plain(value: Fraction) -> str:
    return f"{float(value):.2f}".rstrip("0").rstrip(".")
