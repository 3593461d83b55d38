"""Cautions on how a thing is kept, read from names and from what stands in one part or one step together."""

import re
from collections.abc import Iterable

from generator.formula.model import Block, Formula, Heat, Line, Timed, Ware
from generator.present.unheated import DONE_FROM_C, is_heated

_IN_OIL = re.compile(
    r"\b(?:garlic|herb|chill?i|infused|flavou?red)\b.*\boil\b|\boil\b.*\b(?:garlic|herbs?)\b|\bconfit\b|\bpesto\b|"
    r"(?:knoblauch|kräuter|chili|würz)öl\b|(?:knoblauch|kräuter)\w*\b.*öl\b|öl\b.*(?:knoblauch|kräuter)",
    re.IGNORECASE,
)
_HERB = re.compile(
    r"\b(?:garlic|basil|rosemary|thyme|parsley|oregano|sage|tarragon|herbs?|chill?i(?:es)?)\b|"
    r"knoblauch|basilikum|rosmarin|thymian|petersilie|salbei|estragon|kräuter|chilischote",
    re.IGNORECASE,
)
_DRIED = re.compile(
    r"\b(?:dried|dry|powder|granules|ground)\b|getrocknet|gerebelt|gemahlen|pulver\b|granulat\b",
    re.IGNORECASE,
)
_OIL = re.compile(r"\boil\b|öl\b", re.IGNORECASE)
_PEEL = re.compile(
    r"\bcandied\b.*\b(?:peels?|zest|rinds?)\b|\b(?:peels?|zest|rinds?)\b.*\bcandied\b|"
    r"kandiert\w*\b.*schalen?\b|schalen?\b.*kandiert|orangeat|zitronat",
    re.IGNORECASE,
)
_DISCARD = re.compile(r"\bdiscard(?:ed)?\b", re.IGNORECASE)
_STARTER = re.compile(r"\b(?:starter|levain|sourdough)\b", re.IGNORECASE)


def stored(formula: Formula) -> set[str]:
    """ "garlic in oil", "candied peel" and "starter discard", each as far as the formula raises it."""
    found = {"garlic in oil"} if _garlic_in_oil(formula) else set[str]()
    found |= {"candied peel"} if _PEEL.search(formula.about.title) else set()
    return found | ({"starter discard"} if _has_discard(formula) else set())


def cooked_on_the_stove(formula: Formula) -> bool:
    """Whether the method heats anything but in an oven: a stage of cooking, or 71 °C and more of what is no oven."""
    return any(
        (isinstance(each, Timed) and each.kind == "cook")
        or (
            isinstance(each, Heat) and each.kind == "other" and each.temperature.celsius().high >= DONE_FROM_C
        )
        for block in _blocks(formula)
        for each in block.words.mentions
    )


def _garlic_in_oil(formula: Formula) -> bool:
    """Oil that stands with fresh garlic or herbs in it: by its name, heated or not (heat leaves the spores alive);

    else where both go together into what no heat reaches. Dough that is baked with both is no such oil.
    """
    parts = [(part.name, part.lines) for part in formula.parts]
    if _both(formula.lines) and _IN_OIL.search(formula.about.title):
        return True
    if any(_both(lines) and _IN_OIL.search(name) for name, lines in parts):
        return True
    if not is_heated(formula):
        return _both(formula.lines)
    return False


def _both(lines: Iterable[Line]) -> bool:
    names = [_name(line.item, line.ware) for line in lines]
    fresh = any(_HERB.search(each) and not _DRIED.search(each) and not _OIL.search(each) for each in names)
    return fresh and any(map(_OIL.search, names))


def _name(item: str, ware: Ware | None) -> str:
    return f"{item} {ware.ingredient.name}" if ware else item


def _has_discard(formula: Formula) -> bool:
    named = (formula.about.title, *(line.item for line in formula.lines))
    if any(_DISCARD.search(each) for each in named):
        return True
    prose = (block.words.markdown for block in _blocks(formula))
    return any(_DISCARD.search(each) and _STARTER.search(each) for each in prose)


def _blocks(formula: Formula) -> Iterable[Block]:
    return (block for way in formula.ways for section in way.sections for block in section.blocks)
