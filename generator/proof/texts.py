"""Descriptions, notes on tags, feeds and the map of the site, each read back and held against its view."""

import json
import re
from collections.abc import Callable, Iterator, Mapping
from urllib.parse import unquote
from xml.etree import ElementTree

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import whole_file
from generator.present.tag_views import TagView
from generator.present.views import ArticleView, RecipeView, SiteView
from generator.proof.built_text import BuiltText, lines_of
from generator.proof.claim import WORDS, Claim, claim
from generator.proof.compare import absent, agrees, compare, missing
from generator.proof.declared_claims import described_label, label_claims
from generator.proof.docket_claims import (
    aside_claims,
    caution_claims,
    correction_claims,
    docket_claims,
    film_claims,
    head_claims,
    measured_claims,
    oven_claims,
    text_times,
)
from generator.proof.expected import Expected, Place
from generator.proof.feed_entry import FeedEntry
from generator.proof.method_claims import described_steps, method_claims
from generator.proof.page_reader import read_page
from generator.proof.squeeze import find
from generator.wording.speech import say

_ATOM = "{http://www.w3.org/2005/Atom}"
_SITEMAP = "{http://www.sitemaps.org/schemas/sitemap/0.9}"
FEED = "site/feed.xml"


def description_faults(path: str, content: bytes, view: RecipeView, expected: Expected) -> Diagnostics:
    """The block under a film. A section may only be left out where there was no room for it."""
    return block_faults(path, content, view, expected, limit=expected.limit)


def block_faults(
    path: str,
    content: bytes,
    view: RecipeView,
    expected: Expected,
    *,
    limit: int,
    stays: frozenset[str] = frozenset(),
) -> Diagnostics:
    """`stays` are groups of claims that are never left out, whatever the room."""
    if expected.is_noted(view, content):
        # The short block is the whole one where there is room for that.
        return ()
    text = lines_of(path, content.decode("utf-8").split("\n"))
    claims, known = expected.claims("described", view, _described), (expected.sayings(view),)
    if agrees(text, claims, known):
        expected.note(view, content)
        return ()
    left_out = _wholly_left_out(text, claims) - stays
    if left_out and _size(content, claims, left_out) > limit:
        shorter = tuple(each for each in claims if each.group not in left_out)
        if agrees(text, shorter, known):
            return ()
    left_out = _left_out(absent(text, claims), claims) - stays
    if _size(content, claims, left_out) > limit:
        claims = tuple(each for each in claims if each.group not in left_out)
    return compare(text, claims, known, remedy=expected.remedy)


def _size(content: bytes, claims: tuple[Claim, ...], left_out: frozenset[str]) -> int:
    """What the text would take with these sections, in bytes."""
    return len(content) + sum(len(each.says.encode()) for each in claims if each.group in left_out)


def _wholly_left_out(text: BuiltText, claims: tuple[Claim, ...]) -> frozenset[str]:
    """The sections of which no several words stand anywhere."""
    there = {
        each.group
        for each in claims
        if " " in each.says and any(find(text.squeezed, one) >= 0 for one in each.each_spelling())
    }
    return frozenset({each.group for each in claims if each.group} - there)


def _left_out(gone: tuple[Claim, ...], claims: tuple[Claim, ...]) -> frozenset[str]:
    """The sections of which nothing at all is there. A word alone ("Dough") may stand elsewhere by chance."""
    groups = {each.group for each in gone if each.group}
    kept = {each.group for each in claims if each not in gone and " " in each.says}
    return frozenset(groups - kept)


def _described(view: RecipeView) -> Iterator[Claim]:
    yield from claim("the title", f"{view.title} {view.url}", kind=WORDS)
    yield from correction_claims(view)
    yield from head_claims(view, labels=False)
    yield from text_times(view, lead=say("Time"))
    yield from docket_claims(view, sums=False)
    yield from caution_claims(dict.fromkeys(cautions_of(view)))
    yield from described_steps(view)
    yield from oven_claims(view)
    yield from described_label(view)
    yield from measured_claims(view)
    yield from aside_claims(view)
    for chapter in view.videos[0].chapters if view.videos else ():
        words = f"{chapter.stamp} {chapter.title}"
        yield from claim(f"the chapter at {chapter.stamp}", words, loose=True, group="chapters")


