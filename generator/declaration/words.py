"""Words that name an allergen, found in running text.

A phrase is matched as whole words, in any case and number; what lies wholly inside a longer phrase is ruled
by the longer one. Phrases that only overlap both count: of "almond milk chocolate" both halves are believed.
"""

import re
import unicodedata
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from generator.catalogue.allergens import ALLERGENS
from generator.catalogue.names import fold, number_forms
from generator.catalogue.tables import parsed_table

_QUOTES = str.maketrans({"‘": "'", "’": "'", "\u00a0": " ", "\u2009": " ", "\u202f": " ", "\t": " "})
_WORD = re.compile(r"(?<![a-z0-9'])[a-z0-9]+")
_HYPHENS = re.compile("[-_\u2010-\u2015]")
# Letters of other languages that no decomposition takes apart, as the first of their two letters.
_LIGATURES = {"œ": "o", "æ": "a", "ß": "s", "ø": "o", "ł": "l", "đ": "d", "ı": "i"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Meaning:
    """What a phrase says: allergens it stands for, a reason to ask, words that settle the question.

    `excepted` names the regions whose law excepts the thing. `settles` empty: any words in brackets settle
    it.
    """

    allergens: tuple[str, ...] = ()
    ask: str = ""
    settles: tuple[str, ...] = ()
    excepted: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Match:
    """A phrase in a text: where it stands (end exclusive) and what it means."""

    start: int
    end: int
    meaning: Meaning


def plain(text: str) -> str:
    """The text in small letters without accents or hyphens, character for character as long as it was."""
    straight = text.translate(_QUOTES)
    bare = straight.lower() if straight.isascii() else "".join(map(_bare, straight))
    return _HYPHENS.sub(" ", bare)


def matches(text: str) -> tuple[Match, ...]:
    """Every phrase with a meaning in `text`, in order; those inside a longer phrase left out."""
    kept: list[Match] = []
    for found in _longest_at_each_word(plain(text)):
        if not kept or found.end > kept[-1].end:
            kept.append(found)
    return tuple(kept)


@lru_cache(maxsize=4096)
def _bare(character: str) -> str:
    small = unicodedata.normalize("NFKD", character)[:1].lower()
    return _LIGATURES.get(small, small) if len(small) == 1 else character


def _longest_at_each_word(text: str) -> Iterator[Match]:
    beginning = _beginning()
    for word in _WORD.finditer(text):
        pattern = _pattern(word.group()) if word.group() in beginning else None
        found = pattern.match(text, word.start()) if pattern else None
        if found:
            phrase = " ".join(found.group().split())
            yield Match(start=found.start(), end=found.end(), meaning=meanings()[phrase])


@cache
def _pattern(first: str) -> re.Pattern[str]:
    """Every phrase that begins with the word; made when a text has it, since most texts need few of them."""
    return re.compile(f"(?:{'|'.join(_beginning()[first])})(?![a-z0-9])")


@cache
def _beginning() -> Mapping[str, list[str]]:
    """First word -> every phrase that begins with it, the longest first."""
    beginning: dict[str, list[str]] = {}
    for phrase in sorted(meanings(), key=lambda phrase: (-len(phrase), phrase)):
        first = _WORD.match(phrase)
        if first:
            beginning.setdefault(first.group(), []).append(re.escape(phrase).replace(r"\ ", " +"))
    return MappingProxyType(beginning)


@cache
def meanings() -> Mapping[str, Meaning]:
    """Phrase, in every number -> its meaning; the rows of `words.yaml` over the names of the vocabulary."""
    meanings: dict[str, Meaning] = {}
    for allergen in ALLERGENS.values():
        for name in allergen.names:
            _teach(meanings, name, Meaning(allergens=(allergen.id,)))
    own: dict[str, Meaning] = {}
    for row in _rows():
        for phrase in row["words"].split(","):
            _teach(own, phrase, _meaning(row))
    return MappingProxyType(meanings | own)


def _rows() -> list[dict[str, Any]]:
    text = files("generator.declaration").joinpath("words.yaml").read_text(encoding="utf-8")
    rows: list[dict[str, Any]] = parsed_table(text)
    return rows


def _meaning(row: Mapping[str, Any]) -> Meaning:
    """Raises ValueError for an id that the vocabulary lacks: a fault of our own data."""
    unheard = set(row.get("is") or ()) - set(ALLERGENS)
    if unheard:
        raise ValueError(f"no such allergen: {sorted(unheard)}")
    return Meaning(
        allergens=tuple(row.get("is") or ()),
        ask=row.get("ask", ""),
        settles=tuple(row.get("settles") or ()),
        excepted=tuple(row.get("except") or ()),
    )


def _teach(meanings: dict[str, Meaning], phrase: str, meaning: Meaning) -> None:
    """The phrase as it stands wins over a number form of another phrase."""
    folded = fold(phrase)
    meanings[folded] = meaning
    for form in number_forms(folded):
        meanings.setdefault(form, meaning)
