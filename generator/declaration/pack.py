"""What a pack says: the text of its label, read for the list to print and for the allergens in it.

A reading never takes anything away. Where a label can be read in two ways, both are believed, and it is said.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from unicodedata import normalize

from generator.catalogue.names import fold
from generator.declaration.brackets import CLOSE, OPEN, bracketed, item_at, sentence_end, split_items
from generator.declaration.claims import Spot, blanked, denied, without_claims
from generator.declaration.kinds import Kinds
from generator.declaration.sentences import Sentence, heading_end, precautions, summaries
from generator.declaration.strange import Strange, strange_words
from generator.declaration.words import Match, matches, plain
from generator.wording.speech import voice

_INVISIBLE = re.compile("[\u00ad\u200b-\u200d\u2060\ufeff]")
_SPACES = re.compile(r"\s+")
_EMPTY_BRACKETS = re.compile(r"\s*(?:\(\s*[,;.\s]*\)|\[\s*[,;.\s]*\])")
_BEFORE_CLOSING = re.compile(r"(?<![\s,;.])[\s,;.]++(?=[)\]])")
_DOUBLED = re.compile(r"\s*[,;](?=\s*[,;.])")
_BEFORE_COMMA = re.compile(r"\s+(?=[,;])")
_AFTER_OPENING = re.compile(r"(?<=[(\[])[\s,;]+")
# Words in brackets that say what a thing does, not what it is made from: "lecithin (emulsifier)".
_DOES = (
    "emulsifier emulsifiers stabiliser stabilizer thickener preservative colour color antioxidant organic "
    "natural artificial gelling raising agent for freshness and added as an a of"
)
_OFFICES = frozenset(_DOES.split())
# Words of a proper name keep their capital letter at the head of an item.
_PLACES = (
    "Brazil Dutch Greek Worcestershire Dijon English French Irish Italian Swiss German Spanish Turkish "
    "Danish Madagascar Tahitian Mexican Himalayan Madeira Demerara Ceylon Vietnamese Atlantic Pacific California "
    "Persian Belgian Scottish Welsh Red Yellow Blue Vitamin Grade"
)
_PROPER = frozenset(_PLACES.split())


# How far behind a word its source is looked for; beyond that the pack is asked about.
_NEAR = 400
# So many strange words are named; of the others their number is.
_MOST_NAMED = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """An allergen that a label names, the words for it, and the regions whose law excepts these words."""

    allergen: str
    words: str
    excepted: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PackReading:
    """A label, read.

    text         the list as to print, without its sentences of precaution and summary and without any claim
    contains     allergens in the order of the text, each once
    may_contain  allergens of its precautions, with the whole sentence as it stands
    asks         what the words leave open, as clauses: "“lecithin” does not say its source …"
    near         words that look like one for an allergen, and that allergen: perhaps misprinted
    tells        whether the label tells more than a name: a list, a summary or something in brackets
    """

    text: str
    contains: tuple[Said, ...]
    may_contain: tuple[Said, ...]
    asks: tuple[str, ...]
    near: tuple[Said, ...]
    tells: bool


@lru_cache(maxsize=2048)
def read_pack(label: str) -> PackReading:
    """Read the text of a label. No text is a mistake; what is not understood is asked about."""
    text = clean(label)
    masked = blanked(text, denied(text))
    warned = precautions(masked)
    listed = blanked(masked, [(each.start, each.doubtful) for each in warned])
    summed = summaries(listed)
    found = matches(listed)
    strange = (*_unexplained(listed, found), *_strange_warned(masked, warned))
    asks = (*_asks(text, listed, found, answered=bool(summed)), *_doubts(text, warned))
    asks += () if summed else _not_known(text, strange)
    return PackReading(
        text=_printed(text, [*warned, *summed]),
        contains=tuple(_contained(text, listed, found, summed)),
        may_contain=tuple(_warned_of(text, masked, warned)),
        asks=tuple(dict.fromkeys(asks)),
        near=_near(text, strange),
        tells=bool(summed) or len(split_items(listed)) > 1 or bool(bracketed(listed)),
    )


def clean(text: str) -> str:
    """Without invisible characters and needless spaces; ligatures and wide letters as what they stand for."""
    visible = _SPACES.sub(_one_space, _INVISIBLE.sub("", text))
    return "".join(each if each.isascii() or not each.isalpha() else _letters(each) for each in visible)


def _one_space(spaces: re.Match[str]) -> str:
    return "\n" if "\n" in spaces.group() else " "


@lru_cache(maxsize=4096)
def _letters(character: str) -> str:
    return normalize("NFKC", character)


def listed_as(reading: PackReading, name: str) -> str:
    """The pack's text in an ingredient list: its own name once, else `name` with the list in brackets."""
    items = split_items(reading.text)
    if not items:
        return without_claims(name)
    if len(items) == 1:
        return lowered(items[0])
    own, colon, rest = reading.text.partition(":")
    if colon and not set(own) & set(OPEN + ",;") and set(fold(own).split()) & set(fold(name).split()):
        return f"{lowered(own.strip())} ({rest.strip()})"
    return f"{without_claims(name)} ({lowered(reading.text)})"


def lowered(text: str) -> str:
    """With a small first letter, unless the word is a proper name, an abbreviation or all in capitals.

    In another language as it stands, for its nouns may have a capital by right.
    """
    if voice().catalogue:
        return text
    word = re.split(r"[^\w'’&]", text, maxsplit=1)[0]
    if not word or word in _PROPER or any(each.isupper() or each.isdigit() for each in word[1:]):
        return text
    return text[0].lower() + text[1:]


