"""Temperatures, times and lengths in the prose of a step, as the references that our recipe files have."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from generator.importer.line.tidy import SIGNS
from generator.importer.method.spelt_times import spelt_times
from generator.measure.duration import read_duration
from generator.measure.length import read_length
from generator.measure.temperature import Temperature, read_temperature


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """Characters `start` to `end` of a step become `text`. `question` is what is unclear of it, or ""."""

    start: int
    end: int
    text: str
    kind: str
    question: str = ""


_N = r"\d{2,3}"
_DEG = r"\s?(?:°|º|degrees?\b|deg\b\.?)?\s?"
_HEAT = re.compile(
    rf"(?<![\w.])(?:(?:(?:fan|convection)\s)?{_N}(?:{_DEG}[FC]?\s?(?:-|–|—|\bto\b)\s?{_N})?{_DEG}"
    rf"(?:fahrenheit|celsius|[FC](?![\w])|℃|℉)(?:\s?\(?(?:fan|convection)(?:\soven)?\)?)?|"
    rf"(?:(?:fan|convection)\s{_N}(?!\d)(?:{_DEG}(?![\w°]))|{_N}\s?(?:°|º)?\s?fan\b)|"
    rf"gas\s?(?:mark\s)?(?:1/[24](?!\d)|[½¼]|[1-9](?!\w)))",
    re.I,
)
_FAN_ALONE = re.compile(r"fan\s(\d{3})\s?[°º]?|(\d{3})\s?[°º]?\s?fan", re.I)
_HOTTEST_FAN = 250
_SCALELESS = re.compile(r"(?<![\w./])\d{3}\s?(?:°|º|degrees?\b)(?!\s?[FC]\b)", re.I)
_BARE = re.compile(
    r"(?:\b(?:oven|(?:pre-?)?heat\w*|bak(?:e|ed|ing)|roast(?:ed|ing)?|cook(?:ed)?)\b[^.;!?\d]{0,40}?\b(?:at|to|about|fan|convection)\s|\boven:?\s)"
    r"(?P<degrees>[1-5]\d\d)(?![\w°º]|[.,/]\d|\s?(?:g|kg|ml|oz|°|º|[CFcf]|degrees?|fan|minutes?|mins?|grams?|times)(?!\w))",
    re.I,
)
_UNTIMED = re.compile(
    r"\b(?:bak(?:e|ed|ing)|roast|knead|rise|proof|prove|rest|chill|cool|simmer|cook|boil|mix)\b[^.;!?]{0,60}?\bfor\s(?:about\s)?"
    r"(?P<number>\d{1,3}(?:\s?(?:-|–|to)\s?\d{1,3})?)(?=[.,;!]?(?:\s(?:until|or|then|and)\b|$|[.;!]\s))",
    re.I,
)
_BETWEEN = re.compile(r"\s{0,2}(?:[/(,;=|]|\bor\b|\babout\b|\s){0,4}\s{0,2}$", re.I)
_CORE = re.compile(
    r"\b(?:internal|inside|core|cent(?:re|er)|thermometer|probe|reads?|reaches|registers|crumb|middle)\b",
    re.I,
)
_OVEN = re.compile(
    r"\b(?:oven|preheat\w*|pre-heat\w*|bak(?:e|ed|ing)|roast\w*|heat|reduce|lower|turn|drop|increase|raise|"
    r"backofen|backen|four|horno|forno|oven)\b",
    re.I,
)
_TO = re.compile(r"\b(?:to|until|reaches|at)\s(?:about\s|it\sis\s)?$", re.I)
_SYRUP = re.compile(r"\b(?:syrup|sugar|caramel|jam|oil|candy|water|milk|custard)\b", re.I)
_SENTENCE = re.compile(r"[.!?;]\s+|\n")
_WARM = 8
"""Degrees C by which two scales of one temperature may differ: charts round to the nearest 10 or 25."""

_NUM = rf"(?:\d+\s\d/\d|\d+[.,]\d+|\d+\s?[{SIGNS}]|\d+/\d|\d+|[{SIGNS}])"
_WORDNUM = r"(?:half\san|an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve)"
_TIMEUNIT = r"(?:hours?|hrs?|h|minutes?|mins?|min|seconds?|secs?|days?|weeks?)"
_ONE = (
    rf"(?:{_NUM}(?:\s?(?:-|–|—|\bto\b|\bor\b)\s?{_NUM})?[\s-]?{_TIMEUNIT}\b\.?|"
    rf"{_WORDNUM}(?:\sto\s{_WORDNUM})?\s{_TIMEUNIT}\b)"
)
_TIME = re.compile(
    rf"(?<![\w./:]){_ONE}(?:\s?(?:,|and\b)?\s?{_NUM}\s?(?:minutes?|mins?|min)\b\.?)?"
    rf"(?:\s?(?:to|-|–|or)\s{_ONE}(?:\s?{_NUM}\s?(?:minutes?|mins?|min)\b)?)?",
    re.I,
)
_KINDS: tuple[tuple[str, str], ...] = (
    ("bake", r"bak(?:e|ed|es|ing)|roast(?:ed|ing)?"),
    ("knead", r"knead(?:ed|ing)?"),
    (
        "rise",
        r"ris(?:e|es|ing)|proof(?:ed|ing)?|prov(?:e|ed|ing)|ferment(?:ed|ing)?|doubled?|double in size|puffy",
    ),
    ("chill", r"chill(?:ed|ing)?|refrigerat\w+|fridge|cold"),
    ("freeze", r"freez\w+"),
    ("cool", r"cool(?:ed|ing|s)?"),
    (
        "rest",
        r"rest(?:ed|ing|s)?(?!\sof)|stand(?:ing)?|sit(?:ting)?|soak(?:ed|ing)?|autolyse|relax|leave|wait",
    ),
    (
        "mix",
        r"mix(?:ed|ing)?|stir(?:red|ring)?|beat(?:ing)?|whisk(?:ed|ing)?|cream(?:ing)|whip(?:ped|"
        r"ping)?|blend|combine",
    ),
    ("cook", r"simmer(?:ed|ing)?|boil(?:ed|ing)?|cook(?:ed|ing)?|fry|melt|toast(?:ed|ing)?|steam"),
    ("work", r"work|braid(?:ing)?|shape|shaping|roll(?:ing)?|fold(?:ing)?|plait|pipe|decorate"),
)
_VERBS = tuple((kind, re.compile(rf"\b(?:{words})\b", re.I)) for kind, words in _KINDS)
_NO_STAGE = re.compile(
    r"\b(?:every|after|first|last|within|up to|preheat\w*|for another|an? (?:further|extra)|"
    r"about every|halfway|turn\w*)\s"
    r"(?:\w+\s){0,2}$",
    re.I,
)
_STORING = re.compile(r"\b(?:keeps?|store[ds]?|freezes?|up to)\b", re.I)
_LENGTH = re.compile(
    rf"(?<![\w./]){_NUM}(?:\s?(?:-|–|to)\s?{_NUM})?[\s-]?(?:cm|mm|centimet(?:re|er)s?|"
    rf"inch(?:es)?|in(?=[\s,.)])(?!\s(?:the|a|an|your|two|half|it|and)\b)|[\"″])",
    re.I,
)


_TWIN = re.compile(rf"\s?\({_NUM}(?:\s?(?:-|–)\s?{_NUM})?[\s-]?(?:cm|mm|in(?:ch(?:es)?)?|[\"″])\)", re.I)


def find_measures(text: str) -> list[Found]:
    """Everything measured in a step that is no ingredient, in order, none overlapping."""
    heats = list(_heats(text))
    times = [each for each in _times(text) if not _clash(each, heats)]
    lengths = [each for each in _lengths(text) if not _clash(each, [*heats, *times])]
    asked = list(_asked(text, [*heats, *times, *lengths]))
    return sorted([*heats, *times, *lengths, *asked], key=lambda each: each.start)


def _clash(one: Found, others: list[Found]) -> bool:
    return any(one.start < each.end and each.start < one.end for each in others)


def _heats(text: str) -> Iterator[Found]:
    found = [(each, read) for each in _HEAT.finditer(text) if (read := _read_heat(each.group()))]
    at = 0
    while at < len(found):
        match, read = found[at]
        end, at = match.end(), at + 1
        while (
            at < len(found)
            and _same(read, found[at][1])
            and _BETWEEN.fullmatch(text[end : found[at][0].start()])
        ):
            opened = (
                "(" in text[match.start() : found[at][0].start()] or "(" in text[end : found[at][0].start()]
            )
            end, at = found[at][0].end(), at + 1
            if opened and text[end : end + 1] == ")":
                end += 1
        end = _close(text, match.start(), end)
        kind = _heat_kind(text, match.start(), end, read)
        yield Found(
            start=match.start(), end=end, text=f"{{{kind}{_heat_words(read)}}}", kind=kind.strip() or "heat"
        )
    for each in _SCALELESS.finditer(text):
        if not any(match.start() <= each.start() < match.end() for match, _ in found):
            question = f"“{each.group()}” names no scale: F or C?"
            yield Found(start=each.start(), end=each.end(), text="", kind="ask", question=question)


def _asked(text: str, known: list[Found]) -> Iterator[Found]:
    """Numbers that can only be degrees or a time, and name no scale and no unit."""
    for pattern, group, what in (
        (_BARE, "degrees", "scale: F or C?"),
        (_UNTIMED, "number", "unit: minutes or hours?"),
    ):
        for each in pattern.finditer(text):
            start, end = each.span(group)
            if not any(start < one.end and one.start < end for one in known):
                yield Found(
                    start=start, end=end, text="", kind="ask", question=f"“{each[group]}” names no {what}"
                )


def _close(text: str, start: int, end: int) -> int:
    """Takes in a bracket that the stretch opened and that closes right after it."""
    inside = text[start:end]
    return end + 1 if inside.count("(") > inside.count(")") and text[end : end + 1] == ")" else end


def _read_heat(words: str) -> Temperature | None:
    plain = re.sub(r"\bto\b|—|–", "-", words)
    plain = re.sub(r"(?<=\d)c\b", "C", plain).replace(" c", " C")
    plain = re.sub(r"\(|\)", " ", plain)
    if (bare := _FAN_ALONE.fullmatch(plain.strip())) and int(bare[1] or bare[2]) <= _HOTTEST_FAN:
        # Fan ovens are spoken of in Celsius; a hotter number may be Fahrenheit, and is asked about.
        plain = f"{bare[1] or bare[2]} C fan"
    plain = re.sub(r"\bgas(?=\d)", "gas ", plain, flags=re.I)
    return read_temperature(" ".join(plain.split()))


def _same(one: Temperature, other: Temperature) -> bool:
    a, b = one.celsius().mid, other.celsius().mid
    if one.fan != other.fan:
        return 10 <= (a - b if other.fan else b - a) <= 30
    return abs(a - b) <= _WARM + (6 if "gas" in (one.stated, other.stated) else 0)


def _heat_words(read: Temperature) -> str:
    low, high = (f"{float(each):g}" for each in (read.low, read.high))
    span = low if low == high else f"{low}-{high}"
    if read.stated == "gas":
        marks = {"0.25": "1/4", "0.5": "1/2"}
        return f"gas {marks.get(low, low)}"
    return f"{span} {read.stated}{' fan' if read.fan else ''}"


def _sentence(text: str, start: int) -> tuple[int, int]:
    """The sentence around an index."""
    begin = max((each.end() for each in _SENTENCE.finditer(text, 0, start)), default=0)
    after = _SENTENCE.search(text, start)
    return begin, after.start() if after else len(text)


def _heat_kind(text: str, start: int, end: int, read: Temperature) -> str:
    begin, last = _sentence(text, start)
    before, after = text[begin:start], text[end : min(end + 30, last)]
    celsius = read.celsius().mid
    if read.stated == "gas" or read.fan:
        return "oven "
    syrup = _SYRUP.search(before) or _SYRUP.search(after)
    core = _CORE.search(before[-50:]) or (_CORE.search(after) and not re.search(r"\buntil\b", after))
    if 50 <= celsius <= 105 and core and not (syrup and not _CORE.search(before[-50:])):
        return "core "
    if 70 <= celsius <= 105 and not syrup and _TO.search(before) and _OVEN.search(before):
        return "core "
    if celsius >= 60 and not syrup and (_OVEN.search(text[begin:last]) or celsius >= 150):
        return "oven " if celsius > 105 or _OVEN.search(before) else ""
    if celsius >= 140 and _OVEN.search(before) and re.search(r"\boven\b|\bbake\b", text[begin:last], re.I):
        return "oven "
    return ""


def _times(text: str) -> Iterator[Found]:
    taken: list[tuple[int, int]] = []
    for start, end, plain in sorted(spelt_times(text)):
        if read_duration(plain) is not None and not any(
            start < last and first < end for first, last in taken
        ):
            taken.append((start, end))
            yield _stage(text, start, end, plain)
    for each in _TIME.finditer(text):
        if any(each.start() < end and start < each.end() for start, end in taken):
            continue
        words = each.group().rstrip(".")
        plain = _plain_time(words)
        if read_duration(plain) is None:
            plain = _plain_time(words := re.split(r"\s(?:to|or|and)\s|,", words)[0])
            if read_duration(plain) is None:
                continue
        end = each.start() + len(words)
        dotted = each.group().endswith(".") and re.match(r"\s+[a-z]", text[each.end() :])
        yield _stage(text, each.start(), end + (1 if dotted else 0), plain)


def _plain_time(words: str) -> str:
    words = re.sub(r"\s?(?:–|—|-|\bto\b|\bor\b)\s?(?=[\d" + SIGNS + r"])", "-", words, flags=re.I)
    words = re.sub(r"(?<=[\da-z" + SIGNS + r"])-(?=[a-z])", " ", words, flags=re.I)
    for unit, ours in (("hours?|hrs?", "h"), ("minutes?|mins?", "min"), ("seconds?|secs?", "s")):
        words = re.sub(rf"(?<![a-z])({unit})\b\.?", ours, words, flags=re.I)
    words = re.sub(r"^half an h\b", "30 min", words, flags=re.I)
    words = re.sub(r"^(?:an?|one)\s(?=h|min|day|week|s\b)", "1 ", words, flags=re.I)
    words = re.sub(r"(?<=\d)(?=h\b|min\b)", " ", words)
    # “45 min-1 h” is “45 min to 1 h”.
    words = re.sub(r"(?<=[a-z])\s?-\s?(?=\d)", " to ", words)
    return " ".join(words.replace(" and ", " ").replace(",", " ").split())


def _stage(text: str, start: int, end: int, plain: str) -> Found:
    begin, last = _sentence(text, start)
    before, after = text[begin:start], text[end:last]
    kind = "" if _NO_STAGE.search(before[-40:]) or _STORING.search(before) else _kind_of(before, after)
    question = ""
    if not kind and not _NO_STAGE.search(before[-40:]):
        question = f"what happens in “{text[start:end]}” is not clear"
    return Found(
        start=start,
        end=end,
        text=f"{{{kind + ' ' if kind else ''}{plain}}}",
        kind=kind or "time",
        question=question,
    )


def _kind_of(before: str, after: str) -> str:
    """The kind of work that stands last before a time in its clause, else first after it."""
    last = max(
        ((found.start(), kind) for kind, pattern in _VERBS for found in pattern.finditer(before)),
        default=None,
    )
    if last is not None:
        return last[1]
    first = min(
        ((found.start(), kind) for kind, pattern in _VERBS for found in pattern.finditer(after)), default=None
    )
    return first[1] if first is not None else ""


def _lengths(text: str) -> Iterator[Found]:
    for each in _LENGTH.finditer(text):
        words = re.sub(r"\s?(?:–|\bto\b)\s?", "-", each.group())
        words = re.sub(r"(?<=[\d" + SIGNS + r"])-(?=[a-z])", " ", words, flags=re.I)
        before = text[: each.start()]
        if (
            read_length(words) is None
            or re.search(r"(?:\d|x|×|by)\s*$", before)
            or re.match(r"\s?(?:x|×|by)\s?\d", text[each.end() :])
        ):
            continue
        plain = re.sub(r"inch(?:es)?|[\"″]", " in", words, flags=re.I)
        twin = _TWIN.match(text, each.end())
        end = twin.end() if twin else each.end()
        if text[max(0, each.start() - 1) : each.start()] == "(":
            continue
        yield Found(start=each.start(), end=end, text=f"{{{' '.join(plain.split())}}}", kind="length")
