"""The plain words of a command sorted into what, old and new, with or without quotes around them."""

from collections.abc import Sequence

from generator.amend.keys import is_key
from generator.amend.lines import named_lines
from generator.amend.mentions import is_mention
from generator.formula.model import Formula


def sorted_out(words: Sequence[str], formula: Formula) -> tuple[str, str, str]:
    """WHAT, OLD ("" where there is none) and NEW.

    Two words are WHAT and NEW, three WHAT, OLD and NEW. Where the quotes were left out, `bread flour 430 g` is split
    at the longest beginning that names something.
    """
    if len(words) == 2:
        return words[0], "", words[1]
    for at in range(len(words) - 1, 0, -1):
        what = " ".join(words[:at])
        if named_lines(formula, what):
            return what, "", " ".join(words[at:])
    if is_mention(words[0]) or is_key(words[0]):
        return words[0], *_halves(words[1:])
    return words[0], *(("", " ".join(words[1:])) if len(words) > 3 else (words[1], words[2]))


def _halves(words: Sequence[str]) -> tuple[str, str]:
    """`350 F 340 F` without quotes is two values of as many words each."""
    if len(words) == 2 and not any(each.isdigit() for each in words[1]):
        return "", " ".join(words)
    if len(words) % 2 == 0:
        middle = len(words) // 2
        return " ".join(words[:middle]), " ".join(words[middle:])
    return "", " ".join(words)
