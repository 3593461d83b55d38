"""A baker's wish for more or less of the same bake, and what comes of it."""

from dataclasses import dataclass
from fractions import Fraction

from generator.formula.model import Formula
from generator.formula.note import Note
from generator.formula.scale_factor import Refusal, factor_for, scaling_notes
from generator.formula.scaling import scaled
from generator.formula.tin_text import read_shape
from generator.formula.tins import By
from generator.measure.unit import Spoons


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """Exactly one of the first five is given; weights in grams, `tin` as text."""

    times: Fraction | None = None
    flour: Fraction | None = None
    dough: Fraction | None = None
    portions: Fraction | None = None
    tin: str = ""
    by: By | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Granted:
    """The formula in the wished size; `notes` say what to think about."""

    formula: Formula
    factor: Fraction
    notes: tuple[Note, ...]


def grant(formula: Formula, wish: Wish, *, spoons: Spoons) -> Granted | Refusal:
    """The formula scaled by a wish, or why it cannot be."""
    shape = None
    if wish.tin:
        shape, faults = read_shape(wish.tin, spoons=spoons)
        if shape is None:
            first = faults[0] if faults else None
            return Refusal(
                message=first.message if first else f"“{wish.tin}” is no tin",
                hint=first.hint if first else "Write a tin such as “round 20 cm” or “loaf 9 x 5 x 3 in”.",
            )
    factor = factor_for(
        formula,
        times=wish.times,
        flour=wish.flour,
        dough=wish.dough,
        portions=wish.portions,
        tin=shape,
        by=wish.by,
    )
    if isinstance(factor, Refusal):
        return factor
    return Granted(formula=scaled(formula, factor), factor=factor, notes=scaling_notes(formula, factor))
