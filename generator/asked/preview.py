"""The files of the output, each made only when somebody asks for it: what a local preview serves.

The same functions as in a make render them; what differs is when. Files that are made together are a `Piece`;
two pieces made from equal things are equal files, so that a change of one recipe remakes only what shows it.
"""

from collections.abc import Callable, Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from generator.present.data import recipe_data
from generator.present.people import PeopleView
from generator.present.posters import chapter_cards, share_path
from generator.present.views import PhotoView, RecipeView, SiteView
from generator.publication.checked import CheckResult
from generator.publication.outputs import Media
from generator.render.bench_sheets.render import render_bench_sheet
from generator.render.cards.render import render_cards
from generator.render.description.variants import names_of, variants
from generator.render.feeds.render import render_feeds
from generator.render.formula_sheets.render import render_formula_sheets
from generator.render.images.overlay import render_overlay
from generator.render.images.posters import render_chapter_cards, render_share, render_tall
from generator.render.output import Product
from generator.render.people_sheet.render import render_people
from generator.render.photographs import FORMATS, all_copies
from generator.render.recipe_json import render_recipe_json
from generator.render.site.assets import asset_products
from generator.render.site.frame import Frame, frame_of
from generator.render.site.page import Page, finished_page
from generator.render.site.pages import recipe_page, site_pages
from generator.render.site.pictures import media_products, photo_products
from generator.render.site.places import file_of
from generator.render.sitemap import render_sitemap
from generator.render.structured_data.render import structured_data
from generator.render.tag_sheets.remarks import remarks, remarks_text
from generator.render.tag_sheets.render import USUAL
from generator.render.tag_sheets.sheets import render_tag_sheets
from generator.render.template_fault import TemplateFault as TemplateFault
from generator.render.theme import is_own
from generator.render.theme_files import files_of
from generator.settings import Paper, Settings

PAPERS = ("card-4x6.pdf", "card-5x7.pdf", "card-a6.pdf", "card-a5.pdf")


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """Files that are made together. `made_from` is all that they depend on."""

    made_from: object
    work: Callable[[], tuple[Product, ...]]


Pieces = Mapping[str, Piece]
"""How to make each file, by its path in the output folder. Paths that end in "/" stand for all below them."""


def pieces_of(result: CheckResult, root: Path) -> dict[str, Piece]:
    """Everything that a make of the folder `root` would write, and the pages and cards of drafts."""
    site, settings = result.site, result.setting.settings
    pieces = dict(_pages(site))
    pieces |= _shared(site, settings, result.media)
    for view in site.all_recipes:
        pieces |= _papers(view, settings)
        pieces |= _desk(view, result)
        data = partial(_numbers, view.name, result)
        pieces[f"site/recipes/{view.name}/recipe.json"] = Piece(made_from=view, work=data)
    pieces |= _photos(result, root)
    people = result.who_can_eat
    if people is not None:
        pieces["desk/people/index.html"] = Piece(made_from=people, work=partial(_people, people))
    if not is_own(settings.theme):
        return pieces
    stamp = tuple((path, path.stat().st_mtime_ns) for path in files_of(settings.theme))
    return {path: replace(each, made_from=(each.made_from, stamp)) for path, each in pieces.items()}


def _pages(site: SiteView) -> Iterator[tuple[str, Piece]]:
    frame = frame_of(site)
    drafts = (each for each in site.all_recipes if not each.on_site)
    structured = partial(structured_data, site=site)
    pages = (
        *site_pages(site, structured=structured),
        *(recipe_page(each, structured=structured) for each in drafts),
    )
    for page in pages:
        yield f"site/{file_of(page.path)}", Piece(made_from=(page, frame), work=partial(_page, page, frame))


def _page(page: Page, frame: Frame) -> tuple[Product, ...]:
    return (finished_page(page, frame),)


def _shared(site: SiteView, settings: Settings, media: Media) -> dict[str, Piece]:
    feeds = Piece(made_from=site, work=lambda: (*render_feeds(site), *render_sitemap(site)))
    names = ("feed.xml", "feed.json", "sitemap.xml", "robots.txt")
    return {
        "site/leaf/": Piece(made_from=settings.theme, work=lambda: tuple(asset_products(settings.theme))),
        "site/media/": Piece(made_from=object(), work=lambda: tuple(media_products(site, media))),
        **{f"site/{name}": feeds for name in names},
    }


