"""Gathers diagnostics while a document is read."""

from typing import TypeVar

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics

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
