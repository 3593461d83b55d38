"""How many times as large: from a wish of the baker to a factor, and what a factor gives to think about."""

import re
from dataclasses import dataclass
from fractions import Fraction

from generator.formula.model import Formula, Line
from generator.formula.note import COMMON_PRACTICE, Note
from generator.formula.scaling import stays
from generator.formula.tin_text import read_shape
from generator.formula.tins import By, TinShape, factor_between
from generator.measure.number import Range, read_number
from generator.wording.speech import later

LEAST_QUIET, MOST_QUIET = Fraction(1, 2), Fraction(2)
"""From half to double a home recipe is scaled without a word (common practice)."""

_BEFORE_COUNT = re.compile(
    r"\s{0,9}(?:(?:about|around|makes|serves|ca\.?|approx\.?)\s{1,9}){0,2}", re.IGNORECASE
)
# "1 loaf" counts loaves, "9-inch cake" and "500 g jar" count nothing.
_NO_COUNT = re.compile(r"[\s-]{0,3}(?:[\"″”%]|(?:in|inch(?:es)?|cm|mm|g|kg|ml|l|oz|lb)\b)", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Refusal:
    """Why there is no factor, and what to type instead."""

    message: str
    hint: str


def factor_for(
    formula: Formula,
    *,
    times: Fraction | None = None,
    flour: Fraction | None = None,
    dough: Fraction | None = None,
    portions: Fraction | None = None,
    tin: TinShape | None = None,
    by: By | None = None,
) -> Fraction | Refusal:
    """The factor for exactly one wish: times, grams of flour, grams of dough, portions, or another tin.

    `flour` is all flour of the dough, preferments included; `dough` the raw weight of all parts that count.
    `by` says how tins are compared: `fill` by volume or `depth` by area, else by what is known.
    """
    wishes = [each for each in (times, flour, dough, portions, tin) if each is not None]
    if len(wishes) != 1:
        return Refusal(
            message="a formula is scaled by one wish at a time",
            hint="Give one of times, flour, dough, portions and tin.",
        )
    if tin is not None:
        return _by_tin(formula, tin, by)
    if times is not None:
        return _ratio(times, Fraction(1), "times", "")
    if flour is not None:
        return _ratio(flour, formula.totals.flour, "flour", "the formula has no flour to scale by")
    if dough is not None:
        return _ratio(
            dough, formula.totals.dough_grams.mid, "dough", "the formula has no dough with a weight"
        )
    return _ratio(
        portions or Fraction(0), portions_of(formula), "portions", "the recipe does not count its portions"
    )


def _ratio(wanted: Fraction, present: Fraction | None, name: str, missing: str) -> Fraction | Refusal:
    if wanted <= 0:
        return Refusal(message=f"{name} must be more than nothing", hint="Give a number above 0.")
    if present is None or present <= 0:
        return Refusal(message=missing, hint="Scale it by times, or by dough weight.")
    return wanted / present


def portions_of(formula: Formula) -> Fraction | None:
    """The count that begins `portions`, else that of `makes`: the middle of a range; None where none is told."""
    counts = (_count(text) for text in (formula.about.portions, formula.about.makes))
    return next((count for count in counts if count), None)


def _count(text: str) -> Fraction | None:
    before = _BEFORE_COUNT.match(text)
    found = read_number(text, before.end() if before else 0, words=True)
    if found is None or _NO_COUNT.match(text, found[1]):
        return None
    return found[0].mid


def _by_tin(formula: Formula, tin: TinShape, by: By | None) -> Fraction | Refusal:
    own, faults = read_shape(formula.about.tin) if formula.about.tin else (None, ())
    if own is None:
        message = faults[0].message if faults else "the recipe does not name its tin"
        return Refusal(message=message, hint="Give the recipe a tin with its sides: “tin: round 23 x 5 cm”.")
    rules: tuple[By, ...] = (by,) if by else ("fill", "depth")
    factors = (factor_between(own, tin, by=rule) for rule in rules)
    factor = next((each for each in factors if each is not None), None)
    if factor is None:
        message = f"“{tin.words}” cannot be compared with the recipe's “{own.words}”"
        return Refusal(message=message, hint="Give both tins all their sides, or what they hold.")
    return factor


def scaling_notes(formula: Formula, factor: Fraction) -> tuple[Note, ...]:
    """What to say aloud beside a formula that is `factor` times as large; nothing for a factor of 1."""
    if factor == 1 or factor <= 0:
        return ()
    far = not LEAST_QUIET <= factor <= MOST_QUIET
    notes = [_far(factor), *_by_hand(formula)] if far else []
    kept = tuple(line.item for line in formula.lines if stays(line))
    if kept:
        says = later("Pinches and amounts to taste stay as they are.")
        notes.append(Note(kind="pinch", says=says, source=COMMON_PRACTICE, items=kept))
    return (*notes, look_note(factor))


def _far(factor: Fraction) -> Note:
    return Note(kind="far", says=_MORE if factor > MOST_QUIET else _LESS, source=COMMON_PRACTICE)


_MORE = later(
    "This is more than double of the recipe as it was baked: mixing, rising and baking may go another way."
)
_LESS = later(
    "This is less than half of the recipe as it was baked: mixing, rising and baking may go another way."
)


def _by_hand(formula: Formula) -> list[Note]:
    leavening = _items(formula, group="leavening")
    salt = tuple(line.item for line in formula.lines if _is_salt(line) and not stays(line))
    notes = []
    if leavening:
        says = later(
            "Leavening does not follow such a jump by number: a deep or large tin needs a little less."
        )
        notes.append(Note(kind="leavening", says=says, source=COMMON_PRACTICE, items=leavening))
    if salt:
        says = later(
            "Salt is a matter of taste, and such a jump is seldom right to the gram: begin with a little less."
        )
        notes.append(Note(kind="salt", says=says, source=COMMON_PRACTICE, items=salt))
    return notes


def _items(formula: Formula, *, group: str) -> tuple[str, ...]:
    return tuple(
        line.item
        for line in formula.lines
        if line.ware is not None and line.ware.ingredient.group == group and not stays(line)
    )


def _is_salt(line: Line) -> bool:
    return line.ware is not None and line.ware.ingredient.salt_added


def look_note(factor: Fraction) -> Note:
    """Times and temperatures are those of the recipe as written; `factor` is not 1."""
    if factor > 1:
        return Note(kind="look later", says=_LOOK_LATER, source=COMMON_PRACTICE)
    return Note(kind="look earlier", says=_LOOK_EARLIER, source=COMMON_PRACTICE)


_LOOK_LATER = later(
    "Times and temperatures are those of the recipe as written: one larger piece is done later, so start looking "
    "later; more or fewer pieces of the same size take as long as before."
)
_LOOK_EARLIER = later(
    "Times and temperatures are those of the recipe as written: one smaller piece is done earlier, so start looking "
    "earlier; more or fewer pieces of the same size take as long as before."
)


def earliest_look(minutes: Range, depth_ratio: Fraction) -> Range | None:
    """A rough earliest time for a shallower bake, by the square of its depth: 40 min, 2 to 1.5 in, is 22.5.

    A bound and no baking time: in practice a bake takes longer than that (common practice). A deeper bake is
    looked at from the time as written. None for a depth that is not above zero.
    """
    if depth_ratio <= 0:
        return None
    return minutes.scaled(min(depth_ratio, Fraction(1)) ** 2)


def dough_for_baked(baked: Fraction, loss_percent: Fraction) -> Fraction | None:
    """Dough for a baked weight. The loss is of the dough: dough = baked / (1 - loss), never baked x (1 + loss).

    Source: trade dictionary, "bake-out loss". None unless the loss is from 0 to below 100 %.
    """
    if baked <= 0 or not 0 <= loss_percent < 100:
        return None
    return baked / (1 - loss_percent / 100)


def baked_from(dough: Fraction, loss_percent: Fraction) -> Fraction | None:
    """Baked weight of so much dough; None as in `dough_for_baked`."""
    if dough <= 0 or not 0 <= loss_percent < 100:
        return None
    return dough * (1 - loss_percent / 100)
