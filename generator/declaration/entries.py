"""The entries of an ingredient list: one for each ingredient, heaviest first, with what each declares.

Order is by weight as added: 21 CFR 101.4(a)(1); Regulation (EU) 1169/2011, Article 18(1). What has no weight
of its own in the bake (to taste, for dusting, optional, an alternative, an extra) stands after the weighed
ones.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache

from generator.declaration.claims import without_claims
from generator.declaration.emphasis import in_list, joined, merged, plain_text
from generator.declaration.lines import CONTAINS, extra_allergens, extras, line_allergens
from generator.declaration.model import LineAllergens, Run
from generator.declaration.pack import listed_as, lowered, read_pack
from generator.declaration.regions import Region
from generator.formula.model import Formula, Line, Use, Ware
from generator.measure.same import Same
from generator.wording.speech import say, voice

WEIGHED, UNWEIGHED, OPTIONAL, CHOICE, EXTRA = "weighed", "unweighed", "optional", "choice", "extra"
_WATER = "water"  # the catalogue's group of water and ice


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One ingredient of a list.

    `grams` is what stays in the bake, 0 unless `place` is WEIGHED; `instead` names what a CHOICE stands for;
    `ids` are what the region declares of it, in the order they are met; `names` are the maker's word for it and the
    catalogue's. `key` is the text of the entry, under which it stands once.
    """

    runs: tuple[Run, ...]
    key: str
    place: str
    grams: Fraction
    ids: tuple[str, ...]
    water: bool = False
    instead: str = ""
    names: tuple[str, ...] = ()


def entries(formula: Formula, *, book: Mapping[str, Formula], region: Region) -> tuple[Entry, ...]:
    """Every entry in the order of the list, each text once; water by the region's rule."""
    return _entries(formula, book, region, frozenset({formula.name}))


def list_runs(found: tuple[Entry, ...], *, tail: frozenset[str], region: Region) -> tuple[Run, ...]:
    """The list as runs. `tail` holds the keys of entries that may stand behind "2% or less of"."""
    weighed = [each for each in found if each.place == WEIGHED]
    head = [each.runs for each in weighed if each.key not in tail]
    small = [each.runs for each in weighed if each.key in tail]
    if small:
        colon = ":" if len(small) > 1 else ""
        head.append(merged((Run(text=f"{say(region.small_amounts_words)}{colon} "), *joined(small, ", "))))
    groups = [joined(head, ", "), *_after_the_weighed(found, weighed=bool(weighed))]
    return joined((each for each in groups if each), "; ")


def declared_ids(carried: LineAllergens, region: Region) -> tuple[str, ...]:
    """What the region declares of it, in the order of the traces."""
    return _ids(Same(carried), Same(region))[1]


def needed_ids(carried: LineAllergens, region: Region) -> tuple[str, ...]:
    """Region-free ids contained and not excepted in the region, in the order of the traces."""
    return _ids(Same(carried), Same(region))[0]


