"""Which outputs there are: one task for each thing that can be rendered by itself."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from generator.build.task import Task
from generator.present.people import PeopleView
from generator.present.tag_views import TagView
from generator.present.views import RecipeView, SiteView
from generator.render.bench_sheets.render import render_bench_sheet
from generator.render.cards.render import render_cards
from generator.render.description.render import render_description
from generator.render.feeds.render import render_feeds
from generator.render.formula_sheets.render import render_formula_sheets
from generator.render.images.overlay import render_overlay
from generator.render.output import Product
from generator.render.people_sheet.render import render_people
from generator.render.recipe_json import render_recipe_json
from generator.render.search_json import render_search_json
from generator.render.site.publication import render_site
from generator.render.sitemap import render_sitemap
from generator.render.structured_data.render import structured_data
from generator.render.tag_sheets.remarks import remarks, remarks_text
from generator.render.tag_sheets.render import USUAL
from generator.render.tag_sheets.sheets import render_tag_sheets
from generator.settings import Paper, Settings

Media = Callable[[str], bytes]


@dataclass(frozen=True, slots=True, kw_only=True)
class MediaFolder:
    """Reads files of the content folder by the path they are named with."""

    root: Path

    def __call__(self, path: str) -> bytes:
        return (self.root / path).read_bytes()


def tasks_of(
    site: SiteView,
    *,
    data: Mapping[str, Mapping[str, object]],
    tags: Mapping[str, TagView],
    people: PeopleView | None = None,
    settings: Settings,
    media: Media,
) -> tuple[Task, ...]:
    """All work of one make, in the order in which it is told to the maker."""
    tasks = [Task(title="the site", work=partial(_site, site, media))]
    tasks += [
        Task(title=f"{view.name}: numbers", work=partial(_numbers, view.name, data[view.name]))
        for view in site.recipes
    ]
    for view in site.all_recipes:
        tasks.append(Task(title=f"{view.name}: desk", work=partial(_desk, view, tags[view.name], settings)))
    if people is not None:
        tasks.append(Task(title="who can eat what", work=partial(_who_can_eat, people)))
    tasks += [
        Task(title=f"{view.name}: formula sheet", work=partial(_formula_sheets, view, settings))
        for view in site.all_recipes
    ]
    tasks += [
        Task(title=f"{view.name}: cards", work=partial(_cards, view, settings.theme)) for view in site.recipes
    ]
    return tuple(tasks)


def _site(site: SiteView, media: Media) -> tuple[Product, ...]:
    pages = render_site(site, media=media, structured=partial(structured_data, site=site))
    found = (render_search_json(site.search),) if site.search is not None else ()
    return (*pages, *render_feeds(site), *render_sitemap(site), *found)


def _numbers(name: str, data: Mapping[str, object]) -> tuple[Product, ...]:
    return (render_recipe_json(name, data),)


def _who_can_eat(people: PeopleView) -> tuple[Product, ...]:
    return (render_people(people),)


def _desk(view: RecipeView, tag: TagView, settings: Settings) -> tuple[Product, ...]:
    paper: Paper = settings.paper
    described = render_description(view, limit=settings.description_limit).text
    tags = render_tag_sheets(tag, size=USUAL, paper=paper, theme=settings.theme)
    told = remarks_text((*tags.told, *remarks(tag)))
    return (
        Product(path=f"desk/{view.name}/description.txt", content=described.encode()),
        Product(path=f"desk/{view.name}/tags.pdf", content=tags.content),
        Product(path=f"desk/{view.name}/tags.txt", content=told.encode()),
        render_bench_sheet(view, paper=paper, theme=settings.theme),
        *render_overlay(view),
    )


def _formula_sheets(view: RecipeView, settings: Settings) -> tuple[Product, ...]:
    return tuple(render_formula_sheets(view, paper=settings.paper, theme=settings.theme))


def _cards(view: RecipeView, theme: str) -> tuple[Product, ...]:
    return tuple(render_cards(view, theme=theme))