def cautions_of(view: RecipeView) -> Iterator[str]:
    """Every caution, of the formula and of the method."""
    yield from view.cautions
    for way in (*view.ways, *((view.common,) if view.common else ())):
        blocks = (block for section in way.sections for block in section.blocks)
        yield from (block.words.plain for block in blocks if block.kind == "caution")


def remarks_faults(path: str, content: bytes, tag: TagView, expected: Expected) -> Diagnostics:
    """What the maker is told beside the tags."""
    text = lines_of(path, content.decode("utf-8").split("\n"))
    claims = (
        *claim("the packs", tag.packs, kind=WORDS, loose=True),
        *claim("the bake record", tag.record, kind=WORDS, loose=True),
        *(one for words in tag.untold for one in claim("what the tag cannot say", words, loose=True)),
    )
    # It also speaks of sheets and sides, which are no matter of the recipe.
    return missing(text, claims, remedy=expected.remedy)


def read_atom(content: bytes) -> tuple[FeedEntry, ...]:
    """ValueError: no feed."""
    if b"<!DOCTYPE" in content or b"<!ENTITY" in content:
        raise ValueError("a feed with definitions of its own")
    try:
        root = ElementTree.fromstring(content)
    except ElementTree.ParseError as error:
        raise ValueError(str(error)) from None
    return tuple(
        FeedEntry(
            url=each.findtext(f"{_ATOM}id", ""),
            title=each.findtext(f"{_ATOM}title", ""),
            published=each.findtext(f"{_ATOM}published", ""),
            updated=each.findtext(f"{_ATOM}updated", ""),
            summary=each.findtext(f"{_ATOM}summary", ""),
            html=each.findtext(f"{_ATOM}content", ""),
        )
        for each in root.iter(f"{_ATOM}entry")
    )


def read_json_feed(content: bytes) -> tuple[FeedEntry, ...]:
    """ValueError: no feed."""
    items = json.loads(content.decode("utf-8"))
    if not isinstance(items, dict) or not isinstance(items.get("items"), list):
        raise ValueError("no feed")
    return tuple(
        FeedEntry(
            url=str(each.get("id", "")),
            title=str(each.get("title", "")),
            published=str(each.get("date_published", "")),
            updated=str(each.get("date_modified", each.get("date_published", ""))),
            summary=str(each.get("summary", "")),
            html=str(each.get("content_html", "")),
        )
        for each in items["items"]
        if isinstance(each, dict)
    )


READERS: Mapping[str, Callable[[bytes], tuple[FeedEntry, ...]]] = {
    "atom": read_atom,
    "json feed": read_json_feed,
}


def feed_faults(path: str, content: bytes, kind: str, expected: Expected) -> Diagnostics:
    """Every entry against its bake or post; entries without one; bakes and posts without one. ValueError: no feed."""
    entries = READERS[kind](content)
    shown: tuple[RecipeView | ArticleView, ...] = (*expected.site.recipes, *expected.site.journal)
    views = {_plain(view.url): view for view in shown}
    found: list[Diagnostic] = []
    seen = set()
    for entry in entries:
        view = views.get(_plain(entry.url))
        seen.add(_plain(entry.url))
        if view is None:
            message = f"the entry “{entry.title}” is of no bake and no post of the site"
            found.append(
                Diagnostic(code="A005", message=message, span=whole_file(path), hint=expected.remedy)
            )
        elif expected.proved.get(entry.url) != entry:
            whole = expected.worded(view) if isinstance(view, RecipeView) else view
            line = _line_of(content, entry.url)
            found.extend(_at(each, line) for each in entry_faults(path, entry, whole, expected))
    for url, view in views.items():
        if url not in seen:
            message = f"“{view.title}” is not in the feed"
            found.append(
                Diagnostic(code="A005", message=message, span=whole_file(path), hint=expected.remedy)
            )
    return tuple(found)


