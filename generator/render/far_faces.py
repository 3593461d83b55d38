"""Faces for what our two families lack: Hebrew, Arabic, and emoji in one colour.

They lie beside this module, cut by `tools/far_faces.py`; none of them is opened before a text has such a character.
Here too: what such letters ask of whoever sets them. `guided` puts the marks into a text by which the engine of paper
keeps their order and takes the faces from here; `pieces_in_order` gives a line as it is drawn, from left to right.
"""

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

HEBREW, ARABIC, SIGNS = "Docket Hebrew", "Docket Arabic", "Docket Signs"
FAR_FAMILIES = (HEBREW, ARABIC, SIGNS)
# What joins signs to one, and asks for them in colour or not: it leaves no mark of its own, and the parts are drawn.
JOINERS = frozenset("\u200c\u200d\ufe0e\ufe0f")
# The sign after which a line goes on to the right (Unicode 16, UAX 9, 2.6), and the one for signs in one colour.
_TO_THE_RIGHT, _ONE_COLOUR = "\u200e", "\ufe0e"
_TIE = "\u00a0"
_AFTER_FIGURES = re.compile("(?<=[0-9٠-٩%]) (?![0-9٠-٩])")
GUIDES = frozenset((_TO_THE_RIGHT, _ONE_COLOUR))

