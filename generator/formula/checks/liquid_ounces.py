"""Ounces of a liquid, which may mean its weight or its volume."""

from collections.abc import Iterator, Mapping

from generator.diagnostics.diagnostic import Diagnostic
from generator.formula.model import Formula, Line
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenRecipe

LIQUIDS = ("liquid", "water", "drink", "juice", "dairy alternative")


def check(
    formula: Formula, written: WrittenRecipe, shelf: Shelf, book: Mapping[str, Formula]
) -> Iterator[Diagnostic]:
    """8 oz of milk is 227 g by weight, and about 244 g as 8 fluid ounces: 7.6 % more. Ask (common practice)."""
    for line in formula.lines:
        if _is_liquid(line) and _only_ounces(line):
            message = f"ounces of {line.item} may be weight or volume; they are taken as weight"
            hint = "Write “fl oz” for volume, or add grams in brackets."
            yield Diagnostic(code="F035", message=message, span=line.written.amount_span, hint=hint)


def _is_liquid(line: Line) -> bool:
    ingredient = line.ware.ingredient if line.ware else None
    return ingredient is not None and (ingredient.nominal_liquid or ingredient.group in LIQUIDS)


def _only_ounces(line: Line) -> bool:
    measures = line.written.measures
    return len(measures) == 1 and measures[0].unit is not None and measures[0].unit.name == "oz"
