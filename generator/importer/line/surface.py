"""The surface of an old ingredient line made plain, before its amount is read: marks, numbers in words, separators.

Only signs are taken away, and only words are moved: every word and figure of the line stands in what comes out.
Words that make an amount inexact (`up to`, `just under`) are handed back, and become the line's note.
"""

import re

from generator.importer.line.tidy import SIGNS, is_measures
from generator.measure.quantity import Quantity, read_quantity
from generator.measure.unit import Spoons

_NUMBER = rf"(?:\d+(?:[.,]\d+)?|\d+\s\d/\d|\d/\d|\d*[{SIGNS}])"
_ONE = r"\d+(?:[.,]\d+)?"
_PACK = r"sachets?|packets?|packages?|packs?|pkts?|envelopes?|tins?|cans?|jars?|blocks?"
_FILLABLE = "tea|table|tsp|tbsp|cup|pint|lit"
_MANY = r"\d+|an?|one|two|three|half"
_SIZED = r"(?:fl\.?\s?oz|g|gr|grams?|kg|ml|cl|l|oz|ounces?|lbs?)\.?"

_PLAIN: tuple[tuple[re.Pattern[str], str], ...] = (
    # Leaders of underscores, before they are taken for emphasis; arrows say what a colon says.
    (re.compile(r"_{2,}"), "\t"),
    (re.compile(r"\s*(?:[=-]+>|→|⇒|➔|➜|►|▶|»|›)\s*(?=\S)"), ": "),
    # Marks of footnotes: ¹ ² † ‡ [1], and stars that begin no emphasis.
    (re.compile(r"(?<=\w)\s?(?:[¹²³⁴-⁹⁰†‡§]+|\[\d{1,2}\]|\*{1,3}(?=$|[\s,;.:]))"), ""),
    (re.compile(r"(?<=\S)\s*\[([^\[\]]+)\]"), r" (\1)"),
    (re.compile(r"(?<=\S)\s*\{([^{}]+)\}"), r" (\1)"),
    # Spellings of units and sizes (UK, Australia, India).
    (re.compile(rf"(?<=[\d{SIGNS}])\s?C(?=\s+[A-Za-z])"), " cup"),
    (re.compile(r"\b(?:tblsp|tbls|tbsn|tbspn|tabsp|table[\s-]spoons?|tblspn)s?\b\.?", re.I), "tbsp"),
    (re.compile(r"\b(?:teasp|tea[\s-]spoons?|tspn)s?\b\.?", re.I), "tsp"),
    (re.compile(r"\b(?:lge|lrg)\b\.?", re.I), "large"),
    (re.compile(r"\bmed\b\.?(?=\s|$)", re.I), "medium"),
    (re.compile(r"\bsml\b\.?", re.I), "small"),
    (re.compile(r"\b(extra[\s-]large|large|medium|small)[\s-]sized?\b", re.I), r"\1"),
    # Numbers in words.
    (re.compile(r"^(?:one|1)\s+and\s+(?:a|one)\s+half\b", re.I), "1 1/2"),
    (re.compile(r"^(?:two|2)\s+and\s+(?:a|one)\s+half\b", re.I), "2 1/2"),
    (re.compile(r"^(\d+)\s+and\s+(?:a|one)\s+half\b", re.I), r"\1 1/2"),
    (re.compile(r"^(\d+)\s+and\s+(?:a|one)\s+quarter\b", re.I), r"\1 1/4"),
    (re.compile(r"^(\d+)\s+and\s+three[\s-]quarters?\b", re.I), r"\1 3/4"),
    (re.compile(r"^(?:a|one)?\s*half[\s-](?=tea|table|tsp|tbsp|cup|pint|litre|liter)", re.I), "1/2 "),
    (re.compile(r"^(?:three|3)[\s-]quarters?(?:\s+of)?(?:\s+an?)?\s+", re.I), "3/4 "),
    (re.compile(r"^(?:two|2)[\s-]thirds?(?:\s+of)?(?:\s+an?)?\s+", re.I), "2/3 "),
    (
        re.compile(
            r"^(?:an?\s+|one[\s-])?quarter(?:\s+of)?(?:\s+an?)?[\s-]+(?=tea|table|tsp|tbsp|cup|pint|l)", re.I
        ),
        "1/4 ",
    ),
    (
        re.compile(
            r"^(?:an?\s+|one[\s-])?third(?:\s+of)?(?:\s+an?)?[\s-]+(?=tea|table|tsp|tbsp|cup|pint|l)", re.I
        ),
        "1/3 ",
    ),
    (re.compile(rf"^({_NUMBER})\s+of\s+an?\s+", re.I), r"\1 "),
    (re.compile(r"^(scant|heaping|heaped|level|rounded)\s+(?=cup|tsp|tbsp|tea|table)", re.I), r"\1 1 "),
    (re.compile(r"(?<![\d.,#])([1-9]\d?)(?: (?=000)|['’])(\d{3})(?=\s?(?:g|gr|grams?|ml)\b)"), r"\1\2"),
    # How many: `3 x eggs`, `2 nos. eggs`, `Eggs × 3`, `Egg – 1 no`.
    (re.compile(r"^(\d{1,3})\s*(?:[x×]\s+|×)(?=[^\W\d])"), r"\1 "),
    (re.compile(r"(?<=\w)\s*[x×]\s*(\d{1,3})$"), r": \1"),
    (re.compile(r"^(\d{1,3})\s*(?:nos?|pcs?|units?)\b\.?\s+(?=[^\W\d])", re.I), r"\1 "),
    (re.compile(r"(?<=\d)\s+(?:nos?|pcs?|units?)\.?$", re.I), ""),
    # Packs of a size: `1 7g sachet of yeast`, `400 ml can coconut milk`.
    (
        re.compile(
            rf"^(\d+|an?|one|two|three|half)\s+(?:x\s*)?(\d+(?:[.,]\d+)?\s?{_SIZED})\s+({_PACK})\b", re.I
        ),
        r"\1 (\2) \3",
    ),
    (re.compile(rf"^(\d+(?:[.,]\d+)?\s?{_SIZED})\s+({_PACK})\b(?=\s+\w)", re.I), r"1 (\1) \2"),
    (re.compile(r"^(?:an?|one)(?=\s\()", re.I), "1"),
    # A pinch is a pinch.
    (re.compile(r"^(.+?)\s*(?:[-–—:(]|,)\s*(?:an?|one|1)\s+(pinch|dash)\)?$", re.I), r"a \2 of \1"),
)
_ENUMERATED = re.compile(
    rf"^(?:\(?[a-h][.)]|[ivx]{{1,4}}[.)]|#\s?\d{{1,2}}[.:]?|\d{{1,2}}\s?[/:]|o)\s+(?=[\d{SIGNS}]|an?\s|half\s)",
    re.I,
)
_ROUGH = re.compile(
    rf"^(?P<how>c\.?|circa|up to|at least|at most|no more than|just (?:under|over|below|above)"
    rf"|(?:a )?(?:little|bit) (?:over|under|(?:more|less) than)|(?:slightly )?(?:more|less|over|under)(?: than)?"
    rf"|nearly|almost|max\.?|min\.?|exactly|another|some)\s+(?=(?:{_NUMBER}|an?\s)\s?)",
    re.I,
)
_OPEN_END = re.compile(rf"^({_NUMBER}\s?\w*)\s?\+(?=\s+[^\W\d])")
_PINCH = re.compile(
    r"^(?:an?\s+)?(?P<how>big|good|tiny|fat|hefty|healthy|wee|two-finger|three-finger)\s+(?P<pinch>pinch|dash)\s+(?:of\s+)?",
    re.I,
)
_BETWEEN = re.compile(r"\s*(?:[–—:;|=]|,|/|-(?=\s))\s*|\s+-\s*")
_ARTICLE = re.compile(r"^(?:of\s+)?the\s+", re.I)
_FILLED = re.compile(r"^(heaped|heaping|level|packed|scant|rounded|sifted),\s*", re.I)
_PLUS_MEASURE = re.compile(r"\s+(?:plus|\+|and|&)\s+(?=[^()]*$)", re.I)
_PERCENT = r"\(?\d{1,3}(?:[.,]\d{1,2})?\s?%\)?"
_PERCENT_LAST = re.compile(rf"\s*(?:[-–—,:|/]\s*)?({_PERCENT})$")
_SECOND_LAST = re.compile(rf"\s*(?:,|[–—]|\s-)\s*(?=(?:about\s)?{_NUMBER})")


