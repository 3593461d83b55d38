"""A starter in an ingredient line: what it is made of is stated or asked for, never inferred from its name.

Flour = starter / (1 + hydration), the rest is water. Hydrations of one name run from 50 to 125 % (French Culinary
Institute, The Fundamental Techniques of Classic Bread Baking).
"""

from collections.abc import Iterator
from dataclasses import replace

from generator.catalogue.names import fold
from generator.diagnostics.diagnostic import Diagnostic, did_you_mean
from generator.formula.levain import inside
from generator.formula.model import Line, Ware
from generator.formula.shelf import Shelf
from generator.formula.written import FERMENTED, WrittenLine
from generator.measure.number import Range

_LAST_WORDS = frozenset({"levain", "starter", "sourdough"})
_CATALOGUE_NAME = "sourdough starter"
_WATER = "water"


def is_starter(name: str) -> bool:
    """Whether a name is one of a ripe mixture of flour and water: “levain”, “rye starter”, “poolish”."""
    folded = fold(name)
    named = folded in FERMENTED or folded == "sourdough discard"
    return named or folded.rpartition(" ")[2] in _LAST_WORDS


def starter_ware(line: WrittenLine, ware: Ware | None, shelf: Shelf) -> Ware | None:
    """What the line is: the catalogue's starter under the name of the line, with the flour's question answered.

    Where the line does not say which flour it is, the catalogue's question stays, and the label unfinished.
    """
    if line.hydration is None or not is_starter(line.written.item) or line.recipe is not None:
        return ware
    base = ware or shelf.ware(_CATALOGUE_NAME)[0]
    if base is None:
        return None
    named = base.ingredient if ware else replace(base.ingredient, name=line.written.item)
    known = flour_of(line, shelf) is not None
    return Ware(ingredient=replace(named, ask=()) if known else named, packs=base.packs)


def flour_of(line: WrittenLine, shelf: Shelf) -> Ware | None:
    """The flour that a starter is fed with, where the line names one."""
    ware = shelf.ware(line.flour.text)[0] if line.flour is not None else None
    return ware if ware is not None and ware.ingredient.flour else None


def with_inside(line: Line, written: WrittenLine, shelf: Shelf) -> Line:
    """The line with the hydration that its maker states, and with its flour and water as lines of their own."""
    if written.hydration is None or written.recipe is not None or not is_starter(written.written.item):
        return line
    hydration, flour, water = written.hydration.value, flour_of(written, shelf), shelf.ware(_WATER)[0]
    stated = replace(line, hydration=hydration)
    if flour is None or water is None or written.flour is None:
        return stated
    fed = _inner(stated, flour, written.flour.text, flour_in(line.grams, stated), flour_in(line.kept, stated))
    wet = _inner(stated, water, _WATER, water_in(line.grams, stated), water_in(line.kept, stated))
    return replace(stated, inside=(replace(fed, flour=True), wet))


def flour_in(grams: Range | None, line: Line) -> Range | None:
    """Flour in so much of a starter; None where its make-up is not stated."""
    if grams is None or line.hydration is None:
        return None
    ends = (inside(each, line.hydration) for each in (grams.low, grams.high))
    low, high = (each.flour if each else None for each in ends)
    return None if low is None or high is None else Range(low, high)


def water_in(grams: Range | None, line: Line) -> Range | None:
    """Water in so much of a starter; None where its make-up is not stated."""
    flour = flour_in(grams, line)
    return None if grams is None or flour is None else grams.minus(flour)


def starter_faults(line: WrittenLine, ware: Ware | None, shelf: Shelf) -> Iterator[Diagnostic]:
    """What is missing or wrong about a starter's make-up."""
    if line.hydration is None and line.flour is None:
        yield from _asked(line, ware)
    elif line.recipe is not None or not is_starter(line.written.item):
        at = line.hydration or line.flour
        message = f"{line.written.item} is no starter whose make-up could be stated here"
        hint = "Delete `hydration` and `flour`; what a recipe is made of stands in that recipe."
        if at is not None:
            yield Diagnostic(code="F054", message=message, span=at.span, hint=hint)
    elif line.hydration is None and line.flour is not None:
        message = f"the hydration of {line.written.item} is not stated, so its flour cannot be counted"
        hint = "Add the water on flour, such as “hydration: 100 %”."
        yield Diagnostic(code="F050", message=message, span=line.flour.span, hint=hint)
    yield from _flour_faults(line, shelf)


def asks(line: WrittenLine, ware: Ware | None) -> bool:
    """Whether the line is a starter of which nothing says what it is made of."""
    unknown = ware is None or ware.ingredient.name == _CATALOGUE_NAME
    stated = line.recipe is not None or line.hydration is not None or line.flour is not None
    return is_starter(line.written.item) and unknown and not stated


def _asked(line: WrittenLine, ware: Ware | None) -> Iterator[Diagnostic]:
    if asks(line, ware):
        message = f"what {line.written.item} is made of is not stated: a name does not tell how wet it is"
        hint = (
            f"Write “{{line: {line.written.text}, hydration: 100 %, flour: bread flour}}” with its own figures, "
            "or make it a recipe or a part of its own."
        )
        yield Diagnostic(code="F050", message=message, span=line.written.item_span, hint=hint)


def _flour_faults(line: WrittenLine, shelf: Shelf) -> Iterator[Diagnostic]:
    if line.flour is None or flour_of(line, shelf) is not None:
        return
    flours = [each for each in shelf.nearest(line.flour.text) if _is_flour(each, shelf)]
    hint = did_you_mean(line.flour.text, flours) or "Name a flour of the catalogue, such as “bread flour”."
    message = f"“{line.flour.text}” is no flour that is known here"
    yield Diagnostic(code="F055", message=message, span=line.flour.span, hint=hint)


def _is_flour(name: str, shelf: Shelf) -> bool:
    ware = shelf.ware(name)[0]
    return ware is not None and ware.ingredient.flour


def _inner(line: Line, ware: Ware, item: str, grams: Range | None, kept: Range | None) -> Line:
    return replace(
        line,
        key=f"{line.key}/{item}",
        item=item,
        ware=ware,
        alternatives=(),
        note="",
        grams=grams,
        kept=kept,
        millilitres=None,
        volume_stated=False,
        count=None,
        flour=False,
        hydration=None,
        inside=(),
    )
