"""Gathers diagnostics while a document is read."""

from typing import TypeVar

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.source.document import Mapping, Node, Text
from generator.source.fields import text_of

T = TypeVar("T")


class Collector:
    """Takes `(value, diagnostics)` pairs apart: keeps the diagnostics, hands the value on."""

    def __init__(self) -> None:
        self._found: list[Diagnostic] = []

    @property
    def found(self) -> Diagnostics:
        return tuple(self._found)

    def add(self, diagnostics: Diagnostics) -> None:
        self._found.extend(diagnostics)

    def say(self, diagnostic: Diagnostic) -> None:
        self._found.append(diagnostic)

    def value(self, pair: tuple[T, Diagnostics]) -> T:
        value, diagnostics = pair
        self.add(diagnostics)
        return value

    def text(self, node: Node | None) -> Text | None:
        """The scalar with its place, None where it is absent, empty or no scalar (which is reported)."""
        value = self.value(text_of(node))
        return node if value is not None and isinstance(node, Text) else None

    def words(self, mapping: Mapping, key: str) -> str:
        """The text under a key with single spaces, "" where there is none."""
        value = self.value(text_of(mapping.get(key)))
        return " ".join(value.split()) if value else ""
