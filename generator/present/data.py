"""The exact numbers of recipe.json, unrounded, in grams and minutes; only `weight` and `volume` are words."""

from collections.abc import Mapping
from fractions import Fraction

from generator.declaration.lines import line_allergens
from generator.declaration.model import Declaration
from generator.formula.components import Batch, batches
from generator.formula.model import Block, Formula, Heat, Line, Part, Timed, Totals, Use, Way, WholePart
from generator.formula.sheet import LevainBuild, Row, final_dough, levain_builds, total_formula
from generator.formula.yeast import TEXTBOOK
from generator.formula.yeast_exchange import KINDS, Exchange, exchanges
from generator.history.revisions import revision_of
from generator.measure.number import Range
from generator.present.heats import celsius, fahrenheit
from generator.present.measures import line_amount
from generator.present.mentions import rich
from generator.present.recipe import Setting

Number = int | float
Value = object


def recipe_data(formula: Formula, setting: Setting) -> Mapping[str, Value]:
    """The normalised recipe as plain values, in the order in which they are written."""
    revision = revision_of(formula, setting.ledger)
    return {
        "name": formula.name,
        "title": formula.about.title,
        "revision": revision.number,
        "updated": revision.updated.isoformat() if revision.updated else None,
        "makes": formula.about.makes or None,
        "portions": formula.about.portions or None,
        "parts": [_part(part, setting) for part in formula.parts],
        "totals": _totals(formula.totals),
        "sheet": {
            "total": [_row(each) for each in total_formula(formula, setting.book)],
            "final": [_row(each) for each in final_dough(formula, setting.book)],
            "builds": [_build(each) for each in levain_builds(formula)],
        },
        "yeast": [_yeast(each) for each in exchanges(formula)],
        "batches": [_batch(each) for each in batches(formula, setting.book)],
        "steps": [
            _step(block, way, title, setting)
            for way in formula.ways
            for title, block in _blocks(way)
            if block.kind == "step" or _does_something(block)
        ],
        "times": [
            {
                "method": times.way,
                "hands_on": ends(times.hands_on),
                "waiting": ends(times.waiting),
                "baking": ends(times.baking),
                "total": ends(times.total),
            }
            for times in formula.times
        ],
        "labels": {region: _label(each) for region, each in setting.declarations[formula.name].items()},
        "corrections": [
            {"on": each.on.isoformat(), "change": each.change, "why": each.why, "film": each.film or None}
            for each in formula.about.corrections
        ],
    }


def number(value: Fraction) -> Number:
    """A whole number where it is one, else the nearest float: the only place where a fraction becomes one."""
    return int(value) if value.denominator == 1 else float(value)


def ends(amount: Range) -> list[Number]:
    return [number(amount.low), number(amount.high)]


def ends_or_none(amount: Range | None) -> list[Number] | None:
    return None if amount is None else ends(amount)


def _or_none(value: Fraction | None) -> Number | None:
    return None if value is None else number(value)


def _part(part: Part, setting: Setting) -> Mapping[str, Value]:
    return {
        "name": part.name,
        "counts": part.counts,
        "preferment": part.preferment,
        "hydration": _or_none(part.hydration),
        "grams": ends(part.grams),
        "lines": [_line(line, setting) for line in part.lines],
    }


def _line(line: Line, setting: Setting) -> Mapping[str, Value]:
    carried = line_allergens(line, book=setting.book)
    amount = line_amount(line, settings=setting.settings, spoons=setting.spoons)
    return {
        "item": line.item,
        "written": line.written.text,
        "preparation": line.written.preparation,
        "note": "; ".join(each for each in (line.written.note, line.note) if each),
        "optional": line.optional,
        "or": [each.written.text for each in line.alternatives],
        "component": line.component,
        "grams": ends_or_none(line.grams),
        "percent": _or_none(line.percent),
        "hydration": _or_none(line.hydration),
        "weight": amount.weight,
        "volume": amount.volume,
        "flour": line.flour,
        "allergens": list(carried.allergens),
        "may_contain": list(carried.may_contain),
        "unknown": list(carried.unknown),
    }


