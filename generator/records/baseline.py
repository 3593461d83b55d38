"""Before the ledger tells anything of a recipe, it gets the text as it stands, and that of all it is made of."""

from collections.abc import Iterator
from datetime import date

from generator.history.ledger import Event, PantryChange, Revision
from generator.history.revisions import revision_of
from generator.pipeline import CheckResult
from generator.present.facts import facts_of

PANTRY = "pantry.yaml"


def baseline(result: CheckResult, name: str, *, on: date) -> tuple[Event, ...]:
    """A “first” revision of the recipe and of each component that has none yet, and the pantry if none is kept.

    A revision dates from the day that readers see; `on` is for what has none. Recipes with errors are left out.
    """
    setting = result.setting
    firsts = [
        _first(result, each, on) for each in (*_components(result, name), name) if _is_new(result, each)
    ]
    text = result.texts.get(PANTRY, "")
    pantry = [PantryChange(on=on, text=text)] if text and setting.ledger.pantry() is None else []
    return (*pantry, *firsts)


def _is_new(result: CheckResult, name: str) -> bool:
    return name in result.setting.book and result.setting.ledger.revision(name) is None


def _first(result: CheckResult, name: str, on: date) -> Revision:
    formula = result.setting.book[name]
    current = revision_of(formula, result.setting.ledger)
    return Revision(
        recipe=name,
        number=max(current.number, result.setting.ledger.next_number(name, shown=0)),
        on=current.updated or on,
        cause="first",
        corrections=len(formula.about.corrections),
        facts=facts_of(formula, result.setting),
        text=result.texts[formula.path],
    )


def _components(result: CheckResult, name: str) -> Iterator[str]:
    """Everything that goes into a recipe, and into that, each once."""
    seen, waiting = {name}, [name]
    while waiting:
        formula = result.setting.book.get(waiting.pop())
        for line in formula.lines if formula else ():
            for each in (line, *line.alternatives):
                if each.component and each.component not in seen:
                    seen.add(each.component)
                    waiting.append(each.component)
                    yield each.component
