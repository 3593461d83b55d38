"""A bake day in words: what was added and left, what that made of the dough, and the correction it suggests."""

from collections.abc import Iterator, Mapping
from fractions import Fraction

from generator.declaration.lines import formula_allergens, line_allergens
from generator.declaration.model import LineAllergens
from generator.formula.bake_day import added_line, as_baked
from generator.formula.bake_sums import Change
from generator.formula.model import Formula, Line
from generator.formula.timeline import stages_of
from generator.history.bake_days import BakeDay
from generator.history.bakes import BakeRecord
from generator.measure.number import Range
from generator.present.amounts import count_words, decimal, grams_on_scale, percent_words, weight_words
from generator.present.bake_views import BakeDayView, Offered
from generator.present.durations import minutes_words
from generator.present.measures import in_pieces
from generator.present.recipe import Setting
from generator.wording.forms import day_words
from generator.wording.speech import NOTATION, say, speaking


def bake_day_view(day: BakeDay, formula: Formula, setting: Setting, *, current: int) -> BakeDayView:
    """`formula` is what the record was baked with, `current` the number of the recipe's revision today."""
    record = day.record
    since = any(each.on >= record.day for each in formula.about.corrections)
    stale = since if record.revision is None else record.revision != current
    offers = () if stale else tuple(_offers(day))
    return BakeDayView(
        path=record.path,
        title=formula.about.title,
        day=day_words(record.day) + (f", bake {record.number}" if record.number > 1 else ""),
        revision=f"revision {record.revision}" if record.revision else "",
        summary="; ".join(_sums(day)),
        alarms=alarms(day, formula, setting),
        remarks=tuple(_remarks(day, setting.book)),
        facts=tuple(_facts(day, formula)),
        offered=offers,
        no_offer=_no_offer(day, offers, current if stale else 0),
    )


def change_words(change: Change) -> str:
    """`bread flour 430 g, +55 g in 5 additions`; `honey 20 g, 6 g left`."""
    planned = weight_words(change.planned)
    words = f"{change.item} {planned}".strip() if change.line else f"{change.item} (not in the recipe)"
    if change.added.high > 0:
        count = "" if change.times == 1 else f" in {change.times} additions"
        words += f", +{weight_words(change.added)}{count}"
    if change.left.high > 0:
        words += f", {weight_words(change.left)} left"
    return words + (f", {_unweighed(change)}" if change.unweighed else "")


def _unweighed(change: Change) -> str:
    return (
        "one entry without a known weight"
        if change.unweighed == 1
        else f"{change.unweighed} entries without a known weight"
    )


def _sums(day: BakeDay) -> Iterator[str]:
    sums, own = day.sums, day.record.as_written
    before, after = (percent_words(each.hydration) for each in (sums.before, sums.after))
    changes = [change_words(each) for each in sums.changes]
    hydration = f"hydration {before} → {after}" if before != after else f"hydration {before}"
    shown = bool(sums.before.hydration or sums.after.hydration)
    changes = changes or ["nothing was added"]
    if len(changes) == 1 and shown:
        yield f"{changes[0]}, {hydration}"
    else:
        yield from (*changes, *((hydration,) if shown else ()))
    weights = [
        weight_words(each.dough_grams) for each in (sums.before, sums.after) if each.dough_grams.high > 0
    ]
    dough = " → ".join(dict.fromkeys(weights))
    weighed = f"{weight_words(Range.exact(own.dough))} on the scale" if own.dough else ""
    if dough or weighed:
        yield f"dough {', '.join(each for each in (dough, weighed) if each)}"
    if own.baked is not None:
        yield f"after baking {weight_words(Range.exact(own.baked))}{_loss(day)}"


def _loss(day: BakeDay) -> str:
    """` (-12.5 %)`: of the dough as weighed, else of all that was put in, which is said."""
    if day.loss is None:
        return ""
    signed = f"{'-' if day.loss >= 0 else '+'}{decimal(abs(100 * day.loss), places=1)} %"
    return (
        f" ({signed})" if day.weighed else f" ({signed} of the {weight_words(Range.exact(day.raw))} put in)"
    )


def _facts(day: BakeDay, formula: Formula) -> Iterator[tuple[str, str]]:
    record = day.record
    yield from (
        (label, words) for label, words in (("Room", record.room), ("Weather", record.weather)) if words
    )
    if record.pack_names:
        yield "Packs", ", ".join(record.pack_names)
    for added, when in zip(record.added, record.whens, strict=True):
        if when:
            yield "Added", f"{weight_words(added.grams) or 'some'} {added.item}, {when}"
    for each in record.times:
        planned = dict.fromkeys(
            minutes_words(stage.duration.minutes)
            for stage in stages_of(formula.ways)
            if stage.kind == each.kind
        )
        beside = f" (the recipe: {', '.join(planned)})" if planned else " (not in the recipe)"
        note = f", {each.note}" if each.note else ""
        yield "Time", f"{each.kind} {minutes_words(each.duration.minutes)}{note}{beside}"
    yield from ((label, words) for label, words in (("Note", record.note), ("Next", record.next)) if words)


