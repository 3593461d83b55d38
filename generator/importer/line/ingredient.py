"""Reads one ingredient line of an old text into a line that our own reader takes, or says what is unclear.

What is written is always read back by `formula/line.py`: amount, unit, item and preparation are what that reader
makes of it, never a second opinion of ours.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import replace

from generator.catalogue.names import fold, number_forms
from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.span import Span
from generator.formula.line import read_line
from generator.formula.lines import understand_line
from generator.formula.model import Line, Ware, Written
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenLine, WrittenPart
from generator.importer.line.amount_words import Amount, plain_amount
from generator.importer.line.choices import doubt_choice, split_choice
from generator.importer.line.known import hidden_allergens, known, without_cuts
from generator.importer.line.orders import in_usual_order
from generator.importer.line.settle import and_another, settled
from generator.importer.line.tidy import bare, mass_or_count
from generator.importer.line.work import PLACE, Work, written_of
from generator.importer.model import Doubt, ReadLine
from generator.measure.quantity import read_quantity
from generator.measure.unit import Kind

_OPTIONAL = re.compile(
    r"\s*,?\s*\(?\b(?:optional(?:ly)?|if you like|facultati[fv]o?|opcional|optioneel)\b\)?\s*:?\s*", re.I
)
_EACH = re.compile(
    r"\beach\s+(?:of\s+)?(?P<first>[^,&]+?)\s+(?:and|&)\s+(?P<second>[^,&]+?)(?P<rest>,.*)?$", re.I
)
_AND = re.compile(r"\s+(?:and|&)\s+", re.I)
_GIVES = re.compile(
    r"(?P<how>(?:(?:finely\s)?grated\s|fine(?:ly)?\s)?(?:juice|zest|rind|peel|juice and zest|zest and juice))\s+"
    r"(?:of|from)\s+(?P<rest>.+)",
    re.I,
)
_MORE = re.compile(
    r"(?<![,(])\s+((?:plus|\+|and)\s+(?:(?:extra|more|a little|some)\b|\d+\s*(?:tsp|tbsp)s?\b(?=\s+for\b)).*)$",
    re.I,
)
_COUNTED = re.compile(r"^\W*[(\[](\d{1,2})[)\]]\s+")
_STRAY = re.compile(r"\s+[^\w\s()\[\]{}%°\"“”'’!?.,;:*]+$|(?:<br\s?/?>)+$|\s*\.{2,}$")
_GAP_IN_NUMBER = re.compile(r"(?<![\d.,/])[1-9]\d? (?!000)\d{3}(?=\s?(?:g|gr|grams?|ml)\b)")
_WIDEST = 10
"""So many times its low end a range may reach before it is asked about."""
_MANY = 25
"""A count without a unit that is rather a weight whose unit stands elsewhere."""
_LIQUIDS = frozenset({"water", "dairy alternative", "drink", "juice"})


def read_ingredient(
    text: str,
    *,
    shelf: Shelf,
    number: int,
    part: str,
    optional: bool = False,
    made: Mapping[str, str] | None = None,
) -> tuple[tuple[ReadLine, ...], tuple[Doubt, ...]]:
    """The lines that one line of the source stands for (`2 tbsp each cinnamon and sugar` is two).

    `made` gives the maker's own recipes by the folded names that they go by.
    No line at all where it names no ingredient; the caller keeps its words then.
    """
    work = Work(shelf=shelf, number=number, part=part, optional=optional, made=made)
    plain = _STRAY.sub("", bare(text.replace("__", "\t")).rstrip(";")).rstrip()
    plain = (
        plain[:-1] if plain.endswith(".") and not plain.endswith(("oz.", "lb.", "tsp.", "tbsp.")) else plain
    )
    plain = _without_optional(plain, work)
    _ask_of_number(plain, work)
    _ask_of_count(plain, work)
    order = in_usual_order(plain, shelf)
    if order.moved:
        work.lean()
    work.note = order.note
    ordered = order.text
    amount = plain_amount(ordered, shelf=shelf)
    for question in amount.questions:
        work.ask(*question)
    return tuple(_each(amount, work)), tuple(work.doubts)


def _ask_of_count(text: str, work: Work) -> None:
    """`[3] large eggs` where no list is counted so: the number is an amount, and is asked about."""
    found = _COUNTED.match(text)
    if found and not any(map(str.isdigit, text[found.end() :])):
        message = f"“{text.strip()}” is taken to be {found[1]} of them"
        work.ask("I001", message, "Delete the number if it only counts the lines.")


def _ask_of_number(text: str, work: Work) -> None:
    """`1 400 g flour` is a thousand and more, or one thing of 400 g; `1 - 500 g` numbers a line, or is a range."""
    if gap := _GAP_IN_NUMBER.search(text):
        message = f"“{gap.group().strip()}” can be one number or two"
        work.ask("I001", message, "Write the grams in one number, or how many of which size.")
    read = read_quantity(text, spoons=work.shelf.spoons)
    if read and read[0].amount.low * _WIDEST < read[0].amount.high:
        message = f"“{read[0].text.strip()}” is a very wide range"
        work.ask("I001", message, "If the first number only counts the lines, delete it.")


def _without_optional(text: str, work: Work) -> str:
    found = _OPTIONAL.search(text)
    if found is None:
        return text
    work.optional = True
    head, tail = text[: found.start()], text[found.end() :]
    return (f"{head} {tail}" if not tail.startswith((",", ")")) else head + tail).strip(" ,")


def _each(amount: Amount, work: Work) -> list[ReadLine]:
    text = amount.text
    if two := and_another(text, work.shelf):
        return [line for one in two if (line := _single(one, amount, work))]
    pair = _EACH.search(text)
    if pair:
        before, rest = text[: pair.start()], pair["rest"] or ""
        names = (pair["first"], pair["second"])
        return [line for name in names if (line := _single(f"{before}{name}{rest}", amount, work))]
    if two := _two_without_amount(text, work):
        return [line for name in two if (line := _single(name, amount, work))]
    line = _single(_gives(text, work), amount, work)
    return [line] if line else []


def _two_without_amount(text: str, work: Work) -> tuple[str, ...]:
    """`Salt and pepper, to taste` is two things; `half and half` and `sugar and spice mix` are not."""
    if read_quantity(text, spoons=work.shelf.spoons):
        return ()
    head, comma, rest = text.partition(",")
    names = _AND.split(head)
    whole = known(head.strip(), work.shelf)
    if whole or len(names) != 2 or not all(known(each.strip(), work.shelf) for each in names):
        return ()
    return tuple(f"{each.strip()}{comma}{rest}" for each in names)


def _gives(text: str, work: Work) -> str:
    """`Juice of 1 lemon` is a lemon of which the juice is used."""
    found = _GIVES.fullmatch(text)
    if found is None or known(text.partition(",")[0], work.shelf):
        return text
    if read_quantity(found["rest"], spoons=work.shelf.spoons) is None:
        return text
    work.lean()
    head, comma, rest = found["rest"].partition(",")
    return f"{head}, {found['how'].lower()} only{comma}{rest}"


def _single(text: str, amount: Amount, work: Work) -> ReadLine | None:
    text = _MORE.sub(lambda found: f", {found[1]}", text)
    text = split_choice(text, work)
    text = settled(text, work.shelf)
    written, wrong = _read(text, work.shelf)
    if any(each.code in ("F002", "F004", "F006") for each in wrong) or not written.item:
        return None
    text, written = _cuts_behind(text, written, work)
    for each in wrong:
        if each.code == "F005":
            work.ask("I001", each.message, each.hint)
    ware = _ware(written, work.shelf)
    if re.match(r"or (?!to taste|as needed|more\b|less\b|so\b)", written.preparation, re.I):
        doubt_choice(written.preparation[3:], work)
    if ware is not None:
        _look_behind(written, ware, work)
    _ask_of_unit(written, ware, work)
    return _weighed(text, written, ware, amount, work)


def _read(text: str, shelf: Shelf) -> tuple[Written, tuple[Diagnostic, ...]]:
    place: Callable[[int, int], Span] = lambda start, end: PLACE  # noqa: E731
    return read_line(text, place, spoons=shelf.spoons)


def _ware(written: Written, shelf: Shelf) -> Ware | None:
    return known(written.item, shelf)


def _cuts_behind(text: str, written: Written, work: Work) -> tuple[str, Written]:
    """An item known once its words of cutting stand behind it, unless the cut changes what a cup of it weighs."""
    if known(written.item, work.shelf) or not mass_or_count(
        written.measures[0] if written.measures else None
    ):
        return text, written
    parted = without_cuts(written.item, work.shelf)
    if parted is None:
        return text, written
    name, cut = parted
    at = text.find(written.item)
    if at < 0:
        return text, written
    moved = f"{text[:at]}{name}, {cut}{text[at + len(written.item) :]}"
    work.lean()
    return moved, _read(moved, work.shelf)[0]


def _look_behind(written: Written, ware: Ware, work: Work) -> None:
    others = hidden_allergens(f"{written.preparation} {written.note}", ware, work.shelf)
    if others:
        named = " and ".join(f"“{each}”" for each in others)
        message = f"{named} stands beside “{written.item}” and is another allergen"
        work.ask("I003", message, "Name the ingredient in full, so that the label is right.")


def _ask_of_unit(written: Written, ware: Ware | None, work: Work) -> None:
    units = [each.unit.name for each in written.measures if each.unit]
    if written.measures and not units and written.measures[0].amount.high >= _MANY:
        many = written.measures[0].text.strip()
        work.ask("I001", f"“{many}” has no unit", "Write g or ml behind it, if it is not so many pieces.")
    group = ware.ingredient.group if ware else ""
    pours = ware is not None and (ware.ingredient.nominal_liquid or group in _LIQUIDS)
    sure = any(each.unit and each.unit.name in ("g", "kg", "ml", "l", "cup") for each in written.measures)
    if units == ["oz"] and pours:
        hint = "Write “fl oz” for a volume, or grams."
        work.ask("I004", "ounces of a liquid may be weight or volume, 8 % apart", hint)
    if "pint" in units and group in ("fruit",) and not sure:
        hint = "Write grams: a dry pint of berries holds 551 ml, a fluid one 473 ml."
        work.ask("I004", "a pint of fruit may be dry or fluid", hint)


def _weighed(text: str, written: Written, ware: Ware | None, amount: Amount, work: Work) -> ReadLine | None:
    _, found = _understood(written, work, agree=True)
    codes = {each.code for each in found}
    agree = "F030" not in codes
    if not agree:
        message = next(each.message for each in found if each.code == "F030")
        work.ask("I005", message, "The first weight is taken; mend the wrong one and delete “agree: no”.")
    unweighed = "F031" in codes and ware is not None
    note = "; ".join(each for each in (amount.note, work.note) if each)
    shown = text
    if unweighed:
        said = ", ".join(each.text.strip() for each in written.measures)
        shown = written.item + (f", {written.preparation}" if written.preparation else "")
        note = "; ".join(each for each in (f"{said}, not weighed yet", written.note, note) if each)
        hint = f"Put the grams of {said} on your scale into the line, or its `cup:` into pantry.yaml."
        work.ask("I006", f"{said} of “{written.item}” cannot be weighed from a table", hint)
    note = "; ".join(each for each in (note, _weighed_choices(work)) if each)
    recipe = next((work.made[form] for form in number_forms(fold(written.item)) if form in work.made), "")
    if recipe:
        unweighed, shown = False, text
        message = f"“{written.item}” is taken to be made as in your recipe {recipe}"
        work.ask("I012", message, "Delete “recipe:” if it is bought.")
    elif ware is None:
        _ask_of_item(written, work)
    return ReadLine(
        line=work.number,
        part=work.part,
        text=shown,
        written=written,
        optional=work.optional,
        alternatives=work.alternatives,
        note=note,
        agree=agree,
        known=ware is not None or bool(recipe),
        allergens=ware.ingredient.allergens if ware else (),
        confidence=work.confidence,
        unweighed=unweighed,
        recipe=recipe,
    )


def _weighed_choices(work: Work) -> str:
    """Second choices that no table weighs stand by their names alone; their amounts become the line's note."""
    told: list[str] = []
    for at, other in enumerate(work.alternatives):
        written = written_of(other, work.shelf)
        if "F031" in {each.code for each in understood(written, shelf=work.shelf)[1]}:
            said = ", ".join(each.text.strip() for each in written.measures)
            told.append(f"or {said} {written.item}, not weighed yet")
            work.alternatives = (*work.alternatives[:at], written.item, *work.alternatives[at + 1 :])
            hint = f"Put the grams of {said} on your scale, and write them before its name."
            work.ask("I006", f"{said} of “{written.item}” cannot be weighed from a table", hint)
    return "; ".join(told)


