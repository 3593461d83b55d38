"""A component whose finished weight nobody has stated."""

from collections.abc import Iterator, Mapping

from generator.diagnostics.diagnostic import Diagnostic
from generator.formula.components import batch_grams
from generator.formula.model import Formula, Line
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenRecipe


def check(
    formula: Formula, written: WrittenRecipe, shelf: Shelf, book: Mapping[str, Formula]
) -> Iterator[Diagnostic]:
    """The amounts of a component go in by the line's weight over what one batch weighs when it is done. Without
    `weighs` or `bakes_off` the raw sum is taken, which is a guess and is said aloud."""
    for line in formula.lines:
        component = book.get(line.component or "")
        if component is not None:
            yield from _line(line, component)


def _line(line: Line, component: Formula) -> Iterator[Diagnostic]:
    if line.grams is None:
        message = f"the weight of {line.item} is not known, so its recipe cannot be counted in"
        hint = f"Give the line a weight, such as “40 g {line.item}”."
        yield Diagnostic(code="F047", message=message, span=line.written.amount_span, hint=hint)
    elif batch_grams(component) is None:
        message = f"nothing in the recipe “{component.name}” has a weight"
        hint = f"Add “weighs: … g” to {component.path}."
        yield Diagnostic(code="F048", message=message, span=line.span, hint=hint)
    elif component.weighs is None and component.bakes_off is None:
        message = f"what a batch of “{component.name}” weighs when it is done is not stated; its raw weight is taken"
        hint = f"Weigh a batch and add “weighs: … g” or “bakes_off: … %” to {component.path}."
        yield Diagnostic(code="F049", message=message, span=line.span, hint=hint)
