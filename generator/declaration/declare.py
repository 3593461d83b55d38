"""The declaration of a bake in one region: the only place where a region's rules decide.

Everything that touches the bake is in it: all parts, optional lines, alternatives, extras, dusting, and what
is discarded. A precaution is never dropped for heat or quantity, and never widened or narrowed.
"""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from generator.catalogue.allergens import ALLERGENS, allergens_named
from generator.declaration.claims import without_claims
from generator.declaration.emphasis import merged, plain_text
from generator.declaration.entries import (
    WEIGHED,
    Entry,
    declared_ids,
    entries,
    list_runs,
    raw_grams,
)
from generator.declaration.lines import (
    CONTAINS,
    MAY,
    every_line,
    extra_allergens,
    extras,
    formula_allergens,
    is_class_word,
    line_allergens,
)
from generator.declaration.model import Declaration, LineAllergens, Run, Trace
from generator.declaration.regions import REGION_NAMES, Region, region_named
from generator.formula.model import Formula
from generator.wording.forms import all_of
from generator.wording.speech import say

__all__ = ["REGION_NAMES", "declare", "kitchen_sentence"]


def declare(
    formula: Formula, *, book: Mapping[str, Formula], region: str, kitchen_handles: Sequence[str] = ()
) -> Declaration:
    """The declaration of `formula` in a region of `REGION_NAMES`; KeyError for any other region.

    `book` holds every recipe by name, for components. `kitchen_handles` are what the maker's
    kitchen handles: they make a sentence of their own in the statement and never enter `may_contain`.
    """
    rules = region_named(region)
    carried = formula_allergens(formula, book=book)
    found = entries(formula, book=book, region=rules)
    contains = _contains(found, carried, rules)
    may = _may_contain(carried, contains, rules)
    unknown = (*carried.unknown, *_kinds_to_name(contains, carried, rules))
    ingredients = list_runs(found, tail=_tail(found, formula, rules), region=rules)
    contains_line = _contains_line(contains, rules)
    others = _other_kinds(carried, contains, rules)
    may_line = _may_line((*may, *others), contains, rules)
    unfinished = _unfinished(formula, book, unknown)
    kitchen = kitchen_sentence(kitchen_handles, contains=contains, region=region)
    sentences = (_list_sentence(ingredients, rules), contains_line, may_line, (Run(text=kitchen),))
    return Declaration(
        region=region,
        finished=not unknown,
        ingredients=ingredients,
        contains=contains,
        may_contain=may,
        unknown=tuple(dict.fromkeys(unknown)),
        contains_line=contains_line,
        may_line=may_line,
        unfinished=unfinished,
        statement=_statement((*sentences, (Run(text=unfinished),))),
        traces=_traces(carried, rules),
        also_in=_not_named(carried, contains, rules),
        also_may=tuple(each for each in carried.may_contain if each not in (*may, *others)),
    )


def kitchen_sentence(handles: Sequence[str], *, contains: Sequence[str], region: str) -> str:
    """What else the maker's kitchen handles, as a sentence; "" where the bake contains all of it.

    `handles` are allergens in the maker's words; that list is the maker's, it is never filled in for them. A
    word that is no allergen of the vocabulary is repeated as it stands.
    """
    rules = region_named(region)
    ids = (ident for each in handles for ident in allergens_named(each) or (without_claims(each),))
    named = [each for one in ids for each in (rules.ids(one) or (one,)) if each and each not in contains]
    words = dict.fromkeys(_may_word(each, contains, rules) for each in named)
    return f"{say(rules.kitchen_words)} {all_of(words)}." if words else ""


def _contains(found: tuple[Entry, ...], carried: LineAllergens, rules: Region) -> tuple[str, ...]:
    """In the order of the list, then whatever no entry of the list brought."""
    listed = (each for entry in found for each in entry.ids)
    return tuple(dict.fromkeys((*listed, *declared_ids(carried, rules))))


def _may_contain(carried: LineAllergens, contains: Sequence[str], rules: Region) -> tuple[str, ...]:
    """All precautions less what is contained. Only like cancels like: almond leaves "tree nuts" standing."""
    warned = (each.allergen for each in carried.traces if each.state == MAY)
    ids = dict.fromkeys(each for one in warned for each in rules.ids(one))
    return tuple(each for each in ids if each not in contains)


def _other_kinds(carried: LineAllergens, contains: Sequence[str], rules: Region) -> tuple[str, ...]:
    """Class words of a precaution that the summary says of one kind: "gluten" of the wheat in it, in Australia.

    The precaution may mean another kind, so it is kept in words ("other cereals containing gluten").
    """
    own = {each.allergen for each in carried.traces if each.state == CONTAINS}
    warned = dict.fromkeys(each.allergen for each in carried.traces if each.state == MAY)
    return tuple(
        each for each in warned if each in rules.summary_adds and each in contains and each not in own
    )