def _contained(
    text: str, listed: str, found: tuple[Match, ...], summed: tuple[Sentence, ...]
) -> Iterator[Said]:
    mentions: dict[str, list[Match]] = {}
    kinds = Kinds(listed, found, summed)
    for match in found:
        for allergen in match.meaning.allergens:
            if not kinds.name_closer(allergen, match):
                mentions.setdefault(allergen, []).append(match)
    for allergen, all_of_it in mentions.items():
        # One plain mention is enough to declare it, whatever the others are excepted from.
        plainest = min(all_of_it, key=lambda each: len(each.meaning.excepted))
        excepted = set.intersection(*(set(each.meaning.excepted) for each in all_of_it))
        words = text[plainest.start : plainest.end]
        yield Said(allergen=allergen, words=words, excepted=tuple(sorted(excepted)))


def _warned_of(text: str, masked: str, warned: tuple[Sentence, ...]) -> Iterator[Said]:
    seen: set[str] = set()
    for sentence in warned:
        for match in matches(masked[sentence.start : sentence.end]):
            for allergen in match.meaning.allergens:
                if allergen not in seen:
                    yield Said(allergen=allergen, words=_one_line(text[sentence.start : sentence.end]))
                    seen.add(allergen)


def _asks(text: str, listed: str, found: tuple[Match, ...], *, answered: bool) -> Iterator[str]:
    """What stays open. A summary answers for the whole pack: it must name every allergen (21 USC 343(w))."""
    asked: set[str] = set()
    for match in () if answered else found:
        words = text[match.start : match.end]
        if match.meaning.ask and words not in asked and not _settled(listed, match):
            asked.add(words)
            yield f"“{words}” {match.meaning.ask}"


def _doubts(text: str, warned: tuple[Sentence, ...]) -> Iterator[str]:
    for each in warned:
        if each.doubtful < each.end:
            words = _one_line(text[each.start : each.end])
            yield f"“{words}” does not show where the warning ends (a full stop would)"


def _unexplained(listed: str, found: tuple[Match, ...]) -> tuple[Strange, ...]:
    """Strange words, but for a name whose own brackets say what is in it ("Hilltop crunch (sugar, cocoa)")."""
    return tuple(
        each
        for each in strange_words(listed, found)
        if each.like or not _told_beside(listed, each.start, each.end) - _OFFICES
    )


def _not_known(text: str, strange: tuple[Strange, ...]) -> tuple[str, ...]:
    if not strange:
        return ()
    named = [_with_likeness(text, each) for each in strange[:_MOST_NAMED]]
    more = len(strange) - len(named)
    rest = f"{', '.join(named)} and {more} more" if more else ", ".join(named)
    return (f"{rest} {'is no word' if len(strange) == 1 else 'are no words'} known here",)


def _with_likeness(text: str, each: Strange) -> str:
    like = f" (like {' or '.join(each.like)})" if each.like else ""
    return f"“{text[each.start : each.end]}”{like}"


def _near(text: str, strange: Iterable[Strange]) -> tuple[Said, ...]:
    found = (
        Said(allergen=allergen, words=text[each.start : each.end])
        for each in strange
        for allergen in each.like
    )
    return tuple(dict.fromkeys(found))


def _strange_warned(masked: str, warned: tuple[Sentence, ...]) -> Iterator[Strange]:
    """The same in its sentences of precaution, with places in the whole text."""
    for sentence in warned:
        words = masked[sentence.start : sentence.end]
        for each in strange_words(words, matches(words)):
            yield replace(each, start=each.start + sentence.start, end=each.end + sentence.start)


def _settled(listed: str, match: Match) -> bool:
    words = _told_beside(listed, match.start, match.end)
    if match.meaning.settles:
        return bool(words & set(match.meaning.settles))
    return bool(words - _OFFICES)


def _told_beside(listed: str, start: int, after: int) -> set[str]:
    """The words by which an item explains what stands at `start`: in its brackets, after its colon or its "from"."""
    end = item_at(listed, start)[1]
    rest = listed[after : min(end, after + _NEAR)]
    told = plain(bracketed(rest) + " " + _after_colon_or_from(rest))
    return set(re.findall("[a-z]+", told))


def _after_colon_or_from(rest: str) -> str:
    """Of `: palm, rapeseed` and of `from soya` what names the source; of anything else nothing."""
    found = re.match(r"\s*(?::|(?:made |derived )?from\b)\s*([^,;|]*)", plain(rest))
    return found[1] if found else ""


def _printed(text: str, sentences: list[Sentence]) -> str:
    spots: list[Spot] = [(each.start, _with_stop(text, each)) for each in sentences]
    spots.append((0, heading_end(text)))
    kept = without_claims(blanked(text, _joined(spots), filler=""))
    for untidy in (_EMPTY_BRACKETS, _BEFORE_CLOSING, _AFTER_OPENING, _DOUBLED, _BEFORE_COMMA):
        kept = untidy.sub("", kept)
    return _one_line(_balanced(kept)).strip(" ,;.:")


def _with_stop(text: str, sentence: Sentence) -> int:
    end = min(sentence.doubtful, sentence.end)
    return end + 1 if text[end : end + 1] in (".", "!") and end == sentence_end(text, end) else end


def _joined(spots: list[Spot]) -> list[Spot]:
    joined: list[Spot] = []
    for start, end in sorted(spots):
        if joined and start < joined[-1][1]:
            joined[-1] = (joined[-1][0], max(end, joined[-1][1]))
        else:
            joined.append((start, end))
    return joined


def _balanced(text: str) -> str:
    """With the closing brackets that a label forgot."""
    open_ones: list[str] = []
    for mark in text:
        if mark in OPEN:
            open_ones.append(CLOSE[OPEN.index(mark)])
        elif mark in CLOSE and open_ones:
            open_ones.pop()
    return text + "".join(reversed(open_ones))


def _one_line(text: str) -> str:
    return " ".join(text.split())
