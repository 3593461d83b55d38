"""Compares what recipe.json says with what an output shows. Every line that comes back is a disagreement."""

import re
from collections.abc import Iterator

from tests.agreement.claims import (
    HEAT,
    WEIGHT,
    Data,
    Row,
    Step,
    part_weights,
    rows_of,
    sequence_of,
    steps_of,
    times_of,
)
from tests.agreement.reading import Output, holds, plain, standing

_PERCENT = re.compile(r"(?<=¦)\d+(?:\.\d+)?%$")
_US = {"peanut": "peanuts", "brazil nut": "Brazil nut", "crustacean": "crustacean shellfish"}
"""Ids that a label of the United States words otherwise than they are written."""
_BESIDE = {"tree nuts": ("other nuts", "other tree nuts")}
"""A group beside one of its own kinds that is in the bake for certain is called what is left of it."""


def disagreements(data: Data, output: Output, *, region: str, first: str) -> Iterator[str]:
    """Where an output does not show what recipe.json says, in words for the reader of a failed test.

    `region` and `first` are the site's: whose label is printed, and which measure stands in a sentence.
    """
    if "rows" in output.claims:
        yield from _rows(data, output)
    if "steps" in output.claims:
        yield from _steps(data, output, by_weight=first == "weight" or output.name == "page")
    if "times" in output.claims:
        yield from _times(data, output)
    if "iso times" in output.claims:
        yield from _iso_times(data, output)
    if "label" in output.claims:
        yield from _label(data, output, region)


def _rows(data: Data, output: Output) -> Iterator[str]:
    rows = rows_of(data)
    if output.rows is None:
        yield from _rows_in_order(rows, data, output)
        return
    if len(rows) != len(output.rows):
        yield f"{output.name}: {len(output.rows)} lines, not {len(rows)}"
    for row, text in zip(rows, output.rows, strict=False):
        if output.name == "page" and _PERCENT.findall(text) != [plain(row.percent)] * bool(row.percent):
            yield f"{output.name}: {row} does not show {row.percent or 'no percent'} in {text!r}"
        yield from (f"{output.name}: {row} is not {text!r}: {why}" for why in _row(row, text))


def _row(row: Row, text: str) -> Iterator[str]:
    """A line shows its item and both amounts, and no other figure but its percent."""
    for words in (row.item, row.weight, row.volume):
        if not holds(text, plain(words)):
            yield f"no {words!r}"
    left = text
    for words in sorted((row.item, row.weight, row.volume), key=len, reverse=True):
        left = left.replace(plain(words), "#", 1) if words else left
    if not row.choices and re.search(r"\d", _PERCENT.sub("", left)):
        yield f"another figure in {left!r}"


def _rows_in_order(rows: tuple[Row, ...], data: Data, output: Output) -> Iterator[str]:
    """The lines of a printed docket one after another, each with its amounts before its item."""
    at, between = 0, []
    for row in rows:
        measures = [plain(each) for each in (row.weight, row.volume) if each]
        orders = {"".join(measures), "".join(reversed(measures))}
        either = "|".join(standing(each + plain(row.item)) for each in sorted(orders))
        found = re.compile(either).search(output.docket, at)
        if found is None:
            yield f"{output.name}: {row} does not stand in its place after {output.docket[max(at - 40, 0) : at]!r}"
            continue
        between.append(output.docket[at : found.start()])
        at = found.end()
    allowed = {plain(each) for each in part_weights(data)}
    surplus = {each for text in (*between, output.docket[at:]) for each in WEIGHT.findall(text)} - allowed
    if surplus:
        yield f"{output.name}: weights that are none of the recipe's: {sorted(surplus)}"


def _steps(data: Data, output: Output, *, by_weight: bool) -> Iterator[str]:
    """Every step in its own words, in order, and beside them whatever the output has there."""
    at, places = 0, []
    for number, step in enumerate(steps_of(data), start=1):
        text = plain(step.text)
        start = output.steps.find(text, at)
        if start < 0:
            yield f"{output.name}: step {number} is not there: {step.text!r}"
            return
        at = start + len(text)
        places.append((start, at))
    ends = [*(start for start, _ in places[1:]), len(output.steps)]
    for number, (step, (_, after), end) in enumerate(zip(steps_of(data), places, ends, strict=True), start=1):
        beside = output.steps[after:end]
        where = f"{output.name}: step {number}"
        if by_weight and output.name not in ("JSON-LD", "description"):
            yield from _uses(step, beside if output.name == "page" else plain(step.text) + beside, where)
        if output.name in ("page", "bench sheet"):
            yield from _needs(step.stages, step.heats, beside, where)
        if output.name == "page":
            yield from _surplus(step, beside, where)


