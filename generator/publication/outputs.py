"""Which outputs there are: one task for each thing that can be rendered by itself, with all that it reads.

To add a product: a function of plain values that returns `Product`s, and one `Task` with its inputs and the files of
the theme that it reads. Nothing else is needed for it to be made only when something of that has changed.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from generator.build.packing import digest
from generator.build.task import OnDisk, Task
from generator.present.people import PeopleView
from generator.present.posters import PosterView, page_posters
from generator.present.search_views import Related, SearchView
from generator.present.size_views import SizesView
from generator.present.tag_views import TagView
from generator.present.views import PhotoView, RecipeView, SiteView
from generator.publication.leaves import Leaf, Own, bare
from generator.render.feeds.entry import Entry
from generator.render.output import Product
from generator.render.site.frame import Frame, frame_of
from generator.settings import Paper, Settings

Media = Callable[[str], bytes]
MarkOf = Callable[[str], str]
"""The fingerprint of a file of the content folder, "" where it cannot be read."""

FEEDS = "the feeds"
ENTRIES = "feed entries"
"""The stage of tasks that make nothing, and prove what the feeds are put together from."""

_PAPER = "generator.render.paper"
_SHEET = ("paper/paper.css", "paper/docket.css")
_PAGE = (*_SHEET, "paper/sheet.css")


@dataclass(frozen=True, slots=True, kw_only=True)
class MediaFolder:
    """Reads files of the content folder by the path they are named with."""

    root: Path

    def __call__(self, path: str) -> bytes:
        return (self.root / path).read_bytes()


@dataclass(frozen=True, slots=True, kw_only=True)
class Publication:
    """All that a make renders. `site` lists short views; `leaves` are all recipes, by name; `frame` is what every
    page has around it; `entry_of` is what the feeds say of a bake."""

    site: SiteView
    frame: Frame
    leaves: Mapping[str, Leaf]
    entry_of: Callable[[str], Entry | None]
    people: PeopleView | None
    settings: Settings
    root: Path
    mark_of: MarkOf


def tasks_of(publication: Publication) -> tuple[Task, ...]:
    """All work of one make, in the order in which it is told to the maker."""
    return (*tasks_about(publication, publication.leaves), *list_tasks(publication))


def tasks_about(publication: Publication, names: Iterable[str]) -> tuple[Task, ...]:
    """All work on the files of these bakes. It depends on their leaves, their photographs, what to read next, the
    settings and the frame; `ground_of` and `stamp_of` tell whether any of these has changed."""
    site, settings = publication.site, publication.settings
    everywhere = tuple(publication.leaves[name] for name in names)
    on_site = tuple(leaf for leaf in everywhere if leaf.short.on_site)
    tasks = (
        *_pages(publication, on_site),
        *(_task("numbers", leaf, "data", _numbers, leaf.name, leaf.data) for leaf in on_site),
        *(task for leaf in everywhere for task in _drawn(publication, leaf)),
        *(task for leaf in everywhere for task in _desk(leaf, settings)),
        *(task for leaf in everywhere for task in _sheets(leaf, settings)),
        *(_cards_task(leaf, settings) for leaf in on_site),
    )
    bare_site = bare(site)
    own = {
        leaf.name: Own(leaf=replace(leaf, entry=None), site=bare_site, settings=settings)
        for leaf in everywhere
    }
    packed = settings.compressed
    finished = (replace(each, proof=own[each.about], compressed=packed) for each in tasks)
    return (*finished, *_entries(publication, on_site, bare_site))


def list_tasks(publication: Publication) -> tuple[Task, ...]:
    """All work on what shows several bakes or none."""
    packed = publication.settings.compressed
    tasks = (
        *_lists(publication.site),
        _feeds_task(publication),
        *_pictures(publication),
        *_page_shares(publication),
        *_people(publication.people),
    )
    return tuple(replace(each, compressed=packed) for each in tasks)


def feeds_task(publication: Publication) -> Task:
    """The one list that shows the words of every bake."""
    return replace(_feeds_task(publication), compressed=publication.settings.compressed)


def ground_of(publication: Publication) -> str:
    """The mark of all that the work on every bake depends on, beside the program and the theme."""
    return digest(publication.frame, bare(publication.site), publication.settings)


def stamps_of(publication: Publication, wholes: Mapping[str, str]) -> Mapping[str, str]:
    """For each bake the mark of all that the work on it depends on beside the ground. `wholes` are those of
    leaves."""
    related = {view.name: view.related for view in publication.site.recipes if view.name in wholes}
    marks = {
        name: publication.mark_of(photo.source)
        for name in wholes
        if (photo := publication.leaves[name].short.photo)
    }
    return {name: digest(whole, related.get(name), marks.get(name)) for name, whole in wholes.items()}


def _entries(publication: Publication, on_site: tuple[Leaf, ...], site: SiteView) -> Iterator[Task]:
    """What the feeds say of each bake is read back by itself, so that a feed need not be read whole every time."""
    for leaf in on_site:
        entry = publication.entry_of(leaf.name)
        inputs = (leaf.view, leaf.sizes, entry, site)
        proof = Own(leaf=replace(leaf, entry=entry), site=site, settings=publication.settings)
        yield replace(_task("entry", leaf, ENTRIES, _nothing, *inputs), proof=proof)


def _nothing(*_: object) -> tuple[Product, ...]:
    return ()


def _task(
    what: str,
    leaf: Leaf,
    stage: str,
    work: Callable[..., tuple[Product, ...]],
    *inputs: object,
    themes: tuple[str, ...] = (),
) -> Task:
    libraries = (_PAPER,) if any(each.startswith("paper/") for each in themes) else ()
    return Task(
        title=f"{leaf.name}: {what}",
        work=work,
        inputs=inputs,
        themes=themes,
        stage=stage,
        libraries=libraries,
        about=leaf.name,
    )


def _pages(publication: Publication, on_site: tuple[Leaf, ...]) -> Iterator[Task]:
    frame, site = publication.frame, bare(publication.site)
    related = {view.name: view.related for view in publication.site.recipes}
    for leaf in on_site:
        inputs = (leaf.view, leaf.sizes, related[leaf.name], frame, site)
        yield _task("page", leaf, "pages", _recipe_page, *inputs, themes=("site/recipe.html",))


def _recipe_page(
    view: RecipeView, sizes: SizesView, related: tuple[Related, ...], frame: Frame, site: SiteView
) -> tuple[Product, ...]:
    from generator.render.site.page import finished_page
    from generator.render.site.pages import recipe_page
    from generator.render.structured_data.render import structured_data

    whole = replace(view, sizes=sizes, related=related)
    return (finished_page(recipe_page(whole, structured=partial(structured_data, site=site)), frame),)


def _numbers(name: str, data: Mapping[str, object]) -> tuple[Product, ...]:
    from generator.render.recipe_json import render_recipe_json

    return (render_recipe_json(name, data),)


def _feeds_task(publication: Publication) -> Task:
    site = publication.site
    entries = tuple(publication.entry_of(view.name) for view in site.recipes)
    own = replace(bare(site), journal=site.journal, updated=site.updated)
    return Task(title=FEEDS, work=_feeds, inputs=(own, entries), stage="lists", about=FEEDS)


def _lists(site: SiteView) -> Iterator[Task]:
    """Each depends on those lists of the publication that it shows."""
    yield Task(title="the lists", work=_list_pages, inputs=(site,), themes=("site/",), stage="lists")
    yield Task(title="the search", work=_search, inputs=(site.search,), stage="lists")
    yield Task(title="the sitemap", work=_sitemap, inputs=(site,), stage="lists")
    yield Task(
        title="style and fonts",
        work=_assets,
        inputs=(site.theme,),
        themes=("site/",),
        stage="style and fonts",
    )


def _list_pages(site: SiteView) -> tuple[Product, ...]:
    from generator.render.site.moved import moved_product
    from generator.render.site.page import finished_page
    from generator.render.site.pages import list_pages
    from generator.render.structured_data.render import structured_data

    frame = frame_of(site)
    pages = list_pages(site, structured=partial(structured_data, site=site))
    moved = (moved_product(each, frame) for each in site.moved)
    return (*(finished_page(page, frame) for page in pages), *moved)


def _feeds(site: SiteView, entries: tuple[object, ...]) -> tuple[Product, ...]:
    from generator.render.feeds.render import render_feeds

    return tuple(render_feeds(site, entries))  # type: ignore[arg-type]


def _search(search: SearchView | None) -> tuple[Product, ...]:
    from generator.render.search_json import render_search_json

    return (render_search_json(search),) if search is not None else ()


def _sitemap(site: SiteView) -> tuple[Product, ...]:
    from generator.render.sitemap import render_sitemap

    return tuple(render_sitemap(site))


def _assets(theme: str) -> tuple[Product, ...]:
    from generator.render.site.assets import asset_products

    return tuple(asset_products(theme))


def _pictures(publication: Publication) -> Iterator[Task]:
    from generator.render.site.pictures import media_of

    on_site = (publication.leaves[view.name] for view in publication.site.recipes)
    photos, others = media_of(publication.site, {name for leaf in on_site for name in leaf.named})
    for photo in photos:
        # Neither its words nor its address on the site are in the file.
        plain = replace(photo, text="", url="")
        inputs = (plain, _on_disk(publication, photo.source))
        yield Task(title=photo.path, work=_photo, inputs=inputs, stage="pictures")
    for address in others:
        yield Task(
            title=address,
            work=_text_media,
            inputs=(address, _on_disk(publication, address)),
            stage="pictures",
        )


def _on_disk(publication: Publication, path: str) -> OnDisk:
    return OnDisk(root=publication.root, path=path, mark=publication.mark_of(path))


def _photo(photo: PhotoView, file: OnDisk) -> tuple[Product, ...]:
    from generator.render.site.pictures import photo_products

    return tuple(photo_products(photo, lambda _: file.read()))


def _text_media(address: str, file: OnDisk) -> tuple[Product, ...]:
    from generator.render.site.pictures import text_media

    return tuple(text_media(address, lambda _: file.read()))


def _drawn(publication: Publication, leaf: Leaf) -> Iterator[Task]:
    """The pictures with words: to share, tall, and the cards before the chapters of its films."""
    photo = leaf.short.photo
    file = _on_disk(publication, photo.source) if photo else None
    if leaf.short.on_site:
        yield _task("picture to share", leaf, "posters", _share, leaf.view, file)
    yield _task("tall picture", leaf, "posters", _tall, leaf.view, file)
    yield _task("chapter cards", leaf, "chapter cards", _chapter_cards, leaf.view)


def _page_shares(publication: Publication) -> Iterator[Task]:
    """The pictures to share of home, posts and standing pages."""
    for path, poster in page_posters(publication.site):
        file = _on_disk(publication, poster.photo.source) if poster.photo else None
        yield Task(title=path, work=_page_share, inputs=(path, poster, file), stage="posters")


def _page_share(path: str, poster: PosterView, file: OnDisk | None) -> tuple[Product, ...]:
    from generator.render.images.posters import render_page_share

    return (render_page_share(path, poster, lambda _: file.read() if file else b""),)


def _share(view: RecipeView, file: OnDisk | None) -> tuple[Product, ...]:
    from generator.render.images.posters import render_share

    return (render_share(view, lambda _: file.read() if file else b""),)


def _tall(view: RecipeView, file: OnDisk | None) -> tuple[Product, ...]:
    from generator.render.images.posters import render_tall

    return (render_tall(view, lambda _: file.read() if file else b""),)


def _chapter_cards(view: RecipeView) -> tuple[Product, ...]:
    from generator.render.images.posters import render_chapter_cards

    return tuple(render_chapter_cards(view))


def _people(people: PeopleView | None) -> Iterator[Task]:
    if people is not None:
        yield Task(
            title="who can eat what",
            work=_who_can_eat,
            inputs=(people,),
            themes=("desk/people.html",),
            stage="desk",
        )


def _who_can_eat(people: PeopleView) -> tuple[Product, ...]:
    from generator.render.people_sheet.render import render_people

    return (render_people(people),)


def _desk(leaf: Leaf, settings: Settings) -> Iterator[Task]:
    paper, theme = settings.paper, settings.theme
    limits = (settings.description_limit, settings.short_limit)
    yield _task("descriptions", leaf, "descriptions", _descriptions, leaf.view, *limits)
    tag_files = (*_SHEET, "paper/tag*")
    yield _task("tags", leaf, "tags", _tags, leaf.name, leaf.tag, paper, theme, themes=tag_files)
    bench_files = (*_PAGE, "paper/bench-sheet.css", "paper/loading.css", "paper/bench-sheet.html")
    yield _task("bench sheet", leaf, "bench sheets", _bench, leaf.view, paper, theme, themes=bench_files)
    yield _task("overlay", leaf, "overlays", _overlay, leaf.view)


def _descriptions(view: RecipeView, limit: int, short_limit: int) -> tuple[Product, ...]:
    from generator.render.description.variants import variants

    texts = variants(view, limit=limit, short_limit=short_limit)
    return tuple(Product(path=f"desk/{view.name}/{each.file}", content=each.text.encode()) for each in texts)


def _tags(name: str, tag: TagView, paper: Paper, theme: str) -> tuple[Product, ...]:
    from generator.render.tag_sheets.remarks import remarks, remarks_text
    from generator.render.tag_sheets.render import USUAL
    from generator.render.tag_sheets.sheets import render_tag_sheets

    tags = render_tag_sheets(tag, size=USUAL, paper=paper, theme=theme)
    told = remarks_text((*tags.told, *remarks(tag)))
    return (
        Product(path=f"desk/{name}/tags.pdf", content=tags.content),
        Product(path=f"desk/{name}/tags.txt", content=told.encode()),
    )


def _bench(view: RecipeView, paper: Paper, theme: str) -> tuple[Product, ...]:
    from generator.render.bench_sheets.render import render_bench_sheet

    return (render_bench_sheet(view, paper=paper, theme=theme),)


def _overlay(view: RecipeView) -> tuple[Product, ...]:
    from generator.render.images.overlay import render_overlay

    return tuple(render_overlay(view))


def _sheets(leaf: Leaf, settings: Settings) -> Iterator[Task]:
    files = (*_PAGE, "paper/formula-sheet.css", "paper/formula-sheet.html")
    inputs = (leaf.view, settings.paper, settings.theme)
    yield _task("formula sheet", leaf, "formula sheets", _formula_sheets, *inputs, themes=files)


def _formula_sheets(view: RecipeView, paper: Paper, theme: str) -> tuple[Product, ...]:
    from generator.render.formula_sheets.render import render_formula_sheets

    return tuple(render_formula_sheets(view, paper=paper, theme=theme))


def _cards_task(leaf: Leaf, settings: Settings) -> Task:
    files = (*_SHEET, "paper/card.css", "paper/card.html")
    return _task("cards", leaf, "cards", _cards, leaf.view, settings.theme, themes=files)


def _cards(view: RecipeView, theme: str) -> tuple[Product, ...]:
    from generator.render.cards.render import render_cards

    return tuple(render_cards(view, theme=theme))
