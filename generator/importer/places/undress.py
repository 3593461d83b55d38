"""The dress of a layout taken off: whatever signs, stamps, numbers or labels many lines begin or end with alike.

No dress is known by name. Neighbouring lines are compared; what they have in common in front or behind is taken off
where the lines read better without it than with it, and is told. Words that name a food are never taken off.
"""

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from generator.importer.line.fields import leading_measure
from generator.importer.line.known import names_food
from generator.importer.model import SourceLine
from generator.importer.places.worth import CLEAN, WHOLE, Worth, is_sentence

_TOKEN = re.compile(r"\d+|[^\W\d_]+|\s+|.")
_STAMP = re.compile(r"\W*\d{1,4}[:.-]\d{2}(?:[:.,-]\d{2,4})*(?:\W+\d{1,2}:\d{2}(?:[:.,]\d{2,3})*)?\W*")
_COUNTING = re.compile(r"^[^\w(]*\w{1,4}\)")
_COUNT = re.compile(r"^\s*[(\[](\d{1,2})[)\]]\s+(?=\S)")
_ROMAN = re.compile(r"[ivx]{1,4}", re.I)
_DEEPEST = 30
"""Tokens of a line that may be its dress."""
_ROUNDS = 5
_LEAST, _RICH = 3, 3
_FRAMED, _NEARLY_ALL = 8, 0.8
_COUNTS = ("0", "-", "–", "x", "/", "a")
"""What a number before a line ends in that may be its amount; other signs make it no amount."""
_CLOSING = (":", ">", "]", ")", "|", "-", "–")
_SAMPLE = 12
_MOST_LINES = 1_500
_TRIED = 16
_HINTS = frozenset({"", "heading", "item", "cell"})

Shape = tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Undressed:
    """`said` tells of the dress that was taken off; `aside` has its words, so that none is lost."""

    lines: tuple[SourceLine, ...]
    said: tuple[str, ...] = ()
    aside: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Dress:
    """What lines have in common: `cuts` gives for each line, by its index, how many letters go."""

    behind: bool
    cuts: dict[int, int]
    signs: int
    counts: bool

    @property
    def bonus(self) -> int:
        """What many lines have in common at length is more likely a dress than what a few have."""
        return len(self.cuts) if self.signs >= _RICH else 0

    def stripped(self, text: str, index: int) -> str:
        cut = self.cuts[index]
        return text[: max(len(text) - cut, 0)].rstrip() if self.behind else text[cut:].lstrip()

    def number(self, text: str, index: int) -> int:
        """The last number in what goes, 0 where it has none."""
        found = re.findall(r"\d+", self.taken(text, index))
        return int(found[-1]) if found else 0

    def taken(self, text: str, index: int) -> str:
        cut = self.cuts[index]
        return (text[max(len(text) - cut, 0) :] if self.behind else text[:cut]).strip()


def undressed(lines: tuple[SourceLine, ...], worth: Worth) -> Undressed:
    """The lines without their dress, where they read better so."""
    said: list[str] = []
    aside: list[str] = []
    lines, stamps = _without_stamps(lines, worth)
    if stamps:
        said.append(f"{stamps} lines that are times or numbers alone")
    lines = _uncounted(lines)
    while frame := _frame(lines, worth):
        said.append(_told(frame, lines))
        aside += _worded(frame, lines)
        lines = _without(frame, lines)
    for _ in range(_ROUNDS):
        if not reads_badly(lines, worth):
            break
        best = _best(lines, worth)
        if best is None:
            break
        said.append(_told(best, lines))
        aside += _worded(best, lines)
        lines = _without(best, lines)
    return Undressed(lines=lines, said=tuple(said), aside=tuple(aside))


def _without(dress: _Dress, lines: tuple[SourceLine, ...]) -> tuple[SourceLine, ...]:
    return tuple(
        replace(each, text=dress.stripped(each.text.strip(), index)) if index in dress.cuts else each
        for index, each in enumerate(lines)
    )


def _told(dress: _Dress, lines: tuple[SourceLine, ...]) -> str:
    index = next(iter(dress.cuts))
    where = "behind" if dress.behind else "before"
    return (
        f"what stood {where} {len(dress.cuts)} lines alike: “{dress.taken(lines[index].text.strip(), index)}”"
    )


def _worded(dress: _Dress, lines: tuple[SourceLine, ...]) -> list[str]:
    taken = dict.fromkeys(dress.taken(lines[index].text.strip(), index) for index in dress.cuts)
    words = {re.sub(r"\d+", "0", each): each for each in taken if any(map(str.isalpha, each))}
    where = "behind" if dress.behind else "before"
    return [f"stood {where} {len(dress.cuts)} lines: {'; '.join(words.values())}"] if words else []


