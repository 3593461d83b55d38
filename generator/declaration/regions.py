"""What each region asks of a declaration, as data with its sources and the day it was checked.

A region without a file is absent: nothing is declared for it, which is not the same as nothing to declare.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from generator.catalogue.allergens import ALLERGENS
from generator.catalogue.tables import parsed_table
from generator.wording.speech import say_of, voice


@dataclass(frozen=True, slots=True, kw_only=True)
class Region:
    """The rules of one region.

    words            id that the region declares -> its word on a label
    counts_as        id -> the ids it is declared under here
    kind_needed      class words that are no name: with one of them no label is finished
    list_only        id -> word that the list must show although the Contains line does not name it
    seen_as          id -> words of the list that show it clearly, longest first
    emphasis         whether the names stand out inside the list
    summary_adds     ids that the Contains line says beside the source; the list need not ("gluten" of wheat)
    summary_leaves_out  ids that stand in the list alone, since another word of the line covers them
    contains_line    "required", "allowed" or "not allowed"
    contains_words   start of the line after the list; "" where the region allows none
    others           class word -> what it is called after "other", where a kind of it is contained already
    sulphites_from   the region's threshold, in words; no pack states an amount, so they are always carried over
    water_left_out   share of the finished food up to which water may go unnamed, None: never
    letters          whose rule the heights of letters follow: "american" or "european"
    metric_first     whether the net weight begins with grams
    shares_of_named  whether food sold packed in advance says the share of what its name speaks of
    names_nothing    words of an ingredient's name that do not make it the one that the food is named after
    spelling         words of the catalogue's names -> as they are written here, where it has no name of its own
    names            language -> id -> its word on a label in that language
    names_seen       language -> id -> words of the list that show it in that language beside its name, longest first
    small_amounts    share up to which ingredients may be gathered at the end, None: they are not
    """

    id: str
    name: str
    checked: date
    sources: tuple[str, ...]
    heading: str
    words: Mapping[str, str]
    counts_as: Mapping[str, tuple[str, ...]]
    kind_needed: frozenset[str]
    list_only: Mapping[str, str]
    seen_as: Mapping[str, tuple[str, ...]]
    summary_adds: frozenset[str]
    summary_leaves_out: frozenset[str]
    emphasis: bool
    contains_line: str
    contains_words: str
    may_words: str
    others: Mapping[str, str]
    kitchen_words: str
    sulphites_from: str
    water_in_finished_food: bool
    water_left_out: Fraction | None
    small_amounts: Fraction | None
    small_amounts_words: str
    letters: str
    metric_first: bool
    spelling: Mapping[str, str]
    shares_of_named: bool
    names_nothing: frozenset[str]
    names: Mapping[str, Mapping[str, str]]
    names_seen: Mapping[str, Mapping[str, tuple[str, ...]]]

    def ids(self, allergen: str) -> tuple[str, ...]:
        """What an allergen is declared as here; empty where the region does not declare it."""
        return tuple(each for each in self.counts_as.get(allergen, (allergen,)) if each in self.words)

    def shown_ids(self, allergen: str) -> tuple[str, ...]:
        """What the list itself must show for it."""
        ids = (each for each in self.ids(allergen) if each == allergen or each not in self.summary_adds)
        return (*ids, *((allergen,) if allergen in self.list_only else ()))

    def spelt(self, name: str) -> str:
        """A name of the catalogue, which is in the spelling of the US, as it is written here; whole words only."""
        if not self.spelling:
            return name
        longest_first = sorted(self.spelling, key=lambda each: (-len(each), each))
        words = re.compile(rf"\b(?:{'|'.join(map(re.escape, longest_first))})\b")
        return words.sub(lambda found: self.spelling[found.group()], name)

    def word(self, allergen: str) -> str:
        """Its word on a label; an allergen that the region does not declare goes by its own name.

        In another language by the name that the region's file has in it, else by the catalogue's, else in English.
        """
        own = self.names.get(_language(), {}).get(allergen)
        return own or (allergen_word(allergen) if voice().catalogue else self.english(allergen))

    def english(self, allergen: str) -> str:
        return self.words.get(allergen) or self.list_only.get(allergen) or allergen

    def seen(self, allergen: str) -> tuple[str, ...]:
        """Words of the list that show it clearly to who reads the language that is spoken, longest first."""
        if not voice().catalogue:
            return self.seen_as[allergen]
        words = (*self.names_seen.get(_language(), {}).get(allergen, ()), self.word(allergen))
        return tuple(sorted(words, key=lambda each: (-len(each), each)))


def allergen_word(allergen: str) -> str:
    """What an allergen is called whatever a region's law calls it."""
    return say_of("allergen", allergen)


