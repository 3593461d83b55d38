"""Words that say how large a piece is or how a measure is filled; they are no part of an item's name."""

import re

SIZES = (
    "extra large",
    "extra-large",
    "jumbo",
    "large",
    "medium",
    "small",
    "packed",
    "sifted",
    "unsifted",
    "level",
    "heaped",
    "heaping",
    "rounded",
    "generous",
    "scant",
)
_HOW = "firmly|lightly|loosely|tightly|well"
SIZE = re.compile(rf"\(?\b(?:(?:{_HOW})\s{{1,3}})?({'|'.join(SIZES)})\b\)?(?=\s|$)\s{{0,9}}", re.I)


def plain_size(word: str) -> str:
    """`Extra-large` and `extra large` are one word."""
    return word.lower().replace("-", " ")
