"""Who avoids what, from `private/people.yaml`, and what a bake declares of it. It is the maker's own, and no promise.

    Ilka:
      avoids: [hazelnut, tree nuts]
      note: carries her own medicine

Four answers: contains, may contain, unknown, not stated. There is none for absence.
"""

from collections.abc import Iterable, Iterator, Mapping
from collections.abc import Sequence as Row
from dataclasses import dataclass
from typing import TypeVar

from generator.catalogue.allergens import ALLERGENS, allergens_named, allergens_near
from generator.catalogue.names import fold, number_forms
from generator.declaration.lines import CONTAINS, MAY, formula_allergens, is_class_word, without_pack
from generator.declaration.model import LineAllergens, Trace
from generator.declaration.regions import allergen_word, allergens_worded
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import Span
from generator.formula.model import Formula
from generator.source.document import Mapping as Keys
from generator.source.document import Node, Sequence, Text
from generator.source.fields import check_keys, text_of, texts_of
from generator.wording.speech import later, say, voice

T = TypeVar("T")
UNKNOWN, NOT_STATED = "unknown", "not stated"
ANSWERS = (CONTAINS, MAY, UNKNOWN, NOT_STATED)
# One of these is meant by the whole class: the milk of any animal, the egg of any bird.
_WHOLE_CLASSES = frozenset({"milk", "egg"})
# Triticale is wheat crossed with rye.
_HYBRIDS: Mapping[str, frozenset[str]] = {"triticale": frozenset({"wheat", "rye"})}


@dataclass(frozen=True, slots=True, kw_only=True)
class Avoided:
    """A word as the maker wrote it, and the allergens it names; none where it is no allergen known here."""

    word: str
    ids: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Eater:
    name: str
    avoids: tuple[Avoided, ...]
    note: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """What a bake declares of one thing that a person avoids. `reasons` say where it comes from.

    Of "not stated" they name the packs that are in no pantry, so that nobody takes silence for an answer.
    """

    word: str
    state: str
    reasons: tuple[str, ...]


def read_people(document: Keys | None) -> tuple[tuple[Eater, ...], Diagnostics]:
    """Everyone in the file, and every mistake in it."""
    found: list[Diagnostic] = []
    people = tuple(_person(key, node, found) for key, node in (document.entries if document else ()))
    return people, tuple(found)


def _person(key: Text, node: Node, found: list[Diagnostic]) -> Eater:
    row = node if isinstance(node, Keys) else Keys(entries=(), span=node.span)
    if not isinstance(node, Keys):
        hint = "Write below the name what the person avoids, as in “avoids: [hazelnut, milk]”."
        found.append(_fault("G011", node.span, f"“{key.value}” needs keys and values", hint))
    found += check_keys(row, ("avoids", "note"), what="a person")
    avoids = tuple(_avoided(each, found) for each in _words(row.get("avoids"), found))
    if isinstance(node, Keys) and not avoids:
        hint = "Write “avoids: [hazelnut, milk]”; the table says nothing of this person."
        found.append(_fault("G012", key.span, f"it is not said what “{key.value}” avoids", hint))
    note = _taken(text_of(row.get("note")), found) or ""
    return Eater(name=" ".join(key.value.split()), avoids=avoids, note=note)


def _words(node: Node | None, found: list[Diagnostic]) -> Iterator[Text]:
    _taken(texts_of(node), found)
    places = node.items if isinstance(node, Sequence) else (node,)
    return (each for each in places if isinstance(each, Text) and each.value.strip())


def _avoided(word: Text, found: list[Diagnostic]) -> Avoided:
    ids = allergens_named(word.value) or allergens_worded(word.value)
    if not ids:
        near = " or ".join(f"“{each}”" for each in allergens_near(word.value))
        hint = (
            f"Did you mean {near}? " if near else ""
        ) + "Else only the words of the lists are searched for it."
        found.append(_fault("G010", word.span, f"“{word.value.strip()}” is not an allergen known here", hint))
    return Avoided(word=" ".join(word.value.split()), ids=ids)


def answers_for(
    eater: Eater, formula: Formula, *, book: Mapping[str, Formula], statement: str
) -> tuple[Answer, ...]:
    """One answer for each thing the person avoids. `statement` is the list of ingredients as plain text."""
    carried = formula_allergens(formula, book=book)
    silent = _silent(without_pack(formula, book=book))
    return tuple(_answer(each, carried, statement, silent) for each in eater.avoids)


