"""Which published copies are stale, why, and what to do about each; and where no copy was ever marked."""

import shlex
from collections.abc import Iterator
from dataclasses import dataclass

from generator.history.changes import Harm
from generator.history.copies import fingerprint
from generator.history.ledger import Posted
from generator.history.places import (
    CARD,
    DESCRIPTION,
    GIVEN,
    NEWSLETTER,
    OF_A_FILM,
    PAGE,
    PINNED,
    TAGS,
    film_of,
    kind_of,
)
from generator.history.revisions import revision_of
from generator.pipeline import CheckResult
from generator.present.changed import Told, told_changes
from generator.present.facts import facts_of
from generator.records.copies_text import command_for, text_at

ON_A_TAG = ("the title", "keeps", "label", "finished")
REWORDED = "the words around it are others now (site.yaml, or a newer Tinleaf)"
OFF_A_CARD = ("the links", "the credits", "the chapters of a film")


@dataclass(frozen=True, slots=True, kw_only=True)
class Stale:
    """A copy that no longer says what the recipe says. `do` is what to do, in order.

    `is_changed` is false where the recipe says what it said, and only the words around it are others.
    """

    copy: Posted
    now: int
    is_changed: bool
    harm: Harm
    why: tuple[str, ...]
    do: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Unmarked:
    """A place where a copy is to be expected, and that was never marked."""

    recipe: str
    place: str


def stale_copies(result: CheckResult) -> tuple[Stale, ...]:
    """Every stale copy of every recipe without errors, the most harmful first, then by recipe and place."""
    found = (
        stale
        for name in result.setting.ledger.recipes()
        if name in result.setting.book
        for copy in result.setting.ledger.posted(name)
        if (stale := _stale(result, copy)) is not None
    )
    return tuple(sorted(found, key=lambda each: (each.harm, each.copy.recipe, each.copy.place, each.copy.to)))


def not_compared(result: CheckResult) -> tuple[str, ...]:
    """Recipes with copies that cannot be compared, because they have errors or are gone."""
    ledger = result.setting.ledger
    return tuple(each for each in ledger.recipes() if ledger.posted(each) and each not in result.setting.book)


def unmarked(result: CheckResult) -> tuple[Unmarked, ...]:
    """The page of each published bake and the description of each of its films that the ledger knows nothing of."""
    return tuple(
        Unmarked(recipe=name, place=place)
        for name, formula in result.setting.book.items()
        if result.setting.on_site(formula.about.published)
        for place in _expected(result, name)
    )


def _expected(result: CheckResult, name: str) -> Iterator[str]:
    films = tuple(each.url for each in result.setting.book[name].about.videos)
    marked = {each.place for each in result.setting.ledger.postings(name)}
    if PAGE not in marked:
        yield PAGE
    told = {film_of(each, films) for each in marked if kind_of(each) == DESCRIPTION}
    for film in films:
        if film not in told:
            yield DESCRIPTION if len(films) == 1 else f"{DESCRIPTION} {film}"


def _stale(result: CheckResult, copy: Posted) -> Stale | None:
    told = tuple(each for each in _why(result, copy) if _carries(copy.place, each))
    if not told:
        return None
    number = revision_of(result.setting.book[copy.recipe], result.setting.ledger).number
    return Stale(
        copy=copy,
        now=number,
        is_changed=any(each.kind for each in told),
        harm=min(each.harm for each in told),
        why=tuple(each.words for each in told),
        do=tuple(_do(copy, min(each.harm for each in told))),
    )


def _why(result: CheckResult, copy: Posted) -> tuple[Told, ...]:
    """What changed since the copy went out. A text that reads the same is the same, whatever changed."""
    formula = result.setting.book[copy.recipe]
    reads_the_same = None
    if kind_of(copy.place) in OF_A_FILM and copy.fingerprint and copy.own:
        reads_the_same = fingerprint(text_at(result, copy.recipe, copy.place)) == copy.fingerprint
    if reads_the_same:
        return ()
    if not copy.facts:
        number = revision_of(formula, result.setting.ledger).number
        words = f"it carries revision {copy.revision}, and what changed until revision {number} is recorded nowhere"
        return () if number == copy.revision else (Told(harm=Harm.AMOUNTS, words=words, kind=""),)
    today = facts_of(formula, result.setting)
    told = told_changes(copy.facts, today, on_labels=kind_of(copy.place) == TAGS)
    if reads_the_same is False and not told:
        return (Told(harm=Harm.WORDS, words=REWORDED),)
    return told


def _carries(place: str, told: Told) -> bool:
    """Whether a copy of this kind says anything of what changed."""
    kind = kind_of(place)
    if kind == TAGS:
        return told.harm <= Harm.CAUTIONS or told.kind in ON_A_TAG or told.subject in ON_A_TAG
    if kind == CARD:
        return told.subject not in OFF_A_CARD
    return told.harm <= Harm.AMOUNTS if kind in (PINNED, NEWSLETTER) else True


def _do(copy: Posted, harm: Harm) -> Iterator[str]:
    name, kind = copy.recipe, kind_of(copy.place)
    again = f"tinleaf posted {name} {_typed(copy.place)}"
    if kind in GIVEN and copy.to:
        yield f"tell {copy.to}, who got it on {copy.on.isoformat()}"
        if kind == CARD:
            yield f"print the card again: output/site/recipes/{name}/card-4x6.pdf"
        mark = f"{again} --to {shlex.quote(copy.to)}"
        yield f"then {mark}; or, if it is told and that is all: {mark} --gone --why told"
        return
    steps = {
        **dict.fromkeys(OF_A_FILM, f"put the new text there: {command_for(name, copy.place)}"),
        PAGE: "tinleaf make, and upload output/site",
        CARD: f"print the card again: output/site/recipes/{name}/card-4x6.pdf",
        TAGS: f"tell whoever got one; print new ones: tinleaf tags {name}",
        NEWSLETTER: "say it in the next one" + (", and soon" if harm <= Harm.CAUTIONS else ""),
    }
    yield steps.get(kind, "put it right there")
    yield again


def _typed(place: str) -> str:
    return " ".join(shlex.quote(each) for each in place.split())
