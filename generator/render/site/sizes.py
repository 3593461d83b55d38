"""What the script of a recipe's page may choose from: every string is here already, and it only swaps them.

Each element that changes has a data-n with the number of its column of words, or two numbers where the order of
weight and volume makes a difference; a temperature has a data-h. A column has one number for each size, which
leads into the list of distinct words, or one alone where all sizes say the same.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from markupsafe import Markup

from generator.present.size_views import OfferView, SizesView
from generator.render.rich_text import tied, unit_pattern


def _no_marks() -> Mapping[str, Markup]:
    return MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """`data` is JSON for a script element, "" where a page offers nothing; `marks` are attributes by place."""

    data: str = ""
    marks: Mapping[str, Markup] = field(default_factory=_no_marks)

    def mark(self, place: str) -> Markup:
        """The attribute that lets an element change, with a blank before it; "" where it stays as it is."""
        return self.marks.get(place, Markup())


def choices_of(sizes: SizesView | None) -> Choices:
    """The choices of one page."""
    if sizes is None:
        return Choices()
    words, columns = _Numbered(), _Numbered()
    marks = {}
    for number, place in enumerate(sizes.places):
        by_weight, by_volume = _columns(sizes.offers, number)
        if len({*by_weight, *by_volume}) > 1:
            both = [tuple(words.number(tied(each)) for each in column) for column in (by_weight, by_volume)]
            numbers = dict.fromkeys(columns.number(_short(column)) for column in both)
            marks[place] = Markup(' data-n="{}"').format(" ".join(map(str, numbers)))
    heats = _Numbered()
    for place, told in zip(sizes.heat_places, sizes.heats, strict=True):
        if len(set(told)) > 1:
            number = heats.number(tuple(tied(each) for each in told))
            marks[place] = Markup(' data-h="{}"').format(number)
    return Choices(data=_data(sizes, words, columns, heats), marks=MappingProxyType(marks))


class _Numbered:
    """Distinct values, numbered in the order in which they are first asked for."""

    def __init__(self) -> None:
        self._known: dict[object, int] = {}

    def number(self, value: object) -> int:
        return self._known.setdefault(value, len(self._known))

    @property
    def values(self) -> list[object]:
        return list(self._known)


def _columns(offers: tuple[OfferView, ...], number: int) -> tuple[list[str], list[str]]:
    """What stands at one place in every size: with the weight first, with the volume first."""
    return [each.by_weight[number] for each in offers], [each.by_volume[number] for each in offers]


def _short(column: tuple[int, ...]) -> tuple[int, ...]:
    return column[:1] if len(set(column)) == 1 else column


def _data(sizes: SizesView, words: _Numbered, columns: _Numbered, heats: _Numbered) -> str:
    notes = _Numbered()
    offers = [
        {"id": each.id, "scale": tied(each.scale), "notes": [notes.number(note) for note in each.notes]}
        for each in sizes.offers
    ]
    data = {
        "first": sizes.first,
        "unit": unit_pattern(),
        "sizes": offers,
        "notes": notes.values,
        "words": words.values,
        "columns": columns.values,
        "heats": heats.values,
    }
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"))
