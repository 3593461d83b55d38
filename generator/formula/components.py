"""One recipe inside another: how much of its batch a line uses."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from generator.formula.model import Formula, Line, Part
from generator.measure.number import total


def batch_grams(formula: Formula) -> Fraction | None:
    """The weight of one finished batch in grams: `weighs`, else the raw sum less `bakes_off`, else the raw sum.

    None where nothing in it has a weight.
    """
    if formula.weighs is not None:
        return formula.weighs.mid
    kept = total(line.kept for line in formula.lines if line.counts and line.kept is not None).mid
    batch = kept * (1 - (formula.bakes_off or Fraction(0)))
    return batch or None


def component_share(line: Line, book: Mapping[str, Formula]) -> Fraction | None:
    """The part of one batch of its component that a line uses; None where a weight is missing."""
    formula = book.get(line.component or "")
    batch = batch_grams(formula) if formula else None
    if batch is None or line.grams is None:
        return None
    return line.grams.mid / batch


def shares(parts: Iterable[Part], book: Mapping[str, Formula]) -> dict[str, Fraction]:
    """How much of a batch of each component the parts use, optional lines left out."""
    used: dict[str, Fraction] = {}
    for line in (line for part in parts for line in part.lines if line.counts and line.component):
        share = component_share(line, book)
        if share is not None and line.component:
            used[line.component] = used.get(line.component, Fraction(0)) + share
    return used


@dataclass(frozen=True, slots=True, kw_only=True)
class Batch:
    """How often a component is made for one bake: `share` of one batch is used, `left_grams` are left over."""

    name: str
    share: Fraction
    batches: int
    used_grams: Fraction
    batch_grams: Fraction
    left_grams: Fraction


def batches(formula: Formula, book: Mapping[str, Formula]) -> tuple[Batch, ...]:
    """Whole batches of each component, in the order of the formula; those of unknown weight are left out.

    Grams are of the finished component, as in `batch_grams`.
    """
    found = []
    for name, share in formula.component_shares.items():
        batch = batch_grams(book[name]) if name in book else None
        if batch is not None and share > 0:
            count = ceil(share)
            used = share * batch
            found.append(
                Batch(
                    name=name,
                    share=share,
                    batches=count,
                    used_grams=used,
                    batch_grams=batch,
                    left_grams=count * batch - used,
                )
            )
    return tuple(found)
