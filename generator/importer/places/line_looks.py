"""What a single line looks like: a title, a part's heading, a list in one line, a step, a way."""

import re

from generator.formula.shelf import Shelf
from generator.importer.line.ingredient import is_ingredient_like
from generator.importer.line.known import known, names_food
from generator.importer.line.tidy import bare, one_line, starts_with_amount
from generator.importer.model import SourceLine
from generator.importer.places.facts import CHAPTER, URL, Fact, fact_of
from generator.importer.places.words import PARTS, VERBS, plain

RULE = re.compile(r"^[\W_]+$")
_SPELT = "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve"
NUMBERED = re.compile(
    rf"^\s*(?:step\s*)?\(?\d{{1,2}}(?:[.):]|\s?/(?=\s))\s*(?=\S)|^\s*(?:step|stage)\s(?:no\.?\s)?(?:\d{{1,2}}|{_SPELT})\b\s*"
    rf"[-–—:.)]?\s*|^\s*(?:\[\d{{1,2}}\]|\(?[a-h]\)|[IVX]{{1,4}}[.)]|#\d{{1,2}}[.:)]?)\s+(?=[A-Z])|^\s*(?:{_SPELT})\s?[:.)–—]\s+(?=[A-Z])",
    re.I,
)
COUNTED = re.compile(r"^\s*0?(?P<number>\d{1,2})\s*(?:[-–—|•·]\s*)?(?=[A-Z])")
"""A number that may count a step: `1 Stir …`, `01 – Stir …`."""
STEP_ALONE = re.compile(
    rf"^\s*(?:(?:step|stage)\s)?(?:\d{{1,2}}|(?:step|stage)\s(?:{_SPELT}))[.):]?\s*$", re.I
)
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
COUNTED_PART = re.compile(
    rf"^(?:part|stage|component|layer|element)\s(?:\d|{_SPELT}|[a-e])\b\s*[:.,)–—-]?\s*(?:for\s)?(?:the\s)?",
    re.I,
)
TO_END = re.compile(
    r"(?:to|for)\s(?:finish|decorate|serve|glaze|top|brush|coat|garnish|fill|dust)(?:ing)?(?:\s\w+){0,2}",
    re.I,
)
SENTENCE_END = re.compile(r"[.!?]$")
LISTED = re.compile(r",\s+(?:and\s+)?(?=(?:about\s)?[\d½¼¾⅓⅔]|an?\s(?:pinch|dash)\b)|;\s*")
META = re.compile(
    r"^(?:nutrition\b.*\d|per\s(?:serving|slice|portion|piece)\b.*\d)|"
    r"^(?:(?:prep|cook|bak\w+|total|rest\w*|rising|proof\w*|active|hands-on|ready in|"
    r"time)(?:\stime)?|difficulty|level|course|cuisine|category|calories|measured with|cup and spoons|temperatures|"
    r"contains|may contain)(?:,[^:]{1,40})?\s*[:=]",
    re.I,
)
CHOOSE = re.compile(r"^choose one of (?P<many>\d) ways\.?$", re.I)
AMOUNTS = re.compile(r"(?:^|[,;]\s)(?:about\s)?[\d½¼¾⅓⅔]")
MADE = re.compile(r"^(?:makes|yields?|serves|keeps|store|servings)\b", re.I)
_LONG_CHAPTER = 3
FAREWELL = re.compile(
    r"^(?:thanks|thank you|subscribe|follow (?:me|us)|see you|happy baking|music\b|like and"
    r"|leave a comment|nutrition\b.*\d|per (?:serving|slice|portion|piece)\b.*\d)",
    re.I,
)
_SIGNS = (" · ", " • ", " | ", " // ", " ● ", " ~ ", " ‧ ", " / ")
"""What parts the items of a list on one line, beside commas and semicolons."""
_FACTS = re.compile(r"\s+(?:[·•|●~‧/]|//)\s+")
_MOSTLY = 0.6
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
        name = plain(part_name(head["name"])).split() if head and head["name"] else []
        if not pieces or (len(pieces) < 2 and not (name and name[-1] in PARTS)):
            return []
        if head and head["name"]:
            out.append(("part", part_name(head["name"])))
        out += [("ingredient", piece) for piece in pieces]
    return out


