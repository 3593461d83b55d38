"""The key `was`: addresses that a page had before."""

from generator.formula.intake.collect import Collector
from generator.formula.old_address import OldAddress, read_old_address, unusable
from generator.source.document import Node, Sequence


def read_was(node: Node | None, collector: Collector) -> tuple[OldAddress, ...]:
    """Those that can be kept; the others are reported at their place."""
    items = node.items if isinstance(node, Sequence) else () if node is None else (node,)
    found = []
    for text in (collector.text(item) for item in items):
        if text is None:
            continue
        path, why = read_old_address(text.value.strip())
        if why:
            collector.say(unusable(text.span, why))
        else:
            found.append(OldAddress(path=path, span=text.span))
    return tuple(found)