def _frame(lines: tuple[SourceLine, ...], worth: Worth) -> _Dress | None:
    """What nearly every line of a text has: bars of a box, marks of a quotation, line numbers, stamps and names."""
    filled = _filled(lines)
    if not _FRAMED <= len(filled) <= _MOST_LINES:
        return None
    for behind in (False, True):
        for dress in _candidates(filled, behind=behind):
            dress = _harmless(dress, filled, worth)
            taken = [dress.taken(filled[index], index) for index in dress.cuts]
            worded = any(each.isalpha() for one in taken for each in one)
            if len(taken) < len(filled) * _NEARLY_ALL or not all(map(_balanced, taken)):
                continue
            if worded and not all(each.endswith(_CLOSING) for each in taken):
                continue
            if not any(names_food(each, worth.shelf) for each in set(taken)):
                return dress
    return None


def _filled(lines: tuple[SourceLine, ...]) -> dict[int, str]:
    return {
        index: each.text.strip()
        for index, each in enumerate(lines)
        if each.hint in _HINTS and each.text.strip()
    }


def _without_stamps(lines: tuple[SourceLine, ...], worth: Worth) -> tuple[tuple[SourceLine, ...], int]:
    """The lines without those that are nothing but times, all alike, and without the numbers right over those."""
    stamps = [
        index for index, each in enumerate(lines) if each.hint in _HINTS and _STAMP.fullmatch(each.text)
    ]
    shapes = Counter(re.sub(r"\d+", "0", lines[index].text.strip()) for index in stamps)
    gone = {index for index in stamps if shapes[re.sub(r"\d+", "0", lines[index].text.strip())] > _LEAST}
    gone |= {index - 1 for index in gone if index and lines[index - 1].text.strip().isdigit()}
    return tuple(replace(each, text="") if index in gone else each for index, each in enumerate(lines)), len(
        gone
    )


def _uncounted(lines: tuple[SourceLine, ...]) -> tuple[SourceLine, ...]:
    """The lines without numbers in brackets that count them through; `[3] large eggs` keeps its own."""
    found = {index: int(match[1]) for index, each in enumerate(lines) if (match := _COUNT.match(each.text))}
    numbers = list(found.values())
    if len(numbers) < _LEAST or not _runs_on(numbers):
        return lines
    return tuple(
        replace(each, text=_COUNT.sub("", each.text)) if index in found else each
        for index, each in enumerate(lines)
    )


def _runs_on(numbers: list[int], *, strictly: bool = False) -> bool:
    """Whether numbers count something through, and perhaps from one on again; not `strictly`, with one left out."""
    runs: list[int] = [1]
    steps = 0
    for before, after in pairwise(numbers):
        steps += after == before + 1 or after == 1
        runs = [*runs, 1] if after != before + 1 else [*runs[:-1], runs[-1] + 1]
    if strictly and min(runs) < _LEAST:
        return False
    return steps >= (len(numbers) - 1) * (1 if strictly else 9 / 10)


def reads_badly(lines: Iterable[SourceLine], worth: Worth) -> bool:
    """Whether lines that hold an amount, or are sentences, read as nothing, or all with something besides."""
    bad = loose = whole = 0
    for each in lines:
        if each.hint not in _HINTS or not each.text.strip():
            continue
        value = worth.of(each.text)
        whole += value >= WHOLE
        loose += WHOLE <= value < CLEAN
        if value < WHOLE and is_sentence(each.text):
            bad += value == 0
        elif (value < WHOLE and worth.holds_measure(each.text)) or (
            value == 0 and any(map(str.isdigit, each.text))
        ):
            bad += 1
    return bad >= _LEAST or (loose >= _LEAST and loose * 2 > whole)


def _best(lines: tuple[SourceLine, ...], worth: Worth) -> _Dress | None:
    filled = _filled(lines)
    if len(filled) > _MOST_LINES:
        return None
    best, most = None, _LEAST - 1
    for behind in (False, True):
        for dress in _candidates(filled, behind=behind):
            dress = _harmless(dress, filled, worth)
            gain = _gain(dress, filled, worth) if len(dress.cuts) >= _LEAST else 0
            if gain >= _LEAST and gain + dress.bonus > most:
                best, most = dress, gain + dress.bonus
    return best


def _harmless(dress: _Dress, filled: dict[int, str], worth: Worth) -> _Dress:
    """The dress without lines whose number is an amount: `1 egg` and `120 ml milk` among numbered steps.

    Where all the numbers together count on, they count the lines, and `9 1/3 cup` is the ninth of a list; where they
    do not even without the amounts, nothing is taken off.
    """
    if not dress.counts:
        return dress
    kept = {index: cut for index, cut in dress.cuts.items() if not _is_amount(filled[index], worth)}
    unhurt = all(
        worth.of(dress.stripped(filled[index], index)) >= worth.of(filled[index]) - 1
        for index in dress.cuts
        if index not in kept
    )
    for some, strictly in ((dress.cuts if unhurt else {}, True), (kept, True), (kept, False)):
        numbers = [dress.number(filled[index], index) for index in some]
        if len(numbers) >= _LEAST and _runs_on(numbers, strictly=strictly):
            return replace(dress, cuts=some)
    return replace(dress, cuts={})


