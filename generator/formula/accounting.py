"""Who uses what, in the order of a way: shares add up, every line is used, nothing is used twice.

A way is read with the common steps after it, for that is how it is baked.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from fractions import Fraction

from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.span import Span
from generator.formula.model import Line, Part, Use, WholePart
from generator.formula.normalise import is_count, piece_grams, stated_grams
from generator.formula.references import Everything, Extra, Share, Whole
from generator.formula.shelf import Shelf
from generator.measure.density import millilitres_of
from generator.measure.number import Range, total

CLOSE_ENOUGH = Fraction(1, 200)
"""Shares given as measures may miss the whole by half a percent: no scale at home shows less."""


@dataclass(slots=True)
class _Used:
    """What has been taken of one line: shares of the whole, and amounts as shares of its middle weight.

    `unclear` is set by a share that was reported as wrong: what is left is then nobody's second mistake.
    """

    fraction: Fraction = Fraction(0)
    whole: bool = False
    rested: bool = False
    unclear: bool = False
    taken: list[Use] = field(default_factory=list)


class Account:
    """The running account of one way."""

    def __init__(self, parts: Iterable[Part], *, way: str, shelf: Shelf) -> None:
        self._parts = tuple(parts)
        self._way = way
        self._shelf = shelf
        self._used: dict[int, _Used] = {}
        self.found: list[Diagnostic] = []

    def take(self, meaning: Whole | Everything | Share | Extra) -> Use | WholePart | None:
        """The use that a reference makes, or None where it cannot be."""
        if isinstance(meaning, Whole):
            return self._whole(meaning.line, meaning.span, share="all")
        if isinstance(meaning, Everything):
            return self._everything(meaning)
        if isinstance(meaning, Share):
            return self._share(meaning)
        return self._extra(meaning)

    def close(self) -> None:
        """Reports every line that is not used up."""
        for part in self._parts:
            for line in part.lines:
                self._close(line)

    def _state(self, line: Line) -> _Used:
        return self._used.setdefault(id(line), _Used())

    def _whole(self, line: Line, span: Span, *, share: str) -> Use | None:
        state = self._state(line)
        if state.whole or state.fraction:
            self.found.append(
                self._again(line, span, whole=state.whole or state.rested, part=share == "part")
            )
            return None
        use = _use(line, share=share, fraction=Fraction(1), span=span)
        state.whole = True
        state.taken.append(use)
        return use

    def _again(self, line: Line, span: Span, *, whole: bool, part: bool = False) -> Diagnostic:
        message = f"{line.item} is already used up" + self._in_way()
        hint = f"Write “{line.item}” in plain words, without braces."
        if not whole:
            message = f"a share of {line.item} is already used" + self._in_way()
            hint = f"Write “{{{line.item}: rest}}” for what is left."
        if part:
            hint = "Name the other ingredients of the part one by one, or write its name in plain words."
        return Diagnostic(code="R020", message=message, span=span, hint=hint)

    def _in_way(self) -> str:
        return f" in “{self._way}”" if self._way else " in the method"

    def _everything(self, meaning: Everything) -> WholePart | None:
        uses = tuple(self._whole(line, meaning.span, share="part") for line in meaning.part.lines)
        if any(use is None for use in uses):
            return None
        whole = tuple(use for use in uses if use is not None)
        return WholePart(part=meaning.part.name, uses=whole, span=meaning.span)

    def _share(self, meaning: Share) -> Use | None:
        line, state = meaning.line, self._state(meaning.line)
        if state.whole or state.rested:
            self.found.append(self._again(line, meaning.span, whole=True))
            return None
        if meaning.words == "rest":
            return self._rest(meaning, state)
        fraction = meaning.fraction if meaning.fraction is not None else self._as_fraction(meaning)
        if fraction is None:
            return None
        if state.fraction + fraction > 1 + CLOSE_ENOUGH:
            message = f"the shares of {line.item} are more than all of it" + self._in_way()
            hint = f"Make this share smaller, or write “{{{line.item}: rest}}”."
            state.unclear = True
            self.found.append(Diagnostic(code="R021", message=message, span=meaning.span, hint=hint))
            return None
        state.fraction += fraction
        use = self._measured(meaning, fraction)
        state.taken.append(use)
        return use

    def _measured(self, meaning: Share, fraction: Fraction) -> Use:
        """A share given as an amount is that amount, whatever range the line has."""
        line, quantity = meaning.line, meaning.quantity
        if quantity is None:
            return _use(line, share=meaning.words, fraction=fraction, span=meaning.span)
        ends = quantity.amount.scaled(fraction / quantity.amount.mid)
        return replace(
            _use(line, share=meaning.words, fraction=fraction, span=meaning.span),
            grams=ends.scaled(line.grams.mid) if line.grams else None,
            millilitres=ends.scaled(line.millilitres.mid) if line.millilitres else None,
            count=ends.scaled(line.count.mid) if line.count else None,
        )

    def _as_fraction(self, meaning: Share) -> Fraction | None:
        """An amount as a share of the line's middle."""
        line, quantity = meaning.line, meaning.quantity
        if quantity is None:  # It was reported as no share, and what is left of the line is not known.
            self._state(line).unclear = True
            return None
        pairs = (
            (stated_grams(quantity, line.ware.ingredient if line.ware else None), line.grams),
            (quantity.millilitres(), line.millilitres),
            (quantity.amount if is_count(quantity) else None, line.count),
        )
        for taken, whole in pairs:
            if taken is not None and whole is not None and whole.mid > 0:
                return taken.mid / whole.mid
        self._state(line).unclear = True
        message = f"“{meaning.words}” cannot be compared with the amount of {line.item}"
        hint = f"Give the share in the kind of measure of the line, or as “{{{line.item}: half}}”."
        self.found.append(Diagnostic(code="R022", message=message, span=meaning.span, hint=hint))
        return None

    def _rest(self, meaning: Share, state: _Used) -> Use | None:
        line, left = meaning.line, 1 - state.fraction
        if not state.fraction:
            if state.unclear:
                return None
            message = f"no share of {line.item} was used before this “rest”" + self._in_way()
            hint = f"Write “{{{line.item}}}” for all of it, or name the first share."
            self.found.append(Diagnostic(code="R023", message=message, span=meaning.span, hint=hint))
            return None
        if left <= 0:
            message = f"nothing is left of {line.item}" + self._in_way()
            hint = "Take this reference away, or make an earlier share smaller."
            self.found.append(Diagnostic(code="R023", message=message, span=meaning.span, hint=hint))
            return None
        use = replace(
            _use(line, share="rest", fraction=left, span=meaning.span),
            grams=_left(line.grams, [each.grams for each in state.taken]),
            millilitres=_left(line.millilitres, [each.millilitres for each in state.taken]),
            count=_left(line.count, [each.count for each in state.taken]),
        )
        state.rested = True
        state.fraction = Fraction(1)
        state.taken.append(use)
        return use

    def _extra(self, meaning: Extra) -> Use:
        quantity, ingredient = meaning.quantity, meaning.ware.ingredient if meaning.ware else None
        per_ml = ingredient.weight_per_ml(flour_cup=self._shelf.flour_cup) if ingredient else None
        grams = stated_grams(quantity, ingredient) if quantity else None
        volume = quantity.millilitres() if quantity else None
        if grams is None and volume is not None and per_ml:
            grams = volume.scaled(per_ml)
        if grams is None and quantity is not None and is_count(quantity):
            grams = piece_grams(quantity, ingredient, size="", shelf=self._shelf)
        if volume is None and grams is not None and per_ml:
            volume = millilitres_of(grams, per_ml)
        return Use(
            part=meaning.line.part if meaning.line else "",
            item=meaning.item,
            line=meaning.line,
            ware=meaning.ware,
            share="extra",
            fraction=None,
            grams=grams,
            millilitres=volume,
            count=quantity.amount if quantity and quantity.unit is None else None,
            span=meaning.span,
            words=meaning.words,
        )

    def _close(self, line: Line) -> None:
        state = self._used.get(id(line))
        reported = line.ware is None and line.component is None
        if state is None and (line.optional or reported):
            return
        if state is None:
            message = f"{line.item} is never used" + self._in_way()
            hint = f"Name it in a step as “{{{line.item}}}”, or mark the line “optional: yes”."
            self.found.append(
                Diagnostic(code="R024", message=message, span=line.written.item_span, hint=hint)
            )
        elif not state.whole and not state.unclear and abs(1 - state.fraction) > CLOSE_ENOUGH:
            percent = f"{float(100 * (1 - state.fraction)):.0f} %"
            message = f"{percent} of {line.item} is never used" + self._in_way()
            hint = f"Write the last share as “{{{line.item}: rest}}”."
            self.found.append(Diagnostic(code="R025", message=message, span=state.taken[-1].span, hint=hint))


def _use(line: Line, *, share: str, fraction: Fraction, span: Span) -> Use:
    return Use(
        part=line.part,
        item=line.item,
        line=line,
        ware=line.ware,
        share=share,
        fraction=fraction,
        grams=line.grams.scaled(fraction) if line.grams else None,
        millilitres=line.millilitres.scaled(fraction) if line.millilitres else None,
        count=line.count.scaled(fraction) if line.count else None,
        span=span,
    )


def _left(whole: Range | None, taken: list[Range | None]) -> Range | None:
    """The whole less what was taken, end by end; never below nothing. None where any of it is not known."""
    known = [each for each in taken if each is not None]
    if whole is None or len(known) != len(taken):
        return None
    left = whole.minus(total(known))
    return Range(max(left.low, Fraction(0)), max(left.high, Fraction(0)))
