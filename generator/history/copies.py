"""The text of a copy: its fingerprint, and what tells it from another text."""

import hashlib
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from difflib import SequenceMatcher
from itertools import zip_longest

_ALIKE = 0.6
Allergens = Callable[[str], frozenset[str]]
"""The allergens that a line of text names."""
_LINE_END = re.compile(r"\r\n|\n|\r")
_NUMBER = r"[0-9]+(?:[.,/][0-9]+)*(?:\s?[½⅓⅔¼¾⅛⅜⅝⅞])?|[½⅓⅔¼¾⅛⅜⅝⅞]"
_UNIT = (
    r"°\s?[FC]|[FC]\b|fan\b|kg\b|g\b|mg\b|ml\b|l\b|oz\b|lbs?\b|cups?\b|tbsp\b|tsp\b|min(?:utes?)?\b|h\b|hours?\b|"
    r"s\b|seconds?\b|days?\b|cm\b|mm\b|in\b|%"
)
_FIGURE = re.compile(rf"(?:{_NUMBER})(?:\s?(?:[-–]|to)\s?(?:{_NUMBER}))?\s?(?:{_UNIT})")


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """Line `number` (from 1) of our text, as it stands `there` and as it is `ours`; "" where there is none.

    `figures` are the amounts, temperatures and times that differ, `allergens` the names, each as (there, ours).
    """

    number: int
    there: str
    ours: str
    figures: tuple[str, str] = ("", "")
    allergens: tuple[str, str] = ("", "")

    @property
    def is_edited(self) -> bool:
        """Whether it is one line that was changed, and not two that have nothing to do with each other."""
        alike = SequenceMatcher(a=self.there, b=self.ours, autojunk=False)
        return bool(self.there and self.ours) and alike.ratio() >= _ALIKE


def normal(text: str) -> str:
    """The text without what a web form changes on its own: kinds of line ends, and spaces at the ends of lines."""
    lines = (line.rstrip() for line in _LINE_END.split(text.removeprefix("\ufeff")))
    return "\n".join(lines).strip("\n") + "\n"


def fingerprint(text: str) -> str:
    """`sha256:` and the digest of the normal form, in UTF-8."""
    return f"sha256:{hashlib.sha256(normal(text).encode('utf-8', 'replace')).hexdigest()}"


def differences(there: str, ours: str, *, allergens: Allergens) -> tuple[Difference, ...]:
    """Every line that differs, in the order of our text."""
    left, right = normal(there).split("\n")[:-1], normal(ours).split("\n")[:-1]
    matcher = SequenceMatcher(a=left, b=right, autojunk=False)
    return tuple(
        _difference(start_right + place + 1, one, other, allergens)
        for tag, start, end, start_right, end_right in matcher.get_opcodes()
        if tag != "equal"
        for place, (one, other) in enumerate(_paired(left[start:end], right[start_right:end_right]))
    )


def _paired(left: list[str], right: list[str]) -> Iterator[tuple[str, str]]:
    """Lines side by side, the likest together where one side has fewer of them."""
    if len(left) == len(right):
        yield from zip(left, right, strict=True)
        return
    shorter, longer, turned = (left, right, False) if len(left) < len(right) else (right, left, True)
    rest = list(longer)
    pairs = []
    for line in shorter:
        best = max(rest, key=lambda each: SequenceMatcher(a=line, b=each).quick_ratio(), default="")
        rest.remove(best)
        pairs.append((best, line) if turned else (line, best))
    yield from pairs
    yield from ((each, "") if turned else ("", each) for each in rest)


def _difference(number: int, there: str, ours: str, allergens: Allergens) -> Difference:
    named, own = allergens(there), allergens(ours)
    return Difference(
        number=number,
        there=there,
        ours=ours,
        figures=_unlike(_figures(there), _figures(ours)),
        allergens=(", ".join(sorted(named - own)), ", ".join(sorted(own - named))),
    )


def _figures(line: str) -> tuple[str, ...]:
    return tuple(" ".join(each.group().split()) for each in _FIGURE.finditer(line))


def _unlike(there: tuple[str, ...], ours: tuple[str, ...]) -> tuple[str, str]:
    pairs = [(one, other) for one, other in zip_longest(there, ours, fillvalue="") if one != other]
    return ", ".join(filter(None, (one for one, _ in pairs))), ", ".join(filter(None, (b for _, b in pairs)))
