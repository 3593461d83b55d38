"""The bakes by time, method, tin and occasion: a page for each, which needs no script."""

from collections.abc import Callable, Iterable

from generator.present.addresses import slug
from generator.present.search import HANDS_OFF
from generator.present.search_views import SearchBake, SearchTime, SearchView, Shelf, ShelfBake, ShelfList
from generator.wording.speech import later, say

TIME, METHOD, TIN, OCCASION = "by/time/", "by/method/", "by/tin/", "by/occasion/"
_BANDS = (
    (60, later("Up to 1 hour")),
    (120, later("1 to 2 hours")),
    (240, later("2 to 4 hours")),
    (720, later("4 to 12 hours")),
    (None, later("More than 12 hours")),
)
_TIMED = later("Times are the longest that the recipe states. Work without a stated time is not in them.")
Test = Callable[[SearchBake], str | None]


def shelf_lists(search: SearchView) -> tuple[ShelfList, ...]:
    """The lists that have a shelf with something on it."""
    lists = (_by_time(search.bakes), _by_method(search), _by_tin(search), _by_occasion(search))
    return tuple(each for each in lists if each.shelves)


def _by_time(bakes: tuple[SearchBake, ...]) -> ShelfList:
    timed = tuple(bake for bake in bakes if bake.minutes)
    shelves = [_shelf(say("Under two hours, hands off"), timed, _hands_off)]
    shelves += [_shelf(say(title), timed, _within(limit)) for limit, title in _BANDS]
    if timed:
        shelves.append(_shelf(say("No times stated"), bakes, lambda bake: None if bake.minutes else ""))
    lead = say("How long each bake takes in all, by its quickest way.")
    hands_off = say("Hands off means at most {minutes} minutes of timed work.", minutes=HANDS_OFF)
    remark = f"{say(_TIMED)} {hands_off}"
    return _list(say("Bakes by time"), TIME, lead, remark, shelves)


def _by_method(search: SearchView) -> ShelfList:
    shelves = [_shelf(way.title, search.bakes, _in_way(way.id)) for way in search.methods]
    lead = say("By hand, in a mixer or in a bread machine: the ways that each bake is written for.")
    return _list(say("Bakes by method"), METHOD, lead, "", shelves)


def _by_tin(search: SearchView) -> ShelfList:
    shelves = [_shelf(tin.title, search.bakes, _for_tin(tin.id)) for tin in search.tins]
    lead = say("I have this tin: the bakes that are made for it, and those that can be.")
    remark = say("Where a tin takes more or less than the recipe, its page shows the amounts for it.")
    return _list(say("Bakes by tin"), TIN, lead, remark, shelves)


def _by_occasion(search: SearchView) -> ShelfList:
    shelves = [_shelf(each.title, search.bakes, _for_day(each.id)) for each in search.occasions]
    return _list(say("Bakes by occasion"), OCCASION, say("What to bake for which day."), "", shelves)


def _list(title: str, path: str, lead: str, remark: str, shelves: Iterable[Shelf]) -> ShelfList:
    filled = tuple(each for each in shelves if each.bakes)
    return ShelfList(title=title, path=path, lead=lead, remark=remark, shelves=filled)


def _shelf(title: str, bakes: Iterable[SearchBake], words: Test) -> Shelf:
    """The bakes for which `words` says something, "" included, with it beside them."""
    pairs = tuple((bake, words(bake)) for bake in bakes)
    found = tuple(
        ShelfBake(title=bake.title, path=bake.path, words=said) for bake, said in pairs if said is not None
    )
    return Shelf(title=title[:1].upper() + title[1:], anchor=slug(title), bakes=found)


def _quickest(bake: SearchBake) -> SearchTime:
    return min(bake.minutes, key=lambda each: each.total)


def _within(limit: int | None) -> Test:
    """The bakes of one band: up to its limit, and longer than the one before."""
    limits = [None, *(each for each, _ in _BANDS)]
    least = limits[limits.index(limit, 1) - 1] or -1

    def words(bake: SearchBake) -> str | None:
        total = _quickest(bake).total
        return bake.time if least < total and (limit is None or total <= limit) else None

    return words


def _hands_off(bake: SearchBake) -> str | None:
    short = any(
        each.total <= 120 and each.hands_on is not None and each.hands_on <= HANDS_OFF
        for each in bake.minutes
    )
    return bake.time if short else None


def _for_tin(name: str) -> Test:
    def words(bake: SearchBake) -> str | None:
        return next((each.times for each in bake.tins if each.tin.id == name), None)

    return words


def _in_way(name: str) -> Test:
    def words(bake: SearchBake) -> str | None:
        return "" if name in {each.id for each in bake.methods} else None

    return words


def _for_day(name: str) -> Test:
    def words(bake: SearchBake) -> str | None:
        return bake.time if name in {each.id for each in bake.occasions} else None

    return words
