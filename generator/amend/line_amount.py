"""The text of an ingredient line with another amount: the measure that is meant, and the others that follow it."""

import re
from dataclasses import dataclass, replace
from fractions import Fraction

from generator.amend.answer import Refused
from generator.amend.notation import with_number, worded_like
from generator.amend.typed import Typed
from generator.formula.line import read_line
from generator.formula.model import Line, Ware, Written
from generator.formula.normalise import MOST_APART, Weighed, weigh
from generator.formula.shelf import Shelf
from generator.measure.density import apart
from generator.measure.number import Range, read_number
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.unit import Kind
from generator.present.amounts import decimal

_PERCENT = re.compile(r"\s{0,3}(?:%|per\s?cent\b)", re.I)
_SAME = Fraction(1, 10_000)
_BY_HAND = "Change the line in the file, then record it: tinleaf correct RECIPE --as-it-stands --why “…”."
Piece = tuple[int, int, str]
"""From index to index of the line's text, and what goes there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A measure where it stands in the line's text."""

    start: int
    end: int
    quantity: Quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class Rewritten:
    """`pieces` replace stretches of the text; `old` and `new` are the amount that was meant."""

    pieces: tuple[Piece, ...]
    old: str
    new: str
    former: tuple[Quantity, ...] = ()
    percent: str = ""


def rewrite(text: str, line: Line, typed: Typed, *, shelf: Shelf) -> Rewritten | Refused:
    """The stretches of the line's text that change for the typed amount."""
    if typed.percent is not None:
        return _percent(text, line, typed, typed.percent, shelf)
    spots = _spots(text, line.written.measures, shelf)
    if typed.words:
        return _words(text, line, typed)
    if typed.quantity is None:
        raise ValueError("something is always typed")
    if not spots and line.written.percent is not None:
        return _grams_for_percent(text, line, typed, typed.quantity)
    if not line.written.measures:
        return _instead_of_words(text, line, typed, shelf)
    return _measure(text, line, typed, spots, shelf)


def is_in_place(text: str, pieces: tuple[Piece, ...], line: Line, shelf: Shelf) -> bool:
    """Whether the new text still reads as the same item."""
    new = replaced(text, pieces)
    written, found = read_line(new, lambda start, end: line.span, spoons=shelf.spoons)
    known = {written.item, written.other_item}
    return line.written.item in known and not any(each.code in ("F002", "F004", "F006") for each in found)


def replaced(text: str, pieces: tuple[Piece, ...]) -> str:
    for start, end, new in sorted(pieces, reverse=True):
        text = text[:start] + new + text[end:]
    return text


def _spots(text: str, measures: tuple[Quantity, ...], shelf: Shelf) -> tuple[Spot | None, ...]:
    """Each measure's place, in order; None for one that is worked out and stands nowhere (“2 (150 g each)”)."""
    found: list[Spot | None] = []
    at = 0
    for measure in measures:
        words = measure.text.strip()
        start = text.find(words, at) if words else -1
        read = read_quantity(text, spoons=shelf.spoons, start=start) if start >= 0 else None
        same = read is not None and read[0].amount == measure.amount
        bare = measure.unit is None and words in ("a", "an", "one")
        if start < 0 or not (same or bare):
            found.append(None)
            continue
        at = start + len(words)
        found.append(Spot(start=start, end=at, quantity=replace(measure, text=words)))
    return tuple(found)


def _kind(quantity: Quantity) -> Kind:
    return Kind.COUNT if quantity.unit is None else quantity.unit.kind


def _meant(spots: tuple[Spot | None, ...], typed: Quantity) -> Spot | None:
    """The measure of the line that the typed one takes the place of: of its unit, else of its kind."""
    placed = [each for each in spots if each is not None]
    same = [each for each in placed if each.quantity.unit == typed.unit]
    alike = [
        each for each in placed if _kind(each.quantity) is _kind(typed) and _kind(typed) is not Kind.COUNT
    ]
    return next(iter((*same, *alike)), None)


