"""Who can eat this? A table of bakes by people, for the desk alone."""

from collections.abc import Sequence
from dataclasses import dataclass

from generator.declaration.people import Answer, Eater, answers_for, worst
from generator.formula.model import Formula
from generator.present.recipe import Setting


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
    title: str
    cells: tuple[PersonCell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PeopleView:
    """A row for each bake by its title, a cell for each person who avoids something, in the order of the file."""

    title: str
    language: str
    theme: str
    people: tuple[PersonHead, ...]
    rows: tuple[BakeRow, ...]


def people_view(people: Sequence[Eater], setting: Setting) -> PeopleView:
    told = tuple(each for each in people if each.avoids)
    formulas = sorted(setting.book.values(), key=lambda each: (each.about.title.casefold(), each.name))
    return PeopleView(
        title=setting.settings.title,
        language=setting.settings.language,
        theme=setting.settings.theme,
        people=tuple(
            PersonHead(name=each.name, avoids=", ".join(one.word for one in each.avoids), note=each.note)
            for each in told
        ),
        rows=tuple(
            BakeRow(title=each.about.title, cells=tuple(_cell(eater, each, setting) for eater in told))
            for each in formulas
        ),
    )


def _cell(eater: Eater, formula: Formula, setting: Setting) -> PersonCell:
    declared = setting.declarations[formula.name][setting.settings.region]
    answers = answers_for(
        eater, formula, book=setting.book, statement="".join(run.text for run in declared.ingredients)
    )
    return PersonCell(state=worst(answers), answers=answers)
