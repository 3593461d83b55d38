"""Lists with amounts for several sizes of one bake: one size is taken for every line, and asked about once.

Several amounts of one kind of measure beside one food, in the same ratio on most lines, are sizes, whatever parts
them: columns, slashes, brackets. A second way to say the same amount (115 g, 4 oz) has a ratio of about one.
"""

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from generator.importer.line.measures import Stretch, stretches
from generator.importer.model import Doubt, SourceLine
from generator.importer.places.headings import opened
from generator.importer.places.worth import WHOLE, Worth, is_sentence

_LEAST, _MOSTLY = 3, Fraction(3, 5)
_SAME, _NEAR = Fraction(6, 5), Fraction(1, 20)
"""Less than this apart, two amounts are one said twice; so far a ratio may be from that of the others."""
_MOST_LINES, _LONGEST = 1_500, 200
_CELL = re.compile(r"\s*\|\s*|\t+| {2,}")
_LABELS = re.compile(r"\s*\|\s*|\t+| {2,}|\s*/\s*|\s*;\s*|\s+or\s+|,\s+")
_PARTING = re.compile(r"[\s/|;,·•:=~–—()\[\]-]*(?:(?:[^\W\d_]+[\s:]*){1,3}[\s/|;,·•:=~–—()\[\]-]*)?")
_SIGNS = " \t/|;,·•=~–—-"
_SIZE = re.compile(r"\s+(?:(?:extra[\s-])?large|medium|small|heaped|level|scant|packed)\b", re.I)
_BRACKET = re.compile(r"\s*[(\[][^()\[\]]*[)\]]")
_INSIDE = re.compile(r"[(\[]([^()\[\]]+)[)\]]\W*$")
_THE_RECIPE = re.compile(
    r"\b(?:single|once|regular|full|whole|standard|original|normal|usual|basic|recipe|1\s?[x×]|[x×]\s?1)(?!\w)",
    re.I,
)
_MAKES = re.compile(r"\b(?:makes?|serves?|yields?|servings|portions|gives)\b", re.I)
_WORD = re.compile(r"[^\W\d_]{3,}")
_TIME = re.compile(r"\d[\s-]?(?:h|hrs?|hours?|min|mins|minutes?|days?|°|degrees?)\b", re.I)
_PAIR = 2
_HINTS = frozenset({"", "item", "cell", "heading", "ingredient"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Sized:
    """`notes` has for the number of a line what the other sizes say of it."""

    lines: tuple[SourceLine, ...]
    notes: dict[int, str]
    doubts: tuple[Doubt, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    """A line with a measure for each size: `groups` has one stretch for each size and kind of measure."""

    index: int
    groups: tuple[tuple[Stretch, ...], ...]

    @property
    def ratios(self) -> tuple[Fraction, ...]:
        return tuple(each.amount / self.groups[0][0].amount for each in self.groups[0][1:])


def one_size(lines: tuple[SourceLine, ...], worth: Worth) -> Sized:
    """The lines with the amounts of one size, where they have those of several."""
    none = Sized(lines=lines, notes={})
    found = {each.index: each for each in _rows(lines, worth)}
    usual = _usual(found.values())
    if usual is None:
        return none
    many = len(usual) + 1
    rows = {index: each for index, each in found.items() if _goes_with(each, usual)}
    rows = _from_first_food(lines, rows, worth)
    if len(rows) < _LEAST:
        return none
    rows |= _by_windows(lines, rows, usual, worth)
    head = _head(lines, min(rows), many)
    labels = head[1] if head else ()
    taken = _taken(lines, rows, labels)
    out = list(lines)
    notes: dict[int, str] = {}
    doubts: list[Doubt] = []
    for index, row in rows.items():
        kept, others = _without_others(lines[index].text, row, taken, worth)
        if kept:
            out[index] = replace(lines[index], text=kept)
            notes[lines[index].number] = _noted(others, labels, taken)
        else:
            doubts.append(_unclear(lines[index], "its amounts for the sizes could not be told apart"))
    if len(notes) < _LEAST:
        return none
    doubts += _alone(lines, rows, head, worth)
    if head and opened(lines[head[0]].text, heading=False) is None:
        out[head[0]] = replace(lines[head[0]], hint="joined")
    return Sized(lines=tuple(out), notes=notes, doubts=(_which(lines, rows, labels, taken, many), *doubts))


def _rows(lines: tuple[SourceLine, ...], worth: Worth) -> Iterator[_Row]:
    if len(lines) > _MOST_LINES:
        return
    for index, each in enumerate(lines):
        if not _may_be_row(each):
            continue
        if groups := _groups(each.text, stretches(each.text, worth.shelf)):
            yield _Row(index=index, groups=groups)


def _may_be_row(line: SourceLine) -> bool:
    """Steps have two amounts too (`1 hour 15 minutes`), and are no rows of a list."""
    text = line.text
    if line.hint not in _HINTS or len(text) > _LONGEST or sum(map(str.isnumeric, text)) < _PAIR:
        return False
    return not is_sentence(text) and not _TIME.search(text)


def _groups(text: str, found: tuple[Stretch, ...]) -> tuple[tuple[Stretch, ...], ...]:
    """The measures by their kinds, where every kind stands there equally often, more than once, and differs."""
    kinds: dict[str, list[Stretch]] = {}
    for each in found:
        if each.amount <= 0:
            return ()
        kinds.setdefault(each.kind, []).append(each)
    groups = tuple(map(tuple, kinds.values()))
    if not groups or len(groups[0]) < 2 or {len(each) for each in groups} != {len(groups[0])}:
        return ()
    for before, after in pairwise(found):
        if not _PARTING.fullmatch(text[before.end : after.start]):
            return ()
    return groups if all(map(_differ, groups)) else ()


def _differ(group: tuple[Stretch, ...]) -> bool:
    first = group[0].amount
    return any(not 1 / _SAME < each.amount / first < _SAME for each in group[1:])


def _usual(rows: Iterable[_Row]) -> tuple[Fraction, ...] | None:
    """The ratio of most lines, None where there is none."""
    every = list(rows)
    if len(every) < _LEAST:
        return None
    ratios = Counter(tuple(round(each, 1) for each in row.ratios) for row in every)
    best, _ = ratios.most_common(1)[0]
    near = [row for row in every if _close(row.ratios, best)]
    return best if len(near) >= _LEAST and len(near) >= len(every) * _MOSTLY else None


def _close(one: tuple[Fraction, ...], other: tuple[Fraction, ...]) -> bool:
    return len(one) == len(other) and all(
        abs(a / b - 1) <= _NEAR for a, b in zip(one, other, strict=True) if b
    )


def _goes_with(row: _Row, usual: tuple[Fraction, ...]) -> bool:
    """Rounded eggs have another ratio, but grow and shrink as the others do."""
    return len(row.ratios) == len(usual) and all(
        (a >= 1) == (b >= 1) for a, b in zip(row.ratios, usual, strict=True)
    )


def _from_first_food(lines: tuple[SourceLine, ...], rows: dict[int, _Row], worth: Worth) -> dict[int, _Row]:
    """The rows without those over the list, such as `6 people | 12 people`."""
    first = next(
        (
            at
            for at, row in rows.items()
            if worth.of(_without_others(lines[at].text, row, 0, worth)[0]) >= WHOLE
        ),
        0,
    )
    return {at: row for at, row in rows.items() if at >= first}


def _by_windows(
    lines: tuple[SourceLine, ...], rows: dict[int, _Row], usual: tuple[Fraction, ...], worth: Worth
) -> dict[int, _Row]:
    """Rows with another measure besides (`plus 10 g for the tin`): their measures that are in the usual ratio."""
    more: dict[int, _Row] = {}
    many = len(usual) + 1
    for index in range(min(rows), max(rows) + 3):
        if index in rows or index >= len(lines) or not _may_be_row(lines[index]):
            continue
        text = lines[index].text
        found = stretches(text, worth.shelf)
        windows = [
            _Row(index=index, groups=groups)
            for at in range(len(found) - many + 1)
            if (groups := _groups(text, found[at : at + many])) and len(groups) == 1
        ]
        close = [each for each in windows if _close(each.ratios, usual)]
        if len(close) == 1:
            more[index] = close[0]
    return more


def _head(lines: tuple[SourceLine, ...], first: int, many: int) -> tuple[int, tuple[str, ...]] | None:
    """The line over the amounts that names the sizes, and their names."""
    for index in [at for at in range(first - 1, -1, -1) if lines[at].text.strip()][:4]:
        text = lines[index].text.strip().strip("|").strip()
        cells = [each.strip() for each in _CELL.split(text) if each.strip()]
        if len(cells) not in (many, many + 1):
            inside = _INSIDE.search(text)
            named = inside[1] if inside else text.rpartition(":")[2]
            cells = [each.strip() for each in _LABELS.split(named) if each.strip()]
        short = all(len(each) <= 30 and any(map(str.isalnum, each)) for each in cells)
        if len(cells) in (many, many + 1) and short:
            return index, tuple(cells[-many:])
    return None


def _taken(lines: tuple[SourceLine, ...], rows: dict[int, _Row], labels: tuple[str, ...]) -> int:
    """The size whose name says that it is the recipe, or that the text speaks of alone; else the first."""
    if not labels:
        return 0
    marked = [at for at, each in enumerate(labels) if _THE_RECIPE.search(each)]
    if len(marked) == 1:
        return marked[0]
    others = [each.text for at, each in enumerate(lines) if at not in rows and at > min(rows)]
    facts = [each.text for at, each in enumerate(lines) if at not in rows and _MAKES.search(each.text)]
    words = [set(map(str.casefold, _WORD.findall(each))) for each in labels]
    common = set.intersection(*words)
    for texts in (facts, others):
        told = " ".join(texts).casefold()
        spoken = [
            at
            for at, each in enumerate(words)
            if any(re.search(rf"\b{one}\b", told) for one in each - common)
        ]
        numbers = set(re.findall(r"\d+", told)) if texts is facts else set()
        counted = [at for at, each in enumerate(labels) if set(re.findall(r"\d+", each)) & numbers]
        for some in (spoken, counted):
            if len(some) == 1:
                return some[0]
    return 0


def _without_others(text: str, row: _Row, taken: int, worth: Worth) -> tuple[str, list[str]]:
    """The line without the amounts of the other sizes, and those; "" where it reads as nothing then."""
    kept = [group[taken] for group in row.groups]
    gone = sorted(
        (each for group in row.groups for at, each in enumerate(group) if at != taken),
        key=lambda one: -one.start,
    )
    others = [text[each.start : _with_size(text, each, kept)] for each in reversed(gone)]
    for way in (_in_cells, _cut_out):
        told = way(text, kept, gone)
        if told and worth.of(told) >= min(WHOLE, max(worth.of(text), 1)):
            return told, others
    return "", others


def _with_size(text: str, each: Stretch, kept: list[Stretch]) -> int:
    """The end of an amount with the word of a size behind it, where the amount that is kept has the same."""
    own = _SIZE.match(text, each.end)
    same = [_SIZE.match(text, one.end) for one in kept if one.kind == each.kind]
    return own.end() if own and any(one and one.group() == own.group() for one in same) else each.end


def _cut_out(text: str, kept: list[Stretch], gone: list[Stretch]) -> str:
    """The text without some of its measures and the signs that parted them from the others."""
    for each in gone:
        end = _with_size(text, each, kept)
        bracket = next(
            (
                one
                for one in _BRACKET.finditer(text)
                if one.start() < each.start < one.end()
                and not any(one.start() < k.start < one.end() for k in kept)
            ),
            None,
        )
        if bracket:
            text = text[: bracket.start()] + text[bracket.end() :]
            kept = [_moved(one, bracket.start(), bracket.start() - bracket.end()) for one in kept]
            continue
        head, tail = text[: each.start], text[end:]
        behind = any(one.start > each.start for one in kept)
        if behind:
            tail = tail.lstrip(_SIGNS)
        else:
            head = head.rstrip(_SIGNS)
        gap = "\t" if "\t" in text or "|" in text or "  " in text else " "
        joined = f"{head}{'' if behind or not tail else gap if tail[:1].isalnum() else ''}{tail}"
        kept = [_moved(one, each.start, len(joined) - len(text)) for one in kept]
        text = joined
    return re.sub(r" {2,}", "\t", text.strip().rstrip(_SIGNS))


def _moved(each: Stretch, start: int, by: int) -> Stretch:
    return replace(each, start=each.start + by, end=each.end + by) if each.start > start else each


def _in_cells(text: str, kept: list[Stretch], gone: list[Stretch]) -> str:
    """`200 g flour / 400 g flour`: the pieces say the same but for their amounts."""
    for sign in ("|", "\t", " / ", ";", " – ", " - "):
        pieces = text.split(sign)
        if len(pieces) != len(gone) // len(kept) + 1:
            continue
        names = {re.sub(r"^\W*[\d¼½¾⅓⅔⅛\s.,/-]+", "", each).strip().casefold() for each in pieces}
        bare = {" ".join(each.split()[-1:]) for each in names}
        at = next((n for n in range(len(pieces)) if len(sign.join(pieces[: n + 1])) > kept[0].start), 0)
        if len(bare) == 1 and "" not in bare:
            return pieces[at].strip()
    return ""


def _noted(others: list[str], labels: tuple[str, ...], taken: int) -> str:
    names = [each for at, each in enumerate(labels) if at != taken]
    if len(names) == len(others):
        return "; ".join(f"{name}: {other}" for name, other in zip(names, others, strict=True))
    return f"other size: {' / '.join(others)}"


def _which(
    lines: tuple[SourceLine, ...], rows: dict[int, _Row], labels: tuple[str, ...], taken: int, many: int
) -> Doubt:
    first = lines[min(rows)]
    named = " and ".join(f"“{each}”" for each in labels) if labels else f"{many} amounts"
    size = f"“{labels[taken]}”" if labels else ("the first" if taken == 0 else f"number {taken + 1}")
    return Doubt(
        code="I014",
        message=f"{named} stand beside each food, and {size} is taken for all {len(rows)} lines",
        hint="If another size is the recipe, put its amounts, which are in the notes of the lines, in their places.",
        line=first.number,
    )


def _alone(
    lines: tuple[SourceLine, ...],
    rows: dict[int, _Row],
    head: tuple[int, tuple[str, ...]] | None,
    worth: Worth,
) -> Iterator[Doubt]:
    """Lines among the others that have one amount alone: only one of the sizes has them, or all alike."""
    for index in range(min(rows), max(rows) + 2):
        if index in rows or index >= len(lines) or (head and index == head[0]):
            continue
        if is_sentence(lines[index].text):
            continue
        found = stretches(lines[index].text, worth.shelf)
        if len(found) == 1 and worth.of(lines[index].text) >= WHOLE:
            yield _unclear(lines[index], "it has one amount, and the lines around it one for each size")
        elif len({each.kind for each in found}) < len(found):
            yield _unclear(lines[index], "its amounts for the sizes could not be told apart")


def _unclear(line: SourceLine, why: str) -> Doubt:
    return Doubt(
        code="I001",
        message=f"“{' '.join(line.text.split())}”: {why}",
        hint="Write the amount of the size that is the recipe; delete the line if that size has none.",
        line=line.number,
    )
