"""What a single line looks like: a title, a part's heading, a list in one line, a step, a way."""

import re

from generator.formula.shelf import Shelf
from generator.importer.facts import URL
from generator.importer.ingredient import is_ingredient_like
from generator.importer.known import known
from generator.importer.model import SourceLine
from generator.importer.tidy import one_line
from generator.importer.words import PARTS, VERBS, plain

RULE = re.compile(r"^[\W_]+$")
NUMBERED = re.compile(r"^\s*(?:step\s*)?\(?\d{1,2}[.):]\s*(?=\S)|^\s*step\s\d{1,2}\b\s*[-–—:.]?\s*", re.I)
STEP_ALONE = re.compile(r"^\s*(?:step\s)?\d{1,2}[.):]?\s*$", re.I)
TITLE_WORD = re.compile(
    r"^(?:title|name|recipe|rezept|recette|receta|ricetta|recept)\s*:\s*(?P<rest>.+)$", re.I
)
CAUTION = re.compile(r"^(?:caution|warning|careful|achtung)\s*[:!]\s*(?P<rest>.+)$", re.I)
WAY = re.compile(
    r"^(?:method\s*[:\-–—]\s*|the\s)?(?P<way>(?:by hand|dough cycle|(?:in\s(?:a|the|"
    r"your)\s)?(?:bread (?:machine|maker)|stand mixer|"
    r"food processor|mixer)|hand(?: |-)?(?:mixed|kneaded)|no(?: |-)knead))(?:\s(?:method|"
    r"version|way|instructions))?\s*:?$",
    re.I,
)
COMMON = re.compile(
    r"^(?:then,?\s)?(?:for\s)?(?:all|both|every|either)\s(?:the\s)?(?:ways?|methods?|"
    r"versions?)\s*:?$|^then,? for (?:all|every) ways?:?$",
    re.I,
)
FOR = re.compile(
    r"^(?:for|für|pour|para|per|voor)\s+(?:the\s|den\s|die\s|das\s|la\s|le\s|el\s|il\s|de\s|"
    r"het\s)?(?P<name>[\w' -]{2,40}?)\s*(?:\([^)]*\))?\s*[:.]?$",
    re.I,
)
SENTENCE_END = re.compile(r"[.!?]$")
LISTED = re.compile(r",\s+(?:and\s+)?(?=(?:about\s)?[\d½¼¾⅓⅔]|an?\s(?:pinch|dash)\b)|;\s*")
META = re.compile(
    r"^(?:(?:prep|cook|bak\w+|total|rest\w*|rising|proof\w*|active|hands-on|ready in|"
    r"time)(?:\stime)?|difficulty|level|course|cuisine|category|calories|measured with|cup and spoons|temperatures|"
    r"contains|may contain)(?:,[^:]{1,40})?\s*[:=]",
    re.I,
)
CHOOSE = re.compile(r"^choose one of (?P<many>\d) ways\.?$", re.I)
PAID_WORDS = re.compile(r"\b(?:commission|affiliate|sponsored|sponsor)\b", re.I)
POINTS = re.compile(
    r"\b(?:watch|video|recipe here|full recipe|printable|link|website|blog|subscribe|follow|shop|written)\b",
    re.I,
)
COLUMNS = re.compile(r"^\s*\|?\s*:?-{2,}:?\s*\|[\s|:-]*$")
TAB = re.compile(r"(?<=[\w)%.¼½¾])(?<![0-9][.)])\t+(?=\S)")
MARK = re.compile(
    r"^#{1,6}\s+|^\*\*(?=.*\*\*:?$)|\*\*:?$|^==+\s*|\s*==+$|^--+\s*(?=\w)|(?<=\w)\s*--+$|^\[(?=[^\]]+\]$)|\]$"
)