def _is_amount(text: str, worth: Worth) -> bool:
    head = leading_measure(text, worth.shelf)[0]
    return worth.of(text) >= WHOLE or any(map(str.isalpha, head))


def _gain(dress: _Dress, filled: dict[int, str], worth: Worth) -> int:
    """How much better the lines read without it, 0 where a food's name would go with it."""
    taken = {re.sub(r"[\W\d_]+", " ", dress.taken(filled[index], index)).strip() for index in dress.cuts}
    if any(names_food(each, worth.shelf) for each in taken):
        return 0
    every = [dress.taken(filled[index], index) for index in dress.cuts]
    if not all(map(_balanced, every)) or any(map(worth.holds_measure, every)):
        return 0
    if dress.behind and any(worth.is_unit(word) for each in taken for word in each.split()):
        return 0
    sample = list(dress.cuts)
    short = sample[:: max(len(sample) // _SAMPLE, 1)]
    if len(sample) > _SAMPLE * 3 and _sum(dress, short, filled, worth) <= 0:
        return 0
    if dress.behind and any(any(map(str.isalpha, each)) for each in taken):
        whole = sum(worth.of(text) >= WHOLE for text in filled.values())
        if len(sample) * 5 < whole * 3:
            return 0
    gain = _sum(dress, sample, filled, worth)
    return gain if gain * 3 >= len(sample) else 0


def _balanced(text: str) -> bool:
    text = _COUNTING.sub("", text)
    return all(text.count(one) == text.count(other) for one, other in ("()", "[]", "{}"))


def _sum(dress: _Dress, indexes: Iterable[int], filled: dict[int, str], worth: Worth) -> int:
    return sum(worth.of(dress.stripped(filled[index], index)) - worth.of(filled[index]) for index in indexes)


def _candidates(filled: dict[int, str], *, behind: bool) -> Iterator[_Dress]:
    """The shapes that lines share, the longest of each group of the same lines, the commonest first."""
    tokens = {index: _tokens(text, behind=behind) for index, text in filled.items()}
    often = _repeated(tokens.values())
    groups: dict[Shape, list[int]] = {}
    for index, each in tokens.items():
        for shape in _shapes(each, often):
            groups.setdefault(shape, []).append(index)
    longest: dict[tuple[int, ...], Shape] = {}
    for shape, indexes in groups.items():
        key = tuple(indexes)
        if len(indexes) >= _LEAST and (key not in longest or len(shape) > len(longest[key])):
            longest[key] = shape
    ordered = sorted(longest.items(), key=lambda each: (-len(each[0]), -len(each[1])))
    for alike, shape in ordered[:_TRIED]:
        for depth in _depths(shape, tokens[alike[0]]):
            cuts = {index: sum(map(len, tokens[index][:depth])) for index in alike}
            signs = [each for each in shape[:depth] if not each.isspace()]
            counts = (
                not behind
                and signs[-1:]
                and signs[-1] in _COUNTS
                and not (":" in signs and signs.count("0") > 1)
            )
            yield _Dress(behind=behind, cuts=cuts, signs=len(signs), counts=bool(counts))


def _tokens(text: str, *, behind: bool) -> list[str]:
    found = _TOKEN.findall(f" {text}" if behind else f"{text} ")
    return found[::-1] if behind else found


def _repeated(lines: Iterable[list[str]]) -> frozenset[str]:
    """Words that stand near the edge of several lines."""
    counted = Counter(word for each in lines for word in {token.casefold() for token in each[:_DEEPEST]})
    return frozenset(word for word, many in counted.items() if many >= _LEAST)


def _shapes(tokens: list[str], often: frozenset[str]) -> Iterator[Shape]:
    shape: list[str] = []
    for token in tokens[:_DEEPEST]:
        if token.isdigit():
            shape.append("0")
        elif token.isspace():
            shape.append("\t" if "\t" in token else " ")
        elif (token.isalpha() and len(token) == 1) or _ROMAN.fullmatch(token):
            shape.append("a")
        elif token.isalpha():
            if token.casefold() not in often:
                return
            shape.append(token.casefold())
        else:
            shape.append(token)
        yield tuple(shape)


def _depths(shape: Shape, tokens: list[str]) -> Iterator[int]:
    """Where a shape may be cut: behind a blank or a sign; a number goes with what follows it."""
    cuts = [
        depth
        for depth in range(len(shape), 0, -1)
        if not shape[depth - 1].isalnum()
        and (depth == len(tokens) or not tokens[depth].startswith((" ", "\t", ".", ",")))
    ]
    yield from cuts[:4]
