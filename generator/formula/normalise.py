"""From the measures of a line to exact grams.

A stated weight wins wherever it stands; else the volume by the ingredient's weight per volume; else the count by
the weight of a piece. Measures of one line are the same amount: more than 5 % apart is an error.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from generator.catalogue.ingredient import Ingredient
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.formula.model import Ware, Written
from generator.formula.shelf import Shelf
from generator.measure.density import apart, grams_of, millilitres_of
from generator.measure.number import Range
from generator.measure.quantity import Quantity
from generator.measure.unit import Kind

MOST_APART = Fraction(5, 100)
_STANDARD_PIECES = ("egg", "leavening", "fat")
"""Groups whose pieces are sold by weight or size class; a banana weighs what it weighs."""
_VAGUE = ("heaped", "heaping", "rounded", "generous", "scant")
_UNCUT = ("whole", "halves")
_SAYS_EACH = re.compile(r"^[0-9]{1,3}\s{0,3}\(|\beach\b", re.I)
_PACKS = ("can", "jar", "packet", "block")


@dataclass(frozen=True, slots=True, kw_only=True)
class Weighed:
    """`millilitres` is the stated volume where there is one, else from the weight; None where not known."""

    grams: Range | None
    millilitres: Range | None
    volume_stated: bool
    count: Range | None


def weigh(
    written: Written, ware: Ware | None, *, form: str, agree: bool, shelf: Shelf
) -> tuple[Weighed, Diagnostics]:
    """The line's amount in grams, millilitres and pieces, and what is wrong with its measures."""
    ingredient = ware.ingredient if ware else None
    per_ml = _per_ml(ingredient, written, form, shelf)
    stated = _first(each.grams() for each in written.measures if not _is_stick(each))
    sticks = _stick_grams(written.measures, ingredient)
    volume = _first(each.millilitres() for each in written.measures)
    counted = _first_count(written.measures)
    pieces = piece_grams(counted, ingredient, size=written.size, shelf=shelf)
    by_volume = _own_unit(written.measures, ingredient) or (
        grams_of(volume, per_ml) if volume and per_ml else None
    )
    grams = stated or sticks or by_volume or pieces
    others = (sticks, by_volume, pieces if ingredient and ingredient.group in _STANDARD_PIECES else None)
    found = [
        *_disagreement(written, grams, others, agree=agree and _vague_word(written) is None),
        *_two_volumes(written, agree=agree),
        *_unweighable(written, grams, volume, counted),
        *_packs(written, counted, pieces, stated),
        *_vague(written, stated),
    ]
    weighed = Weighed(
        grams=grams,
        millilitres=volume or _derived_volume(grams, per_ml),
        volume_stated=volume is not None,
        count=counted.amount if counted else None,
    )
    return weighed, tuple(found)


def _per_ml(ingredient: Ingredient | None, written: Written, form: str, shelf: Shelf) -> Fraction | None:
    if ingredient is None:
        return None
    words = (form, *written.size.split(), *_before_cutting(written, ingredient))
    known = next((word for word in words if word in ingredient.modifiers), "")
    return ingredient.weight_per_ml(flour_cup=shelf.flour_cup, form=known)


def _before_cutting(written: Written, ingredient: Ingredient) -> tuple[str, ...]:
    """“1 cup pecans, chopped” is measured whole and chopped then; “1 cup chopped pecans” is not."""
    cut_after = any(word in ingredient.modifiers for word in written.preparation.casefold().split())
    return _UNCUT if cut_after else ()


def _derived_volume(grams: Range | None, per_ml: Fraction | None) -> Range | None:
    return millilitres_of(grams, per_ml) if grams and per_ml else None


def _own_unit(measures: tuple[Quantity, ...], ingredient: Ingredient | None) -> Range | None:
    """A pint of berries is a dry pint, which the catalogue weighs by itself."""
    units = ingredient.units if ingredient else {}
    return _first(
        each.amount.scaled(units[each.unit.name])
        for each in measures
        if each.unit is not None and each.unit.kind is Kind.VOLUME and each.unit.name in units
    )


def _is_stick(measure: Quantity) -> bool:
    """A stick is a weight for fats alone; of cinnamon it is a piece."""
    return measure.unit is not None and measure.unit.name == "stick"


def _stick_grams(measures: tuple[Quantity, ...], ingredient: Ingredient | None) -> Range | None:
    if ingredient is None or ingredient.group != "fat":
        return None
    return _first(each.grams() for each in measures if _is_stick(each))


def stated_grams(measure: Quantity, ingredient: Ingredient | None) -> Range | None:
    """The weight that a measure states by itself: a stick does so for fats only."""
    if _is_stick(measure):
        return _stick_grams((measure,), ingredient)
    return measure.grams()


def _first(ranges: Iterable[Range | None]) -> Range | None:
    return next((each for each in ranges if each is not None), None)


def _first_count(measures: tuple[Quantity, ...]) -> Quantity | None:
    return next((each for each in measures if is_count(each)), None)


def is_count(measure: Quantity) -> bool:
    return measure.unit is None or measure.unit.kind is Kind.COUNT or _is_stick(measure)


