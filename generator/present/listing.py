"""The whole publication on its day: what is on the site, in order, and where it is listed."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from datetime import date
from typing import TypeVar

from generator.formula.article import Article
from generator.present.addresses import absolute, journal_path, standing_path
from generator.present.allergen_table import allergen_table
from generator.present.corrections import since_views
from generator.present.facts import facts_of
from generator.present.listed import Listed, listed_of
from generator.present.moved import moved_views
from generator.present.offers import sizes_view
from generator.present.reading import related_reading
from generator.present.recipe import Setting, kind_links, photo_view, recipe_view
from generator.present.search import search_view
from generator.present.shelves import shelf_lists
from generator.present.views import (
    ArticleView,
    KindView,
    PageLink,
    RecipeView,
    SiteView,
    TeaserView,
)
from generator.wording.forms import day_words, place_of

View = TypeVar("View", RecipeView, ArticleView)


def site_view(
    articles: Iterable[Article],
    setting: Setting,
    views: Mapping[str, RecipeView] | None = None,
    *,
    known: Mapping[str, Listed] | None = None,
) -> SiteView:
    """The publication. Lists hold what is published by the day, newest first, then by name.

    `views` are those of the whole book, where they were made before. With `known`, what lists say of each bake beside
    its view, the bakes stand in the lists as they are given, without what their own pages offer in other sizes.
    """
    settings = setting.settings
    everything = tuple((recipe_views(setting) if views is None else views).values())
    on_site = tuple(view for view in everything if view.on_site)
    listed = {view.name: listed_of(view, setting) for view in on_site} if known is None else known
    recipes = newest_first(on_site if known is not None else (_with_sizes(view, setting) for view in on_site))
    teasers = {view.name: teaser(view) for view in recipes}
    written = tuple(articles)
    pages = tuple((each.kind, article_view(each, teasers, setting)) for each in written)
    journal = newest_first(page for kind, page in pages if kind == "journal" and page.on_site)
    standing = tuple(page for kind, page in pages if kind == "standing" and page.on_site)
    links = {view.path: listed[view.name].links for view in recipes}
    related = related_reading(recipes, (*journal, *standing), links)
    recipes = tuple(replace(view, related=found) for view, found in zip(recipes, related, strict=True))
    rows = tuple(one.declared for view in recipes if (one := listed[view.name]).declared is not None)
    table = allergen_table(rows, region=settings.region)
    search = search_view((listed[view.name].found for view in recipes), (*journal, *standing), table)
    old = {name: each.was for name, each in listed.items()}
    corrections = tuple(each for view in recipes for each in view.corrections)
    return SiteView(
        title=settings.title,
        lead=settings.lead,
        maker=settings.maker,
        url=settings.url,
        contact=settings.contact,
        language=settings.language,
        region=settings.region,
        paper=settings.paper,
        theme=settings.theme,
        updated=f"{_newest(recipes, journal)}T00:00:00Z",
        day=setting.day,
        pages=tuple(PageLink(title=page.title, path=page.path) for page in standing),
        recipes=recipes,
        teasers=tuple(teasers.values()),
        journal=journal,
        standing=standing,
        kinds=_kinds(recipes, tuple(teasers.values()), (*journal, *standing)),
        corrections=tuple(sorted(corrections, key=lambda each: (each.on, each.revision), reverse=True)),
        all_recipes=everything,
        allergens=table,
        search=search,
        shelves=shelf_lists(search),
        moved=moved_views(recipes, (*journal, *standing), written, old, setting),
    )


def recipe_views(setting: Setting) -> dict[str, RecipeView]:
    """The view of every recipe of the book, by its name."""
    return {name: worded(setting, name) for name in setting.book}


def worded(setting: Setting, name: str) -> RecipeView:
    """The view of one recipe of the book."""
    return _with_since(recipe_view(setting.book[name], setting), setting)


class OneByOne(Mapping[str, RecipeView]):
    """The views of recipes, each worded when it is asked for; only the last one stays in memory."""

    def __init__(self, word: Callable[[str], RecipeView], names: Iterable[str]) -> None:
        self._word = word
        self._names = dict.fromkeys(names)
        self._last: tuple[str, RecipeView] | None = None

    def __getitem__(self, name: str) -> RecipeView:
        if name not in self._names:
            raise KeyError(name)
        if self._last is None or self._last[0] != name:
            self._last = name, self._word(name)
        return self._last[1]

    def __iter__(self) -> Iterator[str]:
        return iter(self._names)

    def __len__(self) -> int:
        return len(self._names)


def _with_since(view: RecipeView, setting: Setting) -> RecipeView:
    """With what changed since each earlier revision; most recipes have none."""
    if view.revision <= 1:
        return view
    formula = setting.book[view.name]
    facts = facts_of(formula, setting)
    return replace(view, since=since_views(formula, facts, setting.settings, setting.ledger))


def _with_sizes(view: RecipeView, setting: Setting) -> RecipeView:
    return replace(view, sizes=sizes_view(setting.book[view.name], setting, view))


def newest_first(views: Iterable[View]) -> tuple[View, ...]:
    named = sorted(views, key=lambda view: view.name)
    return tuple(sorted(named, key=lambda view: view.published or date.min, reverse=True))


def teaser(view: RecipeView) -> TeaserView:
    """A bake as a list shows it."""
    return TeaserView(
        title=view.title,
        path=view.path,
        url=view.url,
        lead=view.lead,
        day=view.published_day,
        published=view.published or date.min,
        photo=view.photo,
        total=view.times[0].total if view.times else "",
        kinds=view.kinds,
    )


def article_view(article: Article, teasers: Mapping[str, TeaserView], setting: Setting) -> ArticleView:
    """A post or a page; of its bakes only those that are on the site. An undated page is always on the site."""
    journal = article.kind == "journal"
    path = journal_path(article.name) if journal else standing_path(article.name)
    undated_page = not journal and article.published is None
    return ArticleView(
        name=article.name,
        title=article.title,
        lead=article.lead,
        path=path,
        url=absolute(setting.settings.url, path),
        on_site=undated_page or setting.on_site(article.published),
        published=article.published,
        day=day_words(article.published) if journal else "",
        markdown=article.markdown,
        photo=photo_view(article.photo, article.photo_text, setting),
        kinds=kind_links(article.kinds),
        year=str(article.published.year) if journal and article.published else "",
        bakes=tuple(teasers[each.name] for each in article.bakes if each.name in teasers),
    )


def _kinds(
    recipes: tuple[RecipeView, ...], teasers: tuple[TeaserView, ...], journal: tuple[ArticleView, ...]
) -> tuple[KindView, ...]:
    """Every kind that something on the site has, by name. Kinds that share an address are one."""
    titles: dict[str, str] = {}
    links = [link for view in recipes for link in view.kinds]
    links += [link for page in journal for link in page.kinds]
    for link in links:
        titles.setdefault(link.path, link.title)
    return tuple(
        KindView(
            title=titles[path],
            path=path,
            bakes=tuple(each for each in teasers if any(link.path == path for link in each.kinds)),
            articles=tuple(each for each in journal if any(link.path == path for link in each.kinds)),
        )
        for path in sorted(titles, key=lambda each: (place_of(each), each))
    )


def _newest(recipes: tuple[RecipeView, ...], journal: tuple[ArticleView, ...]) -> date:
    """The newest date in what is published; a publication without any has the day the calendar began."""
    days = [view.updated for view in recipes if view.updated] + [
        page.published for page in journal if page.published
    ]
    return max(days, default=date(1970, 1, 1))
