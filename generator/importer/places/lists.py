"""A list on one line, cut into its lines: by whatever sign parts most pieces that read as lines of a list."""

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace

from generator.importer.line.tidy import SIGNS
from generator.importer.model import SourceLine
from generator.importer.places.worth import NAMED, WHOLE, Worth

_SIGN = re.compile(
    r"\s*(?:[^\w\s()\[\]{}%'’\"“”.:°]+|(?<=[\w)])\.(?=\s)|\.{2,}|\s{2,})\s*|\s+(?:and|plus|then)\s+"
)
_WEAK = frozenset({",", "and", "plus", "then", ".", "-"})
"""Signs that stand inside of lines too; any other that does as well is taken before them."""
_LEAST = 3
_MOST = 60
_MOSTLY = 0.7
_HEAD = re.compile(r"^(?P<head>[^\d:;,|()]{2,40}?)\s?(?::|\s[-–—=]+>?)\s+(?P<rest>\S.*)$")


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """`head` is what stood before the list, or ""; `pieces` are its lines."""

    head: str
    pieces: tuple[str, ...]
    good: int
    value: int


def apart(lines: tuple[SourceLine, ...], worth: Worth) -> tuple[SourceLine, ...]:
    """The lines, each list on one line cut into as many lines as it has things; all keep its number."""
    out: list[SourceLine] = []
    for line in lines:
        found = listed(line.text, worth) if line.hint in ("", "item", "cell") else None
        if found is None:
            out.append(line)
            continue
        if found.head:
            out.append(replace(line, text=f"{found.head}:"))
        out += [replace(line, text=each) for each in found.pieces]
    return tuple(out)


def listed(text: str, worth: Worth) -> Listed | None:
    """The list that a line is, None where it is none or one thing."""
    numbers = len(re.findall(rf"(?<![\w.,/])[\d{SIGNS}]", text))
    if numbers < _LEAST - 1 or len(text) < 30:
        return None
    best: Listed | None = None
    for head, rest in _heads(text.strip()):
        for pieces in _cut(rest):
            found = _read(head, pieces, worth)
            if found and (best is None or (found.good, found.value) > (best.good, best.value)):
                best = found
    return best


def _heads(text: str) -> Iterator[tuple[str, str]]:
    yield "", text
    if found := _HEAD.match(text):
        yield found["head"].strip(), found["rest"]


def _cut(text: str) -> Iterator[list[str]]:
    """The line cut at each of its signs that stands there several times."""
    found = [(each.group().strip() or each.group(), each.span()) for each in _SIGN.finditer(text)]
    often = Counter(sign for sign, _ in found)
    ordered = sorted(often.most_common(6), key=lambda each: each[0] in _WEAK)
    for sign, many in ordered:
        if many < _LEAST - 1 or many > _MOST:
            continue
        pieces, at = [], 0
        for each, (start, end) in found:
            inside = text[:start].count("(") > text[:start].count(")")
            between = text[start - 1 : start].isdigit() and text[end : end + 1].isdigit() and start + 1 == end
            if each == sign and not inside and not between:
                pieces.append(text[at:start])
                at = end
        yield [each.strip() for each in (*pieces, text[at:]) if each.strip()]


def _read(head: str, pieces: list[str], worth: Worth) -> Listed | None:
    """The pieces with each that is no line of its own put to the one before; None where most are none."""
    out: list[str] = []
    good = 0
    for each in pieces:
        plain = re.sub(r"^(?:and|plus|then|&)\s+", "", each.rstrip(" .;"), flags=re.I)
        value = worth.of(plain) if len(plain) <= 90 else 0
        if value >= WHOLE or (value == NAMED and (any(map(str.isdigit, plain)) or worth.is_food(plain))):
            good += value >= WHOLE
            out.append(plain)
        elif out:
            out[-1] = f"{out[-1]}, {each.rstrip(' .;')}"
        else:
            return None
    if good < _LEAST - bool(head) or good < len(out) * _MOSTLY or len(out) < 2:
        return None
    whole = sum(worth.of(each) >= WHOLE for each in out)
    value = sum(map(worth.of, out))
    return Listed(head=head, pieces=tuple(out), good=whole, value=value) if whole >= good else None
