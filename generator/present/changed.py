"""What changed between two moments, in a baker's words: for the terminal, the list of stale copies, a comparison."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from generator.history.changes import Change, Harm, compare, numbers
from generator.history.events import Facts
from generator.measure.number import Range
from generator.present.amounts import decimal, percent_words, weight_words
from generator.present.durations import minutes_words
from generator.present.notation import amount_words, thing_words, way_words
from generator.wording.speech import later, say
from generator.wording.vocabulary import said

ARROW = "→"
_WEIGHT = re.compile(r"[0-9][0-9 .,/½⅓⅔¼¾⅛⅜⅝⅞–-]*\s?(?:g|kg|oz|lbs?)\b")
_FIGURE = re.compile(r"(-?[0-9.]+(?:e-?[0-9]+)?)(?:-(-?[0-9.]+(?:e-?[0-9]+)?))? (min|F|C|g|ml|mm)( fan)?")
_WAY, _CHAPTER = re.compile("the method “(.*)”"), re.compile("“(.*)”")
_FIGURES = {
    "F": later("{number} °F"),
    "C": later("{number} °C"),
    "ml": later("{number} ml"),
    "mm": later("{number} mm"),
}
_PLACES = (
    *(later("the title"), later("the lead"), later("the introduction"), later("the method")),
    *(later("the chapters of a film"), later("the links"), later("the credits")),
    *(later("makes"), later("portions"), later("tin"), later("keeps"), later("finished weight")),
)
"""What facts call the places of the maker's words."""
_NEW = {
    "contains": later("now contains {thing}"),
    "may contain": later("may now contain {thing}"),
    "unknown": later("not known now: {thing}"),
    "kitchen": later("the kitchen now handles {thing} too"),
    "caution": later("a new caution: {thing}"),
}
_GONE = {
    "contains": later("{thing} is no longer named as contained"),
    "may contain": later("{thing} is no longer named as what it may contain"),
    "unknown": later("no longer unknown: {thing}"),
    "kitchen": later("{thing} is no longer named as handled in the kitchen"),
    "caution": later("the caution on {thing} no longer stands"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """One change in words, how much harm an unmended copy does, and what it is a change of (see `Change`)."""

    harm: Harm
    words: str
    kind: str = ""
    subject: str = ""


def told_changes(before: Facts, after: Facts, *, on_labels: bool = False) -> tuple[Told, ...]:
    """Every change between two sets of facts in words, the most harmful first, none told twice.

    That the list of ingredients reads otherwise goes without saying where a line changed, save `on_labels`.
    """
    repeated = _repeated((*_keys(before), *_keys(after)))
    changes = compare(before, after)
    if not on_labels and any(each.kind == "line" for each in changes):
        changes = tuple(each for each in changes if each.kind != "label")
    told = (
        Told(harm=each.harm, words=_words(each, repeated), kind=each.kind, subject=each.subject)
        for each in changes
    )
    return tuple(dict.fromkeys(told))


def effects(before: Facts, after: Facts) -> tuple[str, ...]:
    """What the changes do to the whole, where they do: `hydration 66.3 % → 62.2 %`, `dough 893 g → 923 g`."""
    then, now = _sums(before), _sums(after)
    pairs = ((left, right) for left, right in zip(then, now, strict=True) if left[1] and right[1])
    return tuple(f"{name} {old} {ARROW} {new}" for (name, old), (_, new) in pairs if old != new)


def _sums(facts: Facts) -> tuple[tuple[str, str], ...]:
    dough = facts.get("dough")
    sums = dough if isinstance(dough, Mapping) else {}
    percent = numbers([sums.get("hydration")] * 2)
    hydration = percent_words(Fraction(str(percent[0]))) if percent and percent[0] > 0 else ""
    name = say("dough") if sums.get("flour") else say("raw weight")
    finished = (say("finished weight"), _grams(facts.get("finished")))
    return (say("hydration"), hydration), (name, _grams(sums.get("grams"))), finished


def _words(change: Change, repeated: frozenset[str]) -> str:
    if change.kind in _NEW:
        words = say(
            (_NEW if change.after is not None else _GONE)[change.kind],
            thing=thing_words(change.kind, change.subject),
        )
        return words + way_words(change.way)
    if change.kind in ("line", "written", "beside", "share"):
        part, _, item = change.subject.partition("/")
        named = f"{item} ({part})" if item in repeated else item or part
        return _line_words(change, named)
    if change.kind in ("heat", "stage", "measure", "extra"):
        return _figure_words(change)
    return _other_words(change)


def _line_words(change: Change, named: str) -> str:
    if change.kind == "share":
        return say("{item} is divided otherwise among the steps", item=named) + way_words(change.way)
    if change.kind == "beside":
        return f"{named}: “{change.before or ''}” {ARROW} “{change.after or ''}”"
    old, new = _table(change.before), _table(change.after)
    if change.kind == "written":
        amounts = f"{_written(old)} {ARROW} {_written(new)}"
        return say("{item} is written otherwise: {amounts}", item=named, amounts=amounts)
    if change.before is None:
        return say("new: {what}", what=f"{_amount(new)} {named}".strip())
    if change.after is None:
        return say("{item} is left out ({amount})", item=named, amount=_amount(old) or say("no amount"))
    return f"{named} {_change_of_line(old, new)}"


def _change_of_line(old: Mapping[str, object], new: Mapping[str, object]) -> str:
    both = all(_WEIGHT.match(str(each.get("amount", ""))) for each in (old, new))
    then, now = (_grams(each.get("grams")) if both else _amount(each) for each in (old, new))
    told = [f"{then} {ARROW} {now}"] if then != now else []
    if then == now and old.get("amount") != new.get("amount"):
        told = [f"{_written(old)} {ARROW} {_written(new)}"]
    if old.get("optional") != new.get("optional"):
        told.append(say("is now optional") if new.get("optional") else say("is no longer optional"))
    if old.get("or") != new.get("or"):
        told.append(say("has other alternatives"))
    return ", ".join(told) or say("changes by less than a scale shows")


def _amount(line: Mapping[str, object]) -> str:
    """`430 g`, `1 1/2 tsp (9 g)`, `to taste`."""
    typed, grams = str(line.get("amount") or ""), _grams(line.get("grams"))
    if _WEIGHT.match(typed) and grams:
        return grams
    written = amount_words(typed)
    return f"{written} ({grams})" if written and grams else written or grams


def _written(line: Mapping[str, object]) -> str:
    return amount_words(str(line.get("amount", "")))


def _figure_words(change: Change) -> str:
    old, new = (_figure(each) for each in (change.before, change.after))
    what = {"measure": say("a measure in a step"), "other": say("a temperature")}.get(
        change.subject, say(change.subject)
    )
    if change.kind == "extra":
        what = say("{item} as needed", item=change.subject)
    where = way_words(change.way)
    if change.before is None:
        return say("new: {what}", what=f"{what} {new}{where}")
    return (
        say("{what} no longer stands", what=f"{what} {old}") + where
        if change.after is None
        else f"{what} {old} {ARROW} {new}{where}"
    )


def _figure(value: object) -> str:
    """`28–32 min`, `1 h 30 min`, `350 °F`, `gas mark 4`: a value of the facts as it is told."""
    text = value if isinstance(value, str) else ""
    found = _FIGURE.fullmatch(text)
    if found is None:
        return re.sub("^gas (.*)", lambda found: say("gas mark {number}", number=found[1]), text)
    try:
        low = Fraction(found[1])
        high = Fraction(found[2]) if found[2] else low
        span = Range(low, high)
    except ValueError:
        return text
    if found[3] == "min":
        return minutes_words(span)
    if found[3] == "g":
        return weight_words(span)
    low_words, high_words = (decimal(abs(each), places=1) for each in (low, high))
    signs = ("−" if low < 0 else "", "−" if high < 0 else "")
    ends = (signs[0] + low_words, signs[1] + high_words)
    words = say(_FIGURES[found[3]], number=ends[0] if low == high else "–".join(ends))
    return say("{degrees} fan", degrees=words) if found[4] else words


def _other_words(change: Change) -> str:
    if change.kind == "own caution":
        return say("a caution in the method has changed")
    if change.kind == "label":
        return say("the list of ingredients on the label reads otherwise")
    if change.kind == "words":
        return say("other words: {subject}", subject=_place(change.subject))
    old, new = change.before, change.after
    if change.kind == "finished":
        old, new = _grams(old) or say("not known"), _grams(new) or say("not known")
    named = say("finished weight" if change.kind == "finished" else change.kind)
    return f"{named} {old or say('not said')} {ARROW} {new or say('not said')}"


def _place(subject: str) -> str:
    """A place of the maker's words: one of ours, the steps of one way, or a chapter by its own name."""
    way, chapter = _WAY.fullmatch(subject), _CHAPTER.fullmatch(subject)
    if way is not None:
        return say("the method “{way}”", way=said(way[1]))
    return say("“{chapter}”", chapter=said(chapter[1])) if chapter is not None else say(subject)


def _grams(value: object) -> str:
    ends = numbers(value)
    if ends is None or ends[0] < 0:
        return ""
    return weight_words(Range(Fraction(str(ends[0])), Fraction(str(ends[1]))))


def _keys(facts: Facts) -> tuple[str, ...]:
    return tuple(str(each) for each in _table(facts.get("lines")))


def _repeated(keys: Iterable[str]) -> frozenset[str]:
    """Items that stand in more than one part, so that the part has to be named."""
    items = [key.partition("/")[2] for key in dict.fromkeys(keys)]
    return frozenset(item for item in items if items.count(item) > 1)


def _table(value: object) -> Mapping[str, object]:
    return value if isinstance(value, Mapping) else {}
