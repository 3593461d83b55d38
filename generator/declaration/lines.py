"""What one line of a formula carries, without regard to region.

Nothing is ever taken away: the catalogue, the maker's own entry, the words of the label and everything inside
a component add up, at any amount, kept or discarded.
"""

from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache

from generator.catalogue.allergens import ALLERGENS
from generator.catalogue.ingredient import Ingredient
from generator.catalogue.load import Pack
from generator.catalogue.names import same_name
from generator.declaration.claims import blanked, denied, without_claims
from generator.declaration.model import LineAllergens, Trace
from generator.declaration.pack import PackReading, read_pack
from generator.declaration.regions import REGION_NAMES
from generator.declaration.words import matches
from generator.formula.model import Formula, Line, Use, Ware, WholePart
from generator.measure.same import Same
from generator.wording.speech import voice

CONTAINS, MAY = "contains", "may contain"
EVERYWHERE = frozenset(REGION_NAMES)
_THE_MAKERS_OWN = "pantry"  # the group of an ingredient that only the pantry knows
_LOOSE = frozenset({"water", "fruit", "vegetable", "egg"})  # groups of the catalogue that come without a pack


def line_allergens(line: Line, *, book: Mapping[str, Formula]) -> LineAllergens:
    """Everything the line itself carries; its alternatives are lines of their own (`line_and_choices`).

    A line made by a recipe of the book carries all that any line of it carries, its optional lines,
    alternatives, extras and what it discards included. Whatever is not known is a sentence in `unknown`.
    """
    return _line(line, book, frozenset())


def line_and_choices(line: Line, *, book: Mapping[str, Formula]) -> LineAllergens:
    """The line and every alternative to it, as one."""
    return together(line_allergens(each, book=book) for each in every_line((line,)))


def extra_allergens(use: Use, *, book: Mapping[str, Formula]) -> LineAllergens:
    """What an amount outside the formula carries ("add 10 g of bread flour at a time")."""
    return _extra(use, book, frozenset())


def extras(formula: Formula) -> tuple[Use, ...]:
    """Every amount that the method mentions outside the formula, in order."""
    blocks = [block.words for way in formula.ways for section in way.sections for block in section.blocks]
    mentions = [each for words in (formula.intro, *blocks) for each in words.mentions]
    uses = [
        use
        for each in mentions
        for use in (each.uses if isinstance(each, WholePart) else (each,))
        if isinstance(use, Use)
    ]
    return tuple(each for each in uses if each.extra)


def formula_allergens(formula: Formula, *, book: Mapping[str, Formula]) -> LineAllergens:
    """Everything that touches the bake, whether it counts or not."""
    return _formula_allergens(Same(formula), Same(book), voice().tag)


@lru_cache(maxsize=64)
def _formula_allergens(of: Same[Formula], book: Same[Mapping[str, Formula]], language: str) -> LineAllergens:
    """The regions ask for it one after the other."""
    formula = of.thing
    return _whole(formula, book.thing, frozenset({formula.name}))


def every_line(lines: Iterable[Line]) -> Iterator[Line]:
    """The lines, each followed by the flour and water of a starter and by its alternatives."""
    for line in lines:
        yield line
        yield from line.inside
        yield from every_line(line.alternatives)


def without_pack(formula: Formula, *, book: Mapping[str, Formula]) -> tuple[str, ...]:
    """Items sold in packs of which the pantry has no word: what their packs warn of is stated nowhere.

    They are declared as the foods that they are; what comes loose (fruit, vegetables, eggs, water) is left out.
    """
    found: dict[str, None] = {}
    waiting, seen = [formula], {formula.name}
    for each in waiting:
        lines = tuple(every_line(each.lines))
        wares = [(line.item, line.ware) for line in lines if line.component is None and not line.inside]
        wares += [(use.item, use.ware) for use in extras(each) if use.line is None]
        found |= {
            item: None
            for item, ware in wares
            if ware and all(map(_only_weighs, ware.packs)) and ware.ingredient.group not in _LOOSE
        }
        inner = (book[line.component] for line in lines if line.component and line.component in book)
        fresh = [one for one in inner if one.name not in seen]
        seen |= {one.name for one in fresh}
        waiting += fresh
    return tuple(found)


def together(parts: Iterable[LineAllergens]) -> LineAllergens:
    """The union. What one contains is no longer what another may contain."""
    found = tuple(parts)
    traces = tuple(dict.fromkeys(trace for each in found for trace in each.traces))
    unknown = tuple(dict.fromkeys(reason for each in found for reason in each.unknown))
    return _summed(traces, unknown)