def piece_grams(
    counted: Quantity | None, ingredient: Ingredient | None, *, size: str, shelf: Shelf
) -> Range | None:
    """The weight of a count, by the piece or by a unit that the ingredient knows (a clove, a packet)."""
    if counted is None or ingredient is None:
        return None
    if counted.unit is not None and counted.unit.name in ingredient.units:
        return counted.amount.scaled(ingredient.units[counted.unit.name])
    if counted.unit is not None and counted.unit.name != "piece":
        return None
    named = (size, *size.split()) if size else ()
    sizes = (*named, shelf.default_size(ingredient), "")
    known = next((size for size in sizes if size in ingredient.pieces), None)
    return None if known is None else counted.amount.scaled(ingredient.pieces[known])


def _disagreement(
    written: Written,
    grams: Range | None,
    others: tuple[Range | None, ...],
    *,
    agree: bool,
) -> list[Diagnostic]:
    """`others` are weights that other measures come to; further stated weights are compared too."""
    if grams is None or not agree:
        return []
    weights = [each.grams() for each in written.measures if not _is_stick(each)]
    for other in (*weights, *others):
        if other is not None and apart(grams, other) > MOST_APART:
            return [_differ(written, grams, other)]
    return []


def _differ(written: Written, grams: Range, other: Range) -> Diagnostic:
    percent = float(100 * apart(grams, other))
    message = (
        f"the measures of this line are {percent:.0f} % apart: "
        f"{_plain(grams)} g and {_plain(other)} g of {written.item}"
    )
    hint = "Mend one of them, or accept both with “{line: …, agree: no}”; the weight wins."
    return Diagnostic(code="F030", message=message, span=written.span, hint=hint)


def _plain(grams: Range) -> str:
    middle = float(grams.mid)
    return f"{middle:.0f}" if middle >= 10 else f"{middle:.1f}"


def _two_volumes(written: Written, *, agree: bool) -> list[Diagnostic]:
    """`4 cups (1 L) water`: two volumes that differ need no ingredient to be compared."""
    volumes = [each for each in (measure.millilitres() for measure in written.measures) if each is not None]
    for other in volumes[1:]:
        if agree and apart(volumes[0], other) > MOST_APART:
            percent = float(100 * apart(volumes[0], other))
            message = (
                f"the measures of this line are {percent:.1f} % apart: "
                f"{float(volumes[0].mid):.0f} ml and {float(other.mid):.0f} ml"
            )
            hint = "Mend one of them, or accept both with “{line: …, agree: no}”."
            return [Diagnostic(code="F030", message=message, span=written.span, hint=hint)]
    return []


def _unweighable(
    written: Written, grams: Range | None, volume: Range | None, counted: Quantity | None
) -> list[Diagnostic]:
    if grams is not None or not written.item:
        return []
    if volume is not None:
        message = f"{written.item} cannot be weighed by volume: no weight of a cup or spoon is known"
        hint = f"Write grams in the line, or weigh it once and add “tsp: … g” under “{written.item}” in pantry.yaml."
        return [Diagnostic(code="F031", message=message, span=written.amount_span, hint=hint)]
    if counted is not None:
        message = f"the weight of {_one_piece(counted, written.item)} is not known"
        hint = f"Add the weight in brackets: “{written.text} (… g)”. Without it the line is left out of all sums."
        return [Diagnostic(code="F032", message=message, span=written.amount_span, hint=hint)]
    if not written.words and written.percent is None:  # a percent without a base has a message of its own
        message = f"{written.item} has no amount"
        hint = "Write an amount before it, or “to taste” or “for dusting” after it."
        return [Diagnostic(code="F033", message=message, span=written.item_span, hint=hint)]
    return []


def _one_piece(counted: Quantity, item: str) -> str:
    return f"a piece of {item}" if counted.unit is None else f"a {counted.unit.name} of {item}"


def _packs(
    written: Written, counted: Quantity | None, pieces: Range | None, stated: Range | None
) -> list[Diagnostic]:
    """`2 cans (400 g)` says 400 g in all by the rule that measures are one amount; many mean 400 g each."""
    if counted is None or counted.unit is None or counted.unit.name not in _PACKS or stated is None or pieces:
        return []
    if counted.amount.low <= 1 or _SAYS_EACH.search(written.text):
        return []
    message = f"{_plain(stated)} g is taken as the weight of {counted.text.strip()} together"
    hint = f"If each holds so much, write “… g each”, as in “2 (400 g) {counted.unit.plural} …”."
    return [Diagnostic(code="F036", message=message, span=written.amount_span, hint=hint)]


def _vague_word(written: Written) -> str | None:
    """A heaped spoon is no measure that a weight could disagree with."""
    return next((word for word in _VAGUE if word in written.size.split()), None)


def _vague(written: Written, stated: Range | None) -> list[Diagnostic]:
    vague = _vague_word(written)
    if vague is None or stated is not None:
        return []
    message = f"“{vague}” is no measure: the amount is taken as level"
    hint = "Write grams beside it, or a level measure."
    return [Diagnostic(code="F034", message=message, span=written.span, hint=hint)]
