"""The key `photo_focus`: what of a photograph must stay in sight where it is cut."""

import re

from generator.diagnostics.diagnostic import Diagnostic
from generator.formula.intake.collect import Collector
from generator.source.document import Node

_TWO = re.compile(r"(\d{1,3}(?:[.,]\d+)?)\s*%?(?:\s*,\s*|\s+)(\d{1,3}(?:[.,]\d+)?)\s*%?")


def read_focus(node: Node | None, collector: Collector) -> tuple[int, int] | None:
    """Percent of the width from the left and of the height from the top; None where nothing usable is said."""
    text = collector.text(node) if node is not None else None
    if text is None:
        return None
    found = _TWO.fullmatch(text.value.strip())
    across, down = (float(each.replace(",", ".")) for each in found.groups()) if found else (101.0, 101.0)
    if across > 100 or down > 100:
        message = f"“{text.value}” is no place in a photograph"
        hint = "Write how far from the left and from the top it lies, such as “photo_focus: 30% 60%”."
        collector.say(Diagnostic(code="S083", message=message, span=text.span, hint=hint))
        return None
    return round(across), round(down)
