"""The same dough with equipment that the maker wrote no way for, derived from the formula and the written method.

Order, load and look are common practice without a published source, and it says so. Minutes of mixing are never
given: no figure for them has a source, and a dough shows when it is ready.
"""

from collections.abc import Iterator
from fractions import Fraction

from generator.formula.equipment import (
    EVERY,
    Equipment,
    Mixing,
    Place,
    equipment_of_name,
    is_baked_dough,
    is_yeast_dough,
    mixing_of,
    written_for,
)
from generator.formula.machine import Load, Loaded, loaded
from generator.formula.model import Formula
from generator.present.bench_views import EquipmentEntry, EquipmentLayer, EquipmentView
from generator.present.dough_water import (
    ROOMS,
    degrees_words,
    stated_friction,
    wanted_temperature,
    water_words,
)
from generator.present.durations import minutes_words
from generator.present.machine import (
    LOOK,
    ORDERS,
    TITLES,
    YEAST_GOES,
    pan_words,
    rest_words,
    stated_machine,
    timer_words,
)
from generator.settings import Degrees, Settings
from generator.wording.forms import all_of
from generator.wording.speech import later, say
from generator.wording.vocabulary import said

_TITLES: dict[Equipment, str] = {
    "machine": later("Bread machine"),
    "mixer": later("Stand mixer"),
    "hand": later("By hand"),
}
_SPOKEN: dict[Equipment, str] = {
    "machine": later("for a bread machine"),
    "mixer": later("for a mixer"),
    "hand": later("by hand"),
}
_ROOM_INDEX = 2
"""The middle of the rooms that the table of water has: 72 °F, or 22 °C."""

_WINDOW = later(
    "A dough is ready when it is smooth and a piece of it stretches thin enough to let light through "
    "before it tears. A dough with much rye or whole grain tears sooner: it is ready when it is smooth and "
    "holds together."
)
_MIX: dict[Equipment, str] = {
    "mixer": later(
        "With the dough hook: at low speed until nothing is dry, then a little faster. Scrape the bowl down "
        "now and then."
    ),
    "hand": later(
        "Stir until nothing is dry, then knead on a bare bench. It is sticky at first: wait before you add "
        "flour."
    ),
}
_ORDERS: dict[Equipment, str] = {
    "mixer": later("Into the bowl, with the amounts of the docket:"),
    "hand": later(
        "Into a wide bowl, with the amounts of the docket; what is dry may be stirred together first:"
    ),
}
_NOT_KNEADED = later(
    "The method as written kneads nothing, so there is nothing for a mixer or a bread machine to do. "
    "Whether the dough can be mixed by one is not stated."
)
_BASIS = later(
    "Order, look and pan sizes are common practice, without a published source. No minutes of mixing are "
    "given where the maker gave none: machines and hands differ."
)


def equipment_view(formula: Formula, *, settings: Settings) -> EquipmentView | None:
    """None for what is no yeast dough, and where the maker wrote a way for everything."""
    if not is_yeast_dough(formula):
        return None
    mixing, written = mixing_of(formula), written_for(formula)
    if mixing is None:
        return (
            EquipmentView(intro=say(_NOT_KNEADED), entries=(), common=(), basis="")
            if is_baked_dough(formula)
            else None
        )
    others = tuple(each for each in EVERY if each not in written)
    if not others:
        return None
    return EquipmentView(
        intro=_intro(written),
        entries=tuple(_entry(each, mixing, formula, settings) for each in others),
        common=(*_prepared(mixing), f"{say(_WINDOW)}{_minutes(mixing)}"),
        basis=say(_BASIS),
    )


def _intro(written: tuple[Equipment, ...]) -> str:
    told = all_of(say(_SPOKEN[each]) for each in written)
    how = (
        say("The maker wrote the method {told}.", told=told)
        if told
        else say("The method does not say what mixes the dough.")
    )
    return say("{how} The formula is the same for all; this is what other equipment asks for.", how=how)


