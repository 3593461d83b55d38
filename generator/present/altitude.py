"""What two published tables say for a kitchen high above the sea, each by itself."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from generator.formula.altitude import (
    BANDS,
    EXTENSION_SOURCE,
    KINDS,
    METRES_IN_A_FOOT,
    TEXTBOOK,
    TEXTBOOK_FEET,
    TEXTBOOK_SOURCE,
    Band,
    Kind,
    around,
    bands_at,
    boiling_f,
    by_textbook,
    cores,
    has_leavening,
    kind_of,
    powder_by_extension,
)
from generator.formula.equipment import is_baked_dough, is_yeast_dough
from generator.formula.model import Formula, Line
from generator.measure.number import Range
from generator.measure.temperature import nearest, to_celsius
from generator.measure.unit import Spoons
from generator.present.amounts import decimal, mixed, number_range, volume_words, weight_words
from generator.present.bench_views import AltitudeTable, AltitudeView
from generator.present.measures import in_pieces
from generator.present.views import RecipeView
from generator.wording.speech import later, say

_TEXTBOOK_NOTE = later(
    "In percent of each ingredient. The places of the figures for flour and fat in the printed columns are "
    "inferred."
)
_EXTENSION_NOTE = later(
    "For each teaspoon of baking powder and each cup of sugar and liquid. At the highest, an egg white "
    "more. The oven 15 to 25 °F (8 to 14 °C) hotter."
)
_TWO = later(
    "The two tables do not agree, and both are made for cakes; for other bakes they are a hint. Take one "
    "of them, not their middle, and bake a small one first."
)
_SODA = later("Baking soda is in neither table.")
_YEAST = later(
    "Yeast doughs rise faster at altitude: take less yeast, or end the rise when the dough looks ready. No table "
    "says how much ({source})."
)
_BOILING = later(
    "Water boils about 1 °F lower for each 500 ft (0.6 °C for each 150 m), and no crumb becomes hotter "
    "than that: lower a core temperature near boiling by as much (from memory)."
)
_NOT_BAKED = later("Nothing is baked here, and the tables speak of baking.")
_NONE = later("The tables speak of cakes with baking powder, and of nothing that is in this recipe.")


def altitude_view(formula: Formula, *, spoons: Spoons, feet: Fraction | None = None) -> AltitudeView | None:
    """For every altitude of the tables, or for the reader's own; None for what is not baked."""
    if not is_baked_dough(formula):
        return None
    leavened = has_leavening(formula) and not is_yeast_dough(formula)
    if feet is None:
        tables = tuple(_general(formula)) if leavened else ()
        notes = (*_cake_notes(formula, leavened=leavened), *_yeast_notes(formula), say(_BOILING))
        return AltitudeView(height="", tables=tables, notes=notes)
    tables = tuple(_own(formula, feet, spoons)) if leavened else ()
    return AltitudeView(
        height=height_words(feet), tables=tables, notes=tuple(_notes(formula, feet, leavened=leavened))
    )


def height_words(feet: Fraction) -> str:
    """`5000 ft (1524 m)`."""
    return say(
        "{number} ft ({number2} m)",
        number=decimal(feet, places=0),
        number2=decimal(feet * METRES_IN_A_FOOT, places=0),
    )


def at_altitude(view: RecipeView, formula: Formula, *, spoons: Spoons, feet: Fraction) -> RecipeView:
    """The view of a recipe with what the tables say for one kitchen."""
    if view.sheet is None:
        return view
    own = altitude_view(formula, spoons=spoons, feet=feet) or AltitudeView(
        height=height_words(feet), tables=(), notes=(say(_NOT_BAKED),)
    )
    return replace(view, sheet=replace(view.sheet, altitude=own))


def _kinds(formula: Formula) -> tuple[Kind, ...]:
    found = {kind_of(line) for line in _lines(formula)}
    return tuple(kind for kind in KINDS if kind in found)


def _lines(formula: Formula) -> Iterator[Line]:
    return (
        line for part in formula.parts if part.counts for line in part.lines if line.counts and line.grams
    )


def _general(formula: Formula) -> Iterator[AltitudeTable]:
    kinds = _kinds(formula)
    yield AltitudeTable(
        title=say(TEXTBOOK_SOURCE),
        columns=("", *(height_words(Fraction(each)) for each in TEXTBOOK_FEET)),
        rows=tuple((say(_NAMES[kind]), *(_signed(each) for each in TEXTBOOK[kind])) for kind in kinds),
        note=say(_TEXTBOOK_NOTE),
    )
    told = tuple(kind for kind in kinds if kind in ("baking powder", "sugar", "liquid"))
    yield AltitudeTable(
        title=EXTENSION_SOURCE,
        columns=("", *(_band_words(band) for band in BANDS)),
        rows=tuple((say(_NAMES[kind]), *(_change(kind, band) for band in BANDS)) for kind in told),
        note=say(_EXTENSION_NOTE),
    )


