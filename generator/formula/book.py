"""All recipes of a folder understood together, components before what is made with them."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, has_errors, in_order
from generator.formula.assemble import understand
from generator.formula.checks.gentle_notes import check_notes
from generator.formula.model import Formula
from generator.formula.order import in_order_of_making
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenRecipe


@dataclass(frozen=True, slots=True, kw_only=True)
class Book:
    """`formulas` holds every recipe that is free of errors, and whose components are, sorted by name."""

    formulas: Mapping[str, Formula]
    diagnostics: Diagnostics


def understand_all(recipes: Mapping[str, WrittenRecipe], *, faulty: Iterable[str], shelf: Shelf) -> Book:
    """The book. `faulty` names the recipes whose files already have errors: what is made with them cannot be
    counted either, and is left out without a message of its own."""
    order, circles = in_order_of_making(recipes)
    found: list[Diagnostic] = list(circles)
    placed = frozenset(order)
    left_out = {*faulty, *(name for name in recipes if name not in placed)}
    known: dict[str, Formula | None] = dict.fromkeys((*recipes, *left_out))
    for name in order:
        formula, wrong = understand(recipes[name], shelf=shelf, book=known)
        found.extend(wrong)
        waits = any(line.component and known[line.component] is None for line in formula.lines)
        if not (waits or name in left_out or has_errors(wrong)):
            known[name] = formula
    formulas = {name: formula for name, formula in sorted(known.items()) if formula is not None}
    notes = in_order(tuple(check_notes(formulas, recipes, shelf)))
    return Book(formulas=MappingProxyType(formulas), diagnostics=(*found, *notes))
