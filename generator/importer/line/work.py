"""The state while one ingredient line of an old text is read: what is asked about it, and how sure it is."""

from collections.abc import Mapping

from generator.diagnostics.span import Span
from generator.formula.line import read_line
from generator.formula.model import Written
from generator.formula.shelf import Shelf
from generator.importer.model import Confidence, Doubt

PLACE = Span(path="", line=1, column=1, end_line=1, end_column=2)
"""Where a line stands that is in no file yet."""


class Work:
    """What is found out while one line is read; it changes as the line is read on."""

    def __init__(
        self, *, shelf: Shelf, number: int, part: str, optional: bool, made: Mapping[str, str] | None = None
    ) -> None:
        self.shelf, self.number, self.part, self.optional = shelf, number, part, optional
        self.made: Mapping[str, str] = made or {}
        self.doubts: list[Doubt] = []
        self.confidence = Confidence.SURE
        self.note = ""
        self.alternatives: tuple[str, ...] = ()

    def ask(self, code: str, message: str, hint: str) -> None:
        self.doubts.append(Doubt(code=code, message=message, hint=hint, line=self.number))
        self.confidence = Confidence.DOUBTFUL

    def lean(self) -> None:
        if self.confidence is Confidence.SURE:
            self.confidence = Confidence.LIKELY


def written_of(text: str, shelf: Shelf) -> Written:
    """What our own reader makes of a line."""
    return read_line(text, lambda start, end: PLACE, spoons=shelf.spoons)[0]
