"""The text of an ingredient line with another amount: the measure that is meant, and the others that follow it."""

import re
from dataclasses import replace
from fractions import Fraction

from generator.amend.answer import Refused
from generator.amend.line_percent import another_percent, grams_for_percent, percent_beside
from generator.amend.line_spots import (
    BY_HAND,
    Piece,
    Rewritten,
    Spot,
    checked,
    in_base,
    kind_of,
    spots_of,
    stated,
)
from generator.amend.line_words import instead_of_words, other_words
from generator.amend.notation import number_of, with_number, worded_like
from generator.amend.typed import Typed
from generator.formula.model import Line, Ware
from generator.formula.normalise import MOST_APART, Weighed, weigh
from generator.formula.shelf import Shelf
from generator.measure.density import apart
from generator.measure.number import read_number
from generator.measure.quantity import Quantity
from generator.measure.unit import Kind


def rewrite(text: str, line: Line, typed: Typed, *, shelf: Shelf) -> Rewritten | Refused:
    """The stretches of the line's text that change for the typed amount."""
    if typed.percent is not None:
        return another_percent(text, line, typed, typed.percent, shelf)
    spots = spots_of(text, line.written.measures, shelf)
    if typed.words:
        return other_words(text, line, typed)
    if typed.quantity is None:
        raise ValueError("something is always typed")
    if not any(spots) and line.written.percent is not None:
        return grams_for_percent(text, line, typed, typed.quantity)
    if not line.written.measures:
        return instead_of_words(text, line, typed, shelf)
    return _measure(text, line, typed, spots, shelf)


def _meant(spots: tuple[Spot | None, ...], typed: Quantity) -> Spot | None:
    """The measure of the line that the typed one takes the place of: of its unit, else of its kind.

    A bare number is one of pieces, whatever they are called: of cloves, of cans.
    """
    placed = [each for each in spots if each is not None]
    if typed.unit is None:
        return next((each for each in placed if kind_of(each.quantity) is Kind.COUNT), None)
    same = [each for each in placed if each.quantity.unit == typed.unit]
    alike = [
        each
        for each in placed
        if kind_of(each.quantity) is kind_of(typed) and kind_of(typed) is not Kind.COUNT
    ]
    return next(iter((*same, *alike)), None)


def _measure(
    text: str, line: Line, typed: Typed, spots: tuple[Spot | None, ...], shelf: Shelf
) -> Rewritten | Refused:
    quantity = typed.quantity or line.written.measures[0]
    meant = _meant(spots, quantity)
    if meant is not None and quantity.unit is None:
        quantity = replace(quantity, unit=meant.quantity.unit)
    weighed = _weighed(line, quantity, shelf)
    if meant is None:
        meant = _other_kind(line, spots, quantity, weighed)
        if meant is None:
            return _wrong_kind(line, typed)
    elif in_base(meant.quantity) == in_base(quantity):
        return Refused(message=f"{line.item} is {meant.quantity.text} already", hint="Nothing was changed.")
    new = _typed_like(meant.quantity, typed, quantity, shelf)
    pieces: list[Piece] = [(meant.start, meant.end, new)]
    ratio = _ratio(line, meant.quantity, quantity, weighed)
    before = _weighed(line, meant.quantity, shelf)
    for spot in spots:
        if spot is None or spot is meant:
            continue
        joined = "/" in (text[spot.start - 1 : spot.start], text[spot.end : spot.end + 1])
        other = _following(line, spot.quantity, (before, weighed), ratio, shelf, joined=joined)
        if isinstance(other, Refused):
            return other
        pieces.append((spot.start, spot.end, other))
    pieces += percent_beside(text, line, ratio)
    former = tuple(each.quantity for each in spots if each is not None)
    return checked(text, line, tuple(pieces), meant.quantity.text, new, shelf, former)


