"""Declarations as data: the words, which of them stand out, and why each allergen is there."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """A stretch of text; `strong` where it is to stand out (bold in print, capitals in plain text)."""

    text: str
    strong: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Trace:
    """Why an allergen is declared: the line it came from and the words that say so.

    `state` is "contains" or "may contain"; `source` names the catalogue, the pack's label, the maker's own
    entry, or the component. `excepted` names the regions whose law excepts the thing as the words state it.
    """

    allergen: str
    state: str
    part: str
    item: str
    source: str
    words: str
    excepted: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class LineAllergens:
    """What one line carries, without regard to region: canonical names sorted, `unknown` as reasons."""

    allergens: tuple[str, ...]
    may_contain: tuple[str, ...]
    unknown: tuple[str, ...]
    traces: tuple[Trace, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Declaration:
    """The declaration of one bake in one region.

    `ingredients` is the list without a heading; `contains_line` and `may_line` are whole sentences, empty
    where nothing is to be said or the region does not allow the line; `unfinished` is the sentence that says
    aloud that packs are still to be read, empty when `finished`. `statement` is all of it and the
    sentence on the maker's kitchen as plain text, standing-out words in capitals.

    `also_in` and `also_may` are ids, without regard to region, that the line on what is contained (where there is
    none, the list) and the line of precaution do not name here: who is elsewhere must be told them too.
    """

    region: str
    finished: bool
    ingredients: tuple[Run, ...]
    contains: tuple[str, ...]
    may_contain: tuple[str, ...]
    unknown: tuple[str, ...]
    contains_line: tuple[Run, ...]
    may_line: tuple[Run, ...]
    unfinished: str
    statement: str
    traces: tuple[Trace, ...]
    also_in: tuple[str, ...] = ()
    also_may: tuple[str, ...] = ()
