"""All bakes with their state, for the first page of the desk."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import PurePosixPath

from generator.asked.preview import PAPERS
from generator.catalogue.pack import Pack
from generator.desk.state import Known
from generator.diagnostics.diagnostic import Diagnostic, Severity, has_errors
from generator.records.due import Stale, stale_copies


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One bake. `states` are what is to be seen to, gravest first; `files` are names with their addresses."""

    name: str
    title: str
    published: str
    states: tuple[str, ...]
    broken: bool
    well: bool
    files: tuple[tuple[str, str], ...]
    page: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PackRow:
    name: str
    label: str
    checked: str
    remarks: tuple[str, ...]


def rows_of(known: Known) -> tuple[Row, ...]:
    """Every recipe file, those with errors first, then those with something to see to."""
    stale = stale_copies(known.result)
    names = recipe_names(known)
    rows = [_row(known, name, tuple(each for each in stale if each.copy.recipe == name)) for name in names]
    return tuple(sorted(rows, key=lambda row: (not row.broken, row.well, row.title.casefold())))


def last_good(errors: int) -> str:
    """What is said where something has errors; 0 where they cannot be counted."""
    return f"{errors or 'Several'} error{'' if errors == 1 else 's'}: the last good pages are shown"


def recipe_names(known: Known) -> tuple[str, ...]:
    paths = (PurePosixPath(path) for path in known.result.texts)
    return tuple(sorted(path.stem for path in paths if str(path.parent) == "recipes"))


def _row(known: Known, name: str, stale: tuple[Stale, ...]) -> Row:
    result = known.result
    path = f"recipes/{name}.md"
    own = [each for each in result.diagnostics if each.span.path == path]
    formula, view = result.setting.book.get(name), result.views.get(name)
    states = tuple(_states(known, name, own, stale))
    published = ""
    if formula is not None and view is not None:
        day = formula.about.published
        published = (
            view.published_day if view.on_site else f"planned for {view.published_day}" if day else "draft"
        )
    return Row(
        name=name,
        title=formula.about.title if formula else name,
        published=published,
        states=states,
        broken=_is_broken(known, name, own),
        well=not states,
        files=tuple(_files(known, name)),
        page=f"/recipes/{name}/" if f"site/recipes/{name}/index.html" in known.pieces else "",
    )


def _is_broken(known: Known, name: str, own: list[Diagnostic]) -> bool:
    return has_errors(own) or name not in known.result.setting.book


def _states(known: Known, name: str, own: list[Diagnostic], stale: tuple[Stale, ...]) -> Iterator[str]:
    errors = sum(each.severity is Severity.ERROR for each in own)
    if _is_broken(known, name, own):
        yield last_good(errors)
    for each in stale:
        yield f"Stale copy ({each.harm.name.lower()}): {each.copy.place}"
    region = known.result.setting.settings.region
    declared = known.result.setting.declarations.get(name, {}).get(region)
    if declared is not None and not declared.finished:
        yield "Label not finished: packs are to be read"
    warnings = len(own) - errors
    if warnings:
        yield f"{warnings} remark{'' if warnings == 1 else 's'}"


def _files(known: Known, name: str) -> Iterator[tuple[str, str]]:
    titles = {
        "bench-sheet.pdf": "Bench sheet",
        "formula.pdf": "Formula sheet",
        "tags.pdf": "Tags",
        "overlay.png": "Overlay",
        "tall.jpg": "Tall picture",
        "chapter-1.png": "First chapter’s card",
        "description.txt": "Description",
        "short.txt": "Short description",
        "comment.txt": "Pinned comment",
        "chapters.vtt": "Chapters",
    }
    for file in PAPERS:
        if f"site/recipes/{name}/{file}" in known.pieces:
            size = file.removeprefix("card-").removesuffix(".pdf")
            yield (
                f"Card {size.replace('x', ' × ') if 'x' in size else size.upper()}",
                f"/recipes/{name}/{file}",
            )
    for file, title in titles.items():
        if f"desk/{name}/{file}" in known.pieces:
            yield title, f"/desk/out/{name}/{file}"


def packs_of(known: Known) -> tuple[PackRow, ...]:
    """Every row of the pantry with the day it was read, those to read first."""
    said: dict[str, list[str]] = {}
    for each in known.result.diagnostics:
        if each.span.path == "pantry.yaml":
            pack = _pack_at(known, each)
            if pack is not None:
                said.setdefault(pack.name, []).append(f"{each.message.rstrip('.')}. {each.hint}".strip())
    rows = [
        PackRow(
            name=pack.name,
            label=pack.label,
            checked=pack.checked.isoformat() if pack.checked else "",
            remarks=tuple(dict.fromkeys(said.get(pack.name, ()))),
        )
        for pack in known.result.shelf.pantry.packs()
    ]
    return tuple(sorted(rows, key=lambda row: (not row.remarks, row.checked, row.name)))


def _pack_at(known: Known, found: Diagnostic) -> Pack | None:
    """The row that a finding stands in: the last that begins above it."""
    packs = [each for each in known.result.shelf.pantry.packs() if each.span.line <= found.span.line]
    return max(packs, key=lambda each: each.span.line, default=None)
