"""Numbers that stand under keys of their own: percents of flour or water, weights, the ratio of a build."""

import re
from fractions import Fraction

from generator.diagnostics.diagnostic import Diagnostic
from generator.formula.intake.collect import Collector
from generator.formula.written import Ratio, Stated
from generator.measure.quantity import read_quantity
from generator.measure.unit import Spoons
from generator.source.document import Mapping

WETTEST = Fraction(1000)
"""Percent of water on flour: ten times the flour is a thin gruel, and more is a mistyped number."""
_NUMBER = r"([0-9]{1,6}(?:\.[0-9]{1,6})?)"
_PERCENT = re.compile(rf"{_NUMBER}\s{{0,3}}%")
_RATIO = re.compile(rf"{_NUMBER}\s{{0,3}}:\s{{0,3}}{_NUMBER}\s{{0,3}}:\s{{0,3}}{_NUMBER}")


def read_hydration(node: Mapping, collector: Collector) -> Stated | None:
    """`hydration: 100 %`, water on flour; F052 for what is none."""
    return _percent(node, "hydration", most=WETTEST, example="hydration: 100 %", collector=collector)


def read_flour_share(node: Mapping, collector: Collector) -> Stated | None:
    """`flour: 30 %` of a part, its share of all flour."""
    return _percent(node, "flour", most=Fraction(100), example="flour: 30 %", collector=collector)


def read_weight(node: Mapping, key: str, *, spoons: Spoons, collector: Collector) -> Stated | None:
    """One weight above nothing, in grams; F021 for anything else."""
    text = collector.text(node.get(key))
    if text is None:
        return None
    words = text.value.strip()
    read = read_quantity(words, spoons=spoons)
    grams = read[0].grams() if read and read[1] == len(words) else None
    if grams is None or grams.low <= 0 or not grams.is_exact:
        hint = f"Write one weight, such as “{key}: 500 g”."
        message = f"“{text.value}” is not a weight"
        collector.say(Diagnostic(code="F021", message=message, span=text.span, hint=hint))
        return None
    return Stated(value=grams.low, span=text.span)


def read_build(node: Mapping, collector: Collector) -> Ratio | None:
    """`build: 1:2:2`, seed to flour to water; F053 for what is none."""
    text = collector.text(node.get("build"))
    if text is None:
        return None
    found = _RATIO.fullmatch(text.value.strip())
    seed, flour, water = (Fraction(each) for each in found.groups()) if found else (Fraction(0),) * 3
    if not (seed and flour):
        message = f"“{text.value}” does not say how the levain is built"
        hint = "Write seed, flour and water by weight, as in “build: 1:2:2”; there is none without seed and flour."
        collector.say(Diagnostic(code="F053", message=message, span=text.span, hint=hint))
        return None
    return Ratio(seed=seed, flour=flour, water=water, span=text.span)


def _percent(node: Mapping, key: str, *, most: Fraction, example: str, collector: Collector) -> Stated | None:
    text = collector.text(node.get(key))
    if text is None:
        return None
    found = _PERCENT.fullmatch(text.value.strip())
    value = Fraction(found[1]) if found else None
    if value is None or value > most or (key == "flour" and not value):
        message = f"“{text.value}” is no percentage for `{key}`"
        hint = f"Write a number up to {most} and a percent sign, as in “{example}”."
        collector.say(Diagnostic(code="F052", message=message, span=text.span, hint=hint))
        return None
    return Stated(value=value, span=text.span)