def answered(pack: Pack) -> bool:
    """Whether the pack was read: its row says what it contains, or its label leaves nothing open."""
    reading = read_pack(pack.label)
    return pack.read or (reading.tells and not reading.asks)


def _line(line: Line, book: Mapping[str, Formula], seen: frozenset[str]) -> LineAllergens:
    if line.component is not None and line.component in book and line.component not in seen:
        return _component(line, book[line.component], book, seen | {line.component})
    if line.component is not None and line.component not in book:
        reason = f"The recipe “{line.component}” is not there, so what {line.item} holds is not known."
        known = (_ware(line.ware, line.part, line.item),) if line.ware else ()
        return together((_summed((), (reason,)), *known))
    if line.component is not None:
        return _summed((), ())  # a recipe inside itself: its lines are being gathered already
    own = _ware(line.ware, line.part, line.item)
    # A starter carries what its flour carries, whatever its own pack says.
    return together((own, *(_line(each, book, seen) for each in line.inside))) if line.inside else own


def _component(
    line: Line, formula: Formula, book: Mapping[str, Formula], seen: frozenset[str]
) -> LineAllergens:
    inner = _whole(formula, book, seen)
    traces = tuple(
        Trace(
            allergen=each.allergen,
            state=each.state,
            part=line.part,
            item=line.item,
            source=f"recipe {formula.name}: {each.source}",
            words=f"{each.item}: {each.words}",
            excepted=each.excepted,
        )
        for each in inner.traces
    )
    return _summed(traces, inner.unknown)


def _whole(formula: Formula, book: Mapping[str, Formula], seen: frozenset[str]) -> LineAllergens:
    own = (_line(line, book, seen) for line in every_line(formula.lines))
    added = (_extra(use, book, seen) for use in extras(formula))
    return together((*_without_formula(formula), *own, *added))


def _without_formula(formula: Formula) -> tuple[LineAllergens, ...]:
    if formula.lines:
        return ()
    reason = f"{_capital(formula.about.title)} has no formula yet: what is in it is not known."
    return (_summed((), (reason,)),)


def _extra(use: Use, book: Mapping[str, Formula], seen: frozenset[str]) -> LineAllergens:
    return _line(use.line, book, seen) if use.line else _ware(use.ware, use.part, use.item)


def _ware(ware: Ware | None, part: str, item: str) -> LineAllergens:
    if ware is None:
        return _summed((), (f"{_capital(item)} is not known, so what it holds is not known.",))
    return _known_ware(Same(ware), part, item, voice().tag)


@lru_cache(maxsize=1024)
def _known_ware(same: Same[Ware], part: str, item: str, language: str) -> LineAllergens:
    """Each region, each list and each check asks for it anew. `language` keeps what is said in one apart."""
    ware = same.thing
    readings = tuple((pack, read_pack(pack.label)) for pack in ware.packs)
    traces = [trace for each in readings for trace in _label_traces(*each, part, item)]
    traces += _catalogue_traces(ware, part, item)
    kinds = {ALLERGENS[each.allergen].group for each in traces if _names_a_kind(each)}
    for pack in ware.packs:
        traces += [each for each in _stated_traces(pack, part, item) if not _only_heads(each, kinds)]
    unknown = tuple(_unknown(ware, readings, item))
    if unknown and ware.ingredient.ask:
        traces += _name_traces(ware, part, item)
    return _summed(tuple(dict.fromkeys(traces)), unknown)


def _label_traces(pack: Pack, reading: PackReading, part: str, item: str) -> Iterator[Trace]:
    for state, named in ((CONTAINS, reading.contains), (MAY, reading.may_contain)):
        for said in named:
            yield Trace(
                allergen=said.allergen,
                state=state,
                part=part,
                item=item,
                source=f"label of {pack.name}",
                words=said.words,
                excepted=said.excepted,
            )


def _catalogue_traces(ware: Ware, part: str, item: str) -> Iterator[Trace]:
    """What the ingredient is known to hold; of a thing of the maker's own, what its very name says."""
    stated = {allergen for pack in ware.packs for allergen in pack.contains}
    for allergen in ware.ingredient.allergens:
        if allergen not in stated:
            yield _trace(allergen, CONTAINS, part, item, "catalogue", ware.ingredient.name)
    if ware.ingredient.group == _THE_MAKERS_OWN or not ware.ingredient.sources:
        yield from _said_by(ware.ingredient.name, part, item)


