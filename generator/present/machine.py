"""The loading of a bread machine in words, from the maker's settings; what they do not say is told as not known.

The look after five minutes, the order and the pans are common practice; no published source is claimed.
"""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from generator.formula.machine import DOUGH_CYCLE, Layer, Load, Loaded, load_of
from generator.formula.machine_kind import PANS, Machine, Pan, fitting, next_to, plainest
from generator.formula.model import Formula, Way
from generator.measure.number import Range, total
from generator.measure.unit import Spoons
from generator.present.amounts import mixed, weight_words
from generator.present.durations import minutes_words
from generator.present.measures import line_amount, ordered, use_amount
from generator.present.sheet_views import LayerView, LoadRow, MachineView
from generator.present.views import Amount
from generator.settings import Settings
from generator.wording.forms import all_of, any_of
from generator.wording.speech import later, say
from generator.wording.vocabulary import said

TITLES: dict[Layer, str] = {
    "liquids": later("Liquids"),
    "rest": later("Fat, sugar, salt and all else"),
    "flour": later("Flour, and what is dry like it"),
    "yeast": later("Yeast"),
}
ORDERS = {
    "liquids first": later(
        "For a machine that takes the liquids first: fill the pan in this order. If yours takes the "
        "yeast first, turn the order round."
    ),
    "yeast first": later(
        "For a machine that takes the yeast first: fill the pan in this order. If yours takes the liquids "
        "first, turn the order round."
    ),
    None: later(
        "The order of loading is not stated here: fill the pan in the order of your machine’s book. Many take the "
        "liquids first and the yeast last, some the yeast first."
    ),
}
YEAST_GOES = {
    "liquids first": later("in a dry hollow in the flour, away from salt and liquid"),
    "yeast first": later("on the bottom, dry, under the flour"),
    None: later("dry, away from the liquids until it mixes"),
}
LOOK = later(
    "After 5 minutes of kneading lift the lid. You want one smooth ball, a little tacky. If it smears or lies flat, "
    "add flour, 10 g at a time. If it crumbles or knocks, add water, 5 to 15 g at a time. Let it knead a minute or "
    "two before you add more."
)
BASIS = later(
    "Order, look and pan sizes are common practice, without a published source; your machine’s book comes first."
)
_TIMER = later(
    "Timer: do not set it to start hours later with egg, milk or anything else in it that spoils. The yeast must "
    "stay dry until it mixes."
)
_TIMER_HERE = later(
    "Timer: do not set it to start hours later with egg, milk or anything else in it that spoils: here {things}. The "
    "yeast must stay dry until it mixes."
)


def machine_view(formula: Formula, way: Way, *, settings: Settings, spoons: Spoons) -> MachineView | None:
    """The loading for the way called dough cycle; None for every other way."""
    if " ".join(way.name.casefold().split()) != DOUGH_CYCLE:
        return None
    machine = stated_machine(formula, settings)
    load = load_of(formula, way, machine.order)
    rows = iter(_rows(load, settings=settings, spoons=spoons))
    layers = tuple(
        LayerView(
            title=say(TITLES[name]),
            remark=say(YEAST_GOES[load.order]) if name == "yeast" else "",
            rows=tuple(next(rows) for _ in loaded),
        )
        for name, loaded in load.layers
    )
    added = tuple(rows)
    return MachineView(
        order=say(ORDERS[load.order]),
        ordered=load.order is not None,
        layers=layers,
        added=added,
        added_when=(said(machine.add_ins) or say("when the method says")) if added else "",
        rest=rest_words(machine.rest),
        look=say(LOOK),
        pan=pan_words(load.dry, machine, grains=load.dry != formula.totals.flour),
        timer=timer_words(load.spoils),
        basis=say(BASIS),
    )