def _plain(url: str) -> str:
    """An address for comparing: letters that a feed has encoded count like themselves."""
    return unquote(url)


def entry_faults(
    path: str, entry: FeedEntry, view: RecipeView | ArticleView, expected: Expected
) -> Diagnostics:
    """Where an entry says another thing than its bake or post."""
    page = read_page(path, entry.html, inside=f"the entry “{entry.title}”")
    known = (expected.sayings(view), expected.lists)
    claims = tuple(_entry_claims(view)) if isinstance(view, RecipeView) else ()
    heads = lines_of(path, (entry.title, entry.summary), inside=f"the entry “{entry.title}”")
    title = claim("the title of the entry", view.title, kind=WORDS, loose=True)
    lead = claim("the lead of the entry", view.lead, kind=WORDS, loose=True)
    summed: tuple[Claim, ...] = (*title, *lead)
    dated: Diagnostics = ()
    if isinstance(view, RecipeView):
        summed += tuple(list(correction_claims(view))[:1])
        day = max(filter(None, (view.published, view.updated)), default=None)
        if day and not entry.updated.startswith(day.isoformat()):
            message = f"the entry “{entry.title}” is of {entry.updated[:10]}, the recipe of {day.isoformat()}"
            span = whole_file(path)
            dated = (Diagnostic(code="A005", message=message, span=span, hint=expected.remedy),)
    return (
        *compare(page.text, claims, known, remedy=expected.remedy),
        *compare(page.told, (), known, remedy=expected.remedy),
        *dated,
        *compare(heads, summed, known, remedy=expected.remedy),
    )


def _at(found: Diagnostic, line: int) -> Diagnostic:
    """The finding at the line where its entry begins: an entry's text is one long line or is escaped."""
    span = whole_file(found.span.path)
    moved = type(span)(path=span.path, line=line, column=1, end_line=line, end_column=2)
    return Diagnostic(code=found.code, message=found.message, span=moved, hint=found.hint)


def _line_of(content: bytes, url: str) -> int:
    at = content.find(url.encode())
    return content.count(b"\n", 0, at) + 1 if at >= 0 else 1


def _entry_claims(view: RecipeView) -> Iterator[Claim]:
    yield from correction_claims(view)
    yield from caution_claims(view.cautions)
    yield from head_claims(view, labels=False)
    yield from docket_claims(view, sums=False)
    yield from text_times(view, lead="")
    yield from method_claims(view)
    yield from label_claims(view.label)
    yield from film_claims(view)
    yield from aside_claims(view)


def sitemap_faults(path: str, content: bytes, expected: Expected) -> Diagnostics:
    """The addresses of the map against the pages that there are. ValueError: no map."""
    try:
        root = ElementTree.fromstring(content)
    except ElementTree.ParseError as error:
        raise ValueError(str(error)) from None
    if root.tag != f"{_SITEMAP}urlset":
        return ()
    said = {_plain(each.text or "") for each in root.iter(f"{_SITEMAP}loc")}
    meant = set(_pages(expected.site, expected.places))
    wrong = [f"{each} is in the map, and no such page is" for each in sorted(said - meant)]
    wrong += [f"{each} is not in the map" for each in sorted(meant - said)]
    span = whole_file(path)
    return tuple(Diagnostic(code="A005", message=each, span=span, hint=expected.remedy) for each in wrong)


def _pages(site: SiteView, places: Mapping[str, Place]) -> Iterator[str]:
    """Every page that a search engine may come to; an old address only leads on."""
    for path, place in places.items():
        found = re.fullmatch(r"site/(.*)index\.html", path)
        if found and place.kind != "moved":
            yield site.url + found[1]
