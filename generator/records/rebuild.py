"""Revisions of a recipe: which there are, and an earlier one as it was.

An earlier revision is rebuilt from the texts that the ledger keeps: the whole folder as of that event. From before
the ledger it is rebuilt by taking the corrections of the file back; where that cannot be done, it says so.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from generator.diagnostics.diagnostic import Severity
from generator.formula.model import Formula
from generator.history.ledger import Facts, Ledger, PantryChange, Revision
from generator.history.taking_back import in_time, taken_back
from generator.pipeline import CheckResult, check_folder
from generator.present.facts import facts_of
from generator.present.recipe import Setting

PANTRY = "pantry.yaml"


@dataclass(frozen=True, slots=True, kw_only=True)
class Rebuilt:
    """A recipe as of a revision, in a setting of that time. `told` says what it is rebuilt from."""

    formula: Formula
    setting: Setting
    told: str

    @property
    def facts(self) -> Facts:
        return facts_of(self.formula, self.setting)


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """Why a revision cannot be shown, in a sentence."""

    words: str


def revision_numbers(result: CheckResult, name: str) -> tuple[int, ...]:
    """Every revision of a recipe that there is or was, lowest first."""
    formula, ledger = result.setting.book[name], result.setting.ledger
    kept = tuple(each.number for each in ledger.revisions(name))
    first = kept[0] if kept else 1 + len(formula.about.corrections)
    corrections = ledger.revisions(name)[0].corrections if kept else len(formula.about.corrections)
    before = range(max(first - corrections, 1), first)
    return (*before, *(kept or (first,)))


def rebuild(root: Path, result: CheckResult, name: str, number: int) -> Rebuilt | Refused:
    """Revision `number` of a recipe. `result` is the folder as it stands."""
    numbers = revision_numbers(result, name)
    if number not in numbers:
        return no_such_revision(result, name, number)
    kept = next((each for each in result.setting.ledger.revisions(name) if each.number == number), None)
    if kept is not None and kept.text:
        return _from_ledger(root, result, kept)
    if kept is not None:
        return Refused(words=f"the ledger numbers revision {number} of {name} and does not keep its text")
    return _taken_back(root, result, name, number)


def no_such_revision(result: CheckResult, name: str, number: int) -> Refused:
    numbers = revision_numbers(result, name)
    return Refused(words=f"there is no revision {number} of {name}: there {_listed(numbers)}")


def _listed(numbers: tuple[int, ...]) -> str:
    if len(numbers) == 1:
        return f"is only {numbers[0]}"
    return f"are {', '.join(str(each) for each in numbers[:-1])} and {numbers[-1]}"


def _from_ledger(root: Path, result: CheckResult, kept: Revision) -> Rebuilt | Refused:
    ledger = result.setting.ledger
    until = ledger.events.index(kept)
    files = dict(_texts_at(ledger, until))
    then = check_folder(root, day=result.setting.day, instead=_encoded(files))
    formula = then.setting.book.get(kept.recipe)
    if formula is None:
        return Refused(
            words=f"revision {kept.number} of {kept.recipe} is kept, and {_not_understood(then, kept.recipe)}"
        )
    setting = replace(then.setting, ledger=replace(ledger, events=ledger.events[: until + 1]))
    today = _as_today(formula, result, files)
    told = f"revision {kept.number} from the text that the ledger keeps of {kept.on.isoformat()}{today}"
    return Rebuilt(formula=formula, setting=setting, told=told)


def _as_today(formula: Formula, result: CheckResult, files: Mapping[str, str]) -> str:
    """What else the recipe is made from that the ledger keeps no text of."""
    components = dict.fromkeys(line.component for line in formula.lines if line.component)
    names = [each for each in components if f"recipes/{each}.md" not in files]
    names += ["the pantry"] if PANTRY not in files and PANTRY in result.texts else []
    return f"; {' and '.join(names)} as of today" if names else ""


def _texts_at(ledger: Ledger, until: int) -> Iterator[tuple[str, str]]:
    """By path, the newest text at or before event `until`; else the oldest one after it that is told as the first.

    What changed later for the first time stands in the ledger with the text it had before.
    """
    newest: dict[str, str] = {}
    for place, event in enumerate(ledger.events):
        path, is_first = _path_of(event)
        if path is None or not isinstance(event, Revision | PantryChange):
            continue
        if not event.text and isinstance(event, Revision):
            continue
        if place <= until or (is_first and path not in newest):
            newest[path] = event.text
    yield from newest.items()


def _path_of(event: object) -> tuple[str | None, bool]:
    if isinstance(event, Revision):
        return _path(event.recipe), event.cause == "first"
    return (PANTRY, not event.what) if isinstance(event, PantryChange) else (None, False)


def _taken_back(root: Path, result: CheckResult, name: str, number: int) -> Rebuilt | Refused:
    """From the oldest text there is, as many corrections back as the revision is older."""
    revisions = result.setting.ledger.revisions(name)
    start: Rebuilt | Refused = _as_it_stands(result, name)
    if revisions:
        start = rebuild(root, result, name, revisions[0].number)
    if isinstance(start, Refused):
        return start
    if not revisions and number == 1 + len(start.formula.about.corrections):
        return start
    text = revisions[0].text if revisions else result.texts[_path(name)]
    first = revisions[0].number if revisions else 1 + len(start.formula.about.corrections)
    corrections = in_time(start.formula.about.corrections)
    count = first - number
    undone = taken_back(
        text, start.formula, reversed(corrections[len(corrections) - count :]), spoons=start.setting.spoons
    )
    if undone.refused:
        return Refused(words=f"revision {number} of {name} cannot be rebuilt: {undone.refused}")
    ledger = result.setting.ledger
    around = dict(_texts_at(ledger, ledger.events.index(revisions[0]))) if revisions else {}
    files = {**around, _path(name): undone.text}
    return _undone(root, result, name, number, files, kept=len(corrections) - count, back=count)


def _as_it_stands(result: CheckResult, name: str) -> Rebuilt:
    return Rebuilt(formula=result.setting.book[name], setting=result.setting, told="the file as it stands")


def _undone(
    root: Path, result: CheckResult, name: str, number: int, files: Mapping[str, str], *, kept: int, back: int
) -> Rebuilt | Refused:
    """The revision in a folder of those files, of whose corrections the first `kept` were made by then."""
    then = check_folder(root, day=result.setting.day, instead=_encoded(files))
    formula = then.setting.book.get(name)
    if formula is None:
        return Refused(words=f"revision {number} of {name} cannot be rebuilt: {_not_understood(then, name)}")
    about = replace(formula.about, corrections=in_time(formula.about.corrections)[:kept])
    earlier = replace(formula, about=about)
    # The number stands before the ledger; its day is told by the corrections that are left.
    told_as = Revision(recipe=name, number=number, on=result.setting.day, cause="first")
    book = {**then.setting.book, name: earlier}
    setting = replace(then.setting, book=book, ledger=Ledger(events=(told_as,)))
    count = "the newest correction" if back == 1 else f"the newest {back} corrections"
    source = "the oldest text in the ledger" if len(files) > 1 else "the file"
    told = f"revision {number} rebuilt by taking {count} back from {source}; all other words are those of it"
    return Rebuilt(formula=earlier, setting=setting, told=told)


def _path(name: str) -> str:
    return f"recipes/{name}.md"


def _encoded(files: Mapping[str, str]) -> dict[str, bytes]:
    return {path: text.encode() for path, text in files.items()}


def _not_understood(then: CheckResult, name: str) -> str:
    path = _path(name)
    errors = (each for each in then.diagnostics if each.severity is Severity.ERROR)
    first = next((each.message for each in errors if each.span.path == path), "")
    return (
        f"it can no longer be read ({first})" if first else "something it is made with can no longer be read"
    )