def _weighed(line: Line, quantity: Quantity, shelf: Shelf) -> Weighed:
    """What the typed measure alone comes to."""
    ware, form = _ware(line, shelf)
    written = replace(line.written, measures=(quantity,), words="", percent=None)
    return weigh(written, ware, form=form, agree=False, shelf=shelf)[0]


def _ware(line: Line, shelf: Shelf) -> tuple[Ware | None, str]:
    found, form = shelf.ware(line.item)
    return line.ware or found, form


def _other_kind(line: Line, spots: tuple[Spot | None, ...], typed: Quantity, weighed: Weighed) -> Spot | None:
    """A volume may take the place of a weight, and a weight of a volume, where it can be weighed; pieces may not."""
    kinds = (Kind.MASS, Kind.VOLUME)
    first = next((each for each in spots if each is not None), None)
    if first is None or len(line.written.measures) != 1 or weighed.grams is None:
        return None
    return first if kind_of(typed) in kinds and kind_of(first.quantity) in kinds else None


def _wrong_kind(line: Line, typed: Typed) -> Refused:
    own = stated(line)
    bare = typed.quantity is not None and typed.quantity.unit is None
    units = [each.unit.name for each in line.written.measures if each.unit]
    if bare and units:
        return Refused(
            message=f"“{typed.text}” of what? {line.item} stands there as {own}",
            hint=f"Type the unit too, such as “{typed.text} {units[0]}”.",
        )
    return Refused(message=f"“{typed.text}” is another kind of amount than “{own} {line.item}”", hint=BY_HAND)


def _typed_like(old: Quantity, typed: Typed, quantity: Quantity, shelf: Shelf) -> str:
    """The typed measure in the line's own way: its unit's spelling, a decimal point for a comma."""
    text = re.sub(r"(?<=[0-9]),(?=[0-9]{1,2}(?![0-9]))", ".", typed.text).replace(",", "")
    bare = quantity.unit is None
    if old.unit is None or (quantity.unit != old.unit and not bare):
        return text
    number = read_number(text, words=True)
    if number is None or number[0] != quantity.amount or number_of(old.text) != old.amount:
        return text
    return with_number(old.text, text[: number[1]].strip(), quantity.amount.high, spoons=shelf.spoons)


def _ratio(line: Line, old: Quantity, new: Quantity, weighed: Weighed) -> Fraction:
    """How many times as much it is."""
    before, after = in_base(old), in_base(new)
    if before[0] is after[0] and before[1].mid:
        return after[1].mid / before[1].mid
    if line.grams and weighed.grams and line.grams.mid:
        return weighed.grams.mid / line.grams.mid
    return Fraction(1)


def _following(
    line: Line,
    old: Quantity,
    weighed: tuple[Weighed, Weighed],
    ratio: Fraction,
    shelf: Shelf,
    *,
    joined: bool,
) -> str | Refused:
    """Another measure of the same line, for the new amount. `weighed` is the amount before and after.

    Where the maker's measures did not agree by the catalogue, they keep to each other as they did.
    """
    if kind_of(old) is Kind.COUNT:
        return _pieces(old, ratio, shelf)
    own = old.grams() if kind_of(old) is Kind.MASS else old.millilitres()
    before, after = (each.grams if kind_of(old) is Kind.MASS else each.millilitres for each in weighed)
    agreed = own is not None and before is not None and apart(before, own) <= MOST_APART
    amount = after if agreed else own.scaled(ratio) if own else None
    text = worded_like(old, amount, spoons=shelf.spoons, joined=joined) if amount else None
    if text is None:
        message = f"“{old.text}” of {line.item} cannot be worded for the new amount"
        return Refused(message=message, hint=BY_HAND)
    return text


def _pieces(old: Quantity, ratio: Fraction, shelf: Shelf) -> str:
    """Pieces follow where that gives whole ones or halves; else they stay, being of any size."""
    amount = old.amount.scaled(ratio)
    if (amount.low * 2).denominator != 1 or (amount.high * 2).denominator != 1 or not amount.low:
        return old.text
    return worded_like(old, amount, spoons=shelf.spoons) or old.text