def parted_steps(text: str) -> tuple[str, ...]:
    """Steps on one line, with bars, dots or slashes between them."""
    for sign in _SIGNS:
        pieces = tuple(each.strip() for each in text.split(sign) if each.strip())
        if len(pieces) > 1 and all(len(each.split()) > 1 for each in pieces):
            return pieces
    return (text,)


def several_facts(bared: str) -> tuple[Fact, ...]:
    """`Makes 12 · Keeps 3 days`: two facts or more on one line; none where a piece of it is something else."""
    pieces = [each.strip() for each in _FACTS.split(bared)]
    found = tuple(fact_of(each, within="") for each in pieces)
    facts = tuple(
        each for each in found if each is not None and each.role in ("makes", "portions", "keeps", "tin")
    )
    return facts if len(facts) == len(pieces) > 1 else ()


def side_by_side(text: str, shelf: Shelf) -> tuple[str, ...]:
    """Two or more whole ingredients on one line, with wide gaps between them; none where it is one."""
    pieces = [each.strip() for each in re.split(r" {3,}|\t+|\s+\|\s+", text.strip()) if each.strip()]
    whole = len(pieces) > 1 and all(
        starts_with_amount(bare(each), spoons=shelf.spoons) and is_ingredient_like(each, shelf)
        for each in pieces
    )
    return tuple(pieces) if whole else ()


def step_in_chapter(bared: str) -> tuple[str, str] | None:
    """A time of the film before a whole step: the chapter with its first words, and the step."""
    found = CHAPTER.match(bared)
    words = found["title"].split() if found else []
    first = re.sub(r"\W", "", words[0]).casefold() if words else ""
    if found is None or len(words) < _LONG_CHAPTER or not (first in VERBS or found["title"].endswith(".")):
        return None
    return f"{found['stamp']}\t{' '.join(words[:4]).strip(' ,;:')}", found["title"]


def pieces_of(text: str, shelf: Shelf) -> list[str]:
    """The ingredients of a list in one line; what is none goes on from the one before. Empty where it is no list."""
    for sign in _SIGNS:
        pieces = [each.strip() for each in text.split(sign) if each.strip()]
        like = sum(is_ingredient_like(each, shelf) or known(each, shelf) is not None for each in pieces)
        if len(pieces) > 1 and like > len(pieces) * _MOSTLY:
            return pieces
    out: list[str] = []
    parted = r";\s*" if text.count(";") > 1 else r",\s+(?:and\s+)?|;\s*|\s+and\s+(?=[\d½¼¾⅓⅔])"
    for piece in re.split(parted, text):
        given = re.match(r"(?:juice|zest)\sof\s\d", piece, re.I)
        if given or is_ingredient_like(piece, shelf) or known(piece.strip(), shelf):
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
    if COUNTED_PART.match(words) or TO_END.fullmatch(words):
        return True
    if FOR.match(bared) or bared.endswith(":"):
        return not SENTENCE_END.search(bared.rstrip(":"))
    name = re.sub(r"\s*\([^)]*\)", "", words)
    return (name.split()[-1] in PARTS and known(name, shelf) is None) or name in PARTS


def part_name(bared: str) -> str:
    found = FOR.match(bared)
    return COUNTED_PART.sub("", plain(found["name"] if found else bared)) or plain(bared)


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


def steps_follow(later: tuple[SourceLine, ...], shelf: Shelf) -> bool:
    """Whether sentences follow, and no line of a list."""
    after = next_filled(later, 2)
    return (
        bool(after)
        and not any(is_ingredient_like(each, shelf) for each in after)
        and (
            is_step(after[0], bare(after[0]))
            or (len(after[0].split()) > 5 and after[0].rstrip().endswith("."))
        )
    )


def tells_of_work(bared: str, shelf: Shelf) -> bool:
    """A sentence that names a food and a verb of the kitchen somewhere: `For the poolish stir flour and water …`."""
    words = {re.sub(r"\W", "", each).casefold() for each in bared.split()}
    return bool(words & VERBS) and names_food(bared, shelf)


def goes_on(text: str, before: str) -> bool:
    """Whether a line goes on from the step before: it has no mark of its own, and that was cut."""
    if NUMBERED.match(text) or bare(text) != text.strip():
        return False
    cut = len(before.rstrip()) >= 45 and not SENTENCE_END.search(before.rstrip())
    return text[:1].islower() or cut
