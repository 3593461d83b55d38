"""An ingredient line that is in percent of the flour, with another percentage."""

import re
from fractions import Fraction

from generator.amend.answer import Refused
from generator.amend.line_spots import Piece, Rewritten, checked, kind_of, spots_of, stated
from generator.amend.notation import worded_like
from generator.amend.typed import Typed
from generator.formula.model import Line
from generator.formula.shelf import Shelf
from generator.measure.density import apart
from generator.measure.number import Range, read_number
from generator.measure.quantity import Quantity
from generator.measure.unit import Kind
from generator.present.amounts import pointed

_PERCENT = re.compile(r"\s{0,3}(?:%|per\s?cent\b)", re.I)
_SAME = Fraction(1, 10_000)


def percent_beside(text: str, line: Line, ratio: Fraction) -> list[Piece]:
    """`65% water (325 g)`: the percentage follows the weight, save that of the only flour."""
    percent = line.written.percent
    if percent is None or (line.flour and percent.low == 100):
        return []
    spot = _percent_spot(text)
    if spot is None:
        return []
    return [(spot[0], spot[1], _number_like(text[spot[0] : spot[1]], percent.scaled(ratio)))]


def _percent_spot(text: str) -> tuple[int, int] | None:
    """Where the number of a leading percentage stands."""
    start = len(text) - len(text.lstrip())
    number = read_number(text, start)
    return (start, number[1]) if number and _PERCENT.match(text, number[1]) else None


def _number_like(old: str, amount: Range) -> str:
    places = max(len(old.partition(".")[2]), 1 if amount.high >= 1 else 2)
    low, high = (pointed(each, places=places) for each in (amount.low, amount.high))
    return low if low == high else f"{low}-{high}"


def another_percent(text: str, line: Line, typed: Typed, percent: Range, shelf: Shelf) -> Rewritten | Refused:
    old, spot = line.written.percent, _percent_spot(text)
    if old is None or spot is None:
        return Refused(
            message=f"{line.item} is not given in percent but as “{stated(line)}”",
            hint="Type an amount of that kind.",
        )
    if old == percent:
        return Refused(
            message=f"{line.item} is {text[: spot[1]].strip()} % already", hint="Nothing was changed."
        )
    number = read_number(typed.text)
    new = typed.text[: number[1]].replace(",", ".") if number else typed.text
    pieces: list[Piece] = [(spot[0], spot[1], new)]
    for each in spots_of(text, line.written.measures, shelf):
        if each is not None and kind_of(each.quantity) is not Kind.COUNT:
            own = each.quantity.grams() or each.quantity.millilitres()
            worded = worded_like(
                each.quantity, own.scaled(percent.mid / old.mid) if own else old, spoons=shelf.spoons
            )
            pieces += [(each.start, each.end, worded)] if worded else []
    sign = _PERCENT.match(text, spot[1])
    after = sign[0] if sign else "%"
    return checked(text, line, tuple(pieces), f"{text[spot[0] : spot[1]]}{after}", f"{new}{after}", shelf)


def grams_for_percent(text: str, line: Line, typed: Typed, quantity: Quantity) -> Rewritten | Refused:
    """A weight typed for a line in percent becomes its percentage of the same flour."""
    spot, grams, old = _percent_spot(text), quantity.grams(), line.written.percent
    if spot is None or grams is None or old is None or not line.grams or not line.grams.mid:
        return Refused(
            message=f"{line.item} is given in percent", hint=f"Type a percentage, such as “{stated(line)}”."
        )
    if line.flour:
        return Refused(
            message=f"{line.item} is given in percent of the flour, which it is itself",
            hint="Correct the flour of the recipe instead: tinleaf correct RECIPE flour “520 g”.",
        )
    if apart(line.grams, grams) <= _SAME:
        return Refused(message=f"{line.item} is {typed.text} already", hint="Nothing was changed.")
    new = _number_like(text[spot[0] : spot[1]], old.scaled(grams.mid / line.grams.mid))
    sign = _PERCENT.match(text, spot[1])
    after = sign[0] if sign else "%"
    pieces = ((spot[0], spot[1], new),)
    return Rewritten(pieces=pieces, old=f"{text[spot[0] : spot[1]]}{after}", new=f"{new}{after}")
