"""Single facts in a text: what it makes, its tin, how it keeps, who is thanked, links and chapters."""

import re
from dataclasses import dataclass

from generator.formula.tin_text import read_shape
from generator.measure.duration import read_clock

URL = re.compile(r"https?://[^\s<>\"'）)\]]+", re.I)
_MAKES = re.compile(
    r"^(?:makes|yields?|makes about|ergibt|für|pour|para|per|voor|quantity|recipe makes|"
    r"gives)\b\s*(?:[:=–—-]\s*)?(?P<what>.+)$",
    re.I,
)
_SERVES = re.compile(
    r"^(?:serves|servings?|portions?|portionen|raciones|porzioni|personen|feeds|cuts "
    r"into)\b\s*(?:[:=–—-]\s*)?(?P<what>.+)$",
    re.I,
)
_TIN = re.compile(
    r"^(?:tin|pan|mould|mold|tin size|pan size|baking tin|form|moule|stampo|bakvorm)\s*[:=-]\s*(?P<what>.+)$",
    re.I,
)
_KEEPS = re.compile(
    r"^(?:keeps?(?:\s+for)?|storage|store|storing|to store|keeping|keep|shelf life)\b\s*(?:[:=-]\s*)?(?P<what>.+)$",
    re.I,
)
_CREDIT = re.compile(
    r"^(?P<what>(?:recipe|idea|inspiration|photo(?:graph)?s?|pictures?|music|song|filmed|camera|edited|editing|words|"
    r"adapted|inspired|based on|thanks|thank you|source|original recipe|with thanks|credit)(?:\s\w+){0,4}?)"
    r"\s*(?:[:]|\s(?:by|from|to)\s)\s*(?P<who>.+)$",
    re.I,
)
_VIDEO = re.compile(
    r"^(?:watch(?:\s(?:it|here|the\s(?:video|film)|this\s(?:video|film)|on\s\w+))?|"
    r"(?:the\s)?(?:full\s)?(?:video|film)(?:\s(?:recipe|here))?)$",
    re.I,
)
_PAID = re.compile(r"\b(?:affiliate|paid link|paid|sponsored|commission|\(ad\)|#ad)\b", re.I)
CHAPTER = re.compile(
    r"^[(\[]?(?P<stamp>(?:\d{1,2}:)?\d{1,2}:\d{2})[)\]]?\s*(?:[-–—:|.•]\s*)?(?P<title>\S.*)$"
)
_CHAPTER_LAST = re.compile(r"^(?P<title>\S.*?)\s*[-–—:|(\[]\s*(?P<stamp>(?:\d{1,2}:)?\d{1,2}:\d{2})[)\]]?$")
_TAGS = re.compile(r"^(?:#[^\s#]+[\s,]*)+$")
_SIZE_IN_STEP = re.compile(
    r"(?P<size>\d[\d./½¼¾⅓⅔]*(?:\s?(?:x|×|by|-by-)\s?\d[\d./½¼¾]*){0,2}[\s-]?(?:cm|"
    r"in(?:ch(?:es)?)?|\"))[\s-]*(?P<words>(?:[a-z-]+\s){0,3}?)"
    r"(?P<ware>tin|pan|mould|mold|dish)\b",
    re.I,
)
_SHAPES = (
    "round",
    "square",
    "rectangle",
    "rectangular",
    "loaf",
    "springform",
    "cake",
    "tart",
    "tube",
    "ring",
    "bundt",
)
_LABELLED = re.compile(r"^(?:makes|yields?|serves|servings|tin|pan|storage|keeps)\s*:", re.I)
_COUNT = re.compile(r"^(?:about\s|approx\.?\s)?\d+(?:\s?(?:-|–|to)\s?\d+)?\b", re.I)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    role: str
    value: str


