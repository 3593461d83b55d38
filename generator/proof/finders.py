"""The pages that find a bake: shelves by time, method, tin and occasion, the search, and the data that it reads."""

import json
from collections.abc import Iterator, Mapping

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import whole_file
from generator.present.search_views import SearchBake, SearchView, ShelfList
from generator.proof.claim import WORDS, Claim, claim
from generator.proof.compare import compare, quoted
from generator.proof.expected import Expected
from generator.proof.page_text import PageText
from generator.wording.speech import gettext

_DATA = "leaf-search"

_TIMES = (
    "Times are the longest that the recipe states; work without a stated time is not in them. Hands off means at "
    "most 15 minutes of timed work."
)


def shelf_faults(page: PageText, shelves: ShelfList, expected: Expected) -> Diagnostics:
    """Each shelf with its bakes, and what stands beside them."""
    claims = tuple(_shelved(shelves))
    known = (expected.sayings(shelves), expected.lists)
    return compare(page.text, claims, known, remedy=expected.remedy)


def _shelved(shelves: ShelfList) -> Iterator[Claim]:
    yield from claim("the lead", shelves.lead, kind=WORDS, loose=True)
    yield from claim("the remark", shelves.remark, loose=True)
    for shelf in shelves.shelves:
        yield from claim(f"“{shelf.title}” among the shelves", shelf.title)
    for shelf in shelves.shelves:
        yield from claim(f"the shelf “{shelf.title}”", shelf.title)
        for bake in shelf.bakes:
            yield from claim(f"“{bake.title}” on the shelf “{shelf.title}”", f"{bake.title} {bake.words}")


def search_page_faults(page: PageText, search: SearchView, expected: Expected) -> Diagnostics:
    """The choices of every filter, and the data inside the page, which are those of `search.json`."""
    path = page.text.path
    found = compare(page.text, tuple(_choices(search)), (expected.lists,), remedy=expected.remedy)
    try:
        return found + search_data_faults(path, page.scripts.get(_DATA, "").encode(), search, expected)
    except ValueError:
        message = "the data of the search in the page cannot be read"
        return (*found, Diagnostic(code="A007", message=message, span=whole_file(path), hint=expected.remedy))


def _choices(search: SearchView) -> Iterator[Claim]:
    filters = (search.kinds, search.occasions, search.totals, search.hands_on, search.methods, search.tins)
    for choice in (choice for choices in filters for choice in choices):
        yield from claim(f"the choice “{choice.title}”", choice.title)
    for allergen in search.allergens:
        yield from claim(f"the choice “{allergen.title}”", allergen.title, kind="declaration")
    yield from claim("the note on times", gettext(_TIMES), needed=False)


def search_data_faults(path: str, content: bytes, search: SearchView, expected: Expected) -> Diagnostics:
    """Every bake's times, tins and allergens as the search knows them. ValueError: no such data."""
    data = json.loads(content.decode("utf-8"))
    if not isinstance(data, dict) or not isinstance(data.get("bakes"), list):
        raise ValueError("no data of a search")
    said = {str(each.get("path")): each for each in data["bakes"] if isinstance(each, dict)}
    wrong = [
        f"{place} is no bake of the site" for place in said if place not in {b.path for b in search.bakes}
    ]
    for bake in search.bakes:
        wrong += _differences(said.get(bake.path, {}), bake)
    span = whole_file(path)
    return tuple(
        Diagnostic(code="A005", message=f"the search: {each}", span=span, hint=expected.remedy)
        for each in wrong
    )


def _differences(said: Mapping[str, object], bake: SearchBake) -> Iterator[str]:
    times = [{"method": each.method, "hands_on": each.hands_on, "total": each.total} for each in bake.minutes]
    meant = {
        "title": bake.title,
        "lead": bake.lead,
        "time": bake.time,
        "times": times,
        "tins": [{"id": each.tin.id, "title": each.tin.title, "amount": each.times} for each in bake.tins],
        "contains": list(bake.contains),
        "may_contain": list(bake.may_contain),
        "finished": bake.finished,
    }
    for key, value in meant.items():
        if said.get(key) != value:
            one, other = (json.dumps(each, ensure_ascii=False) for each in (said.get(key), value))
            yield f"“{key}” of “{bake.title}” is {quoted(one)}, of the recipe {quoted(other)}"
