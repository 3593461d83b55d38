"""Who can eat this? A table of bakes by people, for the desk alone.

A bake stands there by the packs as they were last read and, where there is a bake record, once more as it was baked
on the newest day, with the packs of that day.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from generator.declaration.declare import declare
from generator.declaration.model import Declaration
from generator.declaration.people import Answer, Eater, answers_for, worst
from generator.formula.bake_day import as_baked
from generator.formula.model import Formula
from generator.history.bakes import BakeRecord, newest_bake
from generator.present.reasons import reasons
from generator.present.recipe import Setting
from generator.present.tags import packs_words
from generator.wording.forms import day_words, place_of
from generator.wording.speech import say


@dataclass(frozen=True, slots=True, kw_only=True)
class PersonCell:
    """`state` is the gravest of `answers`: contains, may contain, unknown, not stated."""

    state: str
    answers: tuple[Answer, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PersonHead:
    name: str
    avoids: str
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BakeRow:
    """`basis` says on which packs the answers stand; "" where they stand on none."""

    title: str
    cells: tuple[PersonCell, ...]
    basis: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PeopleView:
    """A row for each bake by its title, a cell for each person who avoids something, in the order of the file."""

    title: str
    language: str
    theme: str
    people: tuple[PersonHead, ...]
    rows: tuple[BakeRow, ...]


def people_view(people: Sequence[Eater], setting: Setting, bakes: Iterable[BakeRecord] = ()) -> PeopleView:
    told = tuple(each for each in people if each.avoids)
    records = tuple(bakes)
    formulas = sorted(setting.book.values(), key=lambda each: (place_of(each.about.title), each.name))
    return PeopleView(
        title=setting.settings.title,
        language=setting.settings.language,
        theme=setting.settings.theme,
        people=tuple(
            PersonHead(name=each.name, avoids=", ".join(one.word for one in each.avoids), note=each.note)
            for each in told
        ),
        rows=tuple(row for each in formulas for row in _rows(each, told, setting, records)),
    )


def _rows(
    formula: Formula, people: tuple[Eater, ...], setting: Setting, bakes: tuple[BakeRecord, ...]
) -> Iterator[BakeRow]:
    usual = setting.declarations[formula.name][setting.settings.region]
    yield _row(
        formula,
        people,
        usual,
        setting.book,
        packs_words(formula, setting.book, None),
    )
    record = newest_bake(bakes, formula.name, until=setting.day)
    if record is not None:
        yield _row_of_the_day(formula, people, setting, record)


def _row_of_the_day(
    formula: Formula, people: tuple[Eater, ...], setting: Setting, record: BakeRecord
) -> BakeRow:
    book = as_baked(formula, book=setting.book, packs=record.packs, added=record.as_written.added)
    baked = book[formula.name]
    declared = declare(baked, book=book, region=setting.settings.region)
    day = say("As baked on {day}.", day=day_words(record.day))
    return _row(baked, people, declared, book, f"{day} {packs_words(baked, book, record)}".strip())


def _worded(answer: Answer) -> Answer:
    return replace(answer, reasons=reasons(answer.reasons))


def _row(
    formula: Formula,
    people: tuple[Eater, ...],
    declared: Declaration,
    book: Mapping[str, Formula],
    basis: str,
) -> BakeRow:
    statement = "".join(run.text for run in declared.ingredients)
    answers = (answers_for(each, formula, book=book, statement=statement) for each in people)
    cells = tuple(PersonCell(state=worst(each), answers=tuple(map(_worded, each))) for each in answers)
    return BakeRow(title=formula.about.title, cells=cells, basis=basis)
