"""Words that count lines through (`row 1: flour`), which are no amounts."""

import re
from collections import Counter
from dataclasses import replace
from itertools import pairwise

from generator.importer.line.known import names_food
from generator.importer.model import Doubt, ReadLine, SourceLine
from generator.importer.places.worth import Worth

_COUNTED = re.compile(
    r"^\W*(?P<word>[^\W\d_]{1,14}(?:\s[^\W\d_]{1,10})?)[\s.]*#?(?P<number>\d{1,2})\W*?(?:[:.)\]|–-]|\s{2,}|\t)\s*(?P<rest>\S.*)$"
)
_LEAST = 3
_HINTS = frozenset({"", "item", "cell", "heading"})


def without_counts(
    lines: tuple[SourceLine, ...], worth: Worth
) -> tuple[tuple[SourceLine, ...], tuple[str, ...]]:
    """The lines without one word and a number that count them, where a food or an amount stands behind it alone."""
    found = {
        index: match
        for index, each in enumerate(lines)
        if each.hint in _HINTS and len(each.text) < 120 and (match := _COUNTED.match(each.text))
    }
    often = Counter(each["word"].casefold() for each in found.values())
    gone: list[str] = []
    out = list(lines)
    for word, many in often.items():
        if many < _LEAST or names_food(word, worth.shelf) or any(map(worth.is_unit, word.split())):
            continue
        own = {index: each for index, each in found.items() if each["word"].casefold() == word}
        plain = [index for index, each in own.items() if _is_thing(each["rest"], worth)]
        numbers = [int(own[index]["number"]) for index in plain]
        if len(plain) < _LEAST or not _count_on(numbers):
            continue
        for index in plain:
            out[index] = replace(lines[index], text=own[index]["rest"])
        gone.append(f"stood before {len(plain)} lines, with numbers: {own[plain[0]]['word']}")
    return tuple(out), tuple(gone)


def _is_thing(rest: str, worth: Worth) -> bool:
    return worth.is_food(rest.partition(",")[0].strip(" .;")) or worth.is_measure(rest)


def _count_on(numbers: list[int]) -> bool:
    """Whether they go on from a small number, each the same or one more, and perhaps one left out."""
    return (
        numbers[0] <= 1
        and all(0 <= after - before <= 2 for before, after in pairwise(numbers))
        and numbers[-1] > 2
    )


def counting(lines: tuple[ReadLine, ...]) -> tuple[Doubt, ...]:
    """A doubt for each line of a run whose amounts are 1, 2, 3: they may only count the lines."""
    doubts: list[Doubt] = []
    run: list[ReadLine] = []
    for each in (*lines, None):
        number = _bare_count(each) if each else 0
        if each is not None and number == len(run) + 1:
            run.append(each)
            continue
        if len(run) >= _LEAST:
            doubts += [_doubt(one) for one in run]
        run = [each] if each is not None and number == 1 else []
    return tuple(doubts)


def _bare_count(line: ReadLine) -> int:
    measures = line.written.measures
    if (
        len(measures) != 1
        or measures[0].unit is not None
        or measures[0].amount.low != measures[0].amount.high
    ):
        return 0
    low = measures[0].amount.low
    return int(low) if low.denominator == 1 else 0


def _doubt(line: ReadLine) -> Doubt:
    return Doubt(
        code="I001",
        message=f"the “{line.written.measures[0].text.strip()}” of “{line.written.item}” may only count the lines",
        hint="Write how much goes in, if it is not so many pieces.",
        line=line.line,
    )
