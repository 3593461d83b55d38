"""Changes of a published bake that no correction explains, and what the ledger tells of recipes that are gone.

A bake is compared with its newest revision in the ledger. Words alone are let pass: only what a reader of an
older copy would weigh, heat, time or eat otherwise is told.
"""

import re
from collections.abc import Callable, Iterable, Iterator, Mapping

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, did_you_mean
from generator.diagnostics.span import Span
from generator.formula.model import Formula
from generator.history.changes import Change, Harm, compare
from generator.history.events import Facts, Ledger, Revision

Teller = Callable[[Facts, Facts], Iterable[str]]
"""Words the changes between two sets of facts, the most harmful first."""
_MOST_TOLD = 4
_RECIPE = re.compile(r'"recipe"\s*:\s*("(?:[^"\\]{1,200})")')


def unknown_recipes(text: str, names: Iterable[str], path: str) -> Diagnostics:
    """A warning for each recipe that the ledger names and nobody has, at its first place."""
    known, seen = tuple(names), set[str]()
    found = []
    for number, line in enumerate(text.removeprefix("\ufeff").split("\n"), start=1):
        place = _RECIPE.search(line)
        name = place[1].strip('"') if place else ""
        if place is None or name in known or name in seen:
            continue
        seen.add(name)
        start, end = place.start(1) + 1, place.end(1) + 1
        span = Span(path=path, line=number, column=start, end_line=number, end_column=end)
        message = f"the ledger tells of “{name}”, and there is no such recipe"
        near = did_you_mean(name, known)
        hint = f"{near} A recipe keeps its history with its name: rename the file back, or leave the lines.".strip()
        found.append(Diagnostic(code="H005", message=message, span=span, hint=hint))
    return tuple(found)


def unexplained(
    book: Mapping[str, Formula],
    facts: Mapping[str, Facts],
    *,
    ledger: Ledger,
    texts: Mapping[str, str],
    tell: Teller,
) -> Diagnostics:
    """A warning for each bake of `facts` that is no longer what the ledger's newest revision of it says.

    `facts` are today's, of published bakes; `texts` the maker's files by path, to say where the change was made.
    """
    found = []
    for name, today in facts.items():
        recorded = ledger.revision(name)
        then = _newest_facts(ledger, name)
        if then is None:
            continue
        changes = [each for each in compare(then, today) if each.harm <= Harm.AMOUNTS]
        if not changes:
            continue
        formula = book[name]
        if recorded is not None and len(formula.about.corrections) > recorded.corrections:
            found.append(_unnumbered(formula, recorded, _short(tell(then, today))))
            continue
        places = tuple(_places(formula, ledger, texts)) if recorded is not None else ()
        found.append(_unexplained(formula, changes, places, _short(tell(then, today)), recorded))
    return tuple(found)


def _newest_facts(ledger: Ledger, name: str) -> Facts | None:
    """Those of the newest revision; of the newest copy, where the ledger has numbered none."""
    recorded = ledger.revision(name)
    if recorded is not None:
        return recorded.facts or None
    return next((each.facts for each in reversed(ledger.postings(name)) if each.facts), None)


def _short(told: Iterable[str]) -> str:
    words = tuple(told)
    more = f"; and {len(words) - _MOST_TOLD} more" if len(words) > _MOST_TOLD else ""
    return "; ".join(words[:_MOST_TOLD]) + more


def _unexplained(
    formula: Formula, changes: list[Change], places: tuple[str, ...], told: str, recorded: Revision | None
) -> Diagnostic:
    since = f"since revision {recorded.number}" if recorded else "since it was posted"
    where = f" (changed in {' and in '.join(places)})" if places else ""
    return Diagnostic(
        code="H006",
        message=f"no correction explains what changed {since}{where}: {told}",
        span=_span(formula, changes),
        hint=f"If it is meant: tinleaf correct {formula.name} --as-it-stands --why “…”. If not, change it back.",
    )


def _unnumbered(formula: Formula, recorded: Revision, told: str) -> Diagnostic:
    number, count = recorded.number, len(formula.about.corrections) - recorded.corrections
    what = "a correction is" if count == 1 else f"{count} corrections are"
    return Diagnostic(
        code="H007",
        message=f"{what} written in the file and not in the ledger: readers still see revision {number} ({told})",
        span=formula.spans.get("corrections", formula.spans["title"]),
        hint=f"Give it a number of its own: tinleaf correct {formula.name} --as-it-stands --why “…”.",
    )


def _span(formula: Formula, changes: list[Change]) -> Span:
    """The line that changed, where that is one of the file; else the title."""
    lines = {f"{line.part}/{line.item}": line.span for line in formula.lines}
    own = (lines[each.subject] for each in changes if each.kind == "line" and each.subject in lines)
    return next(own, formula.spans["title"])


def _places(formula: Formula, ledger: Ledger, texts: Mapping[str, str]) -> Iterator[str]:
    """The files that are no longer what the ledger keeps: the recipe, what it is made with, the pantry."""
    components = dict.fromkeys(line.component for line in formula.lines if line.component)
    others = []
    for name in (formula.name, *components):
        path, kept = f"recipes/{name}.md", ledger.revision(name)
        if kept is not None and kept.text and kept.text != texts.get(path):
            others.append(path)
    pantry = ledger.pantry()
    if pantry is not None and pantry.text != texts.get("pantry.yaml", ""):
        others.append("pantry.yaml")
    yield from others
    if not others:
        yield "another file, such as site.yaml, or by a newer Tinleaf"
