"""What the search finds: for each bake its words, minutes, tins and what it lists, decided here and nowhere else."""

from collections.abc import Iterable
from dataclasses import replace
from math import ceil

from generator.formula.machine import DOUGH_CYCLE
from generator.formula.model import Formula
from generator.present.addresses import slug
from generator.present.allergen_table import CONTAINS, MAY, TO_READ, AllergenRow, AllergenTable
from generator.present.search_tins import search_tins
from generator.present.search_views import (
    Choice,
    SearchBake,
    SearchPage,
    SearchTime,
    SearchView,
)
from generator.present.search_words import search_words, without
from generator.present.views import ArticleView, RecipeView
from generator.wording.forms import place_of
from generator.wording.speech import later, say

PATH = "search/"
TOTALS = (
    (60, later("1 hour")),
    (120, later("2 hours")),
    (240, later("4 hours")),
    (720, later("12 hours")),
    (1440, later("a day")),
)
HANDS_ON = ((15, later("15 minutes")), (30, later("30 minutes")), (60, later("1 hour")))
HANDS_OFF = 15
"""Minutes of work up to which a bake is called hands-off (our own line)."""


def search_view(
    found: Iterable[SearchBake | None], pages: Iterable[ArticleView], table: AllergenTable
) -> SearchView:
    """All that is on the site. A filter offers what at least one bake meets."""
    rows = {row.path: row for row in table.rows}
    bakes = tuple(_with_row(bake, rows[bake.path]) for bake in found if bake is not None)
    totals = {each.total for bake in bakes for each in bake.minutes}
    works = {each.hands_on for bake in bakes for each in bake.minutes if each.hands_on is not None}
    return SearchView(
        bakes=bakes,
        pages=tuple(_page(page) for page in pages),
        kinds=_choices(each for bake in bakes for each in bake.kinds),
        occasions=_choices(each for bake in bakes for each in bake.occasions),
        methods=_choices(each for bake in bakes for each in bake.methods),
        tins=_choices(each.tin for bake in bakes for each in bake.tins),
        totals=_limits(TOTALS, totals),
        hands_on=_limits(HANDS_ON, works),
        allergens=tuple(Choice(id=head.key, title=head.words) for head in table.heads),
    )


def _with_row(bake: SearchBake, row: AllergenRow) -> SearchBake:
    """With what the table of allergens says of it, which depends on the columns that all bakes give it."""
    return replace(
        bake,
        contains=_in_state(row, CONTAINS),
        may_contain=_in_state(row, MAY),
        finished=not row.unfinished and not _in_state(row, TO_READ),
    )


def search_bake(view: RecipeView, formula: Formula) -> SearchBake:
    """One bake as the search knows it, before the table of allergens: so far it lists nothing and is not finished."""
    names = search_words(view.title)
    methods = tuple(Choice(id=slug(way.name), title=way.title) for way in view.ways if way.name)
    kinds = tuple(Choice(id=slug(each.title), title=each.title) for each in view.kinds)
    occasions = tuple(Choice(id=slug(each), title=each) for each in formula.about.occasions)
    told = search_words(view.lead, *(each.title for each in (*kinds, *occasions, *methods)), *_items(view))
    return SearchBake(
        title=view.title,
        path=view.path,
        lead=view.lead,
        day=view.published.isoformat() if view.published else "",
        time=view.times[0].total if view.times else "",
        kinds=kinds,
        occasions=occasions,
        methods=methods,
        minutes=_minutes(formula),
        tins=search_tins(formula),
        contains=(),
        may_contain=(),
        finished=False,
        names=names,
        words=without(told, names),
    )


def _in_state(row: AllergenRow, state: str) -> tuple[str, ...]:
    return tuple(cell.head.key for cell in row.cells if cell.state == state)


def _items(view: RecipeView) -> tuple[str, ...]:
    lines = tuple(line for part in view.parts for line in part.lines)
    return (view.makes, *(part.name for part in view.parts), *(line.item for line in lines))


def _minutes(formula: Formula) -> tuple[SearchTime, ...]:
    """The longest times, for a reader who plans; ways in which nothing is timed are left out."""
    return tuple(
        SearchTime(
            method=slug(each.way) if each.way else "",
            hands_on=ceil(each.hands_on.high) if each.hands_on.high or each.way == DOUGH_CYCLE else None,
            total=ceil(each.total.high),
        )
        for each in formula.times
        if each.total.high
    )


def _page(page: ArticleView) -> SearchPage:
    names = search_words(page.title)
    told = search_words(page.lead, *(kind.title for kind in page.kinds), page.markdown)
    return SearchPage(
        title=page.title,
        path=page.path,
        lead=page.lead,
        day=page.day,
        names=names,
        words=without(told, names),
    )


def _choices(found: Iterable[Choice]) -> tuple[Choice, ...]:
    """Each id once, by title; the first title stays."""
    titles: dict[str, str] = {}
    for each in found:
        titles.setdefault(each.id, each.title)
    ordered = sorted(titles.items(), key=lambda pair: (place_of(pair[1]), pair[0]))
    return tuple(Choice(id=name, title=title) for name, title in ordered)


def _limits(limits: tuple[tuple[int, str], ...], found: set[int]) -> tuple[Choice, ...]:
    """The limits that some bake keeps."""
    return tuple(
        Choice(id=str(limit), title=say(title))
        for limit, title in limits
        if any(each <= limit for each in found)
    )
