"""A change in a reader's words: both measures where they are known, in the order of the site, and the reason."""

import re
from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from generator.catalogue.names import fold
from generator.formula.model import Correction, Formula, Heat, Line
from generator.formula.names import lines_called
from generator.formula.references import KINDS
from generator.history.corrections import Change, read_change
from generator.measure.duration import read_duration
from generator.measure.number import Range
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.temperature import read_temperature
from generator.measure.unit import SPOONS, Kind
from generator.present.durations import minutes_words
from generator.present.heats import heat_words
from generator.present.measures import line_amount
from generator.present.notation import amount_words, key_words, way_words
from generator.settings import Settings
from generator.wording.speech import say, voice

ARROW = "→"
_HEATS = ("oven", "core")
# Words that begin a reason and are no names: only they may lose their capital after "because".
# fmt: off
_BEGINNINGS = frozenset((
    "a", "after", "again", "all", "also", "an", "and", "another", "any", "as", "at", "before", "both",
    "but", "by", "dry", "each", "even", "every", "few", "fewer", "for", "four", "from", "her", "his",
    "humid", "if", "in", "it", "its", "less", "many", "more", "most", "much", "my", "nearly", "no",
    "not", "of", "on", "one", "only", "our", "over", "several", "since", "so", "some", "soft", "sticky",
    "stiff", "that", "the", "their", "then", "there", "these", "they", "this", "those", "three", "to",
    "too", "twice", "two", "under", "very", "warm", "we", "weighed", "wet", "what", "when", "with",
    "without", "wrong", "you", "your",
))
# fmt: on
_BECAUSE = re.compile(r"(?:because|since|as)\s+", re.IGNORECASE)
_ANY_ARROW = re.compile(r"\s*(?:->|=>)\s*")


def change_words(correction: Correction, formula: Formula, settings: Settings) -> str:
    """`bread flour 400 g (3 cups) → 430 g (3⅓ cups)`; the maker's own words where they state no such change."""
    change = read_change(correction.change)
    if change is None:
        return _ANY_ARROW.sub(f" {ARROW} ", correction.change)
    what, old, new = worded(change, formula, settings)
    return f"{what} {old} {ARROW} {new}"


def worded(change: Change, formula: Formula, settings: Settings) -> tuple[str, str, str]:
    """What changed, what it was and what it is, each in words."""
    lines = lines_called(change.what, formula.parts)
    if len(lines) == 1:
        old, new = (value_words(lines[0], each, settings) for each in (change.old, change.new))
        return named(lines[0], formula), old, new
    way, _, kind = change.what.rpartition("/")
    if fold(kind) in (*KINDS, *_HEATS):
        beside = way_words(way)
        named_kind = say(fold(kind)) if voice().catalogue else kind
        old, new = (_figure_words(fold(kind), each, formula, settings) for each in (change.old, change.new))
        return f"{named_kind}{beside}", old, new
    part, slash, item = change.what.partition("/")
    return (f"{item} ({part})" if slash else key_words(change.what)), change.old, change.new


def named(line: Line, formula: Formula) -> str:
    """The item, with its part where another part has one of the same name."""
    twice = sum(fold(each.item) == fold(line.item) for each in formula.lines) > 1
    return f"{line.item} ({line.part})" if twice and line.part else line.item


def value_words(line: Line, text: str, settings: Settings) -> str:
    """An amount of the line as its page tells it, in both measures; as typed where that cannot be told."""
    read = read_quantity(text, spoons=SPOONS[settings.cup])
    factor = _factor(line, read[0]) if read is not None and read[1] == len(text) else None
    return amount_words(text) if factor is None else amount_of(line, factor, settings)


def amount_of(line: Line, factor: Fraction, settings: Settings) -> str:
    """The line's own amount times a factor: `430 g (3⅓ cups)`."""
    scaled = replace(
        line,
        grams=_times(line.grams, factor),
        kept=_times(line.kept, factor),
        millilitres=_times(line.millilitres, factor),
        count=_times(line.count, factor),
    )
    amount = line_amount(scaled, settings=settings, spoons=SPOONS[settings.cup])
    return f"{amount.first} ({amount.second})" if amount.second else amount.first


def _times(amount: Range | None, factor: Fraction) -> Range | None:
    return amount.scaled(factor) if amount is not None else None


def _factor(line: Line, quantity: Quantity) -> Fraction | None:
    """How many times the line's present amount this is; None where the two cannot be compared."""
    kind = quantity.unit.kind if quantity.unit else Kind.COUNT
    now = {Kind.MASS: line.grams, Kind.VOLUME: line.millilitres, Kind.COUNT: line.count}.get(kind)
    scale = quantity.unit.factor if quantity.unit and kind is not Kind.COUNT else 1
    if now is None or now.mid <= 0 or not (now.is_exact and quantity.amount.is_exact):
        return None
    return quantity.amount.low * scale / now.low


def _figure_words(kind: str, text: str, formula: Formula, settings: Settings) -> str:
    """`350 °F (175 °C)`, `25 min`."""
    temperature = read_temperature(text) if kind in _HEATS else None
    if temperature is not None:
        heat = Heat(kind=kind, temperature=temperature, span=formula.spans["title"])
        lead, tail = heat_words(heat, oven_c=settings.oven_c)
        return f"{lead} ({tail})" if tail else lead
    duration = read_duration(text)
    return minutes_words(duration.minutes) if duration is not None else text


def because_words(why: str, formula: Formula) -> str:
    """The reason as it follows "because": without its full stop, its first letter small where it is no name's."""
    words = " ".join(why.split()).rstrip(".").strip()
    words = words[found.end() :] if (found := _BECAUSE.match(words)) else words
    if voice().catalogue:
        # Where capitals fall is a matter of the language, and how the reason follows one of its catalogue.
        return words
    first = re.match(r"[^\W\d_]+", words)
    if first is None or (not first[0][1:].islower() and len(first[0]) > 1):
        return words
    known = first[0].casefold() in _BEGINNINGS or first[0].casefold() in _small_words(formula)
    return words[:1].lower() + words[1:] if known and first[0] != "I" else words


def _small_words(formula: Formula) -> frozenset[str]:
    """Words that the recipe's own names begin with a small letter: flour, dough, yeast are no names of people."""
    texts: Iterable[str] = (
        *(f"{line.item} {line.written.preparation} {line.part}" for line in formula.lines),
        *KINDS,
        *_HEATS,
    )
    return frozenset(word for text in texts for word in re.findall(r"\b[a-z]+", text))


def standing_now(
    correction: Correction, later: Iterable[Correction], formula: Formula, settings: Settings
) -> str:
    """What stands today of what a correction changed: "bread flour 440 g (3½ cups)"; "" where unknown."""
    change = read_change(correction.change)
    if change is None:
        return ""
    lines = lines_called(change.what, formula.parts)
    if len(lines) == 1:
        return f"{named(lines[0], formula)} {amount_of(lines[0], Fraction(1), settings)}"
    for each in later:
        after = read_change(each.change)
        if (
            after is not None
            and fold(after.what) == fold(change.what)
            and fold(after.old) == fold(change.new)
        ):
            change = replace(change, new=after.new)
    what, _, new = worded(change, formula, settings)
    return f"{what} {new}"
