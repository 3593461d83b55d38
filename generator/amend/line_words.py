"""An ingredient line whose amount is words, or becomes a measure from words: “a pinch of”, “to taste”."""

import re

from generator.amend.answer import Refused
from generator.amend.line_spots import BY_HAND, Piece, Rewritten, checked, stated
from generator.amend.typed import Typed
from generator.formula.model import Line
from generator.formula.shelf import Shelf

_OPEN_ENDED = ("to taste", "as needed")
"""Words that an amount takes the place of; “for dusting” says what the amount is for, and stays."""


def other_words(text: str, line: Line, typed: Typed) -> Rewritten | Refused:
    """“a pinch” for “two pinches”: words take the place of words alone."""
    old = line.written.words.removesuffix(" of")
    at = text.casefold().find(old.casefold()) if old else -1
    if at < 0:
        message = f"“{typed.text}” cannot be weighed, and {line.item} is {stated(line)}"
        return Refused(message=message, hint=BY_HAND)
    if text[at : at + len(old)].casefold() == typed.words.casefold():
        return Refused(message=f"{line.item} is “{typed.words}” already", hint="Nothing was changed.")
    # What stands before the item and what stands behind it are different kinds of words.
    if (at == len(text) - len(text.lstrip())) is not typed.words[0].isdigit() and typed.words.startswith(
        ("to ", "as ", "for ")
    ):
        return Refused(message=f"“{typed.text}” stands behind the name, not before it", hint=BY_HAND)
    return Rewritten(
        pieces=((at, at + len(old), typed.words),), old=text[at : at + len(old)], new=typed.words
    )


def instead_of_words(text: str, line: Line, typed: Typed, shelf: Shelf) -> Rewritten | Refused:
    """A measure where a pinch, “to taste” or nothing stood."""
    words = line.written.words
    start = len(text) - len(text.lstrip())
    if not words:
        pieces: tuple[Piece, ...] = ((start, start, f"{typed.text} "),)
        return checked(text, line, pieces, "no amount", typed.text, shelf)
    found = re.search(rf",?\s*{re.escape(words)}", text, re.I)
    if found is not None and text[: found.start()].strip():
        pieces = ((start, start, f"{typed.text} "),)
        if words in _OPEN_ENDED:
            pieces = (*pieces, (found.start(), found.end(), ""))
        return checked(text, line, pieces, words, typed.text, shelf)
    head = re.match(rf"\s*({re.escape(words.removesuffix(' of'))}(?:\s+of)?)\s", text, re.I)
    if head is None:
        head = re.match(r"\s*(\S+(?:\s+\S+){0,3}?\s+of)\s", text, re.I)
    if head is None:
        return Refused(message=f"the amount of {line.item} was not found in its line", hint=BY_HAND)
    pieces = ((head.start(1), head.end(1), typed.text),)
    return checked(text, line, pieces, words.removesuffix(" of"), typed.text, shelf)
