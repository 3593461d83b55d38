"""How well the corpus is read: lines exactly right, steps, times and temperatures found, nothing lost or hidden."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from random import Random

from generator.asked.incoming import arrive
from generator.catalogue.names import fold, same_name
from generator.diagnostics.diagnostic import has_errors
from generator.formula.model import Formula, Heat, Timed
from generator.importer.model import Brought, ReadLine
from tests.formula.kitchen import bake as understood
from tests.importer.corpus.bakes import BAKES
from tests.importer.corpus.hard_lines import HARD
from tests.importer.corpus.layouts import Layout, Text
from tests.importer.corpus.truth import Bake, Line
from tests.importer.kitchen import kitchen, stock

_STEP_MARK = re.compile(r"^\s*(?:step \w+|one|two|three|four|five|six|seven)[:.]")
_WORD = re.compile(r"[^\W\d_]{3,}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Score:
    """Counts of one text, or of many added up: each pair is how many of how many."""

    lines: tuple[int, int] = (0, 0)
    steps: tuple[int, int] = (0, 0)
    times: tuple[int, int] = (0, 0)
    heats: tuple[int, int] = (0, 0)
    accepted: tuple[int, int] = (0, 0)
    lost: int = 0
    hidden: int = 0
    wrong: tuple[str, ...] = ()

    def __add__(self, other: "Score") -> "Score":
        pairs = {
            name: _sum(getattr(self, name), getattr(other, name))
            for name in ("lines", "steps", "times", "heats", "accepted")
        }
        return Score(
            **pairs,
            lost=self.lost + other.lost,
            hidden=self.hidden + other.hidden,
            wrong=(*self.wrong, *other.wrong),
        )


def _sum(one: tuple[int, int], other: tuple[int, int]) -> tuple[int, int]:
    return one[0] + other[0], one[1] + other[1]


def texts_of(layouts: Mapping[str, Layout]) -> Iterable[tuple[str, Bake, Text]]:
    """Every bake in every layout, each with three hard lines of its own drawing, always the same ones."""
    for name, layout in layouts.items():
        for number, bake in enumerate(BAKES):
            random = Random(f"{name} {number}")
            whole = with_hard_lines(bake, random)
            yield f"{name} {number}", whole, layout(whole, random)


def with_hard_lines(bake: Bake, random: Random) -> Bake:
    """Hard lines whose item the bake does not have yet go to its first part."""
    there = [line.item for line in bake.lines]
    fresh = [line for line in HARD if not any(_alike(line.item, item) for item in there)]
    drawn: list[Line] = []
    for line in random.sample(fresh, len(fresh)):
        if len(drawn) < 3 and not any(_alike(line.item, other.item) for other in drawn):
            drawn.append(line)
    (name, lines), *others = bake.parts
    return replace(bake, parts=((name, (*lines, *drawn)), *others))


def _alike(one: str, other: str) -> bool:
    return fold(one).split()[-1].rstrip("s") == fold(other).split()[-1].rstrip("s")


def score(name: str, bake: Bake, text: Text) -> Score:
    arrival = arrive(text.name, text.data.encode(), kitchen())
    if len(arrival.recipes) != 1:
        return Score(
            lines=(0, len(bake.lines)), accepted=(0, 1), wrong=(f"{name}: {len(arrival.recipes)} recipes",)
        )
    (brought,) = arrival.recipes
    baked = understood(stock(), x=brought.text)
    good = not has_errors(baked.diagnostics)
    wrong = [] if good else [f"{name}: {next(each.message for each in brought.wrong)}"]
    right = 0
    hidden = 0
    for line, read in zip(bake.lines, _paired(bake.lines, brought.lines), strict=True):
        exact = read is not None and _is_exact(line, read)
        right += exact
        if not exact:
            wrong.append(f"{name}: {line.text or line.item} -> {read.text if read else None}")
        hidden += _is_hidden(line, read, brought)
    formula = baked.formulas.get("x")
    return Score(
        lines=(right, len(bake.lines)),
        steps=_steps(bake, brought),
        times=_times(bake, formula),
        heats=_heats(bake, formula),
        accepted=(int(good), 1),
        lost=len(lost_words(brought)),
        hidden=hidden,
        wrong=tuple(wrong),
    )


def _paired(lines: tuple[Line, ...], read: tuple[ReadLine, ...]) -> list[ReadLine | None]:
    """Each true line with the read line of its item, in order, each read line once."""
    left = list(read)
    out: list[ReadLine | None] = []
    for line in lines:
        found = next(
            (each for each in left if same_name(each.written.item, line.item) and _is_exact(line, each)), None
        )
        found = found or next((each for each in left if same_name(each.written.item, line.item)), None)
        out.append(found)
        if found:
            left.remove(found)
    return out


def _is_exact(line: Line, read: ReadLine) -> bool:
    measures = {
        (each.amount.low, each.amount.high, each.unit.name.replace(" ", "") if each.unit else "")
        for each in read.written.measures
    }
    wanted = {(low, high, unit) for low, high, unit in line.measures}
    if any(unit == "pinch" for _, _, unit in wanted):
        same = "pinch" in read.written.words
    else:
        same = {_near(each) for each in measures} == {_near(each) for each in wanted}
    return (
        same
        and same_name(read.written.item, line.item)
        and fold(read.written.preparation) == fold(line.preparation)
        and read.written.size == line.size
    )


def _near(one: tuple[Fraction, Fraction, str]) -> tuple[int, int, str]:
    return round(one[0] * 10_000), round(one[1] * 10_000), one[2]


def _is_hidden(line: Line, read: ReadLine | None, brought: Brought) -> bool:
    """Whether an allergen of a true line is neither on the line that was read nor asked about aloud.

    A line that was read as something else is asked about where it is set aside with its words.
    """
    if read is None:
        aside = [fold(each.text) for each in brought.lines if not each.known]
        return bool(line.allergens) and not any(fold(line.item) in each for each in aside)
    return bool(set(line.allergens) - set(read.allergens)) and not _is_asked(read, brought)


def unasked_wrong(bake: Bake, brought: Brought) -> list[str]:
    """Lines that were read as something else than they say, and about which nothing is asked."""
    return [
        f"{line.text or line.item} -> {read.text}"
        for line, read in zip(bake.lines, _paired(bake.lines, brought.lines), strict=True)
        if read is not None and not _is_exact(line, read) and not _is_asked(read, brought)
    ]


def _is_asked(read: ReadLine, brought: Brought) -> bool:
    return any(each.line == read.line for each in brought.doubts)


def _steps(bake: Bake, brought: Brought) -> tuple[int, int]:
    told = " ".join(_bare(each.value) for each in brought.source if each.role == "step")
    return sum(_bare(step) in told for step in bake.steps), len(bake.steps)


def _bare(text: str) -> str:
    return " ".join(re.findall(r"\w+", text.casefold()))


def _times(bake: Bake, formula: Formula | None) -> tuple[int, int]:
    left = [
        (each.kind, int(each.duration.minutes.low), int(each.duration.minutes.high))
        for each in _mentions(formula)
        if isinstance(each, Timed)
    ]
    return _recall(list(bake.times), left)


def _heats(bake: Bake, formula: Formula | None) -> tuple[int, int]:
    left = [
        (each.kind, int(each.temperature.low), each.temperature.stated)
        for each in _mentions(formula)
        if isinstance(each, Heat)
    ]
    return _recall(list(bake.heats), left)


def _recall(
    wanted: list[tuple[str, int, int]] | list[tuple[str, int, str]], left: Sequence[object]
) -> tuple[int, int]:
    rest = list(left)
    found = 0
    for each in wanted:
        if each in rest:
            rest.remove(each)
            found += 1
    return found, len(wanted)


def _mentions(formula: Formula | None) -> list[object]:
    if formula is None:
        return []
    return [
        mention
        for way in formula.ways
        for section in way.sections
        for block in section.blocks
        for mention in block.words.mentions
    ]


def lost_words(brought: Brought) -> list[str]:
    """Lines of the source of which a word stands nowhere in the file, save headings that only name a section."""
    there = set(_WORD.findall(fold(brought.text.replace("\\", ""))))
    lost = []
    for each in brought.source:
        if each.role in ("heading", "rule", "blank", "way", "left out"):
            continue
        told = _STEP_MARK.sub("", fold(each.line.text))
        words = {word for word in _WORD.findall(told) if word not in _REWORDED}
        if words - there and not all(_told(word, there) for word in words - there):
            lost.append(f"{each.role}: {each.line.text} ({', '.join(sorted(words - there))})")
    return lost


_REWORDED = frozenset(
    [
        "the",
        "ingredients",
        "inch",
        "inches",
        "hour",
        "hours",
        "minute",
        "minutes",
        "mins",
        "min",
        "hrs",
        "half",
        "gas",
        "mark",
        "fan",
        "for",
        "rest",
        "remaining",
        "step",
        "title",
        "makes",
        "yield",
        "keeps",
        "storage",
        "store",
        "affiliate",
        "link",
        "https",
        "http",
        "prise",
        "pincee",
        "pour",
        "cafe",
        "soupe",
        "zehen",
        "and",
        "optional",
        "recipe",
        "part",
        "quantity",
    ]
)
"""Words that a reference says in other words, or that name the key under which the rest of the line stands."""


def _told(word: str, there: set[str]) -> bool:
    """Whether a word stands there in its other number: 1 hour 30 minutes is 1 h 30 min."""
    return any(form in there for form in (word + "s", word.rstrip("s"), word[:-3]) if len(form) > 1)