def _measure(
    text: str, line: Line, typed: Typed, spots: tuple[Spot | None, ...], shelf: Shelf
) -> Rewritten | Refused:
    quantity = typed.quantity or line.written.measures[0]
    meant = _meant(spots, quantity)
    weighed = _weighed(line, quantity, shelf)
    if meant is None:
        meant = _other_kind(line, spots, quantity, weighed)
        if meant is None:
            return _wrong_kind(line, typed)
    elif _in_base(meant.quantity) == _in_base(quantity):
        return Refused(message=f"{line.item} is {meant.quantity.text} already", hint="Nothing was changed.")
    new = _typed_like(meant.quantity, typed, quantity, shelf)
    pieces: list[Piece] = [(meant.start, meant.end, new)]
    ratio = _ratio(line, meant.quantity, quantity, weighed)
    before = _weighed(line, meant.quantity, shelf)
    for spot in spots:
        if spot is None or spot is meant:
            continue
        other = _following(line, spot.quantity, (before, weighed), ratio, shelf)
        if isinstance(other, Refused):
            return other
        pieces.append((spot.start, spot.end, other))
    pieces += _percent_beside(text, line, ratio)
    former = tuple(each.quantity for each in spots if each is not None)
    return _checked(text, line, tuple(pieces), meant.quantity.text, new, shelf, former)


def _checked(
    text: str,
    line: Line,
    pieces: tuple[Piece, ...],
    old: str,
    new: str,
    shelf: Shelf,
    former: tuple[Quantity, ...] = (),
) -> Rewritten | Refused:
    changed = tuple(each for each in pieces if text[each[0] : each[1]] != each[2])
    if not is_in_place(text, changed, line, shelf):
        return Refused(
            message=f"the line would read “{replaced(text, changed)}”, which is not understood", hint=_BY_HAND
        )
    return Rewritten(pieces=changed, old=old, new=new, former=former)


def _in_base(quantity: Quantity) -> tuple[Kind, Range]:
    factor = quantity.unit.factor if quantity.unit else Fraction(1)
    return _kind(quantity), quantity.amount.scaled(factor)


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
    return first if _kind(typed) in kinds and _kind(first.quantity) in kinds else None


def _wrong_kind(line: Line, typed: Typed) -> Refused:
    stated = ", ".join(each.text.strip() for each in line.written.measures)
    bare = typed.quantity is not None and typed.quantity.unit is None
    units = [each.unit.name for each in line.written.measures if each.unit]
    if bare and units:
        return Refused(
            message=f"“{typed.text}” of what? {line.item} stands there as {stated}",
            hint=f"Type the unit too, such as “{typed.text} {units[0]}”.",
        )
    return Refused(
        message=f"“{typed.text}” is another kind of amount than “{stated} {line.item}”", hint=_BY_HAND
    )


def _typed_like(old: Quantity, typed: Typed, quantity: Quantity, shelf: Shelf) -> str:
    """The typed measure in the line's own way: its unit's spelling, a decimal point for a comma."""
    text = re.sub(r"(?<=[0-9]),(?=[0-9]{1,2}(?![0-9]))", ".", typed.text).replace(",", "")
    if quantity.unit != old.unit or quantity.unit is None:
        return text
    number = read_number(text, words=True)
    plain = read_number(old.text, words=True)
    if number is None or plain is None or number[0] != quantity.amount or plain[0] != old.amount:
        return text
    return with_number(old.text, text[: number[1]].strip(), quantity.amount.high, spoons=shelf.spoons)


def _ratio(line: Line, old: Quantity, new: Quantity, weighed: Weighed) -> Fraction:
    """How many times as much it is."""
    before, after = _in_base(old), _in_base(new)
    if before[0] is after[0] and before[1].mid:
        return after[1].mid / before[1].mid
    if line.grams and weighed.grams and line.grams.mid:
        return weighed.grams.mid / line.grams.mid
    return Fraction(1)


def _following(
    line: Line, old: Quantity, weighed: tuple[Weighed, Weighed], ratio: Fraction, shelf: Shelf
) -> str | Refused:
    """Another measure of the same line, for the new amount. `weighed` is the amount before and after.

    Where the maker's measures did not agree by the catalogue, they keep to each other as they did.
    """
    if _kind(old) is Kind.COUNT:
        return _pieces(old, ratio, shelf)
    own = old.grams() if _kind(old) is Kind.MASS else old.millilitres()
    before, after = (each.grams if _kind(old) is Kind.MASS else each.millilitres for each in weighed)
    agreed = own is not None and before is not None and apart(before, own) <= MOST_APART
    amount = after if agreed else own.scaled(ratio) if own else None
    text = worded_like(old, amount, spoons=shelf.spoons) if amount else None
    if text is None:
        message = f"“{old.text}” of {line.item} cannot be worded for the new amount"
        return Refused(message=message, hint=_BY_HAND)
    return text


def _pieces(old: Quantity, ratio: Fraction, shelf: Shelf) -> str:
    """Pieces follow where that gives whole ones or halves; else they stay, being of any size."""
    amount = old.amount.scaled(ratio)
    if (amount.low * 2).denominator != 1 or (amount.high * 2).denominator != 1 or not amount.low:
        return old.text
    return worded_like(old, amount, spoons=shelf.spoons) or old.text