def _kinds_to_name(contains: Sequence[str], carried: LineAllergens, rules: Region) -> tuple[str, ...]:
    """A class word is no name of a kind where the region asks for the kind: 21 USC 343(w)(2), Notice 3.1."""
    reasons: dict[tuple[str, str], str] = {}
    for trace in carried.traces:
        for each in rules.ids(trace.allergen) if trace.state == CONTAINS else ():
            if each in contains and each in rules.kind_needed and is_class_word(trace.allergen):
                reasons.setdefault((trace.item, each), _kind_reason(trace, rules.english(each)))
    return tuple(reasons.values())


def _kind_reason(trace: Trace, word: str) -> str:
    reason = f"{trace.item}: “{trace.words}” does not name the kind of {word}; read the pack."
    return without_claims(reason[:1].upper() + reason[1:])


def _tail(found: tuple[Entry, ...], formula: Formula, rules: Region) -> frozenset[str]:
    """Keys of entries at most 2 % of the weight as added and, where known, of the finished weight too."""
    raw = raw_grams(found)
    if rules.small_amounts is None or raw <= 0:
        return frozenset()
    finished = formula.totals.finished_grams
    base = min(raw, finished.mid) if finished is not None and finished.mid > 0 else raw
    most: Fraction = base * rules.small_amounts
    return frozenset(each.key for each in found if each.place == WEIGHED and each.grams <= most)


def _contains_line(contains: Sequence[str], rules: Region) -> tuple[Run, ...]:
    named = [each for each in contains if each not in rules.summary_leaves_out]
    if not rules.contains_words or not named:
        return ()
    words = ", ".join(dict.fromkeys(rules.word(each) for each in named))
    return (Run(text=f"{say(rules.contains_words)} {words}", strong=True), Run(text="."))


def _may_line(may: Sequence[str], contains: Sequence[str], rules: Region) -> tuple[Run, ...]:
    if not may:
        return ()
    runs = [Run(text=f"{say(rules.may_words)} ")]
    for index, word in enumerate(dict.fromkeys(_may_word(each, contains, rules) for each in may)):
        runs += [Run(text=", ")] if index else []
        runs.append(Run(text=word, strong=True))
    return merged((*runs, Run(text=".")))


def _may_word(allergen: str, contains: Sequence[str], rules: Region) -> str:
    """A class of which one kind is contained already warns of the others: "other tree nuts"."""
    word = rules.word(allergen)
    kinds = any(ALLERGENS[each].group == allergen != each for each in contains)
    if not (is_class_word(allergen) and kinds):
        return word
    return say(
        "other {allergens}", allergens=say(rules.others[allergen]) if allergen in rules.others else word
    )


def _unfinished(formula: Formula, book: Mapping[str, Formula], unknown: Sequence[str]) -> str:
    if not unknown:
        return ""
    items = dict.fromkeys((*_items_to_read(formula, book), *_items_of(formula, unknown)))
    if not formula.lines:
        return say("This declaration is not finished: the bake has no formula yet.")
    named = ", ".join(without_claims(each) for each in items) or say("its packs")
    return say("This declaration is not finished. Still to be read: {items}.", items=named)


def _items_to_read(formula: Formula, book: Mapping[str, Formula]) -> Iterable[str]:
    for line in every_line(formula.lines):
        if line_allergens(line, book=book).unknown:
            yield line.item
    for use in extras(formula):
        if extra_allergens(use, book=book).unknown:
            yield use.item


def _items_of(formula: Formula, unknown: Sequence[str]) -> Iterable[str]:
    """Items whose own reason stands at the head of a sentence (the kinds still to be named)."""
    starts = {reason.partition(":")[0].casefold() for reason in unknown}
    return (line.item for line in every_line(formula.lines) if line.item.casefold() in starts)


def _list_sentence(ingredients: tuple[Run, ...], rules: Region) -> tuple[Run, ...]:
    return (Run(text=f"{say(rules.heading)}: "), *ingredients, Run(text=".")) if ingredients else ()


def _statement(sentences: Iterable[tuple[Run, ...]]) -> str:
    return " ".join(filter(None, (plain_text(each) for each in sentences)))


def _not_named(carried: LineAllergens, contains: Sequence[str], rules: Region) -> tuple[str, ...]:
    """What is in it beyond the Contains line in the region's words; where there is no line, beyond the list."""
    if _contains_line(contains, rules):
        named = set(contains) - rules.summary_leaves_out
        return tuple(each for each in carried.allergens if each not in named)
    return tuple(each for each in carried.allergens if not rules.shown_ids(each))


def _traces(carried: LineAllergens, rules: Region) -> tuple[Trace, ...]:
    """Why each thing is declared here; what the region excepts or does not declare is left out."""
    return tuple(
        each for each in carried.traces if rules.id not in each.excepted and rules.shown_ids(each.allergen)
    )
