"""An ingredient line read by its shape: what in it is a measure, what a food that is known, and what is neither.

It knows no layout. Whatever parts the fields of a line (bars, dots, brackets, dashes, wide gaps, arrows), the line
is cut there and where a measure begins or ends; a field that is a known food by its whole words is the item. A food
is never found inside a longer name, because moonberry flour is not flour.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from generator.formula.shelf import Shelf
from generator.importer.line.known import known, without_cuts
from generator.importer.line.preparations import is_preparation
from generator.importer.line.tidy import SIGNS, is_measures, without_around
from generator.importer.line.unit_words import in_our_units, without_of
from generator.measure.number import read_number
from generator.measure.quantity import Quantity, read_quantity

_BETWEEN = re.compile(
    r"\s*(?:[-=~]+>|[|\t;=@→⇒·•●◦▪*<>_†#^!?\"“”«»]|~+|\.{2,}|…|:(?=\s|$|[^\d/])|,(?!\d)|(?<!\d),|(?:\.\s){2,}\.?|[-–—]{2,}"
    r"|(?<=\s)[-–—+/&xX×](?=\s|$)|(?:(?<=^)|(?<=[\w)\]}]))[–—](?=[^\W\d])|\s{2,}|[()\[\]{}])+\s*"
)
_LOOSE_WORD = re.compile(r"^(?:of|the|and|or|a|an|x|plus|ca|approx)\b\.?\s*$", re.I)
_SIZE = re.compile(
    r"^(?P<how>(?:extra[\s-])?large|medium|small|packed|heaped|heaping|level|scant|rounded)\s+(?=\S)", re.I
)
_SIZE_ALONE = re.compile(
    r"(?:(?:extra[\s-])?large|medium|small|packed|heaped|heaping|level|scant|rounded)", re.I
)
_OF = re.compile(r"^of\s+(?:the\s+)?", re.I)
_SIZED_COUNT = re.compile(r"^\d{1,2}\s+(?:(?:extra[\s-])?large|medium|small)?\s*\(", re.I)
_NUMBER_AHEAD = re.compile(rf"(?<![\w.,/⁄])(?=[\d{SIGNS}])")
_MOST = 16
"""Fields of one line, at the most."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """`kind` is "measure", "count" (a number alone), "size", "food", "cut" or "words"."""

    kind: str
    text: str


def by_fields(text: str, shelf: Shelf) -> str:
    """The line with its measure first, its food, and the rest behind a comma; "" where that is not plain."""
    fields = list(fields_of(text, shelf))
    if not 2 <= len(fields) <= _MOST:
        return ""
    foods = [each for each in fields if each.kind == "food"]
    measures = [each.text for each in fields if each.kind == "measure"]
    counts = [each.text for each in fields if each.kind == "count"]
    if not foods and sum(each.kind == "words" for each in fields) == 1:
        # Nobody knows it, but it is plain what it is called.
        foods = [each for each in fields if each.kind == "words" and not any(map(str.isdigit, each.text))]
        fields = [each for each in fields if each.kind != "words"]
    if len(foods) != 1:
        return ""
    if not measures:
        measures, counts = counts, []
    elif len(counts) == 1 and fields[0].text == counts[0] and _SIZED_COUNT.match(text):
        # `2 medium (350 g) | oranges`: so many, and what they weigh.
        measures, counts = [*counts, *measures], []
    if len(measures) not in (1, 2, 3) or counts or _contradict(measures, shelf):
        return ""
    rest = [each.text for each in fields if each.kind in ("cut", "words")]
    sizes = [each.text for each in fields if each.kind == "size"]
    first, *more = measures
    second = f" ({' / '.join(more)})" if more else ""
    size = "".join(f" {each}" for each in sizes)
    return f"{first}{second}{size} {', '.join([foods[0].text, *rest])}"


def fields_of(text: str, shelf: Shelf) -> Iterator[Field]:
    """The fields of a line in their order."""
    for piece in _BETWEEN.split(text):
        if (
            piece
            and (piece := piece.strip())
            and not _LOOSE_WORD.match(piece)
            and any(map(str.isalnum, piece))
        ):
            yield from _parted(piece, shelf)


def _parted(piece: str, shelf: Shelf) -> Iterator[Field]:
    """A piece, cut where a measure begins and ends."""
    if whole := _whole(piece, shelf):
        yield whole
        return
    head, rest = leading_measure(piece, shelf)
    if head and rest:
        yield Field(kind="measure" if _has_unit(head, shelf) else "count", text=head)
        yield from _parted(_OF.sub("", without_of(f" {rest}").strip()), shelf)
        return
    for found in list(_NUMBER_AHEAD.finditer(piece))[:4]:
        before, tail = piece[: found.start()].strip(" ,:-–—"), piece[found.start() :]
        measure, after = leading_measure(tail, shelf)
        if before and measure and _has_unit(measure, shelf) and _whole(before, shelf):
            yield from _parted(before, shelf)
            yield Field(kind="measure", text=measure)
            if after.strip():
                yield from _parted(after.strip(), shelf)
            return
    yield Field(kind="words", text=piece)


def _whole(piece: str, shelf: Shelf) -> Field | None:
    """A piece that is one thing altogether."""
    if known(piece, shelf):
        return Field(kind="food", text=piece)
    plain = without_around(piece)[0]
    if is_measures(plain, spoons=shelf.spoons):
        return Field(kind="measure" if _has_unit(plain, shelf) else "count", text=plain)
    head, rest = leading_measure(plain, shelf)
    if head and not rest:
        return Field(kind="measure" if _has_unit(head, shelf) else "count", text=head)
    if _SIZE_ALONE.fullmatch(piece):
        return Field(kind="size", text=piece)
    sized = _SIZE.match(piece)
    if sized and known(piece[sized.end() :], shelf):
        return Field(kind="food", text=piece)
    if is_preparation(piece):
        return Field(kind="cut", text=piece)
    if without_cuts(piece, shelf):
        return Field(kind="food", text=piece)
    return None


def leading_measure(text: str, shelf: Shelf) -> tuple[str, str]:
    """The measure that a text begins with, in our units, and what stands behind it."""
    text = without_around(text)[0]
    read = read_quantity(text, spoons=shelf.spoons)
    number = read_number(text)
    if number is not None:
        start = number[1] + len(text[number[1] :]) - len(text[number[1] :].lstrip())
        foreign = in_our_units(text, start)
        if foreign is not None and (read is None or read[0].unit is None or foreign[2] > read[1]):
            fill, unit, end = foreign
            return f"{text[: number[1]].strip()} {fill + ' ' if fill else ''}{unit}", text[end:].strip()
    if read is None or read[0].amount.low <= 0 or not text[:1].strip():
        return "", text
    return text[: read[1]].strip(), text[read[1] :].strip()


def _has_unit(text: str, shelf: Shelf) -> bool:
    read = read_quantity(text, spoons=shelf.spoons)
    return read is not None and read[0].unit is not None


def _contradict(measures: list[str], shelf: Shelf) -> bool:
    """Two measures in one unit that differ are no two ways to say the same."""
    said: dict[str, Quantity] = {}
    for each in measures:
        read = read_quantity(each, spoons=shelf.spoons)
        if read is None:
            return True
        name = read[0].unit.name if read[0].unit else ""
        if name in said and said[name].amount != read[0].amount:
            return True
        said[name] = read[0]
    return False
