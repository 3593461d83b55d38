"""Finished files against the recipes: the gate of a make, and the heart of `check --built`.

Each file that has a place in the output is read by a reader of its own format. What it must say is asked of the
views; what it says besides, in amounts, temperatures and times, must be somewhere in them too.
"""

from collections.abc import Mapping

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import whole_file
from generator.present.search_views import ShelfList
from generator.present.views import ArticleView, KindView, RecipeView
from generator.proof import film_texts, finders, pages, papers, texts
from generator.proof.data import data_faults
from generator.proof.expected import Expected, Place
from generator.proof.page_reader import read_page
from generator.proof.page_text import PageText
from generator.proof.posters import page_poster_faults, poster_faults


def prove(files: Mapping[str, bytes], expected: Expected) -> Diagnostics:
    """Every difference between the files, by their path in the output, and what the recipes say.

    Files without a place are passed over, as are places without a file: what is new is proved. A pure function.
    """
    found: list[Diagnostic] = []
    for path, content in files.items():
        place = expected.places.get(path)
        if place is not None:
            found.extend(_file_faults(path, content, place, files, expected))
    return tuple(found)


def _file_faults(
    path: str, content: bytes, place: Place, files: Mapping[str, bytes], expected: Expected
) -> Diagnostics:
    try:
        return _faults(path, content, place, files, expected)
    except (ValueError, RecursionError) as error:
        message = f"this file cannot be read back: {error}"
        return (Diagnostic(code="A007", message=message, span=whole_file(path), hint=expected.remedy),)


def _faults(
    path: str, content: bytes, place: Place, files: Mapping[str, bytes], expected: Expected
) -> Diagnostics:
    if path.endswith(".html"):
        page = read_page(path, content.decode("utf-8"))
        return _page_faults(page, place, expected)
    if isinstance(place.of, RecipeView):
        return _recipe_faults(path, content, place.kind, place.of, files, expected)
    if place.kind == "poster":
        return page_poster_faults(path, content, expected)
    if place.kind in texts.READERS:
        return texts.feed_faults(path, content, place.kind, expected)
    if place.kind == "search" and expected.site.search is not None:
        return finders.search_data_faults(path, content, expected.site.search, expected)
    if place.kind == "sitemap":
        return texts.sitemap_faults(path, content, expected)
    return ()


def _page_faults(page: PageText, place: Place, expected: Expected) -> Diagnostics:
    site = expected.site
    if isinstance(place.of, RecipeView):
        return pages.bake_faults(page, place.of, expected)
    if isinstance(place.of, ArticleView):
        return pages.article_faults(page, place.of, expected)
    claims = {
        "home": pages.home_claims,
        "bakes": lambda site: pages.teaser_claims(site.teasers),
        "corrections": pages.corrections_claims,
        "allergens": pages.allergen_claims,
    }
    if isinstance(place.of, ShelfList):
        return finders.shelf_faults(page, place.of, expected)
    if place.kind == "search" and site.search is not None:
        return finders.search_page_faults(page, site.search, expected)
    if isinstance(place.of, KindView):
        return pages.list_faults(page, pages.teaser_claims(place.of.bakes), expected)
    if place.kind == "people" and expected.people is not None:
        return pages.list_faults(page, pages.people_claims(expected.people), expected)
    return pages.list_faults(page, claims[place.kind](site) if place.kind in claims else (), expected)


def _recipe_faults(
    path: str, content: bytes, kind: str, view: RecipeView, files: Mapping[str, bytes], expected: Expected
) -> Diagnostics:
    name, remedy = view.name, expected.remedy
    if kind in ("card", "bench-sheet", "formula sheet"):
        return papers.paper_faults(path, content, kind, view, expected)
    if kind == "data":
        return data_faults(path, content, expected.data[name], remedy=remedy)
    if kind == "description":
        return texts.description_faults(path, content, view, expected)
    if kind in film_texts.READERS:
        return film_texts.READERS[kind](path, content, view, expected)
    if kind == "tags":
        whole = expected.tags[name]
        if path.endswith(".txt"):
            return texts.remarks_faults(path, content, whole, expected)
        return papers.tag_faults(path, content, whole, expected)
    if kind == "poster":
        return poster_faults(path, content, view, expected)
    if kind == "overlay":
        stem = path.removesuffix(".png")
        several = {each: files[each] for each in sorted(files, key=_number) if _is_part(each, stem)}
        return papers.picture_faults(several, view, expected)
    return ()


def _is_part(path: str, stem: str) -> bool:
    rest = path.removeprefix(stem)
    return path.startswith(stem) and (rest == ".png" or (rest[:1] == "-" and rest[1:-4].isdecimal()))


def _number(path: str) -> tuple[int, str]:
    return (len(path), path)
