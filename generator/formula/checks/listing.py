"""All checks of a formula, in the order in which they run."""

from generator.formula.checks import (
    bare_amounts,
    bare_names,
    component_batch,
    liquid_ounces,
    machine,
    preferments,
    repeated_parts,
    temperatures,
    tin,
)

ALL = (
    repeated_parts.check,
    component_batch.check,
    preferments.check,
    liquid_ounces.check,
    machine.check,
    tin.check,
    temperatures.check,
    bare_amounts.check,
    bare_names.check,
)
