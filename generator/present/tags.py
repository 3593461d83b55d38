"""The words of a tag: from the newest bake record, else from the packs as they were last read."""

import calendar
import re
from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta

from generator.catalogue.load import Pack
from generator.declaration.characteristic import shares
from generator.declaration.declare import declare
from generator.declaration.lines import without_pack
from generator.declaration.regions import region_named
from generator.formula.bake_day import as_baked, wares_within
from generator.formula.model import Formula
from generator.history.bakes import BakeRecord
from generator.measure.number import Range, read_number
from generator.present.cautions import cautions_of
from generator.present.label import label_view
from generator.present.net_weight import net_weight
from generator.present.recipe import Setting, recipe_view
from generator.present.tag_views import NetWeight, TagView
from generator.present.views import RecipeView
from generator.wording.forms import day_words, short_day
from generator.wording.speech import later, say

NAMED_PACKS = 2
_KEEPS = re.compile(
    r"(?P<number>\d+|an?|one|two|three|four|five|six|seven)(?:\s*(?:-|–|to)\s*\d+)?\s+"
    r"(?P<unit>day|week|month)s?\b",
    re.IGNORECASE,
)
_NUMBERS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7}


def tag_view(
    formula: Formula, setting: Setting, record: BakeRecord | None = None, *, plain: RecipeView | None = None
) -> TagView:
    """The tag of a bake; with a record, of that day. `plain` is the view of its page, where that was made before."""
    settings = setting.settings
    book = _book(formula, setting, record)
    baked = book[formula.name]
    region = settings.region
    declaration = (
        setting.declarations[formula.name][region]
        if book is setting.book
        else declare(baked, book=book, region=region, kitchen_handles=settings.kitchen_handles)
    )
    cautions = tuple(each.words for each in cautions_of(baked, book=book) if each.eater)
    net, untold = _net(formula, record, region)
    best = best_before(formula.about.keeps, record.day) if record else None
    view = plain or recipe_view(formula, setting)
    return TagView(
        recipe=replace(
            view,
            since=(),
            label=label_view(declaration, settings),
            eater_cautions=cautions,
            net_weight=" ".join(filter(None, (net.lead, net.large, net.beside))),
        ),
        letters=region_named(region).letters,
        net=net,
        baked_on=day_words(record.day) if record else "",
        best_before=day_words(best),
        record=record.path if record else "",
        packs=packs_words(baked, book, record),
        day=record.day if record else None,
        statement_on=day_words(settings.statement_on) if settings.statement else "",
        untold=(*untold, *_unread(baked, book), *_shares(baked, book, region)),
    )


def _unread(formula: Formula, book: Mapping[str, Formula]) -> tuple[str, ...]:
    """What is declared as the food that it is, since nobody has read a pack of it."""
    items = without_pack(formula, book=book)
    if not items:
        return ()
    return (
        say(
            "No pack stands in the pantry for {list}: what such a pack warns of is not on the tags.",
            list=", ".join(items),
        ),
    )


def _shares(formula: Formula, book: Mapping[str, Formula], region: str) -> tuple[str, ...]:
    told = shares(formula, book=book, region=region)
    if not told:
        return ()
    known = formula.totals.finished_grams is not None
    base = (
        say("of the finished weight")
        if known
        else say("of all that goes in, since no finished weight is known")
    )
    return (
        say(
            "If you sell it packed in advance, its list must say how much it holds: {list} ({base}).",
            list=", ".join(told),
            base=base,
        ),
    )


def _book(formula: Formula, setting: Setting, record: BakeRecord | None) -> Mapping[str, Formula]:
    if record is None:
        return setting.book
    return as_baked(formula, book=setting.book, packs=record.packs, added=record.as_written.added)


def best_before(keeps: str, day: date) -> date | None:
    """The last day by the maker's own words, where they begin with a time ("3 days in a paper bag"), else None.

    Of a range the shorter time is taken.
    """
    match = _KEEPS.match(keeps.strip())
    if match is None:
        return None
    number = _NUMBERS.get(match["number"].casefold()) or int(match["number"][:4])
    unit = match["unit"].casefold()
    if unit == "month":
        return _months_later(day, number)
    return day + timedelta(days=min(number, 3000) * (7 if unit == "week" else 1))


def _months_later(day: date, months: int) -> date:
    year, month = divmod(day.month - 1 + min(months, 120), 12)
    last = calendar.monthrange(day.year + year, month + 1)[1]
    return date(day.year + year, month + 1, min(day.day, last))


def _net(formula: Formula, record: BakeRecord | None, region: str) -> tuple[NetWeight, tuple[str, ...]]:
    """Both units, rounded down, for one finished piece: as weighed on the day, else by the formula."""
    finished = formula.totals.finished_grams
    # What one piece of a scaled bake weighs, the record does not say: one large loaf, or two.
    scaled = record is not None and record.size not in (None, 1)
    weighed = record.baked if record else None
    low = None if scaled else weighed if weighed is not None else finished.low if finished else None
    made = read_number(formula.about.makes) if formula.about.makes else (Range.exact(1), 0)
    if low is None:
        return NetWeight(), (say("The net weight is left out: no finished weight is known."),)
    if made is None or made[0] != Range.exact(1):
        words = say(
            "The net weight is left out: the weight is that of all that is made ({makes}).",
            makes=formula.about.makes,
        )
        return NetWeight(), (words,)
    return net_weight(low, region), ()


def packs_words(formula: Formula, book: Mapping[str, Formula], record: BakeRecord | None) -> str:
    """Which packs the declaration stands on; "" where it stands on none."""
    packs = _packs_in(formula, book)
    if record is None or not record.pack_names:
        return _assumed(later("Packs assumed, as last read: {packs}."), packs)
    used = tuple(dict.fromkeys(record.pack_names))
    rest = tuple(each for each in packs if each.name not in used)
    words = say("Packs of the day: {packs}.", packs=_shortened(used))
    return f"{words} {_assumed(_OTHERS, rest)}".strip()


def _packs_in(formula: Formula, book: Mapping[str, Formula]) -> tuple[Pack, ...]:
    """The packs that say something, those that declare an allergen first."""
    packs = dict.fromkeys(pack for ware in wares_within(formula, book) for pack in ware.packs)
    telling = [each for each in packs if each.label or each.contains_given or each.may_contain]
    return tuple(sorted(telling, key=lambda each: not (each.contains or each.may_contain)))


def _assumed(words: str, packs: tuple[Pack, ...]) -> str:
    named = tuple(_dated(each) for each in packs)
    return say(words, packs=_shortened(named)) if named else ""


_OTHERS = later("Others assumed, as last read: {packs}.")


def _dated(pack: Pack) -> str:
    """The pack and the day it was read, the month shortened: the line is the least of a tag."""
    if pack.checked is None:
        return pack.name
    return f"{pack.name} ({short_day(pack.checked)})"


def _shortened(names: tuple[str, ...]) -> str:
    if len(names) <= NAMED_PACKS + 1:
        return ", ".join(names)
    first = ", ".join(names[:NAMED_PACKS])
    return say("{names} and {number} more", names=first, number=len(names) - NAMED_PACKS)
