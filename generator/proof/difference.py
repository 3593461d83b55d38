"""What two wordings of the same thing say differently, in as few words as will tell it."""

import re
from dataclasses import dataclass
from difflib import SequenceMatcher

from generator.proof.figures import FIGURE
from generator.proof.squeeze import letters_of, readable

_WORD = re.compile(rf"{FIGURE.pattern}|[^\W_]+(?:['’.,/:–-][^\W_]+)*", re.IGNORECASE)
# Further apart than this, two wordings have nothing to do with each other.
_MOST_APART = 24


@dataclass(frozen=True, slots=True, kw_only=True)
class Token:
    words: str
    letters: str
    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """`said` stands in the file from `start` to `end`, `meant` in the recipe; `said` is "" for what is missing."""

    said: str
    meant: str
    start: int
    end: int
    size: int
    same: int


def tokens_of(text: str, offset: int = 0) -> list[Token]:
    """Figures whole, everything else word by word."""
    return [
        Token(words=each.group(), letters=letters, start=each.start() + offset, end=each.end() + offset)
        for each in _WORD.finditer(text)
        if (letters := letters_of(each.group()))
    ]


def difference(said: str, offset: int, meant: str) -> Difference | None:
    """The first place where `said`, which begins at `offset` of its text, says another thing than `meant`.

    What `said` has more of is passed over. None where it says nothing of the kind.
    """
    here, there = tokens_of(said, offset), tokens_of(readable(meant))
    matcher = SequenceMatcher(
        None, [each.letters for each in here], [each.letters for each in there], autojunk=False
    )
    same = sum(block.size for block in matcher.get_matching_blocks())
    changes = [each for each in matcher.get_opcodes() if each[0] in ("replace", "delete", "insert")]
    changes = [each for each in changes if each[4] > each[3]]
    if not changes or same * 3 < len(there):
        return None
    apart = sum(each[4] - each[3] for each in changes)
    if apart > _MOST_APART:
        return None
    _, start, end, first, last = changes[0]
    start, end = _narrowed(here, start, end, there[first:last], goes_on=last < len(there))
    at = here[min(start, len(here) - 1)]
    return Difference(
        said=" ".join(each.words for each in here[start:end]),
        meant=" ".join(each.words for each in there[first:last]),
        start=at.start,
        end=here[end - 1].end if end > start else at.end,
        size=apart,
        same=same,
    )


def _narrowed(
    here: list[Token], start: int, end: int, meant: list[Token], *, goes_on: bool
) -> tuple[int, int]:
    """Of more words than are meant those of the same kinds that stand next to what is said alike."""
    width = len(meant)
    if end - start <= width:
        return start, end
    kinds = {_kind(each) for each in meant}
    inwards = range(end - 1, start - 1, -1) if goes_on else range(start, end)
    taken = 0
    for at in inwards:
        if _kind(here[at]) not in kinds or taken > 2 * width:
            break
        taken += 1
    taken = taken or width
    return (end - taken, end) if goes_on else (start, start + taken)


def _kind(token: Token) -> str:
    """A word, a number, or a number with a unit."""
    if not any(each.isnumeric() for each in token.words):
        return "word"
    return "figure" if FIGURE.fullmatch(token.words) else "number"