def _silent(items: Row[str]) -> tuple[str, ...]:
    if not items:
        return ()
    named = ", ".join(items)
    return (
        say("no pack stands in the pantry for {items}: what such a pack warns of is not known", items=named),
    )


def worst(answers: Iterable[Answer]) -> str:
    """The gravest state of several; "not stated" of none."""
    states = {each.state for each in answers}
    return next((state for state in ANSWERS if state in states), NOT_STATED)


def _answer(avoided: Avoided, carried: LineAllergens, statement: str, silent: tuple[str, ...]) -> Answer:
    if not avoided.ids:
        return _by_words(avoided.word, statement)
    certain = [each for each in carried.traces if each.state == CONTAINS and is_meant(each, avoided.ids)]
    perhaps = [each for each in carried.traces if each not in certain and may_be_meant(each, avoided.ids)]
    unknown = tuple(carried.unknown)
    reasons = (*_told(certain), *_told(perhaps), *unknown)
    if certain:
        return Answer(word=avoided.word, state=CONTAINS, reasons=reasons)
    state = MAY if perhaps else UNKNOWN if unknown else NOT_STATED
    return Answer(word=avoided.word, state=state, reasons=reasons or silent)


def _by_words(word: str, statement: str) -> Answer:
    """Of what is no allergen known here: the list has the word, or nobody knows."""
    listed = f" {fold(statement)} "
    marks = str.maketrans(dict.fromkeys("(),.;:", " "))
    spaced = f" {' '.join(listed.translate(marks).split())} "
    if any(f" {form} " in spaced for form in number_forms(fold(word))):
        return Answer(
            word=word, state=CONTAINS, reasons=(say("the list of ingredients names {word}", word=word),)
        )
    reason = say("“{word}” is no allergen that packs must state: ask what is in them", word=word)
    return Answer(word=word, state=UNKNOWN, reasons=(reason,))


def is_meant(trace: Trace, avoided: tuple[str, ...]) -> bool:
    """Whether what is declared is what is avoided: itself, a kind of an avoided class, or a hybrid of it."""
    found = trace.allergen
    return any(
        found == each
        or each in _HYBRIDS.get(found, ())
        or (
            (is_class_word(each) or each in _WHOLE_CLASSES)
            and ALLERGENS[found].group == ALLERGENS[each].group
        )
        for each in avoided
    )


def may_be_meant(trace: Trace, avoided: tuple[str, ...]) -> bool:
    """A precaution for it, or a class word ("tree nuts") that may stand for the kind that is avoided."""
    wide = is_class_word(trace.allergen) and any(
        ALLERGENS[trace.allergen].group == ALLERGENS[each].group for each in avoided
    )
    return wide or (trace.state == MAY and is_meant(trace, avoided))


def _told(traces: Iterable[Trace]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(_trace_words(each) for each in traces))


_CONTAINS, _MAY = (
    later("{item}: contains {allergen} ({source})"),
    later("{item}: may contain {allergen} ({source})"),
)
_SOURCES = {
    "label of ": later("label of {name}"),
    "pantry entry of ": later("pantry entry of {name}"),
    "its name": later("its name"),
}


def _trace_words(trace: Trace) -> str:
    """What it carries and where that stands. The words of a pantry row are its keys, which only English reads."""
    sentence = _MAY if trace.state == MAY else _CONTAINS
    if not voice().catalogue:
        told = f"{trace.source}: {trace.words}"
        return say(sentence, item=trace.item, allergen=trace.allergen, source=told)
    source = _source_words(trace.source)
    told = source if "pantry entry of " in trace.source else f"{source}: {trace.words}"
    return say(sentence, item=trace.item, allergen=allergen_word(trace.allergen), source=told)


def _source_words(source: str) -> str:
    start = next((each for each in _SOURCES if source.startswith(each)), None)
    if start is not None:
        return say(_SOURCES[start], name=source.removeprefix(start))
    recipe, _, inner = source.removeprefix("recipe ").partition(": ")
    return say("recipe {name}: {source}", name=recipe, source=_source_words(inner)) if inner else source


def _taken(read: tuple[T, Diagnostics], found: list[Diagnostic]) -> T:
    value, faults = read
    found += [each for each in faults if each not in found]
    return value


def _fault(code: str, span: Span, message: str, hint: str) -> Diagnostic:
    return Diagnostic(code=code, message=message, span=span, hint=hint)
