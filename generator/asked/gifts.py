"""What is made for one person at a time and stays on the desk: tags of a day, for the people of a list."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.history.bakes import BakeRecord, newest_bake
from generator.present.tag_views import Person
from generator.present.tags import tag_view
from generator.publication.checked import CheckResult
from generator.render.print_fonts import missing_glyphs
from generator.render.tag_sheets.remarks import remarks
from generator.render.tag_sheets.render import USUAL
from generator.render.tag_sheets.sheets import TagSheets, render_tag_sheets
from generator.source.recipients import Recipient


@dataclass(frozen=True, slots=True, kw_only=True)
class Printed:
    """The tags, or why there are none. `told` is for the maker, not for the tag."""

    content: bytes = b""
    tags: int = 0
    sheets: int = 0
    told: tuple[str, ...] = ()
    refused: str = ""


def print_tags(
    result: CheckResult, name: str, *, size: str = "", on: date | None = None, people: Iterable[Person] = ()
) -> Printed:
    """The tags of a recipe without errors. Without size and people they are those that a make prints."""
    record = newest_bake(result.bakes, name, until=result.setting.day, on=on)
    if on is not None and record is None:
        return Printed(refused=_no_such_bake(result.bakes, name, on))
    tag = tag_view(result.setting.book[name], result.setting, record)
    settings = result.setting.settings
    named = tuple(people)
    told = remarks(tag)
    made = render_tag_sheets(
        tag, size=size or USUAL, people=named, paper=settings.paper, theme=settings.theme
    )
    return _printed(made, told)


def _printed(made: TagSheets, told: tuple[str, ...]) -> Printed:
    return Printed(content=made.content, tags=made.tags, sheets=made.sheets, told=(*made.told, *told))


def _no_such_bake(bakes: Iterable[BakeRecord], name: str, on: date) -> str:
    days = sorted({each.day.isoformat() for each in bakes if each.recipe == name})
    known = f"There are records of {', '.join(days)}." if days else "There is no record of it in bakes/."
    return f"there is no bake record of {name} on {on.isoformat()}. {known}"


def person_of(recipient: Recipient) -> Person:
    return Person(to=recipient.to, sender=recipient.sender, note=recipient.note)


def unprintable_people(people: Iterable[Recipient]) -> Diagnostics:
    """An error for each row with a character that no font of the tags has: it would be a silent gap."""
    found = []
    for each in people:
        missing = missing_glyphs(f"{each.to}{each.sender}{each.note}")
        if missing:
            marks = ", ".join(f"U+{ord(mark):04X}" for mark in missing)
            message = f"this row has characters that cannot be printed: {marks}"
            hint = "Write the name in letters that the fonts of the tags have."
            found.append(Diagnostic(code="G009", message=message, span=each.span, hint=hint))
    return tuple(found)
