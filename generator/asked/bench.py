"""A recipe at the bench: its lines in the order of weighing and its timed stages, in the size that is baked today."""

from dataclasses import dataclass

from generator.formula.scale_factor import Refusal
from generator.formula.wish import Granted, Wish, grant
from generator.measure.number import read_number
from generator.present.offers import sizes_view
from generator.present.scaled import scaled_view
from generator.present.views import RecipeView, SectionView, WayView
from generator.publication.checked import CheckResult

MOST_PARTS = 16
"""The largest denominator of a size that is written as a fraction."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchLine:
    """One thing to weigh. `what` is what a record calls it; `more` are the measure beside the first and its notes."""

    part: str
    what: str
    item: str
    amount: str
    more: tuple[str, ...]
    optional: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchTimer:
    """A stage to ring for: its name, the words of its time, its seconds from and to.

    `way` says which of several ways, and which section where they count their steps anew.
    """

    way: str
    name: str
    words: str
    low: int
    high: int


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchView:
    """All strings are those that the page and the cards have; `scale` is "" for the recipe as written."""

    name: str
    title: str
    scale: str
    notes: tuple[str, ...]
    cautions: tuple[str, ...]
    unfinished: str
    lines: tuple[BenchLine, ...]
    timers: tuple[BenchTimer, ...]
    revision: int
    makes: str


def bench_view(result: CheckResult, name: str, *, size: str = "") -> BenchView | str:
    """The recipe at the bench. `size` is a number (“2”, “1/2”) or a tin; a sentence where that cannot be."""
    granted = _granted(result, name, size)
    if isinstance(granted, str):
        return granted
    view = scaled_view(granted, result.setting)
    return BenchView(
        name=name,
        title=view.title,
        scale=view.scale,
        notes=view.notes,
        cautions=view.cautions,
        unfinished=view.label.unfinished,
        lines=tuple(_lines(view)),
        timers=tuple(_timers(view)),
        revision=view.revision,
        makes=view.makes,
    )


def sizes_offered(result: CheckResult, name: str) -> tuple[tuple[str, str], ...]:
    """The usual sizes of a recipe with their names, the recipe as written first."""
    known = next((each.sizes for each in result.site.recipes if each.name == name), None)
    sizes = known or sizes_view(result.setting.book[name], result.setting, result.views[name])
    return tuple((each.id, each.title) for each in sizes.offers)


def size_text(result: CheckResult, name: str, size: str) -> tuple[str, str]:
    """How many times the recipe a size is, as a record says it, "" for the recipe as written; and why it is none.

    A tin's is told to a thousandth.
    """
    granted = _granted(result, name, size)
    if isinstance(granted, str):
        return "", granted
    factor = granted.factor
    if factor == 1:
        return "", ""
    exact = factor.denominator <= MOST_PARTS
    return (str(factor) if exact else f"{float(factor):.3f}".rstrip("0").rstrip(".")), ""


def _granted(result: CheckResult, name: str, size: str) -> Granted | str:
    plain = " ".join(size.split()).removesuffix("×").strip()
    read = read_number(plain) if plain else None
    wish = Wish(tin=plain)
    if not plain:
        read = read_number("1")
    if read is not None and (not plain or read[1] == len(plain)):
        if not read[0].is_exact or not 0 < read[0].low <= 100:
            return f"“{size}” is no size to bake: give a number from above 0 to 100, or a tin"
        wish = Wish(times=read[0].low)
    granted = grant(result.setting.book[name], wish, spoons=result.setting.spoons)
    if isinstance(granted, Refusal):
        return f"{granted.message}. {granted.hint}".strip()
    return granted


def _lines(view: RecipeView) -> list[BenchLine]:
    items = [line.item for part in view.parts for line in part.lines]
    return [
        BenchLine(
            part=part.title,
            what=f"{part.name}/{line.item}" if items.count(line.item) > 1 and part.name else line.item,
            item=line.item,
            amount=line.amount.first or line.amount.second or "to taste",
            more=tuple(
                words
                for words in (
                    line.amount.second if line.amount.first else "",
                    line.preparation,
                    line.note,
                    *(f"or {choice}" for choice in line.choices),
                )
                if words
            ),
            optional=line.optional,
        )
        for part in view.parts
        for line in part.lines
    ]


def _named(section: SectionView, way: WayView) -> str:
    """The section, where two steps of the way have the same number."""
    numbers = [block.number for each in way.sections for block in each.blocks if block.stages]
    return section.title if len(set(numbers)) < len(numbers) else ""


def _timers(view: RecipeView) -> list[BenchTimer]:
    ways: tuple[WayView, ...] = (*view.ways, *([view.common] if view.common else []))
    return [
        BenchTimer(
            way=", ".join(each for each in (way.title if way.name else "", _named(section, way)) if each),
            name=f"{stage.kind}, step {block.number}",
            words=stage.words,
            low=stage.seconds[0],
            high=stage.seconds[1],
        )
        for way in ways
        for section in way.sections
        for block in section.blocks
        for stage in block.stages
        if stage.seconds[1] > 0
    ]