@lru_cache(maxsize=2048)
def _ids(of: Same[LineAllergens], within: Same[Region]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Both: many recipes have the same things in them."""
    region = within.thing
    traces = (each for each in of.thing.traces if each.state == CONTAINS and region.id not in each.excepted)
    needed = tuple(dict.fromkeys(each.allergen for each in traces))
    return needed, tuple(dict.fromkeys(each for one in needed for each in region.ids(one)))


def raw_grams(found: Iterable[Entry]) -> Fraction:
    return sum((each.grams for each in found if each.place == WEIGHED), start=Fraction(0))


def _entries(
    formula: Formula, book: Mapping[str, Formula], region: Region, seen: frozenset[str]
) -> tuple[Entry, ...]:
    found = _merged(_each_entry(formula, book, region, seen))
    if region.water_in_finished_food:
        found = _water_as_it_stays(found, formula, region)
    return _by_weight(found)


def _by_weight(found: tuple[Entry, ...]) -> tuple[Entry, ...]:
    weighed = sorted((each for each in found if each.place == WEIGHED), key=lambda each: -each.grams)
    return (*weighed, *(each for each in found if each.place != WEIGHED))


def _each_entry(
    formula: Formula, book: Mapping[str, Formula], region: Region, seen: frozenset[str]
) -> Iterator[Entry]:
    for line in formula.lines:
        yield _entry(line, _place(line), book, region, seen)
    for line in (each for each in formula.lines if not each.optional):
        yield from _choices(line, CHOICE, book, region, seen)
    for line in (each for each in formula.lines if each.optional):
        yield from _choices(line, OPTIONAL, book, region, seen)
    for use in extras(formula):
        yield _extra_entry(use, book, region, seen)


def _place(line: Line) -> str:
    if line.optional:
        return OPTIONAL
    return WEIGHED if line.kept is not None and line.kept.mid > 0 else UNWEIGHED


def _choices(
    line: Line, place: str, book: Mapping[str, Formula], region: Region, seen: frozenset[str]
) -> Iterator[Entry]:
    for choice in line.alternatives:
        yield replace(_entry(choice, place, book, region, seen), instead=line.item)
        yield from _choices(choice, place, book, region, seen)


def _entry(
    line: Line, place: str, book: Mapping[str, Formula], region: Region, seen: frozenset[str]
) -> Entry:
    carried = line_allergens(line, book=book)
    kept = line.kept if place == WEIGHED else None
    runs, first = _named(line, carried, book, region, seen)
    return Entry(
        runs=runs,
        key=_key(runs),
        place=place,
        grams=kept.mid if kept else Fraction(0),
        ids=tuple(dict.fromkeys((*first, *declared_ids(carried, region)))),
        water=bool(line.ware and line.ware.ingredient.group == _WATER and line.component is None),
        names=(line.item, *((line.ware.ingredient.name,) if line.ware else ())),
    )


def _extra_entry(use: Use, book: Mapping[str, Formula], region: Region, seen: frozenset[str]) -> Entry:
    if use.line is not None:
        return _entry(use.line, EXTRA, book, region, seen)
    carried = extra_allergens(use, book=book)
    runs = _ware_runs(use.ware, use.item, needed_ids(carried, region), region)
    return Entry(
        runs=runs,
        key=_key(runs),
        place=EXTRA,
        grams=Fraction(0),
        ids=declared_ids(carried, region),
        water=bool(use.ware and use.ware.ingredient.group == _WATER),
    )


def _key(runs: tuple[Run, ...]) -> str:
    return plain_text(runs).casefold()


def _named(
    line: Line, carried: LineAllergens, book: Mapping[str, Formula], region: Region, seen: frozenset[str]
) -> tuple[tuple[Run, ...], tuple[str, ...]]:
    """The words of the line, and the ids in the order its own list meets them."""
    needed = needed_ids(carried, region)
    formula = book.get(line.component or "")
    if line.inside:
        made_of = _by_weight(_merged(_entry(each, WEIGHED, book, region, seen) for each in line.inside))
        carried_ids = tuple(dict.fromkeys(each for entry in made_of for each in entry.ids))
        return _with_inner(line.item, made_of, carried_ids, needed, region), carried_ids
    if formula is None or formula.name in seen:
        return _ware_runs(line.ware, line.item, needed, region), ()
    inner = _entries(formula, book, region, seen | {formula.name})
    ids = tuple(dict.fromkeys(each for entry in inner for each in entry.ids))
    return _with_inner(line.item, inner, ids, needed, region), ids


def _with_inner(
    item: str, inner: tuple[Entry, ...], ids: tuple[str, ...], needed: tuple[str, ...], region: Region
) -> tuple[Run, ...]:
    """The component's name, its list in brackets, and in brackets after it what the list did not show."""
    shown = list_runs(inner, tail=frozenset(), region=region)
    name = lowered(without_claims(item)) or say("part made beforehand")
    missing = tuple(each for each in needed if not set(region.shown_ids(each)) <= {*ids, *region.list_only})
    return merged((Run(text=f"{name} ("), *shown, Run(text=")"), *in_list("", missing, region)))


def _ware_runs(ware: Ware | None, item: str, needed: tuple[str, ...], region: Region) -> tuple[Run, ...]:
    return _listed(Same(ware), item, needed, Same(region), voice().tag)


@lru_cache(maxsize=2048)
def _listed(
    ware: Same[Ware | None], item: str, needed: tuple[str, ...], of: Same[Region], language: str
) -> tuple[Run, ...]:
    """Many recipes list the same things. `language` keeps the words of one apart from those of another."""
    return in_list(_ware_text(ware.thing, item, of.thing), needed, of.thing)


def _ware_text(ware: Ware | None, item: str, region: Region) -> str:
    """The pack's own words, else the catalogue's name with what it is made of.

    The catalogue speaks English: in another language a thing goes by the name of its row in the pantry.
    """
    if ware is None:
        return without_claims(item)
    ingredient = ware.ingredient
    name = without_claims(ingredient.labelled(region.id))
    made_of = region.spelt(ingredient.made_of)
    if region.id not in ingredient.label_names and ingredient.group != "pantry":
        name = region.spelt(name)
    if voice().catalogue and ware.packs:
        name = without_claims(ware.packs[0].name)
    reading = read_pack(ware.packs[0].label) if ware.packs else None
    if reading is not None and reading.text:
        return listed_as(reading, name)
    return f"{name} ({made_of})" if made_of else name


def _merged(found: Iterable[Entry]) -> tuple[Entry, ...]:
    """Each text once: weights add up, and what stands in the list already is not said again after it."""
    once: dict[str, Entry] = {}
    for entry in sorted(found, key=lambda each: each.place != WEIGHED):
        known = once.get(entry.key)
        if known is None:
            once[entry.key] = entry
        else:
            ids = tuple(dict.fromkeys((*known.ids, *entry.ids)))
            once[entry.key] = replace(known, grams=known.grams + entry.grams, ids=ids)
    return tuple(once.values())


def _water_as_it_stays(found: tuple[Entry, ...], formula: Formula, region: Region) -> tuple[Entry, ...]:
    """Water as it is in the finished food: its weight less all else; unnamed up to 5 % (Annex VII, part A).

    Where the finished weight is not known, or holds all that was added, it stands as added.
    """
    finished = formula.totals.finished_grams
    if finished is None or finished.mid <= 0:
        return found
    rest = raw_grams(each for each in found if not each.water)
    stays = finished.mid - rest
    omitted = stays <= finished.mid * (region.water_left_out or 0)
    weighed = (each for each in found if not (omitted and each.water and each.place == WEIGHED))
    return tuple(
        replace(each, grams=min(each.grams, stays)) if each.water and each.place == WEIGHED else each
        for each in weighed
    )


def _after_the_weighed(found: tuple[Entry, ...], *, weighed: bool) -> Iterator[tuple[Run, ...]]:
    """The groups after the weighed ones, each introduced by words that say why it is there."""
    unweighed = [each.runs for each in found if each.place == UNWEIGHED]
    if unweighed:
        lead = (Run(text=f"{say('also, not weighed:')} "),) if weighed else ()
        yield merged((*lead, *joined(unweighed, ", ")))
    optional = [each.runs for each in found if each.place == OPTIONAL]
    if optional:
        yield merged((Run(text=f"{say('if added:')} "), *joined(optional, ", ")))
    instead: dict[str, list[tuple[Run, ...]]] = {}
    for each in found:
        if each.place == CHOICE:
            instead.setdefault(each.instead, []).append(each.runs)
    for item, choices in instead.items():
        lead = (Run(text=f"{say('or in place of {item}:', item=lowered(without_claims(item)))} "),)
        yield merged((*lead, *joined(choices, ", ")))
    extra = [each.runs for each in found if each.place == EXTRA]
    if extra:
        yield merged((Run(text=f"{say('as needed:')} "), *joined(extra, ", ")))
