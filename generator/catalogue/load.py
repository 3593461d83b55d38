"""The built-in catalogue, and the maker's pantry read from its document."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import TypeVar

from generator.catalogue.allergens import ALLERGENS, allergens_named, allergens_near
from generator.catalogue.lookup import Catalogue
from generator.catalogue.names import fold
from generator.catalogue.pack import Pack, Pantry
from generator.catalogue.rows import built_in_rows
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics, has_errors
from generator.measure.number import read_number
from generator.measure.quantity import read_quantity
from generator.measure.unit import Spoons
from generator.source.document import Mapping, Node, Sequence, Text
from generator.source.fields import address_of, check_keys, date_of, text_of, texts_of, yes_no_of

__all__ = ["Pack", "Pantry", "built_in", "empty_pantry", "read_pantry"]

T = TypeVar("T")
_NUDGE = (
    "Write “contains: [milk, …]”, or the pack's text as “label:” with “contains: []” where there is none."
)
_VOLUMES = ("cup", "tbsp", "tsp")
_COMPOSITION = ("water", "fat", "sugar", "salt")
KEYS = (
    *("is", "label", "contains", "may_contain", *_VOLUMES, "piece", "checked", "url", "buy"),
    *(*_COMPOSITION, "flour", "note"),
)


@cache
def built_in() -> Catalogue:
    """The packaged catalogue. Raises where its own data is faulty: a bug of ours."""
    return Catalogue(built_in_rows())


def empty_pantry(*, catalogue: Catalogue) -> Pantry:
    """The pantry of a maker who has no `pantry.yaml`."""
    return Pantry((), catalogue=catalogue)


def read_pantry(
    document: Mapping | None, *, catalogue: Catalogue, spoons: Spoons
) -> tuple[Pantry, Diagnostics]:
    """The pantry of a document, and every mistake in it. A row with a mistake keeps what could be read."""
    packs: list[Pack] = []
    found: list[Diagnostic] = []
    taken: dict[str, str] = {}
    for key, node in document.entries if document else ():
        reader = _RowReader(key=key, catalogue=catalogue, spoons=spoons)
        pack = reader.read(node)
        found += reader.found
        if _is_free(pack, key, taken, found):
            packs.append(pack)
    return Pantry(packs, catalogue=catalogue), tuple(found)


def _is_free(pack: Pack, key: Text, taken: dict[str, str], found: list[Diagnostic]) -> bool:
    """Notes a second row for one thing, such as `strong flour` beside `bread flour`."""
    claims = {fold(pack.name)}
    if pack.stands_for is not None and not pack.stands_in:
        claims.add(fold(pack.stands_for))
    earlier = next((taken[claim] for claim in sorted(claims) if claim in taken), None)
    if earlier is not None:
        message = f"“{key.value}” and “{earlier}” are one ingredient"
        hint = "Keep one row; for a second pack of it use a name of its own with “is:”."
        found.append(Diagnostic(code="P007", message=message, span=key.span, hint=hint))
        return False
    taken.update(dict.fromkeys(claims, key.value))
    return True


@dataclass(slots=True)
class _RowReader:
    """Reads one row and collects what is wrong with it."""

    key: Text
    catalogue: Catalogue
    spoons: Spoons
    found: list[Diagnostic] = field(default_factory=list)

    def read(self, node: Node) -> Pack:
        name = " ".join(self.key.value.split())
        if "," in name:
            self._note(
                "P001", self.key, f"“{name}” has a comma", "An item ends at its first comma: leave it out."
            )
        row = self._row(node)
        self.found += check_keys(row, KEYS, what="a pantry row")
        stands_for, stands_in = self._stands_for(name, row)
        label = row.get("label")
        pack = Pack(
            name=name,
            stands_for=stands_for,
            stands_in=stands_in,
            span=self.key.span,
            label=self._text(label),
            label_span=label.span if label is not None else None,
            contains=self._allergens(row.get("contains")),
            contains_given=_is_stated(row.get("contains")),
            may_contain=self._allergens(row.get("may_contain")),
            checked=self._taken(date_of(row.get("checked"))),
            url=self._taken(address_of(row.get("url"))) or "",
            buy=self._text(row.get("buy")),
            note=self._text(row.get("note")),
            flour=self._flour(row.get("flour"), stands_for),
            grams_per_ml=self._grams_per_ml(row),
            grams_per_piece=self._grams(row.get("piece")),
            composition=MappingProxyType(dict(self._composition(row))),
        )
        self._nudge(pack)
        return pack

    def _row(self, node: Node) -> Mapping:
        if isinstance(node, Mapping):
            return node
        if not (isinstance(node, Text) and not node.value.strip()):
            hint = "Write what the pack says below it, as in “contains: [wheat]”."
            self._note("P002", node, f"“{self.key.value}” needs keys and values", hint)
        return Mapping(entries=(), span=node.span)

    def _stands_for(self, name: str, row: Mapping) -> tuple[str | None, bool]:
        """The catalogue ingredient it speaks for, and whether it only stands in for it under its own name."""
        exact = self.catalogue.exact(name)
        node = row.get("is")
        wanted = self._text(node)
        if node is None or not wanted:
            near = exact or self.catalogue.find(name)
            return (near.name if near else None), exact is None
        known = self.catalogue.find(wanted)
        if known is None:
            near_names = " or ".join(f"“{each}”" for each in self.catalogue.nearest(wanted))
            hint = f"Did you mean {near_names}?" if near_names else "Name an ingredient of the catalogue."
            self._note("P003", node, f"the catalogue does not know “{wanted}”", hint)
            return (exact.name if exact else None), exact is None
        if exact is not None and exact.name != known.name:
            message = f"“{name}” is an ingredient of the catalogue and cannot stand in for “{known.name}”"
            self._note("P004", node, message, "Give the pack a name of its own.")
            return exact.name, False
        return known.name, exact is None

    def _allergens(self, node: Node | None) -> tuple[str, ...]:
        words, faults = texts_of(node)
        self.found += faults
        places = (
            [each for each in node.items if isinstance(each, Text)] if isinstance(node, Sequence) else [node]
        )
        named = [place for place in places if isinstance(place, Text) and place.value.strip()]
        return tuple(sorted({each for place in named for each in self._ids(place)})) if words else ()

    def _ids(self, word: Text) -> tuple[str, ...]:
        known = allergens_named(word.value)
        if not known:
            near = " or ".join(f"“{each}”" for each in allergens_near(word.value))
            hint = f"Did you mean {near}?" if near else f"Choose from: {', '.join(ALLERGENS)}."
            self._note("P005", word, f"“{word.value.strip()}” is not an allergen known here", hint)
        return known

    def _flour(self, node: Node | None, stands_for: str | None) -> bool:
        answer = self._taken(yes_no_of(node))
        if answer is not None and node is not None and stands_for is not None:
            message = f"whether “{stands_for}” counts as flour is settled by the catalogue"
            self._note("P008", node, message, "Delete it; only a thing of your own says whether it is flour.")
            return False
        return bool(answer)

    def _grams_per_ml(self, row: Mapping) -> Fraction | None:
        """From the largest measure that the row weighs, since it was read the most exactly."""
        weights = {unit: self._grams(row.get(unit)) for unit in _VOLUMES}
        sizes = {"cup": self.spoons.cup, "tbsp": self.spoons.tbsp, "tsp": self.spoons.tsp}
        return next((grams / sizes[unit] for unit, grams in weights.items() if grams is not None), None)

    def _grams(self, node: Node | None) -> Fraction | None:
        """An exact weight above zero, as in `128 g` or `4 1/2 oz`."""
        text = self._text(node)
        if node is None or not text:
            return None
        quantity = read_quantity(text, spoons=self.spoons)
        grams = quantity[0].grams() if quantity and quantity[1] == len(text) else None
        if grams is None or not grams.is_exact or grams.low <= 0:
            self._note("P006", node, f"“{text}” is not a weight", "Write one weight, as in 128 g.")
            return None
        return grams.low

    def _composition(self, row: Mapping) -> Iterator[tuple[str, Fraction]]:
        """Grams in 100 g, written `16`, `16 g` or `16 %`."""
        for key in _COMPOSITION:
            node = row.get(key)
            text = self._text(node).removesuffix("%").removesuffix("g").strip()
            number = read_number(text) if text else None
            if node is None or not text:
                continue
            if number is None or number[1] != len(text) or not number[0].is_exact or number[0].low > 100:
                message = f"“{self._text(node)}” is not grams in 100 g"
                self._note("P009", node, message, "Write a number from 0 to 100, as in 16 g.")
            else:
                yield key, number[0].low

    def _nudge(self, pack: Pack) -> None:
        """A copied label is left alone: what its words tell and leave open is read elsewhere."""
        known = self.catalogue.find(pack.stands_for) if pack.stands_for else None
        asked = known is None or bool(known.ask)
        if asked and not pack.read and not pack.label and not has_errors(self.found):
            message = f"what “{pack.name}” contains is not said"
            self._note("P010", self.key, message, _NUDGE)

    def _text(self, node: Node | None) -> str:
        return self._taken(text_of(node)) or ""

    def _taken(self, read: tuple[T, Diagnostics]) -> T:
        value, faults = read
        self.found += [each for each in faults if each not in self.found]
        return value

    def _note(self, code: str, node: Node, message: str, hint: str) -> None:
        self.found.append(Diagnostic(code=code, message=message, span=node.span, hint=hint))


def _is_stated(node: Node | None) -> bool:
    """`contains: []` says none was found; `contains:` with nothing after it says nothing."""
    return node is not None and not (isinstance(node, Text) and not node.value.strip())
