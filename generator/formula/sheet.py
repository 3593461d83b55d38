"""The formula sheet: the total formula and the final dough, in the trade's way, and how the levain is built.

Both tables say the same dough: their weights add up to the same sum. The total formula opens the preferments and is
on all flour; the final dough has each preferment as one row and is on the flour that goes in beside them, so that
54 % of water there may be 68 % in truth (form of the Bread Bakers Guild of America, 2009, from memory).
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from generator.formula.contents import Content, contents, itself
from generator.formula.levain import Build, build_by_ratio
from generator.formula.model import Formula, Line, Part
from generator.measure.number import Range, total


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """`percent` is on the flour of the table, from the middle of a range; None without flour."""

    item: str
    grams: Range
    percent: Fraction | None


@dataclass(frozen=True, slots=True, kw_only=True)
class LevainBuild:
    """How the levain of a part is built, with its own hydration for the seed."""

    part: str
    build: Build


def total_formula(formula: Formula, book: Mapping[str, Formula]) -> tuple[Row, ...]:
    """Every ingredient of the dough once, flours first, preferments and starters opened; percents on all flour.

    A component of the dough itself stays one row, as in the percents of its line: its flour and water do not count.
    """
    opened = [each for part in _dough(formula) for line in part.lines for each in _opened(line, part, book)]
    return _rows(_merged(opened), _flour(opened))


def final_dough(formula: Formula, book: Mapping[str, Formula]) -> tuple[Row, ...]:
    """What goes into the bowl: flours first, then all else, each preferment as one row; percents on its own flour.

    Without a preferment it is the total formula; where all flour is in preferments, no percent can be said.
    """
    bowl: list[Content] = []
    for part in _dough(formula):
        if part.preferment is None:
            bowl += [each for line in part.lines if line.counts for each in itself(line)]
        else:
            name = part.name or part.preferment
            bowl.append(Content(key=f"part {name}", item=name, grams=part.grams))
    return _rows(_merged(bowl), _flour(bowl))


def levain_builds(formula: Formula) -> tuple[LevainBuild, ...]:
    """For each part that says `build: 1:2:2` and its hydration: grams of seed, flour and water."""
    found = ((part, _build(part)) for part in formula.parts)
    return tuple(LevainBuild(part=part.name, build=build) for part, build in found if build is not None)


def _build(part: Part) -> Build | None:
    if part.build is None or part.hydration is None:
        return None
    return build_by_ratio(part.grams.mid, ratio=part.build, seed_hydration=part.hydration)


def _dough(formula: Formula) -> tuple[Part, ...]:
    return tuple(part for part in formula.parts if part.counts)


def _opened(line: Line, part: Part, book: Mapping[str, Formula]) -> Iterable[Content]:
    if not line.counts:
        return ()
    return contents(line, book) if part.preferment or line.component is None else itself(line)


def _merged(found: Iterable[Content]) -> tuple[Content, ...]:
    once: dict[tuple[str, bool], Content] = {}
    for each in found:
        known = once.get((each.key, each.flour))
        grams = each.grams if known is None else known.grams + each.grams
        item = each.item if known is None else known.item
        once[each.key, each.flour] = Content(key=each.key, item=item, grams=grams, flour=each.flour)
    return tuple(sorted(once.values(), key=lambda each: not each.flour))


def _flour(found: Iterable[Content]) -> Fraction:
    return total(each.grams for each in found if each.flour).mid


def _rows(found: Iterable[Content], flour: Fraction) -> tuple[Row, ...]:
    return tuple(
        Row(item=each.item, grams=each.grams, percent=100 * each.grams.mid / flour if flour else None)
        for each in found
    )