def in_one_line(bared: str, shelf: Shelf) -> list[tuple[str, str]]:
    """`For the base: 150 g flour, 100 g butter. For the top: 3 eggs, 200 g sugar.`, `You need 500 g flour, …`."""
    out: list[tuple[str, str]] = []
    for segment in re.split(r"(?<=[.;])\s+(?=[A-Z][^:.]{2,40}:)", bared):
        head = re.match(
            r"(?:(?P<name>[^:,\d]{2,40}):|(?:you(?:'ll| will)? need|take|use))\s+(?P<rest>.+)$", segment, re.I
        )
        pieces = pieces_of(head["rest"].rstrip("."), shelf) if head else []
        if len(pieces) < 2:
            return []
        if head and head["name"]:
            out.append(("part", part_name(head["name"])))
        out += [("ingredient", piece) for piece in pieces]
    return out


def pieces_of(text: str, shelf: Shelf) -> list[str]:
    """The ingredients of a list in one line; what is none goes on from the one before. Empty where it is no list."""
    out: list[str] = []
    for piece in re.split(r",\s+(?:and\s+)?|;\s*|\s+and\s+(?=[\d½¼¾⅓⅔])", text):
        like = is_ingredient_like(piece, shelf) or re.match(r"(?:juice|zest)\sof\s\d", piece, re.I)
        if like or known(piece.strip(), shelf):
            out.append(piece.strip())
        elif out:
            out[-1] = f"{out[-1]}, {piece}"
        else:
            return []
    return out


def begins_list(bared: str, later: tuple[SourceLine, ...], shelf: Shelf) -> bool:
    """An ingredient with another one right after it, without any heading over them."""
    if not is_ingredient_like(bared, shelf):
        return False
    return any(is_ingredient_like(each, shelf) for each in next_filled(later, 2))


def heads_list(bared: str, later: tuple[SourceLine, ...], shelf: Shelf) -> bool:
    after = next_filled(later, 2)
    return (
        looks_like_part(bared, shelf)
        and len(after) == 2
        and all(is_ingredient_like(each, shelf) for each in after)
    )


def looks_like_part(bared: str, shelf: Shelf) -> bool:
    words = plain(bared)
    if not words or len(words) > 50 or is_ingredient_like(bared, shelf):
        return False
    if FOR.match(bared) or bared.endswith(":"):
        return not SENTENCE_END.search(bared.rstrip(":"))
    name = re.sub(r"\s*\([^)]*\)", "", words)
    return (name.split()[-1] in PARTS and known(name, shelf) is None) or name in PARTS


def part_name(bared: str) -> str:
    found = FOR.match(bared)
    return plain(found["name"] if found else bared)


def next_filled(later: tuple[SourceLine, ...], most: int = 1) -> list[str]:
    return [one_line(TAB.sub(" | ", each.text)) for each in later[: 4 * most] if each.text.strip()][:most]


def could_be_title(bared: str) -> bool:
    bared = re.split(r"\s[|•·]\s", bared)[0]
    return len(bared.split()) <= 14 and not bared.endswith((".", ":", ";")) and len(bared) <= 120


def title_with_address(bared: str) -> str:
    """`Honey oat braid: https://…` names the bake before its address."""
    found = URL.search(bared)
    words = bared[: found.start()].strip(" -–—:|") if found else ""
    return words if words and could_be_title(words) and not POINTS.search(words) else ""


def is_step(text: str, bared: str) -> bool:
    words = bared.split()
    if not words:
        return False
    numbered = bool(NUMBERED.match(text)) and len(words) > 2
    first = re.sub(r"\W", "", NUMBERED.sub("", bared).split(" ")[0]).casefold()
    return (numbered or len(words) >= 4) and (first in VERBS or (numbered and len(words) > 3))


def way_name(words: str) -> str:
    plain_words = re.sub(r"^(?:in\s)?(?:a|the|your)\s", "", words.casefold())
    return "dough cycle" if plain_words in ("bread machine", "bread maker", "dough cycle") else plain_words


def ingredients_follow(later: tuple[SourceLine, ...], shelf: Shelf) -> bool:
    return any(is_ingredient_like(each, shelf) for each in next_filled(later, 2))
