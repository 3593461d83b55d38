"""Amounts and names that stand on lines of their own, one over the other, made one line."""

from dataclasses import replace

from generator.importer.model import SourceLine
from generator.importer.tidy import bare
from generator.importer.worth import WHOLE, Worth

_LEAST = 3
_LONGEST = 60


def joined(lines: tuple[SourceLine, ...], worth: Worth) -> tuple[SourceLine, ...]:
    """The lines with each lone amount put to the name over it or under it, whichever reads better in all."""
    alone = {
        index for index, each in enumerate(lines) if each.hint in ("", "item", "cell") and _alone(each, worth)
    }
    if len(alone) < _LEAST:
        return lines
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
