"""The pages of the site, each read back and held against its view."""

import re
from collections.abc import Iterable, Iterator

from generator.diagnostics.diagnostic import Diagnostics
from generator.present.people import PeopleView
from generator.present.sheet_views import SheetView
from generator.present.views import ArticleView, CorrectionView, RecipeView, SiteView, TeaserView
from generator.proof.claim import DECLARATION, WORDS, Claim, claim
from generator.proof.compare import compare
from generator.proof.declared_claims import carried_claims, label_claims
from generator.proof.docket_claims import (
    aside_claims,
    caution_claims,
    docket_claims,
    fact_claims,
    film_claims,
    head_claims,
    measured_claims,
    page_times,
    revision_claims,
    since_claims,
)
from generator.proof.expected import Expected
from generator.proof.method_claims import method_claims
from generator.proof.page_text import PageText
from generator.proof.sheet_claims import (
    altitude_claims,
    batch_claims,
    equipment_claims,
    sheet_claims,
    water_claims,
    yeast_claims,
)
from generator.proof.sizes import sizes_faults
from generator.proof.structured import structured_faults
from generator.proof.timers import timer_faults
from generator.wording.speech import gettext, say, shown

_TAG = re.compile("<[^>]*>")
_FROM = 'from<span class="aside-word"> where %(bake)s has %(allergen)s</span>'
_FANS = (
    "Side notes by common practice: with a fan, 20 °C or 25 °F less; what the recipe says of a fan oven is not "
    "lowered again. Your own oven knows best."
)


def bake_faults(page: PageText, view: RecipeView, expected: Expected) -> Diagnostics:
    """The page of a bake: what it shows, what its script may show instead, what it tells programs."""
    known = (expected.sayings(view),)
    claims = tuple(bake_claims(view))
    found = compare(page.text, claims, known, remedy=expected.remedy)
    found += compare(page.told, (), known, remedy=expected.remedy)
    found += sizes_faults(page, view, remedy=expected.remedy)
    found += timer_faults(page, view, remedy=expected.remedy)
    return found + structured_faults(page, view, known, remedy=expected.remedy)


def bake_claims(view: RecipeView) -> Iterator[Claim]:
    yield from claim("the title", view.title, kind=WORDS, loose=True)
    yield from claim(
        "the day",
        shown("Published %(day)s", day=view.published_day) if view.published_day else "",
        kind=WORDS,
    )
    yield from caution_claims(view.cautions)
    yield from revision_claims(view)
    yield from head_claims(view)
    yield from page_times(view)
    for offer in view.sizes.offers if view.sizes else ():
        yield from claim(f"the size {offer.id}", offer.title)
    yield from docket_claims(view, percents=True, together=True)
    yield from fact_claims(view)
    yield from measured_claims(view)
    if view.sheet and view.sheet.yeast:
        yield from yeast_claims(view.sheet.yeast)
    yield from method_claims(view, uses=True, when=True, machine=True)
    for oven in view.ovens:
        words = f"{oven.written} {oven.plain} {oven.fan} {oven.gas or gettext('none')}"
        yield from claim(f"the row of {oven.written} in other ovens", words)
    if view.ovens:
        yield from claim("the note on fans", gettext(_FANS), loose=True)
    for card in view.cards:
        yield from claim(
            "the address of a card", shown("Card, %(size)s (PDF)", size=card.title), kind=WORDS, loose=True
        )
    if view.sheet:
        yield from _formula(view.sheet)
    yield from label_claims(view.label)
    yield from carried_claims(view)
    yield from _corrections(view.corrections)
    yield from since_claims(view)
    yield from film_claims(view)
    yield from aside_claims(view)


def _formula(sheet: SheetView) -> Iterator[Claim]:
    """The formula in the trade's way, folded away below the method."""
    if sheet.equipment:
        yield from equipment_claims(sheet.equipment)
    yield from sheet_claims(sheet)
    yield from batch_claims(sheet)
    if sheet.water:
        yield from water_claims(sheet.water)
    if sheet.altitude:
        yield from altitude_claims(sheet.altitude)


def _corrections(corrections: Iterable[CorrectionView], *, named: bool = False) -> Iterator[Claim]:
    for each in corrections:
        words = [each.day, each.recipe.title if named else "", each.change]
        yield from claim(f"the correction of {each.day}", " ".join(words), loose=True)
        film = say("The film still shows {what}", what=each.film) if each.film else ""
        yield from claim(f"what the film shows since {each.day}", film, loose=True)


def list_faults(page: PageText, claims: Iterable[Claim], expected: Expected) -> Diagnostics:
    known = (expected.lists,)
    found = compare(page.text, tuple(claims), known, remedy=expected.remedy)
    return found + compare(page.told, (), known, remedy=expected.remedy)


def article_faults(page: PageText, view: ArticleView, expected: Expected) -> Diagnostics:
    """A post or a standing page: the maker's own words, and the bakes it names."""
    known = (expected.sayings(view), expected.lists)
    title = claim("the title", view.title, kind=WORDS, loose=True)
    claims = (*title, *teaser_claims(view.bakes))
    found = compare(page.text, claims, known, remedy=expected.remedy)
    return found + compare(page.told, (), known, remedy=expected.remedy)


def teaser_claims(teasers: Iterable[TeaserView]) -> Iterator[Claim]:
    """The bakes of a list, each with its whole time."""
    for each in teasers:
        total = f"{gettext('Time in all')} {each.total}" if each.total else ""
        yield from claim(f"“{each.title}” in the list", f"{each.day} {total} {each.title}")


def home_claims(site: SiteView) -> Iterator[Claim]:
    yield from teaser_claims(site.teasers[:8])
    yield from _corrections(site.corrections[:2], named=True)


def corrections_claims(site: SiteView) -> Iterator[Claim]:
    yield from _corrections(site.corrections, named=True)


def allergen_claims(site: SiteView) -> Iterator[Claim]:
    """Each bake with its cell under each allergen, in the order of the table."""
    if site.allergens is None or not site.allergens.heads:
        return
    heads = " ".join(head.words for head in site.allergens.heads)
    yield from claim("the heads of the table", f"{gettext('Bake')} {heads}", kind=DECLARATION)
    for row in site.allergens.rows:
        words = [row.title, row.unfinished]
        for cell in row.cells:
            words.append(f"– {gettext('not listed')}" if cell.state == "not listed" else _state(cell.state))
            if cell.sources and cell.state != "not listed":
                words.append(_TAG.sub("", gettext(_FROM)) % {"bake": row.title, "allergen": cell.head.words})
                words.extend(cell.sources)
        yield from claim(f"the row of “{row.title}”", " ".join(words), kind=DECLARATION)


def _state(state: str) -> str:
    """The mark of a cell as its page words it: the texts begin with a capital there."""
    return gettext(state[:1].upper() + state[1:])


def people_claims(view: PeopleView) -> Iterator[Claim]:
    for row in view.rows:
        words = [row.title, *filter(None, (row.basis,))]
        for cell in row.cells:
            words.append(_state(cell.state))
            for answer in cell.answers:
                if answer.reasons:
                    words += [f"{answer.word}: {gettext(answer.state)}", *answer.reasons]
        yield from claim(f"the row of “{row.title}”", " ".join(words), kind=DECLARATION)
