"""Title, docket, sums, times, notes and declaration."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.present.views import LineView, PartView, RecipeView, TimesView

_INDENT = "  "


def head(view: RecipeView) -> str:
    about = ", ".join(each for each in (view.makes, view.portions, view.tin) if each)
    day = f", {view.updated_day}" if view.updated_day else ", not published"
    lines = (view.title, view.scale, f"revision {view.revision}{day}", about)
    return "\n".join(line for line in lines if line)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Columns:
    """The widths of weight, volume and percent over the whole recipe, so that the parts line up, and their order."""

    weight: int
    volume: int
    percent: int
    volume_first: bool

    def amounts(self, line: LineView) -> str:
        weight, volume = f"{line.amount.weight:>{self.weight}}", f"{line.amount.volume:<{self.volume}}"
        first, second = (volume, weight) if self.volume_first else (weight, volume)
        return f"{first}  {second}  {line.percent:>{self.percent}}"


def _columns(view: RecipeView) -> _Columns:
    lines = [line for part in view.parts for line in part.lines]
    both = [line.amount for line in lines if line.amount.weight and line.amount.volume]
    return _Columns(
        weight=max((len(line.amount.weight) for line in lines), default=0),
        volume=max((len(line.amount.volume) for line in lines), default=0),
        percent=max((len(line.percent) for line in lines), default=0),
        volume_first=any(each.first == each.volume for each in both),
    )


def parts(view: RecipeView) -> Iterator[str]:
    columns = _columns(view)
    return (_part(part, columns) for part in view.parts)


def _part(part: PartView, columns: _Columns) -> str:
    remark = f" ({part.remark})" if part.remark else ""
    weight = f", {part.weight}" if part.weight else ""
    head = f"{part.title or 'Formula'}{remark}{weight}"
    return "\n".join((head, *(row for line in part.lines for row in _line(line, columns))))


def _line(line: LineView, columns: _Columns) -> Iterator[str]:
    amounts = columns.amounts(line)
    name = ", ".join(each for each in (line.item, line.preparation) if each)
    optional = " (optional)" if line.optional else ""
    yield f"{_INDENT}{amounts}  {name}{optional}".rstrip()
    cups = (f"{cup.label}: {cup.words}" for cup in line.beside)
    below_it = (*cups, *(f"or {each}" for each in line.choices), *((f"({line.note})",) if line.note else ()))
    for words in below_it:
        yield f"{_INDENT}{' ' * (len(amounts) + 2)}{words}"


def facts(view: RecipeView) -> str:
    width = max((len(fact.label) for fact in view.facts), default=0)
    return "\n".join(f"{fact.label:<{width}}  {fact.words}" for fact in view.facts)


def times(view: RecipeView) -> Iterator[str]:
    return (_times(each) for each in view.times)


def notes(view: RecipeView) -> str:
    return "\n".join(f"Note: {note}" for note in view.notes)


def _times(times: TimesView) -> str:
    sums = (("hands-on", times.hands_on), ("waiting", times.waiting), ("baking", times.baking))
    told = ", ".join(f"{name} {words}" for name, words in sums if words)
    head = f"Time, {times.way}" if times.way else "Time"
    return f"{head}: {times.total} ({told})"


def label(view: RecipeView) -> str:
    lines = (view.label.statement, view.label.advice)  # the statement holds the kitchen's sentence
    return "\n".join(line for line in lines if line)
