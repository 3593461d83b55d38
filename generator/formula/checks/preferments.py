"""What is stated of a preferment against its lines: hydration, and how a levain is built."""

from collections.abc import Iterator, Mapping
from fractions import Fraction

from generator.catalogue.lookup import fold
from generator.diagnostics.diagnostic import Diagnostic
from generator.formula.levain import build_by_ratio
from generator.formula.model import Formula, Part
from generator.formula.percentages import in_dough
from generator.formula.shelf import Shelf
from generator.formula.written import SOAKED, WrittenPart, WrittenRecipe

MOST_APART = Fraction(2)
"""Points between the hydration that is stated and the one of the lines (our decision: a rounding, not a mistake)."""


def check(
    formula: Formula, written: WrittenRecipe, shelf: Shelf, book: Mapping[str, Formula]
) -> Iterator[Diagnostic]:
    """A stated hydration is for readers and for the build table; the lines must come to it, for they are what is
    weighed. Without flour, and in a soaker, whose water is not in the hydration, there is nothing to compare."""
    for part, said in zip(formula.parts, written.parts, strict=True):
        yield from _hydration(part, said, book)
        yield from _build(part, said)


def _hydration(part: Part, said: WrittenPart, book: Mapping[str, Formula]) -> Iterator[Diagnostic]:
    counted = in_dough((part,), book)
    if said.hydration is None or not counted.flour or fold(part.preferment or "") in SOAKED:
        return
    actual = 100 * counted.water / counted.flour
    if abs(actual - said.hydration.value) > MOST_APART:
        message = (
            f"the lines of “{part.name}” come to a hydration of {_plain(actual)} %, "
            f"not {_plain(said.hydration.value)} %"
        )
        hint = "Mend the flour or the water of the part, or `hydration`."
        yield Diagnostic(code="F051", message=message, span=said.hydration.span, hint=hint)


def _build(part: Part, said: WrittenPart) -> Iterator[Diagnostic]:
    """Seed of the levain's own hydration, fed by the ratio, must come to that hydration again."""
    if said.build is None:
        return
    if part.preferment is None or part.hydration is None:
        message = "how it is built can be told of a preferment with a hydration only"
        hint = "Add “preferment: levain” and “hydration: 100 %”; the seed is held to be as wet as the whole."
        yield Diagnostic(code="F053", message=message, span=said.build.span, hint=hint)
        return
    ratio = (said.build.seed, said.build.flour, said.build.water)
    build = build_by_ratio(part.grams.mid, ratio=ratio, seed_hydration=part.hydration)
    if build is not None and abs(build.hydration - part.hydration) > MOST_APART:
        message = (
            f"built so, “{part.name}” comes to a hydration of {_plain(build.hydration)} %, "
            f"not {_plain(part.hydration)} %"
        )
        hint = "Mend the flour and the water of `build`, or `hydration`."
        yield Diagnostic(code="F053", message=message, span=said.build.span, hint=hint)


def _plain(value: Fraction) -> str:
    return f"{float(value):.1f}".removesuffix(".0")
