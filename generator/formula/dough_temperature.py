"""Water for a wanted dough temperature, and the friction of a mixer from a dough that was measured.

    water = n x wanted - (room + flour [+ preferment]) - friction,  n = 3, or 4 with a preferment

(San Francisco Baking Institute class notes). It holds in °F and in °C, if all its figures are in one scale. The
friction is a difference of temperatures: from °F to °C it takes 5/9 alone.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from typing import Literal

from generator.formula.note import COMMON_PRACTICE, Note
from generator.measure.number import Range
from generator.measure.temperature import to_celsius
from generator.wording.speech import later

Degrees = Literal["F", "C"]

FRICTION_F: Mapping[str, Range] = MappingProxyType(
    {
        "by hand": Range(Fraction(0), Fraction(8)),
        "stand mixer": Range(Fraction(14), Fraction(26)),
        "spiral mixer": Range(Fraction(24), Fraction(28)),
        "food processor": Range(Fraction(30), Fraction(45)),
        "bread machine": Range(Fraction(30), Fraction(45)),
    }
)
"""Friction in °F degrees to begin with; one's own measured dough is better than any table (from memory)."""

WANTED_F: Mapping[str, tuple[Range, str]] = MappingProxyType(
    {
        "most doughs": (Range(Fraction(78), Fraction(80)), "W. Gisslen, Professional Baking"),
        "slow doughs": (Range(Fraction(75), Fraction(78)), "from memory: J. Hamelman"),
        "rye doughs": (Range(Fraction(80), Fraction(85)), "from memory: J. Hamelman"),
        "laminated doughs": (Range(Fraction(68), Fraction(72)), "from memory"),
    }
)

_FREEZING = {"F": Fraction(32), "C": Fraction(0)}
_TOO_WARM = {"F": Fraction(122), "C": Fraction(50)}
# Melting a gram of ice takes as much heat as cooling a gram of water by 80 °C, or 144 °F, above its freezing point.
_ICE = {"F": Fraction(112), "C": Fraction(80)}


def water_temperature(
    *,
    wanted: Fraction,
    room: Fraction,
    flour: Fraction,
    friction: Fraction,
    preferment: Fraction | None = None,
) -> Fraction:
    """The water's temperature, in the scale of the others. `water_note` says where no tap gives it."""
    others = [room, flour] if preferment is None else [room, flour, preferment]
    return (len(others) + 1) * wanted - sum(others) - friction


def friction_factor(
    *,
    measured: Fraction,
    room: Fraction,
    flour: Fraction,
    water: Fraction,
    preferment: Fraction | None = None,
) -> Fraction:
    """What the mixing added, from the temperature that the dough came out with; below zero, something was misread."""
    others = [room, flour, water] if preferment is None else [room, flour, water, preferment]
    return len(others) * measured - sum(others)


def difference_to_fahrenheit(celsius_degrees: Fraction) -> Fraction:
    return celsius_degrees * Fraction(9, 5)


@dataclass(frozen=True, slots=True, kw_only=True)
class Chilled:
    """Grams of ice and of tap water; together they are the recipe's water."""

    ice: Fraction
    water: Fraction


def with_ice(water: Fraction, *, tap: Fraction, wanted: Fraction, degrees: Degrees) -> Chilled | None:
    """Ice = water x (tap - wanted) / (tap + 112 °F), or / (tap + 80 °C) (W. Gisslen, from memory).

    No ice where the tap is cold enough. None where ice alone cannot do it (wanted below freezing), where the
    tap is below freezing itself, and for no water.
    """
    freezing = _FREEZING[degrees]
    if water <= 0 or tap < freezing or wanted < freezing:
        return None
    ice = water * (tap - wanted) / (tap + _ICE[degrees]) if tap > wanted else Fraction(0)
    return Chilled(ice=ice, water=water - ice)


def water_note(water: Fraction, *, degrees: Degrees) -> Note | None:
    """What to know of a water temperature that no tap gives, or that yeast does not bear."""
    if water < _FREEZING[degrees]:
        says = later(
            "The water would have to be below freezing: use ice for a part of it, and chill the flour or let the "
            "dough come out warmer."
        )
        return Note(kind="below freezing", says=says, source=COMMON_PRACTICE)
    if water > _TOO_WARM[degrees]:
        says = later(
            "The water would be above 50 °C (122 °F), which harms yeast: warm the flour or the room, or let the "
            "dough come out cooler and rise longer."
        )
        return Note(kind="too warm", says=says, source=COMMON_PRACTICE)
    return None


def celsius_of(value: Fraction, degrees: Degrees) -> Fraction:
    """A temperature of either scale in °C, never a difference."""
    return to_celsius(value) if degrees == "F" else value
