"""What can be found, for the search page's own script and for other programs: `search.json`.

The file and the block inside the search page are the same text, so that a page opened from a disk, where a script
may fetch nothing, searches as well as one from a host.
"""

import json

from generator.present.search_views import Choice, SearchBake, SearchPage, SearchView
from generator.render.output import Product
from generator.wording.speech import later, say

WARNING = later(
    "“Does not list” is no promise: traces may be in any bake of this kitchen. Ask the maker before you eat."
)


def render_search_json(view: SearchView) -> Product:
    return Product(path="site/search.json", content=f"{search_text(view)}\n".encode())


def search_text(view: SearchView) -> str:
    """JSON, keys in a fixed order. A bake whose `finished` is false may hold allergens that it does not name."""
    data = {
        "warning": say(WARNING),
        "bakes": [_bake(bake) for bake in view.bakes],
        "pages": [_page(page) for page in view.pages],
        "allergens": _titles(view.allergens),
    }
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))


def _bake(bake: SearchBake) -> dict[str, object]:
    return {
        "title": bake.title,
        "path": bake.path,
        "lead": bake.lead,
        "published": bake.day,
        "time": bake.time,
        "kinds": _titles(bake.kinds),
        "occasions": _titles(bake.occasions),
        "methods": _titles(bake.methods),
        "times": [
            {"method": each.method, "hands_on": each.hands_on, "total": each.total} for each in bake.minutes
        ],
        "tins": [{"id": each.tin.id, "title": each.tin.title, "amount": each.times} for each in bake.tins],
        "contains": list(bake.contains),
        "may_contain": list(bake.may_contain),
        "finished": bake.finished,
        "names": list(bake.names),
        "words": list(bake.words),
    }


def _page(page: SearchPage) -> dict[str, object]:
    return {
        "title": page.title,
        "path": page.path,
        "lead": page.lead,
        "day": page.day,
        "names": list(page.names),
        "words": list(page.words),
    }


def _titles(choices: tuple[Choice, ...]) -> dict[str, str]:
    return {each.id: each.title for each in choices}