def stated_machine(formula: Formula, settings: Settings) -> Machine:
    """What the recipe says, and where it says nothing what the site says."""
    own, general = formula.about.machine or Machine(), settings.machine
    if general is None:
        return own
    rest = Range(Fraction(general.rest[0]), Fraction(general.rest[1])) if general.rest else None
    return Machine(
        order=own.order or general.order,
        rest=own.rest or rest,
        add_ins=own.add_ins or general.add_ins,
        pan=own.pan or general.pan,
    )


def _rows(load: Load, *, settings: Settings, spoons: Spoons) -> Iterator[LoadRow]:
    """One for each thing in the order of the load, what is added last."""
    things = [each for _, loaded in load.layers for each in loaded] + list(load.added)
    for number, each in enumerate(things, start=1):
        amount = _amount(each, settings=settings, spoons=spoons)
        yield LoadRow(place=f"load {number}", item=each.item, first=amount.first, second=amount.second)


def _amount(loaded: Loaded, *, settings: Settings, spoons: Spoons) -> Amount:
    """The whole line in its own words; a share of it as a step would say."""
    if loaded.line is None:
        return ordered(weight_words(loaded.grams), "", settings)
    shares = [use.fraction for use in loaded.uses]
    if loaded.grams == loaded.line.grams or None in shares or sum(filter(None, shares)) == 1:
        return line_amount(loaded.line, settings=settings, spoons=spoons)
    volumes = [use.millilitres for use in loaded.uses]
    counts = [use.count for use in loaded.uses]
    merged = replace(
        loaded.uses[0],
        grams=loaded.grams,
        millilitres=total(each for each in volumes if each) if all(volumes) else None,
        count=total(each for each in counts if each) if all(counts) else None,
    )
    return use_amount(merged, settings=settings, spoons=spoons)


def rest_words(rest: Range | None) -> str:
    """Whether the machine stands still before it mixes."""
    if rest is None:
        return say(
            "Whether the machine first stands still to warm its load is not stated here; many do, up to 30 min."
        )
    if not rest.high:
        return say("The machine mixes at once.")
    words = minutes_words(rest)
    return say(
        "The machine stands still for {words} to warm its load, then mixes. That comes on top of the times here.",
        words=words,
    )


def pan_words(dry: Fraction, machine: Machine, *, grains: bool) -> str:
    """Which pan the flour fits, and by what to scale where it fits none, or not the maker's own."""
    if not dry:
        return ""
    weight = weight_words(Range.exact(dry))
    much = (
        say("{weight} of flour and grain", weight=weight)
        if grains
        else say("{weight} of flour", weight=weight)
    )
    own = next((pan for pan in PANS if pan.name == machine.pan), None)
    found = fitting(dry)
    fits = any_of(_size(pan) for pan in found)
    told = (
        say("{much} fits a {fits} pan", much=much, fits=fits)
        if found
        else say("{much} is the measure of no usual pan", much=much)
    )
    others = (own,) if own is not None and own not in found else () if found else next_to(dry)
    times = "; ".join(_times(pan, dry) for pan in others)
    if own is not None and own in found:
        told = say("{much} fits the maker’s {size} pan", much=much, size=_size(own))
    elsewhere = say("For a dough that is baked elsewhere a pan takes a little more.")
    return ". ".join(each for each in (told, times, elsewhere) if each)


def _times(pan: Pan, dry: Fraction) -> str:
    dry_words = weight_words(pan.dry)
    times = mixed(plainest(pan.factor(dry)))
    return say(
        "For a {size} pan ({weight}) make {times} times the recipe",
        size=_size(pan),
        weight=dry_words,
        times=times,
    )


def _size(pan: Pan) -> str:
    return say("{pounds} lb", pounds=mixed(Fraction(pan.name.split()[0])))


def timer_words(spoils: tuple[str, ...]) -> str:
    """A caution; what is known to spoil is named, and nothing is ever said to be safe."""
    return say(_TIMER_HERE, things=all_of(spoils)) if spoils else say(_TIMER)
