"""What each region asks of a declaration, as data with its sources and the day it was checked.

A region without a file is absent: nothing is declared for it, which is not the same as nothing to declare.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

import yaml

from generator.catalogue.allergens import ALLERGENS


@dataclass(frozen=True, slots=True, kw_only=True)
class Region:
    """The rules of one region.

    words            id that the region declares -> its word on a label
    counts_as        id -> the ids it is declared under here
    kind_needed      class words that are no name: with one of them no label is finished
    list_only        id -> word that the list must show although the Contains line does not name it
    seen_as          id -> words of the list that show it clearly, longest first
    emphasis         whether the names stand out inside the list
    contains_words   start of the line after the list; "" where the region allows none
    water_left_out   share of the finished food up to which water may go unnamed, None: never
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
    emphasis: bool
    contains_words: str
    may_words: str
    kitchen_words: str
    water_in_finished_food: bool
    water_left_out: Fraction | None
    small_amounts: Fraction | None
    small_amounts_words: str

    def ids(self, allergen: str) -> tuple[str, ...]:
        """What an allergen is declared as here; empty where the region does not declare it."""
        return tuple(each for each in self.counts_as.get(allergen, (allergen,)) if each in self.words)

    def shown_ids(self, allergen: str) -> tuple[str, ...]:
        """What the list itself must show for it."""
        return (*self.ids(allergen), *((allergen,) if allergen in self.list_only else ()))

    def word(self, allergen: str) -> str:
        """Its word on a label; an allergen that the region does not declare goes by its own name."""
        return self.words.get(allergen) or self.list_only.get(allergen) or allergen


REGION_NAMES = ("US", "EU")


@cache
def region_named(name: str) -> Region:
    """The rules of a region of `REGION_NAMES`; KeyError for any other."""
    if name not in REGION_NAMES:
        raise KeyError(name)
    file = files("generator.declaration").joinpath("regions", f"{name.lower()}.yaml")
    return _region(yaml.safe_load(file.read_text(encoding="utf-8")))


def _region(data: Mapping[str, Any]) -> Region:
    _must_be_known({*data["declares"], *data["counts_as"], *data["kind_needed"], *data["seen_as"]})
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
        emphasis=data["emphasis"],
        contains_words=data["contains_words"],
        may_words=data["may_words"],
        kitchen_words=data["kitchen_words"],
        water_in_finished_food=data["water_in_finished_food"],
        water_left_out=_percent(data["water_left_out_up_to"]),
        small_amounts=_percent(data["small_amounts"]),
        small_amounts_words=data["small_amounts_words"],
    )


def _seen_as(data: Mapping[str, Any]) -> Mapping[str, tuple[str, ...]]:
    shown = {key: (word,) for key, word in {**data["declares"], **data["list_only"]}.items()}
    return MappingProxyType(shown | {key: tuple(words) for key, words in data["seen_as"].items()})


def _percent(value: int | None) -> Fraction | None:
    return None if value is None else Fraction(value, 100)


def _must_be_known(ids: Iterable[str]) -> None:
    unheard = set(ids) - set(ALLERGENS)
    if unheard:
        raise ValueError(f"no such allergen: {sorted(unheard)}")