def smooth(text: str, *, spoons: Spoons) -> tuple[str, str]:
    """The line in plain order with plain signs, and what its words said of the amount besides."""
    for pattern, plain in _PLAIN:
        text = pattern.sub(plain, text)
    text = _ENUMERATED.sub("", text.strip())
    notes: list[str] = []
    if rough := _ROUGH.match(text):
        notes.append(rough["how"])
        text = text[rough.end() :]
    if pinch := _PINCH.match(text):
        notes.append(f"a {pinch['how'].lower()} one")
        text = f"a {pinch['pinch'].lower()} of {text[pinch.end() :]}"
    if open_end := _OPEN_END.match(text):
        notes.append("or more")
        text = open_end[1] + text[open_end.end() :]
    first = _measure(text, spoons)
    if first is not None:
        text = _between(text, first, spoons)
        text = _added_behind(text, spoons)
        text = _second_behind(text, spoons)
    return text, ", ".join(each for each in notes if each.casefold() != "some")


def _measure(text: str, spoons: Spoons) -> tuple[Quantity, int] | None:
    found = read_quantity(text, spoons=spoons)
    return found if found is not None and found[0].amount.low > 0 else None


def _between(text: str, first: tuple[Quantity, int], spoons: Spoons) -> str:
    """What parts the first measure from a second (`1½ cups – 187 g flour`) or from the name (`500 g: flour`)."""
    quantity, end = first
    if quantity.unit is None:
        return re.sub(r"^\s*[:–—]\s*(?=[^\W\d])|^\s+-\s+(?=[^\W\d])", " ", text[end:]).join((text[:end], ""))
    head, rest = text[:end], text[end:]
    while rest.lstrip().startswith("("):
        close = rest.find(")") + 1
        if not close or not is_measures(rest[: close - 1].strip().lstrip("("), spoons=spoons):
            break
        head, rest = head + rest[:close], rest[close:]
    sign = _BETWEEN.match(rest)
    if sign is not None and sign.group().strip() == "/":
        return text
    if sign is None:
        return head + _without_article(rest)
    after = rest[sign.end() :]
    second = _measure(after, spoons)
    if second is not None and second[0].unit is not None:
        tail = re.sub(r"^\s*(?:[,:;|–—=]|-\s)\s*", " ", after[second[1] :])
        if not tail.strip():
            return text
        if second[0].unit.name == quantity.unit.name and sign.group().strip() in ("-", "–", "—"):
            number = after[: second[1]].strip()
            return f"{head.removesuffix(quantity.text) or ''}{_number(quantity)}–{number}{tail}"
        return f"{head} ({after[: second[1]].strip()}){tail}"
    if not after:
        return text
    return f"{head} {_FILLED.sub(lambda f: f'{f[1]} ', after)}"


