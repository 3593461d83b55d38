"""Where the prose of a step names the lines of the formula: which one, and how much of it."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from generator.catalogue.names import fold, number_forms
from generator.formula.brackets import read_measures
from generator.formula.checks.prose_words import means_something_else
from generator.formula.shelf import Shelf
from generator.importer.line.ingredient import read_back, understood
from generator.importer.line.tidy import SIGNS
from generator.importer.model import ReadLine
from generator.measure.quantity import read_quantity


@dataclass(frozen=True, slots=True, kw_only=True)
class Mention:
    """Characters `start` to `end` name the lines `keys`. `how` is "whole", "rest", a share, or "" for a measure.

    `grams` is what a stated measure weighs, None where none is stated or known; `measure` its words.
    """

    start: int
    end: int
    keys: tuple[int, ...]
    name: str
    how: str
    measure: str = ""
    grams: Fraction | None = None


_WORD = re.compile(r"[^\W_]+(?:['’-][^\W\d_]+)*%?")
_LONGEST = 6
_MIXED = frozenset(
    [
        "mixture",
        "mix",
        "wash",
        "dough",
        "batter",
        "bowl",
        "pan",
        "tin",
        "syrup",
        "paste",
        "cream",
        "sauce",
        "shell",
        "crust",
        "base",
        "glaze",
        "cake",
        "bread",
        "towel",
        "paper",
        "knife",
        "filling",
        "cutter",
        "brush",
        "roux",
        "ball",
        "layer",
        "frosting",
        "icing",
        "custard",
        "pudding",
        "machine",
        "based",
    ]
)
_WEAK = frozenset(
    [
        "powder",
        "extract",
        "paste",
        "seeds",
        "seed",
        "pieces",
        "leaves",
        "flakes",
        "sheets",
        "pods",
        "sticks",
        "zest",
        "peel",
        "meal",
    ]
)
_SHARES: Mapping[str, str] = {
    "half": "half",
    "a half": "half",
    "one half": "half",
    "a third": "1/3",
    "one third": "1/3",
    "two thirds": "2/3",
    "a quarter": "1/4",
    "one quarter": "1/4",
    "three quarters": "3/4",
    "½": "half",
    "⅓": "1/3",
    "⅔": "2/3",
    "¼": "1/4",
    "¾": "3/4",
    "1/2": "half",
    "1/3": "1/3",
    "2/3": "2/3",
    "1/4": "1/4",
    "3/4": "3/4",
}
_SHARE_BEFORE = re.compile(
    rf"(?P<share>"
    rf"(?:{'|'.join(sorted(map(re.escape, _SHARES), key=len, reverse=True))}))(?:\sof)?(?:\s(?:the|"
    rf"your|this))?\s$",
    re.I,
)
_REST_BEFORE = re.compile(
    r"(?:the\s)?(?:remaining|rest\sof(?:\sthe)?|other\shalf(?:\sof)?(?:\sthe)?|(?:second|other)\shalf\sof(?:\sthe)?|"
    r"reserved|leftover|last\sof(?:\sthe)?)\s$",
    re.I,
)
_QUANTITY_BEFORE = re.compile(
    rf"(?P<measure>[\d{SIGNS}][^,;.()]{{0,24}}?|an?\s\w+)\s(?:of\s)?(?:the\s|your\s)?$", re.I
)
_BRACKET = re.compile(r"\s?\(([^()]{1,60})\)")
_OPTIONAL = re.compile(r",?\s*\b(?:optional|all of it|in total)\b", re.I)
_SHARE_WORDS = re.compile(
    r",?\s*\b(half|a third|two thirds|a quarter|three quarters|the rest|rest|1/3|2/3|1/4|3/4)\b", re.I
)
_ARTICLE = re.compile(r"\b(?:all\s(?:of\s)?)?$", re.I)


def names_of(lines: tuple[ReadLine, ...], shelf: Shelf) -> Mapping[str, tuple[int, ...]]:
    """Every name that the prose may use, with the lines it can mean; a line's own words win over a shorter name."""
    exact: dict[str, list[int]] = {}
    loose: dict[str, list[int]] = {}
    for key, line in enumerate(lines):
        if not line.known:
            continue
        for name in _own(line):
            _put(exact, name, key)
        for name in _shorter(line, shelf):
            _put(loose, name, key)
    return {
        **{name: tuple(keys) for name, keys in loose.items()},
        **{name: tuple(keys) for name, keys in exact.items()},
    }


def _put(table: dict[str, list[int]], name: str, key: int) -> None:
    for form in number_forms(fold(name)):
        if key not in table.setdefault(form, []):
            table[form].append(key)


def _own(line: ReadLine) -> Iterator[str]:
    yield line.written.item
    if line.written.size:
        yield f"{line.written.size} {line.written.item}"


def _shorter(line: ReadLine, shelf: Shelf) -> Iterator[str]:
    words = fold(line.written.item).split()
    for start in range(1, len(words)):
        if not (start == len(words) - 1 and words[start] in _WEAK):
            yield " ".join(words[start:])
    ware = shelf.ware(line.written.item)[0]
    if ware is not None:
        yield from (name for name in ware.ingredient.names if "%" not in name)
    if len(words) > 1 and words[-1] in _WEAK:
        yield " ".join(words[:-1])


