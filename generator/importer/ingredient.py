"""Reads one ingredient line of an old text into a line that our own reader takes, or says what is unclear.

What is written is always read back by `formula/line.py`: amount, unit, item and preparation are what that reader
makes of it, never a second opinion of ours.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace

from generator.catalogue.names import fold, number_forms
from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.span import Span
from generator.formula.line import read_line
from generator.formula.lines import understand_line
from generator.formula.model import Line, Ware, Written
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenLine, WrittenPart
from generator.importer.amount_words import Amount, plain_amount
from generator.importer.known import hidden_allergens, known, without_cuts
from generator.importer.model import Confidence, Doubt, ReadLine
from generator.importer.tidy import bare, in_order, mass_or_count, one_line, starts_with_amount
from generator.measure.quantity import read_quantity
from generator.measure.unit import Kind

_OPTIONAL = re.compile(
    r"\s*,?\s*\(?\b(?:optional(?:ly)?|if you like|facultati[fv]o?|opcional|optioneel)\b\)?\s*:?\s*", re.I
)
_OR = re.compile(r"\s+(?:or|oder|ou|oppure)\s+", re.I)
_OR_BRACKET = re.compile(r"\s*\(or\s+([^()]+)\)", re.I)
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
_DASH_NOTE = re.compile(r"\s+[–—-]\s+([^\d\s].*)$")
_LIQUIDS = frozenset({"water", "dairy alternative", "drink", "juice"})
_PLACE = Span(path="", line=1, column=1, end_line=1, end_column=2)


@dataclass(slots=True)
class _Work:
    """The state while one line is read."""

    shelf: Shelf
    number: int
    part: str
    doubts: list[Doubt] = field(default_factory=list)
    confidence: Confidence = Confidence.SURE
    optional: bool = False
    note: str = ""
    alternatives: tuple[str, ...] = ()
    made: Mapping[str, str] = field(default_factory=dict)

    def ask(self, code: str, message: str, hint: str) -> None:
        self.doubts.append(Doubt(code=code, message=message, hint=hint, line=self.number))
        self.confidence = Confidence.DOUBTFUL

    def lean(self) -> None:
        if self.confidence is Confidence.SURE:
            self.confidence = Confidence.LIKELY


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
    work = _Work(shelf=shelf, number=number, part=part, optional=optional, made=made or {})
    plain = bare(text).rstrip(";").rstrip()
    plain = (
        plain[:-1] if plain.endswith(".") and not plain.endswith(("oz.", "lb.", "tsp.", "tbsp.")) else plain
    )
    plain = _without_optional(plain, work)
    plain = _note_behind(plain, work)
    ordered, moved = in_order(plain, spoons=shelf.spoons)
    if moved:
        work.lean()
    amount = plain_amount(ordered, shelf=shelf)
    for question in amount.questions:
        work.ask(*question)
    return tuple(_each(amount, work)), tuple(work.doubts)


def _note_behind(text: str, work: _Work) -> str:
    """`33 g egg white – the one left over`: words behind a dash are the line's note."""
    found = _DASH_NOTE.search(text)
    if found is None or not starts_with_amount(text, spoons=work.shelf.spoons):
        return text
    work.note = found[1].strip()
    return text[: found.start()]


def _without_optional(text: str, work: _Work) -> str:
    found = _OPTIONAL.search(text)
    if found is None:
        return text
    work.optional = True
    head, tail = text[: found.start()], text[found.end() :]
    return (f"{head} {tail}" if not tail.startswith((",", ")")) else head + tail).strip(" ,")


def _each(amount: Amount, work: _Work) -> list[ReadLine]:
    text = amount.text
    pair = _EACH.search(text)
    if pair:
        before, rest = text[: pair.start()], pair["rest"] or ""
        names = (pair["first"], pair["second"])
        return [line for name in names if (line := _single(f"{before}{name}{rest}", amount, work))]
    if two := _two_without_amount(text, work):
        return [line for name in two if (line := _single(name, amount, work))]
    line = _single(_gives(text, work), amount, work)
    return [line] if line else []


