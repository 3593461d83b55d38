"""Temperatures and times in the method: the reference in braces that is meant, and its new value."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from generator.amend.answer import Asked, Former, Refused, Worked
from generator.catalogue.lookup import fold
from generator.diagnostics.span import Span
from generator.formula.model import Formula, Heat, Measure, Mention, Timed
from generator.formula.references import KINDS
from generator.measure.duration import read_duration
from generator.measure.length import read_length
from generator.measure.temperature import read_temperature
from generator.measure.unit import Kind
from generator.source.edits import source_of
from generator.source.lines import Places

HEATS = ("oven", "core")
OTHERS = ("temperature", "time", "length")
"""Words for what stands in braces without a kind: `{240 F}`, `{5 min}`, `{23 cm}`."""
WORDS = (*HEATS, *OTHERS, *KINDS)
_LONGEST = 60
_INNER = re.compile(r"\{(\s*)(.*?)(\s*)\}", re.S)


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoken:
    """A reference of the method: its way, its kind, its value as written, and where that value stands."""

    way: str
    kind: str
    value: str
    span: Span


def is_mention(what: str) -> bool:
    """Whether this names a temperature or a time: `oven`, `rise`, or one of them with its way, `by hand/rise`."""
    return fold(what.rpartition("/")[2]) in WORDS


def correct_mention(formula: Formula, text: str, asked: Asked) -> Worked | Refused:
    """The references that change for a new temperature or time."""
    way, _, kind = asked.what.rpartition("/")
    kind = fold(kind)
    new = " ".join(asked.new.split())
    wrong = _wrong(kind, new)
    if wrong is not None:
        return wrong
    every = [each for each in spoken(formula, text) if each.kind == kind]
    if way:
        every = [each for each in every if fold(each.way) == fold(way)]
    fitting = [each for each in every if not asked.old or _same(kind, each.value, asked.old)]
    if asked.line is not None:
        fitting = [each for each in fitting if each.span.line == asked.line]
    if not fitting:
        return _none(formula, asked, kind, every)
    if len(fitting) > 1 and not asked.every:
        return _several(asked, kind, fitting)
    if any(_same(kind, each.value, new) for each in fitting):
        return Refused(message=f"{kind} is {fitting[0].value} already", hint="Nothing was changed.")
    return Worked(
        edits=tuple((each.span, new) for each in fitting),
        what=asked.what.strip(),
        old=fitting[0].value,
        new=new,
        former=(_former(kind, fitting[0].value),),
        shown=fitting[0].value,
    )


def spoken(formula: Formula, text: str) -> tuple[Spoken, ...]:
    """Every temperature and time of the method and of what stands before it, each place once."""
    found: dict[Span, Spoken] = {}
    for way, mention in _mentions(formula):
        if isinstance(mention, Timed | Heat | Measure):
            read = _read(way, mention, text)
            if read is not None:
                found.setdefault(read.span, read)
    return tuple(found[each] for each in sorted(found))


def _mentions(formula: Formula) -> Iterator[tuple[str, Mention]]:
    yield from (("", each) for each in formula.intro.mentions)
    for way in formula.ways:
        for section in way.sections:
            for block in section.blocks:
                yield from ((way.name, each) for each in block.words.mentions)


def _read(way: str, mention: Timed | Heat | Measure, text: str) -> Spoken | None:
    """The value as it stands between the braces, behind the kind."""
    inner = _INNER.fullmatch(source_of(mention.span, text))
    if inner is None:
        return None
    kind = _kind(mention)
    start = inner.end(1)
    if kind not in OTHERS:
        named = re.match(rf"{re.escape(kind)}\s+", inner[2], re.I)
        if named is None:
            return None
        start += named.end()
    value = inner[0][start : inner.end(2)]
    places = Places(formula_path(mention), text)
    first = places.index_of(mention.span.line, mention.span.column) + start
    line, column = places.line_and_column(first)
    end_line, end_column = places.line_and_column(first + len(value))
    span = Span(path=mention.span.path, line=line, column=column, end_line=end_line, end_column=end_column)
    return Spoken(way=way, kind=kind, value=" ".join(value.split()), span=span)


def formula_path(mention: Timed | Heat | Measure) -> str:
    return mention.span.path


def _kind(mention: Timed | Heat | Measure) -> str:
    if isinstance(mention, Timed):
        return mention.kind
    if isinstance(mention, Heat):
        return "temperature" if mention.kind == "other" else mention.kind
    return "time" if mention.duration is not None else "length"


def _value(kind: str, text: str) -> object:
    if kind in (*HEATS, "temperature"):
        return read_temperature(text)
    return read_length(text) if kind == "length" else read_duration(text)


def _same(kind: str, one: str, other: str) -> bool:
    value = _value(kind, one)
    return value is not None and value == _value(kind, other)


def _wrong(kind: str, new: str) -> Refused | None:
    fits = len(new) <= _LONGEST and new.isprintable() and not set("{}\\:") & set(new)
    if fits and _value(kind, new) is not None:
        return None
    examples = {"length": "23 cm"} | dict.fromkeys((*HEATS, "temperature"), "340 F")
    if fits and any(_value(other, new) is not None for other in ("oven", "rise", "length")):
        return Refused(
            message=f"“{new}” is another kind of value than {kind} has",
            hint=f"Type one such as “{examples.get(kind, '25 min')}”.",
        )
    what = "length" if kind == "length" else "temperature with its scale" if kind in examples else "time"
    return Refused(
        message=f"“{new[:_LONGEST]}” is no {what}", hint=f"Type one such as “{examples.get(kind, '25 min')}”."
    )


def _none(formula: Formula, asked: Asked, kind: str, every: list[Spoken]) -> Refused:
    if not every:
        return Refused(
            message=f"the method of {formula.name} has no “{asked.what}” in braces",
            hint="A temperature or a time outside braces is plain text: change it in the file.",
        )
    values = ", ".join(dict.fromkeys(f"“{each.value}” in line {each.span.line}" for each in every))
    meant = f"“{asked.old}”" if asked.old else f"line {asked.line}"
    return Refused(message=f"{kind} is nowhere {meant} in {formula.name}", hint=f"There is {values}.")


def _several(asked: Asked, kind: str, fitting: list[Spoken]) -> Refused:
    values = tuple(dict.fromkeys(each.value for each in fitting))
    lines = ", ".join(str(each.span.line) for each in fitting)
    if len(values) > 1:
        hint = (
            f"Say which: tinleaf correct {asked.recipe} {kind} “{values[0]}” “{' '.join(asked.new.split())}”."
        )
        listed = ", ".join(f"{each.value} in line {each.span.line}" for each in fitting)
        return Refused(message=f"{kind} stands there {len(fitting)} times: {listed}", hint=hint)
    ways = tuple(dict.fromkeys(each.way for each in fitting if each.way))
    beside = f", or the way as in “{ways[0]}/{kind}”" if len(ways) > 1 else ""
    return Refused(
        message=f"{kind} {values[0]} stands there {len(fitting)} times, in lines {lines}",
        hint=f"Say which with --line {fitting[0].span.line}{beside}, or change them all with --all.",
    )


def _former(kind: str, value: str) -> Former:
    duration = read_duration(value) if kind not in HEATS else None
    if duration is not None:
        return Former(kind=Kind.TIME, amount=duration.minutes)
    return Former(words=value)