def _ask_of_item(written: Written, work: Work) -> None:
    near = work.shelf.nearest(written.item)
    told = f"Near it: {', '.join(near)}. " if near else ""
    hint = f"{told}Add “{written.item}:” to pantry.yaml, then take the “# ?” off the line."
    work.ask("I007", f"“{written.item}” is not known, so the line is set aside", hint)


def _understood(written: Written, work: Work, *, agree: bool) -> tuple[Line, list[Diagnostic]]:
    return understood(written, shelf=work.shelf, agree=agree)


def understood(written: Written, *, shelf: Shelf, agree: bool = True) -> tuple[Line, list[Diagnostic]]:
    """The line weighed as in a formula, and what that finds."""
    found: list[Diagnostic] = []
    line = WrittenLine(
        written=written,
        recipe=None,
        pantry=None,
        optional=False,
        alternatives=(),
        note="",
        agree=agree,
        discard=None,
        span=PLACE,
    )
    part = WrittenPart(name="", span=PLACE, counts=True, preferment=None, lines=(line,))
    return understand_line(line, part, shelf=shelf, book={}, found=found), found


def read_back(text: str, shelf: Shelf) -> Written:
    return _read(text, shelf)[0]


def is_ingredient_like(text: str, shelf: Shelf) -> bool:
    """Whether a line begins with, or ends in, an amount and names something."""
    plain = bare(text)
    if not plain or len(plain) > 160:
        return False
    ordered = in_usual_order(plain, shelf).text
    amount = plain_amount(ordered, shelf=shelf)
    written, wrong = _read(settled(amount.text, shelf), shelf)
    if any(each.code == "F002" for each in wrong) or not written.item:
        return False
    if written.measures and (written.measures[0].unit is not None or known(written.item, shelf)):
        return len(written.item.split()) <= 8
    if amount.questions and known(written.item, shelf) is not None:
        return True
    return bool(written.words) and (known(written.item, shelf) is not None or written.words.startswith("a "))


def has_unit(line: ReadLine) -> bool:
    return any(each.unit is not None and each.unit.kind is not Kind.COUNT for each in line.written.measures)


def renumbered(line: ReadLine, part: str) -> ReadLine:
    return replace(line, part=part)
