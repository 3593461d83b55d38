"""The timers that a page offers: each counts the time of its step, in seconds."""

from itertools import zip_longest

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import Span
from generator.present.views import RecipeView
from generator.proof.page_text import PageText, Timer
from generator.wording.speech import gettext


def timer_faults(page: PageText, view: RecipeView, *, remedy: str) -> Diagnostics:
    """The timers of a page against the stages of the steps, in the order of the method."""
    meant = [
        Timer(kind=gettext(stage.kind), seconds=" ".join(map(str, stage.seconds)), line=0)
        for way in (*view.ways, *((view.common,) if view.common else ()))
        for section in way.sections
        for block in section.blocks
        if block.kind == "step"
        for stage in block.stages
    ]
    found = []
    for said, wanted in zip_longest(page.timers, meant):
        if _told(said) != _told(wanted):
            line = said.line if said else 1
            span = Span(path=page.text.path, line=line, column=1, end_line=line, end_column=2)
            message = f"a timer of the page: it counts {_told(said)}, the recipe says {_told(wanted)}"
            found.append(Diagnostic(code="A005", message=message, span=span, hint=remedy))
    return tuple(found)


def _told(timer: Timer | None) -> str:
    if timer is None:
        return "nothing"
    low, _, high = timer.seconds.partition(" ")
    return f"{timer.kind} {low}–{high} s" if high != low else f"{timer.kind} {low} s"
