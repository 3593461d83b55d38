"""A tin as a baker writes it becomes a shape with measures, or a fault that says what makes no sense.

    round 23 x 5 cm            round 9 in, 2 in deep           round 23 x 5 cm, base 20 cm
    square 8 x 8 x 2 in        rectangle 13 x 9 x 2 in         cylinder 6.75 x 4.8 in
    loaf 8 1/2 x 4 1/2 x 2.6 in, base 7 1/2 x 3 1/2 in         loaf 23 x 13 x 7 cm holds 1.9 L
    tube 10 x 4 in, hole 2 1/2 in      ring 24 x 7 cm, hole 8 cm      12-cup muffin 7 x 3 cm
    muffin 12 cups, each holds 100 ml  2 x round 20 x 4 cm

What a tin holds is of one tin, or of one muffin cup. Text after a comma that says nothing of these is a note.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache

from generator.formula.tins import Sides, TinShape
from generator.measure.length import LONGEST_TEXT, SHAPES, Length, read_tin
from generator.measure.quantity import read_quantity
from generator.measure.same import Same
from generator.measure.unit import SPOONS, Kind, Spoons

MOST_MM = Fraction(1000)
"""No home oven takes a tin of more than a metre."""

_SEPARATORS = (
    "[,;()]",
    r"\swith\s(?:an?\s)?",
    r"(?<!each)\s(?=(?:each\s)?(?:holds|holding)\b)",
    r"\s(?=hole\s(?:of\s|is\s)?[0-9])",
    r"\s(?=(?:base|(?:tapering|tapers|narrowing)\sto)\b)",
    r"(?:(?<=cup)|(?<=cups))\s(?=of\s[0-9])",
)
_SPLIT = re.compile("|".join(_SEPARATORS), re.IGNORECASE)
_BASE = re.compile(r"(?:base|(?:tapering|tapers|narrowing)\s+to)(?:\s+(?:of|is))?\s+(.+)", re.IGNORECASE)
_HOLE = re.compile(r"hole(?:\s+(?:of|is))?\s+(.+)|(.+?)\s+hole", re.IGNORECASE)
_DEEP = re.compile(r"(.+?)\s+(?:deep|high|tall)", re.IGNORECASE)
_HOLDS = re.compile(
    r"(?:each\s+)?(?:holds|holding|of)(?:\s+about)?\s+(.+?)(?:\s+(?:of\s+)?water)?(?:\s+each)?", re.IGNORECASE
)
_CUPS = re.compile(r"([0-9]{1,3})[\s-]?(?:cups?|holes?)", re.IGNORECASE)
_FIRST_COUNT = re.compile(r"([0-9]{1,3})(?:\s?[xX×]|[\s-]?(?:cups?|holes?))?", re.IGNORECASE)
_FILLER = re.compile(r"\b(?:tins?|pans?|mou?lds?|papers?|cases?|cake|trays?)\b", re.IGNORECASE)
_NEGATIVE = re.compile(r"(?:^|[\s(,;xX×])[-\u2212][0-9.]")
_SHAPE = re.compile(rf"\b(?:{'|'.join(SHAPES)})\b", re.IGNORECASE | re.ASCII)
_EXAMPLE = "Write the shape and its inside measures with a unit: “round 23 x 5 cm”, “loaf 9 x 5 x 3 in”."
_NEEDED: Mapping[str, int] = {
    "round": 1,
    "square": 1,
    "cylinder": 1,
    "tube": 1,
    "ring": 1,
    "rectangle": 2,
    "loaf": 2,
    "muffin": 0,
}


@dataclass(frozen=True, slots=True, kw_only=True)
class TinFault:
    """`kind` is one of: unreadable, negative, zero, range, too large, missing side, too many sides, uneven,
    base, hole, capacity, count."""

    kind: str
    message: str
    hint: str


Faults = tuple[TinFault, ...]


@dataclass(slots=True)
class _Draft:
    """What the clauses of a text have said so far."""

    kind: str
    count: int | None = None
    sides: tuple[Length, ...] = ()
    base: tuple[Length, ...] = ()
    hole: tuple[Length, ...] = ()
    deep: tuple[Length, ...] = ()
    capacity: Fraction | None = None
    faults: list[TinFault] = field(default_factory=list)

    @property
    def stated(self) -> str:
        return self.sides[0].stated if self.sides else ""


def read_shape(text: str, *, spoons: Spoons = SPOONS["us"]) -> tuple[TinShape | None, Faults]:
    """The tin that the whole text describes, or None with at least one fault. Never raises, whatever the text."""
    if len(text) > LONGEST_TEXT:
        return None, (_no_tin(),)
    return _read_shape(text, Same(spoons))


def _no_tin() -> TinFault:
    return _fault("unreadable", "this names no tin that can be measured", _EXAMPLE)


@lru_cache(maxsize=256)
def _read_shape(text: str, of: Same[Spoons]) -> tuple[TinShape | None, Faults]:
    """Its page, its other sizes and its sheet ask for the tin of a recipe, and many recipes have one tin."""
    words, spoons = " ".join(text.split()), of.thing
    if _SHAPE.search(words) is None:
        return None, (_no_tin(),)
    if _NEGATIVE.search(words):
        return None, (_fault("negative", "a side of a tin cannot be negative", _EXAMPLE),)
    head, *clauses = _SPLIT.split(words)
    tin = read_tin(head)
    if tin is None:
        return None, (
            _fault("unreadable", f"“{head.strip()}” does not read as a tin with its sides", _EXAMPLE),
        )
    draft = _Draft(kind=tin.shape, count=_first_count(head), sides=tin.sides)
    for clause in clauses:
        _understand(clause.strip(), draft, spoons)
    draft.faults.extend(_wrong_lengths(draft))
    shape = _shape(draft, words) if not draft.faults else None
    return shape, tuple(dict.fromkeys(draft.faults))


def _fault(kind: str, message: str, hint: str) -> TinFault:
    return TinFault(kind=kind, message=message, hint=hint)


def _first_count(head: str) -> int | None:
    """`2 round 9 x 2 in`, `2 x loaf tins …`, `12-cup muffin`, `muffin 12 cups`; None where no count is told."""
    shape = _SHAPE.search(head)
    if shape is None:
        return None
    for text, pattern in ((head[: shape.start()], _FIRST_COUNT), (head[shape.end() :], _CUPS)):
        found = pattern.fullmatch(_FILLER.sub(" ", text).strip(" -"))
        if found:
            return int(found[1])
    return None


def _understand(clause: str, draft: _Draft, spoons: Spoons) -> None:
    """One clause into the draft; what is no measure of a tin is a note, and says nothing."""
    for name, pattern in (("base", _BASE), ("hole", _HOLE), ("deep", _DEEP)):
        found = pattern.fullmatch(clause)
        if found and (name != "deep" or _sides(found[1], draft.stated)):
            words = next(each for each in found.groups() if each)
            _set_sides(draft, name, words)
            return
    if cups := _CUPS.fullmatch(clause):
        draft.count = int(cups[1])
    elif holds := _HOLDS.fullmatch(clause):
        _set_capacity(draft, holds[1], spoons)
    elif not draft.sides and (sides := _sides(clause, "")):
        draft.sides = sides


def _sides(text: str, unit: str) -> tuple[Length, ...]:
    """Numbers with x between them; `unit` is that of the tin, for numbers that have none."""
    tins = (read_tin(f"loaf {each}") for each in (text, f"{text} {unit}"))
    return next((tin.sides for tin in tins if tin is not None and tin.sides), ())


def _set_sides(draft: _Draft, name: str, words: str) -> None:
    sides = _sides(words, draft.stated)
    if not sides:
        draft.faults.append(_fault("unreadable", f"“{words}” is no measure of a tin", _EXAMPLE))
    elif name == "base":
        draft.base = sides
    elif name == "hole":
        draft.hole = sides
    else:
        draft.deep = sides


def _set_capacity(draft: _Draft, words: str, spoons: Spoons) -> None:
    """Millilitres, or grams of water, which are as many (water test, common practice)."""
    read = read_quantity(words, spoons=spoons)
    whole = read is not None and read[1] == len(words)
    kind = read[0].unit.kind if read and read[0].unit else None
    if read is None or not whole or kind not in (Kind.VOLUME, Kind.MASS) or read[0].amount.low <= 0:
        hint = "Write a volume above nothing: “holds 1.9 L”, “holds 8 cups”."
        draft.faults.append(_fault("capacity", f"“{words}” does not say what a tin holds", hint))
        return
    amount = read[0].millilitres() or read[0].grams()
    draft.capacity = amount.mid if amount else None


def _wrong_lengths(draft: _Draft) -> Iterator[TinFault]:
    if draft.count == 0:
        yield _fault("count", "there must be at least one tin", "Write how many there are, or leave it out.")
    if draft.count is None and draft.kind == "muffin":
        yield _fault("count", "a muffin tin needs the number of its cups", "Write “12-cup muffin 7 x 3 cm”.")
    for length in (*draft.sides, *draft.base, *draft.hole, *draft.deep):
        if not length.millimetres.is_exact:
            yield _fault(
                "range", "a tin has one size, not from one to another", "Write the size of your tin."
            )
        if length.millimetres.low <= 0:
            yield _fault("zero", "a side of a tin must be more than nothing", _EXAMPLE)
        if length.millimetres.high > MOST_MM:
            yield _fault(
                "too large", "a tin of more than 1 m fits in no oven", "Look at the unit: in, cm or mm?"
            )


def _shape(draft: _Draft, words: str) -> TinShape | None:
    """The drawn tin; None where a fault was found on the way, which is then in the draft."""
    top, depth = _top_and_depth(draft)
    base = _squared(draft, _centimetres(draft.base))
    hole = _centimetres(draft.hole)
    draft.faults.extend(_wrong_shape(draft, top, base, hole))
    if draft.faults:
        return None
    return TinShape(
        kind=draft.kind,
        words=words,
        stated=draft.stated,
        count=draft.count or 1,
        top=top,
        base=base,
        depth=depth,
        hole=hole[0] if hole else None,
        capacity=draft.capacity,
    )


def _centimetres(lengths: tuple[Length, ...]) -> Sides:
    return tuple(each.millimetres.low / 10 for each in lengths)


def _top_and_depth(draft: _Draft) -> tuple[Sides, Fraction | None]:
    """Which of the sides lie flat and which stands: bakeware names its depth last."""
    sides, deep = _centimetres(draft.sides), _centimetres(draft.deep)
    flat = 1 if draft.kind in ("round", "cylinder", "tube", "ring", "muffin") else 2
    if draft.kind == "square" and (len(sides) == 1 or (len(sides) == 2 and sides[0] != sides[1])):
        flat = 1
    top, standing = sides[:flat], (*sides[flat:], *deep)
    if len(standing) > 1:
        hint = "Write the flat sides first and the depth last."
        draft.faults.append(_fault("too many sides", f"a {draft.kind} tin has fewer sides", hint))
    return _squared(draft, top), standing[0] if standing else None


def _squared(draft: _Draft, sides: Sides) -> Sides:
    return sides * 2 if draft.kind == "square" and len(sides) == 1 else sides


def _wrong_shape(draft: _Draft, top: Sides, base: Sides, hole: Sides) -> Iterator[TinFault]:
    if len(top) < _NEEDED[draft.kind] and draft.capacity is None:
        missing = "its length and its width" if _NEEDED[draft.kind] == 2 else "its size"
        yield _fault("missing side", f"a {draft.kind} tin needs {missing}", _EXAMPLE)
    if draft.kind == "square" and len(set(top)) > 1:
        yield _fault("uneven", "the sides of a square tin differ", "Call it a rectangle, or mend a side.")
    if base and (len(base) != len(top) or any(b > t for b, t in zip(base, top, strict=True))):
        hint = "Give the base as many sides as the top, none of them longer."
        yield _fault("base", "the base does not fit under the top", hint)
    if draft.kind in ("ring", "tube") and not hole and draft.capacity is None:
        hint = "Add the hole across (“hole 8 cm”), or what the tin holds."
        yield _fault("missing side", f"a {draft.kind} tin needs its hole", hint)
    if hole and (
        draft.kind not in ("ring", "tube") or len(hole) > 1 or (top and hole[0] >= (base or top)[0])
    ):
        hint = "Only a ring or a tube has a hole, and it is narrower than the tin."
        yield _fault("hole", "the hole does not fit into the tin", hint)