def allergens_worded(words: str) -> tuple[str, ...]:
    """The allergens that go by these words in the language that is spoken; English ones are in the vocabulary."""
    asked = " ".join(words.casefold().split())
    if not voice().catalogue:
        return ()
    found = {each for each in ALLERGENS if allergen_word(each).casefold() == asked}
    for rules in map(region_named, REGION_NAMES):
        own, seen = rules.names.get(_language(), {}), rules.names_seen.get(_language(), {})
        found |= {each for each, word in own.items() if word.casefold() == asked}
        found |= {each for each, told in seen.items() if asked in map(str.casefold, told)}
    return tuple(sorted(found))


def _language() -> str:
    return voice().catalogue


@cache
def region_named(name: str) -> Region:
    """The rules of a region of `REGION_NAMES`; KeyError for any other."""
    return _region(_files()[name])


@cache
def _files() -> Mapping[str, Mapping[str, Any]]:
    """The data of every region by its name, in the order that the files state."""
    folder = files("generator.declaration").joinpath("regions")
    texts = (each.read_text(encoding="utf-8") for each in folder.iterdir() if each.name.endswith(".yaml"))
    found = {data["id"]: data for data in map(parsed_table, texts)}
    whole = {name: {**found.get(data.get("as_in", ""), {}), **data} for name, data in found.items()}
    return MappingProxyType(dict(sorted(whole.items(), key=lambda each: (each[1]["order"], each[0]))))


REGION_NAMES = tuple(_files())
"""Every region that has a file, in a fixed order: to add a region is to add its file."""


def _region(data: Mapping[str, Any]) -> Region:
    _must_agree(data)
    return Region(
        id=data["id"],
        name=data["name"],
        checked=data["checked"],
        sources=tuple(data["sources"]),
        heading=data["heading"],
        words=MappingProxyType(dict(data["declares"])),
        counts_as=MappingProxyType({key: tuple(ids) for key, ids in data["counts_as"].items()}),
        kind_needed=frozenset(data["kind_needed"]),
        list_only=MappingProxyType(dict(data["list_only"])),
        seen_as=_seen_as(data),
        summary_adds=frozenset(data["summary_adds"]),
        summary_leaves_out=frozenset(data["summary_leaves_out"]),
        emphasis=data["emphasis"],
        contains_line=data["contains_line"],
        contains_words=data["contains_words"],
        may_words=data["may_words"],
        others=MappingProxyType(dict(data["others"])),
        kitchen_words=data["kitchen_words"],
        sulphites_from=data["sulphites_from"],
        water_in_finished_food=data["water_in_finished_food"],
        water_left_out=_percent(data["water_left_out_up_to"]),
        small_amounts=_percent(data["small_amounts"]),
        small_amounts_words=data["small_amounts_words"],
        letters=data["letters"],
        metric_first=data["metric_first"],
        spelling=MappingProxyType(dict(data["spelling"])),
        shares_of_named=data["shares_of_named"],
        names_nothing=frozenset(data["names_nothing"].split()),
        names=MappingProxyType(data.get("names", {})),
        names_seen=MappingProxyType(
            {
                language: {key: tuple(words) for key, words in table.items()}
                for language, table in data.get("names_seen", {}).items()
            }
        ),
    )


def _seen_as(data: Mapping[str, Any]) -> Mapping[str, tuple[str, ...]]:
    shown = {key: (word,) for key, word in {**data["declares"], **data["list_only"]}.items()}
    return MappingProxyType(shown | {key: tuple(words) for key, words in data["seen_as"].items()})


def _percent(value: int | None) -> Fraction | None:
    return None if value is None else Fraction(value, 100)


def _must_agree(data: Mapping[str, Any]) -> None:
    """Raises ValueError where a file contradicts itself or names what is no allergen: a fault of our own data."""
    ids = {*data["declares"], *data["counts_as"], *data["kind_needed"], *data["seen_as"], *data["list_only"]}
    tables = (*data.get("names", {}).values(), *data.get("names_seen", {}).values())
    ids |= {each for table in tables for each in table}
    unheard = {*ids, *data["summary_adds"], *data["summary_leaves_out"]} - set(ALLERGENS)
    if unheard:
        raise ValueError(f"{data['id']}: no such allergen: {sorted(unheard)}")
    counted = {each for ids in data["counts_as"].values() for each in ids}
    if not counted <= set(data["declares"]):
        raise ValueError(f"{data['id']}: counted as something that is not declared: {sorted(counted)}")
    if data["letters"] not in ("american", "european"):
        raise ValueError(f"{data['id']}: no such rule of letters: {data['letters']}")
    if bool(data["contains_words"]) is (data["contains_line"] == "not allowed"):
        raise ValueError(f"{data['id']}: words for a line that is not allowed, or a line without words")
