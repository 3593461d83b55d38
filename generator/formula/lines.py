"""Written lines become lines of the formula: looked up, weighed, with what stays in the bake."""

import re
from collections.abc import Mapping
from fractions import Fraction

from generator.diagnostics.diagnostic import Diagnostic, did_you_mean
from generator.formula.model import Formula, Line, Ware
from generator.formula.normalise import weigh
from generator.formula.shelf import Shelf
from generator.formula.starters import asks, is_starter, starter_faults, starter_ware, with_inside
from generator.formula.written import Name, WrittenLine, WrittenPart
from generator.measure.number import Range, read_number
from generator.measure.quantity import read_quantity

Found = list[Diagnostic]
_FRACTION_SIGN = re.compile("[/\u2044¼½¾⅓⅔⅛⅜⅝⅞⅕⅖⅗⅘⅙⅚]")
_SHARE = re.compile(r"\s*%\s*$")


def understand_line(
    line: WrittenLine,
    part: WrittenPart,
    *,
    shelf: Shelf,
    book: Mapping[str, Formula | None],
    found: Found,
    alternative: bool = False,
) -> Line:
    """One line of `part`. Its percent is filled in once the flour of the whole formula is known.

    An alternative without an amount is meant in the amount of its line.
    """
    component = _component(line.recipe, book, found)
    plain, form = _ware(line, shelf=shelf, found=found)
    found.extend(starter_faults(line, plain, shelf))
    ware = starter_ware(line, plain, shelf)
    weighed, wrong = weigh(line.written, ware, form=form, agree=line.agree, shelf=shelf)
    # One message is enough: what is not known cannot be weighed either, and a component has a check of its own.
    passed_over = {
        *(("F033",) if alternative or line.recipe else ()),
        *(("F031", "F032") if ware is None or line.recipe else ()),
    }
    found.extend(each for each in wrong if each.code not in passed_over)
    lost = _discarded(line.discard, weighed.grams, ware, shelf=shelf, found=found)
    kept = weighed.grams.minus(lost) if weighed.grams and lost else weighed.grams
    understood = Line(
        part=part.name,
        key=f"{part.name}/{line.written.item}",
        written=line.written,
        item=line.written.item,
        ware=None if line.recipe else ware,
        component=component,
        optional=line.optional,
        alternatives=tuple(
            understand_line(each, part, shelf=shelf, book=book, found=found, alternative=True)
            for each in line.alternatives
        ),
        note=line.note,
        grams=weighed.grams,
        kept=kept,
        millilitres=weighed.millilitres,
        volume_stated=weighed.volume_stated,
        count=weighed.count,
        flour=is_flour(line, ware),
        percent=None,
        span=line.span,
    )
    return with_inside(understood, line, shelf)


def is_flour(line: WrittenLine, ware: Ware | None) -> bool:
    """Whether a line is flour of the dough: a flour by the catalogue or the pantry, not for dusting."""
    return bool(ware and ware.ingredient.flour and not _for_dusting(line) and not line.recipe)


def _for_dusting(line: WrittenLine) -> bool:
    """Flour for dusting does not enter the dough; “plus extra for dusting” speaks of more than the line."""
    said = (line.written.words, line.written.preparation.casefold())
    return any(each.startswith("for dusting") for each in said)


def _component(recipe: Name | None, book: Mapping[str, Formula | None], found: Found) -> str | None:
    if recipe is None:
        return None
    if recipe.text not in book:
        message = f"there is no recipe called “{recipe.text}”"
        hint = (
            did_you_mean(recipe.text, book) or "The name of a recipe is the name of its file without “.md”."
        )
        found.append(Diagnostic(code="F040", message=message, span=recipe.span, hint=hint))
        return None
    return recipe.text


def _ware(line: WrittenLine, *, shelf: Shelf, found: Found) -> tuple[Ware | None, str]:
    if line.pantry and line.recipe:
        message = "a line is either bought (`pantry`) or made (`recipe`), not both"
        hint = "Delete one of the two keys."
        found.append(Diagnostic(code="F041", message=message, span=line.pantry.span, hint=hint))
    if line.pantry:
        ware, form = shelf.ware(line.written.item, pantry=line.pantry.text)
        if ware is None or (line.pantry.text not in shelf.pantry.names() and not ware.packs):
            message = f"the pantry has no row called “{line.pantry.text}”"
            hint = did_you_mean(line.pantry.text, shelf.pantry.names()) or "Add the row to pantry.yaml."
            found.append(Diagnostic(code="F042", message=message, span=line.pantry.span, hint=hint))
        return ware, form
    ware, form = shelf.ware(line.written.item)
    stated = line.hydration is not None or line.flour is not None
    told = asks(line, ware) or (stated and is_starter(line.written.item))
    if ware is None and line.recipe is None and line.written.item and not told:
        found.append(_unknown(line, shelf))
    return ware, form


def _unknown(line: WrittenLine, shelf: Shelf) -> Diagnostic:
    item = line.written.item
    near = shelf.nearest(item)
    known = "Did you mean " + " or ".join(f"“{each}”" for each in near) + "? Else add" if near else "Add"
    hint = f"{known} a row “{item}:” to pantry.yaml with what its pack says."
    if item.casefold().startswith("each ") and " and " in item:
        hint = "Write a line for each of the two."
    if " or " in item:
        hint = "Write the second choice under `or`: “{line: …, or: […]}”."
    message = f"neither the catalogue nor the pantry knows “{item}”"
    return Diagnostic(code="F043", message=message, span=line.written.item_span, hint=hint)


def _discarded(
    discard: Name | None, grams: Range | None, ware: Ware | None, *, shelf: Shelf, found: Found
) -> Range | None:
    """Grams of the line that do not stay in the bake."""
    if discard is None or grams is None:
        return None
    share = _share(discard.text)
    if share is not None:
        return grams.scaled(share)
    read = read_quantity(discard.text, spoons=shelf.spoons)
    lost = _quantity_grams(read[0].grams(), read[0].millilitres(), ware, shelf) if read else None
    if lost is None:
        message = f"“{discard.text}” does not say how much is discarded"
        hint = "Write a weight (450 g), a share (90 %), or “all”."
        found.append(Diagnostic(code="F044", message=message, span=discard.span, hint=hint))
        return None
    if lost.high > grams.high or lost.low > grams.low:
        message = "more is discarded than the line has"
        hint = "Give at most the amount of the line."
        found.append(Diagnostic(code="F045", message=message, span=discard.span, hint=hint))
        return None
    return lost


def _quantity_grams(
    grams: Range | None, millilitres: Range | None, ware: Ware | None, shelf: Shelf
) -> Range | None:
    if grams is not None or millilitres is None or ware is None:
        return grams
    per_ml = ware.ingredient.weight_per_ml(flour_cup=shelf.flour_cup)
    return None if per_ml is None else millilitres.scaled(per_ml)


def _share(text: str) -> Fraction | None:
    words = {"all": Fraction(1), "half": Fraction(1, 2)}
    folded = text.strip().casefold()
    if folded in words:
        return words[folded]
    percent = _SHARE.search(folded)
    plain = folded[: percent.start()] if percent else folded
    read = read_number(plain)
    if read is None or read[1] != len(plain) or not (percent or _FRACTION_SIGN.search(plain)):
        return None
    share = read[0].mid / (100 if percent else 1)
    return share if 0 <= share <= 1 else None
