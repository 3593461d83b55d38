"""Characters that old texts are full of and recipes are not: what is invisible goes, and what is left out is said."""

import re
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass, replace

from generator.importer.model import SourceLine

_HIDDEN = re.compile(
    "[\u00ad\u061c\u180e\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufe00-\ufe0f\ufeff\ue000-\uf8ff]+"
)
_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ufffd\ufdd0-\ufdef\ufffe\uffff]+")
_WIDE = {"\u2028": " ", "\u2029": " ", "\t": "\t"}
_FEW = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Cleaned:
    """`said` is for the terminal; `aside` are lines for comments of the file, so that nothing is lost."""

    lines: tuple[SourceLine, ...]
    said: tuple[str, ...]
    aside: tuple[str, ...]


def clean_lines(lines: tuple[SourceLine, ...], unprintable: Callable[[str], tuple[str, ...]]) -> Cleaned:
    out: list[SourceLine] = []
    aside: list[str] = []
    pictures: dict[str, None] = {}
    bad = frozenset(unprintable("".join({character for line in lines for character in line.text})))
    for line in lines:
        text = _plain(line.text, bad)
        missing = [each for each in text if each in bad]
        letters = sum(unicodedata.category(each).startswith("L") for each in missing)
        if letters > _FEW:
            aside.append(f"kept from line {line.number}: {line.text.strip()}")
            out.append(replace(line, text=""))
            continue
        pictures.update(dict.fromkeys(missing))
        out.append(replace(line, text="".join(each for each in text if each not in bad)))
    said = []
    if pictures:
        said.append(f"pictures and signs, left out: {' '.join(pictures)}")
        aside.append(f"pictures and signs, left out: {' '.join(pictures)}")
    if len(aside) > bool(pictures):
        said.append("lines in letters of other scripts: kept in comments of the file")
    return Cleaned(lines=tuple(out), said=tuple(said), aside=tuple(aside))


def _plain(text: str, bad: frozenset[str]) -> str:
    text = _CONTROL.sub(" ", _HIDDEN.sub("", text))
    for sign, plain in _WIDE.items():
        text = text.replace(sign, plain)
    text = unicodedata.normalize("NFC", text)
    return "".join(_folded(each, bad) if each in bad else each for each in text)


def _folded(character: str, bad: frozenset[str]) -> str:
    """The compatibility form where that can be printed: a circled 1 is 1, a full-width letter a letter."""
    folded = unicodedata.normalize("NFKC", character)
    return folded if folded != character and not set(folded) & bad else character
