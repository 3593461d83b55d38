"""How two written names are held to be one: case, accents, spaces, hyphens and plurals."""

import re
import unicodedata
from functools import lru_cache

_SEPARATORS = re.compile(r"[\s\-\u2010-\u2015_]+")
_QUOTES = str.maketrans({"\u2018": "'", "\u2019": "'", "\u201c": '"', "\u201d": '"'})
_NO_PLURAL_ENDING = ("ss", "us", "is")


_SHORT = 120
"""Letters of what is remembered: names come again and again, long texts do not."""


def fold(text: str) -> str:
    """The form under which names are compared: compatibility forms, accents and case away, one space."""
    return _folded_once(text) if len(text) <= _SHORT else _folded(text)


def _folded(text: str) -> str:
    plain = unicodedata.normalize("NFKD", text.translate(_QUOTES))
    bare = "".join(each for each in plain if not unicodedata.combining(each))
    return _SEPARATORS.sub(" ", bare.casefold()).strip()


_folded_once = lru_cache(maxsize=16384)(_folded)


def _singulars(word: str) -> tuple[str, ...]:
    if not word.endswith("s") or word.endswith(_NO_PLURAL_ENDING) or len(word) < 4:
        return ()
    found = [word[:-1]]
    if word.endswith("ies"):
        found.append(word[:-3] + "y")
    if word.endswith("ves"):
        found += [word[:-3] + "f", word[:-3] + "fe"]
    if word.endswith(("oes", "shes", "ches", "xes", "sses")):
        found.append(word[:-2])
    return tuple(found)


def _plurals(word: str) -> tuple[str, ...]:
    found = [word + "s"]
    if word.endswith("y"):
        found.append(word[:-1] + "ies")
    if word.endswith("f"):
        found.append(word[:-1] + "ves")
    if word.endswith("fe"):
        found.append(word[:-2] + "ves")
    if word.endswith(("o", "sh", "ch", "x", "ss")):
        found.append(word + "es")
    return tuple(found)


def number_forms(folded: str) -> tuple[str, ...]:
    """The folded name itself, then with its last word in the other number, by the regular English rules."""
    return _forms_once(folded) if len(folded) <= _SHORT else _forms(folded)


def _forms(folded: str) -> tuple[str, ...]:
    head, space, last = folded.rpartition(" ")
    if not last.isalpha():
        return (folded,)
    others = (*_singulars(last), *_plurals(last))
    return (folded, *(head + space + each for each in others))


_forms_once = lru_cache(maxsize=16384)(_forms)


def same_name(first: str, second: str) -> bool:
    """True when two names differ in case, accents, spaces, hyphens or the number of the last word only."""
    one, other = fold(first), fold(second)
    return other in number_forms(one) or one in number_forms(other)