def _name_traces(ware: Ware, part: str, item: str) -> Iterator[Trace]:
    """What the maker's own word for a thing says while its pack is unread: "hazelnut liqueur"."""
    carried = set(ware.ingredient.allergens)
    return (each for each in _said_by(item, part, item) if each.allergen not in carried)


def _said_by(name: str, part: str, item: str) -> Iterator[Trace]:
    for match in matches(blanked(name, denied(name))):
        for allergen in match.meaning.allergens:
            yield _trace(allergen, CONTAINS, part, item, "its name", name)


def _stated_traces(pack: Pack, part: str, item: str) -> Iterator[Trace]:
    for state, named in ((CONTAINS, pack.contains), (MAY, pack.may_contain)):
        for allergen in named:
            words = f"{state.replace(' ', '_')}: {allergen}"
            yield _trace(allergen, state, part, item, f"pantry entry of {pack.name}", words)


def _names_a_kind(trace: Trace) -> bool:
    return trace.state == CONTAINS and not is_class_word(trace.allergen)


def _only_heads(stated: Trace, kinds: set[str]) -> bool:
    """Whether an entry "tree nuts" sums up a kind that the same thing is known to hold, such as pistachio."""
    return stated.state == CONTAINS and is_class_word(stated.allergen) and stated.allergen in kinds


def _trace(allergen: str, state: str, part: str, item: str, source: str, words: str) -> Trace:
    return Trace(allergen=allergen, state=state, part=part, item=item, source=source, words=words)


def _unknown(ware: Ware, readings: tuple[tuple[Pack, PackReading], ...], item: str) -> Iterator[str]:
    for pack, reading in readings:
        if not pack.read:
            for ask in reading.asks:
                yield _sentence(f"{item}: {ask}; read the pack and say in the pantry what it contains")
    if not (ware.packs and _answers(ware.packs[0], ware.ingredient)):
        yield from _open_questions(ware, item)


def _answers(pack: Pack, ingredient: Ingredient) -> bool:
    """A label that only repeats the name tells nothing; one that asks is reported by its own words."""
    if pack.read:
        return True
    reading = read_pack(pack.label)
    return reading.tells and not same_name(reading.text, ingredient.name)


def _open_questions(ware: Ware, item: str) -> Iterator[str]:
    own = ware.ingredient.group == _THE_MAKERS_OWN or not _documented(ware.ingredient)
    if ware.ingredient.ask:
        yield from (_sentence(each) for each in ware.ingredient.ask)
    elif own or any(map(_says_nothing, ware.packs)):
        yield _sentence(f"{item}: say in the pantry what its pack contains")


def _says_nothing(pack: Pack) -> bool:
    """A row of the pantry is a pack that stands on the shelf: without its words nobody knows what is in it.

    Only a row that weighs a food and no more speaks of no pack; such a food is told as one without (`without_pack`).
    """
    return not pack.label and not pack.read and not _only_weighs(pack)


def _only_weighs(pack: Pack) -> bool:
    weighed = pack.grams_per_ml is not None or pack.grams_per_piece is not None or bool(pack.composition)
    told = (pack.label, pack.contains_given, pack.may_contain, pack.checked, pack.url, pack.buy, pack.note)
    return weighed and not pack.stands_in and not any(told)


def _documented(ingredient: Ingredient) -> bool:
    """Whether a row of the catalogue stands behind it, not the maker's word alone."""
    return any(not source.startswith("pantry: ") for source in ingredient.sources.values())


def _summed(traces: tuple[Trace, ...], unknown: tuple[str, ...]) -> LineAllergens:
    """Allergens that every region excepts are left out; the rest is declared somewhere."""
    kept = tuple(each for each in traces if not set(each.excepted) >= EVERYWHERE)
    contains = {each.allergen for each in kept if each.state == CONTAINS}
    may = {each.allergen for each in kept if each.state == MAY}
    return LineAllergens(
        allergens=tuple(sorted(contains)),
        may_contain=tuple(sorted(may - contains)),
        unknown=tuple(without_claims(each) for each in unknown),
        traces=kept,
    )


def is_class_word(allergen: str) -> bool:
    """Whether the id names a class and no kind: "tree nuts", "fish", "gluten"."""
    return allergen in ALLERGENS and ALLERGENS[allergen].general


def _sentence(words: str) -> str:
    return _capital(words if words.endswith((".", "!", "?")) else words + ".")


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
