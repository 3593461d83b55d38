"""Compares the facts of a recipe at two moments: what changed, and how much harm an unmended copy can do.

Facts are plain values that came out of a file which a hand may have edited: whatever has not the form it should have
counts as not told, and nothing here ever fails on it.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from difflib import SequenceMatcher
from enum import IntEnum
from itertools import zip_longest

from generator.history.events import Facts

_ALIKE = 1e-9


class Harm(IntEnum):
    """What a reader of the old copy risks, the worst first."""

    ALLERGENS = 0
    CAUTIONS = 1
    AMOUNTS = 2
    WORDS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One difference. `kind` says of what, `subject` of which one, `way` in which way of doing it.

    `before` and `after` are values as they stand in the facts; None where there was or is none. Kinds are contains,
    may contain, unknown, kitchen, caution, own caution, line, written, beside, stage, heat, measure, extra, share,
    finished, makes, portions, tin, keeps, label, words.
    """

    harm: Harm
    kind: str
    subject: str
    before: object = None
    after: object = None
    way: str = ""


def compare(before: Facts, after: Facts) -> tuple[Change, ...]:
    """Every change, the most harmful first, else in the order of the recipe."""
    found = (
        *_allergens(before, after),
        *_cautions(before, after),
        *_lines(before, after),
        *_method(before, after),
        *_about(before, after),
        *_prose(before, after),
    )
    if any(each.kind == "line" for each in found):
        # Whatever goes in changes what comes out: that is an effect, told beside the changes.
        found = tuple(each for each in found if each.kind != "finished")
    return tuple(sorted(found, key=lambda each: each.harm))


def worst(changes: tuple[Change, ...]) -> Harm | None:
    return min((each.harm for each in changes), default=None)


def _allergens(before: Facts, after: Facts) -> Iterator[Change]:
    for kind in ("contains", "may contain", "unknown"):
        then, now = _table(before.get(kind)), _table(after.get(kind))
        for name, came, where in _moved(then, now):
            old, new = (None, name) if came else (name, None)
            yield Change(
                harm=Harm.ALLERGENS, kind=kind, subject=name, before=old, after=new, way=", ".join(where)
            )
    then_kept, now_kept = _texts(before.get("kitchen")), _texts(after.get("kitchen"))
    if then_kept is not None and now_kept is not None:
        yield from _came_and_went("kitchen", Harm.ALLERGENS, then_kept, now_kept)


def _moved(
    then: Mapping[str, object], now: Mapping[str, object]
) -> Iterator[tuple[str, bool, tuple[str, ...]]]:
    """Each name that came or went: in which regions, empty where it is so in all that both know."""
    regions = [each for each in now if each in then]
    moves: dict[tuple[str, bool], list[str]] = {}
    for region in regions:
        old, new = _texts(then[region]), _texts(now[region])
        if old is None or new is None:
            continue
        for name in (each for each in new if each not in old):
            moves.setdefault((name, True), []).append(region)
        for name in (each for each in old if each not in new):
            moves.setdefault((name, False), []).append(region)
    for (name, came), where in sorted(moves.items(), key=lambda each: not each[0][1]):
        everywhere = "any" in where or len(where) == len(regions)
        yield name, came, () if everywhere else tuple(where)


def _cautions(before: Facts, after: Facts) -> Iterator[Change]:
    old, new = _texts(before.get("cautions")), _texts(after.get("cautions"))
    if old is not None and new is not None:
        yield from _came_and_went("caution", Harm.CAUTIONS, old, new)
    own, own_now = _texts(before.get("own cautions")), _texts(after.get("own cautions"))
    if own is not None and own_now is not None and own != own_now:
        yield Change(harm=Harm.CAUTIONS, kind="own caution", subject="", before=len(own), after=len(own_now))


def _came_and_went(kind: str, harm: Harm, old: tuple[str, ...], new: tuple[str, ...]) -> Iterator[Change]:
    for each in new:
        if each not in old:
            yield Change(harm=harm, kind=kind, subject=each, after=each)
    for each in old:
        if each not in new:
            yield Change(harm=harm, kind=kind, subject=each, before=each)


def _lines(before: Facts, after: Facts) -> Iterator[Change]:
    then, now = _table(before.get("lines")), _table(after.get("lines"))
    if not isinstance(before.get("lines"), Mapping) or not isinstance(after.get("lines"), Mapping):
        return
    for key in (*now, *(each for each in then if each not in now)):
        old, new = then.get(key), now.get(key)
        if old is None or new is None:
            yield Change(harm=Harm.AMOUNTS, kind="line", subject=key, before=old, after=new)
        else:
            yield from _line(key, _table(old), _table(new))