def _two_without_amount(text: str, work: _Work) -> tuple[str, ...]:
    """`Salt and pepper, to taste` is two things; `half and half` and `sugar and spice mix` are not."""
    if read_quantity(text, spoons=work.shelf.spoons):
        return ()
    head, comma, rest = text.partition(",")
    names = _AND.split(head)
    whole = known(head.strip(), work.shelf)
    if whole or len(names) != 2 or not all(known(each.strip(), work.shelf) for each in names):
        return ()
    return tuple(f"{each.strip()}{comma}{rest}" for each in names)


def _gives(text: str, work: _Work) -> str:
    """`Juice of 1 lemon` is a lemon of which the juice is used."""
    found = _GIVES.fullmatch(text)
    if found is None or known(text.partition(",")[0], work.shelf):
        return text
    if read_quantity(found["rest"], spoons=work.shelf.spoons) is None:
        return text
    work.lean()
    head, comma, rest = found["rest"].partition(",")
    return f"{head}, {found['how'].lower()} only{comma}{rest}"


def _single(text: str, amount: Amount, work: _Work) -> ReadLine | None:
    text = _MORE.sub(lambda found: f", {found[1]}", text)
    text = _split_choice(text, work)
    written, wrong = _read(text, work.shelf)
    if any(each.code in ("F002", "F004", "F006") for each in wrong) or not written.item:
        return None
    text, written = _cuts_behind(text, written, work)
    for each in wrong:
        if each.code == "F005":
            work.ask("I001", each.message, each.hint)
    ware = _ware(written, work.shelf)
    if written.preparation.casefold().startswith("or "):
        _doubt_choice(written.preparation[3:], work)
    if ware is not None:
        _look_behind(written, ware, work)
    _ask_of_unit(written, ware, work)
    return _weighed(text, written, ware, amount, work)


def _read(text: str, shelf: Shelf) -> tuple[Written, tuple[Diagnostic, ...]]:
    place: Callable[[int, int], Span] = lambda start, end: _PLACE  # noqa: E731
    return read_line(text, place, spoons=shelf.spoons)


def _ware(written: Written, shelf: Shelf) -> Ware | None:
    return known(written.item, shelf)


def _split_choice(text: str, work: _Work) -> str:
    """The line without its second choice, which becomes an alternative of its own."""
    bracket = _OR_BRACKET.search(text)
    if bracket:
        first = text[: bracket.start()] + text[bracket.end() :]
        work.alternatives = (_alternative(bracket[1], first, work),)
        return one_line(first)
    depth_free = re.sub(r"\([^()]*\)", lambda each: " " * len(each.group()), text)
    found = _OR.search(depth_free)
    if found is None:
        return text
    tail = text[found.end() :]
    apart = (
        text[: found.start()].endswith(",") and known(tail.partition(",")[0].strip(), work.shelf) is not None
    )
    measured = read_quantity(tail, spoons=work.shelf.spoons) is not None and tail[:1] not in "aA"
    if not (apart or measured) and known(_read(text, work.shelf)[0].item, work.shelf):
        return text
    return _choice_in_words(text, found, work)


def _choice_in_words(text: str, found: "re.Match[str]", work: _Work) -> str:
    head, tail = text[: found.start()].rstrip(" ,"), text[found.end() :]
    own = read_quantity(tail, spoons=work.shelf.spoons)
    left = _read(head, work.shelf)[0]
    if own is None and not known(left.item, work.shelf):
        # “dark or milk chocolate”: the noun stands behind the second word alone.
        noun = tail.partition(",")[0].split()
        for most in range(1, len(noun)):
            shared = " ".join(noun[most:])
            if known(f"{left.item} {shared}", work.shelf):
                head, comma, rest = f"{head} {shared}", *tail.partition(",")[1:]
                work.alternatives = (" ".join(noun),)
                return one_line(f"{head}{comma}{rest}")
    name, comma, rest = tail.partition(",")
    if own is None:
        work.alternatives = (name.strip(),)
        _doubt_choice(name.strip(), work)
        return one_line(f"{head}{comma}{rest}")
    work.alternatives = (tail.strip(),)
    _doubt_choice(_read(tail, work.shelf)[0].item, work)
    return head.strip()


