"""The amount of a line or of a use in both measures, in the order that the site prefers."""

from dataclasses import replace
from functools import lru_cache

from generator.formula.eggs import eggs_of
from generator.formula.model import Line, Use
from generator.measure.number import Range
from generator.measure.same import Same
from generator.measure.unit import Kind, Spoons
from generator.present.amounts import GLYPHS, count_words, volume_words, weight_words
from generator.present.views import Amount
from generator.settings import First, Settings
from generator.wording.speech import later, say, say_of, voice

_FILLINGS = (later("packed"), later("sifted"), "unsifted", "level")


def line_amounts(line: Line, spoons: Spoons) -> tuple[Amount, Amount]:
    """The whole amount of a line, with the weight first and with the volume first."""
    weight, volume = _line_measures(Same(line), Same(spoons), voice().tag)
    return in_order(weight, volume, "weight"), in_order(weight, volume, "volume")


def line_amount(line: Line, *, settings: Settings, spoons: Spoons) -> Amount:
    """The whole amount of a line."""
    return ordered(*_line_measures(Same(line), Same(spoons), voice().tag), settings)


@lru_cache(maxsize=4096)
def _line_measures(line: Same[Line], spoons: Same[Spoons], language: str) -> tuple[str, str]:
    """Weight and volume: a page asks for both orders of them, one after the other.

    `language` keeps the words of one language apart from those of another.
    """
    one = line.thing
    return weight_words(one.grams), _volume(one, one.millilitres, one.count, spoons.thing)


def use_amount(use: Use, *, settings: Settings, spoons: Spoons) -> Amount:
    """The amount that a step needs."""
    return ordered(*_use_measures(Same(use), Same(spoons), voice().tag), settings)


def use_amounts(use: Use, spoons: Spoons) -> tuple[Amount, Amount]:
    """The amount that a step needs, with the weight first and with the volume first."""
    weight, volume = _use_measures(Same(use), Same(spoons), voice().tag)
    return in_order(weight, volume, "weight"), in_order(weight, volume, "volume")


@lru_cache(maxsize=4096)
def _use_measures(same: Same[Use], of: Same[Spoons], language: str) -> tuple[str, str]:
    """A step tells it in its sentence and beside it, and a page in both orders."""
    use, spoons = same.thing, of.thing
    if use.line is None or use.extra:
        volume = say(use.words) or (
            count_words(use.count) if use.count else volume_words(use.millilitres, spoons)
        )
    else:
        volume = _volume(use.line, use.millilitres, use.count, spoons)
    return weight_words(use.grams), volume


def _volume(line: Line, millilitres: Range | None, count: Range | None, spoons: Spoons) -> str:
    """How a cook measures it without a scale: the stated kind first, so pieces stay pieces."""
    volume = volume_words(millilitres, spoons)
    if count is not None and in_pieces(line) and not (volume and _between_marks(line, count)):
        return _pieces(line, count)
    if volume:
        filling = next((word for word in line.written.size.split() if word in _FILLINGS[:2]), "")
        return f"{volume}, {say(filling)}" if filling and line.volume_stated else volume
    return say(without_weight(line.written.words)) if line.grams is None else ""


def in_pieces(line: Line) -> bool:
    """Whether a cook counts it: pieces stay pieces."""
    return line.count is not None and not line.volume_stated


def _between_marks(line: Line, count: Range) -> bool:
    """Whether it is so much of a stick as its wrapper has no mark for: marks stand at every eighth."""
    units = {each.unit.name for each in line.written.measures if each.unit}
    return "stick" in units and any((end * 8).denominator != 1 for end in (count.low, count.high))


def _pieces(line: Line, count: Range) -> str:
    """`2 large`, `3 cloves`; eggs stay whole where they can: `4 large + 25 g beaten`."""
    eggs = eggs_of(replace(line, count=count, grams=_grams_of(line, count)))
    if eggs is None or eggs.low != eggs.high or not eggs.low.beaten:
        return _named(line, count)
    beaten = say("{weight} beaten", weight=weight_words(Range.exact(eggs.low.beaten)))
    if eggs.low.whole:
        return f"{_named(line, Range.exact(eggs.low.whole))} + {beaten}"
    # Half an egg can be told by eye; 0.79 of one cannot.
    return _named(line, count) if count.low in GLYPHS else beaten


def _grams_of(line: Line, count: Range) -> Range | None:
    """The weight of so many of the line's pieces."""
    if line.grams is None or line.count is None or not line.count.mid:
        return None
    return count.scaled(line.grams.mid / line.count.mid)


def _named(line: Line, count: Range) -> str:
    return " ".join(part for part in (count_words(count), _piece(line, count)) if part)


def _piece(line: Line, count: Range) -> str:
    """The size and the name of a piece: “large”, “cloves”."""
    units = (each.unit for each in line.written.measures)
    unit = next((each for each in units if each and (each.kind is Kind.COUNT or each.name == "stick")), None)
    size = " ".join(say(word) for word in line.written.size.split() if word not in _FILLINGS)
    name = say_of("unit", unit.name if count.high <= 1 else unit.plural) if unit else ""
    return " ".join(part for part in (size, name) if part)


def without_weight(words: str) -> str:
    """“to taste” and “for dusting” as they are, “a pinch of” without its preposition."""
    return words.removesuffix(" of")


def ordered(weight: str, volume: str, settings: Settings) -> Amount:
    """Both measures in the order of the setting `first`."""
    return in_order(weight, volume, settings.first)


def in_order(weight: str, volume: str, wanted: First) -> Amount:
    """Both measures; the one that is missing never comes first."""
    first, second = (weight, volume) if wanted == "weight" else (volume, weight)
    if not first:
        first, second = second, ""
    return Amount(weight=weight, volume=volume, first=first, second=second)