def _line(key: str, old: Mapping[str, object], new: Mapping[str, object]) -> Iterator[Change]:
    weighed = numbers(old.get("grams")) is not None and numbers(new.get("grams")) is not None
    same_weight = _alike(old.get("grams"), new.get("grams"))
    same_amount = old.get("amount") == new.get("amount")
    same_choice = old.get("optional") == new.get("optional") and old.get("or") == new.get("or")
    if not (same_weight and same_choice) or not (weighed or same_amount):
        yield Change(harm=Harm.AMOUNTS, kind="line", subject=key, before=old, after=new)
    elif not same_amount:
        yield Change(harm=Harm.WORDS, kind="written", subject=key, before=old, after=new)
    if old.get("beside") != new.get("beside"):
        yield Change(
            harm=Harm.WORDS, kind="beside", subject=key, before=old.get("beside"), after=new.get("beside")
        )


def _method(before: Facts, after: Facts) -> Iterator[Change]:
    """Values of one kind in one way are compared in their order, so that a step moved is no change of a time."""
    then, now = _entries(before.get("method")), _entries(after.get("method"))
    if then is None or now is None:
        return
    for way, what in dict.fromkeys((*now, *then)):
        old, new = then.get((way, what), ()), now.get((way, what), ())
        if what.startswith("share "):
            if old and new and sorted(old) != sorted(new):
                yield Change(harm=Harm.AMOUNTS, kind="share", subject=what.removeprefix("share "), way=way)
            continue
        kind = _kind(what)
        subject = what.removeprefix("extra ") if kind == "extra" else what
        for left, right in _pairs(old, new):
            yield Change(harm=Harm.AMOUNTS, kind=kind, subject=subject, before=left, after=right, way=way)


def _kind(what: str) -> str:
    if what.startswith("extra "):
        return "extra"
    return "heat" if what in ("oven", "core", "other") else "measure" if what == "measure" else "stage"


def _pairs(old: tuple[str, ...], new: tuple[str, ...]) -> Iterator[tuple[str | None, str | None]]:
    matcher = SequenceMatcher(a=old, b=new, autojunk=False)
    for tag, start, end, new_start, new_end in matcher.get_opcodes():
        if tag != "equal":
            yield from zip_longest(old[start:end], new[new_start:new_end])


def _about(before: Facts, after: Facts) -> Iterator[Change]:
    for key in ("makes", "portions", "tin", "finished"):
        old, new = before.get(key), after.get(key)
        if key in before and key in after and old != new and not _alike(old, new):
            yield Change(harm=Harm.AMOUNTS, kind=key, subject=key, before=old, after=new)
    for key in ("keeps", "label"):
        if key in before and key in after and before[key] != after[key]:
            yield Change(harm=Harm.WORDS, kind=key, subject=key, before=before[key], after=after[key])


def _prose(before: Facts, after: Facts) -> Iterator[Change]:
    then, now = before.get("words"), after.get("words")
    if not isinstance(then, Mapping) or not isinstance(now, Mapping):
        return
    for place in dict.fromkeys((*now, *then)):
        if then.get(place) != now.get(place):
            yield Change(
                harm=Harm.WORDS,
                kind="words",
                subject=str(place),
                before=then.get(place),
                after=now.get(place),
            )


def numbers(value: object) -> tuple[float, float] | None:
    """The two ends of an amount, None where the value is no such thing."""
    if not isinstance(value, list | tuple) or len(value) != 2:
        return None
    low, high = value
    if isinstance(low, bool) or isinstance(high, bool):
        return None
    if not isinstance(low, int | float) or not isinstance(high, int | float):
        return None
    return (low, high) if abs(low) < 1e12 and abs(high) < 1e12 and low <= high else None


def _alike(old: object, new: object) -> bool:
    then, now = numbers(old), numbers(new)
    if then is None or now is None:
        return old == new
    return all(abs(a - b) <= _ALIKE * max(abs(a), abs(b)) for a, b in zip(then, now, strict=True))


def _table(value: object) -> Mapping[str, object]:
    return value if isinstance(value, Mapping) else {}


def _texts(value: object) -> tuple[str, ...] | None:
    if not isinstance(value, list | tuple):
        return None
    return tuple(each for each in value if isinstance(each, str))


def _entries(value: object) -> dict[tuple[str, str], tuple[str, ...]] | None:
    """The values of the method by way and what they are of, each in its order."""
    if not isinstance(value, list | tuple):
        return None
    found: dict[tuple[str, str], tuple[str, ...]] = {}
    for entry in value:
        texts = _texts(entry)
        if texts is not None and len(texts) == 3:
            way, what, figure = texts
            found[way, what] = (*found.get((way, what), ()), figure)
    return found
