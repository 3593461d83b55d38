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


def scaled(formula: Formula, factor: Fraction) -> Formula:
    """The formula `factor` times as large. `factor` is above zero: `factor_for` gives no other one.

    What stands in words (makes, portions, tin, the lines as written) is left as the maker wrote it.
    Raises ValueError for a factor that is not above zero, which is our own mistake.
    """
    if factor <= 0:
        raise ValueError(f"a formula is scaled by more than nothing, not by {factor}")
    lines = {id(line): _line(line, factor) for line in formula.lines}
    return replace(
        formula,
        parts=tuple(_part(part, lines, factor) for part in formula.parts),
        totals=_totals(formula.totals, factor),
        ways=tuple(_way(way, lines, factor) for way in formula.ways),
        intro=_words(formula.intro, lines, factor),
        weighs=_range(formula.weighs, factor),
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


def _range(amount: Range | None, factor: Fraction) -> Range | None:
    return None if amount is None else amount.scaled(factor)


def _line(line: Line, factor: Fraction) -> Line:
    alternatives = tuple(_line(each, factor) for each in line.alternatives)
    if stays(line):
        return replace(line, alternatives=alternatives)
    return replace(
        line,
        alternatives=alternatives,
        inside=tuple(_line(each, factor) for each in line.inside),
        grams=_range(line.grams, factor),
        kept=_range(line.kept, factor),
        millilitres=_range(line.millilitres, factor),
        count=_range(line.count, factor),
    )


def _part(part: Part, lines: Mapping[int, Line], factor: Fraction) -> Part:
    return replace(part, lines=tuple(lines[id(line)] for line in part.lines), grams=part.grams.scaled(factor))


def _totals(totals: Totals, factor: Fraction) -> Totals:
    return replace(
        totals,
        grams=totals.grams.scaled(factor),
        dough_grams=totals.dough_grams.scaled(factor),
        flour=totals.flour * factor,
        water=totals.water * factor,
        finished_grams=_range(totals.finished_grams, factor),
    )


def _way(way: Way, lines: Mapping[int, Line], factor: Fraction) -> Way:
    return replace(way, sections=tuple(_section(each, lines, factor) for each in way.sections))


def _section(section: Section, lines: Mapping[int, Line], factor: Fraction) -> Section:
    return replace(section, blocks=tuple(_block(each, lines, factor) for each in section.blocks))


def _block(block: Block, lines: Mapping[int, Line], factor: Fraction) -> Block:
    return replace(block, words=_words(block.words, lines, factor))


def _words(words: Words, lines: Mapping[int, Line], factor: Fraction) -> Words:
    return replace(words, mentions=tuple(_mention(each, lines, factor) for each in words.mentions))


def _mention(mention: Mention, lines: Mapping[int, Line], factor: Fraction) -> Mention:
    if isinstance(mention, Use):
        return _use(mention, lines, factor)
    if isinstance(mention, WholePart):
        return replace(mention, uses=tuple(_use(each, lines, factor) for each in mention.uses))
    return mention


def _use(use: Use, lines: Mapping[int, Line], factor: Fraction) -> Use:
    """An extra keeps its amount: the spoon of flour that mends a dough is added until the dough is right."""
    line = None if use.line is None else lines.get(id(use.line)) or _line(use.line, factor)
    if use.extra or (line is not None and stays(line)):
        return replace(use, line=line)
    return replace(
        use,
        line=line,
        grams=_range(use.grams, factor),
        millilitres=_range(use.millilitres, factor),
        count=_range(use.count, factor),
    )