def _uses(step: Step, told: str, where: str) -> Iterator[str]:
    """Each weight in its turn: two of the same are two."""
    at = 0
    for item, words in step.uses:
        found = re.compile(standing(plain(words))).search(told, at)
        if found is None:
            yield f"{where} does not show {words} of {item}"
        at = found.end() if found else at


def _surplus(step: Step, beside: str, where: str) -> Iterator[str]:
    """Weights and temperatures beside a step that it does not have."""
    meant = {plain(each) for _, each in step.uses} | {plain(each) for pair in step.heats for each in pair}
    for each in (*WEIGHT.findall(beside), *HEAT.findall(beside)):
        if each not in meant:
            yield f"{where} shows {each}, which it does not have"


def _needs(
    stages: tuple[tuple[str, str], ...], heats: tuple[tuple[str, str], ...], told: str, where: str
) -> Iterator[str]:
    """What stands beside a step: each time with its kind, each temperature in both scales."""
    for kind, words in stages:
        if not any(holds(told, plain(each)) for each in (f"{kind}{words}", f"{words}{kind}")):
            yield f"{where} does not show {kind} {words} beside it"
    for in_f, in_c in heats:
        pairs = (
            f"{in_f}({in_c}",
            f"{in_c}({in_f}",
            f"{in_f}fan({in_c}fan",
            f"{in_c}fan({in_f}fan",
            f"{in_f},{in_c}",
        )
        if not any(holds(told, plain(each)) for each in pairs):
            yield f"{where} does not show {in_f} and {in_c} beside it"


def _times(data: Data, output: Output) -> Iterator[str]:
    """Each way with its own times."""
    times = times_of(data)
    if len(times) != len(output.times):
        yield f"{output.name}: times of {len(output.times)} ways, not of {len(times)}"
    for time, text in zip(times, output.times, strict=False):
        low, way = text.casefold(), time.way or "the only way"
        names = (("hands-on", time.hands_on), ("waiting", time.waiting), ("baking", time.baking))
        for name, words in names:
            if words and not holds(low, plain(f"{name}{words}").casefold()):
                yield f"{output.name}: {way} does not show {name} {words}"
        if not holds(low, plain(time.total)):
            yield f"{output.name}: {way} does not show {time.total} in all"
    meant = tuple(plain(each) for each in sequence_of(data))
    if output.sequence is not None and output.sequence != meant:
        yield f"{output.name}: the order of work is {output.sequence}, not {meant}"


def _iso_times(data: Data, output: Output) -> Iterator[str]:
    """schema.org has one time each: the longest of the first way."""
    first = data["times"][0]
    preparation = first["hands_on"][1] + first["waiting"][1]
    longest = {"prepTime": preparation, "cookTime": first["baking"][1], "totalTime": first["total"][1]}
    for name, minutes in longest.items():
        if f'"{name}": "{_iso(minutes)}"' not in output.times[0]:
            yield f"{output.name}: {name} is not {_iso(minutes)!r} in {output.times[0]}"


def _iso(minutes: float) -> str:
    hours, rest = divmod(-int(-minutes // 1), 60)
    return "PT" + (f"{hours}H" if hours else "") + (f"{rest}M" if rest else "") if minutes else ""


def _label(data: Data, output: Output, region: str) -> Iterator[str]:
    """The list of ingredients, what is contained and what may be, and that the label is not finished."""
    label, told = data["labels"][region], output.declared.casefold()
    if (output.name != "description" or region == "EU") and plain(
        label["ingredients"]
    ).casefold() not in told:
        yield f"{output.name}: the list of ingredients is not there: {label['ingredients']}"
    if region == "US" and label["contains"]:
        words = ", ".join(dict.fromkeys(_US.get(each, each) for each in label["contains"]))
        if plain(f"Contains: {words}.").casefold() not in told:
            yield f"{output.name}: it does not say that it contains {words}"
    may = told[told.find("maycontain") :]
    for each in label["may_contain"]:
        names = (_US.get(each, each), *_BESIDE.get(each, ()))
        if not any(plain(name).casefold() in may for name in names):
            yield f"{output.name}: it does not say that it may contain {each}"
    if not label["finished"] and "notfinished" not in told:
        yield f"{output.name}: it does not say that the label is not finished"
