"""Catalogue ingredients named in method prose that are neither in the formula nor in braces."""

import re
from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache

from generator.catalogue.ingredient import Ingredient
from generator.catalogue.lookup import fold
from generator.catalogue.names import number_forms
from generator.diagnostics.diagnostic import Diagnostic
from generator.formula.checks.prose_words import means_something_else
from generator.formula.model import Formula, Line, Use, Way
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenRecipe, WrittenWords
from generator.measure.same import Same

_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)?(?:-[^\W\d_]+)*")
_BREAK = re.compile(r"[.,;:!?()\ue000]")
_SENTENCE = re.compile(r"[.;:!?()\n]\s*$|\A\s*$")
_LONGEST = 4
_YIELDS = ("juice", "zest", "peel", "rind", "yolk", "white")
"""What a whole egg or fruit of the formula gives; it need not stand there again."""


def check(
    formula: Formula, written: WrittenRecipe, shelf: Shelf, book: Mapping[str, Formula]
) -> Iterator[Diagnostic]:
    """An ingredient that only the prose knows is missing from the shopping list, the percentages and the label.

    Quiet about verbs (“flour the board”), tools (“a tea towel”), what is being made and what is left out;
    a caution may name what it warns of.
    """
    known = _known(formula)
    for block in (block for way in written.ways for block in way.blocks if block.kind != "caution"):
        yield from _words(block.words, known, shelf)


def _known(formula: Formula) -> frozenset[str]:
    """Every run of words inside a name of the formula: “butter” and “salted butter” of “salted butter”."""
    names = {fold(formula.about.title), fold(formula.name), fold(formula.about.makes)}
    for line in _with_alternatives(formula.lines):
        names |= _line_names(line)
    for way in formula.ways:
        names |= _mentioned(way)
        names |= {fold(section.title) for section in way.sections}
    names |= {fold(part.name) for part in formula.parts}
    wares = (each.ware for each in _with_alternatives(formula.lines) if each.ware is not None)
    return frozenset().union(
        *map(_forms, names), *(_ingredient_forms(Same(each.ingredient)) for each in wares)
    )


@lru_cache(maxsize=4096)
def _forms(name: str) -> frozenset[str]:
    """Every run of words inside a name, in each number."""
    words = name.split()
    runs = {" ".join(words[i:j]) for i, j in _pairs(len(words))}
    return frozenset(form for run in runs for form in number_forms(run))


@lru_cache(maxsize=1024)
def _ingredient_forms(of: Same[Ingredient]) -> frozenset[str]:
    """Those of all names of an ingredient, and of what comes of it."""
    names = {fold(of.thing.name), *of.thing.names}
    names |= {f"{name} {gives}" for name in of.thing.names for gives in _YIELDS}
    return frozenset().union(*map(_forms, names))


def _with_alternatives(lines: Iterable[Line]) -> Iterator[Line]:
    for line in lines:
        yield line
        yield from _with_alternatives(line.alternatives)


def _line_names(line: Line) -> set[str]:
    return {fold(line.item), fold(line.written.preparation), fold(line.written.note), fold(line.note)}


def _mentioned(way: Way) -> set[str]:
    mentions = (each for section in way.sections for block in section.blocks for each in block.words.mentions)
    return {fold(mention.item) for mention in mentions if isinstance(mention, Use)}


def _pairs(length: int) -> Iterator[tuple[int, int]]:
    return ((i, j) for i in range(length) for j in range(i + 1, min(i + _LONGEST, length) + 1))


def _words(words: WrittenWords, known: frozenset[str], shelf: Shelf) -> Iterator[Diagnostic]:
    found = list(_WORD.finditer(words.markdown))
    at = 0
    while at < len(found):
        taken = _longest(found, at, known, shelf, words.markdown)
        if taken is None:
            at += 1
            continue
        length, name, covered = taken
        if not covered and not _is_other(found, at, length, name, words.markdown):
            start, end = found[at].start(), found[at + length - 1].end()
            said = words.markdown[start:end]
            message = f"{' '.join(said.split()).lower()} is neither in the formula nor in braces"
            hint = f"Add it to the formula, or write “{{10 g of {name}}}” for an extra."
            yield Diagnostic(code="R032", message=message, span=words.place(start, end), hint=hint)
        at += length


def _longest(
    found: list[re.Match[str]], at: int, known: frozenset[str], shelf: Shelf, text: str
) -> tuple[int, str, bool] | None:
    """The longest name that begins at word `at`: its length in words, the name, and whether the formula has it."""
    for length in range(min(_LONGEST, len(found) - at), 0, -1):
        words = found[at : at + length]
        between = text[words[0].start() : words[-1].end()]
        if length > 1 and _BREAK.search(between):
            continue
        name = fold(between)
        if name in known:
            return length, name, True
        if shelf.catalogue.exact(name) is not None:
            return length, name, False
    return None


def _is_other(found: list[re.Match[str]], at: int, length: int, name: str, text: str) -> bool:
    """Whether the words around the name make something else of it than an ingredient."""
    start, end = found[at].start(), found[at + length - 1].end()
    starts = _SENTENCE.search(text[:start][-40:]) is not None
    before = "" if starts or at == 0 else found[at - 1].group().casefold()
    follows = at + length < len(found) and not _BREAK.search(text[end : found[at + length].start()])
    after = found[at + length].group().casefold() if follows else ""
    return means_something_else(name, before=before, after=after, text_before=text[:start][-40:])
