"""Where an item of a label's list begins and ends: commas and brackets, never a guess about meaning.

A text is measured once, in one pass (`_layout`), so that a question about a place costs the same in a long text
as in a short one.
"""

import re
from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

OPEN, CLOSE = "([{", ")]}"
_BETWEEN = ",;\n|"
_NAME_ENDS = re.compile(r"[()\[\]{},;:|\n!?]|\.(?![^\W_])| (?=(?:and|or|and/or|&|from) )")
_LONGEST_ITEM = 400  # of a list that names allergens only; whatever is longer is a sentence


@dataclass(frozen=True, slots=True, kw_only=True)
class _Layout:
    """For each place: brackets open before it, and the item and the sentence that hold it."""

    depth: list[int]
    item_start: list[int]
    item_end: list[int]
    sentence_start: list[int]
    sentence_end: list[int]
    opens: list[int]
    name_ends: list[int]


def ends_sentence(text: str, index: int) -> bool:
    """Whether the character ends a sentence; the point of `1.5` does not."""
    character = text[index]
    if character in "\n!?":
        return True
    return character == "." and (index + 1 == len(text) or not text[index + 1].isalnum())


def depth_at(text: str, index: int) -> int:
    """How many brackets stand open before `index`; a stray closing one is passed over."""
    return _layout(text).depth[index]


def item_at(text: str, index: int) -> tuple[int, int]:
    """Start and end of the item of a list that holds `index`, its own brackets included."""
    layout = _layout(text)
    return layout.item_start[index], layout.item_end[index]


def sentence_end(text: str, start: int) -> int:
    """Where the sentence running at `start` ends: a full stop, a line's end, or the bracket that holds it."""
    return _layout(text).sentence_end[start]


def sentence_start(text: str, index: int) -> int:
    """Where the sentence that holds `index` begins: after a full stop, or after the bracket that holds it."""
    return _layout(text).sentence_start[index]


def next_open(text: str, index: int) -> int:
    """The first opening bracket at `index` or after it, the length of the text where there is none."""
    opens = _layout(text).opens
    at = bisect_left(opens, index)
    return opens[at] if at < len(opens) else len(text)


def name_end(text: str, index: int) -> int:
    """Where the bare name that runs at `index` ends: at a bracket, a comma, a colon, a stop, or an `and`."""
    ends = _layout(text).name_ends
    at = bisect_left(ends, index)
    end = ends[at] if at < len(ends) else len(text)
    while end > index and text[end - 1].isspace():
        end -= 1
    return end


def split_items(text: str) -> tuple[str, ...]:
    """The items between top-level commas and semicolons, stripped, empty ones left out."""
    return tuple(each for each in (piece.strip() for piece in _pieces(text)) if each)


def short_items(text: str) -> Iterator[str]:
    """The same, one after another; ValueError at the first item that is too long for a list of allergens."""
    for piece in _pieces(text, longest=_LONGEST_ITEM):
        if len(piece) > _LONGEST_ITEM:
            raise ValueError("too long for an item")
        if piece.strip():
            yield piece.strip()


def bracketed(text: str) -> str:
    """Everything in brackets, at any depth, joined by spaces."""
    inside, depth = [], 0
    for character in text:
        if character in OPEN:
            depth += 1
            inside.append(" ")
        elif character in CLOSE:
            depth = max(0, depth - 1)
            inside.append(" ")
        elif depth:
            inside.append(character)
    return " ".join("".join(inside).split())


def _pieces(text: str, *, longest: int | None = None) -> Iterator[str]:
    depth, start = 0, 0
    for index, character in enumerate(text):
        if character in OPEN:
            depth += 1
        elif character in CLOSE:
            depth = max(0, depth - 1)
        elif character in ",;" and depth == 0:
            yield text[start:index]
            start = index + 1
        elif longest is not None and index - start > longest:
            break
    yield text[start:]


@lru_cache(maxsize=32)
def _layout(text: str) -> _Layout:
    frames, closes, opens = _frames(text)
    depth = _depths(frames, opens)
    items = [each in _BETWEEN or ends_sentence(text, at) for at, each in enumerate(text)]
    stops = [ends_sentence(text, at) for at in range(len(text))]
    return _Layout(
        depth=depth,
        item_start=_starts(frames, opens, items),
        item_end=_ends(frames, closes, items),
        sentence_start=_starts(frames, opens, stops),
        sentence_end=_ends(frames, closes, stops),
        opens=opens,
        name_ends=[each.start() for each in _NAME_ENDS.finditer(text)],
    )


def _frames(text: str) -> tuple[list[int], list[int], list[int]]:
    """The pair of brackets that holds each place (0: none), where each pair closes, where each opens.

    Pairs are numbered from 1 in the order of their opening marks; a stray closing mark closes nothing.
    """
    frames, closes, opens = list[int](), [len(text)], list[int]()
    stack = [0]
    for index, character in enumerate(text):
        frames.append(stack[-1])
        if character in OPEN:
            opens.append(index)
            closes.append(len(text))
            stack.append(len(opens))
        elif character in CLOSE and len(stack) > 1:
            closes[stack.pop()] = index
    frames.append(stack[-1])
    return frames, closes, opens


def _depths(frames: list[int], opens: list[int]) -> list[int]:
    depth_of = [0] * (len(opens) + 1)
    for number, index in enumerate(opens, start=1):
        depth_of[number] = depth_of[frames[index]] + 1
    return [depth_of[each] for each in frames]


def _starts(frames: list[int], opens: list[int], marks: list[bool]) -> list[int]:
    """For each place the end of the last mark before it in its own brackets, else where those open."""
    last = [0, *(each + 1 for each in opens)]
    found: list[int] = []
    for index, frame in enumerate(frames):
        found.append(last[frame])
        if index < len(marks) and marks[index]:
            last[frame] = index + 1
    return found


def _ends(frames: list[int], closes: list[int], marks: list[bool]) -> list[int]:
    """For each place the first mark at it or after it in its own brackets, else where those close."""
    following = list(closes)
    found = [0] * len(frames)
    for index in range(len(frames) - 1, -1, -1):
        if index < len(marks) and marks[index]:
            following[frames[index]] = index
        found[index] = following[frames[index]]
    return found
