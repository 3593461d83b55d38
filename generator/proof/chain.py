"""Finds claims in a text in their order: quickly where all are there, in the best possible way where some are not."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from generator.proof.claim import Claim
from generator.proof.squeeze import Squeezed, find

# A claim that is said more often than this is tried at its first so many places.
_MOST_PLACES = 24


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where a claim stands, in letters of the text; `claim` is its number."""

    claim: int
    start: int
    end: int


def places_of(text: Squeezed, claims: Sequence[Claim]) -> tuple[Place, ...]:
    """A place for each claim that can have one, no two of them out of order."""
    found = _one_after_another(text, claims)
    return found if len(found) == len(claims) else _best(text, claims)


def _one_after_another(text: Squeezed, claims: Sequence[Claim]) -> tuple[Place, ...]:
    """Each claim as early as possible. If there is a way to have them all, this is one."""
    found: list[Place] = []
    for number, claim in enumerate(claims):
        start = found[-1].end if found else 0
        place = _first(text, claim, number, start)
        if place is None:
            break
        found.append(place)
    return tuple(found)


def _first(text: Squeezed, claim: Claim, number: int, start: int) -> Place | None:
    best: Place | None = None
    for letters in claim.spellings:
        at = find(text, letters, start)
        if at >= 0 and (best is None or at + len(letters) < best.end):
            best = Place(claim=number, start=at, end=at + len(letters))
    return best


_FAR = 60
"""Letters between two claims that are more than what stands between neighbours."""


def next_place(text: Squeezed, claim: Claim, start: int) -> Place | None:
    """Where a claim comes next, in its first wording; one that comes sooner is looked for where that is far off."""
    best: Place | None = None
    for letters in claim.each_spelling():
        at = find(text, letters, start, best.end if best else None)
        if at >= 0:
            best = Place(claim=0, start=at, end=at + len(letters))
        if best is not None and best.start - start < _FAR:
            break
    return best


def _best(text: Squeezed, claims: Sequence[Claim]) -> tuple[Place, ...]:
    """The places that hold the most letters in order: the longest chain, by weight."""
    places = sorted(_all_places(text, claims), key=lambda each: (each.start, each.claim))
    weights: list[int] = []
    before: list[int] = []
    for at, place in enumerate(places):
        weight, link = 0, -1
        for earlier in range(at):
            fits = places[earlier].claim < place.claim and places[earlier].end <= place.start
            if fits and weights[earlier] > weight:
                weight, link = weights[earlier], earlier
        weights.append(weight + place.end - place.start)
        before.append(link)
    chain: list[Place] = []
    at = max(range(len(places)), key=weights.__getitem__, default=-1)
    while at >= 0:
        chain.append(places[at])
        at = before[at]
    return tuple(reversed(chain))


def _all_places(text: Squeezed, claims: Sequence[Claim]) -> Iterable[Place]:
    for number, claim in enumerate(claims):
        for letters in claim.spellings:
            at, count = find(text, letters), 0
            while at >= 0 and count < _MOST_PLACES:
                yield Place(claim=number, start=at, end=at + len(letters))
                at, count = find(text, letters, at + 1), count + 1
