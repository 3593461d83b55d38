"""The water's temperature for a wanted dough temperature: a small table for rooms from 18 to 26 °C (64 to 79 °F).

All figures are the maker's: the wanted temperature and what mixing adds. Where one is missing, that is said. Flour
and preferment are taken to be as warm as the room, which the table says too.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from generator.formula.dough_temperature import water_note, water_temperature
from generator.formula.equipment import EVERY, Equipment, equipment_of_name, is_yeast_dough, mixing_of
from generator.formula.model import Formula
from generator.measure.number import Range
from generator.measure.temperature import difference_to_celsius, nearest, to_celsius, to_fahrenheit
from generator.present.heats import degrees
from generator.present.sheet_views import WaterRow, WaterView
from generator.settings import Degrees, Scale, Settings
from generator.wording.forms import small
from generator.wording.speech import later, say
from generator.wording.vocabulary import said

ROOMS: dict[Scale, tuple[int, ...]] = {"F": (64, 68, 72, 75, 79), "C": (18, 20, 22, 24, 26)}

_NAMES: dict[Equipment, str] = {
    "machine": later("bread machine"),
    "mixer": later("mixer"),
    "hand": later("by hand"),
}
_CELLS = {"below freezing": later("below freezing: ice"), "too warm": later("too warm for yeast")}
_METHOD = later("the method")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Column:
    """A way, or a kind of mixing, with the degrees that it adds; None where nobody stated them."""

    title: str
    friction: Degrees | None


def wanted_temperature(formula: Formula, settings: Settings) -> Degrees | None:
    """What the recipe says, else the site; None where nobody says it, and for what is no dough with yeast in it."""
    if not is_yeast_dough(formula):
        return None
    own = formula.about.dough_temperature
    if own is not None:
        return Degrees(value=own.low, scale="F" if own.stated == "F" else "C")
    return settings.dough_temperature


def degrees_words(wanted: Degrees) -> str:
    """`78 °F (26 °C)`: as stated, the other scale rounded once."""
    convert = to_celsius if wanted.scale == "F" else to_fahrenheit
    other = Fraction(nearest(convert(wanted.value), 1))
    return f"{_scaled(wanted.value, wanted.scale)} ({_scaled(other, _other(wanted.scale))})"


def _scaled(value: Fraction, scale: Scale) -> str:
    return degrees(Range.exact(value), scale)


def water_view(formula: Formula, settings: Settings) -> WaterView | None:
    """The table; None where no dough temperature is wanted, or nothing in the dough is poured."""
    wanted = wanted_temperature(formula, settings)
    if wanted is None or not formula.totals.hydration_nominal:
        return None
    columns = tuple(_columns(formula, settings))
    known = tuple(each for each in columns if each.friction is not None)
    rows = tuple(_row(room, wanted, known, formula) for room in ROOMS[wanted.scale]) if known else ()
    return WaterView(
        wanted=degrees_words(wanted),
        columns=tuple(each.title for each in known),
        rows=rows,
        notes=tuple(_notes(wanted, columns, formula)),
    )


def stated_friction(equipment: Equipment, settings: Settings) -> Degrees | None:
    """What mixing adds by the maker's own measuring; None where it is not stated."""
    friction = settings.friction
    return {"machine": friction.machine, "mixer": friction.mixer, "hand": friction.hand}[equipment]


def water_words(room: int, equipment: Equipment, formula: Formula, settings: Settings) -> str:
    """The water for a room in the scale of the wanted dough; "" where the friction or the wanted one is missing."""
    wanted, friction = wanted_temperature(formula, settings), stated_friction(equipment, settings)
    if wanted is None or friction is None:
        return ""
    return _cell(Fraction(room), wanted, friction, formula)


def _columns(formula: Formula, settings: Settings) -> Iterator[_Column]:
    """One for each way that the maker wrote, then one for all other equipment whose friction is stated."""
    named = {way.name: equipment_of_name(way.name) for way in formula.ways if way.name}
    for name, equipment in named.items():
        friction = stated_friction(equipment, settings) if equipment else None
        yield _Column(title=_capital(said(name)), friction=friction)
    others = [each for each in _other_equipment(formula) if each not in named.values()]
    known = [each for each in others if stated_friction(each, settings) is not None]
    yield from (
        _Column(title=_capital(say(_NAMES[each])), friction=stated_friction(each, settings)) for each in known
    )
    if not named and not known:
        yield _Column(title=say(_METHOD), friction=None)


def _other_equipment(formula: Formula) -> tuple[Equipment, ...]:
    """What the dough may be mixed with beside the ways: a dough that is not kneaded asks for no machine."""
    if mixing_of(formula) is not None:
        return EVERY
    return () if any(way.name for way in formula.ways) else ("mixer", "hand")


def _row(room: int, wanted: Degrees, columns: tuple[_Column, ...], formula: Formula) -> WaterRow:
    cells = (_cell(Fraction(room), wanted, each.friction, formula) for each in columns if each.friction)
    return WaterRow(room=degrees_words(Degrees(value=Fraction(room), scale=wanted.scale)), cells=tuple(cells))


def _cell(room: Fraction, wanted: Degrees, friction: Degrees, formula: Formula) -> str:
    water = _water(room, wanted, friction, formula)
    note = water_note(water, degrees=wanted.scale)
    if note is not None:
        return say(_CELLS[note.kind])
    rounded = Degrees(value=Fraction(nearest(water, 1)), scale=wanted.scale)
    convert = to_celsius if wanted.scale == "F" else to_fahrenheit
    other = Fraction(nearest(convert(water), 1))
    return f"{_scaled(rounded.value, wanted.scale)} ({_scaled(other, _other(wanted.scale))})"


def _water(room: Fraction, wanted: Degrees, friction: Degrees, formula: Formula) -> Fraction:
    """In the scale of the wanted temperature; friction is a difference, and takes no 32."""
    return water_temperature(
        wanted=wanted.value,
        room=room,
        flour=room,
        friction=_difference(friction, wanted.scale),
        preferment=room if _preferment(formula) else None,
    )


def _difference(friction: Degrees, scale: Scale) -> Fraction:
    if friction.scale == scale:
        return friction.value
    return difference_to_celsius(friction.value) if scale == "C" else friction.value * Fraction(9, 5)


def _preferment(formula: Formula) -> bool:
    return formula.totals.prefermented_percent is not None


def _notes(wanted: Degrees, columns: tuple[_Column, ...], formula: Formula) -> Iterator[str]:
    known = tuple(each for each in columns if each.friction is not None)
    if known:
        as_warm = say("flour and preferment") if _preferment(formula) else say("flour")
        added = ", ".join(
            f"{small(each.title)} {_scaled(each.friction.value, each.friction.scale)}"
            for each in known
            if each.friction
        )
        yield (
            say(
                "Reckoned for {as_warm} as warm as the room, with what mixing adds by the maker’s own measuring: "
                "{added}. Measure your own dough and correct the water by it; eggs and butter from the refrigerator "
                "ask for warmer water.",
                as_warm=as_warm,
                added=added,
            )
        )
    found = {
        say(note.says)
        for room in ROOMS[wanted.scale]
        for each in known
        if each.friction
        for note in [water_note(_water(Fraction(room), wanted, each.friction, formula), degrees=wanted.scale)]
        if note is not None
    }
    yield from sorted(found)
    for each in columns:
        if each.friction is None:
            way = small(each.title)
            yield say(
                "How much mixing warms the dough is not stated for {way}, so no water temperature is given.",
                way=way,
            )


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _other(scale: Scale) -> Scale:
    return "C" if scale == "F" else "F"
