"""What one recipe.json says, as words that every other output must show: the measure that the law is held by.

The words are made here from the numbers, by rules of the trade written down once more, so that an output which
words a number in its own way is found out.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import floor
from typing import Any

Data = Mapping[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """An ingredient line: its item and the two strings of recipe.json, either of them "" where there is none.

    `choices`: alternatives with amounts of their own stand on the same line.
    """

    item: str
    weight: str
    volume: str
    percent: str
    choices: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """A step: its text, the weights that it uses, its times and its temperatures, all as words."""

    text: str
    uses: tuple[tuple[str, str], ...]
    stages: tuple[tuple[str, str], ...]
    heats: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Time:
    way: str
    hands_on: str
    waiting: str
    baking: str
    total: str


def rows_of(data: Data) -> tuple[Row, ...]:
    return tuple(
        Row(
            item=line["item"],
            weight=line["weight"],
            volume=line["volume"],
            percent=percent(line["percent"]),
            choices=bool(line["or"]),
        )
        for part in data["parts"]
        for line in part["lines"]
    )


def steps_of(data: Data) -> tuple[Step, ...]:
    return tuple(
        Step(
            text=step["text"],
            uses=tuple((use["item"], weight(use["grams"])) for use in step["uses"] if use["grams"]),
            stages=tuple((each["kind"], minutes(each["minutes"])) for each in step["stages"]),
            heats=tuple((degrees(each["f"], "F"), degrees(each["c"], "C")) for each in step["temperatures"]),
        )
        for step in data["steps"]
    )


def times_of(data: Data) -> tuple[Time, ...]:
    """The times of each way; none where nothing is timed at all."""
    stages = ("hands_on", "waiting", "baking", "total")
    return tuple(
        Time(
            way=each["method"], **{stage: minutes(each[stage]) if each[stage][1] else "" for stage in stages}
        )
        for each in data["times"]
        if any(other["total"][1] for other in data["times"])
    )


def sequence_of(data: Data) -> tuple[str, ...]:
    """The stages of each way in the order of work, one way after another, what is common to all in each."""
    told = []
    for time in times_of(data):
        ways = (time.way, "") if time.way else ("",)
        steps = [step for way in ways for step in data["steps"] if step["method"] == way]
        told += [f"{each['kind']} {minutes(each['minutes'])}" for step in steps for each in step["stages"]]
    return tuple(told)


def percent(value: float | None) -> str:
    """To a tenth from 1 % on, to a hundredth below."""
    return "" if value is None else f"{rounded(value, 1 if value >= 1 else 2)} %"


def part_weights(data: Data) -> set[str]:
    """Every weight that may stand beside the lines: sums of parts and of the whole."""
    totals = data["totals"]
    dough = [part["grams"] for part in data["parts"] if part["counts"]]
    sums = [part["grams"] for part in data["parts"]]
    sums += [[sum(ends) for ends in zip(*dough, strict=True)]] if dough else []
    sums += [totals["grams"], [totals["flour"]] * 2]
    sums += [totals["finished_grams"]] if totals["finished_grams"] else []
    return {weight(each) for each in sums}


def weight(grams: list[float]) -> str:
    """Whole grams from 10 g on, tenths below, hundredths below one gram."""
    low, high = (_grams(each) for each in grams)
    return ends(low, high, " g")


def _grams(value: float) -> str:
    whole = rounded(value, 0) if float(rounded(value, 1)) >= 10 else ""
    return whole or rounded(value, 1 if float(rounded(value, 1)) >= 1 else 2)


def rounded(value: float, places: int) -> str:
    """Half up, without zeros at the end. A float a hair below the half was the half before it became a float."""
    exact = Fraction(value).limit_denominator(10**9)
    units = floor(exact * 10**places + Fraction(1, 2))
    text = f"{units / 10**places:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def ends(low: str, high: str, unit: str) -> str:
    return f"{low}{unit}" if low == high else f"{low}–{high}{unit}"


def degrees(pair: list[float], scale: str) -> str:
    low, high = (rounded(each, 1) if each >= 0 else f"−{rounded(-each, 1)}" for each in pair)
    return ends(low, high, f" °{scale}")


def minutes(pair: list[float]) -> str:
    """`20 min`, `12–15 min`, `1 h 30 min`, `3 h to 3 h 10 min`, `2–3 h`, `2 days`, `45 s`."""
    low, high = (_minutes(each) for each in pair)
    one, other = low.split(" "), high.split(" ")
    if low == high:
        return high
    if len(one) == len(other) == 2 and one[1] == other[1]:
        return f"{one[0]}–{other[0]} {other[1]}"
    return f"{low} to {high}"


def _minutes(value: float) -> str:
    if 0 < value < 1:
        return f"{rounded(value * 60, 0)} s"
    if value >= 2880 and value % 1440 == 0:
        return f"{rounded(value / 1440, 0)} days"
    hours, rest = divmod(floor(value + 0.5), 60)
    if not hours:
        return f"{rounded(value, 1)} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"


WEIGHT = re.compile(r"(?<![\d.–])\d+(?:\.\d+)?(?:–\d+(?:\.\d+)?)?\s*g\b")
HEAT = re.compile(r"(?<![\d.–−])−?\d+(?:\.\d+)?(?:–−?\d+(?:\.\d+)?)?\s*°\s*[FC]\b")


def inner_disagreements(data: Data) -> Iterator[str]:
    """Where the words of a step and its own numbers in recipe.json do not say the same."""
    for number, step in enumerate(steps_of(data)):
        text = " ".join(step.text.split())
        said = [" ".join(each.split()) for each in HEAT.findall(text)]
        meant = [each for pair in step.heats for each in pair]
        if sorted(said) != sorted(meant):
            yield f"step {number} says {said}, its numbers {meant}"
        for kind, words in step.stages:
            if not re.search(rf"(?<![\d–]){re.escape(words)}(?!\w)", text):
                yield f"step {number} does not say {kind} {words}"
        surplus = {" ".join(each.split()) for each in WEIGHT.findall(text)} - {each for _, each in step.uses}
        if surplus:
            yield f"step {number} says {sorted(surplus)}, which are none of its weights"
