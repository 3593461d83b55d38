"""Gentle notes that a maker accepts, each with the reason: without one, the note stays."""

from generator.diagnostics.diagnostic import Diagnostic, did_you_mean
from generator.formula.intake.collect import Collector
from generator.formula.note_names import NOTE_NAMES
from generator.formula.written import Accepted
from generator.source.document import Mapping, Sequence, Text
from generator.source.fields import check_keys

_KEYS = ("note", "why")


def read_accepts(front: Mapping, collector: Collector) -> tuple[Accepted, ...]:
    """The entries of `accepts` that name a note and say why; N010 for a name that is none."""
    node = front.get("accepts")
    if node is None or (isinstance(node, Text) and not node.value.strip()):
        return ()
    items = node.items if isinstance(node, Sequence) else (node,)
    read = []
    for item in items:
        if isinstance(item, Mapping):
            read.append(_accepted(item, collector))
        else:
            message = "each entry of `accepts` needs keys and values"
            hint = "Write “- {note: salt, why: …}”."
            collector.say(Diagnostic(code="F016", message=message, span=item.span, hint=hint))
    return tuple(each for each in read if each is not None)


def _accepted(node: Mapping, collector: Collector) -> Accepted | None:
    collector.add(check_keys(node, _KEYS, what="an accepted note", needed=_KEYS))
    name, why = collector.words(node, "note").lower(), collector.words(node, "why")
    place = node.get("note")
    if name and place is not None and name not in NOTE_NAMES:
        hint = did_you_mean(name, NOTE_NAMES) or f"Choose from: {', '.join(NOTE_NAMES)}."
        message = f"there is no note “{name}”"
        collector.say(Diagnostic(code="N010", message=message, span=place.span, hint=hint))
        return None
    return Accepted(note=name, why=why, span=place.span) if name and why and place is not None else None
