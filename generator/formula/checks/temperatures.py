"""Temperatures that no oven and no crumb has."""

from collections.abc import Iterator, Mapping
from fractions import Fraction

from generator.diagnostics.diagnostic import Diagnostic
from generator.formula.model import Formula, Heat
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenRecipe

OVEN_C = (Fraction(40), Fraction(300))
CORE_C = (Fraction(50), Fraction(110))
"""A home oven holds about 40 to 300 °C; bread and cake are done between 60 and 100 °C inside (common practice)."""


def check(
    formula: Formula, written: WrittenRecipe, shelf: Shelf, book: Mapping[str, Formula]
) -> Iterator[Diagnostic]:
    """An oven at 350 C or a core of 190 C is a scale mixed up; the reader would burn the bake."""
    heats = (
        mention
        for way in formula.ways
        for section in way.sections
        for block in section.blocks
        for mention in block.words.mentions
        if isinstance(mention, Heat)
    )
    for heat in heats:
        limits = {"oven": OVEN_C, "core": CORE_C}.get(heat.kind)
        celsius = heat.temperature.celsius()
        if limits and not (limits[0] <= celsius.low and celsius.high <= limits[1]):
            stated = heat.temperature.stated
            degrees = f"{float(heat.temperature.high):g} °{stated}"
            message = f"no finished bake is {degrees} inside"
            if heat.kind == "oven":
                message = f"no home oven is set to {degrees}"
            hint = f"Is it °{'F' if stated == 'C' else 'C'}? Write the scale that you mean."
            yield Diagnostic(code="T003", message=message, span=heat.span, hint=hint)
