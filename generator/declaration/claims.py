"""Claims of absence: "nut-free", "free from milk". They never remove an allergen, and are never printed.

Sources: a claim needs testing that a home kitchen does not do: 21 CFR 101.91 (gluten-free, below 20 ppm),
Regulation (EU) 828/2014 (20 mg/kg), and the general rules against misleading statements.
"""

import re
from collections.abc import Iterable
from functools import lru_cache

from generator.declaration.words import Match, matches, plain

Spot = tuple[int, int]

_SUBJECT = (
    r"(?:allergens?|allergy|gluten|wheat|dairy|milk|lactose|casein|eggs?|soya?|soybeans?|"
    r"(?:tree )?nuts?|peanuts?|sesame|fish|shellfish|mustard|celery|lupin|sulphites?|sulfites?)"
)
_X_FREE = re.compile(
    rf"\b{_SUBJECT}(?: (?:and|&) {_SUBJECT}){{0,6}} free\b(?! (?:from|of|range|flow|run)\w*)"
)
_HARMLESS = (
    r"(?:lumps?|streaks?|clumps?|bubbles?|crumbs?|dust|grease|fat|air|charge|"
    r"(?:the|its) (?:tin|pan|sides?|mould))"
)
_FREE_FROM = re.compile(rf"\bfree (?:from|of)\b(?! (?:any |all )?{_HARMLESS}\b)")
_SAFE_FOR = re.compile(
    r"\bsafe for\b(?! (?:the |a |an |your |use in )*"
    r"(?:oven|freezer|microwave|dishwasher|fridge|broiler|grill|stove)s?\b)"
)
_OTHER = re.compile(
    r"\bhypo ?allergenic\b|\ballerg(?:y|en) (?:friendly|safe)\b|\b(?:nut|gluten|celiac|coeliac|dairy) safe\b"
    r"|\bsuitable for (?:\w+ ){0,2}(?:celiacs?|coeliacs?|allergy|allergies|allergic)\b"
)
_ABSENT = re.compile(
    r"\b(?:free (?:from|of)|contains? (?:no|neither)|does not contain|not containing|made without|without|no"
    r"|sans|ohne|sin|senza|zonder)"
    r"(?: any| all| added| traces of)*(?= )"
)
_ANY_FREE = re.compile(r"\b[a-z']{1,40} free\b(?! (?:from|of|range|flow|run)\w*)")
# German and Dutch grow it to the word.
_GROWN_FREE = re.compile(
    r"\b(?:gluten|laktose|lactose|milch|melk|nuss|nus|ei|weizen|soja|noten)(?:frei|vrij)e?[rsnm]?\b"
)
_NO_PROMISE = re.compile(r"\bguaranteed?\b[^.;!\n]*\Z")
_AND = re.compile(r" *,? *(?:and|or|nor|&|and/or) +")
_COMMA = re.compile(r" *, *")
_BUT = re.compile(r" *,? *\b(?:but|mais|aber|pero|maar)\b")
_BOUND = re.compile(r"\Z|[,.;!)\]}\n|]| ?[(\[{]")


def claim_spans(text: str) -> list[tuple[int, int, str]]:
    """Claims in the maker's own prose: start, end (exclusive) and the words, in order, none inside another.

    "Free from lumps" and "safe for the freezer" are no claims.
    """
    low = plain(text)
    rules = (_X_FREE, _FREE_FROM, _SAFE_FOR, _OTHER, _GROWN_FREE)
    found = sorted({each.span() for rule in rules for each in rule.finditer(low)})
    spans: list[tuple[int, int, str]] = []
    for start, end in found:
        if not spans or start >= spans[-1][1]:
            spans.append((start, end, text[start:end]))
    return spans


@lru_cache(maxsize=4096)
def without_claims(text: str) -> str:
    """The text as it may be printed: what a claim says is taken out, the rest stands."""
    spots = [(start, end) for start, end, _ in claim_spans(text)]
    kept = blanked(text, [*spots, *_absences(text)], filler="")
    return " ".join(kept.split()).strip(" ,;")


def denied(text: str) -> list[Spot]:
    """Stretches of a pack's text that say what is not in it, so that their words raise nothing.

    Of a list after "free from", only a closed one (`nuts, milk and soy`) is believed to its end: what stands
    after a bare comma may be the next ingredient. "We cannot guarantee that it is nut free" denies nothing.
    """
    low = plain(text)
    free = (each.span() for rule in (_ANY_FREE, _GROWN_FREE) for each in rule.finditer(low))
    spots = [*free, *_absences(text)]
    return [each for each in spots if not _NO_PROMISE.search(low, max(0, each[0] - 100), each[0])]


def blanked(text: str, spots: Iterable[Spot], *, filler: str = "|") -> str:
    """The text with the stretches filled; with the filler `|` nothing moves and no phrase joins across."""
    pieces, at = [], 0
    for start, end in sorted(spots):
        if end > at:
            pieces += [text[at : max(start, at)], filler * (end - max(start, at))]
            at = end
    return "".join((*pieces, text[at:]))


def _absences(text: str) -> list[Spot]:
    low, phrases = plain(text), {each.start: each for each in matches(text)}
    spots = []
    for found in _ABSENT.finditer(low):
        end = _end_of_denial(low, phrases, found.end() + 1)
        if end is not None:
            but = _BUT.match(low, end)
            spots.append((found.start(), but.end() if but else end))
    return _apart(spots)


def _apart(spots: list[Spot]) -> list[Spot]:
    kept: list[Spot] = []
    for start, end in sorted(spots):
        if not kept or start >= kept[-1][1]:
            kept.append((start, end))
    return kept


def _end_of_denial(low: str, phrases: dict[int, Match], start: int) -> int | None:
    first = phrases.get(start)
    if first is None or not _bounded(low, first.end):
        return None
    end, closed = first.end, first.end
    while True:
        joint = _AND.match(low, end)
        comma = joint or _COMMA.match(low, end)
        following = phrases.get(comma.end()) if comma else None
        if following is None or not _bounded(low, following.end):
            return closed
        end = following.end
        if joint:
            closed = end


def _bounded(low: str, index: int) -> bool:
    return any(each.match(low, index) is not None for each in (_BOUND, _AND, _BUT))