def _entry(equipment: Equipment, mixing: Mixing, formula: Formula, settings: Settings) -> EquipmentEntry:
    machine = stated_machine(formula, settings)
    order = machine.order if equipment == "machine" else "liquids first"
    load = loaded(formula, mixing.first, mixing.later, order)
    says = (
        _machine(load, mixing, formula, settings)
        if equipment == "machine"
        else _kneaded(equipment, mixing, load)
    )
    return EquipmentEntry(
        title=say(_TITLES[equipment]),
        order=say(ORDERS[order] if equipment == "machine" else _ORDERS[equipment]),
        ordered=order is not None,
        layers=tuple(_layers(load, say(YEAST_GOES[order]) if equipment == "machine" else "")),
        says=(*says, _water(equipment, formula, settings)),
        caution=timer_words(load.spoils) if equipment == "machine" else "",
    )


def _layers(load: Load, yeast: str) -> Iterator[EquipmentLayer]:
    for name, things in load.layers:
        remark = yeast if name == "yeast" else ""
        yield EquipmentLayer(title=say(TITLES[name]), remark=remark, items=_items(things))


def _items(things: tuple[Loaded, ...]) -> str:
    """The names; where only a share goes in, that is said."""
    return ", ".join(
        say("part of the {item}", item=each.item) if _is_share(each) else each.item for each in things
    )


def _is_share(each: Loaded) -> bool:
    return each.line is not None and each.grams != each.line.grams


def _prepared(mixing: Mixing) -> Iterator[str]:
    if mixing.prepared:
        names = all_of(dict.fromkeys(use.item for use in mixing.prepared))
        yield say("Made ready before, as the method says, and added when it says so: {names}.", names=names)


def _machine(load: Load, mixing: Mixing, formula: Formula, settings: Settings) -> Iterator[str]:
    machine = stated_machine(formula, settings)
    yield rest_words(machine.rest)
    yield say(LOOK)
    if load.added:
        when = said(machine.add_ins) or say(
            "when your machine gives its signal, else when the dough has become one ball"
        )
        yield say(
            "Later, {when}: {items}. The method as written adds this after its first mixing.",
            when=when,
            items=_items(load.added),
        )
    pan = pan_words(load.dry, machine, grains=load.dry != formula.totals.flour)
    if pan:
        yield pan
    go_on = say(" Then go on with {step}.", step=_step(mixing.after, mixing)) if mixing.after else ""
    yield say("The dough cycle mixes, kneads and gives the first rise by its own clock.{go_on}", go_on=go_on)


def _kneaded(equipment: Equipment, mixing: Mixing, load: Load) -> Iterator[str]:
    yield say(_MIX[equipment])
    if load.added:
        yield say("Later, when the dough has come together: {items}.", items=_items(load.added))
    if mixing.rise:
        yield say("When it is ready let it rise: go on with {step}.", step=_step(mixing.rise, mixing))


def _minutes(mixing: Mixing) -> str:
    """What the maker stated, of the way it was stated for."""
    if mixing.kneads is None:
        return ""
    written = equipment_of_name(mixing.way.name)
    how = f" {say(_SPOKEN[written])}" if written else ""
    return say(" (The maker kneads {minutes}{how}.)", minutes=minutes_words(mixing.kneads), how=how)


def _step(place: Place, mixing: Mixing) -> str:
    heading = say(" under “{section}”", section=place.section) if place.section else ""
    way = say(" of the way “{way}”", way=said(place.way)) if place.way and mixing.way.name else ""
    return say("step {number}{heading}{way}", number=place.number, heading=heading, way=way)


def _water(equipment: Equipment, formula: Formula, settings: Settings) -> str:
    wanted = wanted_temperature(formula, settings)
    if wanted is None:
        return say("No dough temperature is stated, so no temperature of the water is given.")
    friction = stated_friction(equipment, settings)
    if friction is None:
        return say(
            "Water for a dough of {degrees}: what mixing adds is not stated {spoken}, so no temperature is given. "
            "Measure a dough of your own and correct the next one.",
            degrees=degrees_words(wanted),
            spoken=say(_SPOKEN[equipment]),
        )
    room = ROOMS[wanted.scale][_ROOM_INDEX]
    warm = degrees_words(Degrees(value=Fraction(room), scale=wanted.scale))
    words = water_words(room, equipment, formula, settings)
    return say(
        "Water for a dough of {degrees} in a room of {warm}: {words}. Other rooms stand in the table of the water.",
        degrees=degrees_words(wanted),
        warm=warm,
        words=words,
    )