def _remarks(day: BakeDay, book: Mapping[str, Formula]) -> Iterator[str]:
    if day.record.size not in (None, 1):
        yield f"Baked {times_words(day.record)} the recipe. Sums and corrections are reckoned back to it as written."
    for added in {each.item: each for each in day.record.added if each.line is None}.values():
        brings = _brings(line_allergens(added_line(added), book=book))
        yield f"{added.item} is not in the recipe: for this bake it is a new line, {brings}."
    for each in day.sums.changes:
        if each.unweighed:
            yield f"{each.item}: what has no known weight is in none of these sums. Write grams."
        if each.planned is not None and each.left.high > each.planned.high + each.added.high:
            yield f"{each.item}: more was left than there was. Look at the weights."


def _brings(carried: LineAllergens) -> str:
    """What a new line brings, unknown things aloud."""
    words = [f"CONTAINS {', '.join(carried.allergens).upper()}"] if carried.allergens else []
    words += [f"MAY CONTAIN {', '.join(carried.may_contain).upper()}"] if carried.may_contain else []
    words += ["and what its pack holds is still to be read"] if carried.unknown else []
    return ", ".join(words) or "without an allergen that is known here"


def alarms(day: BakeDay, formula: Formula, setting: Setting) -> tuple[str, ...]:
    """What the bake of that day carries and the recipe's own label does not name, loudly."""
    record = day.record
    book = as_baked(
        formula,
        book={**setting.book, formula.name: formula},
        packs=record.packs,
        added=record.as_written.added,
    )
    usual = formula_allergens(formula, book=setting.book)
    on_the_day = formula_allergens(book[formula.name], book=book)
    return tuple(_alarms(usual, on_the_day))


def _alarms(usual: LineAllergens, day: LineAllergens) -> Iterator[str]:
    where = "The label of the recipe does not say so. Tell whoever eats this bake; print its tags from this record."
    for allergen in (each for each in day.allergens if each not in usual.allergens):
        yield f"CONTAINS {allergen.upper()} (from {_source(day, allergen)}). {where}"
    for allergen in day.may_contain:
        if allergen not in (*usual.allergens, *usual.may_contain):
            yield f"MAY CONTAIN {allergen.upper()} (from {_source(day, allergen)}). {where}"
    for reason in (each for each in day.unknown if each not in usual.unknown):
        yield f"NOT KNOWN: {reason} {where}"


def _source(carried: LineAllergens, allergen: str) -> str:
    return (
        ", ".join(dict.fromkeys(each.item for each in carried.traces if each.allergen == allergen))
        or "a pack"
    )


def _offers(day: BakeDay) -> Iterator[Offered]:
    """A correction for each line that more went into: what was really used."""
    record = day.record
    for change in day.sums.changes:
        line, used = change.line, change.used
        if line is None or used is None or not line.counts or change.added.high <= 0 or change.net.mid == 0:
            continue
        yield Offered(
            recipe=record.recipe,
            what=line.key if line.part else line.item,
            new=_corrected(line, used),
            why=_why(day, change),
            bake=record.path,
        )


def _corrected(line: Line, used: Range) -> str:
    """The whole amount as a maker would write it: pieces where they come out even, else grams."""
    if in_pieces(line) and line.count and line.grams and line.grams.mid:
        count = line.count.scaled(used.mid / line.grams.mid)
        if line.count.is_exact and count.low.denominator in (1, 2):
            return count_words(count)
    with speaking(NOTATION):
        low, high = (grams_on_scale(each) for each in (used.low, used.high))
    return f"{low} g" if low == high else f"{low}-{high} g"


def _why(day: BakeDay, change: Change) -> str:
    said = day.record.weather or day.record.room
    beside = f" ({said})" if said else ""
    on = f"{day_words(day.record.day)}{beside}"
    if change.net.low > 0:
        return say("It took {weight} more at the bake of {day}.", weight=weight_words(change.net), day=on)
    weight = weight_words(change.net.scaled(-1))
    return say("It took {weight} less at the bake of {day}.", weight=weight, day=on)


def _no_offer(day: BakeDay, offers: tuple[Offered, ...], current: int) -> str:
    if offers:
        return ""
    if current and day.sums.changes:
        return (
            f"This was baked with {_revision_of(day)}; the recipe stands at {current} now. "
            "Nothing is offered, since it may have been corrected already: tinleaf show "
            f"{day.record.recipe} --changes"
        )
    if any(each.times for each in day.sums.changes):
        return "Nothing of this can be corrected by a command: edit the recipe file for a new line."
    return "Nothing to do: the recipe fits this bake."


def _revision_of(day: BakeDay) -> str:
    number = day.record.revision
    return f"revision {number}" if number is not None else "a revision that the record does not name"


def times_words(record: BakeRecord) -> str:
    """`2 times`, `half`, `1.5 times`."""
    size = record.size or Fraction(1)
    return "half" if size == Fraction(1, 2) else f"{decimal(size, places=3)} times"


def signed_grams(grams: Fraction) -> str:
    """`+25 g`, `-6 g`, `0 g`."""
    words = weight_words(Range.exact(abs(grams)))
    return f"{'+' if grams > 0 else '-' if grams < 0 else ''}{words}"