_NAMES: dict[Kind, str] = {
    "baking powder": later("Baking powder"),
    "flour": later("Flour"),
    "eggs": later("Eggs"),
    "sugar": later("Sugar"),
    "fat": later("Fat"),
    "liquid": later("Liquid"),
}


def _signed(percent: Fraction) -> str:
    if not percent:
        return say("as it is")
    sign = "−" if percent < 0 else "+"
    return say("{number} %", number=f"{sign}{decimal(abs(percent), places=1)}")


def _band_words(band: Band) -> str:
    return say(
        "{low}–{high} ft ({metres}–{metres2} m)",
        low=band.low,
        high=band.high,
        metres=_metres(band.low),
        metres2=_metres(band.high),
    )


def _metres(feet: int) -> str:
    return decimal(feet * METRES_IN_A_FOOT, places=0)


def _change(kind: Kind, band: Band) -> str:
    if kind == "baking powder":
        return say("−{number} tsp for each tsp", number=mixed(band.powder))
    amount, sign = (band.sugar, "−") if kind == "sugar" else (band.liquid, "+")
    return say("{sign}{ends} tbsp for each cup", sign=sign, ends=_ends(amount))


def _ends(amount: Range) -> str:
    return number_range(amount, mixed)


def _own(formula: Formula, feet: Fraction, spoons: Spoons) -> Iterator[AltitudeTable]:
    """The recipe's own lines in each table that reaches so high."""
    lines = tuple((line, kind) for line in _lines(formula) if (kind := kind_of(line)))
    columns = around(feet)
    yield AltitudeTable(
        title=say(TEXTBOOK_SOURCE),
        columns=("", say("as written"), *(height_words(Fraction(each)) for each in columns)),
        rows=tuple(
            (
                line.item,
                _words(line, Fraction(1), spoons),
                *(_words(line, by_textbook(kind, each), spoons) for each in columns),
            )
            for line, kind in lines
        ),
        note=say(_TEXTBOOK_NOTE),
    )
    for band in bands_at(feet):
        told = tuple(each for each in lines if each[1] in ("baking powder", "sugar", "liquid"))
        yield AltitudeTable(
            title=EXTENSION_SOURCE,
            columns=("", say("as written"), _band_words(band)),
            rows=tuple(
                (line.item, _words(line, Fraction(1), spoons), _by_extension(line, kind, band, spoons))
                for line, kind in told
            ),
            note=say(_EXTENSION_NOTE),
        )


def _words(line: Line, factor: Fraction, spoons: Spoons) -> str:
    """Weight and volume of so many times the line; what is counted in pieces by weight alone."""
    weight = weight_words(line.grams.scaled(factor) if line.grams else None)
    if in_pieces(line):
        return weight
    volume = volume_words(line.millilitres.scaled(factor) if line.millilitres else None, spoons)
    return f"{weight} ({volume})" if volume else weight


def _by_extension(line: Line, kind: Kind, band: Band, spoons: Spoons) -> str:
    if kind != "baking powder":
        return _change(kind, band)
    return _words(line, powder_by_extension(Fraction(1), band), spoons)


def _cake_notes(formula: Formula, *, leavened: bool) -> Iterator[str]:
    if leavened:
        yield say(_TWO)
        if any(line.ware and line.ware.known_as == "baking soda" for line in formula.lines):
            yield say(_SODA)


def _yeast_notes(formula: Formula) -> Iterator[str]:
    if is_yeast_dough(formula):
        yield say(_YEAST, source=EXTENSION_SOURCE)


def _notes(formula: Formula, feet: Fraction, *, leavened: bool) -> Iterator[str]:
    if leavened:
        if feet not in TEXTBOOK_FEET:
            yield say(
                "The textbook has no figures for {height} itself; the nearest it has are shown.",
                height=height_words(feet),
            )
        if not bands_at(feet):
            low, high = height_words(Fraction(BANDS[0].low)), height_words(Fraction(BANDS[-1].high))
            yield say(
                "The extension’s table reaches from {low} to {high}, so it says nothing here.",
                low=low,
                high=high,
            )
    elif not is_yeast_dough(formula):
        yield say(_NONE)
    yield from _cake_notes(formula, leavened=leavened)
    yield from _yeast_notes(formula)
    boils = boiling_f(feet)
    in_c = nearest(to_celsius(boils), 1)
    yield (
        say(
            "Water boils at about {number} °F ({in_c} °C) there, about 1 °F lower for each 500 ft (from memory).",
            number=nearest(boils, 1),
            in_c=in_c,
        )
    )
    if any(heat.temperature.fahrenheit().high >= boils for heat in cores(formula)):
        yield (
            say(
                "The core temperature of this recipe cannot be reached there: lower it by as much as water "
                "boils lower, and go by its look."
            )
        )
