"""The facts of a recipe that a published copy carries, as plain values: exact, never rounded, never worded.

The ledger keeps them beside each revision and each copy, so that years later it can be said what changed since
(`history.changes` compares, `present.changed` words it). Nothing here depends on the publication day.
"""

import hashlib
from collections.abc import Iterator, Mapping
from fractions import Fraction

from generator.declaration.lines import formula_allergens
from generator.formula.model import Block, Formula, Heat, Line, Measure, Timed, Use, WholePart, Written
from generator.measure.number import Range
from generator.present.cautions import cautions_of
from generator.present.data import ends, ends_or_none, number
from generator.present.recipe import Setting

Entry = list[str]
ANY = "any"
"""Stands beside the regions for what the bake carries whatever a region's law names."""


def facts_of(formula: Formula, setting: Setting) -> Mapping[str, object]:
    """All facts of one recipe; `json` writes and reads them back unchanged.

    `lines` by "part/item"; `method` in order as [way, what, value], such as ["by hand", "bake", "28-32 min"];
    `words` are hashes of the prose, by where it stands, amounts in braces left out.
    """
    totals, about = formula.totals, formula.about
    return {
        "lines": {key: _line(line) for key, line in _keyed(formula)},
        "dough": {
            "grams": ends(totals.dough_grams),
            "flour": number(totals.flour),
            "hydration": None if totals.hydration is None else number(totals.hydration),
        },
        "makes": about.makes,
        "portions": about.portions,
        "tin": about.tin,
        "keeps": about.keeps,
        "finished": ends_or_none(totals.finished_grams),
        "method": [
            [way.name, *entry]
            for way in formula.ways
            for section in way.sections
            for block in section.blocks
            for entry in _entries(block)
        ],
        **_declared(formula, setting),
        "cautions": [each.name for each in cautions_of(formula, book=setting.book)],
        "own cautions": [
            _hash(block.words.markdown) for block in _blocks(formula) if block.kind == "caution"
        ],
        "words": {place: _hash(text) for place, text in _prose(formula)},
    }


def line_key(line: Line) -> str:
    return f"{line.part}/{line.item}"


def _keyed(formula: Formula) -> Iterator[tuple[str, Line]]:
    """Every line with a key of its own: a second of one name in a part is "dough/water (2)"."""
    seen: dict[str, int] = {}
    for line in formula.lines:
        key = line_key(line)
        seen[key] = seen.get(key, 0) + 1
        yield (key if seen[key] == 1 else f"{key} ({seen[key]})"), line


def _line(line: Line) -> Mapping[str, object]:
    beside = (line.written.preparation, line.written.note, line.note)
    return {
        "grams": ends_or_none(line.grams),
        "amount": written_amount(line.written),
        "beside": "; ".join(each for each in beside if each),
        "optional": line.optional,
        "or": [each.written.text for each in line.alternatives],
    }


def written_amount(written: Written) -> str:
    """The amount as it stands in the maker's file: "430 g (3 1/3 cups)", "2 large", "to taste"."""
    first, *others = [each.text.strip() for each in written.measures] or [""]
    if not first:
        percent = f"{_span(written.percent)} %" if written.percent else ""
        return percent or written.words
    sized = f"{first} {written.size}".strip()
    return f"{sized} ({'; '.join(others)})" if others else sized


def _declared(formula: Formula, setting: Setting) -> Mapping[str, object]:
    declared, whole = setting.declarations[formula.name], formula_allergens(formula, book=setting.book)
    label = declared[setting.settings.region]
    return {
        "contains": {
            ANY: list(whole.allergens),
            **{at: list(each.contains) for at, each in declared.items()},
        },
        "may contain": {
            ANY: list(whole.may_contain),
            **{at: list(each.may_contain) for at, each in declared.items()},
        },
        "unknown": {ANY: list(whole.unknown), **{at: list(each.unknown) for at, each in declared.items()}},
        "kitchen": sorted(setting.settings.kitchen_handles),
        "label": _hash("".join(run.text for run in label.ingredients)),
    }


def _entries(block: Block) -> Iterator[Entry]:
    """What a step says in braces: stages, temperatures, measures, amounts outside the formula, and shares."""
    for mention in block.words.mentions:
        if isinstance(mention, Timed):
            yield [mention.kind, f"{_span(mention.duration.minutes)} min"]
        elif isinstance(mention, Heat):
            yield [mention.kind, _degrees(mention)]
        elif isinstance(mention, Measure):
            yield ["measure", _measure(mention)]
        elif isinstance(mention, Use):
            yield _use(mention)
        elif isinstance(mention, WholePart):
            yield from (_use(use) for use in mention.uses)


def _use(use: Use) -> Entry:
    if use.extra:
        return [f"extra {use.item}", _extra(use)]
    return [f"share {use.part}/{use.item}", use.share]


def _extra(use: Use) -> str:
    if use.grams is not None:
        return f"{_span(use.grams)} g"
    if use.millilitres is not None:
        return f"{_span(use.millilitres)} ml"
    return use.words or (_span(use.count) if use.count else "")


def _degrees(heat: Heat) -> str:
    stated = heat.temperature
    span = _span(Range(stated.low, stated.high))
    return (
        f"gas {span}" if stated.stated == "gas" else f"{span} {stated.stated}{' fan' if stated.fan else ''}"
    )


def _measure(measure: Measure) -> str:
    if measure.duration is not None:
        return f"{_span(measure.duration.minutes)} min"
    return f"{_span(measure.length.millimetres)} mm" if measure.length is not None else ""


def _span(amount: Range) -> str:
    """`28-32`, `2.5`: the figures of recipe.json, from low to high."""
    low, high = _plain(amount.low), _plain(amount.high)
    return low if low == high else f"{low}-{high}"


def _plain(value: Fraction) -> str:
    return str(number(value))


def _prose(formula: Formula) -> Iterator[tuple[str, str]]:
    """Every stretch of the maker's own words, and where it stands. A caution is a fact of its own."""
    about = formula.about
    yield "the title", about.title
    yield "the lead", about.lead
    yield "the introduction", formula.intro.markdown
    for way in formula.ways:
        name = f"the method “{way.name}”" if way.name else "the method"
        steps = (
            f"{section.title}\n{block.words.markdown}"
            for section in way.sections
            for block in section.blocks
            if block.kind != "caution"
        )
        yield name, "\n".join(steps)
    for each in formula.prose:
        yield f"“{each.title}”", each.markdown
    yield "the chapters of a film", "\n".join(_chapters(formula))
    yield "the links", "\n".join(f"{each.title} {each.url} {each.paid}" for each in about.links)
    yield "the credits", "\n".join(f"{each.what} {each.who} {each.url}" for each in about.credits)


def _chapters(formula: Formula) -> Iterator[str]:
    for video in formula.about.videos:
        yield video.url
        yield from (f"{each.stamp} {each.title}" for each in video.chapters)


def _blocks(formula: Formula) -> Iterator[Block]:
    return (block for way in formula.ways for section in way.sections for block in section.blocks)


def _hash(text: str) -> str:
    """Enough of a SHA-256 to tell two texts apart; line breaks and runs of spaces do not count."""
    return hashlib.sha256(" ".join(text.split()).encode()).hexdigest()[:16]
