"""The usual tins that a recipe can be made for, and why there may be none."""

import re
from fractions import Fraction

from generator.formula.model import Formula
from generator.formula.tin_text import read_shape
from generator.formula.usual_tins import Offer, offers
from generator.measure.unit import Spoons
from generator.present.amounts import decimal, mixed
from generator.present.bench_views import TinRow, TinsView
from generator.present.durations import named_tin
from generator.wording.speech import later, say

_FRACTION = re.compile(r"(?:(\d+) )?(\d)/(\d)")
_COMPARED = {
    "depth": later("Compared by area, filled as deep as the recipe’s own tin."),
    "fill": later("Compared by what they hold, filled as full as the recipe’s own tin."),
}
_NO_USUAL = later(
    "No usual tin is near enough to the recipe’s own; any other is reckoned from its own measures."
)


def tins_view(formula: Formula, *, spoons: Spoons) -> TinsView | None:
    """None for a recipe that names no tin."""
    if not formula.about.tin:
        return None
    own, faults = read_shape(formula.about.tin, spoons=spoons)
    if own is None:
        wrong = faults[0].message if faults else say("its measures are not stated")
        return TinsView(
            rows=(),
            remark=say(
                "No other tins are offered: {wrong}, and without that nothing can be compared.", wrong=wrong
            ),
        )
    found = offers(own)
    if not found:
        return TinsView(rows=(), remark=say(_NO_USUAL))
    rows = tuple(
        TinRow(name=each.name, title=tin_title(each), times=f"{factor_words(each.factor)} ×")
        for each in found
    )
    return TinsView(rows=rows, remark=say(_COMPARED[found[0].by]))


def factor_words(factor: Fraction) -> str:
    """`1½`, `2`, `0.85`: a factor as a reader sees it, at most two decimals."""
    return mixed(factor) if factor.denominator <= 8 else decimal(factor, places=2)


def tin_title(tin: Offer) -> str:
    """`loaf 9 × 5 × 3 in (23 × 13 × 7 cm)`: the tin, and its twin in the other unit."""
    other = tin.other_name.partition(f"{tin.shape.kind} ")[2]
    return typeset_tin(f"{tin.name} ({other})" if other else tin.name)


def typeset_tin(text: str) -> str:
    """With true times signs and true fractions."""
    return _FRACTION.sub(_number, named_tin(text).replace(" x ", " × "))


def _number(found: re.Match[str]) -> str:
    return mixed(int(found[1] or 0) + Fraction(int(found[2]), int(found[3])))