_FOLDER = Path(__file__).parent / "faces"
_FILES = {
    (HEBREW, "400"): "hebrew-regular.ttf",
    (HEBREW, "700"): "hebrew-bold.ttf",
    (ARABIC, "400"): "arabic-regular.ttf",
    (ARABIC, "700"): "arabic-bold.ttf",
    (SIGNS, "400"): "emoji.ttf",
    (SIGNS, "700"): "emoji.ttf",
}
_HEBREW_LETTERS = "\u0590-\u05ff\ufb1d-\ufb4f"
_ARABIC_LETTERS = "\u0600-\u08ff\ufb50-\ufdff\ufe70-\ufeff"
_LEFTWARD = f"[{_HEBREW_LETTERS}{_ARABIC_LETTERS}]"
# What joins no letters joins signs, which are drawn one by one.
_JOINED_SIGNS = re.compile(f"[\ufe0e\ufe0f]|(?<!{_LEFTWARD})[\u200c\u200d]|[\u200c\u200d](?!{_LEFTWARD})")
_MIRRORED = dict(zip("()[]{}<>«»‹›⟨⟩", ")(][}{><»«›‹⟩⟨", strict=True))
_OPENING, _CLOSING = "([{⟨", ")]}⟩"
# Numbers stand from left to right among such letters too (UAX 9, W1 to W7). After Arabic a sign beside them does not.
_HEBREW_NUMBER = re.compile(r"[%‰°#$€£]*[0-9](?:[0-9%‰°#$€£]|(?<=[0-9])[.,:/+-](?=[0-9]))*")
_ARABIC_NUMBER = re.compile(r"[0-9٠-٩۰-۹]+(?:[.,:/٫٬][0-9٠-٩۰-۹]+)*")
_WORD = re.compile(f"[{_HEBREW_LETTERS}]+|[{_ARABIC_LETTERS}]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """Letters that are drawn together, at the right of the piece before; `leftward` ones start at their own right."""

    text: str
    leftward: bool = False


def far_path(family: str, weight: str) -> Path:
    """The file of a face; there are two weights of letters, and one of signs."""
    return _FOLDER / _FILES[family, "400" if int(weight) < 600 else "700"]


def far_family(character: str) -> str:
    """Which of the families has the character, or "" """
    for family in FAR_FAMILIES:
        if ord(character) in _covered(family):
            return family
    return ""


def far_missing(characters: frozenset[str]) -> frozenset[str]:
    """Those that no face from here has. Without a shaper on the machine nothing could set letters to the left."""
    from PIL import features

    has_shaper = features.check_feature("raqm")
    return frozenset(
        each
        for each in characters - JOINERS
        if not (family := far_family(each)) or (family != SIGNS and not has_shaper)
    )


@cache
def _covered(family: str) -> frozenset[int]:
    from fontTools.ttLib import TTFont

    with TTFont(far_path(family, "400"), lazy=True) as font:
        return frozenset(font.getBestCmap())


def runs_leftward(text: str) -> bool:
    return re.search(_LEFTWARD, text) is not None


def guided(text: str) -> str:
    """The text with what keeps its order and its faces on paper.

    After letters that run to the left a number would be read as theirs and come before them: a mark that is not seen
    ends them. A sign that could be had in colours would be taken from the machine: a mark behind it says it need not.
    """
    text = _JOINED_SIGNS.sub("", text)
    text = "".join(f"{each}{_ONE_COLOUR}" if _is_sign(each) else each for each in text)
    return "".join(_ended(text))


def _ended(text: str) -> Iterator[str]:
    done = 0
    for start, end in _stretches(text):
        # A figure among such letters goes on with them: at the end of a line it would stand at the wrong side.
        yield f"{text[done:start]}{_AFTER_FIGURES.sub(_TIE, text[start:end])}{_TO_THE_RIGHT}"
        done = end
    yield text[done:]


def unguided(text: str) -> str:
    """The text as it is read, without the marks of `guided`."""
    return "".join(each for each in text if each not in GUIDES)


def _is_sign(character: str) -> bool:
    return ord(character) > 0x2000 and ord(character) in _covered(SIGNS)


def _stretches(text: str) -> Iterator[tuple[int, int]]:
    """Where letters run to the left: from the first of them to the last before one that runs to the right."""
    start = end = -1
    brackets = _brackets(text)
    for at, character in enumerate(text):
        kind = unicodedata.bidirectional(character)
        if kind in ("R", "AL"):
            start, end = (at if start < 0 else start), at + 1
        elif at in brackets and start >= 0:
            end, kind = (at + 1, kind) if start <= brackets[at] < at else (end, "L")
        elif (kind == "NSM" and end == at) or (kind == "AN" and start >= 0):
            end = at + 1
        if kind == "L" and start >= 0:
            yield start, end
            start = end = -1
    if start >= 0:
        yield start, end


def _brackets(text: str) -> dict[int, int]:
    """Closing brackets and where they were opened: a pair goes with what stands before it (UAX 9, N0).

    Not an empty pair. One with letters to the right in it stands as they do: each of the two for itself.
    """
    found: dict[int, int] = {}
    opened: list[int] = []
    for at, character in enumerate(text):
        if character in _OPENING:
            opened.append(at)
        elif character in _CLOSING:
            at_opening = [each for each in opened if text[each] == _MIRRORED[character]][-1:]
            for opening in at_opening:
                del opened[opened.index(opening) :]
                inside = {unicodedata.bidirectional(each) for each in text[opening + 1 : at]}
                if "L" in inside:
                    found |= {opening: opening, at: at}
                elif inside & {"R", "AL", "EN", "AN"}:
                    found[at] = opening
    return found


def pieces_in_order(text: str) -> Iterator[Piece]:
    """A line in pieces from left to right, in a text that as a whole runs to the right."""
    done = 0
    for start, end in _stretches(text):
        if text[done:start]:
            yield Piece(text=text[done:start])
        yield from reversed(tuple(_leftward_pieces(text[start:end])))
        done = end
    if text[done:]:
        yield Piece(text=text[done:])


def _leftward_pieces(text: str) -> Iterator[Piece]:
    """Words, numbers and the signs between them, as they are read."""
    at, number = 0, _HEBREW_NUMBER
    while at < len(text):
        if word := _WORD.match(text, at):
            arabic = re.search(f"[{_ARABIC_LETTERS}]", word[0]) is not None
            number = _ARABIC_NUMBER if arabic else _HEBREW_NUMBER
            yield Piece(text=word[0], leftward=True)
            at = word.end()
        elif figures := number.match(text, at):
            yield Piece(text=figures[0])
            at = figures.end()
        else:
            sign = _sign_at(text, at)
            yield Piece(text=_MIRRORED.get(sign, sign))
            at += len(sign)


def _sign_at(text: str, at: int) -> str:
    """One sign with what is joined to it."""
    end = at + 1
    while end < len(text) and (text[end] in JOINERS or text[end - 1] == "\u200d" or _is_tone(text[end])):
        end += 1
    return text[at:end]


def _is_tone(character: str) -> bool:
    return 0x1F3FB <= ord(character) <= 0x1F3FF
