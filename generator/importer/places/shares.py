"""Columns of a baker's shares, known by their percent sign, kept out of the lines and told as their notes."""

import re
from dataclasses import replace

from generator.importer.line.measures import stretches
from generator.importer.model import SourceLine
from generator.importer.places.worth import Worth

_LEAST = 3
_NUMBER = r"\d{1,3}(?:[.,]\d{1,2})?"
_LAST = re.compile(rf"[\s|;,·(\[–-]*(?<![\d.,])(?P<share>{_NUMBER}\s?%)[\s|)\]]*$")
_FIRST = re.compile(rf"^[\s|*•(\[-]*(?P<share>{_NUMBER}\s?%)[\s|;,)\]:–-]*(?=[^\W_])")
_NAMED = re.compile(r"%|\bper\s?cent\b|\bpercent(?:age)?s?\b|\bbaker[’']?s\b|\bshares?\b", re.I)
_CELLS = re.compile(r"(\s*\|\s*|\t+| {2,})")
_SHARE = re.compile(rf"(?:{_NUMBER}(?:\s?%)?|[-–—]+|n/?a\.?)", re.I)
_HINTS = frozenset({"", "item", "cell", "heading", "ingredient"})
_MOSTLY = 0.6


def without_shares(
    lines: tuple[SourceLine, ...], worth: Worth
) -> tuple[tuple[SourceLine, ...], dict[int, str]]:
    """The lines without their shares, and the shares by the numbers of the lines."""
    notes: dict[int, str] = {}
    out = _by_sign(_by_head(lines, worth, notes), worth, notes)
    return out, notes


def _by_head(lines: tuple[SourceLine, ...], worth: Worth, notes: dict[int, str]) -> tuple[SourceLine, ...]:
    """A column whose head says that it has shares: bare numbers and dashes in it are no amounts and no words."""
    out = list(lines)
    place = wide = 0
    for index, each in enumerate(lines):
        if each.hint not in _HINTS:
            continue
        pieces = _CELLS.split(each.text.strip().strip("|").strip())
        cells = pieces[::2]
        named = [at for at, cell in enumerate(cells) if _NAMED.search(cell) and not cell[:1].isdigit()]
        if len(cells) > 1 and len(named) == 1 and not stretches(each.text, worth.shelf):
            # Counted from the right: the first cell of a head is often empty.
            place, wide = len(cells) - named[0], len(cells)
            continue
        if not place or len(cells) < max(place, wide - 1, 2) or not _SHARE.fullmatch(cells[-place].strip()):
            continue
        rest = [cell for at, cell in enumerate(cells) if at != len(cells) - place]
        if not any(any(map(str.isdigit, cell)) for cell in rest):
            continue
        share = cells[-place].strip()
        pieces[2 * (len(cells) - place)] = ""
        out[index] = replace(
            each, text=("| " if each.text.lstrip().startswith("|") else "") + "".join(pieces)
        )
        if any(map(str.isdigit, share)):
            notes[each.number] = share if share.endswith("%") else f"{share} %"
    return tuple(out)


def _by_sign(lines: tuple[SourceLine, ...], worth: Worth, notes: dict[int, str]) -> tuple[SourceLine, ...]:
    """Shares at the same end of most lines that have an amount; one line with `70 %` has no column."""
    amounts = [
        index
        for index, each in enumerate(lines)
        if each.hint in _HINTS and len(each.text) < 200 and stretches(each.text, worth.shelf)
    ]
    out = list(lines)
    for end in (_LAST, _FIRST):
        found = {index: match for index in amounts if (match := end.search(out[index].text))}
        found = {
            index: match
            for index, match in found.items()
            if stretches(_bare(out[index].text, match), worth.shelf)
        }
        if len(found) < _LEAST or len(found) < len(amounts) * _MOSTLY / 2:
            continue
        for index, match in found.items():
            out[index] = replace(lines[index], text=_bare(out[index].text, match))
            notes[lines[index].number] = match["share"]
    return tuple(out)


def _bare(text: str, share: re.Match[str]) -> str:
    return text[: share.start()] + text[share.end() :]
