"""A selection of bakes as one book: its bakes in order, what is in them by allergen, by ingredient and by tin."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from generator.declaration.lines import formula_allergens
from generator.formula.model import Formula, Line
from generator.present.addresses import absolute, slug
from generator.present.allergen_table import (
    CONTAINS,
    MAY,
    TO_READ,
    AllergenTable,
    Declared,
    allergen_table,
)
from generator.present.reasons import reasons
from generator.present.recipe import Setting
from generator.present.views import RecipeView, SiteView
from generator.wording.forms import day_words, place_of


@dataclass(frozen=True, slots=True, kw_only=True)
class BookBake:
    """A bake of the book. `anchor` is where it stands; `language` is that of its words."""

    anchor: str
    view: RecipeView


@dataclass(frozen=True, slots=True, kw_only=True)
class BookPlace:
    """A bake that an entry leads to."""

    title: str
    anchor: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BookEntry:
    """An entry of an index; its places in the order of the book."""

    words: str
    places: tuple[BookPlace, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BookDeclared:
    """What one bake declares, as words of the region: each list alphabetical, each maybe empty.

    `to_read` is what must be read before the declaration is finished, `unfinished` the sentence that says so.
    """

    place: BookPlace
    contains: tuple[str, ...]
    may_contain: tuple[str, ...]
    to_read: tuple[str, ...]
    unfinished: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BookAllergen:
    """The bakes that contain an allergen, may contain it, or whose packs must be read before anybody can say."""

    words: str
    contains: tuple[BookPlace, ...]
    may_contain: tuple[BookPlace, ...]
    to_read: tuple[BookPlace, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class BookView:
    """`paths` leads from the path of a bake's page to its anchor in the book; `created` and `modified` are days of
    the content. `subject` says which bakes were chosen."""

    title: str
    subject: str
    maker: str
    url: str
    contact: str
    language: str
    created: date | None
    modified: date | None
    as_of: str
    bakes: tuple[BookBake, ...]
    declared: tuple[BookDeclared, ...]
    allergens: tuple[BookAllergen, ...]
    ingredients: tuple[BookEntry, ...]
    tins: tuple[BookEntry, ...]
    paths: Mapping[str, str]

    @property
    def count(self) -> int:
        return len(self.bakes)


def book_view(views: Sequence[RecipeView], setting: Setting, *, title: str, subject: str) -> BookView:
    """The book of these bakes, in their order."""
    settings = setting.settings
    bakes = tuple(BookBake(anchor=f"bake-{view.name}", view=view) for view in views)
    places = {each.view.path: BookPlace(title=each.view.title, anchor=each.anchor) for each in bakes}
    table = _table(views, setting)
    days = [day for view in views for day in (view.published, view.updated) if day]
    return BookView(
        title=title or settings.title,
        subject=subject,
        maker=settings.maker,
        url=absolute(settings.url, ""),
        contact=settings.contact,
        language=settings.language,
        created=min(days, default=None),
        modified=max(days, default=None),
        as_of=day_words(max(days, default=None)),
        bakes=bakes,
        declared=tuple(_declared(table, places, view, setting) for view in views),
        allergens=tuple(_allergens(table, places)),
        ingredients=_index(_items(views, setting), places),
        tins=_index(((view.tin, view.path) for view in views if view.tin), places),
        paths={path: place.anchor for path, place in places.items()},
    )


def _table(views: Sequence[RecipeView], setting: Setting) -> AllergenTable:
    region = setting.settings.region
    return allergen_table(
        [
            Declared(
                title=view.title,
                path=view.path,
                declaration=setting.declarations[view.name][region],
                traces=formula_allergens(setting.book[view.name], book=setting.book).traces,
            )
            for view in views
        ],
        region=region,
    )


def _declared(
    table: AllergenTable, places: Mapping[str, BookPlace], view: RecipeView, setting: Setting
) -> BookDeclared:
    row = next(row for row in table.rows if row.path == view.path)
    declaration = setting.declarations[view.name][setting.settings.region]
    said = {
        state: tuple(cell.head.words for cell in row.cells if cell.state == state)
        for state in (CONTAINS, MAY)
    }
    return BookDeclared(
        place=places[view.path],
        contains=said[CONTAINS],
        may_contain=said[MAY],
        to_read=() if declaration.finished else reasons(declaration.unknown),
        unfinished=row.unfinished,
    )


def _allergens(table: AllergenTable, places: Mapping[str, BookPlace]) -> Iterator[BookAllergen]:
    """Each allergen that a bake lists, with the bakes of each state in the order of the book."""
    for at, head in enumerate(table.heads):
        states = {row.path: row.cells[at].state for row in table.rows}
        found = {
            state: tuple(place for path, place in places.items() if states[path] == state)
            for state in (CONTAINS, MAY, TO_READ)
        }
        yield BookAllergen(
            words=head.words, contains=found[CONTAINS], may_contain=found[MAY], to_read=found[TO_READ]
        )


def _index(entries: Iterable[tuple[str, str]], places: Mapping[str, BookPlace]) -> tuple[BookEntry, ...]:
    """Words and the path of a bake, gathered by word and sorted as a reader looks them up."""
    gathered: dict[str, tuple[str, dict[str, None]]] = {}
    for words, path in entries:
        gathered.setdefault(words.casefold(), (words, {}))[1][path] = None
    return tuple(
        BookEntry(words=words, places=tuple(places[path] for path in paths))
        for _, (words, paths) in sorted(gathered.items(), key=lambda each: (place_of(each[0]), each[0]))
    )


def _items(views: Sequence[RecipeView], setting: Setting) -> Iterator[tuple[str, str]]:
    """Every ingredient under its name in the catalogue, alternatives too, with the path of its bake."""
    for view in views:
        for line in _lines(setting.book[view.name]):
            yield (line.ware.ingredient.name if line.ware else line.item), view.path


def _lines(formula: Formula) -> Iterator[Line]:
    for line in formula.lines:
        yield line
        yield from line.alternatives


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """The bakes that a selection names, each once. `unknown` are the words that name nothing."""

    names: tuple[str, ...]
    unknown: tuple[str, ...]


KIND = "kind:"
EVERYTHING = "all"


def chosen(words: Iterable[str], site: SiteView, names: Iterable[str]) -> Chosen:
    """What the words of a selection name: a recipe, `kind:NAME`, `all`.

    A kind and `all` hold what is published on the day, by title; a recipe that is named is taken, published or not.
    """
    known = frozenset(names)
    by_title = sorted(site.recipes, key=lambda view: (place_of(view.title), view.name))
    found: dict[str, None] = {}
    unknown = []
    for word in words:
        if word == EVERYTHING:
            matches = [view.name for view in by_title]
        elif word.startswith(KIND):
            wanted = slug(word.removeprefix(KIND))
            matches = [
                view.name for view in by_title if any(slug(kind.title) == wanted for kind in view.kinds)
            ]
        else:
            matches = [word] if word in known else []
        if not matches:
            unknown.append(word)
        found.update(dict.fromkeys(matches))
    return Chosen(names=tuple(found), unknown=tuple(unknown))