def find_mentions(
    text: str, names: Mapping[str, tuple[int, ...]], lines: tuple[ReadLine, ...], shelf: Shelf
) -> list[Mention]:
    words = list(_WORD.finditer(text))
    found: list[Mention] = []
    at = 0
    while at < len(words):
        taken = _longest(text, words, at, names)
        if taken is None:
            at += 1
            continue
        length, keys = taken
        start, end = words[at].start(), words[at + length - 1].end()
        if not _is_other(text, words, at, length):
            found.append(_mention(text, start, end, keys, lines, shelf))
        at += length
    return found


def _longest(
    text: str, words: list[re.Match[str]], at: int, names: Mapping[str, tuple[int, ...]]
) -> tuple[int, tuple[int, ...]] | None:
    for length in range(min(_LONGEST, len(words) - at), 0, -1):
        between = text[words[at].start() : words[at + length - 1].end()]
        if length > 1 and re.search(r"[.,;:!?()\n]", between):
            continue
        keys = names.get(fold(between))
        if keys:
            return length, keys
    return None


def _is_other(text: str, words: list[re.Match[str]], at: int, length: int) -> bool:
    start, end = words[at].start(), words[at + length - 1].end()
    follows = at + length < len(words) and not re.search(
        r"[.,;:!?()\n]", text[end : words[at + length].start()]
    )
    after = words[at + length].group().casefold() if follows else ""
    opens = at == 0 or re.search(r"[.;:!?\n]", text[words[at - 1].end() : start]) is not None
    before = "" if opens else words[at - 1].group().casefold()
    if not opens and after == "and":
        # “…, egg and butter”: in the middle of a list it is a thing, not what a baker does.
        return False
    if after in _MIXED or text[end : end + 1] == "-":
        return True
    return means_something_else(
        fold(text[start:end]), before=before, after=after, text_before=text[:start][-40:]
    )


def _mention(
    text: str, start: int, end: int, keys: tuple[int, ...], lines: tuple[ReadLine, ...], shelf: Shelf
) -> Mention:
    name = text[start:end]
    before = text[max(0, start - 40) : start]
    bracket = _BRACKET.match(text, end)
    inner = _in_bracket(bracket[1], shelf) if bracket else None
    if rest := _REST_BEFORE.search(before):
        stop = bracket.end() if bracket and inner else end
        return Mention(start=start - len(before) + rest.start(), end=stop, keys=keys, name=name, how="rest")
    if share := _SHARE_BEFORE.search(before):
        how = _SHARES[" ".join(share["share"].casefold().split())]
        stop = bracket.end() if bracket and inner else end
        return Mention(start=start - len(before) + share.start(), end=stop, keys=keys, name=name, how=how)
    stated = _with_quantity(before, start, end, keys, name, lines, shelf)
    if stated.measure:
        return replace(stated, end=bracket.end() if bracket and inner else end)
    if inner is not None and bracket is not None:
        how, measure = inner
        grams = _grams(measure, lines[keys[0]], shelf) if measure else None
        return Mention(
            start=start, end=bracket.end(), keys=keys, name=name, how=how, measure=measure, grams=grams
        )
    return stated


def _with_quantity(
    before: str,
    start: int,
    end: int,
    keys: tuple[int, ...],
    name: str,
    lines: tuple[ReadLine, ...],
    shelf: Shelf,
) -> Mention:
    for match in re.finditer(rf"(?<![\w.,/])(?=[\d{SIGNS}]|a\s(?:pinch|dash)\b)", before):
        read = read_quantity(before, spoons=shelf.spoons, start=match.start())
        if read is None:
            continue
        gap = before[read[1] :]
        bracket = re.fullmatch(r"\s?(?:\([^()]*\))?\s?(?:of\s)?(?:the\s|your\s)?", gap)
        if bracket is None:
            continue
        measure = read[0].text.strip()
        grams = _grams(measure, lines[keys[0]], shelf)
        return Mention(
            start=start - len(before) + match.start(),
            end=end,
            keys=keys,
            name=name,
            how="",
            measure=measure,
            grams=grams,
        )
    return Mention(start=start, end=end, keys=keys, name=name, how="whole")


def _in_bracket(inner: str, shelf: Shelf) -> tuple[str, str] | None:
    """What a bracket behind a name says: the share, and the measure; None where it is no amount."""
    plain = _OPTIONAL.sub("", inner).strip(" ,")
    how = "whole"
    if share := _SHARE_WORDS.search(plain):
        word = share[1].casefold()
        how = "rest" if word.endswith("rest") else _SHARES[word]
        plain = (plain[: share.start()] + plain[share.end() :]).strip(" ,")
    if not plain:
        return how, ""
    first = plain.split(",")[-1].strip()
    sized = re.sub(r"\s(?:large|medium|small)$", "", plain.split(",")[0].strip())
    if read_measures(first, spoons=shelf.spoons):
        return (how, first) if how != "whole" else ("", first)
    read = read_quantity(sized, spoons=shelf.spoons)
    if read is not None and read[1] == len(sized):
        return (how, sized) if how != "whole" else ("", sized)
    return None


def _grams(measure: str, line: ReadLine, shelf: Shelf) -> Fraction | None:
    """What a stated measure of a line's ingredient weighs."""
    written = read_back(f"{measure} {line.written.item}", shelf)
    weighed = understood(written, shelf=shelf)[0]
    return weighed.grams.mid if weighed.grams else None


def whole_grams(line: ReadLine, shelf: Shelf) -> Fraction | None:
    weighed = understood(line.written, shelf=shelf, agree=line.agree)[0]
    return weighed.grams.mid if weighed.grams else None


def in_order(mentions: Iterable[Mention]) -> list[Mention]:
    return sorted(mentions, key=lambda each: each.start)
