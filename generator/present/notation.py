"""What stands in a file or in the ledger in the notation of recipes, in the words of the language that is spoken.

English needs none of it: the notation is English.
"""

import re
from fractions import Fraction

from generator.catalogue.allergens import ALLERGENS
from generator.declaration.regions import allergen_word
from generator.measure.unit import SPOONS, Kind, unit_named
from generator.present.amounts import mixed
from generator.present.reasons import reason_words
from generator.wording.forms import number
from generator.wording.speech import later, say, say_of, voice
from generator.wording.vocabulary import AMOUNTS, SIZES, said

_KEYS = {
    "makes": later("makes"),
    "portions": later("portions"),
    "tin": later("tin"),
    "keeps": later("keeps"),
    "weighs": later("finished weight"),
    "bakes_off": later("loss in the oven"),
    "flour": later("flour"),
    "dough": later("dough"),
}
_SPOONS = {
    "cup": later("{number} cup"),
    "cups": later("{number} cups"),
    "tbsp": later("{number} tbsp"),
    "tsp": later("{number} tsp"),
    "ml": later("{number} ml"),
}
_FRACTION = re.compile(r"(?:(\d+)[ -])?(\d+)/(\d+)")
_FIGURE = r"[\d¼½¾⅓⅔⅛⅜⅝⅞]"
_COUNTED = re.compile(rf"({_FIGURE}(?:[ .,–-]?{_FIGURE})*)\s?([A-Za-z]{{1,16}})\b")
_DECIMAL = re.compile(r"\d+\.\d+")
_WORDS = sorted((*AMOUNTS, *SIZES), key=len, reverse=True)
_WORD = re.compile(rf"\b(?:{'|'.join(_WORDS)})\b")


def amount_words(written: str) -> str:
    """An amount as somebody typed it: `1 1/2 tsp`, `27 g (1 1/4 tbsp)`, `2 large`, `a pinch`, `to taste`."""
    if not voice().catalogue:
        return written
    figures = _FRACTION.sub(_true_fraction, written)
    units = _COUNTED.sub(_unit_words, figures)
    decimals = _DECIMAL.sub(lambda found: number(found[0]), units)
    return _WORD.sub(lambda found: say(found[0]), decimals)


def _true_fraction(found: re.Match[str]) -> str:
    whole, above, below = int(found[1] or 0), int(found[2]), int(found[3])
    return mixed(whole + Fraction(above, below)) if below else found[0]


def _unit_words(found: re.Match[str]) -> str:
    unit = unit_named(found[2], spoons=SPOONS["us"])
    if unit is None or (unit.name not in _SPOONS and unit.kind is not Kind.COUNT):
        return found[0]
    name = unit.plural if found[2].endswith("s") else unit.name
    return say(_SPOONS[name], number=found[1]) if name in _SPOONS else f"{found[1]} {say_of('unit', name)}"


def key_words(key: str) -> str:
    """The name of a key of a recipe: `makes`, `portions`."""
    return say(_KEYS[key]) if voice().catalogue and key in _KEYS else key


def thing_words(kind: str, thing: str) -> str:
    """What a change is of: an allergen, why a pack must be read, a caution."""
    if not voice().catalogue:
        return thing
    if kind == "caution":
        return say_of("caution", thing)
    return allergen_word(thing) if thing in ALLERGENS else reason_words(thing)


def way_words(way: str) -> str:
    return f" ({said(way)})" if way else ""
