"""Puts references into the steps of a method: which words become braces, and what no step names.

A line of the formula may be used up once in each way. Where the prose does not say how, its words stay plain
words, and the line is told of at the end of the method instead: nothing is guessed and nothing is lost.
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from generator.catalogue.names import fold, number_forms
from generator.formula.shelf import Shelf
from generator.importer.markdown_text import escaped
from generator.importer.method.mentions import Mention, find_mentions, names_of, whole_grams
from generator.importer.method.prose import Found, find_measures
from generator.importer.method.steps import Way
from generator.importer.model import Doubt, ReadLine

_SHARE = {
    "half": Fraction(1, 2),
    "1/3": Fraction(1, 3),
    "2/3": Fraction(2, 3),
    "1/4": Fraction(1, 4),
    "3/4": Fraction(3, 4),
}
_ENOUGH = Fraction(1, 200)
_ALL_OF = re.compile(
    r"\ball (?:of )?(?:the |your )?(?P<part>[\w -]*?)\s?ingredients\b|\beverything(?: for the (?P<other>\w+))?\b",
    re.I,
)
_STANDS_ALONE = re.compile(
    r"(?:^|(?<=[.!?]\s))(?P<verb>Mix|Knead|Rise|Rest|Chill|Freeze|Cool|Bake|Cook|Work)\s(?P<ref>\{(?P<kind>\w+)\s[^{}]+\})\.?(?=\s|$)"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Referred:
    """`texts` by way and block; `left` for each way the references of lines that its steps do not name."""

    texts: Mapping[tuple[int, int], str]
    left: Mapping[int, tuple[str, ...]]
    doubts: Mapping[tuple[int, int], tuple[Doubt, ...]]


@dataclass(slots=True)
class _Work:
    lines: tuple[ReadLine, ...]
    shelf: Shelf
    calls: dict[int, str]
    spots: dict[tuple[int, int], list[Found]] = field(default_factory=dict)
    doubts: dict[tuple[int, int], list[Doubt]] = field(default_factory=dict)
    left: dict[int, list[str]] = field(default_factory=dict)

    def put(self, at: tuple[int, int], mention: Mention, text: str) -> None:
        self.spots.setdefault(at, []).append(
            Found(start=mention.start, end=mention.end, text=text, kind="item")
        )

    def ask(self, at: tuple[int, int], line: int, message: str, hint: str) -> None:
        self.doubts.setdefault(at, []).append(Doubt(code="I020", message=message, hint=hint, line=line))


Spotted = list[tuple[tuple[int, int], int, Mention]]


def refer(
    ways: tuple[Way, ...], lines: tuple[ReadLine, ...], shelf: Shelf, *, plainly: bool = False
) -> Referred:
    """The steps with references. `plainly` puts none into the prose: every line is told of at the end."""
    work = _Work(lines=lines, shelf=shelf, calls=_calls(lines))
    for index, way in enumerate(ways):
        for number, block in enumerate(way.blocks):
            found = find_measures(block.text)
            work.spots[index, number] = [each for each in found if each.kind != "ask"]
            for each in (each for each in found if each.question):
                hint = "Write it in braces with its kind, such as “{bake 20 min}” or “{oven 350 F}”."
                work.ask((index, number), block.sources[0], each.question, hint)
    spotted = {} if plainly else _spotted(ways, work)
    _settle_all(ways, spotted, work)
    texts = {
        (index, number): _woven(block.text, work.spots[index, number])
        for index, way in enumerate(ways)
        for number, block in enumerate(way.blocks)
    }
    left = {index: tuple(each) for index, each in work.left.items()}
    return Referred(texts=texts, left=left, doubts={at: tuple(each) for at, each in work.doubts.items()})


def _calls(lines: tuple[ReadLine, ...]) -> dict[int, str]:
    """The name by which a reference picks each line: its item, with its part where the item stands twice."""
    calls: dict[int, str] = {}
    items = [_one_of(line) for line in lines]
    crowded = _crowded(lines)
    for key, line in enumerate(lines):
        if not line.known or line.part in crowded:
            continue
        twins = [other for other, item in enumerate(items) if item == items[key] and lines[other].known]
        name = line.written.item.lower() if line.written.item[:1].isupper() else line.written.item
        if len(twins) == 1:
            calls[key] = name
        elif sum(lines[other].part == line.part for other in twins) == 1 and line.part:
            calls[key] = f"{line.part}/{name}"
    return calls


def _one_of(line: ReadLine) -> str:
    """The item as one name, whether it stands there in the singular or the plural."""
    return min(number_forms(fold(line.written.item)), key=lambda form: (len(form), form))


def _crowded(lines: tuple[ReadLine, ...]) -> frozenset[str]:
    """Parts in which an item stands twice: no name picks one of the two, so the part is told of as a whole."""
    pairs = [(line.part, _one_of(line)) for line in lines if line.known]
    return frozenset(part for part, item in pairs if pairs.count((part, item)) > 1)


def _spotted(ways: tuple[Way, ...], work: _Work) -> dict[int, Spotted]:
    """The mentions of each line, in the order of the method."""
    names = names_of(work.lines, work.shelf)
    found: dict[int, Spotted] = {}
    used: set[int] = set()
    for index, way in enumerate(ways):
        numbers = iter(range(len(way.blocks)))
        for section in way.sections:
            for block in section.blocks:
                at = (index, next(numbers))
                if block.kind == "caution":
                    continue
                for mention in find_mentions(block.text, names, work.lines, work.shelf):
                    if any(mention.start < each.end and each.start < mention.end for each in work.spots[at]):
                        continue
                    key = _which(mention, section.title, block.text, used, work)
                    if key is not None:
                        used.add(key)
                        found.setdefault(key, []).append((at, block.sources[0], mention))
    return found


def _which(mention: Mention, title: str, text: str, used: set[int], work: _Work) -> int | None:
    """The line that a name means where several have it: the one of the part that section or step speaks of."""
    keys = [key for key in mention.keys if key in work.calls]
    if len(keys) < 2:
        return keys[0] if keys else None
    before = set(fold(text[max(0, mention.start - 30) : mention.start]).split()[-2:])
    cut = [key for key in keys if set(fold(work.lines[key].written.preparation).split()) & before]
    if len(cut) == 1:
        return cut[0]
    said = f"{fold(title)} {fold(text)}"
    by_part = [
        key
        for key in keys
        if work.lines[key].part and re.search(rf"\b{re.escape(fold(work.lines[key].part))}\b", said)
    ]
    by_title = [key for key in by_part if fold(work.lines[key].part) in fold(title)]
    for some in (by_title, by_part):
        if len(some) == 1:
            return some[0]
    if len({fold(work.lines[key].written.item) for key in keys}) > 1:
        return None
    return next((key for key in keys if key not in used), None)


def _settle_all(ways: tuple[Way, ...], spotted: dict[int, Spotted], work: _Work) -> None:
    named = [index for index, way in enumerate(ways) if way.name]
    common = next((index for index, way in enumerate(ways) if not way.name), None)
    for key, line in enumerate(work.lines):
        if not line.known:
            continue
        mentions = spotted.get(key, [])
        in_named = {at[0] for at, _, _ in mentions if at[0] in named}
        if named and (in_named or common is None):
            for index in named:
                _settle(key, [each for each in mentions if each[0][0] == index], index, work)
        elif ways:
            index = common if common is not None else 0
            _settle(key, [each for each in mentions if each[0][0] == index], index, work)


def _settle(key: int, mentions: Spotted, way: int, work: _Work) -> None:
    """Writes the references of one line in one way, and tells of what is left of it."""
    call = work.calls.get(key)
    line = work.lines[key]
    if call is None:
        work.left.setdefault(way, []).append(f"\x00{line.part}")
        return
    whole = whole_grams(line, work.shelf)
    taken, done = Fraction(0), False
    shares = [_share_of(mention, line, whole) for _, _, mention in mentions]
    first_whole = next((n for n, each in enumerate(shares) if each == 1), None)
    first_part = next((n for n, each in enumerate(shares) if each is not None and 0 < each < 1), None)
    parted = first_part is not None and (first_whole is None or first_part < first_whole)
    for (at, number, mention), share in zip(mentions, shares, strict=True):
        if done or share is None:
            if mention.measure:
                _beyond(at, number, mention, call, done, work)
            continue
        if not parted:
            if share == 1 or mention.how == "rest":
                work.put(at, mention, f"{{{call}}}")
                taken, done = Fraction(1), True
            continue
        if share == 1 or mention.how == "rest":
            work.put(at, mention, f"{{{call}: rest}}")
            taken, done = Fraction(1), True
        elif taken + share <= 1 + _ENOUGH:
            work.put(at, mention, f"{{{call}: {mention.how or mention.measure}}}")
            taken += share
    if not done and abs(taken - 1) > _ENOUGH and not line.optional:
        work.left.setdefault(way, []).append(f"{{{call}: rest}}" if taken else f"{{{call}}}")


def _share_of(mention: Mention, line: ReadLine, whole: Fraction | None) -> Fraction | None:
    """1 for the whole or the rest, a share below 1, None for an amount that is no part of the line."""
    if mention.how in ("whole", "rest"):
        return Fraction(1)
    if mention.how in _SHARE:
        return _SHARE[mention.how]
    if any(each.text.strip() == mention.measure for each in line.written.measures):
        return Fraction(1)
    if mention.grams is None or not whole:
        return None
    ratio = mention.grams / whole
    # What was printed is rounded, by up to half a gram in three.
    near = Fraction(17, 100) if whole < 10 else Fraction(4, 100)
    if abs(ratio - 1) <= near:
        return Fraction(1)
    return ratio if ratio < 1 else None


def _beyond(at: tuple[int, int], number: int, mention: Mention, call: str, done: bool, work: _Work) -> None:
    """An amount of something that is used up already: more than the formula has."""
    if mention.grams is not None and done:
        work.put(at, mention, f"{{{mention.measure} of {call.rpartition('/')[2]}}}")
        message = f"“{mention.measure} {mention.name}” is taken as more than the formula has"
        work.ask(at, number, message, f"Write “{{{call}: {mention.measure}}}” if it is a share of it.")
    else:
        message = f"“{mention.measure} {mention.name}” does not fit the amount in the list"
        work.ask(at, number, message, "Mend the amount in the list or in the step.")


def _woven(text: str, spots: list[Found]) -> str:
    """The step with its references in place and everything else safe from being read as markup."""
    pieces, at = [], 0
    for spot in sorted(spots, key=lambda each: each.start):
        if spot.start < at or not spot.text:
            continue
        pieces += [escaped(text[at : spot.start], opening=at == 0), spot.text]
        at = spot.end
    pieces.append(escaped(text[at:], opening=at == 0))
    return _alone("".join(pieces))


def _alone(text: str) -> str:
    """`Mix {mix 5 min}.` is the stage itself, as our own pages print it."""
    return _STANDS_ALONE.sub(lambda f: f["ref"] if f["verb"].lower() == f["kind"] else f.group(), text)