def _number(quantity: Quantity) -> str:
    found = re.match(rf"\s*{_NUMBER}", quantity.text)
    return found.group().strip() if found else quantity.text


def _without_article(rest: str) -> str:
    stripped = rest.lstrip()
    return f" {_ARTICLE.sub('', stripped)}" if _ARTICLE.match(stripped) else rest


def _added_behind(text: str, spoons: Spoons) -> str:
    """`1 cup milk plus 2 tbsp` is 1 cup plus 2 tbsp of milk; `plus 2 tbsp for the tin` is another use."""
    found = _PLUS_MEASURE.search(text)
    if found is None or not is_measures(text[found.end() :], spoons=spoons):
        return text
    first = _measure(text, spoons)
    if first is None or first[0].unit is None or first[1] >= found.start():
        return text
    more = _measure(text[found.end() :], spoons)
    if more is None or more[0].unit is None or more[0].unit.kind is not first[0].unit.kind:
        return text
    return f"{text[: first[1]]} plus {text[found.end() :]}{text[first[1] : found.start()]}"


def _second_behind(text: str, spoons: Spoons) -> str:
    """`1 tsp salt, 5 g` and `1 tsp salt – 5 g` say the amount again."""
    for found in _SECOND_LAST.finditer(text):
        tail = text[found.end() :]
        measure = _measure(tail, spoons)
        if measure and measure[0].unit is not None and is_measures(tail, spoons=spoons):
            before = text[: found.start()]
            first = _measure(before, spoons)
            if first and first[0].unit is not None and before[first[1] :].strip():
                return f"{before} ({tail})"
    return text


def percent_behind(text: str) -> str:
    """`500 g flour 100 %`: the baker's percent in brackets, where it becomes a note."""
    found = _PERCENT_LAST.search(text)
    return f"{text[: found.start()]} ({found[1].strip('()')})" if found and found.start() else text


def percent_before(text: str) -> str:
    """`100 % flour, 500 g`: the same in front of a name."""
    found = re.match(rf"({_PERCENT})\s+(?=[^\W\d])", text)
    return f"{text[found.end() :]} ({found[1].strip('()')})" if found else text
