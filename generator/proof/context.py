"""Which figures the words of a view explain: each by its neighbours in the same sentence.

A maker's own prose, a title, a chapter, a correction: wherever such words stand, the figures in them are the
recipe's. A figure alone explains nothing, for every page has a "430 g" somewhere; it needs its neighbours.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from functools import cached_property
from itertools import chain

from generator.present.size_views import SizesView
from generator.proof.figures import Figure, are_joined, figures_in
from generator.proof.squeeze import letters_of, readable
from generator.wording.speech import later, say

# So many letters at each side are looked at, or all there are in the same string.
_NEAR = 14
# A figure with fewer letters beside it is as good as alone.
_LEAST = 3
# A string this short may be what another one is called by ("bread flour", "Hydration").
_LABEL = 60
# A record of more strings than this is no row of a table.
_RECORD = 6
_NUMBERED = re.compile(r"^\s*\d+[.)]\s+", re.MULTILINE)
_ADDRESS = re.compile(r"\]\([^)\s]*\)")
_NUMBER = re.compile(r"[\d¼½¾⅐-⅞]+")


@dataclass(frozen=True, slots=True, kw_only=True)
class Context:
    """The letters of a figure, and those beside it."""

    before: str
    figure: str
    after: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Company:
    """The letters of a string that is all figures, and those of all the strings that it belongs together with."""

    words: str
    others: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Saying:
    """A string with a figure in it, the values it stands with, and the strings of its own record, if it has one."""

    words: str
    beside: tuple[object, ...]
    record: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Sayings:
    """What the strings of some views explain, worked out for the figures that are asked for."""

    views: tuple[object, ...]

    @cached_property
    def _strings(self) -> tuple[_Saying, ...]:
        return tuple(each for view in self.views for each in _strings_of(view, ()))

    @cached_property
    def _numbers(self) -> tuple[frozenset[str], ...]:
        """The numbers of each string."""
        return tuple(frozenset(_NUMBER.findall(each.words)) for each in self._strings)

    @cached_property
    def _known(self) -> dict[tuple[str, bool], tuple[Context, ...]]:
        return {}

    @cached_property
    def _read(self) -> dict[int, tuple[Context, ...]]:
        """The contexts of each string that was looked into so far, by its place among them."""
        return {}

    def contexts(self, figure: str, *, wide: bool = True) -> tuple[Context, ...]:
        """The contexts of a figure, which is given as it is written.

        Strings with just its numbers hold most of what is asked for, and are few; only when `wide` is a number that
        is written otherwise ("1 000" for "1000") looked for in the others.
        """
        key = letters_of(figure), wide
        if key not in self._known:
            found = (each for each in self._with(figure, wide=wide) if each.figure == key[0])
            self._known[key] = tuple(dict.fromkeys(found))
        return self._known[key]

    def companies(self, figure: str) -> Iterator[Company]:
        """The strings that are all figures, this one among them, each with those it is never told without."""
        for saying in (self._strings[place] for place in self._having(figure, wide=True)):
            others = tuple(each for each in map(letters_of, saying.record) if each)
            if len(others) > 1 and _is_bare(saying.words):
                yield Company(words=letters_of(saying.words), others=others)

    def _with(self, figure: str, *, wide: bool) -> Iterator[Context]:
        for place in self._having(figure, wide=wide):
            if place not in self._read:
                told = (contexts_in(words) for words in _with_neighbours(self._strings[place]))
                self._read[place] = tuple(dict.fromkeys(chain.from_iterable(told)))
            yield from self._read[place]

    def _having(self, figure: str, *, wide: bool) -> Iterator[int]:
        """The place of every string with the numbers of a figure: as they are, or in any longer number too."""
        numbers = frozenset(_NUMBER.findall(figure))
        for place, known in enumerate(self._numbers):
            if numbers <= known or (wide and all(number in self._strings[place].words for number in numbers)):
                yield place


def contexts_in(words: str) -> Iterator[Context]:
    """A context for each figure of a string; it reaches as far as the next figure that is not of the same measure."""
    if any(each in words for each in "<>"):
        yield from contexts_in(_spoken(words))
    text = _unmarked(readable(words))
    found = tuple(figures_in(text))
    for number, figure in enumerate(found):
        context = _context(text, figure, *_reach(text, found, number))
        if not _is_enough(context):
            # A figure that stands between two others is known by them.
            context = _context(text, figure, 0, len(text))
        if _is_enough(context):
            yield context


def _spoken(text: str) -> str:
    """The signs that a plain text may not hold, in words."""
    signs = (("<=", later("at most ")), (">=", later("at least ")))
    for sign, words in (*signs, ("<", later("less than ")), (">", later("more than "))):
        text = text.replace(sign, f" {say(words)}")
    return text


def _unmarked(text: str) -> str:
    """Without the marks of Markdown that a page does not show: numbers of lists, addresses of links."""
    if "\n" in text or "](" in text:
        text = _NUMBERED.sub("", text)
        text = _ADDRESS.sub("]", text)
    return text


def _context(text: str, figure: Figure, start: int, end: int) -> Context:
    # Four characters for a letter are enough, for what is dropped between letters is spaces and marks.
    before = letters_of(text[max(start, figure.start - 4 * _NEAR) : figure.start])[-_NEAR:]
    after = letters_of(text[figure.end : min(end, figure.end + 4 * _NEAR)])[:_NEAR]
    return Context(before=before, figure=letters_of(figure.words), after=after)


def _is_enough(context: Context) -> bool:
    return len(context.before) + len(context.after) >= _LEAST


def _reach(text: str, found: tuple[Figure, ...], number: int) -> tuple[int, int]:
    first = last = number
    while first > 0 and are_joined(text, found[first - 1], found[first]):
        first -= 1
    while last + 1 < len(found) and are_joined(text, found[last], found[last + 1]):
        last += 1
    start = found[first - 1].end if first > 0 else 0
    end = found[last + 1].start if last + 1 < len(found) else len(text)
    return start, end


def _strings_of(view: object, beside: tuple[object, ...]) -> Iterator[_Saying]:
    """Every string with a number in it. What has no words of its own stands beside those of what it belongs to."""
    if isinstance(view, str):
        yield from _told(view, beside, ())
    elif isinstance(view, SizesView):
        # The other sizes are for the page's script: what is seen explains itself without them.
        for each in view.offers:
            yield from _strings_of((each.title, each.scale, each.notes), beside)
    elif is_dataclass(view) and not isinstance(view, type):
        values = tuple(getattr(view, each.name) for each in fields(view))
        own = values if any(map(_is_label, values)) else beside
        record = tuple(value for value in values if isinstance(value, str))
        for value in values:
            if isinstance(value, str):
                yield from _told(value, own, record)
            else:
                yield from _strings_of(value, own)
    elif isinstance(view, Mapping):
        yield from _strings_of(tuple(view.values()), beside)
    elif isinstance(view, list | tuple):
        for value in view:
            yield from _strings_of(value, beside)


def _told(words: str, beside: tuple[object, ...], record: tuple[str, ...]) -> Iterator[_Saying]:
    if _NUMBER.search(words):
        yield _Saying(words=words, beside=beside, record=record if len(record) <= _RECORD else ())


def _with_neighbours(saying: _Saying) -> Iterator[str]:
    """The string; one that is all figures with each label beside it, before and after."""
    if not _is_bare(saying.words):
        yield saying.words
        return
    for label in saying.beside:
        if isinstance(label, str) and _is_label(label):
            yield f"{label} {saying.words}"
            yield f"{saying.words} {label}"


def _is_bare(words: str) -> bool:
    """Whether a string is a figure and hardly more: such a one needs a neighbour."""
    if not words[:1].isnumeric() or len(words) > _LABEL:
        return False
    text = readable(words)
    rest = list(text)
    for figure in figures_in(text):
        rest[figure.start : figure.end] = [" "] * (figure.end - figure.start)
    return len(letters_of("".join(rest))) < 5


def _is_label(value: object) -> bool:
    if not isinstance(value, str) or not 1 < len(value) <= _LABEL:
        return False
    return any(each.isalpha() for each in value) and not _is_bare(value)