def _photos(result: CheckResult, root: Path) -> Iterator[tuple[str, Piece]]:
    """One piece for each photograph in all its copies; a file that was changed has another moment."""
    for photo in result.setting.photos.values():
        try:
            moment = (root / photo.source).stat().st_mtime_ns
        except OSError:
            continue
        work = partial(_photo, photo, result.media)
        for copy in all_copies(photo.path, photo.width, photo.height):
            for form in FORMATS:
                yield f"site/{copy.path(form)}", Piece(made_from=(photo, moment), work=work)


def _photo(photo: PhotoView, media: Media) -> tuple[Product, ...]:
    return tuple(photo_products(photo, media))


def _papers(view: RecipeView, settings: Settings) -> dict[str, Piece]:
    cards = Piece(made_from=(view, settings), work=lambda: tuple(render_cards(view, theme=settings.theme)))
    return {f"site/recipes/{view.name}/{name}": cards for name in PAPERS}


def _desk(view: RecipeView, result: CheckResult) -> dict[str, Piece]:
    settings = result.setting.settings
    paper: Paper = settings.paper
    start = f"desk/{view.name}/"

    def described() -> tuple[Product, ...]:
        limits = {"limit": settings.description_limit, "short_limit": settings.short_limit}
        texts = variants(view, **limits)
        return tuple(Product(path=f"{start}{each.file}", content=each.text.encode()) for each in texts)

    def tags() -> tuple[Product, ...]:
        tag = result.tag(view.name)
        sheets = render_tag_sheets(tag, size=USUAL, paper=paper, theme=settings.theme)
        told = remarks_text((*sheets.told, *remarks(tag)))
        return (
            Product(path=f"{start}tags.pdf", content=sheets.content),
            Product(path=f"{start}tags.txt", content=told.encode()),
        )

    def bench() -> tuple[Product, ...]:
        return (render_bench_sheet(view, paper=paper, theme=settings.theme),)

    def formula() -> tuple[Product, ...]:
        return tuple(render_formula_sheets(view, paper=paper, theme=settings.theme))

    key = (view, settings)
    sheets = [f"{start}formula.pdf", f"site/{view.sheet.path}"] if view.sheet else []
    tagged = Piece(made_from=(*key, result.bakes, result.setting.day), work=tags)
    texts = Piece(made_from=key, work=described)
    return {
        **{f"{start}{file}": texts for file, _, _ in names_of(view)},
        f"{start}tags.pdf": tagged,
        f"{start}tags.txt": tagged,
        f"{start}bench-sheet.pdf": Piece(made_from=key, work=bench),
        **_drawn(view, result),
        f"{start}overlay.png": Piece(made_from=view, work=lambda: tuple(render_overlay(view))),
        **{path: Piece(made_from=key, work=formula) for path in sheets},
    }


def _drawn(view: RecipeView, result: CheckResult) -> dict[str, Piece]:
    """The pictures with words, over a photograph that may be changed while the view is the same."""
    media, moment = result.media, 0
    with suppress(OSError):
        moment = (media.root / view.photo.source).stat().st_mtime_ns if view.photo else 0
    cards = Piece(made_from=view, work=lambda: tuple(render_chapter_cards(view)))
    share = Piece(made_from=(view, moment), work=lambda: (render_share(view, media),))
    tall = Piece(made_from=(view, moment), work=lambda: (render_tall(view, media),))
    return {
        f"site/{share_path(view)}": share,
        f"desk/{view.name}/tall.jpg": tall,
        **{f"desk/{view.name}/{card.file}": cards for card in chapter_cards(view)},
    }


def _people(people: PeopleView) -> tuple[Product, ...]:
    return (render_people(people),)


def _numbers(name: str, result: CheckResult) -> tuple[Product, ...]:
    return (render_recipe_json(name, recipe_data(result.setting.book[name], result.setting)),)
