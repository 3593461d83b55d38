"""The whole program on one page.

    source  ->  formula  ->  declaration  ->  present  ->  render  ->  build

`check_folder` goes as far as the views and reports every mistake of every file; `make_folder` renders and writes,
unless there is an error anywhere.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date, datetime
from fractions import Fraction
from functools import partial
from pathlib import Path
from zoneinfo import ZoneInfo

from generator.build.store import WriteReport
from generator.catalogue.load import Pantry, built_in, read_pantry
from generator.declaration.checks import (
    claim_diagnostics,
    kitchen_diagnostics,
    label_diagnostics,
    pack_diagnostics,
)
from generator.declaration.declare import REGION_NAMES, declare
from generator.declaration.people import Eater, read_people
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, Severity, in_order
from generator.diagnostics.span import Span, whole_file
from generator.formula.article import Article, unknown_bakes
from generator.formula.book import Book, understand_all
from generator.formula.intake.article import read_article
from generator.formula.intake.recipe import read_recipe
from generator.formula.scale_factor import Refusal
from generator.formula.shelf import Shelf
from generator.formula.wish import Granted, Wish, grant
from generator.formula.written import WrittenRecipe
from generator.history.bakes import read_bakes
from generator.history.ledger import Ledger, read_ledger
from generator.measure.unit import SPOONS
from generator.present.altitude import at_altitude
from generator.present.listing import OneByOne, recipe_views, worded
from generator.present.moved import Standing
from generator.present.recipe import Setting
from generator.present.scaled import scaled_data, scaled_view
from generator.present.views import PhotoView
from generator.publication.checked import CheckResult as CheckResult
from generator.publication.clock import Profile
from generator.publication.losses import lost_in
from generator.publication.making import How, Order, make
from generator.publication.noticed import moved_diagnostics, notice
from generator.publication.outputs import MediaFolder
from generator.publication.release import gate, gate_own
from generator.render.description.variants import FULL, of_film, text_of
from generator.render.photographs import MIDDLE, published_path, published_size
from generator.render.recipe_json import render_recipe_json
from generator.render.terminal.render import as_terminal
from generator.render.theme_check import chosen_theme
from generator.settings import Settings
from generator.source.document import Folder, Sequence, Text
from generator.source.media import NamedPhoto, focus_faults, focus_of, photo_faults, unreadable_photo
from generator.source.private import read_private
from generator.source.read import read_folder
from generator.source.site import read_settings
from generator.wording.speech import NOTATION, speak, speaking

Progress = Callable[[str, int, int], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class MakeResult:
    """`report` is None where errors kept all from being written, or `unproven`: files that are wrong by our fault, or
    by that of the maker's `own_theme`."""

    diagnostics: Diagnostics
    texts: Mapping[str, str]
    report: WriteReport | None
    day: date
    profile: Profile = field(default_factory=Profile)
    unproven: Diagnostics = ()
    own_theme: bool = False


def check_folder(
    root: Path,
    *,
    day: date | None = None,
    instead: Mapping[str, bytes] | None = None,
    only: frozenset[str] | None = None,
    lean: bool = False,
) -> CheckResult:
    """Reads, understands, declares and words a content folder as of the publication day.

    `instead` holds files as they would be, by path: what would be wrong, and what readers would see. With `only`, of
    the recipes only those are understood; what is found out about them is the same as without. A `lean` result words
    a recipe each time it is asked for, and leaves it to `losses.lost_in` to say what its outputs would lose.
    """
    speak(NOTATION)
    folder, read = read_folder(root, instead=instead, only=only)
    settings, set_up, styled = _settings(folder)
    pantry, stocked = read_pantry(folder.pantry, catalogue=built_in(), spoons=SPOONS[settings.cup])
    shelf = _shelf(settings, pantry)
    written, intake = _recipes(folder, shelf)
    articles, posts = _articles(folder, written)
    standing = {
        name: Standing(path=each.path, kinds=each.about.kinds, was=each.about.was)
        for name, each in written.items()
    }
    moved = moved_diagnostics(standing, articles)
    so_far = (*read, *set_up, *stocked, *intake)
    book = understand_all(written, faulty=_faulty(folder, so_far), shelf=shelf)
    media = MediaFolder(root=root)
    bakes, baked = read_bakes(folder.bakes, names=_names(folder, written), book=book.formulas, shelf=shelf)
    people, private, texts = _people(root, folder, settings.language)
    photos, pictures = _photos(written, articles, folder, media)
    ledger, told = read_ledger(folder.ledger)
    setting = _setting(settings, book, photos, day=day or _today(settings), ledger=ledger)
    labels, history = _labels(setting), notice(setting, folder, _names(folder, written))
    # From here on, until another folder is read, everything is said in the publication's own language.
    speak(settings.language)
    views = OneByOne(partial(worded, setting), setting.book) if lean else recipe_views(setting)
    described = (*(() if lean else lost_in(setting, views, folder.texts)), *_claims(folder.texts))
    return CheckResult(
        diagnostics=in_order(
            (
                *so_far,
                *posts,
                *moved,
                *pictures,
                *book.diagnostics,
                *labels,
                *described,
                *baked,
                *private,
                *told,
                *history,
            )
        ),
        texts={**texts, **styled},
        setting=setting,
        shelf=shelf,
        views=views,
        articles=articles,
        media=media,
        bakes=bakes,
        people=people,
    )


