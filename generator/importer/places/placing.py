"""The state while the lines of a text are placed, and what needs no guess: hints of its form, units of columns."""

import re

from generator.formula.shelf import Shelf
from generator.importer.line.known import known
from generator.importer.model import Confidence, Placed, SourceLine
from generator.importer.places.line_looks import CAUTION, COMMON, NUMBERED, goes_on
from generator.importer.places.words import VERBS, plain

_WRAPPED = 38
"""Letters of a line that may have been wrapped."""
_COLUMN_UNIT = re.compile(
    r"(?:.*[(\[]\s*(?P<in>g|grams?|ml|kg|oz)\s*[)\]]|(?:weight|amount|quantity|in)?\s*(?P<of>g|grams?|ml|oz|ounces?))\.?",
    re.I,
)


class State:
    """What the lines so far have shown; it changes with every line."""

    def __init__(self, shelf: Shelf) -> None:
        self.shelf = shelf
        self.out: list[Placed] = []
        self.section = "top"
        self.titled = self.led = self.bare_number = False
        self.blank = True
        self.ingredients = self.steps = self.ways = self.numbers = 0
        self.columns: tuple[str, ...] = ()


def put(state: State, line: SourceLine, role: str, value: str = "", *, sure: bool = True) -> None:
    confidence = Confidence.SURE if sure else Confidence.LIKELY
    state.out.append(Placed(line=line, role=role, value=value, confidence=confidence))
    state.ingredients += role == "ingredient"
    state.steps += role == "step"


def put_title(line: SourceLine, words: str, sure: bool, state: State) -> None:
    """The first piece of `Honey loaf | soft | no mixer`, out of capitals; the others are kept as a note."""
    first, *others = re.split(r"\s[|•·]\s", words)
    first = first.strip(" !")
    put(state, line, "title", first.capitalize() if first.isupper() else first, sure=sure)
    if others:
        put(state, line, "note", " | ".join(others))


def continues(line: SourceLine, text: str, state: State) -> bool:
    """A line that goes on from the one above: it begins small, deeper than a list mark, and the last was cut."""
    last = state.out[-1] if state.out else None
    if last is None or last.role != "ingredient" or state.blank:
        return False
    indented = len(line.text) - len(line.text.lstrip()) > len(last.line.text) - len(last.line.text.lstrip())
    open_end = last.line.text.rstrip().endswith((",", "(", "and", "or", "plus")) or last.line.text.count(
        "("
    ) > last.line.text.count(")")
    cut = text[:1].islower() and (indented or open_end)
    deeper = line.text.startswith("  ") and indented
    return (cut or (deeper and len(last.line.text.strip()) >= _WRAPPED)) and (
        known(text.partition(",")[0], state.shelf) is None
    )


_HINTED = {"section-ingredients": "ingredients", "section-method": "method", "section-notes": "notes"}


_IN_FIELDS = frozenset({"credit", "chapter", "link"})
"""Hints whose text has fields, parted by tabs."""


def hinted(line: SourceLine, text: str, state: State) -> None:
    """What the form of the source says of a line needs no guess."""
    if line.hint in _HINTED:
        state.section = _HINTED[line.hint]
        put(state, line, "heading")
        return
    state.titled = state.titled or line.hint == "title"
    state.led = state.led or line.hint == "lead"
    if line.hint == "step" and (caution := CAUTION.match(text)):
        put(state, line, "caution", caution["rest"])
        return
    value = plain(text) if line.hint == "part" else line.text if line.hint in _IN_FIELDS else text
    if line.hint == "way" and COMMON.match(text):
        value = ""
    put(state, line, line.hint, value)


def column_units(text: str) -> tuple[str, ...]:
    """The unit of each column of a row of headings such as `Ingredient | Weight (g)`; none where it is none."""
    cells = [each.strip() for each in text.split("|")]
    if len(cells) < 2 or any(map(str.isdigit, text)):
        return ()
    found = tuple(_COLUMN_UNIT.fullmatch(each) for each in cells)
    units = tuple((each["in"] or each["of"]).lower() if each else "" for each in found)
    return units if any(units) and not all(units) else ()


def with_units(text: str, columns: tuple[str, ...]) -> str:
    """A row with the unit of its column behind every bare number."""
    cells = [each.strip() for each in text.split("|")]
    if not columns or len(cells) > len(columns):
        return text
    told = (
        f"{cell} {unit}" if unit and re.fullmatch(r"\d+(?:[.,]\d+)?", cell) else cell
        for cell, unit in zip(cells, columns, strict=False)
    )
    return " | ".join(told)


def goes_on_from(text: str, state: State) -> bool:
    """A step wrapped over several lines: no blank between, no number or mark of its own."""
    last = state.out[-1] if state.out else None
    if last is None or last.role not in ("step", "caution") or state.blank or state.bare_number:
        return False
    return goes_on(text, last.line.text)


def ends_method(text: str, bared: str, state: State) -> bool:
    """Words of farewell after the last step, in a method whose steps are numbered."""
    numbered = [each for each in state.out if each.role == "step" and NUMBERED.match(each.line.text)]
    first = re.sub(r"\W", "", bared.split(" ")[0]).casefold()
    return bool(numbered) and not NUMBERED.match(text) and first not in VERBS
