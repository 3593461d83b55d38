"""The sentences of a pack beside its list: what it may contain, and the summary "Contains: …".

Precaution is voluntary everywhere and has no fixed form, so many are read: "may contain", "traces of", "made
in a facility that also processes", "shared equipment", "not suitable for". All mean: may contain (common
practice).
"""

import re
from bisect import bisect_left
from collections import deque
from dataclasses import dataclass
from functools import lru_cache

from generator.catalogue.allergens import ALLERGENS
from generator.catalogue.names import number_forms
from generator.declaration.brackets import depth_at, sentence_end, sentence_start, short_items
from generator.declaration.words import plain

_PLACE = (
    r"(?:facilit(?:y|ies)|factory|factories|plant|bakery|kitchen|site|premises|environment|lines?|equipment|"
    r"machinery|machines?|area|building|place|room)"
)
_STARTER = re.compile(
    r"\b(?:may|might|could|can) (?:also |still |possibly |therefore |occasionally )*(?:contain|include)\b"
    r"|\b(?:may|might|could) (?:also )?be present ?:"
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
    r"|\b(?:cannot|can not|can't|unable to|do not|not) (?:be )?guaranteed?\b"
    # On imported packs: French, German, Spanish, Italian, Dutch, Portuguese, without accents.
    r"|\b(?:peut|peuvent|pourrait) contenir\b|\btraces (?:eventuelles |possibles )?d(?:e|es|u)?\b"
    r"|\bkann (?:auch |ebenfalls )?(?:spuren|enthalten|[^.\n]{1,120} enthalten)\b|\bspuren von\b"
    r"|\bpuede contener\b|\b(?:trazas|tracce|vestigios|sporen|spar|spor) (?:de|di|van|af|av)\b"
    r"|\bpuo contenere\b|\bpode conter\b|\bkan (?:sporen|[^.\n]{1,120} bevatten)\b"
)
_PRESENT = re.compile(r"\b(?:may|might|could) (?:also )?be present\b|\bpossibly present\b")
_INTRODUCES = re.compile(
    r"\s*(?:this|the|these|it|due|our|all|we|product|recipe|warning|allerg\w*|although|while|also|packed|"
    r"possible)\b"
)
_BREAKS_OFF = re.compile(
    r"[,;]?\s*(?:and )?\b(?P<word>contains?\b(?! (?:traces|no)\b)|ingredients?\s*:|allergens?\s*:)"
)
_CONTAINS = re.compile(r"\bcontains?\b\s*:?")
_A_SHARE = re.compile(
    r"[^,.;]{0,24}(?:%|\bpercent\b|\bper cent\b)|:? ?(?:one or more|at least one|less than|some or all)\b"
)
_ANNOUNCES = re.compile(
    r"(?:(?:allerg\w*|this|the|it|also|product|food|advice|information|warning)\b|[^a-z0-9])*"
)
_LONGEST_ANNOUNCEMENT = 120
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
_MOST_WORDS = max(len(each.split()) for each in _CLASS_WORDS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentence:
    """A stretch of a pack's text (end exclusive). From `doubtful` on its words may be ingredients."""

    start: int
    end: int
    doubtful: int


def precautions(text: str) -> tuple[Sentence, ...]:
    """Every stretch that says what may be in the pack, in order, none overlapping."""
    low = plain(text)
    found: list[Sentence] = []
    for starter in _STARTER.finditer(low):
        last = found[-1].end if found else 0
        if starter.start() >= last:
            found.append(_forward(low, starter, since=last))
    return _with_present(low, tuple(found))


def summaries(text: str) -> tuple[Sentence, ...]:
    """Sentences "Contains: milk, soy." outside brackets that name nothing but allergens.

    "Contains 2% or less of: salt" is a part of the list and no summary.
    """
    low, found = plain(text), list[Sentence]()
    for word in _CONTAINS.finditer(low):
        end = _stop(low, word.end())
        if depth_at(low, word.start()) or _A_SHARE.match(low, word.end()):
            continue
        if only_allergens(low[word.end() : end]):
            found.append(Sentence(start=_with_announcement(low, word.start()), end=end, doubtful=end))
    return tuple(found)


def only_allergens(text: str) -> bool:
    """Whether a list names nothing but allergens by their plain words, and at least one."""
    some = False
    try:
        for item in short_items(text):
            if not _plain_allergen(item):
                return False
            some = True
    except ValueError:
        return False
    return some


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
    """A word of a list of allergens: "milk", "tree nuts almonds"; not "butter", which is an ingredient."""
    words = tuple(name.split())
    reached = [True] + [False] * len(words)
    for start in (at for at in range(len(words)) if reached[at]):
        for end in range(start + 1, min(start + _MOST_WORDS, len(words)) + 1):
            reached[end] = reached[end] or _is_class_word(" ".join(words[start:end]))
    return reached[-1]


@lru_cache(maxsize=4096)
def _is_class_word(name: str) -> bool:
    return any(each in _CLASS_WORDS for each in number_forms(name))


def _forward(low: str, starter: re.Match[str], *, since: int) -> Sentence:
    begun = max(sentence_start(low, starter.start()), since)
    before = low[begun : starter.start()]
    introduced = bool(_INTRODUCES.match(before)) and "contain" not in before and "," not in before
    end = _stop(low, starter.end())
    in_list = bool(before.strip()) and not introduced
    doubtful = _doubtful(low, starter.end(), end) if in_list else end
    return Sentence(start=begun if introduced else starter.start(), end=end, doubtful=doubtful)


def _with_present(low: str, known: tuple[Sentence, ...]) -> tuple[Sentence, ...]:
    """With those that end in "may be present", which reach back no further than the one before them."""
    found, waiting, last = list[Sentence](), deque(known), 0
    for present in _PRESENT.finditer(low):
        while waiting and waiting[0].start <= present.start():
            found.append(waiting.popleft())
            last = found[-1].end
        if present.start() >= last:
            found.append(_backward(low, present, since=last))
            last = found[-1].end
    return (*found, *waiting)


def _doubtful(low: str, start: int, end: int) -> int:
    """Within a list, what follows the first comma is believed only if all of it is plain allergens."""
    comma = re.compile("[,;]").search(low, start, end)
    if comma is None or only_allergens(low[comma.end() : end]):
        return end
    return comma.start()


def _backward(low: str, present: re.Match[str], *, since: int) -> Sentence:
    """Of "nuts may be present" the words before, if plain allergens; else the last item, in doubt too."""
    begun = max(sentence_start(low, present.start()), since)
    if only_allergens(low[begun : present.start()].rpartition(":")[2]):
        return Sentence(start=begun, end=present.end(), doubtful=present.end())
    last = max(low.rfind(mark, begun, present.start()) for mark in ",;")
    start = last + 1 if last >= 0 else begun
    return Sentence(start=start, end=present.end(), doubtful=start)


def _stop(low: str, start: int) -> int:
    """Where the sentence ends: at its own end, or where the next heading breaks it off."""
    end = sentence_end(low, start)
    breaks = _breaks(low)
    at = bisect_left(breaks, start, key=lambda each: each[0])
    if at < len(breaks) and breaks[at][2] <= end:
        return max(start, breaks[at][1])
    return end


@lru_cache(maxsize=32)
def _breaks(low: str) -> tuple[tuple[int, int, int], ...]:
    """Each heading that breaks a sentence off: where its word stands, where it begins, where it ends."""
    return tuple((each.start("word"), each.start(), each.end()) for each in _BREAKS_OFF.finditer(low))


def _with_announcement(low: str, index: int) -> int:
    begun = sentence_start(low, index)
    near = index - begun <= _LONGEST_ANNOUNCEMENT
    return begun if near and _ANNOUNCES.fullmatch(low, begun, index) else index
