"""The tins that many kitchens have, to offer beside a recipe: usual household sizes (common practice, no source).

A size has a metric and an inch twin that are sold for each other and are not equal (20 cm and 8 in are 1.6 %
apart), so a recipe in inches is compared with inches and one in centimetres with centimetres.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cache, lru_cache
from types import MappingProxyType

from generator.formula.tin_text import read_shape
from generator.formula.tins import By, TinShape, factor_between
from generator.measure.same import Same


@dataclass(frozen=True, slots=True, kw_only=True)
class UsualTin:
    """Both names are texts that `read_shape` reads."""

    metric: str
    inches: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """`name` is in the unit of the recipe's own tin, `other_name` the twin in the other one, or ""."""

    name: str
    other_name: str
    shape: TinShape
    factor: Fraction
    by: By


def _tin(metric: str, inches: str) -> UsualTin:
    return UsualTin(metric=metric, inches=inches)


_CAKE = (
    _tin("round 15 cm", "round 6 in"),
    _tin("round 18 cm", "round 7 in"),
    _tin("round 20 cm", "round 8 in"),
    _tin("round 23 cm", "round 9 in"),
    _tin("round 25 cm", "round 10 in"),
    _tin("square 20 cm", "square 8 in"),
    _tin("square 23 cm", "square 9 in"),
    _tin("rectangle 33 x 23 cm", "rectangle 13 x 9 in"),
)
_LOAF = (
    _tin("loaf 22 x 11 x 6 cm", "loaf 8 1/2 x 4 1/2 x 2 1/2 in"),
    _tin("loaf 23 x 13 x 7 cm", "loaf 9 x 5 x 3 in"),
    _tin("loaf 33 x 10 x 10 cm", "loaf 13 x 4 x 4 in"),
)
_RING = (
    _tin("ring 24 x 7 cm, hole 8 cm", "ring 9 1/2 x 2 3/4 in, hole 3 1/4 in"),
    _tin("tube 25 x 10 cm, hole 6 cm", "tube 10 x 4 in, hole 2 1/2 in"),
)
_CYLINDER = (
    _tin("cylinder 13.4 x 9.5 cm", "cylinder 5 1/4 x 3 3/4 in"),
    _tin("cylinder 17 x 12 cm", "cylinder 6 3/4 x 4 3/4 in"),
)
USUAL_TINS: Mapping[str, tuple[UsualTin, ...]] = MappingProxyType(
    {
        **dict.fromkeys(("round", "square", "rectangle"), _CAKE),
        "loaf": _LOAF,
        **dict.fromkeys(("ring", "tube"), _RING),
        "cylinder": _CYLINDER,
    }
)
"""Families by the kind of tin: tins of one family take the same bake."""

_FLAT = frozenset({"round", "square", "rectangle"})
_MUFFIN_CUPS = (6, 12, 24)
LEAST, MOST = Fraction(1, 3), Fraction(3)
"""A tin that takes more or less than this is another bake."""


def offers(tin: TinShape) -> tuple[Offer, ...]:
    """The usual tins for a recipe in `tin`, as many of them as it takes, in the order of the table.

    Flat tins are compared by depth, for their sizes are sold in several depths; all others by fill where the
    recipe's tin has a volume. A tin equal to the recipe's own is left out. Empty where nothing can be compared.
    """
    return _offers(Same(tin))


@lru_cache(maxsize=256)
def _offers(of: Same[TinShape]) -> tuple[Offer, ...]:
    tin = of.thing
    if tin.kind == "muffin":
        return _muffin_offers(tin)
    metric = tin.stated != "in"
    found = (_offer(tin, usual, metric=metric) for usual in USUAL_TINS.get(tin.kind, ()))
    return tuple(each for each in found if each is not None)


def _offer(tin: TinShape, usual: UsualTin, *, metric: bool) -> Offer | None:
    names = (usual.metric, usual.inches) if metric else (usual.inches, usual.metric)
    one = _read(names[0])
    by: By = "depth" if tin.kind in _FLAT or tin.volume is None else "fill"
    shape = None if one is None else replace(one, count=tin.count, words=_several(names[0], tin.count))
    factor = None if shape is None else factor_between(tin, shape, by=by)
    if shape is None or factor is None or factor == 1 or not LEAST <= factor <= MOST:
        return None
    return Offer(
        name=shape.words, other_name=_several(names[1], tin.count), shape=shape, factor=factor, by=by
    )


@cache
def _read(name: str) -> TinShape | None:
    return read_shape(name)[0]


def _several(name: str, count: int) -> str:
    return name if count == 1 else f"{count} x {name}"


def _muffin_offers(tin: TinShape) -> tuple[Offer, ...]:
    """More or fewer cups of the same size."""
    found = []
    for cups in _MUFFIN_CUPS:
        shape = replace(tin, count=cups, words=f"muffin {cups} cups")
        factor = Fraction(cups, tin.count)
        if factor != 1 and LEAST <= factor <= MOST:
            found.append(Offer(name=shape.words, other_name="", shape=shape, factor=factor, by="fill"))
    return tuple(found)
