"""Amounts and temperatures in method prose that stand outside braces."""

import re
from collections.abc import Iterator, Mapping

from generator.diagnostics.diagnostic import Diagnostic
from generator.formula.model import Formula
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenRecipe, WrittenWords
from generator.measure.quantity import read_quantity
from generator.measure.unit import Kind, Spoons

_START = re.compile(r"(?<![\w./⁄-])(?=[0-9¼½¾⅓⅔⅛⅜⅝⅞])")
# Without a scale two digits may be an angle: “slash it at 45 degrees”.
_HEAT = re.compile(
    r"(?<!\d)(?:\d{2,3}\s?(?:(?:°|º|degrees?)\s?[FC]\b|[FC]\b|℃|℉)|\d{3}\s?(?:[°º]|degrees?\b))"
    r"|\bgas\s(?:mark\s)?\d",
    re.I,
)


def check(
    formula: Formula, written: WrittenRecipe, shelf: Shelf, book: Mapping[str, Formula]
) -> Iterator[Diagnostic]:
    """References are the only place where amounts stand in the method, so that prose cannot drift from the formula:
    a bare one is not corrected with it."""
    for block in (block for way in written.ways for block in way.blocks):
        yield from _amounts(block.words, shelf.spoons)
        yield from _heats(block.words)


def _amounts(words: WrittenWords, spoons: Spoons) -> Iterator[Diagnostic]:
    for start in (each.start() for each in _START.finditer(words.markdown)):
        read = read_quantity(words.markdown, spoons=spoons, start=start)
        if read and read[0].unit and read[0].unit.kind in (Kind.MASS, Kind.VOLUME):
            text = read[0].text.strip()
            message = f"“{text}” stands outside braces and would not follow a correction"
            hint = f"Write “{{{text} of …}}” for an extra, or name the ingredient in braces."
            yield Diagnostic(code="R030", message=message, span=words.place(start, read[1]), hint=hint)


def _heats(words: WrittenWords) -> Iterator[Diagnostic]:
    for found in _HEAT.finditer(words.markdown):
        message = f"the temperature “{found.group()}” stands outside braces"
        hint = "Write “{oven 350 F}”, “{core 88 C}” or “{240 F}”, so that both scales are shown."
        span = words.place(found.start(), found.end())
        yield Diagnostic(code="R031", message=message, span=span, hint=hint)
