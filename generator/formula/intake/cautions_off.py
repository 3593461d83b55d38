"""Cautions that a maker sets aside, each with the reason: without one, the caution stays."""

from generator.diagnostics.diagnostic import Diagnostic, did_you_mean
from generator.formula.caution_names import CAUTION_NAMES
from generator.formula.intake.collect import Collector
from generator.formula.model import SetAside
from generator.source.document import Mapping
from generator.source.fields import check_keys

_KEYS = ("what", "why")


def read_set_aside(entries: tuple[Mapping, ...], collector: Collector) -> tuple[SetAside, ...]:
    """The entries of `cautions_off` that name a caution and say why; L007 for a name that is none."""
    read = (_set_aside(each, collector) for each in entries)
    return tuple(each for each in read if each is not None)


def _set_aside(node: Mapping, collector: Collector) -> SetAside | None:
    collector.add(check_keys(node, _KEYS, what="a caution set aside", needed=_KEYS))
    name, why = collector.words(node, "what").lower(), collector.words(node, "why")
    place = node.get("what")
    if name and place is not None and name not in CAUTION_NAMES:
        hint = did_you_mean(name, CAUTION_NAMES) or f"Choose from: {', '.join(CAUTION_NAMES)}."
        message = f"there is no caution “{name}”"
        collector.say(Diagnostic(code="L007", message=message, span=place.span, hint=hint))
        return None
    return SetAside(caution=name, why=why) if name and why else None
