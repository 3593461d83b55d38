"""Amounts and names that stand on lines of their own, one over the other, made one line."""

import re
from dataclasses import replace

from generator.importer.line.tidy import bare
from generator.importer.model import SourceLine
from generator.importer.places.worth import WHOLE, Worth

_LEAST = 3
_LONGEST = 60
_SIGNS = (r"\s*;\s*", r"\s*[|\t]\s*", r"\s*[·•/]\s*", r"\s{2,}", r",\s*", r",\s*|\s+and\s+")


def joined(lines: tuple[SourceLine, ...], worth: Worth) -> tuple[SourceLine, ...]:
    """The lines with each lone amount put to the name over it or under it, whichever reads better in all."""
    lines = _upright(lines, worth)
    alone = {
        index for index, each in enumerate(lines) if each.hint in ("", "item", "cell") and _alone(each, worth)
    }
    if len(alone) < _LEAST:
        return lines
    if (told := _blocks(lines, alone, worth)) is not None:
        return told
    under, over = (_pairs(lines, alone, worth, way) for way in (1, -1))
    best = under if len(under) > len(over) else over
    if len(best) < _LEAST or len(under) == len(over):
        return lines
    out = list(lines)
    for amount, name in best.items():
        first, last = sorted((amount, name))
        text = f"{bare(lines[amount].text)} {bare(lines[name].text)}"
        out[first] = replace(lines[first], text=text)
        out[last] = replace(lines[last], text="", hint="joined")
    return tuple(out)


def _upright(lines: tuple[SourceLine, ...], worth: Worth) -> tuple[SourceLine, ...]:
    """A table on its side: a row of names, and right under it a row of as many amounts."""
    out: list[SourceLine] = []
    for each in lines:
        names, amounts = (_cells(one.text) for one in (out[-1] if out else each, each))
        if names and amounts and not worth.is_measure(amounts[0]) and not worth.is_food(names[0]):
            names, amounts = names[1:], amounts[1:]
        if (
            len(names) == len(amounts) >= _LEAST
            and all(map(worth.is_measure, amounts))
            and sum(map(worth.is_food, names)) > len(names) // 2
        ):
            out[-1] = replace(out[-1], hint="joined")
            out += [replace(each, text=f"{one} {name}") for one, name in zip(amounts, names, strict=True)]
        else:
            out.append(each)
    return tuple(out)


def _cells(text: str) -> list[str]:
    return [each.strip() for each in re.split(r"[|\t]", text.strip().strip("|"))]


def _blocks(lines: tuple[SourceLine, ...], alone: set[int], worth: Worth) -> tuple[SourceLine, ...] | None:
    """Names and their amounts in two blocks of the same length, the names under each other or on one line."""
    filled = [index for index, each in enumerate(lines) if each.text.strip()]
    at = next((n for n, index in enumerate(filled) if index in alone), 0)
    end = next((n for n in range(at, len(filled)) if filled[n] not in alone), len(filled))
    amounts = filled[at:end]
    if len(amounts) < _LEAST or any(index in alone for index in filled[end:]):
        return None
    over = filled[max(at - len(amounts), 0) : at]
    names = [bare(lines[index].text) for index in over]
    if len(names) != len(amounts) or not all(map(worth.is_food, (each.partition(",")[0] for each in names))):
        over = filled[at - 1 : at]
        names = _names(bare(lines[over[0]].text), len(amounts), worth) if over else []
    if not names:
        return None
    out = list(lines)
    for index in over:
        out[index] = replace(lines[index], hint="joined")
    for index, name in zip(amounts, names, strict=True):
        out[index] = replace(lines[index], text=f"{bare(lines[index].text)} {name}")
    return tuple(out)


def _names(text: str, many: int, worth: Worth) -> list[str]:
    """So many names on one line, whatever parts them; none where it is something else."""
    for sign in _SIGNS:
        pieces = [each.strip(" .") for each in re.split(sign, text.rpartition(":")[2])]
        if len(pieces) == many and sum(map(worth.is_food, pieces)) > many // 2:
            return pieces
    return []


def _alone(line: SourceLine, worth: Worth) -> bool:
    return len(line.text) <= _LONGEST and any(map(str.isalnum, line.text)) and worth.is_measure(line.text)


def _pairs(lines: tuple[SourceLine, ...], alone: set[int], worth: Worth, way: int) -> dict[int, int]:
    """For each lone amount the line before or behind it that is a name and reads with it."""
    found: dict[int, int] = {}
    for index in sorted(alone):
        other = index + way
        while 0 <= other < len(lines) and not lines[other].text.strip():
            other += way
        if not 0 <= other < len(lines) or other in alone or other in found.values():
            continue
        name = bare(lines[other].text)
        if (
            len(name) <= _LONGEST
            and worth.of(name) < WHOLE
            and worth.of(f"{bare(lines[index].text)} {name}") >= WHOLE
        ):
            found[index] = other
    return found