def _row(row: Row) -> Mapping[str, Value]:
    return {"item": row.item, "grams": ends(row.grams), "percent": _or_none(row.percent)}


def _build(levain: LevainBuild) -> Mapping[str, Value]:
    build = levain.build
    return {
        "part": levain.part,
        "seed": number(build.seed),
        "flour": number(build.flour),
        "water": number(build.water),
        "hydration": number(build.hydration),
    }


def _yeast(each: Exchange) -> Mapping[str, Value]:
    """A line of yeast in grams of each kind, by the ratio that is named beside them."""
    grams = {kind: ends(each.grams[kind]) for kind in KINDS if kind in each.grams}
    return {
        "part": each.part,
        "item": each.item,
        "kind": each.kind,
        "grams": grams,
        "ratio": {kind: number(TEXTBOOK.of(kind)) for kind in KINDS},
        "source": TEXTBOOK.source,
    }


def _batch(batch: Batch) -> Mapping[str, Value]:
    return {
        "recipe": batch.name,
        "share": number(batch.share),
        "batches": batch.batches,
        "used_grams": number(batch.used_grams),
        "batch_grams": number(batch.batch_grams),
        "left_grams": number(batch.left_grams),
    }


def _totals(totals: Totals) -> Mapping[str, Value]:
    return {
        "grams": ends(totals.grams),
        "flour": number(totals.flour),
        "water": number(totals.water),
        "hydration": _or_none(totals.hydration),
        "hydration_nominal": _or_none(totals.hydration_nominal),
        "salt_percent": _or_none(totals.salt_percent),
        "salt_with_ingredients_percent": _or_none(totals.salt_with_ingredients_percent),
        "prefermented_percent": _or_none(totals.prefermented_percent),
        "finished_grams": ends_or_none(totals.finished_grams),
    }


def _blocks(way: Way) -> list[tuple[str, Block]]:
    return [(section.title, block) for section in way.sections for block in section.blocks]


def _does_something(block: Block) -> bool:
    """A paragraph between steps that uses an amount or takes time is a step to whoever reads the numbers."""
    return any(isinstance(each, Use | WholePart | Timed | Heat) for each in block.words.mentions)


def _step(block: Block, way: Way, section: str, setting: Setting) -> Mapping[str, Value]:
    mentions = block.words.mentions
    uses = [use for each in mentions for use in _uses(each)]
    return {
        "method": way.name,
        "section": section,
        "text": rich(block.words, settings=setting.settings, spoons=setting.spoons).plain,
        "uses": [
            {"part": use.part, "item": use.item, "grams": ends_or_none(use.grams), "extra": use.extra}
            for use in uses
        ],
        "stages": [
            {"kind": each.kind, "minutes": ends(each.duration.minutes)}
            for each in mentions
            if isinstance(each, Timed)
        ],
        "temperatures": [_heat(each, setting) for each in mentions if isinstance(each, Heat)],
    }


def _uses(mention: object) -> tuple[Use, ...]:
    if isinstance(mention, Use):
        return (mention,)
    return mention.uses if isinstance(mention, WholePart) else ()


def _heat(heat: Heat, setting: Setting) -> Mapping[str, Value]:
    return {
        "kind": heat.kind,
        "stated": heat.temperature.stated,
        "fan": heat.temperature.fan,
        "f": ends(fahrenheit(heat)),
        "c": ends(celsius(heat, oven_c=setting.settings.oven_c)),
    }


def _label(declaration: Declaration) -> Mapping[str, Value]:
    return {
        "finished": declaration.finished,
        "ingredients": "".join(run.text for run in declaration.ingredients),
        "contains": list(declaration.contains),
        "may_contain": list(declaration.may_contain),
        "unknown": list(declaration.unknown),
        "statement": declaration.statement,
    }
