"""The words that a page's script may put in: sizes, the other measure first, the other scale of heat."""

import json
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import Span
from generator.present.size_views import SizesView
from generator.present.views import RecipeView
from generator.proof.page_text import Changing, PageText
from generator.proof.squeeze import letters_of

_NAME = "leaf-choices"
Column = tuple[str, ...]
"""The letters of one place in every size, or of one temperature as written, with °F first, with °C first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """What the page's data say, with the words as letters."""

    ids: tuple[str, ...]
    scales: Column
    notes: tuple[Column, ...]
    columns: tuple[Column, ...]
    heats: tuple[Column, ...]
    first: str


def sizes_faults(page: PageText, view: RecipeView, *, remedy: str) -> Diagnostics:
    """Where the data or the marks of the page would show another thing than the recipe in that size."""
    path, sizes = page.text.path, view.sizes
    text = page.scripts.get(_NAME, "")
    if sizes is None or not text:
        wrong = sizes is not None or bool(page.changing)
        message = "the sizes and measures that the page offers are not those of the recipe"
        return (_fault(path, message, remedy),) if wrong else ()
    try:
        choices = _read(json.loads(text))
    except (ValueError, KeyError, IndexError, TypeError, AttributeError):
        return (_fault(path, "the sizes and measures in the page cannot be read", remedy, code="A007"),)
    return tuple(_fault(path, message, remedy, line=line) for message, line in _wrong(page, sizes, choices))


def _read(data: Mapping[str, object]) -> Choices:
    words: list[str] = [letters_of(each) for each in data["words"]]  # type: ignore[attr-defined]
    sizes: list[Mapping[str, object]] = data["sizes"]  # type: ignore[assignment]
    notes: list[str] = data["notes"]  # type: ignore[assignment]
    columns: list[list[int]] = data["columns"]  # type: ignore[assignment]
    heats: list[list[str]] = data["heats"]  # type: ignore[assignment]
    count = len(sizes)
    return Choices(
        ids=tuple(str(each["id"]) for each in sizes),
        scales=tuple(letters_of(str(each["scale"])) for each in sizes),
        notes=tuple(tuple(letters_of(notes[at]) for at in each["notes"]) for each in sizes),  # type: ignore[attr-defined]
        columns=tuple(
            tuple(words[at] for at in (each * count if len(each) == 1 else each)) for each in columns
        ),
        heats=tuple(tuple(map(letters_of, each)) for each in heats),
        first=str(data["first"]),
    )


def _wrong(page: PageText, sizes: SizesView, choices: Choices) -> Iterator[tuple[str, int]]:
    offers = sizes.offers
    ids = tuple(each.id for each in offers)
    for said in (choices.ids, page.options):
        if said != ids:
            yield f"the page offers the sizes {', '.join(said)}, the recipe {', '.join(ids)}", 1
            return
    if choices.first != sizes.first:
        yield f"the page puts {choices.first} first, the site {sizes.first}", 1
    for number, offer in enumerate(offers):
        if choices.scales[number] != letters_of(offer.scale):
            yield f"the size {offer.id} is called otherwise than “{offer.scale}”", 1
        if choices.notes[number] != tuple(map(letters_of, offer.notes)):
            yield f"the notes on the size {offer.id} are not those of the recipe", 1
    yield from _wrong_places(page, sizes, choices)
    yield from _wrong_heats(page, sizes, choices)


def _wrong_places(page: PageText, sizes: SizesView, choices: Choices) -> Iterator[tuple[str, int]]:
    """Every place of the recipe has an element with its words in every size, and no element has others."""
    wanted: dict[tuple[Column, Column], list[str]] = {}
    for number, place in enumerate(sizes.places):
        pair = (
            tuple(letters_of(each.by_weight[number]) for each in sizes.offers),
            tuple(letters_of(each.by_volume[number]) for each in sizes.offers),
        )
        if len({*pair[0], *pair[1]}) > 1:
            wanted.setdefault(pair, []).append(place)
    for element in (each for each in page.changing if each.name == "data-n"):
        pair_said = _columns_of(element, choices)
        if pair_said is None:
            yield f"“{element.words.strip()}” changes to words that are not in the page", element.line
            continue
        if not wanted.get(pair_said):
            yield from _other_words(element, pair_said, wanted, sizes)
            continue
        wanted[pair_said].pop()
        shown = pair_said[0 if sizes.first == "weight" else 1][0]
        if letters_of(element.words) != shown:
            yield (
                f"the page shows “{element.words.strip()}” where its own data have other words",
                element.line,
            )
    for places in wanted.values():
        yield from ((f"nothing changes with the size at the place “{place}”", 1) for place in places)


def _columns_of(element: Changing, choices: Choices) -> tuple[Column, Column] | None:
    numbers = element.value.split()
    try:
        columns = [choices.columns[int(each)] for each in numbers]
    except (ValueError, IndexError):
        return None
    return (columns[0], columns[-1]) if columns else None


def _other_words(
    element: Changing,
    said: tuple[Column, Column],
    wanted: Mapping[tuple[Column, Column], list[str]],
    sizes: SizesView,
) -> Iterator[tuple[str, int]]:
    """Which size says what, against the place that has most in common with the element."""
    near = max(wanted, key=lambda each: _alike(each, said), default=None)
    places = wanted.get(near, []) if near else []
    shown = element.words.strip()
    if near is None or not places:
        yield f"“{shown}” changes with the size to words that are at no place of the recipe", element.line
        return
    number = sizes.places.index(places.pop())
    for offer in sizes.offers:
        at = sizes.offers.index(offer)
        if (said[0][at], said[1][at]) != (near[0][at], near[1][at]):
            meant = (offer.by_weight if said[0][at] != near[0][at] else offer.by_volume)[number]
            other = said[0][at] if said[0][at] != near[0][at] else said[1][at]
            yield (
                f"“{shown}” in the size {offer.id}: the page has “{other}”, the recipe “{meant}”",
                element.line,
            )
            return


def _alike(one: tuple[Column, Column], other: tuple[Column, Column]) -> int:
    return sum(
        a == b for mine, theirs in zip(one, other, strict=True) for a, b in zip(mine, theirs, strict=False)
    )


def _wrong_heats(page: PageText, sizes: SizesView, choices: Choices) -> Iterator[tuple[str, int]]:
    wanted = Counter(tuple(map(letters_of, told)) for told in sizes.heats if len(set(told)) > 1)
    for element in (each for each in page.changing if each.name == "data-h"):
        shown = element.words.strip()
        try:
            told = choices.heats[int(element.value)]
        except (ValueError, IndexError):
            yield f"“{shown}” changes to a temperature that is not in the page", element.line
            continue
        if not wanted[told]:
            yield (
                f"“{shown}” changes to {', '.join(told)}, which is no temperature of the recipe",
                element.line,
            )
            continue
        wanted[told] -= 1
        if told[0] != letters_of(element.words):
            yield f"the page shows “{shown}” where its own data have “{told[0]}”", element.line
    for told, left in wanted.items():
        yield from ((f"no temperature changes to {', '.join(told)}", 1) for _ in range(left))


def _fault(path: str, message: str, remedy: str, *, line: int = 1, code: str = "A005") -> Diagnostic:
    span = Span(path=path, line=line, column=1, end_line=line, end_column=2)
    return Diagnostic(code=code, message=message, span=span, hint=remedy)
