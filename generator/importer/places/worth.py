"""How well a line reads as it stands, so that several ways to read a text can be held against each other."""

import re

from generator.formula.shelf import Shelf
from generator.importer.line.fields import by_fields, leading_measure
from generator.importer.line.ingredient import is_ingredient_like
from generator.importer.line.known import known
from generator.importer.line.orders import left_over
from generator.importer.line.tidy import SIGNS, bare, one_line
from generator.importer.places.headings import opened
from generator.importer.places.line_looks import NUMBERED, is_step, looks_like_part
from generator.importer.places.words import VERBS
from generator.measure.unit import unit_named

CLEAN, WHOLE, LIKE, NAMED = 8, 5, 3, 1
"""A whole line of a list with nothing besides; at the least with many other words; a step or a heading; a name."""
_LONGEST, _MOST_WORDS = 160, 22
_NUMBER = re.compile(rf"(?<![\w.,/])(?=[\d{SIGNS}])")
_AMOUNT = re.compile(
    rf"[\d{SIGNS}]|\b(?:half|an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b"
    r"|\b(?:pinch|dash|handful|to taste)\b",
    re.I,
)
_SENTENCE = re.compile(r"^(?:[^\W\d_]|[\d(]).*[^\W_].*[.!]$")


class Worth:
    """Remembers what each line is worth: the same lines are asked about again and again."""

    def __init__(self, shelf: Shelf) -> None:
        self.shelf = shelf
        self._found: dict[str, int] = {}

    def of(self, text: str) -> int:
        if text not in self._found:
            self._found[text] = self._weigh(one_line(text.replace("\t", " | ")))
        return self._found[text]

    def _weigh(self, text: str) -> int:
        plain = bare(text)
        if not any(map(str.isalnum, plain)):
            return 0
        if len(plain) <= _LONGEST and _AMOUNT.search(plain):
            left = left_over(plain, self.shelf) if len(plain.split()) <= _MOST_WORDS else None
            if left is not None:
                return CLEAN - min(len(left.split()), CLEAN - WHOLE)
            if self.is_measure(plain) or is_ingredient_like(text, self.shelf):
                return NAMED
        if opened(plain, heading=False) is not None:
            return LIKE
        if is_step(text, plain) and begins_with_verb(plain):
            return LIKE
        if known(plain.partition(",")[0].strip(), self.shelf) or looks_like_part(plain, self.shelf):
            return NAMED
        return 0

    def is_food(self, name: str) -> bool:
        return known(name, self.shelf) is not None

    def is_unit(self, word: str) -> bool:
        return unit_named(word, spoons=self.shelf.spoons) is not None

    def holds_measure(self, text: str) -> bool:
        """Whether an amount with a unit stands anywhere in a line."""
        for found in list(_NUMBER.finditer(text))[:6]:
            head, _ = leading_measure(text[found.start() :], self.shelf)
            if head and any(map(str.isalpha, head)):
                return True
        return False

    def is_measure(self, text: str) -> bool:
        """Whether a line is an amount and nothing besides."""
        plain = bare(text)
        head, rest = leading_measure(plain, self.shelf)
        return bool(head) and (
            not rest or (rest.startswith("(") and rest.endswith(")") and not by_fields(plain, self.shelf))
        )


def begins_with_verb(plain: str) -> bool:
    first = NUMBERED.sub("", plain).split(" ")[0]
    return re.sub(r"\W", "", first).casefold() in VERBS


def is_sentence(text: str) -> bool:
    return len(text.split()) >= 5 and _SENTENCE.match(text.strip()) is not None
