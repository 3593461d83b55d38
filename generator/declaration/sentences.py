"""The sentences of a pack beside its list: what it may contain, and the summary "Contains: …".

Precaution is voluntary everywhere and has no fixed form, so many are read: "may contain", "traces of", "made
in a facility that also processes", "shared equipment", "not suitable for". All mean: may contain (common
practice).
"""

import re
from dataclasses import dataclass

from generator.catalogue.allergens import ALLERGENS
from generator.catalogue.names import number_forms
from generator.declaration.brackets import depth_at, sentence_end, sentence_start, split_items
from generator.declaration.words import plain

_PLACE = (
    r"(?:facilit(?:y|ies)|factory|factories|plant|bakery|kitchen|site|premises|environment|lines?|equipment|"
    r"machinery|machines?|area|building|place|room)"
)
_STARTER = re.compile(
    r"\b(?:may|might|could|can) (?:also |still |possibly |therefore |occasionally )*(?:contain|include)\b"
    r"|\bmay (?:also )?(?:have )?(?:come |been )?(?:in|into) contact\b"
    r"|\b(?:possible |minute |small )?traces? (?:amounts? )?of\b|\btraces?:"
    r"|\b(?:is |are |was |were )?(?:made|produced|manufactured|packed|packaged|processed|prepared|"
    r"baked|handled|stored|roasted|blended|bottled)"
    rf" (?:in|on|at|with|near|alongside|using)\b(?=[^.\n]{{0,80}}\b{_PLACE}\b)"
    rf"|\b(?:shared|same|common) {_PLACE}\b"
    rf"|\b(?:our|this|the|a) {_PLACE} (?:that |which |also |where )*"
    r"(?:handles?|uses?|processes|produces|packs)\b"
    r"|\balso (?:handles?|uses?|processes|produces|packs)\b"
    r"|\b(?:not suitable|unsuitable)\b|\bcross (?:contamination|contact)\b"
    r"|\b(?:cannot|can not|can't|unable to) (?:be )?guaranteed?\b"
)
_PRESENT = re.compile(r"\b(?:may|might|could) (?:also )?be present\b|\bpossibly present\b")
_INTRODUCES = re.compile(
    r"\s*(?:this|the|these|it|due|our|all|we|product|recipe|warning|allerg\w*|although|while|also|packed|"
    r"possible)\b"
)
_BREAKS_OFF = re.compile(
    r"[,;]?\s*(?:and )?\b(?:contains?\b(?! (?:traces|no)\b)|ingredients?\s*:|allergens?\s*:)"
)
_CONTAINS = re.compile(r"\bcontains?\b\s*:?")
_A_SHARE = re.compile(
    r"[^,.;]{0,24}(?:%|\bpercent\b|\bper cent\b)|:? ?(?:one or more|at least one|less than|some or all)\b"
)
_ANNOUNCES = re.compile(r"(?:allerg\w*|this|the|it|also|product|food|advice|information|warning|[^a-z0-9]+)*")
_HEADING = re.compile(r"\s*\bingredients?\s*:")
_FILLING = re.compile(
    r"\b(?:other|traces?|of|products?|ingredients?|the|following|also|any|from|derivatives?|sources?|small|"
    r"amounts?|possible)\b"
)

# Lists of allergens use the names of the classes; other synonyms ("butter") name ingredients.
_SYNONYMS = (
    "nut, soya, soybean, soya bean, soy bean, dairy, groundnut, sesame seed, oat, shellfish, crustacea, "
    "sulphite, sulfite, sulphur dioxide, sulfur dioxide, mollusk, lupine, celeriac, brazil, cashew nut, "
    "pecan nut, pistachio nut, macadamia nut, cereal, cereals containing gluten, cereal containing gluten, "
    "seed, allergen, lactose"
)
_CLASS_WORDS = frozenset(ALLERGENS) | frozenset(_SYNONYMS.split(", "))


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentence:
    """A stretch of a pack's text (end exclusive). From `doubtful` on its words may be ingredients."""

    start: int
    end: int
    doubtful: int


