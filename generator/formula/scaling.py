"""A formula for more or less of the same bake.

Every weight, volume and count grows by one factor; percents, times and temperatures stay as they are, and so do
pinches, amounts "to taste", and extras, which mend a dough by look. Scaling by k and then by 1/k gives the very
same formula.
"""

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from types import MappingProxyType

from generator.formula.model import (
    Block,
    Formula,
    Line,
    Mention,
    Part,
    Section,
    Totals,
    Use,
    Way,
    WholePart,
    Words,
)
from generator.measure.number import Range

_UNSCALED_UNITS = frozenset({"pinch", "dash", "drop"})


class _Times:
    """Amounts so many times as large, each once: a line, what is kept of it and its use are mostly equal."""

    def __init__(self, factor: Fraction) -> None:
        self.factor = factor
        self._known: dict[tuple[int, int, int, int], Range] = {}

    def __call__(self, amount: Range) -> Range:
        low, high = amount.low, amount.high
        # Whole numbers, for a fraction takes longer to hash than to multiply.
        key = (low.numerator, low.denominator, high.numerator, high.denominator)
        if key not in self._known:
            self._known[key] = amount.scaled(self.factor)
        return self._known[key]

    def known(self, amount: Range | None) -> Range | None:
        return None if amount is None else self(amount)


def scaled(formula: Formula, factor: Fraction) -> Formula:
    """The formula `factor` times as large. `factor` is above zero: `factor_for` gives no other one.

    What stands in words (makes, portions, tin, the lines as written) is left as the maker wrote it.
    Raises ValueError for a factor that is not above zero, which is our own mistake.
    """
    if factor <= 0:
        raise ValueError(f"a formula is scaled by more than nothing, not by {factor}")
    if factor == 1:
        return formula
    by = _Times(factor)
    lines = {id(line): _line(line, by) for line in formula.lines}
    return replace(
        formula,
        parts=tuple(_part(part, lines, by) for part in formula.parts),
        totals=_totals(formula.totals, by),
        ways=tuple(_way(way, lines, by) for way in formula.ways),
        intro=_words(formula.intro, lines, by),
        weighs=by.known(formula.weighs),
        component_shares=MappingProxyType(
            {name: share * factor for name, share in formula.component_shares.items()}
        ),
    )


def stays(line: Line) -> bool:
    """Whether a line is the same in every size: a pinch, a dash, a drop, to taste, for dusting, without a weight.

    Nobody measures four pinches by number (common practice).
    """
    if line.grams is not None:
        return False
    names = {each.unit.name for each in line.written.measures if each.unit is not None}
    return bool(line.written.words) or bool(names & _UNSCALED_UNITS)


def _line(line: Line, by: _Times) -> Line:
    alternatives = tuple(_line(each, by) for each in line.alternatives)
    if stays(line):
        return replace(line, alternatives=alternatives)
    return replace(
        line,
        alternatives=alternatives,
        inside=tuple(_line(each, by) for each in line.inside),
        grams=by.known(line.grams),
        kept=by.known(line.kept),
        millilitres=by.known(line.millilitres),
        count=by.known(line.count),
    )


def _part(part: Part, lines: Mapping[int, Line], by: _Times) -> Part:
    return replace(part, lines=tuple(lines[id(line)] for line in part.lines), grams=by(part.grams))


def _totals(totals: Totals, by: _Times) -> Totals:
    return replace(
        totals,
        grams=by(totals.grams),
        dough_grams=by(totals.dough_grams),
        flour=totals.flour * by.factor,
        water=totals.water * by.factor,
        finished_grams=by.known(totals.finished_grams),
    )


def _way(way: Way, lines: Mapping[int, Line], by: _Times) -> Way:
    return replace(way, sections=tuple(_section(each, lines, by) for each in way.sections))


def _section(section: Section, lines: Mapping[int, Line], by: _Times) -> Section:
    return replace(section, blocks=tuple(_block(each, lines, by) for each in section.blocks))


def _block(block: Block, lines: Mapping[int, Line], by: _Times) -> Block:
    words = _words(block.words, lines, by)
    return block if words is block.words else replace(block, words=words)


def _words(words: Words, lines: Mapping[int, Line], by: _Times) -> Words:
    if not any(isinstance(each, Use | WholePart) for each in words.mentions):
        return words
    return replace(words, mentions=tuple(_mention(each, lines, by) for each in words.mentions))


def _mention(mention: Mention, lines: Mapping[int, Line], by: _Times) -> Mention:
    if isinstance(mention, Use):
        return _use(mention, lines, by)
    if isinstance(mention, WholePart):
        return replace(mention, uses=tuple(_use(each, lines, by) for each in mention.uses))
    return mention


def _use(use: Use, lines: Mapping[int, Line], by: _Times) -> Use:
    """An extra keeps its amount: the spoon of flour that mends a dough is added until the dough is right."""
    line = None if use.line is None else lines.get(id(use.line)) or _line(use.line, by)
    if use.extra or (line is not None and stays(line)):
        return replace(use, line=line)
    return replace(
        use,
        line=line,
        grams=by.known(use.grams),
        millilitres=by.known(use.millilitres),
        count=by.known(use.count),
    )