def make_folder(
    root: Path,
    *,
    output: Path,
    day: date | None = None,
    jobs: int = 1,
    progress: Progress | None = None,
    how: How | None = None,
) -> MakeResult:
    """Checks a folder, renders it and writes what changed; with an error anywhere nothing is written.

    What can be known from the last make is taken from there: see `making.py`.
    """

    def check(only: frozenset[str] | None) -> CheckResult:
        return check_folder(root, day=day, only=only, lean=True)

    order = Order(
        root=root,
        output=output,
        check=check,
        day=day,
        jobs=jobs,
        progress=progress,
        how=how or How(),
        prove=gate,
        prove_own=gate_own,
    )
    made = make(order)
    return MakeResult(
        diagnostics=made.diagnostics,
        texts=made.texts,
        report=made.report,
        day=made.day,
        profile=made.profile,
        unproven=made.unproven,
        own_theme=made.own_theme,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What `show` prints; both are "" where the recipe has errors, `refused` says why a size cannot be."""

    text: str = ""
    refused: str = ""


def show_text(
    result: CheckResult, name: str, *, wish: Wish | None = None, feet: Fraction | None = None
) -> Shown:
    """The normalised recipe for a terminal, in the wished size; `feet` is how high the kitchen lies."""
    granted = _granted(result, name, wish)
    if not isinstance(granted, Granted):
        return Shown(refused=f"{granted.message}. {granted.hint}") if granted else Shown()
    view = scaled_view(granted, result.setting)
    if feet is not None:
        view = at_altitude(view, granted.formula, spoons=result.setting.spoons, feet=feet)
    return Shown(text=as_terminal(view))


def show_json(result: CheckResult, name: str, *, wish: Wish | None = None) -> Shown:
    """What recipe.json holds, in the wished size."""
    granted = _granted(result, name, wish)
    if not isinstance(granted, Granted):
        return Shown(refused=f"{granted.message}. {granted.hint}") if granted else Shown()
    data = scaled_data(granted, result.setting)
    return Shown(text=render_recipe_json(name, data).content.decode())


def _granted(result: CheckResult, name: str, wish: Wish | None) -> Granted | Refusal | None:
    formula = result.setting.book.get(name)
    if formula is None:
        return None
    return grant(formula, wish or Wish(times=Fraction(1)), spoons=result.setting.spoons)


def describe_text(result: CheckResult, name: str, kind: str = FULL, *, film: str = "") -> str:
    """A text that goes with the video at the address `film`, or the first; "" where the recipe has errors."""
    view, settings = result.views.get(name), result.setting.settings
    if view is None:
        return ""
    of = next((of_film(view, each) for each in view.videos if each.url == film), view)
    return text_of(of, kind, limit=settings.description_limit, short_limit=settings.short_limit)


def _settings(folder: Folder) -> tuple[Settings, Diagnostics, Mapping[str, str]]:
    """The settings, what is wrong in them and in the theme, and the texts of templates with faults."""
    if "site.yaml" in folder.unreadable:
        return Settings(), (), {}
    settings, found = read_settings(folder.site, "site.yaml", regions=REGION_NAMES)
    node = folder.site.get("theme") if folder.site else None
    theme = chosen_theme(settings.theme, folder.root, span=node.span if node else whole_file("site.yaml"))
    told = (*found, *kitchen_diagnostics(_handled(folder)), *theme.diagnostics)
    return replace(settings, theme=theme.theme), told, theme.texts


def _handled(folder: Folder) -> tuple[tuple[str, Span], ...]:
    """Each word of `kitchen_handles` with its place."""
    node = folder.site.get("kitchen_handles") if folder.site else None
    places = node.items if isinstance(node, Sequence) else (node,)
    return tuple((each.value, each.span) for each in places if isinstance(each, Text) and each.value.strip())


def _shelf(settings: Settings, pantry: Pantry) -> Shelf:
    return Shelf(
        catalogue=built_in(),
        pantry=pantry,
        spoons=SPOONS[settings.cup],
        flour_cup=settings.flour_cup,
        egg=settings.egg,
        yeast_sugar=settings.yeast_sugar,
    )


def _recipes(folder: Folder, shelf: Shelf) -> tuple[dict[str, WrittenRecipe], Diagnostics]:
    found: list[Diagnostic] = []
    written = {}
    for document in folder.recipes:
        written[document.name], wrong = read_recipe(document, spoons=shelf.spoons)
        found.extend(wrong)
    return written, tuple(found)


def _articles(
    folder: Folder, recipes: Mapping[str, WrittenRecipe]
) -> tuple[tuple[Article, ...], Diagnostics]:
    pairs = [read_article(document) for document in (*folder.journal, *folder.standing)]
    articles = tuple(article for article, _ in pairs)
    names = {*recipes, *folder.aside, *(Path(path).stem for path in folder.unreadable)}
    wrong = (each for _, found in pairs for each in found)
    return articles, (*wrong, *unknown_bakes(articles, names))


def _names(folder: Folder, recipes: Mapping[str, WrittenRecipe]) -> tuple[str, ...]:
    """Every recipe there is, one that cannot be read too."""
    unread = (Path(path).stem for path in folder.unreadable if path.startswith("recipes/"))
    return (*recipes, *folder.aside, *unread)


def _people(
    root: Path, folder: Folder, language: str
) -> tuple[tuple[Eater, ...], Diagnostics, Mapping[str, str]]:
    """The private list of people, what is wrong in it, and the texts for excerpts with its own among them."""
    keys, read, texts = read_private(root)
    # What they avoid may be written in the language of the publication.
    with speaking(language):
        people, found = read_people(keys)
    return people, (*read, *found), {**folder.texts, **texts}


def _faulty(folder: Folder, diagnostics: Diagnostics) -> set[str]:
    """Names of recipes whose own file has an error already."""
    errors = {each.span.path for each in diagnostics if each.severity is Severity.ERROR}
    return {Path(path).stem for path in (*errors, *folder.unreadable) if path.startswith("recipes/")}


def _photos(
    recipes: Mapping[str, WrittenRecipe], articles: tuple[Article, ...], folder: Folder, media: MediaFolder
) -> tuple[dict[str, PhotoView], Diagnostics]:
    """The photographs that are named and can be published, by their path in the content folder."""
    named = [
        NamedPhoto(
            source=each.about.photo,
            text=each.about.photo_text,
            span=each.spans["photo"],
            focus=each.about.photo_focus,
            focus_span=each.spans.get("photo_focus"),
        )
        for each in recipes.values()
        if each.about.photo
    ]
    named += [
        NamedPhoto(
            source=each.photo,
            text=each.photo_text,
            span=each.photo_span,
            focus=each.photo_focus,
            focus_span=each.focus_span,
        )
        for each in articles
        if each.photo
    ]
    found = [*photo_faults(named, folder.media), *focus_faults(named)]
    views: dict[str, PhotoView] = {}
    for photo in (each for each in named if each.source in folder.media and each.source not in views):
        size = published_size(media(photo.source))
        if size is None:
            found.append(unreadable_photo(photo))
            continue
        path = published_path(photo.source)
        views[photo.source] = PhotoView(
            path=path,
            source=photo.source,
            text="",
            width=size[0],
            height=size[1],
            url="",
            focus=focus_of(photo.source, named) or MIDDLE,
        )
    return views, tuple(found)


def _setting(
    settings: Settings, book: Book, photos: Mapping[str, PhotoView], *, day: date, ledger: Ledger
) -> Setting:
    formulas, handles = book.formulas, settings.kitchen_handles
    with speaking(settings.language):
        declarations = {
            name: {
                region: declare(formula, book=formulas, region=region, kitchen_handles=handles)
                for region in REGION_NAMES
            }
            for name, formula in formulas.items()
        }
    return Setting(
        settings=settings, book=formulas, declarations=declarations, photos=photos, day=day, ledger=ledger
    )


def _labels(setting: Setting) -> Diagnostics:
    """What is still to be read on packs before the labels can be trusted."""
    settings, book = setting.settings, setting.book
    found = [
        each
        for formula in book.values()
        for each in label_diagnostics(formula, book=book, region=settings.region)
    ]
    return (*found, *pack_diagnostics(book, day=setting.day, pack_age=settings.pack_age))


def _today(settings: Settings) -> date:
    return datetime.now(ZoneInfo(settings.zone)).date()


def _claims(texts: Mapping[str, str]) -> Iterator[Diagnostic]:
    """A maker's own words that promise the absence of something."""
    for path, text in texts.items():
        for number, line in enumerate(text.splitlines() if path.endswith(".md") else (), start=1):
            span = Span(path=path, line=number, column=1, end_line=number, end_column=len(line) + 1)
            yield from claim_diagnostics(line, span)
