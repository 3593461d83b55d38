"""Where a copy of a bake can stand: the places that have a name of their own, and any other words of the maker's."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Final

PAGE: Final = "page"
DESCRIPTION: Final = "description"
PINNED: Final = "pinned comment"
CARD: Final = "card"
TAGS: Final = "tags"
NEWSLETTER: Final = "newsletter"
KNOWN: Final = (PAGE, DESCRIPTION, PINNED, CARD, TAGS, NEWSLETTER)
OF_A_FILM: Final = (DESCRIPTION, PINNED)
GIVEN: Final = (CARD, TAGS)
"""What is handed to a person, who is named with it."""

LONGEST = 200
_NEAR = 0.75
_ADDRESS = re.compile(r"(?:https?://|www\.)\S+", re.IGNORECASE)
_PLURALS = {"cards": CARD, "tag": TAGS, "pinned": PINNED}


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A place that is not clear: a sentence that says why, and what to type."""

    words: str


def read_place(
    text: str, *, films: tuple[str, ...], used: Iterable[str], as_typed: bool = False
) -> str | Asked:
    """The place that is meant, in the form in which the ledger keeps it.

    `films` are the addresses of the recipe's videos, `used` the places that the ledger knows already. With
    `as_typed` words that are nearly those of a known place are a place of the maker's own.
    """
    words = " ".join(text.split())
    if not words or len(words) > LONGEST or not words.isprintable():
        return Asked(words=f"a place is a few plain words, such as {', '.join(KNOWN)}")
    address = _ADDRESS.search(words)
    named = (words[: address.start()] if address else words).strip().casefold()
    named = _PLURALS.get(named, named)
    known = tuple(dict.fromkeys((*KNOWN, *(each.casefold() for each in used))))
    if named in OF_A_FILM:
        return _of_a_film(named, address[0] if address else "", films)
    if named in KNOWN and address is None:
        return named
    whole = f"{named} {address[0]}".strip() if address else named
    near = () if as_typed or whole in known else get_close_matches(named, known, n=2, cutoff=_NEAR)
    if near:
        meant = " or ".join(f"“{each}”" for each in near)
        return Asked(
            words=f"“{words}” is no place that is known. Did you mean {meant}? "
            "Type that, or add --as-typed if it is a place of its own."
        )
    return whole


def _of_a_film(named: str, address: str, films: tuple[str, ...]) -> str | Asked:
    if address:
        film = next((each for each in films if _bare(each) == _bare(address)), None)
        if film is not None:
            return named if len(films) == 1 else f"{named} {film}"
        has = f"Its films are {', '.join(films)}." if films else "It has no film under “videos:”."
        return Asked(words=f"no film of this recipe has the address {address}. {has}")
    if len(films) > 1:
        lines = "".join(f"\n  {named} {each}" for each in films)
        return Asked(words=f"this recipe has {len(films)} films; say which one:{lines}")
    return named


def _bare(address: str) -> str:
    return re.sub(r"^(?:https?://)?(?:www\.)?", "", address, flags=re.IGNORECASE).rstrip("/")


def film_of(place: str, films: tuple[str, ...]) -> str:
    """The address of the film that a place is about; "" where it is about none."""
    named, _, address = place.rpartition(" ")
    if place in OF_A_FILM:
        return films[0] if films else ""
    return address if named in OF_A_FILM else ""


def kind_of(place: str) -> str:
    """The known place that this is one of, else the place itself: "description https://…" is a description."""
    return next((each for each in OF_A_FILM if place == each or place.startswith(f"{each} ")), place)