def _alternative(other: str, first: str, work: _Work) -> str:
    """`2 small` of `1 large (or 2 small) apples` is two small apples."""
    item = _read(one_line(first), work.shelf)[0].item
    read = _read(other, work.shelf)[0]
    if known(read.item, work.shelf) is None and read_quantity(f"{other} {item}", spoons=work.shelf.spoons):
        other = f"{other} {item}"
        read = _read(other, work.shelf)[0]
    _doubt_choice(read.item, work)
    return other


def _doubt_choice(item: str, work: _Work) -> None:
    if known(item, work.shelf) is None:
        message = f"the second choice “{item}” is not known"
        work.ask(
            "I002", message, "Name it as the catalogue does, or add it to pantry.yaml; mind its allergens."
        )


def _cuts_behind(text: str, written: Written, work: _Work) -> tuple[str, Written]:
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


def _look_behind(written: Written, ware: Ware, work: _Work) -> None:
    others = hidden_allergens(f"{written.preparation} {written.note}", ware, work.shelf)
    if others:
        named = " and ".join(f"“{each}”" for each in others)
        message = f"{named} stands beside “{written.item}” and is another allergen"
        work.ask("I003", message, "Name the ingredient in full, so that the label is right.")


def _ask_of_unit(written: Written, ware: Ware | None, work: _Work) -> None:
    units = [each.unit.name for each in written.measures if each.unit]
    group = ware.ingredient.group if ware else ""
    pours = ware is not None and (ware.ingredient.nominal_liquid or group in _LIQUIDS)
    sure = any(each.unit and each.unit.name in ("g", "kg", "ml", "l", "cup") for each in written.measures)
    if units == ["oz"] and pours:
        hint = "Write “fl oz” for a volume, or grams."
        work.ask("I004", "ounces of a liquid may be weight or volume, 8 % apart", hint)
    if "pint" in units and group in ("fruit",) and not sure:
        hint = "Write grams: a dry pint of berries holds 551 ml, a fluid one 473 ml."
        work.ask("I004", "a pint of fruit may be dry or fluid", hint)


def _weighed(text: str, written: Written, ware: Ware | None, amount: Amount, work: _Work) -> ReadLine | None:
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


def _ask_of_item(written: Written, work: _Work) -> None:
    near = work.shelf.nearest(written.item)
    told = f"Near it: {', '.join(near)}. " if near else ""
    hint = f"{told}Add “{written.item}:” to pantry.yaml, then take the “# ?” off the line."
    work.ask("I007", f"“{written.item}” is not known, so the line is set aside", hint)


def _understood(written: Written, work: _Work, *, agree: bool) -> tuple[Line, list[Diagnostic]]:
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
        span=_PLACE,
    )
    part = WrittenPart(name="", span=_PLACE, counts=True, preferment=None, lines=(line,))
    return understand_line(line, part, shelf=shelf, book={}, found=found), found


def read_back(text: str, shelf: Shelf) -> Written:
    return _read(text, shelf)[0]


def is_ingredient_like(text: str, shelf: Shelf) -> bool:
    """Whether a line begins with, or ends in, an amount and names something."""
    plain = bare(text)
    if not plain or len(plain) > 160:
        return False
    if starts_with_amount(plain, spoons=shelf.spoons):
        plain = _DASH_NOTE.sub("", plain)
    ordered, _ = in_order(plain, spoons=shelf.spoons)
    amount = plain_amount(ordered, shelf=shelf)
    written, wrong = _read(amount.text, shelf)
    if any(each.code == "F002" for each in wrong) or not written.item:
        return False
    if written.measures and (written.measures[0].unit is not None or known(written.item, shelf)):
        return len(written.item.split()) <= 8
    return bool(written.words) and (known(written.item, shelf) is not None or written.words.startswith("a "))


def has_unit(line: ReadLine) -> bool:
    return any(each.unit is not None and each.unit.kind is not Kind.COUNT for each in line.written.measures)


def renumbered(line: ReadLine, part: str) -> ReadLine:
    return replace(line, part=part)
