"""The end of an ingredient line: item, preparation, and words such as “to taste”."""

import re
from dataclasses import dataclass, replace

_OPEN = re.compile(
    r"(?:^|(?<=[\s,]))"
    r"(to taste|as needed|for the (?:tin|pan|board)"
    r"|for (?:dusting|greasing|brushing|sprinkling|rolling(?: out)?)(?: (?:the|a|your) [a-z]+)?)\b",
    re.I,
)
"""Words that stand in the place of an amount, or beside one say what it is for."""
_BESIDES = re.compile(r"\b(?:plus|and|or|with|extra|more|little|some|bit|enough)\s{0,9}$", re.I)
_AT = re.compile(r"\s(?=at\s{1,9}(?:room temperature\b|about\s|[0-9]))", re.I)

Characters = list[tuple[str, int]]
"""Characters of a line with their places; brackets are gone already."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """`words` stand in the place of an amount. The item is characters `start` to `end` of the line."""

    name: str
    preparation: str
    words: str
    start: int
    end: int

    def without_preparation(self) -> "Item":
        return replace(self, preparation="")


def split_item(kept: Characters, *, start: int, has_amount: bool) -> Item:
    """The item of the rest of a line. With an amount before it, “for dusting” is told as its preparation."""
    plain = "".join(character for character, _ in kept)
    words = ""
    found = _open_words(plain)
    if found is not None:
        if not has_amount:
            words = found.group(1).lower()
            kept = kept[: found.start()] + kept[found.end() :]
        elif found.start() > 0 and "," not in plain[: found.start()]:
            kept = [*kept[: found.start()], (",", kept[found.start()][1]), *kept[found.start() :]]
        plain = "".join(character for character, _ in kept)
    head, preparation = _at_comma(plain)
    begin, end = _place(head, kept, start)
    return Item(name=_tidy(head), preparation=preparation, words=words, start=begin, end=end)


def _open_words(plain: str) -> "re.Match[str] | None":
    """Not where they speak of more than the line's amount: “plus extra for dusting”, “or to taste”."""
    found = _OPEN.search(plain)
    return None if found is None or _BESIDES.search(plain[: found.start()][-40:]) else found


def _at_comma(plain: str) -> tuple[str, str]:
    head, comma, preparation = plain.partition(",")
    at = _AT.search(head)
    if at is None:
        return head, _tidy(preparation) if comma else ""
    warmth = _tidy(head[at.end() :])
    return head[: at.start()], ", ".join(each for each in (warmth, _tidy(preparation)) if each)


def _place(head: str, kept: Characters, start: int) -> tuple[int, int]:
    first = len(head) - len(head.lstrip())
    last = len(head.rstrip()) - 1
    begin = kept[first][1] if first < len(kept) else start
    return begin, kept[last][1] + 1 if 0 <= last < len(kept) else begin + 1


def _tidy(text: str) -> str:
    return " ".join(text.split()).strip(" ,;")
