"""Words of a label that nobody here knows: misprinted, of another language, or a thing never heard of.

They are asked about and never passed over. One that looks like a word for an allergen ("almnods", "wheatflour") is
told with that allergen, whatever the maker has said of the pack.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from itertools import combinations

from generator.catalogue.load import built_in
from generator.catalogue.names import fold, number_forms
from generator.catalogue.tables import parsed_table
from generator.declaration.words import Match, meanings, plain

# Of a longer heap of strange words the rest is counted, not looked at: the pack is asked about in any case.
MOST_LOOKED_AT = 40
_TOKEN = re.compile(r"[^\W_](?:[^\W_]|'(?=[^\W_]))*")
_CODE = re.compile(
    r"[eb]?\d+[a-z]?(?:ii?i?|iv)?|\d+(?:g|kg|mg|ug|ml|cl|l|oz|lb|kj|kcal|ppm|x|th|st|nd|rd|in|cm|mm)"
)
_LEAST_LETTERS = 3
_LEAST_LIKE = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Strange:
    """A word with its place (end exclusive), and the allergens whose words it looks like."""

    word: str
    start: int
    end: int
    like: tuple[str, ...] = ()


def strange_words(listed: str, found: Sequence[Match]) -> tuple[Strange, ...]:
    """Each word of the text once, outside the phrases that were found, that stands in no list of words here."""
    once: dict[str, Strange] = {}
    for word, start, end in _tokens_outside(plain(listed), found):
        if word not in once and not _is_known(word):
            like = looks_like(word) if len(once) < MOST_LOOKED_AT else ()
            once[word] = Strange(word=listed[start:end], start=start, end=end, like=like)
    return tuple(once.values())


@lru_cache(maxsize=4096)
def looks_like(word: str) -> tuple[str, ...]:
    """Allergens whose words it may be a misprint of: a letter or two amiss, or with something grown to it."""
    if len(word) < _LEAST_LIKE:
        return ()
    near = {name for form in _shortened(word) for name in _by_shortened().get(form, ())}
    grown = {name for name in _allergen_words() if name in word}
    ids = (each for name in sorted(near | grown) for each in _allergen_words()[name])
    return tuple(dict.fromkeys(ids))


def _tokens_outside(low: str, found: Sequence[Match]) -> Iterator[tuple[str, int, int]]:
    at = 0
    for token in _TOKEN.finditer(low):
        while at < len(found) and found[at].end <= token.start():
            at += 1
        inside = at < len(found) and found[at].start < token.end()
        if not inside and not _says_nothing(token.group()):
            yield token.group(), token.start(), token.end()


def _says_nothing(token: str) -> bool:
    """Numbers, E numbers, units, and words too short to name a food; not so the signs of other scripts."""
    return token.isascii() and (len(token) < _LEAST_LETTERS or _CODE.fullmatch(token) is not None)


def _is_known(word: str) -> bool:
    bare = word.replace("'", "")
    return any(form in _vocabulary() for each in {word, bare} for form in number_forms(each))


@cache
def _vocabulary() -> frozenset[str]:
    """Single words: of this folder's two lists, and of all names and sub-ingredients of the catalogue."""
    text = files("generator.declaration").joinpath("plain_words.yaml").read_text(encoding="utf-8")
    named = (
        text
        for row in built_in()
        for text in (*row.names, row.label_name, row.made_of, *row.label_names.values())
    )
    every = (*parsed_table(text).values(), *meanings(), *named)
    return frozenset(
        part
        for each in every
        for word in _TOKEN.findall(plain(fold(each)))
        for part in {word, word.replace("'", "")}
    )


@cache
def _allergen_words() -> dict[str, tuple[str, ...]]:
    """Single words that name an allergen by themselves, the plain form of each."""
    return {
        phrase: meaning.allergens
        for phrase, meaning in meanings().items()
        if meaning.allergens and phrase.isalpha() and len(phrase) >= _LEAST_LIKE
    }


@cache
def _by_shortened() -> dict[str, tuple[str, ...]]:
    found: dict[str, list[str]] = {}
    for name in _allergen_words():
        for form in _shortened(name):
            found.setdefault(form, []).append(name)
    return {form: tuple(names) for form, names in found.items()}


def _shortened(word: str) -> frozenset[str]:
    """The word, and every form with a letter left out, of a long word with two: two misprints of one meet there."""
    most = 1 if len(word) < 8 else 2
    kept = (combinations(word[:14], len(word[:14]) - gone) for gone in range(most + 1))
    return frozenset("".join(letters) + word[14:] for every in kept for letters in every)