def _percent_beside(text: str, line: Line, ratio: Fraction) -> list[Piece]:
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
    low, high = (decimal(each, places=places) for each in (amount.low, amount.high))
    return low if low == high else f"{low}-{high}"


def _percent(text: str, line: Line, typed: Typed, percent: Range, shelf: Shelf) -> Rewritten | Refused:
    old, spot = line.written.percent, _percent_spot(text)
    if old is None or spot is None:
        return Refused(
            message=f"{line.item} is not given in percent but as “{_stated(line)}”",
            hint="Type an amount of that kind.",
        )
    if old == percent:
        return Refused(
            message=f"{line.item} is {text[: spot[1]].strip()} % already", hint="Nothing was changed."
        )
    number = read_number(typed.text)
    new = typed.text[: number[1]].replace(",", ".") if number else typed.text
    pieces: list[Piece] = [(spot[0], spot[1], new)]
    for each in _spots(text, line.written.measures, shelf):
        if each is not None and _kind(each.quantity) is not Kind.COUNT:
            own = each.quantity.grams() or each.quantity.millilitres()
            worded = worded_like(
                each.quantity, own.scaled(percent.mid / old.mid) if own else old, spoons=shelf.spoons
            )
            pieces += [(each.start, each.end, worded)] if worded else []
    sign = _PERCENT.match(text, spot[1])
    after = sign[0] if sign else "%"
    return _checked(text, line, tuple(pieces), f"{text[spot[0] : spot[1]]}{after}", f"{new}{after}", shelf)


def _grams_for_percent(text: str, line: Line, typed: Typed, quantity: Quantity) -> Rewritten | Refused:
    """A weight typed for a line in percent becomes its percentage of the same flour."""
    spot, grams, old = _percent_spot(text), quantity.grams(), line.written.percent
    if spot is None or grams is None or old is None or not line.grams or not line.grams.mid:
        return Refused(
            message=f"{line.item} is given in percent", hint=f"Type a percentage, such as “{_stated(line)}”."
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


def _stated(line: Line) -> str:
    return _amount_words(line.written) or "no amount"


def _amount_words(written: Written) -> str:
    if written.measures:
        return ", ".join(each.text.strip() for each in written.measures)
    if written.percent is not None:
        return f"{decimal(written.percent.mid, places=2)} %"
    return written.words.removesuffix(" of")


def _words(text: str, line: Line, typed: Typed) -> Rewritten | Refused:
    """“a pinch” for “two pinches”: words take the place of words alone."""
    old = line.written.words.removesuffix(" of")
    at = text.casefold().find(old.casefold()) if old else -1
    if at < 0:
        message = f"“{typed.text}” cannot be weighed, and {line.item} is {_stated(line)}"
        return Refused(message=message, hint=_BY_HAND)
    if text[at : at + len(old)].casefold() == typed.words.casefold():
        return Refused(message=f"{line.item} is “{typed.words}” already", hint="Nothing was changed.")
    # What stands before the item and what stands behind it are different kinds of words.
    if (at == len(text) - len(text.lstrip())) is not typed.words[0].isdigit() and typed.words.startswith(
        ("to ", "as ", "for ")
    ):
        return Refused(message=f"“{typed.text}” stands behind the name, not before it", hint=_BY_HAND)
    return Rewritten(
        pieces=((at, at + len(old), typed.words),), old=text[at : at + len(old)], new=typed.words
    )


def _instead_of_words(text: str, line: Line, typed: Typed, shelf: Shelf) -> Rewritten | Refused:
    """A measure where a pinch, “to taste” or nothing stood."""
    words = line.written.words
    start = len(text) - len(text.lstrip())
    if not words:
        pieces: tuple[Piece, ...] = ((start, start, f"{typed.text} "),)
        return _checked(text, line, pieces, "no amount", typed.text, shelf)
    found = re.search(rf",?\s*{re.escape(words)}", text, re.I)
    if found is not None and text[: found.start()].strip():
        pieces = ((start, start, f"{typed.text} "), (found.start(), found.end(), ""))
        return _checked(text, line, pieces, words, typed.text, shelf)
    head = re.match(rf"\s*({re.escape(words.removesuffix(' of'))}(?:\s+of)?)\s", text, re.I)
    if head is None:
        head = re.match(r"\s*(\S+(?:\s+\S+){0,3}?\s+of)\s", text, re.I)
    if head is None:
        return Refused(message=f"the amount of {line.item} was not found in its line", hint=_BY_HAND)
    pieces = ((head.start(1), head.end(1), typed.text),)
    return _checked(text, line, pieces, words.removesuffix(" of"), typed.text, shelf)
