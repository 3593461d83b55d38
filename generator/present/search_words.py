"""Words as the search compares them. The script of the search page folds what a reader types in the same way."""

import re
import unicodedata
from collections.abc import Iterable

_WORD = re.compile(r"[^\W_]+")
# Words that stand in nearly every text and help nobody to find one.
_PASSED_OVER = frozenset(
    ("a", "an", "and", "for", "from", "in", "into", "is", "it", "of", "on", "or", "the", "with")
)


def folded(text: str) -> str:
    """Lower case without accents: “Crème brûlée” is “creme brulee”, “Weiß” is “weiss”."""
    apart = unicodedata.normalize("NFKD", text.casefold())
    return "".join(each for each in apart if not unicodedata.combining(each)).casefold()


def search_words(*texts: str) -> tuple[str, ...]:
    """Each word once, in the order of the texts; an apostrophe does not end a word."""
    joined = re.sub(r"(?<=\w)[’'](?=\w)", "", folded("\n".join(texts)))
    return tuple(dict.fromkeys(word for word in _WORD.findall(joined) if word not in _PASSED_OVER))


def without(words: Iterable[str], known: tuple[str, ...]) -> tuple[str, ...]:
    """The words that are not known yet."""
    return tuple(word for word in words if word not in known)