def precautions(text: str) -> tuple[Sentence, ...]:
    """Every stretch that says what may be in the pack, in order, none overlapping."""
    low, found = plain(text), list[Sentence]()
    for starter in _STARTER.finditer(low):
        if not found or starter.start() >= found[-1].end:
            found.append(_forward(low, starter))
    for present in _PRESENT.finditer(low):
        if not any(each.start <= present.start() < each.end for each in found):
            found.append(_backward(low, present))
    return tuple(sorted(found, key=lambda each: each.start))


def summaries(text: str) -> tuple[Sentence, ...]:
    """Sentences "Contains: milk, soy." outside brackets that name nothing but allergens.

    "Contains 2% or less of: salt" is a part of the list and no summary.
    """
    low, found = plain(text), list[Sentence]()
    for word in _CONTAINS.finditer(low):
        end = _stop(low, word.end())
        names_only = only_allergens(low[word.end() : end])
        if depth_at(low, word.start()) or _A_SHARE.match(low, word.end()) or not names_only:
            continue
        found.append(Sentence(start=_with_announcement(low, word.start()), end=end, doubtful=end))
    return tuple(found)


def only_allergens(text: str) -> bool:
    """Whether a list names nothing but allergens by their plain words, and at least one."""
    items = split_items(text)
    return bool(items) and all(_plain_allergen(each) for each in items)


def heading_end(text: str) -> int:
    """The index after a leading "Ingredients:", or 0."""
    found = _HEADING.match(plain(text))
    return found.end() if found else 0


def _plain_allergen(item: str) -> bool:
    words = re.sub(r"[^a-z0-9 ]", " ", plain(item))
    names = [" ".join(each.split()) for each in re.split(r"\b(?:and|or)\b", _FILLING.sub(" ", words))]
    named = [each for each in names if each]
    return bool(named) and all(_class_word(each) for each in named)


def _class_word(name: str) -> bool:
    """A word of a list of allergens: "milk", "tree nuts", "almonds"; not "butter", which is an ingredient."""
    return any(_alone_or_in_pairs(form) for form in number_forms(name))


def _alone_or_in_pairs(name: str) -> bool:
    if name in _CLASS_WORDS:
        return True
    first, _, rest = name.partition(" ")
    pairs = [(name[:at], name[at + 1 :]) for at, mark in enumerate(name) if mark == " "]
    return bool(first and rest) and any(
        any(one in _CLASS_WORDS for one in number_forms(head)) and _alone_or_in_pairs(tail)
        for head, tail in pairs
    )


def _forward(low: str, starter: re.Match[str]) -> Sentence:
    begun = sentence_start(low, starter.start())
    before = low[begun : starter.start()]
    introduced = bool(_INTRODUCES.match(before)) and "contain" not in before and "," not in before
    end = _stop(low, starter.end())
    in_list = bool(before.strip()) and not introduced
    doubtful = _doubtful(low, starter.end(), end) if in_list else end
    return Sentence(start=begun if introduced else starter.start(), end=end, doubtful=doubtful)


def _doubtful(low: str, start: int, end: int) -> int:
    """Within a list, what follows the first comma is believed only if all of it is plain allergens."""
    comma = re.compile("[,;]").search(low, start, end)
    if comma is None or only_allergens(low[comma.end() : end]):
        return end
    return comma.start()


def _backward(low: str, present: re.Match[str]) -> Sentence:
    """Of "nuts may be present" the words before, if plain allergens; else the last item, in doubt too."""
    begun = sentence_start(low, present.start())
    if only_allergens(low[begun : present.start()].rpartition(":")[2]):
        return Sentence(start=begun, end=present.end(), doubtful=present.end())
    last = max(low.rfind(mark, begun, present.start()) for mark in ",;")
    start = last + 1 if last >= 0 else begun
    return Sentence(start=start, end=present.end(), doubtful=start)


def _stop(low: str, start: int) -> int:
    end = sentence_end(low, start)
    broken = _BREAKS_OFF.search(low, start, end)
    return broken.start() if broken else end


def _with_announcement(low: str, index: int) -> int:
    begun = sentence_start(low, index)
    announced = _ANNOUNCES.fullmatch(low, begun, index)
    return begun if announced else index
