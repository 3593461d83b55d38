"""Which figures the words of a view explain: each by its neighbours in the same sentence.

A maker's own prose, a title, a chapter, a correction: wherever such words stand, the figures in them are the
recipe's. A figure alone explains nothing, for every page has a "430 g" somewhere; it needs its neighbours.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from functools import cache, cached_property, lru_cache
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


@dataclass(frozen=True, slots=True)
class _Row:
    """The values of a record, and the record that it belongs to."""

    values: tuple[object, ...]
    above: "_Row | None"

    def beside(self) -> tuple[object, ...]:
        """The values that a string of this record stands with: those of the nearest record with a label."""
        row: _Row | None = self
        while row is not None and not any(map(_is_label, row.values)):
            row = row.above
        return row.values if row is not None else ()

    def strings(self) -> tuple[str, ...]:
        """The strings of this record, if it is a row of a table."""
        found = tuple(value for value in self.values if isinstance(value, str))
        return found if len(found) <= _RECORD else ()


@dataclass(frozen=True, slots=True)
class _Saying:
    """A string with a figure in it, and where it stands; `told` is false for one of a list in a record."""

    words: str
    row: _Row | None
    told: bool


@dataclass(frozen=True, kw_only=True)
class Sayings:
    """What the strings of some views explain, worked out for the figures that are asked for."""

    views: tuple[object, ...]

    @cached_property
    def _strings(self) -> tuple[_Saying, ...]:
        found: list[_Saying] = []
        for view in self.views:
            _collect(view, None, found)
        return tuple(found)

    @cached_property
    def _companies(self) -> tuple[tuple[str, Company], ...]:
        """The strings that are all figures and have others to go with, as they are written."""
        found = []
        for saying in self._strings:
            record = saying.row.strings() if saying.told and saying.row else ()
            if len(record) > 1 and _is_bare(saying.words):
                others = tuple(each for each in map(letters_of, record) if each)
                if len(others) > 1:
                    found.append((saying.words, Company(words=letters_of(saying.words), others=others)))
        return tuple(found)

    @cached_property
    def _known(self) -> dict[str, tuple[Context, ...]]:
        return {}

    @cached_property
    def _letters(self) -> dict[int, str]:
        """The letters of each string that was looked at so far, with its labels if it is all figures."""
        return {}

    @cached_property
    def _read(self) -> dict[int, tuple[Context, ...]]:
        """The contexts of each string that was looked into so far, by its place among them."""
        return {}

    def contexts(self, figure: str) -> tuple[Context, ...]:
        """The contexts of a figure, which is given as it is written."""
        if figure not in self._known:
            key = letters_of(figure)
            found = (each for each in self._with(figure, key) if each.figure == key)
            self._known[figure] = tuple(dict.fromkeys(found))
        return self._known[figure]

    def companies(self, figure: str) -> Iterator[Company]:
        """The strings that are all figures, this one among them, each with those it is never told without."""
        numbers = _NUMBER.findall(figure)
        for words, company in self._companies:
            if all(number in words for number in numbers):
                yield company

    def _with(self, figure: str, key: str) -> Iterator[Context]:
        numbers = _NUMBER.findall(figure)
        for place, saying in enumerate(self._strings):
            if not all(number in saying.words for number in numbers):
                continue
            if place not in self._letters:
                self._letters[place] = letters_of(" ".join(_with_neighbours(saying)))
            # Only where its letters are, in whatever words, can the figure be.
            if key not in self._letters[place]:
                continue
            if place not in self._read:
                told = (contexts_in(words) for words in _with_neighbours(saying))
                self._read[place] = tuple(dict.fromkeys(chain.from_iterable(told)))
            yield from self._read[place]


def contexts_in(words: str) -> Iterator[Context]:
    """A context for each figure of a string; it reaches as far as the next figure that is not of the same measure."""
    if any(each in words for each in "<>"):
        yield from contexts_in(spoken(words))
    text = _unmarked(readable(words))
    found = tuple(figures_in(text))
    for number, figure in enumerate(found):
        context = _context(text, figure, *_reach(text, found, number))
        if not _is_enough(context):
            # A figure that stands between two others is known by them.
            context = _context(text, figure, 0, len(text))
        if _is_enough(context):
            yield context


def spoken(text: str) -> str:
    """The signs that a plain text may not hold, in words."""
    if "<" not in text and ">" not in text:
        return text
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


def _collect(view: object, row: _Row | None, found: list[_Saying]) -> None:
    """Every string with a number in it. What has no words of its own stands beside those of what it belongs to."""
    if isinstance(view, str):
        if _NUMBER.search(view):
            found.append(_Saying(view, row, False))
    elif isinstance(view, list | tuple):
        for value in view:
            _collect(value, row, found)
    elif isinstance(view, SizesView):
        # The other sizes are for the page's script: what is seen explains itself without them.
        for each in view.offers:
            _collect((each.title, each.scale, each.notes), row, found)
    elif names := _names_of(type(view)):  # type: ignore[arg-type]
        values = tuple([getattr(view, name) for name in names])
        own = _Row(values, row)
        for value in values:
            if isinstance(value, str):
                if _NUMBER.search(value):
                    found.append(_Saying(value, own, True))
            elif value:
                _collect(value, own, found)
    elif isinstance(view, Mapping):
        _collect(tuple(view.values()), row, found)


@cache
def _names_of(kind: type) -> tuple[str, ...]:
    """The fields of a kind of record; none of anything else."""
    return tuple(each.name for each in fields(kind)) if is_dataclass(kind) else ()


def _with_neighbours(saying: _Saying) -> Iterator[str]:
    """The string; one that is all figures with each label beside it, before and after."""
    if not _is_bare(saying.words):
        yield saying.words
        return
    for label in saying.row.beside() if saying.row else ():
        if isinstance(label, str) and _is_label(label):
            yield f"{label} {saying.words}"
            yield f"{saying.words} {label}"


@lru_cache(maxsize=1 << 11)
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
