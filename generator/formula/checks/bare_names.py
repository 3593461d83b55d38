"""Catalogue ingredients named in method prose that are neither in the formula nor in braces."""

import re
from collections.abc import Iterator, Mapping

from generator.catalogue.lookup import fold
from generator.catalogue.names import number_forms
from generator.diagnostics.diagnostic import Diagnostic
from generator.formula.model import Formula, Line, Use, Way
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenRecipe, WrittenWords

_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)?(?:-[^\W\d_]+)*")
_LONGEST = 4
_VERBS = frozenset({"cream", "date", "dates", "season", "peel", "salt", "butter", "flour", "oil", "sugar", "water"})
"""Names that are also what a baker does or says; alone they name no ingredient for certain, save after a verb
of adding, which this check does not try to understand."""
_ADDING = frozenset({"add", "with", "of", "the", "in", "some", "a", "little", "more", "extra", "and", "into"})


def check(
    formula: Formula, written: WrittenRecipe, shelf: Shelf, book: Mapping[str, Formula]
) -> Iterator[Diagnostic]:
    """An ingredient that only the prose knows is missing from the shopping list, the percentages and the label."""
    known = _known(formula)
    for block in (block for way in written.ways for block in way.blocks):
        yield from _words(block.words, known, shelf)


def _known(formula: Formula) -> frozenset[str]:
    """Every run of words inside a name of the formula: “butter” and “salted butter” of “salted butter”."""
    names: set[str] = set()
    for line in formula.lines:
        names |= _line_names(line)
    for way in formula.ways:
        names |= _mentioned(way)
    names |= {fold(part.name) for part in formula.parts}
    runs = {" ".join(words[i:j]) for words in map(str.split, names) for i, j in _pairs(len(words))}
    return frozenset(form for run in runs for form in number_forms(run))


def _line_names(line: Line) -> set[str]:
    names = {fold(line.item), fold(line.written.preparation), fold(line.written.note), fold(line.note)}
    if line.ware is not None:
        names |= {fold(line.ware.ingredient.name), *line.ware.ingredient.names}
    for each in line.alternatives:
        names |= _line_names(each)
    return names


def _mentioned(way: Way) -> set[str]:
    mentions = (each for section in way.sections for block in section.blocks for each in block.words.mentions)
    return {fold(mention.item) for mention in mentions if isinstance(mention, Use)}


def _pairs(length: int) -> Iterator[tuple[int, int]]:
    return ((i, j) for i in range(length) for j in range(i + 1, length + 1))


def _words(words: WrittenWords, known: frozenset[str], shelf: Shelf) -> Iterator[Diagnostic]:
    found = list(_WORD.finditer(words.markdown))
    at = 0
    while at < len(found):
        taken = _longest(found, at, known, shelf, words.markdown)
        if taken is None:
            at += 1
            continue
        length, name, covered = taken
        if not covered:
            start, end = found[at].start(), found[at + length - 1].end()
            message = f"{name} is neither in the formula nor in braces"
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
        if length > 1 and re.search(r"[.,;:!?()\ue000]", between):
            continue
        name = fold(between)
        if name in known:
            return length, name, True
        if _named(name, shelf) and not (length == 1 and _is_doing(found, at, name)):
            return length, name, False
    return None


def _named(name: str, shelf: Shelf) -> bool:
    """Exact names only: neutral words such as “warm” are not part of a name in prose."""
    found = shelf.catalogue.find(name)
    return found is not None and any(form in found.names for form in number_forms(name))


def _is_doing(found: list[re.Match[str]], at: int, name: str) -> bool:
    """“Flour the counter”, “cream the butter”: a verb, unless a word of adding stands before it."""
    before = found[at - 1].group().casefold() if at else ""
    return name in _VERBS and before not in _ADDING
