"""Words that are wider than their line: where they may be broken, by the patterns that the PDF engine uses too."""

from collections.abc import Callable, Iterator
from functools import cache

import pyphen

from generator.render.far_faces import runs_leftward

_SOFT = "\u00ad"
# A shorter piece of a word is harder to read than a break at any letter.
_LEAST = 2


def broken_word(word: str, language: str, fits: Callable[[str], bool]) -> Iterator[str]:
    """The pieces of a word, each of which fits; all but the last end in a soft hyphen, which stands for the hyphen.

    Broken between syllables where the language has patterns and a syllable fits, else at any letter. What holds a
    figure gets no hyphen, which could be read as a sign; letters that run to the left have none.
    """
    rest = word
    has_none = any(letter.isdigit() for letter in word) or (not word.isascii() and runs_leftward(word))
    hyphen = "" if has_none else _SOFT
    while rest and not fits(rest):
        at = _last_fitting(rest, language, hyphen, fits)
        yield rest[:at].rstrip(_SOFT) + hyphen
        rest = rest[at:].lstrip(_SOFT)
    yield rest


def _last_fitting(word: str, language: str, hyphen: str, fits: Callable[[str], bool]) -> int:
    for place in reversed(_places(word, language) if hyphen else ()):
        if fits(word[:place] + hyphen):
            return place
    longest = 1
    # At least one letter on a line, however narrow it is: else there would be no end.
    while longest + 1 < len(word) and fits(word[: longest + 1] + hyphen):
        longest += 1
    return longest


def _places(word: str, language: str) -> tuple[int, ...]:
    own = tuple(at + 1 for at, letter in enumerate(word) if letter == _SOFT)
    patterns = _patterns(language)
    if own or patterns is None:
        return own
    return tuple(int(place) for place in patterns.positions(word) if _LEAST <= place <= len(word) - _LEAST)


@cache
def _patterns(language: str) -> pyphen.Pyphen | None:
    found = pyphen.language_fallback(language.replace("-", "_"))
    return pyphen.Pyphen(lang=found) if found else None