def fact_of(text: str, *, within: str) -> Fact | None:
    """What a line says by itself; `within` is the section it stands in."""
    if _TAGS.match(text):
        return Fact(role="tags", value=text)
    for pattern in (CHAPTER, _CHAPTER_LAST):
        found = pattern.match(text)
        if found and read_clock(found["stamp"]) is not None and within != "ingredients":
            return Fact(role="chapter", value=f"{found['stamp']}\t{found['title'].strip()}")
    if within == "method" and not _LABELLED.match(text):
        return None
    if URL.search(text):
        return _link(text)
    if (found := _SERVES.match(text)) and len(text) < 80 and _COUNT.match(found["what"]):
        return Fact(role="portions", value=_portions(found["what"].strip().rstrip(".")))
    if (
        (found := _MAKES.match(text))
        and len(text) < 80
        and re.match(r"(?:about\s)?(?:\d|an?\s|one|two|three|four|six|twelve)", found["what"], re.I)
    ):
        return Fact(role="makes", value=found["what"].strip().rstrip("."))
    if (found := _TIN.match(text)) and (tin := tin_of(found["what"])):
        return Fact(role="tin", value=tin)
    if (found := _KEEPS.match(text)) and len(text) < 200 and within != "ingredients":
        return Fact(role="keeps", value=found["what"].strip())
    if (found := _CREDIT.match(text)) and len(text) < 160 and within != "ingredients":
        return Fact(role="credit", value=f"{found['what'].strip()}\t{found['who'].strip().rstrip('.')}\t")
    return None


def _portions(text: str) -> str:
    return text


def _link(text: str) -> Fact | None:
    found = list(URL.finditer(text))
    url = found[0].group().rstrip(".,;")
    title = URL.sub("", text).strip(" -–—:|→►▶👉()<>[]\t")
    words = " ".join(title.split())
    if len(found) > 1 or len(words) > 120:
        return Fact(role="link", value=f"{words}\t{url}") if len(found) == 1 else None
    if _VIDEO.match(words.strip(" :")):
        return Fact(role="video", value=url)
    paid = "paid" if _PAID.search(words) else ""
    credit = _CREDIT.match(words.rstrip(" :"))
    if credit:
        return Fact(role="credit", value=f"{credit['what'].strip()}\t{credit['who'].strip()}\t{url}")
    return Fact(role="link", value=f"{words}\t{url}\t{paid}")


def tin_of(text: str) -> str:
    """The tin in the words that our recipe files have, or "" where they do not read as one."""
    plain = re.sub(r"\s+", " ", text.strip().rstrip(".")).lower()
    plain = re.sub(r"(?<=\d)-by-(?=\d)", " x ", plain)
    plain = re.sub(r"(?<=\d)\s?(?:×|x|by)\s?(?=\d)", " x ", plain)
    plain = re.sub(r"[\s-]?(?:inch(?:es)?|\"|″)(?!\w)", " in", plain)
    plain = re.sub(r"(?<=\d)-?(?=(?:cm|in)\b)", " ", plain)
    plain = re.sub(
        r"\b(springform|cake|tart|sandwich|deep|loose-bottomed|pie|tins?|pans?|mou?lds?|dish|baking|a|an|the|one)\b",
        " ",
        plain,
    )
    plain = plain.replace("bundt", "ring").replace("rectangular", "rectangle")
    size = re.search(r"\d[\d./½¼¾ x]*(?:cm|in|mm)\b", plain)
    shape = re.search(r"\b(round|square|rectangle|loaf|tube|ring|cylinder)\b", plain)
    if size is None:
        return plain if read_shape(plain)[0] is not None else ""
    sides = size.group().count("x") + 1
    named = shape[1] if shape else ("round" if sides == 1 else "")
    tin = f"{named} {' '.join(size.group().split())}".strip()
    return tin if named and read_shape(tin)[0] is not None else ""


def tin_in_step(text: str) -> str:
    """`Grease a 9 x 5-inch loaf pan`: the tin that a step speaks of, only where its shape is said."""
    found = _SIZE_IN_STEP.search(text)
    if found is None:
        return ""
    said = f"{found['words']} {text[max(0, found.start() - 20) : found.start()]}".lower()
    if not any(each in said for each in _SHAPES):
        return ""
    shape = next((each for each in _SHAPES if each in said), "")
    return tin_of(f"{shape} {found['size']}")
