"""Two parts of one name, after folding."""

from collections.abc import Iterator, Mapping

from generator.catalogue.lookup import fold
from generator.diagnostics.diagnostic import Diagnostic
from generator.formula.model import Formula
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenRecipe


def check(
    formula: Formula, written: WrittenRecipe, shelf: Shelf, book: Mapping[str, Formula]
) -> Iterator[Diagnostic]:
    """A reference could not say which of the two it means, so the second one is an error."""
    seen: set[str] = set()
    for part in formula.parts:
        if fold(part.name) in seen:
            message = f"there are two parts called “{part.name}”"
            hint = "Join them, or give the second one another name."
            yield Diagnostic(code="F017", message=message, span=part.span, hint=hint)
        seen.add(fold(part.name))
