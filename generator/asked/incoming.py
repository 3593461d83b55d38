"""Old work brought into a content folder: read against what the maker has, and written as new files only.

The terminal and the desk both come in here; what they show is a `Brought`, and nothing is written before
`write_brought` is asked to.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from generator.catalogue.load import read_pantry
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, Severity
from generator.diagnostics.span import Span
from generator.formula.assemble import understand
from generator.formula.intake.recipe import read_recipe
from generator.formula.model import Formula
from generator.formula.shelf import Shelf
from generator.importer.bring import bring
from generator.importer.files.sources import SUFFIXES, Refused, sources_of
from generator.importer.model import Brought, Kitchen, PantryRow
from generator.importer.pantry_text import with_rows
from generator.publication.checked import CheckResult
from generator.render.print_fonts import no_letters
from generator.source.read import read_document, read_mapping
from generator.source.write import Change, commit

PANTRY = "pantry.yaml"


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrival:
    """What came of one file: recipes, or the reason for none; `empty` names sources without an ingredient line."""

    name: str
    recipes: tuple[Brought, ...] = ()
    empty: tuple[str, ...] = ()
    refused: Refused | None = None


def kitchen_of(result: CheckResult) -> Kitchen:
    """What the importer is told of a content folder."""
    shelf, book = result.shelf, result.setting.book
    return Kitchen(
        shelf=shelf,
        book=book,
        kinds=frozenset(kind.lower() for formula in book.values() for kind in formula.about.kinds),
        proof=lambda name, text: proof(name, text, shelf=shelf, book=book),
        unprintable=no_letters,
    )


def proof(name: str, text: str, *, shelf: Shelf, book: Mapping[str, Formula] | None = None) -> Diagnostics:
    """What `check` finds in one recipe file beside the recipes of `book`, save the gentle notes."""
    document, found = read_document(f"recipes/{name}.md", text.encode(), "recipe")
    if document is None:
        return found
    written, wrong = read_recipe(document, spoons=shelf.spoons)
    _, more = understand(written, shelf=shelf, book={**(book or {}), name: None})
    return (*found, *wrong, *more)


def arrive(name: str, data: bytes, kitchen: Kitchen, *, named: str = "") -> Arrival:
    """The recipes of one file. `named` is the name to give, for a file that holds one recipe."""
    sources = sources_of(name, data)
    if isinstance(sources, Refused):
        return Arrival(name=name, refused=sources)
    brought = [
        (source, bring(source, kitchen, named=named if len(sources) == 1 else "")) for source in sources
    ]
    recipes = tuple(each for _, each in brought if each is not None)
    empty = tuple(source.name for source, each in brought if each is None)
    return Arrival(name=name, recipes=recipes, empty=empty)


def files_in(folder: Path) -> tuple[tuple[Path, ...], tuple[Path, ...]]:
    """The files of a folder that can be read, and those that are passed over. What is hidden is neither."""
    found = sorted(each for each in folder.rglob("*") if each.is_file() and not _hidden(each, folder))
    taken = tuple(each for each in found if each.suffix.casefold() in SUFFIXES)
    return taken, tuple(each for each in found if each not in taken)


def _hidden(path: Path, folder: Path) -> bool:
    return any(each.startswith(".") for each in path.relative_to(folder).parts)


def stocked(result: CheckResult, rows: Iterable[PantryRow]) -> tuple[Kitchen, str]:
    """The kitchen as it is once the rows stand in the pantry, and the text of that pantry."""
    text = with_rows(result.texts.get(PANTRY, ""), rows)
    keys, _ = read_mapping(PANTRY, text.encode())
    pantry, _ = read_pantry(keys, catalogue=result.shelf.catalogue, spoons=result.shelf.spoons)
    kitchen = kitchen_of(result)
    shelf = replace(result.shelf, pantry=pantry)
    return replace(
        kitchen, shelf=shelf, proof=lambda name, words: proof(name, words, shelf=shelf, book=kitchen.book)
    ), text


def write_brought(root: Path, brought: Brought, *, pantry: str | None = None) -> Diagnostics:
    """Writes the recipe as a new file, and the pantry with it where one is given; both or neither.

    A file that is there is never written over.
    """
    changes = [Change(path=f"recipes/{brought.name}.md", before=None, after=brought.text.encode())]
    if pantry is not None:
        path = root / PANTRY
        before = path.read_bytes() if path.exists() else None
        changes.append(Change(path=PANTRY, before=before, after=pantry.encode()))
    return commit(root, changes)


def doubts_of(brought: Brought) -> Diagnostics:
    """The doubts as findings in the source, to be shown with the line they are about."""
    texts = {each.line.number: each.line.text for each in brought.source}
    return tuple(
        Diagnostic(
            code=each.code, message=each.message, span=_place(brought, each.line, texts), hint=each.hint
        )
        for each in brought.doubts
    )


def _place(brought: Brought, line: int, texts: dict[int, str]) -> Span:
    text = texts.get(line, "")
    start = len(text) - len(text.lstrip()) + 1
    end = max(len(text.rstrip()) + 1, start + 1)
    return Span(path=brought.source_name, line=line, column=start, end_line=line, end_column=end)


def source_text(brought: Brought) -> str:
    """The source's lines at their numbers, as excerpts want them."""
    texts: dict[int, str] = {each.line.number: each.line.text for each in brought.source}
    return "\n".join(texts.get(number, "") for number in range(1, max(texts, default=0) + 1))


def is_accepted(brought: Brought) -> bool:
    """Whether `check` takes the file, and at least one of its ingredients is known: else it is no formula yet."""
    return any(line.known for line in brought.lines) and not any(
        each.severity is Severity.ERROR for each in brought.wrong
    )
